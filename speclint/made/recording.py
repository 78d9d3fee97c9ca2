"""From the rows of a shop's table to the record of a part as made; a row that cannot be read is told, never guessed."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from datetime import date, datetime
from typing import Any

from msgspec import Struct
from pydantic import ValidationError

from speclint.errors import Location, nearest
from speclint.repository import RefusedRow, ShopRow, ShopTable, TableMapping, day_fault
from speclint.specs import (
    Component,
    Leaf,
    MeasuredDimension,
    MisreadError,
    QuantityAt,
    Table,
    measured_size,
    quantities_of,
)

#: A number that stands without a unit.
_BARE = re.compile(r"[+-]?[0-9]+(?:\.[0-9]+)?(?:[eE][+-]?[0-9]+)?")
#: What an inspector fills in; the rest of a row may stand there before.
_FILLED_IN = ("value", "uncertainty", "along", "round", "instrument", "date", "inspector")
#: The columns that hold the unit of another.
_UNIT_COLUMNS = {"value": "unit", "uncertainty": "unit_of_uncertainty"}
#: The unit one, ISO 80000-1: a number without a unit.
_ONE = "1"
_COMMA = re.compile(r"[+-]?[0-9]+,[0-9]+")


class Recorded(Struct, frozen=True):
    """What a table gave for one part.

    ``measured`` are the entries of the record by name, as a spec states them. ``refused`` are the rows that could not
    be read, ``others`` how many belong to other serial numbers. ``not_measured`` are the dimensions of an inspection
    sheet of which no row was filled in.
    """

    measured: Mapping[str, Mapping[str, Any]]
    refused: tuple[RefusedRow, ...]
    others: int
    values: int
    not_measured: tuple[str, ...] = ()


class _RefusedError(ValueError):
    """Why a row cannot be read."""


@dataclass(frozen=True)
class _Row:
    """One row as read: the entry that it belongs to, and its value with its place."""

    key: str
    common: tuple[tuple[str, str], ...]
    value: Mapping[str, str] = field(hash=False)


def record(
    table: ShopTable,
    mapping: TableMapping,
    part: Component,
    serial: str,
    today: date,
    *,
    may_be_empty: bool = False,
) -> Recorded:
    """The rows of one serial number, each read against the spec of its part; all rows where no column has serials.

    ``may_be_empty`` is true of an inspection sheet: its rows name every dimension, and one of which nothing was filled
    in was not measured.
    """
    reader = _Reader(mapping, quantities_of(part), part, today)
    rows, refused, others = [], [], 0
    empty: dict[str, None] = {}
    column = mapping.column("serial")
    for row in table.rows:
        if column and row.cells.get(column, serial) != serial:
            others += 1
            continue
        if may_be_empty and reader.is_empty(row):
            empty[row.cells.get(mapping.column("dimension"), "")] = None
            continue
        try:
            rows.append(reader.read(row, serial))
        except _RefusedError as problem:
            refused.append(RefusedRow(row.number, str(problem)))
    measured = {one.key for one in rows}
    left = tuple(name for name in empty if name and name not in measured)
    return Recorded(_entries(rows), tuple(refused), others, len(rows), left)


def missing_columns(table: ShopTable, mapping: TableMapping) -> tuple[str, ...]:
    """The columns that a mapping names and a table has not."""
    named = (mapping.column(what) for what in mapping.columns)
    return tuple(name for name in named if name not in table.columns)


class _Reader(Struct, frozen=True):
    mapping: TableMapping
    known: Mapping[str, QuantityAt]
    part: Component
    today: date

    def read(self, row: ShopRow, serial: str) -> _Row:
        """One row.

        :raises _RefusedError: where it cannot be read.
        """
        if self.mapping.column("serial") and not self._cell(row, "serial"):
            raise _RefusedError(f"it has no serial number; write {serial}, or that of its part")
        at = self._dimension(row)
        value = {"value": self._quantity(row, "value")}
        value |= {place: self._quantity(row, place) for place in ("along", "round") if self._cell(row, place)}
        if not self._cell(row, "uncertainty"):
            raise _RefusedError(f"no uncertainty is recorded for {at.key}; write the expanded one, k = 2")
        common = {"dimension": at.key, "uncertainty": self._quantity(row, "uncertainty")}
        common |= {what: text for what in ("instrument", "inspector") if (text := self._cell(row, what))}
        if self._cell(row, "date"):
            common["date"] = self._day(row)
        self._try(at, common, value)
        return _Row(at.key, tuple(common.items()), value)

    def is_empty(self, row: ShopRow) -> bool:
        """Whether nothing was filled in."""
        return not any(self._cell(row, what) for what in _FILLED_IN)

    def _cell(self, row: ShopRow, what: Any) -> str:
        return row.cells.get(self.mapping.column(what), "")

    def _dimension(self, row: ShopRow) -> QuantityAt:
        called = self._cell(row, "dimension")
        if not called:
            raise _RefusedError("it names no dimension")
        key = self.mapping.dimensions.get(called, called)
        if key not in self.known:
            if key != called:
                raise _RefusedError(
                    f'{self.part.id} has no quantity {key}, for which the mapping has "{called}"; '
                    "write the key of one that it has"
                )
            near = nearest(called, {*self.mapping.dimensions, *self.known})
            write = (
                f'"{near}"' if near else "a key of the spec, or an entry under [dimensions] of the mapping"
            )
            raise _RefusedError(f'a {self.part.kind} has no quantity "{called}"; write {write}')
        return self.known[key]

    def _quantity(self, row: ShopRow, what: Any) -> str:
        """The text of a quantity: the cell, with the unit that its column, or the mapping, gives it."""
        text = self._cell(row, what)
        if not text:
            raise _RefusedError(f"it has no {what}")
        if self.mapping.decimal_mark == "," and _COMMA.match(text):
            text = text.replace(",", ".")
        elif self.mapping.decimal_mark == "," and "." in text:
            raise _RefusedError(
                f'"{text}" has a point, and the mapping says that the decimal mark is a comma'
            )
        if not _BARE.fullmatch(text):
            return text
        column = _UNIT_COLUMNS.get(what)
        unit = (self._cell(row, column) if column else "") or self.mapping.unit_of(what)
        if not unit:
            raise _RefusedError(
                f'"{text}" has no unit, and neither a column nor the mapping gives one for {what}'
            )
        return text if unit == _ONE else f"{text} {unit}"

    def _day(self, row: ShopRow) -> str:
        text = self._cell(row, "date")
        form = self.mapping.date_format
        iso = text
        if not re.fullmatch(r"[0-9]{4}-[0-9]{2}-[0-9]{2}", text) and hasattr(form, "value"):
            try:
                iso = datetime.strptime(text, form.value).date().isoformat()
            except ValueError as problem:
                raise _RefusedError(f'"{text}" is no date of the form {form.value}') from problem
        if said := day_fault(iso, self.today):
            raise _RefusedError(
                f'{said}: "{text}"; write the day as 2027-05-31, or date_format in the mapping'
            )
        return iso

    def _try(self, at: QuantityAt, common: Mapping[str, str], value: Mapping[str, str]) -> None:
        """Read the entry that the row would make by itself, as the loader of specs will."""
        try:
            entry = MeasuredDimension.model_validate(placed({**common, "values": [value]}))
            measured_size(at.key, entry, at)
        except ValidationError as problem:
            error = problem.errors(include_url=False)[0]
            said = error.get("ctx", {}).get("said", error["msg"])
            raise _RefusedError(f"{error['loc'][-1]}: {said}") from problem
        except MisreadError as problem:
            raise _RefusedError(f'{problem.said}; read "{problem.read}"; write {problem.write}') from problem


def placed(raw: Any) -> Any:
    """A tree of texts as the loader hands it to a model."""
    if isinstance(raw, Mapping):
        return Table({name: placed(inner) for name, inner in raw.items()}, Location())
    return [placed(inner) for inner in raw] if isinstance(raw, list) else Leaf(raw, Location())


def _entries(rows: list[_Row]) -> dict[str, dict[str, Any]]:
    """The rows as entries of a record: those of one dimension that agree in all else are values of one entry."""
    found: dict[tuple[str, tuple[tuple[str, str], ...]], list[Mapping[str, str]]] = {}
    for row in rows:
        found.setdefault((row.key, row.common), []).append(row.value)
    names = _names([key for key, _ in found])
    return {
        name: {**_said(name, common), "values": values}
        for name, ((_, common), values) in zip(names, found.items(), strict=True)
    }


def _names(keys: list[str]) -> Iterator[str]:
    """A name for each entry: its key, with a number from the second of one key on."""
    for number, key in enumerate(keys):
        before = keys[:number].count(key)
        yield f"{key}-{before + 1}" if before else key


def _said(name: str, common: tuple[tuple[str, str], ...]) -> dict[str, str]:
    """What an entry states beside its values; its key is left out where it is the name."""
    said = dict(common)
    if said["dimension"] == name:
        del said["dimension"]
    return said


def as_toml(part: Component, serial: str, made_to: str, recorded: Recorded, name: str) -> str:
    """The file of a part as made, as a spec."""
    import tomlkit

    document = tomlkit.document()
    document.append("kind", tomlkit.string("made-part"))
    document.append("id", tomlkit.string(name))
    document.append("of", tomlkit.string(part.id))
    document.append("serial", tomlkit.string(serial))
    if made_to:
        document.append("made_to", tomlkit.string(made_to))
    measured = tomlkit.table(is_super_table=True)
    for entry, said in recorded.measured.items():
        inner = tomlkit.table()
        for key, value in said.items():
            inner.append(key, _values(value) if key == "values" else tomlkit.string(value))
        measured.append(tomlkit.key(entry) if entry.isidentifier() else _quoted(entry), inner)
    document.append("measured", measured)
    return tomlkit.dumps(document)


def _quoted(name: str) -> Any:
    from tomlkit.items import KeyType, SingleKey

    return SingleKey(name, KeyType.Basic)


def _values(values: list[Mapping[str, str]]) -> Any:
    """The values as an array: of plain texts where none has a place."""
    import tomlkit

    array = tomlkit.array()
    for one in values:
        if list(one) == ["value"]:
            array.append(one["value"])
        else:
            table = tomlkit.inline_table()
            table.update(one)
            array.append(table)
    return array.multiline(len(values) > 1)
