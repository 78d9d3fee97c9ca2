"""Which fields of specs are read while a check is made: what a part alike is compared by, field for field.

A value tells nothing until a sheet opens it; but code may see of a field that it read what stands there: which entries
a table has, whether a link is stated, what a word is. What is read is noted for one check after another, in one place.
"""

from __future__ import annotations

from typing import Any

#: A table, by its identity, and the name of a field of it.
FieldRead = tuple[int, str]
#: Stands for every field of a table.
EVERY_FIELD = "__dict__"

#: Where what is read goes: that of the check which began last.
into: set[FieldRead] = set()


def begin_noting() -> set[FieldRead]:
    """A new place for what is read from now on."""
    global into
    into = set()
    return into


def noted_in(place: set[FieldRead]) -> bool:
    """Whether what is read still goes to a place: no other check began in between."""
    return into is place


def fields_of(table: object) -> dict[str, Any]:
    """The fields of a table with their values; that they are looked at is not noted."""
    values: dict[str, Any] = object.__getattribute__(table, EVERY_FIELD)
    return values
