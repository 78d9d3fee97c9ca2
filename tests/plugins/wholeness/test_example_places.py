"""The places of the example's engine: each part of a cylinder taken away, drawn twice, or put on another cylinder."""

from __future__ import annotations

import datetime as dt
from collections import Counter
from collections.abc import Mapping
from dataclasses import replace
from functools import cache

import pytest

from speclint.checking import check_component
from speclint.checking.inputs import Inputs, context_of
from speclint.repository import Design, Register
from speclint.rules import Rule
from speclint.specs import Component, Spec
from speclint.testing import installed_families
from tests.example import assessed

LOADED = installed_families()
#: Rules that ask what fills a place.
RULES: tuple[Rule, ...] = tuple(rule for rule in LOADED.rules if rule.row)
Told = Counter[tuple[str, str]]


def design() -> Design:
    found = assessed().design
    assert found is not None
    return found


@cache
def before() -> Mapping[tuple[str, str], bool]:
    """Whether each check of a place finds something, as the example is drawn."""
    names = {rule.name for rule in RULES}
    return {one.order: one.outcome == "finding" for one in assessed().checks if one.rule.name in names}


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
            found |= {one.order for one in checks if one.outcome == "finding" and not before().get(one.order)}
    return found


#: One part of each place of the left-hand cylinder; what no place asks for is left out, with the reason.
NO_PLACE = {
    "gauge-main-line": "an outline, no part",
    "fit-bolts-left-back": "a fit on its parts' own sheets",
    "fit-seat-inlet-left-front-upper": "a fit on its parts' own sheets",
    "partition-drain-left": "a second wall beside the one that the block's division asks for",
}


@cache
def parts() -> tuple[str, ...]:
    """The parts of the left-hand cylinder that are drawn for it alone."""
    names = (name for name, one in design().specs.items() if isinstance(one, Component))
    return tuple(sorted(name for name in names if "left" in name.split("-") and name not in NO_PLACE))


def test_each_part_that_is_taken_away_is_told() -> None:
    silent = []
    for name in parts():
        specs = {one: spec for one, spec in design().specs.items() if one != name}
        if not told(specs, {name}):
            silent.append(name)
    assert silent == []
    assert len(parts()) > 60


if __name__ == "__main__":
    pytest.main([__file__])
