"""Two specs side by side: whether they are built alike wherever a rule looked at them, and what differs in them."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from msgspec import Struct, field

from speclint.errors import Location, field_names
from speclint.quantities import Measure
from speclint.specs import EVERY_FIELD, Link, NotStated, Spec, SpecTable, Stated, fields_of

#: Of a spec no rule reads these; what is taken over through them is in the other keys.
_UNREAD = frozenset({"id", "like", "mirror_of", "each", "notes"})
#: That one of these is stated is read through the sheet alone; a rule may see of any other key whether it is.
_OF_DRAWING = frozenset({"title", "drawing", "revision", "prepared_by", "checked_by"})
Place = tuple[str, str, str]


class SpecPair(Struct):
    """Two specs side by side, in the fields that were ``read``, by the identity of their table; ``ids`` are all that
    there are.

    It finds where each leads, the values that differ, and the ids that stand in them as words. ``tables`` are those
    whose keys are ids, such as the temperatures of a duty: of the one and of the other.
    """

    read: Mapping[int, frozenset[str]]
    ids: Mapping[str, str]
    links: list[tuple[str, str]] = field(default_factory=list)
    differ: set[int] = field(default_factory=set)
    names: set[str] = field(default_factory=set)
    places: dict[Place, Location] = field(default_factory=dict)
    tables: list[tuple[Mapping[str, Any], Mapping[str, Any]]] = field(default_factory=list)

    def by_id(self, parts: Mapping[str, str]) -> Mapping[Place, Location] | None:
        """The places of values that stand under the id of a part, as those of the part in its stead; None where they
        are not the same.
        """
        found: dict[Place, Location] = {}
        for one, other in self.tables:
            for name, stead in parts.items():
                here, there = one.get(name), other.get(stead)
                if here is None and there is None:
                    continue
                if here is None or there is None or not say_the_same(here, there):
                    return None
                found[_place_of(here)] = there.where
        return found

    def alike(self, one: Any, other: Any) -> bool:
        """Whether two specs, or two values of them, are built alike wherever it was looked at them; what differs in
        them is put down.
        """
        if type(one) is not type(other):
            return False
        if isinstance(one, SpecTable):
            return self._tables(one, other)
        if isinstance(one, Mapping):
            by_id = one.keys() & self.ids.keys()
            if by_id and all(isinstance(one[key], Measure) for key in by_id):
                self.tables.append((one, other))
            else:
                self.names |= by_id
            return list(one) == list(other) and all(self.alike(one[key], other[key]) for key in one)
        if isinstance(one, tuple | list):
            return len(one) == len(other) and all(map(self.alike, one, other))
        return self._leaves(one, other)

    def _tables(self, one: SpecTable, other: SpecTable) -> bool:
        read = self.read.get(id(one), frozenset())
        here, there = fields_of(one), fields_of(other)
        names = here if EVERY_FIELD in read else [name for name in here if name in read]
        return all(self._field(name, here[name], there[name], isinstance(one, Spec)) for name in names)

    def _field(self, name: str, one: object, other: object, whole: bool) -> bool:
        if whole and name in _UNREAD:
            return True
        if whole and name in _OF_DRAWING and isinstance(one, NotStated) != isinstance(other, NotStated):
            self.differ.add(id(one.where))  # type: ignore[attr-defined]  # as what is stated has a place too
            return True
        return self.alike(one, other)

    def _leaves(self, one: Any, other: Any) -> bool:
        where = getattr(one, "where", None)
        if where is None:
            return bool(one == other)
        self.places[_place_of(one)] = other.where
        if isinstance(one, Link):
            self.links.append((one.id, other.id))
            return bool(one.kinds == other.kinds)
        if isinstance(one, NotStated):
            return True
        if isinstance(one, Stated) and isinstance(one.value, str) and one.value in self.ids:
            self.names.add(one.value)
        if not say_the_same(one, other):
            self.differ.add(id(where))
        return True


def say_the_same(one: Any, other: Any) -> bool:
    """Whether two values say the same, wherever they stand."""
    if one is other or type(one) is not type(other):
        return one is other
    for name in field_names(type(one)):
        here, there = getattr(one, name), getattr(other, name)
        if isinstance(here, Location) or here is there or here == there:
            continue
        if not (hasattr(here, "where") and say_the_same(here, there)):
            return False
    return True


def _place_of(value: Any) -> Place:
    where: Location = value.where
    return where.file, where.part, where.key
