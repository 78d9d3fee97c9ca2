"""Which fields of specs are read while a check is made: what a part alike is compared by, field for field.

A value tells nothing until a sheet opens it; but code may see of a field that it read what stands there: which entries
a table has, whether a link is stated, what a word is. What is read is noted for one check after another, in one place.

A check reads a few fields many thousand times, so that only the first time is noted: the fields of a table stand as one
entry in the dictionary of the object, where Python looks a name up, and a field joins them there when it is first read.
All that joined leaves it again when the next check begins.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from pydantic import BaseModel

#: A table, by its identity, and the name of a field of it.
FieldRead = tuple[int, str]
#: Stands for every field of a table.
EVERY_FIELD = "__dict__"
#: No name that a field can have: the entry of all fields.
_ALL = ""

_dictionary_of: Callable[[Any], dict[str, Any]] = vars(BaseModel)["__dict__"].__get__

#: Where what is read goes: that of the check which began last.
_into: set[FieldRead] = set()
#: The dictionaries that fields joined since, by their identity.
_joined: dict[int, dict[str, Any]] = {}


def begin_noting() -> set[FieldRead]:
    """A new place for what is read from now on."""
    global _into
    for dictionary in _joined.values():
        _leave(dictionary, dictionary[_ALL])
    _joined.clear()
    _into = set()
    return _into


def noted_in(place: set[FieldRead]) -> bool:
    """Whether what is read still goes to a place: no other check began in between."""
    return _into is place


def fields_of(table: object) -> dict[str, Any]:
    """The fields of a table with their values; that they are looked at is not noted."""
    fields: dict[str, Any] = _dictionary_of(table)[_ALL]
    return fields


def every_field(table: object) -> dict[str, Any]:
    """The fields of a table with their values, all noted as read."""
    _into.add((id(table), EVERY_FIELD))
    return fields_of(table)


def place_fields(table: object, fields: dict[str, Any]) -> None:
    """Give a table its fields."""
    _leave(_dictionary_of(table), fields)


def first_read(table: object, name: str, otherwise: Callable[[str], Any]) -> Any:
    """The value of a field that was not read before, noted; what is no field is found otherwise."""
    dictionary = _dictionary_of(table)
    fields = dictionary.get(_ALL)
    if fields is None or name not in fields:
        return otherwise(name)
    _into.add((id(table), name))
    _joined[id(dictionary)] = dictionary
    value = dictionary[name] = fields[name]
    return value


def _leave(dictionary: dict[str, Any], fields: dict[str, Any]) -> None:
    dictionary.clear()
    dictionary[_ALL] = fields
