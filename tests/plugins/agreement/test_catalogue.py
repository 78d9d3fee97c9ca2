"""Every declared agreement, on the example: where two places agree, a change of either is found and names both."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from functools import cache
from pathlib import Path

import pytest

from speclint.checking import Check, check
from speclint.errors import Location, replace
from speclint.rules import Context, Judgement, StatedPlace, Step
from speclint.specs import Component
from speclint.testing import installed_families
from tests.example import assessed, is_of_one

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
    "wire-oil-tempered-VDSiCr": "wire-patented-SH",
}
#: Agreements of links, and of a name by which a link is found: another name is that of another pair of places.
_LINKS_ALONE = frozenset({"axle.pins-of-its-cranks", "chain.parts-of-one-block"})
#: Agreements with the nearest of several places: where one is changed, another is the nearest.
_WITH_THE_NEAREST = frozenset({"shaft.driven-as-its-gear"})


def agreeing(rule: str) -> Iterator[tuple[Check, Judgement]]:
    """Every pair of places of a rule that agree: of one cylinder and of what all share, as the others are alike."""
    checks = [one for one in _checks().get(rule, ()) if one.judgement is not None]
    for one in [one for one in checks if is_of_one(one.component)] or checks:
        if one.judgement is not None:
            yield from ((one, part) for part in one.judgement.every if part.holds and part.places)


@cache
def _checks() -> dict[str, list[Check]]:
    """The checks of each rule of the example."""
    found: dict[str, list[Check]] = {}
    for one in assessed().checks:
        found.setdefault(one.rule.name, []).append(one)
    return found


def changes(step: Step, place: StatedPlace, context: Context, past: Sequence[float]) -> Iterator[Context]:
    """The design with another value at one place; ``past`` are shifts by which a size passes the others of its pair."""
    if isinstance(step.value, bool):
        yield replace(context, worded={place.where: not step.value})
    elif isinstance(step.value, str):
        yield replace(context, worded={place.where: _OTHER.get(step.value, f"not {step.value}")})
    else:
        sizes = (
            (1.0, -1.0, 9.0)
            if step.kind == "counted"
            else (*(share * (step.stated or 1.0) for share in _BEYOND), *past)
        )
        yield from (replace(context, moved={place.where: shift}) for shift in sizes)


def told_of(found: Check, part: Judgement, place: StatedPlace, context: Context) -> bool:
    """Whether another value at one place draws a finding that names all places of the pair."""
    step = next((one for one in found.steps if one.where == place.where), None)
    component = context.design.specs[found.component]
    if step is None or not isinstance(component, Component):
        return False
    wanted = {one.where for one in part.places}
    for other in changes(step, place, context, _past_others(found, part, place)):
        after = check(found.rule, component, other)
        named = [{one.where for one in judged.places} for judged in after.failing]
        if not after.could_not_run and any(wanted <= places for places in named):
            return True
    return False


def _past_others(found: Check, part: Judgement, place: StatedPlace) -> list[float]:
    """Shifts by which a size passes each of the others of its pair, however far apart they are."""
    own = quantity(found, place) or 0.0
    others = [quantity(found, one) for one in part.places if one.where != place.where]
    return [1.1 * (other - own) for other in others if other is not None]


def moved(found: Check, shifts: dict[Location, float], context: Context) -> Check | None:
    """A check once some quantities are changed; None where it could not be run."""
    component = context.design.specs[found.component]
    assert isinstance(component, Component)
    after = check(found.rule, component, replace(context, moved=shifts))
    return None if after.could_not_run else after


def quantity(found: Check, place: StatedPlace) -> float | None:
    """The value of a place in SI units, where it is a quantity above nothing and not a count."""
    step = next((one for one in found.steps if one.where == place.where), None)
    if step is None or step.kind == "counted" or not isinstance(step.value, float) or not step.stated:
        return None
    return step.stated


def wrong_at(found: Check | None, part: Judgement) -> bool:
    """Whether a check finds that the places of a pair do not agree."""
    wanted = {one.where for one in part.places}
    return found is not None and any(
        wanted <= {one.where for one in bad.places} and bad.compared == part.compared for bad in found.failing
    )


def is_taken(found: Check, place: StatedPlace) -> bool:
    """Whether a place has a value; a link has none: another part would have to be drawn."""
    return any(one.where == place.where for one in found.steps)


def test_every_agreement_is_tested_beside_the_example() -> None:
    """A small design for each, so that none rests on what the example happens to state."""
    here = Path(__file__)
    texts = [one.read_text(encoding="utf-8") for one in here.parents[1].rglob("test_*.py") if one != here]
    assert not [rule for rule in AGREEMENTS if not any(f'"{rule}"' in text for text in texts)]


#: A point that names another feed than before shares none.
_OF_FEEDS = {"lubrication.one-feed"}


@pytest.mark.parametrize("rule", sorted(AGREEMENTS.keys() - _LINKS_ALONE - _WITH_THE_NEAREST - _OF_FEEDS))
def test_a_change_of_either_place_is_found(rule: str) -> None:
    """Of sizes that must be equal every place; of a size that has only to reach, and of words, at least one of them."""
    context = assessed().context
    assert context is not None
    pairs = list(agreeing(rule))
    for found, part in pairs:
        places = [place for place in part.places if is_taken(found, place)]
        told = (told_of(found, part, place, context) for place in places)  # no more than decide
        if places:
            assert all(told) if part.compared == "=" else any(told), [str(one.where) for one in part.places]
    if not pairs:
        pytest.skip("no pair of the example agrees: the rule's own test has one")


@pytest.mark.parametrize("rule", sorted(AGREEMENTS.keys() - _WITH_THE_NEAREST))
def test_two_places_that_move_together_go_on_agreeing(rule: str) -> None:
    """A remedy at the one place or at the other: it is the difference that counts, and not which of them is right."""
    context = assessed().context
    assert context is not None
    pairs = [
        (found, part)
        for found, part in agreeing(rule)
        if len(part.places) == 2 and part.compared == "=" and all(quantity(found, one) for one in part.places)
    ]
    for found, part in pairs[:3]:
        here, there = part.places
        if here.aim is None or there.aim is None:
            continue
        by = 0.1 * (quantity(found, here) or 0.0)
        assert wrong_at(moved(found, {here.where: by}, context), part)
        assert wrong_at(moved(found, {there.where: by}, context), part)
        both = moved(found, {here.where: by, there.where: by}, context)
        assert both is not None
        assert not wrong_at(both, part)


#: Agreements in which a value also chooses what it is held against: the nearer end of a port, the next groove.
_CHOOSING = {"liner.port-open-at-dead-centre", "piston.grooves-fit"}


@pytest.mark.parametrize("rule", sorted(set(AGREEMENTS) - _CHOOSING))
def test_what_goes_farther_astray_never_agrees_again(rule: str) -> None:
    """Of a size that has to reach, or not to exceed, another: below it once, it is below it farther off too."""
    context = assessed().context
    assert context is not None
    pairs = [(found, part) for found, part in agreeing(rule) if part.compared in ("≥", "≤", "=")]
    for found, part in pairs[:1]:
        size = quantity(found, part.places[0])
        for shares in ((-0.3, -0.6), (0.4, 0.8)):
            near, far = (
                moved(found, {part.places[0].where: share * size}, context) if size else None
                for share in shares
            )
            if wrong_at(near, part) and far is not None:
                assert wrong_at(far, part)
