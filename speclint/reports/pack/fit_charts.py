"""Fits: the zones of hole and shaft about the basic size, cold and hot, each part at its temperature."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator, Mapping, Sequence

from msgspec import Struct

from speclint.checking import Assessment, Check
from speclint.quantities import Measure
from speclint.reports.pack.anchors import sheet_anchor
from speclint.reports.pack.bars import Bar, chart
from speclint.reports.pack.figures import Figure, dimension_of, followed, said, specs_of, word
from speclint.reports.pack.hot_fits import HotFit, hot_fit, less
from speclint.reports.pack.printed import Quantity, Words, shown, stated, words, worked
from speclint.reports.pack.warmed_fits import warmed
from speclint.specs import Component, CylinderBlock, CylinderLiner, Fit, ValveSeat, ValveSpindle

_LONG = 330.0  # room for labels
_SAYS = (
    "Zones are drawn from the basic size of the hole, on the diameter. Interference lies to the right of zero, "
    "clearance to the left. "
)
_HOT = (
    "Hot, each part has grown as the sheet of the check has it at its governing load case and corner; what the sheet "
    "judges may be less than the least of the zones by what the roughness of the faces gives way."
)
_NOT_HOT = "No check of this part calculates the fit hot."


class _Mating(Struct, frozen=True):
    """Two features that mate, of one component."""

    part: Component
    hole: Measure
    shaft: Measure
    intent: str = ""


def fit_figures(assessment: Assessment) -> Iterator[Figure]:
    """Figures of each liner, seat, spindle in its guide, and stated fit whose both sizes can be found."""
    checks = defaultdict[str, list[Check]](list)
    for check in assessment.checks:
        checks[check.component].append(check)
    for mating in _matings(assessment):
        hot = _hot_of(mating, checks)
        yield _figure(mating, hot)
        if hot is not None and hot.cold is not None:
            yield warmed(mating.part.id, hot, (mating.hole, mating.shaft))


def _hot_of(mating: _Mating, checks: Mapping[str, Sequence[Check]]) -> HotFit | None:
    return hot_fit(checks.get(mating.part.id, ()), mating.hole.where.key, mating.shaft.where.key)


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


def _figure(mating: _Mating, hot: HotFit | None) -> Figure:
    part = mating.part
    rows = [*_cold_rows(mating), *(_hot_rows(mating, hot) if hot is not None else ())]
    paper = chart(
        f"fit-{part.id}",
        f"Fit of {part.id}, cold and hot",
        "; ".join(f"{row.label} {row.says}" for row in rows),
        rows,
        "{µm} on the diameter: clearance to the left, interference to the right of zero",
        labels=_LONG,
    )
    intent = f", meant as {mating.intent}" if mating.intent else ""
    return Figure.of(
        paper,
        part.id,
        f"{part.id}: zones of the fit, cold and hot{intent}",
        _SAYS + (_HOT if hot is not None else _NOT_HOT),
        ((row.label, row.says) for row in rows),
        ("what", "size"),
    )


def _ends(mating: _Mating, hot: HotFit | None = None) -> tuple[tuple[Quantity, Quantity], ...]:
    """The zone of the hole, that of the shaft, and the least and greatest interference between them."""
    basic = stated(mating.hole)
    zones = []
    growths = (None, None) if hot is None else (hot.hole, hot.shaft)
    for part, growth in zip((mating.hole, mating.shaft), growths, strict=True):
        sides = [stated(part, "low"), stated(part, "high")]
        if growth is not None:
            sides = [worked(more, one=one, other=growth) for one in sides]
        zones.append((sides[0], sides[1]))
    (hole_low, hole_high), (shaft_low, shaft_high) = zones
    between = worked(less, one=shaft_low, other=hole_high), worked(less, one=shaft_high, other=hole_low)
    drawn = [(worked(less, one=low, other=basic), worked(less, one=high, other=basic)) for low, high in zones]
    return (*drawn, between)


def more(one: float, other: float) -> float:
    """One size and another together."""
    return one + other


def _cold_rows(mating: _Mating) -> Iterator[Bar]:
    hole, shaft, between = _ends(mating)
    yield _zone(words("hole {}", said(mating.hole)), hole, "hole")
    yield _zone(words("shaft {}", said(mating.shaft)), shaft, "shaft")
    yield _bar("between them, cold", between, _between(between), "cold")


def _hot_rows(mating: _Mating, hot: HotFit) -> Iterator[Bar]:
    hole, shaft, between = _ends(mating, hot)
    yield _zone(words("hole at {} {°C}", shown(hot.hole_at, "°C", 0)), hole, "hole")
    yield _zone(words("shaft at {} {°C}", shown(hot.shaft_at, "°C", 0)), shaft, "shaft")
    yield _bar(f"between them, {hot.check.case}", between, _between(between), "hot")
    name = "clearance" if hot.left.value < 0 else "interference"
    says = words(f"{name} {{}} {{µm}}", shown(hot.left, "µm", 0, sign=-1 if hot.left.value < 0 else 1))
    ink = "bad" if hot.check.outcome == "finding" else "hot"
    of = ((hot.left, "µm", 1),)
    at = hot.left.in_unit("µm")
    label = f"on the sheet, {hot.check.rule.name}"
    yield Bar(label, 0.0, at, says, ink, target=sheet_anchor(hot.check), of=of)


def _bar(label: str, ends: tuple[Quantity, Quantity], says: Words, ink: str) -> Bar:
    low, high = (one.in_unit("µm") for one in ends)
    of = tuple((one, "µm", 1) for one in ends) if high > low else ((ends[0], "µm", 1),)
    return Bar(label, low, high, says, ink, of=of)


def _zone(label: str, ends: tuple[Quantity, Quantity], ink: str) -> Bar:
    says = words("{} to {} {µm}", *(shown(one, "µm", 0, signed=True) for one in ends))
    return _bar(label, ends, says, ink)


def _between(ends: tuple[Quantity, Quantity]) -> Words:
    """An interference, a clearance, or a transition in words."""
    least, most = ends
    low, high = (shown(one, "µm", 0, sign=-1 if one.value < 0 else 1) for one in ends)
    if least.value >= 0:
        return words("interference {} to {} {µm}", low, high)
    if most.value <= 0:
        return words("clearance {} to {} {µm}", high, low)
    return words("clearance {} to interference {} {µm}", low, high)
