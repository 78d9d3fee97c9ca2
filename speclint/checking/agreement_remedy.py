"""What would make places agree that state one fact: the change here, and the change there.

Each is proved by the rule itself with the value changed, and by the other checks that took it.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

from speclint.checking.check_result import Check
from speclint.checking.remedy import Remedy
from speclint.checking.rule_run import check, still_conforms
from speclint.rules import Context, Judgement, StatedPlace, Step, in_words
from speclint.specs import Component


def agreed(found: Check, component: Component, checks: Sequence[Check], context: Context) -> list[Remedy]:
    """The changes of one place each after which the places agree, that of the part which is made to suit first."""
    assert found.judgement is not None  # as was asked by the caller
    return list(_proved(found, found.judgement, component, checks, context))


def _proved(
    found: Check, judged: Judgement, component: Component, checks: Sequence[Check], context: Context
) -> Iterator[Remedy]:
    disagreeing = {place.where for place in judged.places}
    for place in judged.places:
        step = next((one for one in found.steps if one.where == place.where), None)
        if step is None or place.aim is None:
            continue
        changed = _changed(context, step, place)
        proof = check(found.rule, component, changed)
        if not any({one.where for one in part.places} == disagreeing for part in proof.failing):
            spoils = _spoilt(place, checks, changed)
            yield _remedy(step, place, _name(place, component, context), spoils)


def _changed(context: Context, step: Step, place: StatedPlace) -> Context:
    if isinstance(place.aim, str | bool) or place.aim is None:
        return replace(context, worded={place.where: place.aim})
    return replace(context, moved={place.where: place.aim - _stated(step)})


def _stated(step: Step) -> float:
    return step.stated if step.kind in ("taken", "counted") else float(step.value)


def _name(place: StatedPlace, component: Component, context: Context) -> str:
    words = in_words(place.where.key)
    other = place.where.file != component.where.file
    return f"{words} of {context.design.owner(place.where.file)}" if other else words


def _remedy(step: Step, place: StatedPlace, name: str, spoils: tuple[str, ...]) -> Remedy:
    assert place.aim is not None  # as was asked by the caller
    now = step.value if isinstance(step.value, str | bool) else _stated(step)
    return Remedy(place.where, name, now, place.aim, step.unit, step.written_in, None, spoils)


def _spoilt(place: StatedPlace, checks: Sequence[Check], changed: Context) -> tuple[str, ...]:
    """The rules that took the value, hold as it is, and would not hold with it changed."""
    took = (
        one
        for one in checks
        if one.outcome == "conforms"
        and not one.rule.reviews
        and any(step.where == place.where for step in one.steps)
    )
    parts = ((one, changed.design.specs[one.component]) for one in took)
    failing = (
        one.rule.name
        for one, part in parts
        if isinstance(part, Component) and not still_conforms(one, part, changed)
    )
    return tuple(dict.fromkeys(failing))
