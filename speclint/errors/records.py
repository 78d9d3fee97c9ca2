"""Classes of data, whether structs or dataclasses: the names of their fields, and a copy with some of them changed.

What is made at every start is a struct: its class is made in a thirtieth of the time that a dataclass takes. One of
which a field is not compared or not shown, or whose methods are run on enclosures, is a dataclass.
"""

from __future__ import annotations

import dataclasses
from functools import cache
from typing import TYPE_CHECKING, Any

import msgspec

if TYPE_CHECKING:  # a checker of types knows by it which fields there are, of a struct as of a dataclass
    from dataclasses import replace as replace  # noqa: TID251  # both kinds of data are told apart below
else:

    def replace(record, /, **changes):
        """A copy of a record with some fields changed.

        :raises TypeError: for a name that is no field, or what is no record.
        """
        of_a_struct = isinstance(record, msgspec.Struct)
        return (msgspec.structs.replace if of_a_struct else dataclasses.replace)(record, **changes)  # noqa: TID251


def is_record(kind: type) -> bool:
    """Whether a class is one of data."""
    return issubclass(kind, msgspec.Struct) or dataclasses.is_dataclass(kind)


def made_of_its_fields(kind: type) -> bool:
    """Whether one of a class of data is made from all of its fields, so that it can be made anew from them."""
    if not dataclasses.is_dataclass(kind):
        return issubclass(kind, msgspec.Struct)
    return all(field.init for field in dataclasses.fields(kind))


def field_names(kind: type) -> tuple[str, ...]:
    """The fields of a class of data, in their order.

    :raises TypeError: for any other class.
    """
    return _names(kind, of_all=True)


def compared_names(kind: type) -> tuple[str, ...]:
    """The fields by which two of a class of data are told apart.

    :raises TypeError: for any other class.
    """
    return _names(kind, of_all=False)


@cache
def _names(kind: Any, *, of_all: bool) -> tuple[str, ...]:
    if issubclass(kind, msgspec.Struct):
        names: tuple[str, ...] = kind.__struct_fields__
        return names
    return tuple(field.name for field in dataclasses.fields(kind) if of_all or field.compare)
