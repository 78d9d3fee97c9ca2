"""Wear of a part by what was measured on it at overhauls: the rate, and the day on which each limit is met."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from datetime import date
from typing import Literal

from msgspec import Struct

from speclint.errors import Location
from speclint.handbook.inspection import Trend, ovality, straight_line, taper
from speclint.quantities import Measure, read
from speclint.specs import Component, MadePart, MeasuredSize, all_sizes_of, as_range

#: What of the values measured on one day wear changes.
What = Literal["greatest", "least", "out of round or tapered"]


class Wearing(Struct, frozen=True):
    """A size that wear changes: under which key it is measured, what of it counts, and the key of its limit."""

    called: str
    key: str
    what: What
    limit: str


#: By kind, as the tables of wear say what is measured; what is no size of its part has the key ``wear.as_worn``.
WEARING: Mapping[str, tuple[Wearing, ...]] = {
    "cylinder-liner": (
        Wearing("bore, to the last", "bore", "greatest", "last_bore"),
        Wearing("bore, out of round or tapered", "bore", "out of round or tapered", "wear.limit"),
    ),
    "piston-ring": (
        Wearing("radial thickness", "thickness", "least", "wear.limit"),
        Wearing("gap between the ends", "gap", "greatest", "wear.gap_limit"),
    ),
    "cam": (Wearing("lift lost", "wear.as_worn", "greatest", "wear.limit"),),
    "poppet-valve": (Wearing("depth worn off the face", "wear.as_worn", "greatest", "wear.limit"),),
    "valve-seat": (Wearing("depth by which the seat sank", "wear.as_worn", "greatest", "wear.limit"),),
    "valve-spindle": (Wearing("clearance in the guide", "wear.as_worn", "greatest", "wear.limit"),),
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
    uncertainty left out. ``last`` is what was measured last, ``rate`` how fast it goes either way, each with its
    uncertainty as limits; ``rate`` is None where none is proved.
    """

    size: Wearing
    unit: str
    days: tuple[date, ...]
    values: tuple[float, ...]
    limit: Measure
    trend: Trend
    meets: tuple[float, float] | None
    past: bool
    last: Measure
    rate: Measure | None

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
        _, last, U = points[-1]
        written = max((one for one in _of_key(made, drawn, size) if _day(one.date)), key=lambda one: one.date)
        band = as_range(last - U, last + U, written.values[0].value, written.where)
        past = last > limit.low if growing else last < limit.high
        ahead = (trend.rate > 0) == growing
        days = tuple(date.fromordinal(day) for day, _, _ in points)
        values = tuple(value for _, value, _ in points)
        yield Worn(
            size,
            limit.unit,
            days,
            values,
            limit,
            trend,
            met if ahead else None,
            past,
            band,
            _rate(trend, written.where),
        )


_DAY = 86400.0  # s: by definition


def _rate(trend: Trend, where: Location) -> Measure | None:
    """The rate of a line, whichever way it goes, with its uncertainty; None where it is not proved."""
    rate, half = abs(trend.rate) / _DAY, trend.rate_uncertainty / _DAY
    if rate <= half:
        return None
    return as_range(rate - half, rate + half, read("1 mm/year", "wasting rate"), where)


def _of_key(made: MadePart, drawn: Component, size: Wearing) -> Iterator[MeasuredSize]:
    return (one for one, at in all_sizes_of(made.measured, drawn) if at.key == size.key)


@dataclass(frozen=True, slots=True)
class LastWear:
    """What was measured last of a size that wears, beside its limit; ``uncertainty`` is None where none was recorded.

    ``value`` and ``uncertainty`` are in SI units, ``stated`` is a measured value as the shop wrote it.
    """

    size: Wearing
    limit: Measure
    value: float
    uncertainty: float | None
    stated: Measure
    where: Location

    def band(self, widened_by: float) -> Measure:
        """The value less and more so many SI units, as a spec would write it."""
        return as_range(self.value - widened_by, self.value + widened_by, self.stated, self.where)


def last_wear_of(made: MadePart, drawn: Component) -> Iterator[LastWear]:
    """What was measured last of each size that wears, and of which the drawing states the limit."""
    for size in (one for kind in drawn.words() for one in WEARING.get(kind, ())):
        limit = drawn.under(size.limit)
        known = [
            one
            for one in _of_key(made, drawn, size)
            if _day(one.date) and _counts(one, size.what) is not None
        ]
        if not known or not isinstance(limit, Measure):
            continue
        last = max(known, key=lambda one: one.date)
        value = _counts(last, size.what)
        assert value is not None  # as was asked
        half = None if last.uncertainty is None else last.uncertainty * _of_what(size.what)
        yield LastWear(size, limit, value, half, last.values[0].value, last.where)


def _of_what(what: What) -> float:
    """How much less is known of a difference of two readings than of one: both are uncertain."""
    return 2**0.5 if what == "out of round or tapered" else 1.0


def _points(made: MadePart, drawn: Component, size: Wearing) -> Iterator[tuple[int, float, float]]:
    """Day, value and expanded uncertainty of each measurement that has all three."""
    for found in _of_key(made, drawn, size):
        value = _counts(found, size.what)
        day = _day(found.date)
        if value is not None and day is not None and found.uncertainty is not None:
            yield day.toordinal(), value, found.uncertainty * _of_what(size.what)


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
