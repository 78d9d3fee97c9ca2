"""Every declared agreement, on the example: where two places agree, a change of either is found and names both."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from functools import cache
from pathlib import Path

import pytest

from speclint.checking import Assessment, Check, assess, check
from speclint.rules import Context, Judgement, Place, Step
from speclint.specs import Component
from speclint.testing import installed_families

EXAMPLE = Path(__file__).parents[3] / "example_specs"
AGREEMENTS = {rule.name: rule for rule in installed_families().rules if rule.agreement}
#: Shares by which a stated quantity is changed, either way: beyond every difference that a rule allows.
_BEYOND = (0.3, -0.3, 3.0)
#: Another word of those that a key accepts; of a key that accepts any, another word at all.
_OTHER = {
    "live steam": "exhaust steam",
    "exhaust steam": "live steam",
}


@cache
def assessed() -> Assessment:
    return assess([EXAMPLE], installed_families(), list(AGREEMENTS.values()))


def agreeing(rule: str) -> Iterator[tuple[Check, Judgement]]:
    """Every pair of places of a rule that agree."""
    for one in assessed().checks:
        if one.rule.name == rule and one.judgement is not None:
            yield from ((one, part) for part in one.judgement.every if part.holds and part.places)


def changes(step: Step, place: Place, context: Context) -> Iterator[Context]:
    """The design with another value at one place."""
    if isinstance(step.value, bool):
        yield replace(context, worded={place.where: not step.value})
    elif isinstance(step.value, str):
        yield replace(context, worded={place.where: _OTHER.get(step.value, f"not {step.value}")})
    else:
        sizes = (1.0, -1.0) if step.kind == "counted" else tuple(share * step.stated for share in _BEYOND)
        yield from (replace(context, moved={place.where: shift}) for shift in sizes)


@pytest.mark.parametrize("rule", sorted(AGREEMENTS))
def test_a_change_of_either_place_is_found(rule: str) -> None:
    context = assessed().context
    assert context is not None
    tried = 0
    for found, part in agreeing(rule):
        component = context.design.specs[found.component]
        assert isinstance(component, Component)
        for place in part.places:
            step = next((one for one in found.steps if one.where == place.where), None)
            if step is None:  # a link is no value: another part would have to be drawn
                continue
            after = [check(found.rule, component, other) for other in changes(step, place, context)]
            told = [one for one in after if one.outcome == "finding" and not one.could_not_run]
            assert told, f"{place.where} may state anything"
            named = {inner.where for one in told for judged in one.failing for inner in judged.places}
            assert {inner.where for inner in part.places} <= named
            tried += 1
    if not tried:
        pytest.skip("no pair of the example agrees: the rule's own test has one")
