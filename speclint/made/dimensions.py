"""Each dimension that was measured on a part as made, held against the limits of its drawing: ISO 14253-1."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Literal

from msgspec import Struct

from speclint.handbook.inspection import Conformity, Decision, conformity, guard_band, ovality, taper
from speclint.quantities import Measure
from speclint.specs import MadePart, MeasuredSize, QuantityAt, Spec, sizes_of

Verdict = Conformity | Literal["not judged"]


class DimensionMade(Struct, frozen=True):
    """A dimension as measured and as drawn, and what the measurement shows.

    ``why_not`` says why a dimension was not judged. ``band`` is what stands in the place of the drawing's limits where
    rules are run on the part as made: the measured values and the whole of their uncertainty; None where none was
    recorded, or where the drawing does not state the size. ``ovality`` and ``taper`` are in SI units; None where the
    places of the values do not tell.
    """

    key: str
    size: MeasuredSize
    drawn: Measure | None
    guard: float | None
    verdict: Verdict
    why_not: str = ""

    @property
    def band(self) -> Measure | None:
        """The measured values with their uncertainty, as limits."""
        if self.size.uncertainty is None or self.drawn is None:
            return None
        return self.size.band(self.size.uncertainty)

    @property
    def ovality(self) -> float | None:
        """The greatest difference of diameters round one place."""
        return ovality(self._placed) if self._is_diameter else None

    @property
    def taper(self) -> float | None:
        """The greatest difference of the mean diameters of places along the part."""
        return taper(self._placed) if self._is_diameter else None

    @property
    def _is_diameter(self) -> bool:
        last = self.key.rpartition(".")[2]
        return self.size.values[0].value.dimension == "length" and ("diameter" in last or "bore" in last)

    @property
    def _placed(self) -> list[tuple[float | None, float]]:
        return [(one.along, one.value.nominal) for one in self.size.values]


def dimensions_of(made: MadePart, drawn: Spec, decision: Decision) -> tuple[DimensionMade, ...]:
    """What was measured last of each dimension of a part, judged by a decision rule, in the order of the record."""
    return tuple(_judged(size, at, decision) for size, at in sizes_of(made.measured, drawn))


def _judged(size: MeasuredSize, at: QuantityAt, decision: Decision) -> DimensionMade:
    stated = at.drawn if isinstance(at.drawn, Measure) else None
    guard = None if size.uncertainty is None else guard_band(size.uncertainty, decision)
    if why := " and ".join(_why_not(stated, guard)):
        return DimensionMade(at.key, size, stated, guard, "not judged", why)
    assert stated is not None  # or there is a reason
    assert guard is not None
    verdict = conformity(size.least, size.greatest, stated.low, stated.high, guard)
    return DimensionMade(at.key, size, stated, guard, verdict)


def _why_not(stated: Measure | None, guard: float | None) -> Iterator[str]:
    if stated is None:
        yield "the drawing does not state it"
    elif stated.exact:
        yield "the drawing states no limits"
    if guard is None:
        yield "no uncertainty was recorded"
