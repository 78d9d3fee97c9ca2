"""The one reader of tables, of a shop or of parts: CSV, and spreadsheets; every cell as the text that stands in it.

Nothing is guessed: which mark separates cells, which row holds the names of the columns and which sheet is meant are
said by whoever reads (:class:`Layout`). A number of a spreadsheet is written as Python writes it, a day as 2027-05-31.
"""

from __future__ import annotations

import csv
import datetime as dt
import io
from collections import Counter
from collections.abc import Iterable, Iterator, Mapping, Sequence
from pathlib import Path

from msgspec import Struct

from speclint.errors import TableError
from speclint.repository.regular_files import read_regular

#: Bytes of a table: common practice, room for some ten thousand rows.
LARGEST_TABLE = 10_000_000
#: Marks between cells other than a comma.
_SEPARATORS = (";", "\t", "|")
_SPREADSHEET, _CSV = ".xlsx", ".csv"


class Layout(Struct, frozen=True):
    """How a table is laid out.

    ``heading`` is the number of the row that holds the names of the columns, from 1. ``separator`` stands between the
    cells of a CSV file. ``sheet`` is the name of a sheet of a spreadsheet; its first where it is "".
    """

    heading: int = 1
    separator: str = ","
    sheet: str = ""


class ShopRow(Struct, frozen=True):
    """A row by its number in the table, from 1, and its cells by the names of their columns; none that is empty."""

    number: int
    cells: Mapping[str, str]


class RefusedRow(Struct, frozen=True):
    """A row of which nothing could be made: its number in the table, and why."""

    number: int
    why: str

    def __str__(self) -> str:
        return f"row {self.number}: {self.why}"


class ShopTable(Struct, frozen=True):
    """A table: the names of its columns, and the rows below them that are not empty."""

    columns: tuple[str, ...]
    rows: tuple[ShopRow, ...]


def read_shop_table(path: Path, layout: Layout) -> ShopTable:
    """Read a table.

    :raises TableError: for a file that cannot be read, is of another sort, lacks the sheet or the row of names, or has
        two columns of one name, or a cell beyond the last named column.
    """
    suffix = path.suffix.lower()
    if suffix not in (_CSV, _SPREADSHEET):
        raise TableError(f"{path}: a table is a file that ends in {_CSV} or {_SPREADSHEET}")
    try:
        content = read_regular(path, LARGEST_TABLE)
    except OSError as problem:
        raise TableError(f"{path}: it cannot be read: {problem.strerror or problem}") from problem
    found = _of_csv(content, path, layout) if suffix == _CSV else _of_spreadsheet(content, path, layout)
    return _table(list(found), path, layout)


def _of_csv(content: bytes, path: Path, layout: Layout) -> Iterator[list[str]]:
    try:
        text = content.decode("utf-8-sig")
    except UnicodeDecodeError as problem:
        line = content.count(b"\n", 0, problem.start) + 1
        raise TableError(f"{path}:{line}: the file is not UTF-8 text; save it as CSV, UTF-8") from problem
    reader = csv.reader(io.StringIO(text, newline=""), delimiter=layout.separator, strict=True)
    try:
        yield from reader
    except csv.Error as problem:
        raise TableError(f"{path}:{reader.line_num}: this is no CSV: {problem}") from problem


def _of_spreadsheet(content: bytes, path: Path, layout: Layout) -> Iterator[list[str]]:
    try:
        from openpyxl import load_workbook
    except ImportError as problem:
        says = "a spreadsheet is read by openpyxl, which is not installed: pip install speclint[tables]"
        raise TableError(f"{path}: {says}") from problem
    try:
        book = load_workbook(
            io.BytesIO(content),
            read_only=True,  # row by row
            data_only=True,
        )
    except Exception as problem:  # whatever openpyxl meets in a broken file
        raise TableError(f"{path}: this is no spreadsheet that can be read: {problem}") from problem
    if layout.sheet and layout.sheet not in book.sheetnames:
        raise TableError(f'{path}: it has no sheet "{layout.sheet}"; it has {", ".join(book.sheetnames)}')
    sheet = book[layout.sheet or book.sheetnames[0]]
    for row in sheet.iter_rows(values_only=True):
        yield [cell_text(cell) for cell in row]


def cell_text(cell: object) -> str:
    """A cell of a spreadsheet as text."""
    if cell is None:
        return ""
    if isinstance(cell, dt.datetime):
        return cell.date().isoformat()
    if isinstance(cell, float):
        return repr(int(cell)) if cell.is_integer() else repr(cell)
    return str(cell)


def _table(rows: Sequence[Sequence[str]], path: Path, layout: Layout) -> ShopTable:
    if len(rows) < layout.heading:
        raise TableError(f"{path}: there is no row {layout.heading}, which holds the names of the columns")
    names = [cell.strip() for cell in rows[layout.heading - 1]]
    while names and not names[-1]:
        names.pop()
    if len(names) == 1 and (other := next((one for one in _SEPARATORS if one in names[0]), "")):
        mark = {"\t": "\\t"}.get(other, other)
        raise TableError(
            f'{path}: its columns are parted by "{mark}": save it with commas between them, or say so in a mapping '
            f'with separator = "{mark}", and with decimal = "," where numbers have a comma'
        )
    if not any(names):
        raise TableError(f"{path}: row {layout.heading} names no column")
    if twice := [name for name, number in Counter(names).items() if name and number > 1]:
        raise TableError(
            f'{path}: row {layout.heading} names two columns "{twice[0]}"; give each its own name'
        )
    return ShopTable(tuple(filter(None, names)), tuple(_rows(rows, names, path, layout)))


def _rows(
    rows: Iterable[Sequence[str]], names: Sequence[str], path: Path, layout: Layout
) -> Iterator[ShopRow]:
    for number, row in enumerate(rows, start=1):
        if number <= layout.heading:
            continue
        cells = [cell.strip() for cell in row]
        if any(cells[len(names) :]):
            raise TableError(f"{path}: row {number} has a cell beyond the last column that is named")
        named = {name: cell for name, cell in zip(names, cells, strict=False) if name and cell}
        if named:
            yield ShopRow(number, named)
