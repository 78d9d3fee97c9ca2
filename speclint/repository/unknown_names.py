"""Names that the table which they are looked up in has not, as the fields of the kinds declare it."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from typing import Any

from msgspec import Struct

from speclint.errors import Complaint, Location, nearest, one_of, shortened
from speclint.repository.design import Design
from speclint.repository.index import Index
from speclint.specs import Catalogue, Component, Duty, Link, NamedIn, Spec, SpecTable, Stated, names_in

Specs = Mapping[str, Spec]


def unknown_names_of(spec: Spec, known: Known) -> Iterator[Complaint]:
    """A complaint for each name of a spec that its table has not, with the nearest name of that table.

    A table that states nothing so far refuses no name.
    """
    for path, mark in names_in(type(spec)):
        for holder, name, at in _names(spec, spec, path):
            if name in mark.beside:
                continue
            table = _looked_up(spec, holder, mark, known)
            if table.known and name not in table.known:
                yield Complaint(at, table.wanting, f'"{shortened(name)}"', table.one_of(name))


def mistyped_parts_of(spec: Spec, known: Known) -> Iterator[Complaint]:
    """A complaint for each temperature of a duty whose name is that of a part or a kind with a slip of one letter.

    Any other name may stand for a place that is no part, and for a part that is drawn later.
    """
    cases = spec.cases if isinstance(spec, Duty) else {}
    if not any(case.temperatures for case in cases.values()):
        return
    parts = {*known.ids_of((Component.kind,)), *known.words()}
    for case in cases.values():
        for name in case.temperatures:
            meant = [part for part in _slips(name) if part in parts] if name not in parts else []
            if meant:
                where = getattr(case.temperatures[name], "where", case.where)
                said = "no part and no kind has this name, which differs from one by a letter"
                yield Complaint(where, said, f'"{shortened(name)}"', f'"{meant[0]}"')


_LETTERS = "abcdefghijklmnopqrstuvwxyz"


def _slips(name: str) -> Iterator[str]:
    """What a name may be a slip of: with a letter left out, put in, or two changed over; not with a plural."""
    for at, letter in enumerate(name):
        if letter.isalpha() and not (letter == "s" and at == len(name) - 1):
            yield name[:at] + name[at + 1 :]
            if name[at + 1 : at + 2].isalpha():
                yield f"{name[:at]}{name[at + 1]}{letter}{name[at + 2 :]}"
    for at in range(len(name) + 1):
        for letter in _LETTERS:
            if not (letter == "s" and at == len(name)):
                yield name[:at] + letter + name[at:]


def names_for(
    spec: Spec, path: tuple[str, ...], known: Known, *, of_unstated: bool = False
) -> frozenset[str]:
    """The names that may stand under a path of keys, "*" for each entry of several; none where that is no name.

    Also where the spec states none so far: they are those of the table in which its names are looked up.
    ``of_unstated`` gives those of a table too that the spec does not state, as it is being written.
    """
    found: set[str] = set()
    holders = [*_holders(spec, path[:-1])] or ([spec] if of_unstated else [])
    for here, mark in names_in(type(spec)):
        if len(here) == len(path) and all(one in ("*", key) for one, key in zip(here, path, strict=True)):
            for holder in holders:
                table = _looked_up(spec, holder, mark, known)
                found |= {*table.known, *mark.beside}
    return frozenset(found)


def _holders(holder: SpecTable, path: tuple[str, ...]) -> Iterator[SpecTable]:
    """The tables of a spec that state a key under a path."""
    values: list[object] = [holder]
    for key in path:
        values = [one for value in values for one in _under(value, key)]
    yield from (value for value in values if isinstance(value, SpecTable))


def _under(value: object, key: str) -> Iterable[object]:
    """What stands under a key of a table, an entry of several by its name or number, or all of them for "*"."""
    if isinstance(value, Mapping):
        return value.values() if key == "*" else [value.get(key)]
    if isinstance(value, tuple):
        return [value[int(key) - 1]] if key.isdecimal() and 0 < int(key) <= len(value) else []
    return [] if key == "*" else [getattr(value, key, None)]


class _Table(Struct, frozen=True):
    """Names that are known, what is said of another, and words that may stand in their place."""

    wanting: str
    known: frozenset[str]
    beside: tuple[str, ...]

    def one_of(self, name: str) -> str:
        return one_of(name, {*self.known, *self.beside})


class _AnyPart(_Table, frozen=True):
    """The ids of all components: too many to be listed where none is near; the words beside them run in order."""

    def one_of(self, name: str) -> str:
        near = nearest(name, self.known)
        beside = f', or "{self.beside[0]}" to "{self.beside[-1]}"' if self.beside else ""
        return f'"{near}"' if near else f"the id of a component{beside}"


def _names(
    holder: SpecTable, value: object, path: tuple[str, ...]
) -> Iterator[tuple[SpecTable, str, Location]]:
    """The names under a path of keys, each with the table that states it and its place; those of a table by name are
    the names of its entries."""
    holder = value if isinstance(value, SpecTable) else holder
    if path and path[0] == "*":
        for one in (
            value.values() if isinstance(value, Mapping) else value if isinstance(value, tuple) else ()
        ):
            yield from _names(holder, one, path[1:])
    elif path:
        yield from _names(holder, getattr(value, path[0]), path[1:])
    elif isinstance(value, Stated):
        yield holder, value.value, value.where
    elif isinstance(value, Mapping):
        for name, entry in value.items():
            if isinstance(entry, SpecTable):
                yield holder, name, entry.where
    elif isinstance(value, tuple):
        for entry in value:
            yield from _names(holder, entry, path)


class Known:
    """The specs of a design, by what names are looked up in.

    ``files`` are those of every id, also of a spec that could not be read: what it holds is not known.
    """

    def __init__(self, specs: Specs, files: Mapping[str, str], index: Index) -> None:
        self.specs, self._files, self._index = specs, files, index
        self._ids: dict[tuple[str, ...], frozenset[str]] = {}

    def ids_of(self, kinds: tuple[str, ...]) -> frozenset[str]:
        """The ids of some kinds, and those of specs that could not be read."""
        if kinds not in self._ids:
            entries = self._index.entries
            ids = {name for name, one in entries.items() if one.is_one_of(kinds)}
            self._ids[kinds] = frozenset(ids | (self._files.keys() - entries.keys()))
        return self._ids[kinds]

    def words(self) -> frozenset[str]:
        """The words of every kind of the core, and of those of all specs."""
        return frozenset(
            {*Catalogue(), *(word for one in self._index.entries.values() for word in one.words)}
        )

    def linking(self, spec: Spec, mark: NamedIn) -> list[Spec]:
        """The specs of a kind that link under a key to one, or to that which its own links lead to."""
        owner = _linked(spec, mark.through, self.specs)
        return [] if owner is None else self.linking_to(owner, mark)

    def linking_to(self, owner: Spec, mark: NamedIn) -> list[Spec]:
        """The specs of a kind that link to one under a key."""
        entries = self._index.entries
        names = [one for one in self._index.linking_to(owner.id) if entries[one].is_one_of((mark.of,))]
        links = ((one, getattr(one, mark.by)) for name in names if (one := self.specs.get(name)))
        return [one for one, link in links if isinstance(link, Link) and link.id == owner.id]


def _looked_up(spec: Spec, holder: SpecTable, mark: NamedIn, known: Known) -> _Table:
    """The table that a name is looked up in: without names where a link on the way is not stated, or leads nowhere."""
    if mark.ids_of:
        said = f"no {' or '.join(mark.ids_of)} has this id"
        table = _AnyPart if Component.kind in mark.ids_of else _Table
        return table(said, known.ids_of(mark.ids_of), mark.beside)
    start: SpecTable = holder if mark.table.startswith(".") else spec
    starts: list[tuple[Spec, SpecTable]] = [(spec, start)]
    if mark.of:
        starts = [(one, one) for one in known.linking(spec, mark)]
    found = [
        one
        for one in (_followed(*each, mark.table.lstrip("."), known.specs) for each in starts)
        if one is not None
    ]
    owners = " and ".join(
        f"{owner.id} ({owner.where.file})" if owner is not spec else "this spec" for owner, _ in found
    )
    words = mark.table.rpartition(".")[2].replace("_", " ")
    names = frozenset(name for _, some in found for name in some)
    return _Table(f"the {words} of {owners} do not have this name", names, mark.beside)


def _followed(spec: Spec, start: SpecTable, table: str, specs: Specs) -> tuple[Spec, frozenset[str]] | None:
    """The spec that a table is in, and the names in the table."""
    value: object = start
    for key in table.split("."):
        value = getattr(value, key, None)  # nothing beyond a link that is not stated
        if isinstance(value, Link):
            found = _at_the_end(value, specs)
            if found is None:
                return None
            spec = value = found
    return (spec, frozenset(value)) if isinstance(value, Mapping) else None


def _linked(spec: Spec, links: str, specs: Specs) -> Spec | None:
    """The spec that a chain of links leads to; the spec itself where there is none."""
    for key in links.split(".") if links else ():
        link = getattr(spec, key, None)
        found = _at_the_end(link, specs) if isinstance(link, Link) else None
        if found is None:
            return None
        spec = found
    return spec


def _at_the_end(link: Link[Any], specs: Specs) -> Spec | None:
    found = specs.get(link.id)
    return found if found is not None and found.is_one_of(link.kinds) else None


def ids_named(design: Design, kinds: Mapping[str, type[Spec]], name: str) -> Iterator[Location]:
    """The places where words of specs that are no links name the id of one; only kinds with such words are read."""
    for one, entry in design.index.entries.items():
        marks = [path for path, mark in names_in(kinds[entry.kind]) if mark.ids_of]
        spec = design.specs.get(one) if marks else None
        if spec is not None:
            found = (said for path in marks for said in _names(spec, spec, path))
            yield from (where for _, word, where in found if word == name)
