"""Every declared agreement, on the example: where two places agree, a change of either is found and names both."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

import pytest

from speclint.checking import Check, check
from speclint.rules import Context, Judgement, StatedPlace, Step
from speclint.specs import Component
from speclint.testing import installed_families
from tests.example import assessed

AGREEMENTS = {rule.name: rule for rule in installed_families().rules if rule.agreement}
#: Shares by which a stated quantity is changed, either way, or nothing by so many units: beyond what any rule allows.
_BEYOND = (0.31, -0.29, 3.07, -0.9, 99.0)
#: Another word of those that a key accepts; of a key that accepts any, another word at all.
_OTHER = {
    "live steam": "exhaust steam",
    "exhaust steam": "live steam",
    "front": "back",
    "stress relieved": "none",
    "none": "stress relieved",
    "before stress relief": "after stress relief",
    "back": "front",
    "one fixed and one pinned": "both fixed",
}


def agreeing(rule: str) -> Iterator[tuple[Check, Judgement]]:
    """Every pair of places of a rule that agree."""
    for one in assessed().checks:
        if one.rule.name == rule and one.judgement is not None:
            yield from ((one, part) for part in one.judgement.every if part.holds and part.places)


def changes(step: Step, place: StatedPlace, context: Context) -> Iterator[Context]:
    """The design with another value at one place."""
    if isinstance(step.value, bool):
        yield replace(context, worded={place.where: not step.value})
    elif isinstance(step.value, str):
        yield replace(context, worded={place.where: _OTHER.get(step.value, f"not {step.value}")})
    else:
        sizes = (
            (1.0, -1.0, 9.0)
            if step.kind == "counted"
            else tuple(share * (step.stated or 1.0) for share in _BEYOND)
        )
        yield from (replace(context, moved={place.where: shift}) for shift in sizes)


def told_of(found: Check, part: Judgement, place: StatedPlace, context: Context) -> bool:
    """Whether another value at one place draws a finding that names all places of the pair."""
    step = next((one for one in found.steps if one.where == place.where), None)
    component = context.design.specs[found.component]
    if step is None or not isinstance(component, Component):
        return False
    wanted = {one.where for one in part.places}
    for other in changes(step, place, context):
        after = check(found.rule, component, other)
        named = [{one.where for one in judged.places} for judged in after.failing]
        if not after.could_not_run and any(wanted <= places for places in named):
            return True
    return False


def is_taken(found: Check, place: StatedPlace) -> bool:
    """Whether a place has a value; a link has none: another part would have to be drawn."""
    return any(one.where == place.where for one in found.steps)


@pytest.mark.parametrize("rule", sorted(AGREEMENTS))
def test_a_change_of_either_place_is_found(rule: str) -> None:
    """Of sizes that must be equal every place; of a size that has only to reach, and of words, at least one of them."""
    context = assessed().context
    assert context is not None
    pairs = list(agreeing(rule))
    for found, part in pairs:
        told = [told_of(found, part, place, context) for place in part.places if is_taken(found, place)]
        if told:
            assert all(told) if part.compared == "=" else any(told), [str(one.where) for one in part.places]
    if not pairs:
        pytest.skip("no pair of the example agrees: the rule's own test has one")
