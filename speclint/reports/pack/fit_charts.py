"""Fits: the zones of hole and shaft about the basic size, and the interference or clearance left when hot."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from speclint.checking import Assessment, Check
from speclint.quantities import Measure
from speclint.reports.pack.anchors import sheet_anchor
from speclint.reports.pack.bars import Bar, chart
from speclint.reports.pack.figures import Figure, dimension_of, followed, specs_of, word
from speclint.specs import Component, CylinderBlock, CylinderLiner, Fit, ValveSeat, ValveSpindle

_MICRO = 1e6
_LONG = 330.0  # room for labels
_SAYS = (
    "Zones are drawn from the basic size of the hole. Interference lies to the right of zero, clearance to the "
    "left; "
)
_HOT = "the hot value is that of the governing load case and tolerance corner on the sheet."
_GAPS = ("clearance", "gap")
_NOT_HOT = "no check of this part calculates the fit hot."


@dataclass(frozen=True, slots=True)
class _Mating:
    """Two features that mate, of one component."""

    part: Component
    hole: Measure
    shaft: Measure
    intent: str = ""


def fit_figures(assessment: Assessment) -> Iterator[Figure]:
    """A figure for each liner, seat, spindle in its guide, and stated fit whose both sizes can be found."""
    for mating in _matings(assessment):
        yield _figure(assessment, mating)


def _matings(assessment: Assessment) -> Iterator[_Mating]:
    for part, hole, shaft, intent in _sizes(assessment):
        if isinstance(hole, Measure) and isinstance(shaft, Measure):
            yield _Mating(part, hole, shaft, intent)


def _sizes(assessment: Assessment) -> Iterator[tuple[Component, object, object, str]]:
    for liner in specs_of(assessment, CylinderLiner):
        block = followed(assessment, liner.housed_in)
        hole = block.bores.get(word(liner.in_bore)) if isinstance(block, CylinderBlock) else None
        yield liner, hole.diameter if hole else None, liner.outside_diameter, ""
    for seat in specs_of(assessment, ValveSeat):
        block = followed(assessment, seat.pressed_into)
        bored = block.seat_bores.get(word(seat.in_bore)) if isinstance(block, CylinderBlock) else None
        yield seat, bored.diameter if bored else None, seat.outside_diameter, ""
    for spindle in specs_of(assessment, ValveSpindle):
        yield spindle, spindle.guide_bore, spindle.diameter, "clearance"
    for fit in specs_of(assessment, Fit):
        hole_of, shaft_of = (dimension_of(assessment, one) for one in (fit.hole, fit.shaft))
        yield fit, hole_of, shaft_of, word(fit.intent)


def _figure(assessment: Assessment, mating: _Mating) -> Figure:
    part, hole, shaft, basic = mating.part, mating.hole, mating.shaft, mating.hole.nominal
    least, most = shaft.low - hole.high, shaft.high - hole.low
    rows = [
        _zone(f"hole {hole.text}", hole.low - basic, hole.high - basic, "hole"),
        _zone(f"shaft {shaft.text}", shaft.low - basic, shaft.high - basic, "shaft"),
        Bar("between them, cold", least * _MICRO, most * _MICRO, _between(least, most), "cold"),
    ]
    hot = [
        _left(check) for check in assessment.checks if check.component == part.id and _is_hot(check, mating)
    ]
    rows += hot
    paper = chart(
        f"fit-{part.id}",
        f"Fit of {part.id}, cold and hot",
        "; ".join(f"{row.label} {row.says}" for row in rows),
        rows,
        "µm on the diameter: clearance to the left, interference to the right of zero",
        labels=_LONG,
    )
    intent = f", meant as {mating.intent}" if mating.intent else ""
    return Figure(
        paper.name,
        part.id,
        f"{part.id}: zones of the fit, cold and hot{intent}",
        _SAYS + (_HOT if hot else _NOT_HOT),
        paper.markup(),
        tuple((row.label, row.says) for row in rows),
        ("what", "size"),
    )


def _zone(label: str, low: float, high: float, ink: str) -> Bar:
    said = f"{_signed(low)} to {_signed(high)} µm"
    return Bar(label, low * _MICRO, high * _MICRO, said, ink)


def _signed(value: float) -> str:
    shown = f"{value * _MICRO:+.0f}".replace("-", "−")
    return "0" if shown in ("+0", "−0") else shown


def _between(least: float, most: float) -> str:
    """An interference, a clearance, or a transition in words."""
    low, high = (abs(end) * _MICRO for end in (least, most))
    if least >= 0:
        return f"interference {low:.0f} to {high:.0f} µm"
    if most <= 0:
        return f"clearance {high:.0f} to {low:.0f} µm"
    return f"clearance {low:.0f} to interference {high:.0f} µm"


def _is_hot(check: Check, mating: _Mating) -> bool:
    """Whether a check calculates an interference or a clearance, in a load case, from the very sizes that mate here."""
    taken = {step.where for step in check.steps if step.kind == "taken"}
    found = check.judgement.found if check.judgement else None
    if found is None or not check.case or not {mating.hole.where, mating.shaft.where} <= taken:
        return False
    return found.unit == "m" and any(name in found.name.lower() for name in ("interference", *_GAPS))


def _left(check: Check) -> Bar:
    """The hot value of a sheet: a clearance where the sheet calls it so, else an interference."""
    found = check.judgement.found if check.judgement else None
    assert found is not None  # as was asked before
    is_gap = any(name in found.name.lower() for name in _GAPS)
    value = -found.value if is_gap else found.value
    ink = "bad" if check.outcome == "finding" else "hot"
    says = f"{'clearance' if value < 0 else 'interference'} {abs(value) * _MICRO:.0f} µm"
    label = f"hot, {check.case} ({check.rule.name})"
    return Bar(label, 0.0, value * _MICRO, says, ink, target=sheet_anchor(check))
