"""One property of a materials file: its table or tables, by use or by element where it is split."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any

from speclint.equations import Source
from speclint.errors import Path, one_of
from speclint.handbook.materials.problems import Complaints, dotted
from speclint.handbook.materials.properties import LOADINGS, PROPERTIES, USES, Property
from speclint.handbook.materials.refusal import Complain
from speclint.handbook.materials.table_reading import read_table
from speclint.handbook.materials.tables import Table

_PARTS = {"temperature-limit": USES, "fatigue-strength": LOADINGS}
_SHARED = ("unit", "source", "place", "note")

Found = Iterator[tuple[str, tuple[Table, ...]]]


class PropertyReader:
    """Reads properties of the entries of one file, complaining of what it cannot use."""

    def __init__(self, sources: Mapping[str, Source], complaints: Complaints) -> None:
        self._sources = sources
        self._complaints = complaints

    def read(self, key: str, value: Any, path: Path) -> Found:
        """The tables under a key, each group with the name that Material knows it by."""
        if key == "composition":
            yield from self._composition(value, path)
        elif PROPERTIES[key].split:
            yield from self._split(key, value, path)
        else:
            yield from self._tables(key, value, PROPERTIES[key], path)

    def _split(self, key: str, value: Any, path: Path) -> Found:
        parts = _PARTS[key]
        if not isinstance(value, dict):
            self._complaints.add(path, f"{key} is stated by use", f"[{dotted((*path, parts[0]))}]")
            return
        for part, raw in value.items():
            if part in parts:
                yield from self._tables(f"{key} {part}", raw, PROPERTIES[key], (*path, part))
            else:
                self._complaints.add((*path, part), f'"{part}" is not known here', one_of(part, parts))

    def _composition(self, value: Any, path: Path) -> Found:
        """Elements share one unit and source: C = [0.1, 0.2] in a table with unit and source."""
        if not isinstance(value, dict):
            self._complaints.add(
                path, "composition is a table", 'unit = "%", source = "...", C = [least, most]'
            )
            return
        shared = {key: value[key] for key in _SHARED if key in value}
        for element, band in value.items():
            if element in shared:
                continue
            if not (isinstance(band, list) and len(band) == 2 and all(map(_is_number, band))):
                self._complaints.add((*path, element), "a content is a band", f"{element} = [least, most]")
                continue
            raw = {**shared, "value": sum(band) / 2, "low": band[0], "high": band[1]}
            yield from self._tables(
                f"composition {element}", raw, PROPERTIES["composition"], (*path, element)
            )

    def _tables(self, name: str, value: Any, kind: Property, path: Path) -> Found:
        raws = value if isinstance(value, list) else [value]
        tables = []
        for number, raw in enumerate(raws):
            place = (*path, number) if isinstance(value, list) else path
            table = read_table(raw, kind, self._sources, self._complain(place))
            if table is not None:
                tables.append(table)
        if tables:
            yield name, tuple(tables)

    def _complain(self, path: Path) -> Complain:
        return lambda message, write: self._complaints.add(path, message, write)


def _is_number(value: Any) -> bool:
    return isinstance(value, int | float) and not isinstance(value, bool)
