"""The values of TOML as they were read, each with its place."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from typing import Any

from msgspec import Struct

from speclint.errors import NOWHERE, Location


class Leaf(Struct, frozen=True):
    """A value as TOML gave it, with its place; the loader wraps every value so."""

    raw: object
    where: Location


class Table(dict[str, object]):
    """A TOML table as read, with its place; its key is the prefix of the keys within.

    ``unstated_at`` is where what it does not state would be written, where that is not in the table itself: in the spec
    from which the table takes over what it does not state.
    """

    __slots__ = ("unstated_at", "where")

    def __init__(
        self, items: Mapping[str, object], where: Location, unstated_at: Location | None = None
    ) -> None:
        super().__init__(items)
        self.where, self.unstated_at = where, unstated_at


class Array(list[object]):
    """A TOML array as read, with its place."""

    __slots__ = ("where",)

    def __init__(self, items: Iterable[object], where: Location) -> None:
        super().__init__(items)
        self.where = where


def opened(raw: object) -> tuple[object, Location]:
    """The bare value behind a leaf, and its place."""
    return (raw.raw, raw.where) if isinstance(raw, Leaf) else (raw, NOWHERE)


def bare(value: Any) -> Any:
    """A tree of tables, arrays and leaves without the places."""
    if isinstance(value, Leaf):
        return value.raw
    if isinstance(value, Mapping):
        return {name: bare(inner) for name, inner in value.items()}
    return [bare(inner) for inner in value] if isinstance(value, list) else value
