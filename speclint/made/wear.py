"""Wear of a part by what was measured on it at overhauls: the rate, and the day on which each limit is met."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from datetime import date
from typing import Literal

from speclint.errors import dataclass
from speclint.handbook.inspection import Trend, ovality, straight_line, taper
from speclint.quantities import Measure
from speclint.specs import Component, MadePart, MeasuredSize, all_sizes_of

#: What of the values measured on one day wear changes.
What = Literal["greatest", "least", "out of round or tapered"]


@dataclass(frozen=True, slots=True)
class Wearing:
    """A size that wear changes: under which key it is measured, what of it counts, and the key of its limit."""

    called: str
    key: str
    what: What
    limit: str


#: By kind, as the tables of wear say what is measured. The depth worn off a face is no size of its part.
WEARING: Mapping[str, tuple[Wearing, ...]] = {
    "cylinder-liner": (
        Wearing("bore, to the last", "bore", "greatest", "last_bore"),
        Wearing("bore, out of round or tapered", "bore", "out of round or tapered", "wear.limit"),
    ),
    "piston-ring": (Wearing("radial thickness", "thickness", "least", "wear.limit"),),
    "compression-spring": (Wearing("free length, by set", "free_length", "least", "wear.limit"),),
    "pin": (Wearing("clearance of the bearing", "wear.new", "greatest", "wear.limit"),),
    "rocker": (Wearing("clearance of the bearing", "wear.new", "greatest", "wear.limit"),),
    "slide-bar": (Wearing("clearance of the slippers", "wear.new", "greatest", "wear.limit"),),
}


@dataclass(frozen=True, slots=True)
class Worn:
    """A size by what was measured on two days or more, beside its limit; all in SI units.

    ``meets`` is the day on which the limit is met with the expanded uncertainty in days; None where the rate is not
    proved, or leads away from the limit. ``past`` tells whether the last measurement has passed the limit, its
    uncertainty left out.
    """

    size: Wearing
    unit: str
    days: tuple[date, ...]
    values: tuple[float, ...]
    limit: Measure
    trend: Trend
    meets: tuple[float, float] | None
    past: bool

    @property
    def day_met(self) -> date | None:
        """The day on which the limit is met; None where there is none, or a calendar has none so late."""
        if self.meets is None or not 1 <= round(self.meets[0]) <= date.max.toordinal():
            return None
        return date.fromordinal(round(self.meets[0]))


def wear_of(made: MadePart, drawn: Component) -> Iterator[Worn]:
    """The wear of each size that was measured on two days or more, and of which the drawing states the limit."""
    for size in (one for kind in drawn.words() for one in WEARING.get(kind, ())):
        limit = drawn.under(size.limit)
        points = sorted(_points(made, drawn, size))
        if len({day for day, _, _ in points}) < 2 or not isinstance(limit, Measure):
            continue
        trend = straight_line([(float(day), value, U) for day, value, U in points])
        growing = size.what != "least"
        met = trend.meets(limit.low if growing else limit.high)
        last = points[-1][1]
        past = last > limit.low if growing else last < limit.high
        ahead = (trend.rate > 0) == growing
        days = tuple(date.fromordinal(day) for day, _, _ in points)
        values = tuple(value for _, value, _ in points)
        yield Worn(size, limit.unit, days, values, limit, trend, met if ahead else None, past)


def _points(made: MadePart, drawn: Component, size: Wearing) -> Iterator[tuple[int, float, float]]:
    """Day, value and expanded uncertainty of each measurement that has all three."""
    for found, at in all_sizes_of(made.measured, drawn):
        value = _counts(found, size.what) if at.key == size.key else None
        day = _day(found.date)
        if value is not None and day is not None and found.uncertainty is not None:
            # a difference of two readings is known to the uncertainty of both
            both = 2**0.5 if size.what == "out of round or tapered" else 1.0
            yield day.toordinal(), value, found.uncertainty * both


def _counts(found: MeasuredSize, what: What) -> float | None:
    if what == "greatest":
        return found.greatest
    if what == "least":
        return found.least
    placed = [(one.along, one.value.nominal) for one in found.values]
    return max((one for one in (ovality(placed), taper(placed)) if one is not None), default=None)


def _day(text: str) -> date | None:
    try:
        return date.fromisoformat(text)
    except ValueError:
        return None
