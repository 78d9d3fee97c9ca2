"""What one trial takes over from the one before, and gives back: only what rests on nothing that differs."""

from __future__ import annotations

from collections.abc import Hashable, Mapping
from typing import Any

import pytest

import speclint.made.trial as trials
from speclint.checking import Check, check
from speclint.errors import Location, replace
from speclint.made import Bench
from speclint.made.trial import Trial
from speclint.rules import Consulted, Context, Rule
from speclint.specs import Component, CylinderLiner, Duty, Spec
from speclint.testing import DesignFolder, changed
from tests.made.test_judging import BLOCK_MADE, DRAWN, MADE
from tests.plugins.liners.bench import bench
from tests.plugins.release.test_steamings import BAND, STEAMED, TIED

Worked = tuple[Any, Consulted, dict[int, Location]]


@pytest.fixture
def judged(workshop: DesignFolder) -> Bench:
    """A liner 0.025 mm larger than drawn, in a block whose bore is 0.07 mm larger."""
    made = {
        "liner-7.toml": changed(MADE, ('"560.3 mm"', '"560.325 mm"')),
        "block-1.toml": changed(BLOCK_MADE, ('"560.0 mm"', '"560.07 mm"')),
    }
    return Bench.of(workshop.write({**bench(DRAWN), **made}).assess())


def drawn_liner(found: Bench) -> CylinderLiner:
    assert found.drawn.design is not None
    liner = found.drawn.design.specs["liner"]
    assert isinstance(liner, CylinderLiner)
    return liner


def drawn_in(found: Bench, worked: Mapping[Hashable, Worked]) -> Trial:
    """The design as drawn, with what was worked in it."""
    assert found.drawn.context is not None
    return Trial(replace(found.drawn.context, worked=dict(worked), toleranced={"some.rule"}))


def resting(found: Bench) -> dict[Hashable, Worked]:
    """A value that rests on the outside diameter of the liner, one on the block's bore, one on the liner's length."""
    assert found.drawn.design is not None
    block: Any = found.drawn.design.specs["block"]
    places = {
        "size": drawn_liner(found).outside_diameter.where,
        "bore": block.bores["main"].diameter.where,
        "length": drawn_liner(found).length.where,
    }
    return {name: (name, Consulted(), {0: where}) for name, where in places.items()}


def test_a_trial_takes_over_what_rests_on_nothing_that_differs(judged: Bench) -> None:
    specs = judged.standing(judged.fitted)
    liner = {"liner": specs["liner"]}
    there = Trial.after(drawn_in(judged, resting(judged)), judged.context(liner), liner)
    assert set(there.context.worked) == {"bore", "length"}
    assert there.context.worked["bore"][0] == "bore"
    assert there.context.toleranced == {"some.rule"}
    both = Trial.after(drawn_in(judged, resting(judged)), judged.context(specs), specs)
    assert set(both.context.worked) == {"length"}


def test_a_trial_gives_back_what_rests_on_nothing_that_differs(
    judged: Bench, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The liner differs in the first trial, the block in the second: neither gives back what rests on its change."""
    specs, worked = judged.standing(judged.fitted), resting(judged)
    drawn = drawn_in(judged, {})
    first = Trial.after(drawn, judged.context({"liner": specs["liner"]}), {"liner": specs["liner"]})
    second = Trial.after(first, judged.context(specs), {"block": specs["block"]})
    second.context.worked["of before"] = ("of before", Consulted(), {})

    def works(rule: Rule, component: Component, context: Context) -> Check:
        context.worked.update(worked)
        return check(rule, component, context)

    monkeypatch.setattr(trials, "check", works)
    place = worked["bore"][2][0]
    bored = (place.file, place.part, place.key)
    only_bore = next(
        one
        for one in judged.drawn.checks
        if bored in one.consulted.opened and one.consulted.opened.isdisjoint(first.changed)
    )
    second.again(only_bore)
    assert {"size", "length"} <= set(first.context.worked)
    assert not {"bore", "of before"} & set(first.context.worked)
    assert "length" in drawn.context.worked
    assert not {"size", "bore", "of before"} & set(drawn.context.worked)


def test_a_check_is_made_again_once(judged: Bench, monkeypatch: pytest.MonkeyPatch) -> None:
    made: list[str] = []

    def counted(rule: Rule, component: Component, context: Context) -> Check:
        made.append(rule.name)
        return check(rule, component, context)

    monkeypatch.setattr(trials, "check", counted)
    there = judged.trial(judged.standing(judged.fitted))
    fit = next(one for one in judged.drawn.checks if one.rule.name == "liner.fit-hot")
    assert there.again(fit) is there.again(fit)
    assert made == ["liner.fit-hot"]


def test_specs_that_state_the_same_differ_in_nothing(judged: Bench) -> None:
    """Also where one is a copy of the other; a value of another size is in both, at the place of each."""
    liner, made = drawn_liner(judged), judged.standing(judged.fitted)["liner"]
    same: Spec = liner.model_copy(deep=True)
    assert list(trials._changed(liner, liner)) == list(trials._changed(liner, same)) == []
    assert trials._said(liner, liner) == trials._said(liner, same) == []
    assert {key for _, _, key in trials._changed(liner, made)} == {"outside_diameter"}
    assert [key for key, _ in trials._said(liner, made)] == ["outside_diameter"]


@pytest.mark.parametrize(
    ("band", "keys"),
    [
        (BAND, {"cases.running.temperatures.cylinder-liner"}),
        (
            TIED,
            {
                "cases.running.temperatures.cylinder-liner",
                "cases.running.temperatures.cylinder-block",
            },
        ),
    ],
)
def test_a_temperature_stands_at_its_own_place_and_at_those_that_it_is_tied_to(
    workshop: DesignFolder, band: tuple[str, str, str], keys: set[str]
) -> None:
    made = changed(STEAMED, ("VALUE", "150 °C"))
    found = Bench.of(workshop.write({**bench(DRAWN, band), "liner-7.toml": made}).assess())
    assert found.drawn.design is not None
    specs = found.drawn.design.specs
    duty, there = specs["duty"], found.duties()["duty"]
    assert isinstance(duty, Duty)
    warmed = dict(trials._warmed(duty, there, specs))
    assert {key for _, _, key in warmed["liner"]} == keys
