"""A figure of a material over a range of temperatures that several of its tables hold, one after the other.

Where one table ends and the next begins the figure may jump, and the choice between them is a branch that the bounds
of the temperature leave open: about 20 °C, from which expansion is counted, that is so of nearly every part. Where the
range goes from one end of an input to its other end, the box need not be split there: a worst case is looked for by
moving inputs to an end, and of such a move the slope is bounded, jump and all.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from itertools import pairwise
from typing import Any

from msgspec import Struct

from speclint.handbook.tables import Reading
from speclint.rules import intervals
from speclint.rules.enclosed_functions import on_lines
from speclint.rules.enclosure import Enclosure
from speclint.rules.intervals import Interval

#: A jump nearer to an end than this share of the range leaves no slope to speak of: the box is split there.
_TOO_NEAR = 0.01
#: A table is read so little beyond its ends [K], for the rounding of temperatures, and a part as much more.
_OVERLAP = 1e-5
#: A range that is no wider is left to one table [K].
_NARROW = 0.01


class _Piece(Struct, frozen=True):
    """The part of a range that one table holds: the bounds of each figure there, and of their slopes."""

    low: float
    high: float
    bounds: tuple[Interval, ...]
    slopes: tuple[Interval, ...]
    at_low: tuple[Interval, ...]
    at_high: tuple[Interval, ...]


def look_up(
    plain: Callable[..., Reading],
    tables: Sequence[Any],
    what: str,
    *,
    at: Any = None,
    size: Any = None,
    size_is: str = "thickness",
) -> Reading:
    """The figure over all of a range of temperatures; ``plain`` looks it up where one table holds them all."""
    if isinstance(at, Enclosure) and at.end_to_end and not isinstance(size, Enclosure):
        pieces = _pieces(tables, at, size)
        if pieces is not None:
            return _joined(pieces, tables[0], what, at)
    return plain(tables, what, at=at, size=size, size_is=size_is)


def _pieces(tables: Sequence[Any], at: Enclosure, size: float | None) -> list[_Piece] | None:
    """The parts of the range in order; None where one table holds it all, a part has none, or bands are many."""
    low, high = at.bounds
    ends = {one for table in tables for one in table.temperatures[:1] + table.temperatures[-1:]}
    inner = sorted(one for one in ends if low < one < high)
    near = _TOO_NEAR * (high - low)
    if high - low < _NARROW or not inner or inner[0] - low < near or high - inner[-1] < near:
        return None
    found: list[_Piece] = []
    before: Any = None
    for start, stop in pairwise([low, *inner, high]):
        table = next(_holding(tables, start, stop, size), None)
        if table is None or table.unit != tables[0].unit or len(table.bands(size)) != 1:
            return None
        if table is before:
            start = found.pop().low
        found.append(_piece(table, start, stop, size))
        before = table
    return found if len(found) > 1 else None


def _holding(tables: Sequence[Any], low: float, high: float, size: float | None) -> Iterator[Any]:
    middle = (low + high) / 2
    return (one for one in tables if one.holds_temperature(middle) and one.holds_size(size))


def _piece(table: Any, low: float, high: float, size: float | None) -> _Piece:
    row = table.bands(size)[0]
    if len(row) == 1:
        alone = tuple((one, one) for one in row[0])
        return _Piece(low, high, alone, ((0.0, 0.0),) * len(alone), alone, alone)
    over, first, last = (
        on_lines(table.temperatures, row, Enclosure(*ends))
        for ends in ((low, high), (low, low), (high, high))
    )
    return _Piece(
        low,
        high,
        tuple(one.bounds for one in over),
        tuple((one.one_low, one.one_high) for one in over),
        tuple(one.bounds for one in first),
        tuple(one.bounds for one in last),
    )


def _joined(pieces: Sequence[_Piece], table: Any, what: str, at: Enclosure) -> Reading:
    low, nominal, high = (_figure(pieces, number, at) for number in range(3))
    return Reading(what, nominal, low, high, table.unit, table.source)  # type: ignore[arg-type]  # for floats


def _figure(pieces: Sequence[_Piece], number: int, at: Enclosure) -> Enclosure:
    """One figure: its bounds over all parts, and those of its slope from either end of the range to any place."""
    first, last = pieces[0], pieces[-1]
    bounds, slope = first.bounds[number], intervals.hull(first.slopes[number], last.slopes[number])
    for one in pieces[1:]:
        bounds = intervals.hull(bounds, one.bounds[number])
        risen = intervals.subtract(one.bounds[number], first.at_low[number])
        way = one.low - first.low - _OVERLAP, one.high - first.low
        slope = intervals.hull(slope, intervals.divide(risen, way))
    for one in pieces[:-1]:
        risen = intervals.subtract(last.at_high[number], one.bounds[number])
        way = last.high - one.high - _OVERLAP, last.high - one.low
        slope = intervals.hull(slope, intervals.divide(risen, way))
    return Enclosure(*bounds, at, *slope)
