"""The keys of a kind, or of any table, one line each in the order in which they are listed."""

from __future__ import annotations

from collections.abc import Iterator
from functools import cache
from typing import TYPE_CHECKING

from msgspec import Struct

from speclint.specs import (
    Component,
    Spec,
    SpecTable,
    conditions_of,
    inner_table,
    meanings,
    own_first,
    said_of,
    summary,
)

if TYPE_CHECKING:
    from pydantic.fields import FieldInfo


class ListedKey(Struct, frozen=True):
    """A key within a table: ``prefix`` is that of the table, "" or ends with a point.

    ``takes`` says what may be written; of a table within, ``inner`` is that table and ``named`` what stands for the
    name or number of each where there are several. ``of_every`` is true of the keys that every component has. What
    must hold among the keys of a table stands after them, as ``must hold`` without a field.
    """

    prefix: str
    name: str
    means: str
    takes: str
    field: FieldInfo | None = None
    inner: type[SpecTable] | None = None
    named: str = ""
    of_every: bool = False

    @property
    def written(self) -> str:
        """The key with that of the tables in which it stands."""
        return f"{self.prefix}{self.name}"

    @property
    def says(self) -> str:
        """What it means and what it takes."""
        return f"{self.means}; {self.takes}" if self.means else self.takes


@cache
def listed_keys(table: type[SpecTable]) -> tuple[ListedKey, ...]:
    """Every key of a table and of the tables within it, those of its own first."""
    table.model_rebuild()  # so that tables named before they are defined are known
    return tuple(_with_hosts(table))


def _with_hosts(table: type[SpecTable]) -> Iterator[ListedKey]:
    yield from _keys(table, "", of_every=False)
    for condition in table.hosts if issubclass(table, Spec) else ():
        yield ListedKey("", "must fit", "", str(condition))


def _keys(table: type[SpecTable], prefix: str, *, of_every: bool) -> Iterator[ListedKey]:
    known = meanings(table)
    for name, field in own_first(table).items():
        if issubclass(table, Component) and name == "title":
            of_every = True
        inner, named = inner_table(field.annotation)
        takes = said_of(field) if inner is None else f"a table. {summary(inner)}"
        yield ListedKey(prefix, name, known.get(name, ""), takes, field, inner, named, of_every)
        if inner is not None:
            yield from _keys(inner, f"{prefix}{name}{named}.", of_every=of_every)
    for condition in conditions_of(table):
        yield ListedKey(prefix, "must hold", "", str(condition), of_every=of_every)
