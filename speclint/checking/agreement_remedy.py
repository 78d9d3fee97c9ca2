"""What would make places agree that state one fact: the change here, and the change there.

Each is proved by the rule itself with the value changed, and by the other checks that took it.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from speclint.checking.check_result import Check
from speclint.checking.office_steps import Restated, rounding, sized
from speclint.checking.remedy import Remedy
from speclint.checking.rule_run import check
from speclint.checking.where_it_fails import still_conforms
from speclint.errors import replace
from speclint.quantities import Measure
from speclint.rules import Context, Judgement, StatedPlace, Step, in_words
from speclint.specs import Component

#: A value is moved by this share of itself to see how far the fact moves that it gives.
_PROBE = 1e-3
#: A size of more figures than these is rounded to the steps of the drawing office: common practice.
_FIGURES = 5
#: A value moved by more than this share of itself is another design, not a remedy: common practice.
_REACH = 0.9


def agreed(found: Check, component: Component, checks: Sequence[Check], context: Context) -> list[Remedy]:
    """The changes of one place each after which the places agree.

    First what the one place or the other states, that of the part which is made to suit before; then the values from
    which a fact was worked, those that spoil no other check before others, and the smallest change before greater.
    """
    assert found.judgement is not None  # as was asked by the caller
    alone = {place.where for place in found.judgement.places if place.aim is not None}
    changes = _proved(found, found.judgement, component, checks, context)
    return sorted(
        changes,
        key=lambda one: (0, 0, 0.0) if one.where in alone else (1, len(one.spoils), one.change),
    )


def _proved(
    found: Check, judged: Judgement, component: Component, checks: Sequence[Check], context: Context
) -> Iterator[Remedy]:
    for place in judged.places:
        step = next((one for one in found.steps if one.where == place.where), None)
        if step is None or context.design.is_turned(place.where):
            continue
        aimed = place if place.aim is not None else _solved(found, judged, component, step, context)
        if aimed is None or not _sensible(aimed, step):
            continue
        for restated in _ways_to_write(context, aimed):
            changed = _changed(context, step, aimed, restated)
            part = _same_pair(check(found.rule, component, changed), judged)
            if part is not None and part.holds:
                name, spoils = _name(place, component, context), _spoilt(place, checks, changed)
                yield _remedy(step, aimed, name, spoils, restated)
                break


def _solved(
    found: Check, judged: Judgement, component: Component, step: Step, context: Context
) -> StatedPlace | None:
    """What one of several values that give a fact would have to be; None for a word, or where it moves nothing."""
    if step.kind not in ("taken", "counted"):
        return None
    apart, stated = _apart(judged), _stated(step)
    if apart is None or not stated or judged.compared != "=":
        return None
    shift = _PROBE * stated
    moved = check(found.rule, component, replace(context, moved=context.design.moved(step.where, shift)))
    then = _same_pair(moved, judged)
    beyond = None if then is None else _apart(then)
    if beyond is None or beyond == apart:
        return None
    return StatedPlace(step.where, stated - apart * shift / (beyond - apart))


def _apart(judged: Judgement) -> float | None:
    """How much more the first places state than the others."""
    return None if judged.found is None or judged.limit is None else judged.found.value - judged.limit.value


def _same_pair(one: Check, judged: Judgement) -> Judgement | None:
    """The judgement of a check on the same places."""
    wanted = {place.where for place in judged.places}
    parts = () if one.judgement is None else (*one.failing, *one.judgement.every)
    return next((part for part in parts if {place.where for place in part.places} == wanted), None)


def _sensible(aimed: StatedPlace, step: Step) -> bool:
    """Whether a value could be drawn: a quantity keeps its sign and about its size; another design is no remedy."""
    if not isinstance(aimed.aim, float) or isinstance(step.value, str | bool):
        return True
    stated = _stated(step)
    return aimed.aim * stated > 0 and abs(aimed.aim - stated) <= _REACH * abs(stated)


def _ways_to_write(context: Context, place: StatedPlace) -> list[tuple[Measure, Restated] | None]:
    """The quantity at a place, and how it would be written, that which an engineer would write first.

    That is the size itself where it has few figures, else the next steps of the drawing office beyond it. None alone
    for a word, a count, or what is not written so.
    """
    exact = _restated(context, place)
    if exact is None:
        return [None]
    stated, restated = exact
    if sum(sign.isdigit() for sign in restated.text.partition(" ")[0]) <= _FIGURES:
        return [exact]
    steps = rounding(stated)
    if steps is None:
        return [exact]
    rounded = (
        steps.rounded(restated.by, finer, further) for finer in range(len(steps.steps)) for further in (0, 1)
    )
    return [*((stated, one) for one in rounded if one is not None), exact]


def _restated(context: Context, place: StatedPlace) -> tuple[Measure, Restated] | None:
    """The quantity at a place with the size that it is to have; None for a word, a count, or what is not written so."""
    if not isinstance(place.aim, float):
        return None
    try:
        stated = context.design.specs[context.design.owner(place.where)].under(place.where.key)
    except LookupError:
        return None
    if not isinstance(stated, Measure) or stated.dimension.startswith("temperature"):
        return None
    restated = sized(stated, place.aim)
    return (stated, restated) if restated else None


def _changed(
    context: Context, step: Step, place: StatedPlace, restated: tuple[Measure, Restated] | None
) -> Context:
    assert place.aim is not None  # as was asked by the caller
    if restated is not None:
        value = restated[1].value
        assert isinstance(value, Measure)
        return replace(context, moved=context.design.restated(place.where, value))
    if isinstance(place.aim, str | bool):
        return replace(context, worded=context.design.reworded(place.where, place.aim))
    return replace(context, moved=context.design.moved(place.where, place.aim - _stated(step)))


def _stated(step: Step) -> float:
    return step.stated if step.kind in ("taken", "counted") else float(step.value)


def _name(place: StatedPlace, component: Component, context: Context) -> str:
    words = in_words(place.where.key)
    owner = context.design.owner(place.where)
    return words if owner == component.id else f"{words} of {owner}"


def _remedy(
    step: Step,
    place: StatedPlace,
    name: str,
    spoils: tuple[str, ...],
    restated: tuple[Measure, Restated] | None,
) -> Remedy:
    assert place.aim is not None  # as was asked by the caller
    now = step.value if isinstance(step.value, str | bool) else _stated(step)
    remedy = Remedy(place.where, name, now, place.aim, step.unit, step.written_in, None, spoils)
    if restated is None:
        return remedy
    stated, other = restated
    return replace(remedy, then=stated.nominal + other.by, written=stated.text, instead=other.text)


def _spoilt(place: StatedPlace, checks: Sequence[Check], changed: Context) -> tuple[str, ...]:
    """The rules that took the value, hold as it is, and would not hold with it changed."""
    took = (
        one
        for one in checks
        if one.outcome == "conforms"
        and not one.rule.reviews
        and any(step.where.drawn == place.where.drawn for step in one.steps)
    )
    parts = ((one, changed.design.specs[one.component]) for one in took)
    failing = (
        one.rule.name
        for one, part in parts
        if isinstance(part, Component) and not still_conforms(one, part, changed)
    )
    return tuple(dict.fromkeys(failing))
