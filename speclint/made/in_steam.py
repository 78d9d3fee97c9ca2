"""What was measured of parts in steam, held against what their duties assume, and the duties as measured."""

from __future__ import annotations

from collections.abc import Iterable
from typing import TYPE_CHECKING

from msgspec import Struct

from speclint.errors import replace
from speclint.handbook.inspection import Decision, conformity, guard_band
from speclint.made.design_as_made import made_to
from speclint.made.dimensions import Verdict
from speclint.quantities import Measure
from speclint.specs import (
    Component,
    Duty,
    LoadCase,
    MadePart,
    MisreadError,
    NotStated,
    Steaming,
    restated,
    steamings_of,
)

if TYPE_CHECKING:
    from speclint.repository import Design


class InSteam(Struct, frozen=True):
    """A value measured in steam, what it shows beside the duty, and why it was not judged where it was not."""

    value: Steaming
    duty: str
    verdict: Verdict
    why_not: str = ""


def in_steam(made: MadePart, design: Design, decision: Decision) -> tuple[InSteam, ...]:
    """What was measured of a part in steam, each judged by a decision rule; of what cannot be read the loader tells."""
    drawn = made_to(made, design)
    assert drawn is not None  # or it is not judged at all
    duty = design.duty_of(drawn)[0]
    try:
        found = tuple(steamings_of(made, drawn, duty))
    except MisreadError:
        return ()
    return tuple(
        _judged(one, drawn.id if one.of_part or duty is None else duty.id, decision) for one in found
    )


def as_in_steam(spec: Component, made: MadePart, design: Design, decision: Decision) -> Component:
    """A component with the sizes that were measured in steam, and are proved to be outside, in its limits."""
    found: dict[str, Measure | NotStated] = {}
    for one in in_steam(made, design, decision):
        now = spec.under(one.value.key) if one.value.of_part else None
        if one.verdict == "out" and isinstance(now, Measure):
            where = replace(one.value.measured.where, key=one.value.key, part=spec.id)
            band = one.value.stretching(now)
            found[one.value.key] = replace(
                band, nominal=now.nominal, tolerance_class=now.tolerance_class, where=where
            )
    return restated(spec, found) if found else spec


def duties_in_steam(parts: Iterable[MadePart], design: Design, decision: Decision) -> dict[str, Duty]:
    """The duties of some parts, by id, with their limits stretched to hold each value that is proved to be outside."""
    found: dict[str, Duty] = {}
    for part in parts:
        for one in in_steam(part, design, decision):
            duty = found.get(one.duty) or design.specs[one.duty]
            if one.verdict == "out" and not one.value.of_part and isinstance(duty, Duty):
                found[one.duty] = _stretched(duty, one.value)
    return found


_NOT_ASSUMED = "the duty does not state it, or has it worked"


def _judged(one: Steaming, duty: str, decision: Decision) -> InSteam:
    if one.assumed is None:
        return InSteam(
            one, duty, "not judged", "the drawing does not state it" if one.of_part else _NOT_ASSUMED
        )
    if not one.uncertainty_known:
        return InSteam(one, duty, "not judged", "no uncertainty was recorded")
    guard = guard_band((one.measured.high - one.measured.low) / 2, decision)
    value = (one.measured.low + one.measured.high) / 2
    return InSteam(one, duty, conformity(value, value, one.assumed.low, one.assumed.high, guard))


def _stretched(duty: Duty, one: Steaming) -> Duty:
    """A duty that assumes what was measured too."""
    case: LoadCase = duty.cases[one.case]
    table, _, name = one.key.partition(".")
    if table == "temperatures":
        # a part of its own name goes before its kind: the others of the kind keep what is assumed of them
        other = case.model_copy(update={table: {**case.temperatures, name: one.stretched}})
    else:
        other = case.model_copy(update={one.key: one.stretched})
    return duty.model_copy(update={"cases": {**duty.cases, one.case: other}})
