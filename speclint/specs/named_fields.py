"""The fields of a kind that hold names of entries of other tables: see :mod:`speclint.specs.named_in`."""

from __future__ import annotations

from collections.abc import Iterator
from functools import cache

from speclint.specs.key_descriptions import inner_table
from speclint.specs.named_in import NamedIn
from speclint.specs.spec import SpecTable


@cache
def names_in(table: type[SpecTable]) -> tuple[tuple[tuple[str, ...], NamedIn], ...]:
    """The fields of a table, and of those within it, that hold names: their keys, "*" for each entry of several."""
    return tuple(_names_in(table))


def _names_in(table: type[SpecTable]) -> Iterator[tuple[tuple[str, ...], NamedIn]]:
    for name, field in table.model_fields.items():
        for mark in field.metadata:
            if isinstance(mark, NamedIn):
                yield (name,), mark
        inner, several = inner_table(field.annotation)
        if inner is not None:
            for path, mark in names_in(inner):
                yield (name, *(("*",) if several else ()), *path), mark
