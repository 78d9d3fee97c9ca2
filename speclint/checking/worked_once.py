"""A check of parts alike is worked once: the worst corner of the one is that of the other, where that is proved.

A rule reads nothing but its component, the specs that its sheet leads it to, and the values that its sheet opens. So a
check of a second part comes out as that of the first where, with every id renamed one to one, the same specs are
reached by the same links, have the same entries wherever the rule looked at them, and state the same values wherever
it asked for one at any corner. What it never looked at may differ (:mod:`speclint.specs.fields_read`). Then the second
part is run at the corners that govern the first, and written down in its own words. Whatever differs in anything that
was asked is worked by itself.
"""

from __future__ import annotations

from collections.abc import Hashable, Mapping
from typing import Any

from msgspec import Struct

from speclint.checking.proved import Proof
from speclint.checking.severity import Severity
from speclint.checking.side_by_side import Place, SpecPair
from speclint.errors import Location
from speclint.repository import Design
from speclint.rules import Asked, Consulted, Context, Rule
from speclint.specs import Component, Link, fields_of


class CaseWorked(Struct, frozen=True):
    """What governs one load case: the corner, the inputs that matter there, and the corner of each thing that fails."""

    sides: Mapping[Hashable, bool]
    severity: Severity
    matter: tuple[tuple[Hashable, bool], ...]
    proof: Proof
    failing: tuple[tuple[tuple[int, int, str], Mapping[Hashable, bool]], ...]


class Worked(Struct, frozen=True):
    """A check that was worked in full: of which component, what it asked for, and what governs.

    ``read`` are the fields that it looked at, by the identity of their table.
    """

    component: str
    asked: Asked
    read: Mapping[int, frozenset[str]]
    consulted: Consulted
    cases: Mapping[str, CaseWorked]


class Renamed(Struct, frozen=True):
    """One part in place of another: the id that takes the place of each, and the place that takes that of each."""

    parts: Mapping[str, str]
    places: Mapping[Place, Location]

    def consulted(self, one: Consulted) -> Consulted:
        """What the other consults, at every corner."""
        parts = self.parts
        return Consulted(
            {parts.get(name, name) for name in one.specs},
            {(parts.get(name, name), word) for name, word in one.words},
            {(parts.get(name, name), kind) for name, kind in one.linked},
            {self._place(place) for place in one.opened},
        )

    def _place(self, place: Place) -> Place:
        where = self.places.get(place)
        return place if where is None else (where.file, where.part, where.key)

    def sides(self, sides: Mapping[Hashable, bool]) -> dict[Hashable, bool]:
        """A corner of the one as a corner of the other."""
        return {self.key(key): high for key, high in sides.items()}

    def key(self, key: Any) -> Hashable:
        """An input of the one as that of the other."""
        where = self.places.get(key[1:]) if key[0] == "taken" else None
        if where is not None:
            return "taken", where.file, where.part, where.key
        if key[0] == "looked up":
            return (*key[:2], self.parts.get(key[2], key[2]))
        renamed: Hashable = key
        return renamed


class WorkedOnce:
    """The checks of one design that parts alike may share, by rule and by the part that all are like."""

    def __init__(self) -> None:
        self._worked: dict[tuple[str, str], list[Worked]] = {}
        self._names: dict[frozenset[str], frozenset[str]] = {}

    def keep(
        self,
        rule: Rule,
        component: str,
        cases: Mapping[str, CaseWorked],
        consulted: Consulted,
        context: Context,
    ) -> None:
        """Keep how a check was worked, for those of parts alike."""
        root = context.design.first_alike(component)
        if root and context.asked.whole:
            known = self._names  # the same few fields of the same kinds, over and over
            read = {
                table: known.setdefault(names, names) for table, names in context.asked.by_table().items()
            }
            worked = Worked(component, context.asked.copy(), read, consulted, cases)
            self._worked.setdefault((rule.name, root), []).append(worked)

    def known(self, rule: Rule, component: str, context: Context) -> tuple[Worked, Renamed] | None:
        """A check that a part alike shares, and how it is renamed; None where there is none, or that is not proved."""
        root = context.design.first_alike(component)
        for found in self._worked.get((rule.name, root), ()):
            if found.component == component:
                return None
            if renamed := _Renaming(found, context.design).to(component):
                return found, renamed
        return None


class _Renaming:
    """Seeks the one renaming under which a check of one part is that of another."""

    def __init__(self, worked: Worked, design: Design) -> None:
        self._worked, self._design = worked, design
        self._parts: dict[str, str] = {}
        self._back: dict[str, str] = {}
        self._needed = {worked.component, *worked.asked.followed}
        self._queries = list(worked.asked.queried)
        self._leading = list(worked.asked.leading)
        self._compared: dict[str, SpecPair] = {}

    def to(self, component: str) -> Renamed | None:
        """The renaming, where the check is proved to be the same."""
        if self._design.cut or not (
            self._join(self._worked.component, component) and self._duties(component)
        ):
            return None
        while pending := [
            name for name in self._needed if name in self._parts and name not in self._compared
        ]:
            compared = all(self._compare(name) for name in pending)
            if not (compared and self._answer() and self._answer_leading()):
                return None
        if self._queries or self._leading or self._needed - self._compared.keys() or not self._same():
            return None
        places = {place: where for pair in self._compared.values() for place, where in pair.places.items()}
        for pair in self._compared.values():
            by_id = pair.by_id(self._parts)
            if by_id is None:
                return None
            places.update(by_id)
        return Renamed(dict(self._parts), places)

    def _join(self, one: str, other: str) -> bool:
        """Let one id stand for another, and no other for either."""
        return self._parts.setdefault(one, other) == other and self._back.setdefault(other, one) == one

    def _duties(self, component: str) -> bool:
        parts = (self._design.specs.get(name) for name in (self._worked.component, component))
        one, other = (
            self._design.duty_of(part)[0] if isinstance(part, Component) else None for part in parts
        )
        if one is None or other is None:
            return one is other
        self._needed.add(one.id)
        return self._join(one.id, other.id)

    def _compare(self, name: str) -> bool:
        one, other = self._design.specs.get(name), self._design.specs.get(self._parts[name])
        pair = SpecPair(self._worked.read, self._design.files)
        if one is None or other is None or not pair.alike(one, other):
            return False
        self._compared[name] = pair
        return all(self._join(*link) for link in pair.links)

    def _answer(self) -> bool:
        """Whether what belongs to a part, as it was asked, stands for what belongs to the other, in its order."""
        for query in [one for one in self._queries if one[0] in self._parts]:
            self._queries.remove(query)
            target, kind = query
            ones, others = (
                [part.id for part in self._linking(name, kind)] for name in (target, self._parts[target])
            )
            if len(ones) != len(others) or not all(map(self._join, ones, others)):
                return False
            self._needed.update(ones)
        return True

    def _answer_leading(self) -> bool:
        """Whether the entries of a table that lead to a part, as it was asked, are like those that lead to the other,
        in their order.
        """
        for query in [one for one in self._leading if {one[0], one[3]} <= self._compared.keys()]:
            self._leading.remove(query)
            owner, table, by, target = query
            pair = self._compared[owner]
            ones, others = (
                [
                    entry
                    for entry in fields_of(self._design.specs[spec])[table].values()
                    if isinstance(link := fields_of(entry)[by], Link) and link.id == end
                ]
                for spec, end in ((owner, target), (self._parts[owner], self._parts[target]))
            )
            if len(ones) != len(others) or not all(map(pair.alike, ones, others)):
                return False
            if not all(self._join(*link) for link in pair.links):
                return False
        return True

    def _linking(self, name: str, kind: type[Component]) -> tuple[Component, ...]:
        spec = self._design.specs.get(name)
        return self._design.linking_of(spec, kind) if spec else ()

    def _same(self) -> bool:
        """Whether nothing that was asked for differs, and no id that is another's stands anywhere as a word."""
        moved = {name for pair in self._parts.items() if pair[0] != pair[1] for name in pair}
        asked = self._worked.asked.values.keys()
        return not any(pair.names & moved or pair.differ & asked for pair in self._compared.values())
