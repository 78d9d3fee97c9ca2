"""The values of a table with the low and the high that it states, and the bands of size they stand for."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from typing import Any, NamedTuple

from speclint.errors import one_of
from speclint.handbook.materials.properties import Property
from speclint.handbook.materials.refusal import Numbers, RefusedError, numbers, one_number, rising

Raw = Mapping[str, Any]
_SPREADS = ("tolerance", "tolerance_percent", "low", "bound")
_BOUNDS = ("minimum", "maximum", "exact")


class Spread(NamedTuple):
    """One row of a table: its figures, each with the least and the most, in the unit of the file."""

    value: Numbers
    low: Numbers
    high: Numbers


def read_bands(raw: Raw, kind: Property, temperatures: int) -> tuple[Numbers, tuple[Spread, ...]]:
    """Edges of the bands of size in metres (none without bands), and the row of each band."""
    given = [key for key in ("value", "rows", "range_rows") if key in raw]
    if len(given) != 1:
        raise RefusedError("the figures are stated once", "value, or rows, or range_rows")
    if given[0] == "value":
        return (), (_spread(raw, _fitted(numbers(raw["value"], "value"), temperatures)),)
    if not kind.size:
        raise RefusedError(f"{kind.words} has no bands of size", "value = ...")
    bands = _bands(raw, given[0])
    edges = tuple(edge / 1e3 for edge in (_over(raw), *(band[0] for band in bands)))
    rising(edges, "the sizes (over_mm, then the first number of each row)")
    if given[0] == "range_rows":
        return edges, _ranges(raw, bands)
    return edges, tuple(_spread(raw, _fitted(band[1:], temperatures)) for band in bands)


def _bands(raw: Raw, key: str) -> list[Numbers]:
    rows = raw[key]
    if not isinstance(rows, list) or not rows or not all(isinstance(row, list) for row in rows):
        raise RefusedError(f"{key} is a list of rows", f"{key} = [[16, 265], [40, 255]]")
    bands = [numbers(row, key) for row in rows]
    if any(len(band) < 2 for band in bands):  # the size and at least one figure
        raise RefusedError(f"a row of {key} has no figure", "[up to this size in mm, figure, ...]")
    return bands


def _over(raw: Raw) -> float:
    if "over_mm" not in raw:
        raise RefusedError("the size over which the first band begins is not stated", "over_mm = 0")
    over = one_number(raw["over_mm"], "over_mm")
    if over < 0:
        raise RefusedError("over_mm is negative", "over_mm = 0")
    return over


def _ranges(raw: Raw, bands: Sequence[Numbers]) -> tuple[Spread, ...]:
    if any(len(band) != 3 for band in bands):  # size, least, most
        raise RefusedError("a row of range_rows has not three numbers", "[up to mm, least, most]")
    if any(key in raw for key in _SPREADS):
        raise RefusedError("range_rows state least and most", "no tolerance, low or bound beside them")
    return tuple(Spread((least,), (least,), (most,)) for _, least, most in bands)


def _fitted(values: Numbers, temperatures: int) -> Numbers:
    if len(values) not in (1, max(temperatures, 1)):
        raise RefusedError(
            f"{len(values)} figures for {temperatures} temperatures", "one for each, or one for all"
        )
    return values


def _spread(raw: Raw, values: Numbers) -> Spread:
    given = [key for key in _SPREADS if key in raw]
    if len(given) != 1:
        raise RefusedError(
            "the spread of the figures is stated once" if given else "no spread of the figures is stated",
            'tolerance = ..., or tolerance_percent = ..., or low and high, or bound = "minimum"',
        )
    return _READERS[given[0]](raw, values)


def _by_tolerance(raw: Raw, values: Numbers) -> Spread:
    return _apart(values, tuple(one_number(raw["tolerance"], "tolerance") for _ in values))


def _by_percent(raw: Raw, values: Numbers) -> Spread:
    share = one_number(raw["tolerance_percent"], "tolerance_percent") / 100
    return _apart(values, tuple(share * abs(value) for value in values))


def _apart(values: Numbers, distances: Numbers) -> Spread:
    low = tuple(value - distance for value, distance in zip(values, distances, strict=True))
    high = tuple(value + distance for value, distance in zip(values, distances, strict=True))
    return Spread(values, low, high)


def _by_limits(raw: Raw, values: Numbers) -> Spread:
    if "high" not in raw:
        raise RefusedError("low stands alone", "low = ..., high = ...")
    return Spread(values, _beside(raw, "low", values), _beside(raw, "high", values))


def _by_bound(raw: Raw, values: Numbers) -> Spread:
    if raw["bound"] not in _BOUNDS:
        raise RefusedError(f"bound is {raw['bound']!r}", one_of(str(raw["bound"]), _BOUNDS))
    if "high" not in raw:
        return Spread(values, values, values)
    if raw["bound"] != "minimum":
        raise RefusedError(f"high beside bound = {raw['bound']!r}", 'low beside it, or bound = "minimum"')
    return Spread(values, values, _beside(raw, "high", values))


def _beside(raw: Raw, key: str, values: Numbers) -> Numbers:
    found = numbers(raw[key], key)
    if len(found) != len(values):
        raise RefusedError(f"{key} has {len(found)} figures, value {len(values)}", "as many of each")
    return found


_READERS: Mapping[str, Callable[[Raw, Numbers], Spread]] = {
    "tolerance": _by_tolerance,
    "tolerance_percent": _by_percent,
    "low": _by_limits,
    "bound": _by_bound,
}
