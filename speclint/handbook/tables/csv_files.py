"""Tables in CSV files named for their source and edition, read once when first asked for.

They stand in the folder ``data`` of the handbook, or of the family of rules whose package is named.

A line that starts with ``#`` is a comment. Every other line has exactly as many
fields as the heading.
"""

from __future__ import annotations

import csv
from collections.abc import Mapping
from functools import cache
from types import MappingProxyType

from speclint.errors import NotKnown, nearest_few

Row = Mapping[str, str]


@cache
def rows(file: str, package: str = "speclint.handbook") -> tuple[Row, ...]:
    """All rows of ``data/<file>`` of a package, each a read-only mapping from heading to text.

    ValueError when a line has more or fewer fields than the heading, which is a defect of the table.
    """
    lines = [line for line in _lines(file, package) if line.strip() and not line.startswith("#")]
    heading, *body = csv.reader(lines)
    return tuple(MappingProxyType(dict(zip(heading, fields, strict=True))) for fields in body)


def said_of_table(file: str, package: str = "speclint.handbook") -> tuple[str, ...]:
    """What the comments of a table say: its source and edition, its units, what its columns mean; line by line."""
    return tuple(line.lstrip("# ") for line in _lines(file, package) if line.startswith("#"))


def _lines(file: str, package: str) -> list[str]:
    from importlib.resources import files

    return files(package).joinpath("data", file).read_text(encoding="utf-8").splitlines()


def row(file: str, column: str, entry: str) -> Row:
    """The one row whose ``column`` reads ``entry``; NotKnown names the nearest entries when none does."""
    for found in rows(file):
        if found[column] == entry:
            return found
    raise NotKnown(f"no {column} {entry!r} in the handbook; {_nearest(entry, entries(file, column))}")


def number(file: str, column: str, entry: str, field: str, what: str) -> float:
    """The number in ``field`` of the one row whose ``column`` reads ``entry``.

    NotKnown when there is no such row, or when the table leaves the field empty: the message says that the
    handbook gives no ``what``.
    """
    text = row(file, column, entry)[field]
    if not text:
        raise NotKnown(f"the handbook gives no {what}")
    return float(text)


def entries(file: str, column: str) -> tuple[str, ...]:
    """The entries of one column, in the order of the table."""
    return tuple(found[column] for found in rows(file))


def _nearest(entry: str, known: tuple[str, ...]) -> str:
    close = nearest_few(entry, known, cutoff=0.5)
    return f"nearest: {', '.join(close or known)}"
