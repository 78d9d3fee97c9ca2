"""What the sheets of one check asked for, over all corners and load cases: what a part alike is compared by."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from typing import TYPE_CHECKING

from msgspec import Struct, field

from speclint.errors import Location
from speclint.specs import FieldRead, begin_noting, noted_in

if TYPE_CHECKING:
    from speclint.specs import Component

#: File, part and key of a value.
Place = tuple[str, str, str]


class Asked(Struct):
    """What was asked for.

    ``values`` are the places of the values that were opened, by their identity, as they live as long as the specs;
    ``followed`` the ids to which links led; ``queried`` the parts of which it was asked what belongs to them, and of
    what kind; ``leading`` the named tables of which it was asked which entries lead to a part: the id of the spec, the
    table, the key of the link, the id of the part. ``everything`` where more was asked than can be told, such as how
    other checks came out. ``fields`` are the fields of specs and of their tables that were looked at, whether a value
    there was opened or not.
    """

    values: dict[int, Location] = field(default_factory=dict)
    followed: set[str] = field(default_factory=set)
    queried: set[tuple[str, type[Component]]] = field(default_factory=set)
    leading: set[tuple[str, str, str, str]] = field(default_factory=set)
    everything: bool = False
    fields: set[FieldRead] = field(default_factory=set)

    @property
    def whole(self) -> bool:
        """Whether all that was asked is here: no more than can be told, and no other check began in between."""
        return not self.everything and noted_in(self.fields)

    def clear(self) -> None:
        """Forget it, before another check."""
        self.values.clear()
        self.followed.clear()
        self.queried.clear()
        self.leading.clear()
        self.everything = False
        self.fields = begin_noting()

    @property
    def opened(self) -> set[Place]:
        """The places of the values that were opened, as a design that is read anew has them."""
        return {(where.file, where.part, where.key) for where in self.values.values()}

    @contextmanager
    def opening(self) -> Iterator[dict[int, Location]]:
        """The values that are opened within the block; they are opened of what began before, too."""
        before, self.values = self.values, {}
        here = self.values
        try:
            yield here
        finally:
            self.values = {**before, **here}

    def copy(self) -> Asked:
        """The same, to be kept; the fields by table instead, of which there are many, with ``by_table``."""
        return Asked(
            dict(self.values), set(self.followed), set(self.queried), set(self.leading), self.everything
        )

    def by_table(self) -> dict[int, frozenset[str]]:
        """The names of the fields that were looked at, by the identity of their table."""
        found: dict[int, set[str]] = {}
        for table, name in self.fields:
            found.setdefault(table, set()).add(name)
        return {table: frozenset(names) for table, names in found.items()}
