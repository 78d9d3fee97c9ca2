"""Locking of nuts, and second retention above the track."""

from __future__ import annotations

import pytest

from speclint import Grade
from speclint.testing import DesignFolder
from tests.plugins.joints.bench import bench, without


def _nut(workshop: DesignFolder, place: str, how: str) -> DesignFolder:
    over = "true" if place == "track" else "false"
    return bench(
        workshop,
        ("studs", "over_track = false", f"over_track = {over}"),
        ("studs", 'could_fall_into = "nothing"', f'could_fall_into = "{place}"'),
        ("studs", 'locking = "lock plate"', f'locking = "{how}"'),
    )


@pytest.mark.parametrize("place", ["valve", "cylinder", "cam box", "motion", "track"])
@pytest.mark.parametrize(
    ("how", "grade"),
    [
        ("none", Grade.NONCONFORMITY),
        ("lock nut", Grade.OBSERVATION),
        ("prevailing torque nut", Grade.OBSERVATION),
        ("split pin", None),
        ("tab washer", None),
        ("lock plate", None),
        ("wire", None),
        ("peened", None),
    ],
)
def test_a_nut_that_could_fall_in_is_locked(
    workshop: DesignFolder, place: str, how: str, grade: Grade | None
) -> None:
    check = _nut(workshop, place, how).only("joint.locking", "studs")
    assert check.grade is grade
    assert check.outcome == ("conforms" if grade is None else "finding")
    assert place in check.says


@pytest.mark.parametrize(
    ("end", "place", "grade"),
    [
        ('end = "front"\n', "off the engine", Grade.OBSERVATION),
        ('end = "back"\n', "into the motion", Grade.NONCONFORMITY),
        ("", "into the motion", Grade.NONCONFORMITY),
    ],
)
def test_nothing_clears_no_nut_without_a_lock(
    workshop: DesignFolder, end: str, place: str, grade: Grade
) -> None:
    """The place follows from the cover that the stud holds: the back one stands before the motion."""
    bench(
        workshop, ("cover", 'end = "front"\n', end), ("studs", 'locking = "lock plate"', 'locking = "none"')
    )
    check = workshop.only("joint.locking", "studs")
    assert check.grade is grade
    assert place in check.says


@pytest.mark.parametrize(("how", "grade"), [("none", Grade.NONCONFORMITY), ("lock nut", Grade.QUERY)])
def test_over_the_track_a_nut_falls_on_it(workshop: DesignFolder, how: str, grade: Grade) -> None:
    """And not into nothing, as it is said: a query, where the lock nut is but an observation."""
    bench(
        workshop,
        ("studs", "over_track = false", "over_track = true"),
        ("studs", 'locking = "lock plate"', f'locking = "{how}"'),
    )
    check = workshop.only("joint.locking", "studs")
    assert check.grade is grade
    assert "on the track" in check.says


HOLDS = {
    "gland": ('kind = "gland"\nid = "held"\nof = "cover"\n', "into the motion"),
    "stuffing box": ('kind = "stuffing-box"\nid = "held"\nin_cover = "cover"\n', "into the motion"),
    "slide bar": ('kind = "slide-bar"\nid = "held"\n', "into the motion"),
    "crosshead": ('kind = "crosshead"\nid = "held"\n', "into the motion"),
    "rod": ('kind = "piston-rod"\nid = "held"\n', "into the motion"),
    "bracket": ('kind = "bracket"\nid = "held"\nover_track = true\n', "on the track"),
    "bracket elsewhere": ('kind = "bracket"\nid = "held"\nover_track = false\n', ""),
    "silent bracket": ('kind = "bracket"\nid = "held"\n', ""),
}


def _holding(workshop: DesignFolder, held: str, *changes: tuple[str, str, str]) -> DesignFolder:
    folder = bench(workshop, ("studs", 'holds = "cover"', 'holds = "held"'), *changes)
    (folder.root / "held.toml").write_text(HOLDS[held][0], encoding="utf-8")
    return folder


@pytest.mark.parametrize("held", [*HOLDS])
def test_nothing_is_a_query_over_motion_and_track_however_the_nut_is_locked(
    workshop: DesignFolder, held: str
) -> None:
    check = _holding(workshop, held).only("joint.locking", "studs")
    into = HOLDS[held][1]
    assert (check.outcome, check.grade) == (("finding", Grade.QUERY) if into else ("conforms", None))
    assert not into or f"said to fall into nothing, and could fall {into}" in check.says


@pytest.mark.parametrize(("end", "grade"), [("front", None), ("back", Grade.QUERY)])
def test_a_locked_nut_of_a_back_cover_falls_into_the_motion(
    workshop: DesignFolder, end: str, grade: Grade | None
) -> None:
    bench(workshop, ("cover", 'end = "front"', f'end = "{end}"'))
    assert workshop.only("joint.locking", "studs").grade is grade


def test_where_nut_and_part_could_fall_agrees(workshop: DesignFolder) -> None:
    bench(workshop, ("studs", 'could_fall_into = "nothing"', 'could_fall_into = "track"'))
    check = workshop.only("joint.locking", "studs")
    assert (check.outcome, check.grade) == ("finding", Grade.QUERY)
    assert "is said to fall on the track" in check.says


@pytest.mark.parametrize(
    ("held", "outcome"), [("bracket", "not assessed"), ("bracket elsewhere", "not applicable")]
)
def test_a_bracket_over_the_track_is_kept_whatever_its_bolts_say(
    workshop: DesignFolder, held: str, outcome: str
) -> None:
    """Seven bolts that are said not to stand over the track: a second retention is asked for."""
    folder = _holding(workshop, held, ("studs", "count = 20", "count = 7"))
    assert folder.only("fastening.underside", "studs").outcome == outcome


def test_a_locked_nut_is_locked_wherever_it_would_fall(workshop: DesignFolder) -> None:
    assert bench(workshop).only("joint.locking", "studs").outcome == "conforms"


def test_friction_is_enough_where_a_nut_only_falls_off(workshop: DesignFolder) -> None:
    bench(workshop, ("studs", 'locking = "lock plate"', 'locking = "lock nut"'))
    assert workshop.only("joint.locking", "studs").outcome == "conforms"


@pytest.mark.parametrize("line", ['locking = "lock plate"', 'could_fall_into = "nothing"'])
def test_locking_not_stated_is_not_assessed(workshop: DesignFolder, line: str) -> None:
    assert without(workshop, "studs", line).only("joint.locking", "studs").outcome == "not assessed"


@pytest.mark.parametrize(
    ("kept", "outcome"), [("none", "finding"), ("safety strap", "conforms"), ("keep plate", "conforms")]
)
def test_above_the_track_two_things_hold(workshop: DesignFolder, kept: str, outcome: str) -> None:
    bench(
        workshop,
        ("studs", "over_track = false", f'over_track = true\nsecond_retention = "{kept}"'),
        ("studs", 'locking = "lock plate"', 'locking = "none"'),
    )
    check = workshop.only("fastening.underside", "studs")
    assert check.outcome == outcome
    assert (check.grade is Grade.HOLD) is (outcome == "finding")


@pytest.mark.parametrize(
    ("count", "how", "outcome"),
    [(24, "lock plate", "conforms"), (8, "split pin", "conforms"), (7, "split pin", "finding")]
    + [(24, how, "finding") for how in ("none", "lock nut", "prevailing torque nut")],
)
def test_many_locked_studs_keep_one_another(
    workshop: DesignFolder, count: int, how: str, outcome: str
) -> None:
    bench(
        workshop,
        ("studs", "over_track = false", 'over_track = true\nsecond_retention = "none"'),
        ("studs", "count = 20", f"count = {count}"),
        ("studs", 'locking = "lock plate"', f'locking = "{how}"'),
    )
    assert workshop.only("fastening.underside", "studs").outcome == outcome


@pytest.mark.parametrize(("count", "outcome"), [(8, "conforms"), (7, "not assessed")])
def test_a_nut_that_falls_on_the_track_is_over_it(workshop: DesignFolder, count: int, outcome: str) -> None:
    """Whatever the joint says of itself as a whole: seven want a second retention, which is not stated."""
    bench(
        workshop,
        ("studs", 'could_fall_into = "nothing"', 'could_fall_into = "track"'),
        ("studs", "count = 20", f"count = {count}"),
    )
    check = workshop.only("fastening.underside", "studs")
    assert check.outcome == outcome
    assert outcome == "conforms" or check.grade is Grade.HOLD


@pytest.mark.parametrize("line", ["count = 20\n", 'locking = "lock plate"\n'])
def test_a_second_retention_is_enough_whatever_is_not_said_of_the_studs(
    workshop: DesignFolder, line: str
) -> None:
    bench(
        workshop,
        ("studs", "over_track = false", 'over_track = true\nsecond_retention = "safety strap"'),
        ("studs", line, ""),
    )
    assert workshop.only("fastening.underside", "studs").outcome == "conforms"


def test_away_from_the_track_it_does_not_apply(workshop: DesignFolder) -> None:
    assert bench(workshop).only("fastening.underside", "studs").outcome == "not applicable"


@pytest.mark.parametrize("stated", ["", "over_track = true"])
def test_what_is_not_said_of_the_track_is_a_hold(workshop: DesignFolder, stated: str) -> None:
    bench(
        workshop,
        ("studs", "over_track = false", stated),
        ("studs", 'locking = "lock plate"', 'locking = "none"'),
    )
    check = workshop.only("fastening.underside", "studs")
    assert (check.outcome, check.grade) == ("not assessed", Grade.HOLD)
