"""The specs of a kind as a table, one row a part: so that the same table read again gives the same specs."""

from __future__ import annotations

import csv
import io
from collections.abc import Iterable, Mapping, Sequence
from pathlib import Path
from typing import Any

from msgspec import Struct

from speclint.errors import TableError
from speclint.repository.cells import CellError, Head, Path as KeyPath, Schema, cells_of, key_of, tree_of
from speclint.repository.reading import Draft, read_drafts
from speclint.repository.shop_tables import cell_text
from speclint.repository.taking_over import taken_over
from speclint.specs import Spec, bare, schema_of

_NOT_OF_ONE = ("kind", "each", "for", "like", "mirror_of")


class TableOfParts(Struct, frozen=True):
    """A table: its heads, a row for each part, and the parts that do not stand in it, each with the reason."""

    heads: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]
    refused: tuple[str, ...] = ()


def table_of_parts(
    root: Path, files: Iterable[str], kinds: Mapping[str, type[Spec]], kind: type[Spec]
) -> TableOfParts:
    """The parts of a kind that some files of a repository state; those alike are each written in full."""
    schema = Schema(schema_of(kind))
    drafts = [one for file in files for one in read_drafts(root / file, file, kinds)]
    resolved = taken_over({one.id: one for one in drafts})
    found: dict[str, dict[KeyPath, str]] = {}
    refused = []
    for name, draft in sorted(resolved.items()):
        if not isinstance(draft, Draft) or draft.kind.kind != kind.kind:
            continue
        try:
            found[name] = _cells(draft, schema)
        except CellError as problem:
            refused.append(f"{name}: {problem}")
    unread = [
        f"{one.file}: it cannot be read: speclint check" for one in drafts if not isinstance(one, Draft)
    ]
    return _laid_out(found, schema, (*refused, *dict.fromkeys(unread)))


def _cells(draft: Draft, schema: Schema) -> dict[KeyPath, str]:
    """The cells of a part.

    :raises CellError: where they would not give the same part again, or it cannot be read.
    """
    if draft.complaints:
        raise CellError(str(draft.complaints[0]))
    tree: dict[str, Any] = {
        name: value for name, value in bare(draft.table).items() if name not in _NOT_OF_ONE
    }
    cells = cells_of({"id": draft.id, **tree}, schema)
    again = tree_of({Head(path): cell for path, cell in cells.items()}, schema)
    if again != {"id": draft.id, **tree}:
        differing = [name for name in tree if again.get(name) != tree[name]]
        raise CellError(f"{', '.join(differing)} would not come back from a table as it is")
    return cells


def _laid_out(
    found: Mapping[str, Mapping[KeyPath, str]], schema: Schema, refused: tuple[str, ...]
) -> TableOfParts:
    order = {name: number for number, name in enumerate(schema.whole["properties"])}
    paths = sorted(
        dict.fromkeys(path for cells in found.values() for path in cells),
        key=lambda path: (path != ("id",), order.get(path[0], len(order))),
    )
    units = {
        path: _unit([cells[path] for cells in found.values() if path in cells], path, schema)
        for path in paths
    }
    rows = tuple(
        tuple(cells.get(path, "").removesuffix(f" {units[path]}" if units[path] else "") for path in paths)
        for cells in found.values()
    )
    heads = tuple(str(Head(path, units[path])) for path in paths)
    return TableOfParts(heads, rows, refused)


def _unit(cells: Sequence[str], path: KeyPath, schema: Schema) -> str:
    """The unit that all cells of a column have behind a bare number, to stand in its head; "" where they differ."""
    if not schema.dimension(path):
        return ""
    units = set()
    for cell in cells:
        number, _, unit = cell.partition(" ")
        try:
            float(number)
            schema.head(f"{key_of(path)} ({unit})")
        except (ValueError, CellError):
            return ""
        units.add(unit)
    return units.pop() if len(units) == 1 else ""


def csv_text(table: TableOfParts) -> str:
    """The table as comma-separated values after RFC 4180."""
    text = io.StringIO()
    csv.writer(text, lineterminator="\r\n").writerows([table.heads, *table.rows])
    return text.getvalue()


def spreadsheet(table: TableOfParts) -> bytes:
    """The table as a spreadsheet, Office Open XML: a cell that reads back the same as a number is one.

    :raises TableError: where what writes it is not installed.
    """
    try:
        from openpyxl import Workbook
        from openpyxl.utils.exceptions import IllegalCharacterError
    except ImportError as problem:
        says = "a spreadsheet is written by openpyxl, which is not installed: pip install speclint[tables]"
        raise TableError(says) from problem
    book = Workbook()
    sheet = book.active
    sheet.freeze_panes = "B2"
    for number, row in enumerate([table.heads, *table.rows], start=1):
        for column, text in enumerate(row, start=1):
            if text:
                try:
                    cell = sheet.cell(number, column, _number(text) if number > 1 else text)
                except IllegalCharacterError as problem:
                    raise TableError(f"row {number}: a spreadsheet has no room for {text!a}") from problem
                if isinstance(cell.value, str):
                    cell.data_type = "s"  # never a formula
    content = io.BytesIO()
    book.save(content)
    return content.getvalue()


def _number(text: str) -> str | int | float:
    for make in (int, float):
        try:
            value = make(text)
        except ValueError:
            continue
        if cell_text(value) == text and text[-1].isdecimal():
            return value
    return text
