"""A cam of several tracks: every rule of the gear goes over each of them, and the highest gives the full lift."""

from __future__ import annotations

from pathlib import Path

import pytest

from speclint import Grade
from speclint.checking import Check
from speclint.testing import DesignFolder, expect_conforms, expect_finding, expect_not_assessed, found
from tests.plugins.valves.gear import CAM, train_files

LANDING, FOLLOWS, ONE = "valve.landing-speed", "valve.spring-follows-cam", "tappet.one-cam"


def track(name: str, rise: str, lift: str = "20 mm") -> dict[str, str]:
    text = CAM.replace('id = "cam"', f'id = "{name}"\ntrack = "{name}"')
    text = text.replace('rise_angle = "70 °"', f'rise_angle = "{rise} °"').replace(
        'lift = "20 mm"', f'lift = "{lift}"'
    )
    return {f"{name}.toml": text.replace('fall_angle = "70 °"', f'fall_angle = "{rise} °"')}


def train(*tracks: dict[str, str]) -> dict[str, str]:
    files = train_files()
    del files["cam.toml"]
    for one in tracks:
        files |= one
    return files


def found_by(folder: Path, rule: str, *tracks: dict[str, str]) -> Check:
    """The check of a rule on a valve with these tracks, in a folder of its own."""
    names = "-".join(name for one in tracks for name in one)
    return DesignFolder(folder / names).write(train(*tracks)).only(rule)


@pytest.mark.parametrize("rule", [LANDING, FOLLOWS])
def test_the_worst_track_governs(tmp_path: Path, rule: str) -> None:
    """A track of 35° slows its valve four times as much as one of 70°, and lands it twice as fast."""
    slow, fast = track("slow", "70"), track("fast", "35")
    alone = found_by(tmp_path, rule, fast)
    both = found_by(tmp_path, rule, slow, fast)
    assert found(both) == pytest.approx(found(alone))
    assert both.utilisation == pytest.approx(alone.utilisation)
    other = found_by(tmp_path, rule, slow).utilisation
    assert other is not None
    assert alone.utilisation is not None
    assert other < 0.9 * alone.utilisation


def test_tracks_have_names_of_their_own(tmp_path: Path) -> None:
    slow, fast = track("slow", "70"), track("fast", "35")
    expect_conforms(found_by(tmp_path, ONE, slow, fast))
    alike = {"fast.toml": fast["fast.toml"].replace('track = "fast"', 'track = "slow"')}
    twice = DesignFolder(tmp_path / "twice").write(train(slow, alike))
    expect_finding(twice.only(ONE), grade=Grade.HOLD, says="filled twice")
    expect_not_assessed(twice.only(LANDING), "2 cams state that they lift tappet")


def test_the_highest_track_gives_the_full_lift(tmp_path: Path) -> None:
    """A track of 9 mm for the shortest cut-off is no lift too small; alone it is."""
    low, high = track("low", "70", "9 mm"), track("high", "70", "20.4 mm")
    expect_conforms(found_by(tmp_path, "valve.cam-gives-lift", low, high))
    expect_finding(found_by(tmp_path, "valve.cam-gives-lift", low))


STRESS = "spindle.stress"


def test_the_track_that_asks_most_stresses_the_spindle(tmp_path: Path) -> None:
    """Whichever name it has: a track of 35° starts the train four times as hard as one of 70°."""
    slow, fast = track("slow", "70"), track("fast", "35")
    mild, hard = (found(found_by(tmp_path / name, STRESS, one)) for name, one in (("1", slow), ("2", fast)))
    assert hard > 1.2 * mild
    assert found(found_by(tmp_path / "3", STRESS, slow, fast)) == pytest.approx(hard)
    assert found(found_by(tmp_path / "4", STRESS, track("a", "70"), track("b", "35"))) == pytest.approx(hard)


def test_a_valve_on_one_track_is_not_told_which(tmp_path: Path) -> None:
    """Among several the finding names the track; the only cam of a valve needs no name."""
    steep = track("steep", "25")
    alone = found_by(tmp_path / "1", LANDING, steep)
    both = found_by(tmp_path / "2", LANDING, steep, track("slow", "70"))
    assert alone.judgement is not None
    assert both.judgement is not None
    assert (alone.judgement.of, both.judgement.of) == ("", "steep")
