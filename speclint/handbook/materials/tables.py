"""Figures over temperature and over bands of size: linear between temperatures, never beyond them."""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Sequence
from dataclasses import dataclass
from typing import NamedTuple

from speclint.equations import Source
from speclint.errors import OutOfRange
from speclint.handbook.tables import Reading, on_lines

#: Below these, two temperatures (K) or two sizes (m) are the same figure written twice.
_SAME_TEMPERATURE = 1e-6
_SAME_SIZE = 1e-9


class Figure(NamedTuple):
    """A figure with the least and the most that its source allows, SI units."""

    low: float
    nominal: float
    high: float


@dataclass(frozen=True, slots=True)
class Table:
    """One table of a property, from one source.

    ``temperatures`` rise, in kelvin; none means that the figure does not depend on temperature.
    ``edges`` are the bounds of the bands of size, in metres: a band holds sizes over its lower edge and up to
    and including its upper one, the first band its lower edge too. ``rows`` holds one row a band (or one
    row), each with a figure a temperature (or one figure that stands over the whole range).
    """

    unit: str
    source: Source
    rows: tuple[tuple[Figure, ...], ...]
    temperatures: tuple[float, ...] = ()
    edges: tuple[float, ...] = ()

    def holds_temperature(self, at: float | None) -> bool:
        """True when ``at`` is inside the range of temperature, or there is none."""
        if at is None or not self.temperatures:
            return True
        first, last = self.temperatures[0], self.temperatures[-1]
        return first - _SAME_TEMPERATURE <= at <= last + _SAME_TEMPERATURE

    def holds_size(self, size: float | None) -> bool:
        """True when ``size`` is inside the bands, or there are none."""
        if size is None or not self.edges:
            return True
        return self.edges[0] - _SAME_SIZE <= size <= self.edges[-1] + _SAME_SIZE

    def bands(self, size: float | None) -> Sequence[tuple[Figure, ...]]:
        """The row of the band that holds a size; all rows without a size, or where there are no bands."""
        if size is None or not self.edges:
            return self.rows
        band = max(bisect_left(self.edges, size - _SAME_SIZE) - 1, 0)
        return self.rows[band : band + 1]


def figure(table: Table, at: float | None, size: float | None) -> Figure:
    """The figure at a temperature and a size that a table holds.

    Without a size, a table in bands answers for all of them: the least of its bands is the nominal,
    and low and high span them all.
    """
    figures = [_between(row, table.temperatures, at) for row in table.bands(size)]
    if len(figures) == 1:
        return figures[0]
    return Figure(min(f.low for f in figures), min(f.nominal for f in figures), max(f.high for f in figures))


def _between(row: tuple[Figure, ...], temperatures: Sequence[float], at: float | None) -> Figure:
    if at is None or len(row) == 1:
        return row[0]
    return Figure(*on_lines(temperatures, row, at))


def look_up(
    tables: Sequence[Table],
    what: str,
    *,
    at: float | None = None,
    size: float | None = None,
    size_is: str = "thickness",
) -> Reading:
    """Read the first table that holds this temperature and size.

    Raises:
        OutOfRange: when none does; the message names the range that the data cover.
    """
    written = _written(what, at, size, size_is)
    warm = [table for table in tables if table.holds_temperature(at)]
    if not warm:
        raise OutOfRange(f"{written}: the data hold {_temperature_ranges(tables)}, and are not extended")
    for table in warm:
        if table.holds_size(size):
            low, nominal, high = figure(table, at, size)
            return Reading(written, nominal, low, high, table.unit, table.source)
    raise OutOfRange(
        f"{written}: the data hold {_size_ranges(warm)} of {size_is}, and are not extended; name a metal whose data "
        "reach it, or state the figure, with its source, among your own materials"
    )


def _written(what: str, at: float | None, size: float | None, size_is: str) -> str:
    parts = [what]
    if at is not None:
        parts.append(f" at {celsius(at)}")
    if size is not None:
        parts.append(f", {size_is} {size * 1e3:g} mm")
    return "".join(parts)


def celsius(at: float) -> str:
    """A temperature in kelvin as a drawing writes it.

    >>> celsius(573.15)
    '300 °C'
    """
    return f"{round(at - 273.15, 2):g} °C"


def _temperature_ranges(tables: Sequence[Table]) -> str:
    return _joined([(t.temperatures[0] - 273.15, t.temperatures[-1] - 273.15) for t in tables], "°C")


def _size_ranges(tables: Sequence[Table]) -> str:
    return _joined([(t.edges[0] * 1e3, t.edges[-1] * 1e3) for t in tables], "mm")


def _joined(ranges: Sequence[tuple[float, float]], unit: str) -> str:
    """Ranges in words, those that meet run together."""
    whole: list[tuple[float, float]] = []
    for first, last in sorted((round(a, 2), round(b, 2)) for a, b in ranges):
        if whole and first <= whole[-1][1]:
            whole[-1] = (whole[-1][0], max(last, whole[-1][1]))
        else:
            whole.append((first, last))
    return " and ".join(f"{first:g} to {last:g} {unit}" for first, last in whole)
