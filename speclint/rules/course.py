"""Quantities recorded along a scan, so that a report can draw them as curves."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from msgspec import Struct


class Course(Struct, frozen=True):
    """A quantity along a scan: symbol, name, SI unit, and the function that gives it at a place.

    The function must not use the sheet; it gives None where the quantity has no meaning.
    """

    symbol: str
    name: str
    unit: str
    at: Callable[[float], float | None]


class Series(Struct, frozen=True):
    """A quantity as it was written down: one SI value for each place of the scan, in their order."""

    symbol: str
    name: str
    unit: str
    values: tuple[float | None, ...]


def written(courses: Sequence[Course], places: Sequence[float]) -> tuple[Series, ...]:
    """The values of courses at the places of a scan.

    >>> (series,) = written([Course("s", "lift", "m", lambda x: 2 * x if x else None)], [0.0, 1.0])
    >>> series.values
    (None, 2.0)
    """
    return tuple(
        Series(course.symbol, course.name, course.unit, tuple(map(course.at, places))) for course in courses
    )
