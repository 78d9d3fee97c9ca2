"""One table of a materials file, from TOML to a Table in SI units."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from speclint.equations import COMMON_PRACTICE, Source
from speclint.errors import one_of
from speclint.handbook.materials.citing import cited
from speclint.handbook.materials.properties import CELSIUS, FAHRENHEIT, Property
from speclint.handbook.materials.refusal import Complain, Numbers, RefusedError, attempt, numbers, rising
from speclint.handbook.materials.spreads import Spread, read_bands
from speclint.handbook.materials.tables import Figure, Table

_SCALES = {"degC": CELSIUS, "degF": FAHRENHEIT}
_KEYS = (
    *("unit", "value", "low", "high", "tolerance", "tolerance_percent", "bound"),
    *("degC", "degF", "over_mm", "rows", "range_rows", "source", "place", "note"),
)

Raw = Mapping[str, Any]


def read_table(raw: Any, kind: Property, sources: Mapping[str, Source], complain: Complain) -> Table | None:
    """Read one table; or say everything that is wrong with it, and give nothing."""
    if not isinstance(raw, dict):
        complain(f"{kind.words} is a table", 'unit = "...", value = ..., tolerance = ..., source = "..."')
        return None
    unknown = [key for key in raw if key not in _KEYS]
    for key in unknown:
        complain(f'"{key}" is not known here', one_of(key, _KEYS))
    source = attempt(lambda: cited(raw, sources), complain)
    table = attempt(lambda: _read_body(raw, kind, source or COMMON_PRACTICE), complain)
    return None if unknown or source is None else table


def _read_body(raw: Raw, kind: Property, source: Source) -> Table:
    scale, offset = _unit(raw, kind)
    temperatures = _temperatures(raw, kind)
    edges, bands = read_bands(raw, kind, len(temperatures))
    rows = tuple(_row(band, scale, offset) for band in bands)
    return Table(kind.unit, source, rows, temperatures, edges)


def _row(band: Spread, scale: float, offset: float) -> tuple[Figure, ...]:
    figures = tuple(
        Figure(low * scale + offset, value * scale + offset, high * scale + offset)
        for value, low, high in zip(*band, strict=True)
    )
    if any(not figure.low <= figure.nominal <= figure.high for figure in figures):
        raise RefusedError("low, value and high do not rise in this order", "low <= value <= high")
    return figures


def _unit(raw: Raw, kind: Property) -> tuple[float, float]:
    unit = str(raw.get("unit", ""))
    if unit not in kind.units:
        wanted = " or ".join(f'unit = "{name}"' for name in kind.units)
        raise RefusedError(f"unit '{unit}' is none of {kind.words}" if unit else "no unit is stated", wanted)
    return kind.units[unit]


def _temperatures(raw: Raw, kind: Property) -> Numbers:
    stated = [key for key in _SCALES if key in raw]
    if not kind.by_temperature:
        if stated:
            raise RefusedError(f"{kind.words} is not stated by temperature", f"no {stated[0]}")
        return ()
    if len(stated) != 1:
        raise RefusedError("the range of temperature is stated once", "degC = [20, 100, 200]")
    factor, offset = _SCALES[stated[0]]
    found = rising(numbers(raw[stated[0]], stated[0]), stated[0])
    if len(found) < 2:  # a single temperature is no range
        raise RefusedError(f"{stated[0]} is no range", f"{stated[0]} = [first, ..., last]")
    return tuple(number * factor + offset for number in found)
