"""Fits: the zones of hole and shaft about the basic size, and what of an interference or clearance is left hot."""

from __future__ import annotations

from collections.abc import Iterator

from speclint.assessment import Assessment
from speclint.checks import Check
from speclint.quantities import Measure
from speclint.reports.pack.anchors import sheet_anchor
from speclint.reports.pack.bars import Bar, chart
from speclint.reports.pack.figures import Figure, followed, specs_of, word
from speclint.specs import CylinderBlock, CylinderLiner, ValveSeat
from speclint.specs.part import Component

_MICRO = 1e6


def fit_figures(assessment: Assessment) -> Iterator[Figure]:
    """A figure for each liner and each seat that has a class of fit in a bore of its block."""
    for liner in specs_of(assessment, CylinderLiner):
        block = followed(assessment, liner.housed_in)
        hole = block.bores.get(word(liner.in_bore)) if isinstance(block, CylinderBlock) else None
        yield from _figure(assessment, liner, hole.diameter if hole else None, liner.outside_diameter)
    for seat in specs_of(assessment, ValveSeat):
        block = followed(assessment, seat.pressed_into)
        bored = block.seat_bores.get(word(seat.in_bore)) if isinstance(block, CylinderBlock) else None
        yield from _figure(assessment, seat, bored.diameter if bored else None, seat.outside_diameter)


def _figure(assessment: Assessment, part: Component, hole: object, shaft: object) -> Iterator[Figure]:
    if not isinstance(hole, Measure) or not isinstance(shaft, Measure):
        return
    basic = hole.nominal
    least, most = shaft.low - hole.high, shaft.high - hole.low
    rows = [
        _zone(f"hole {hole.text}", hole.low - basic, hole.high - basic, "hole"),
        _zone(f"shaft {shaft.text}", shaft.low - basic, shaft.high - basic, "shaft"),
        _zone("interference cold", least, most, "cold"),
    ]
    rows += [_left(check) for check in assessment.checks if check.component == part.id and _is_left(check)]
    paper = chart(
        f"fit-{part.id}",
        f"Fit of {part.id}, cold and hot",
        "; ".join(f"{row.label} {row.says}" for row in rows),
        rows,
        "µm on the diameter; a clearance is below nothing",
    )
    yield Figure(
        paper.name,
        part.id,
        f"{part.id}: zones of the fit, cold and hot",
        "Zones are drawn from the basic size; what is left hot is that of the governing tolerance corner on the sheet.",
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


def _is_left(check: Check) -> bool:
    """Whether the check asks that something of a cold interference is left."""
    left = check.judgement.left if check.judgement else None
    return left is not None and left.unit == "m" and "interference" in left.name.lower()


def _left(check: Check) -> Bar:
    left = check.judgement.left if check.judgement else None
    assert left is not None  # as was asked before
    ink = "bad" if check.outcome == "finding" else "hot"
    label = f"left, {check.case or 'as drawn'} ({check.rule.name})"
    return Bar(label, 0.0, left.value * _MICRO, f"{_signed(left.value)} µm", ink, target=sheet_anchor(check))
