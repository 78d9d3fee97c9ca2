"""One table of a materials file, from TOML to a Table in SI units."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import Any, TypeVar

from speclint.handbook.materials.properties import CELSIUS, FAHRENHEIT, Property
from speclint.handbook.materials.refusal import Numbers, RefusedError, nearest, numbers, rising, text
from speclint.handbook.materials.spreads import Spread, read_bands
from speclint.handbook.materials.tables import Figure, Table
from speclint.sources import COMMON_PRACTICE, Source

_SCALES = {"degC": CELSIUS, "degF": FAHRENHEIT}
_KEYS = (
    *("unit", "value", "low", "high", "tolerance", "tolerance_percent", "bound"),
    *("degC", "degF", "over_mm", "rows", "range_rows", "source", "place", "note"),
)

Raw = Mapping[str, Any]
Complain = Callable[[str], None]
T = TypeVar("T")


def read_table(raw: Raw, kind: Property, sources: Mapping[str, Source], complain: Complain) -> Table | None:
    """Read one table; or say what is wrong with it and give nothing."""
    source = _attempt(lambda: read_source(raw, sources), complain)
    table = _attempt(lambda: _read_body(raw, kind, source or COMMON_PRACTICE), complain)
    for key in raw:
        if key not in _KEYS:
            complain(f"'{key}' is not known here{nearest(key, _KEYS)}")
    return table if source is not None else None


def _attempt(read: Callable[[], T], complain: Complain) -> T | None:
    try:
        return read()
    except RefusedError as refusal:
        complain(str(refusal))
        return None


def read_source(raw: Raw, sources: Mapping[str, Source]) -> Source:
    """The source that a table names: a key of [sources], a table of its own, or common practice."""
    named, place = raw.get("source"), text(raw.get("place"), "place")
    if named is None or named == "":
        raise RefusedError('no source: write source = "KEY" of [sources], or source = { work = "..." }')
    if isinstance(named, dict):
        source = source_of(named)
        return source.at(place or source.place)
    if named == COMMON_PRACTICE.work:
        return COMMON_PRACTICE.at(place)
    if named not in sources:
        known = (*sources, COMMON_PRACTICE.work)
        raise RefusedError(f"source '{named}' is not in [sources]{nearest(str(named), known)}")
    return sources[named].at(place)


def source_of(raw: Any) -> Source:
    """A work cited: what [sources] holds under one key."""
    if not isinstance(raw, dict):
        raise RefusedError('a source is a table: write { work = "author or body, title", edition = "2011" }')
    unknown = [key for key in raw if key not in ("work", "edition", "place", "memory")]
    if unknown:
        raise RefusedError(f"'{unknown[0]}' is not part of a source: write work, edition, place and memory")
    work = text(raw.get("work"), "work")
    if not work:
        raise RefusedError('a source needs its work: write work = "author or body, title"')
    memory = raw.get("memory", False)
    if not isinstance(memory, bool):
        raise RefusedError("memory is true (recalled, not seen) or false")
    return Source(work, text(raw.get("edition"), "edition"), text(raw.get("place"), "place"), memory)


def _read_body(raw: Raw, kind: Property, source: Source) -> Table:
    scale, offset = _unit(raw, kind)
    temperatures = _temperatures(raw, kind)
    edges, bands = read_bands(raw, kind, len(temperatures))
    rows = tuple(_row(band, scale, offset) for band in bands)
    return Table(kind.unit, source, rows, temperatures, edges, text(raw.get("note"), "note"))


def _row(band: Spread, scale: float, offset: float) -> tuple[Figure, ...]:
    figures = tuple(
        Figure(low * scale + offset, value * scale + offset, high * scale + offset)
        for value, low, high in zip(*band, strict=True)
    )
    if any(not figure.low <= figure.nominal <= figure.high for figure in figures):
        raise RefusedError("low, value and high must rise in this order")
    return figures


def _unit(raw: Raw, kind: Property) -> tuple[float, float]:
    unit = str(raw.get("unit", ""))
    if unit not in kind.units:
        wanted = ", ".join(f'"{name}"' for name in kind.units)
        said = f"unit '{unit}' is not one of {kind.words}" if unit else "no unit"
        raise RefusedError(f"{said}: write unit = one of {wanted}")
    return kind.units[unit]


def _temperatures(raw: Raw, kind: Property) -> Numbers:
    stated = [key for key in _SCALES if key in raw]
    if not kind.by_temperature:
        if stated:
            raise RefusedError(f"{kind.words} does not depend on temperature here: leave out {stated[0]}")
        return ()
    if len(stated) != 1:
        raise RefusedError("state the range of temperature once: write degC = [20, 100, 200]")
    factor, offset = _SCALES[stated[0]]
    found = rising(numbers(raw[stated[0]], stated[0]), stated[0])
    if len(found) < 2:  # a single temperature is no range
        raise RefusedError(f"{stated[0]} needs two temperatures or more, the first and last being the range")
    return tuple(number * factor + offset for number in found)
