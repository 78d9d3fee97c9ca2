"""A check is made again only where it opened what now stands otherwise, and comes out as if all were made again."""

from __future__ import annotations

from pathlib import Path

import pytest

import speclint.made.trial as trial
from speclint.checking import Check, KeptFolder, assess, check
from speclint.made import Bench, judge
from speclint.rules import Context, Rule
from speclint.specs import Component
from speclint.testing import DesignFolder, changed
from tests.made.test_judging import BLOCK_MADE, DRAWN, FINISHED_IN_PLACE, MADE
from tests.plugins.liners.bench import bench
from tests.plugins.release.test_steamings import BAND, STEAMED, TIED


def twice(found: Bench) -> tuple[set[str], set[str]]:
    """The rules kept from the drawings and those run again, each check made once more in full to be compared."""
    there = found.trial(found.standing(found.fitted))
    kept: set[str] = set()
    again: set[str] = set()
    for one in found.drawn.checks:
        if one.rule.reviews or one.kind == "made-part":
            continue
        part = there.context.design.specs[one.component]
        assert isinstance(part, Component)
        here, full = there.again(one), check(one.rule, part, there.context)
        assert (here.outcome, here.grade, here.utilisation) == (full.outcome, full.grade, full.utilisation), (
            one
        )
        (kept if here is one else again).add(one.rule.name)
    return kept, again


def test_what_is_not_made_again_would_come_out_the_same(workshop: DesignFolder) -> None:
    """The liner large and the bore open: each check of the design once more, in full."""
    made = {
        "liner-7.toml": changed(MADE, ('"560.3 mm"', '"560.325 mm"')),
        "block-1.toml": changed(BLOCK_MADE, ('"560.0 mm"', '"560.07 mm"')),
    }
    kept, again = twice(Bench.of(workshop.write({**bench(DRAWN), **made}).assess()))
    assert len(kept) > 20 > 8 < len(again)


@pytest.mark.parametrize("band", [BAND, TIED])
def test_a_part_hotter_than_its_kind_has_all_that_rests_on_its_temperature_made_again(
    workshop: DesignFolder, band: tuple[str, str, str]
) -> None:
    """The duty states the liner's temperature by its kind, of itself or by that of the block; measured 150 °C."""
    made = changed(STEAMED, ("VALUE", "150 °C"))
    found = Bench.of(workshop.write({**bench(DRAWN, band), "liner-7.toml": made}).assess())
    kept, again = twice(found)
    assert "liner.fit-hot" in again
    assert "liner.port-bars" in kept


def test_a_trial_of_one_size_makes_nothing_again_that_did_not_open_it(workshop: DesignFolder) -> None:
    found = Bench.of(workshop.write({**bench(DRAWN), "liner-7.toml": MADE}).assess())
    there = found.trial(found.standing(found.fitted))
    places = {
        place
        for one in found.drawn.checks
        for place in one.consulted.opened
        if place[2] == "outside_diameter"
    }
    opened = [one for one in found.drawn.checks if not one.consulted.opened.isdisjoint(places)]
    again = [one for one in found.drawn.checks if there.again(one) is not one]
    assert {one.order for one in again} == {one.order for one in opened}
    assert "liner.fit-hot" in {one.rule.name for one in again}


def test_what_was_made_again_is_kept_until_a_record_changes(
    workshop: DesignFolder, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    made: list[str] = []

    def counted(rule: Rule, component: Component, context: Context) -> Check:
        made.append(rule.name)
        return check(rule, component, context)

    monkeypatch.setattr(trial, "check", counted)
    kept = KeptFolder(tmp_path / "kept")

    def outcome(size: str) -> list[object]:
        made.clear()
        text = changed(MADE, ('"560.3 mm"', f'"{size} mm"'))
        workshop.write({**bench(DRAWN, FINISHED_IN_PLACE), "liner-7.toml": text})
        drawn = assess([workshop.root], workshop.loaded, kept=kept)
        assert drawn.kept is not None
        found = [(one.outcome, [pair.made.fingerprint for pair in one.pairs]) for one in judge(drawn).parts]
        return [*found, len(made)]

    first = outcome("560.325")
    assert first[-1]
    assert outcome("560.325") == [*first[:-1], 0]
    other = outcome("560.310")
    assert other[-1]
    assert other[:-1] != first[:-1]
