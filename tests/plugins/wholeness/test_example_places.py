"""The places of the example's engine: each part of a cylinder taken away, drawn twice, or put on another cylinder."""

from __future__ import annotations

import datetime as dt
from collections.abc import Mapping
from functools import cache

import pytest

from speclint.checking import check_component
from speclint.checking.inputs import Inputs, context_of
from speclint.errors import replace
from speclint.repository import Design, Register
from speclint.rules import Rule
from speclint.specs import Component, MadePart, Spec
from speclint.testing import installed_families
from tests.example import assessed

LOADED = installed_families()
#: Rules that ask what fills a place.
RULES: tuple[Rule, ...] = tuple(rule for rule in LOADED.rules if rule.row)


def design() -> Design:
    found = assessed().design
    assert found is not None
    return found


@cache
def before() -> Mapping[tuple[str, str], str]:
    """What each check of a place finds, as the example is drawn."""
    names = {rule.name for rule in RULES}
    found = (one for one in assessed().checks if one.rule.name in names and one.outcome == "finding")
    return {one.order: one.says for one in found}


def told(specs: dict[str, Spec], changed: set[str]) -> set[tuple[str, str]]:
    """The checks of places that find something and did not, when some parts are others."""
    old, files = design(), dict(design().files)
    for name in specs.keys() - files.keys():
        files[name] = f"{name}.toml"
    now = replace(old, specs=specs, files={name: files[name] for name in specs}, selected=frozenset(specs))
    context = context_of(Inputs(now, {}, {}, Register(""), dt.date.today()), LOADED)
    touched = set(changed)
    for name in changed:
        for one in (old.specs.get(name), specs.get(name)):
            touched |= {link.id for link in one.links()} if one else set()
    asked = {one.order for one in assessed().checks if one.consulted.ids & touched}
    found: set[tuple[str, str]] = set()
    for name, spec in specs.items():
        rules = [rule for rule in RULES if name in changed - old.specs.keys() or (name, rule.name) in asked]
        if isinstance(spec, Component) and rules:
            checks = check_component(spec, rules, context)
            assert [f"{one.rule.name}: {one.could_not_run}" for one in checks if one.could_not_run] == []
            new = (one for one in checks if one.outcome == "finding" and before().get(one.order) != one.says)
            found |= {one.order for one in new}
    return found


#: Parts of the left-hand cylinder whose absence no place tells, each with the reason.
NO_PLACE = {
    "assembly-left": "an order that nothing has to state",
    "fit-seat-inlet-left-front-upper": "a fit that the rules of its seat work by the sizes of seat and bore",
    "fit-saddle-cambox-left-back": "its cam box lacks its studs already, which is told first",
    "fit-saddle-cambox-left-front": "its cam box lacks its studs already, which is told first",
    "bolts-lens-live-left": "its pipe lacks a joint at the other end already, which is told first",
    "partition-drain-left": "a second wall beside the one that the block's division asks for",
    "partition-left": "the wall of the drain chest stands between the same passages",
    "passage-feed-left": "a branch that an engine may have or not",
    "passage-port-left-front": "a port's own way, which the block's port states",
}


@cache
def parts() -> tuple[str, ...]:
    """The parts of the left-hand cylinder that are drawn for it alone."""
    drawn = (one for one in design().specs.values() if isinstance(one, Component))
    names = (one.id for one in drawn if not isinstance(one, MadePart))
    return tuple(sorted(name for name in names if "left" in name.split("-") and name not in NO_PLACE))


def linked_to(name: str) -> bool:
    """Whether a spec links to a part: when the design is read, a link to a part that is gone is told."""
    return any(
        link.id == name for spec in design().specs.values() for link in spec.links() if spec.id != name
    )


@pytest.mark.long
def test_each_part_that_is_taken_away_is_told() -> None:
    silent = []
    for name in parts():
        specs = {one: spec for one, spec in design().specs.items() if one != name}
        if not linked_to(name) and not told(specs, {name}):
            silent.append(name)
    assert silent == []
    assert len(parts()) > 60


#: One part of each kind whose place takes one alone.
ALONE = (
    *("weldment-block-left", "lifting-block-left", "access-block-left", "envelope-block-left", "liner-left"),
    *("casting-liner-left", "piston-left", "rod-left", "crosshead-left", "box-left", "pin-crank-left"),
    *("cover-front-left", "studs-front-left", "face-left-back", "fastening-left-back", "pipe-live-left"),
    *("seat-inlet-left-front-upper", "spindle-inlet-left-back", "spring-inlet-left-back"),
    *("tappet-inlet-left-front", "cam-inlet-35-left-front", "cambox-left-front", "ring-left-front"),
    *("valve-inlet-left-front", "rocker-exhaust-left-back", "studs-gland-left", "lagging-pipe-live-left"),
    *("lid-exhaust-left-front", "studs-inlet-left-front", "gear-left"),
)


@pytest.mark.long
def test_each_part_that_is_drawn_twice_is_told() -> None:
    silent = []
    for name in ALONE:
        second = design().specs[name].model_copy(update={"id": "second"})
        if not {one for one, _ in told({**design().specs, "second": second}, {"second"})} - {"second"}:
            silent.append(name)
    assert silent == []


#: A part of each of these kinds on the cylinder of another: the links lead there, and its own place is empty.
ASTRAY = ("liner", "piston", "rod", "crosshead", "box", "weldment-block", "lifting-block", "pipe-live")


def test_a_part_put_on_another_cylinder_is_told_on_both() -> None:
    for name in ASTRAY:
        middle = design().specs[f"{name}-middle"].model_copy(update={"id": f"{name}-left"})
        found = {one for one, _ in told({**design().specs, f"{name}-left": middle}, {f"{name}-left"})}
        assert any("left" in one for one in found), name
        assert any("middle" in one for one in found), name
