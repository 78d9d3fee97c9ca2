"""One file for several parts: ``each = ["left", "middle", "right"]``, and ``{each}`` where their specs differ."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Any

from speclint.errors import Complaint, Location
from speclint.repository.validation import quoted
from speclint.specs import Array, Leaf, Table

#: Stands in the text of a spec for the name of each part.
MARK = "{each}"
_EXAMPLE = 'each = ["left", "right"]'


def names_of(table: Table, file: str, stem: str) -> tuple[tuple[str, ...], tuple[Complaint, ...]]:
    """The names for which a file states one part each, none without an id for each; and what is wrong."""
    complaints: list[Complaint] = []
    names: list[str] = []
    listed = table["each"]
    if not isinstance(listed, Array) or not listed:
        where = listed.where if isinstance(listed, Leaf | Table | Array) else table.where
        said = "each lists the names of the parts that this file states, at least one"
        return (), (Complaint(where, said, quoted(listed), _EXAMPLE),)
    for leaf in listed:
        where = leaf.where if isinstance(leaf, Leaf | Table | Array) else listed.where
        name = leaf.raw if isinstance(leaf, Leaf) else None
        if not isinstance(name, str) or not name.strip() or MARK in name:
            complaints.append(Complaint(where, "a name in each is a text", quoted(leaf), _EXAMPLE))
        elif name in names:
            complaints.append(Complaint(where, "each lists this name twice", quoted(name), "each name once"))
        else:
            names.append(name)
    without = list(_of_id(table, file, stem))
    complaints += without
    complaints += [clash for name in names for clash in _clashes(table, name)]
    return () if without else tuple(names), tuple(complaints)


def _of_id(table: Table, file: str, stem: str) -> Iterator[Complaint]:
    leaf = table.get("id", Leaf(stem, Location(file, 1, "id")))
    if isinstance(leaf, Leaf) and isinstance(leaf.raw, str) and MARK not in leaf.raw:
        said = f"the file states several parts, and an id without {MARK} would be that of all"
        yield Complaint(leaf.where, said, quoted(leaf.raw), f'id = "{leaf.raw}-{MARK}"')


def _clashes(value: object, name: str) -> Iterator[Complaint]:
    """A complaint for each key that becomes another of its table when a name is put in."""
    if isinstance(value, Table):
        for key, inner in value.items():
            if MARK in key and (plain := key.replace(MARK, name)) in value:
                where = getattr(inner, "where", value.where)
                yield Complaint(
                    where, f'this key becomes "{plain}", which the table has too', "", "one of them"
                )
            yield from _clashes(inner, name)
    elif isinstance(value, Array):
        for inner in value:
            yield from _clashes(inner, name)


def without_each(table: Table) -> Iterator[Complaint]:
    """A complaint for each text with the mark in a file that lists no names."""
    for leaf in _texts(table):
        if MARK in str(leaf.raw):
            said = f"{MARK} stands for nothing here, as the file lists no names under each"
            yield Complaint(leaf.where, said, quoted(leaf.raw), f"{_EXAMPLE}, or the name itself")


def _texts(value: object) -> Iterator[Leaf]:
    if isinstance(value, Leaf):
        if isinstance(value.raw, str):
            yield value
    elif isinstance(value, Table):
        for inner in value.values():
            yield from _texts(inner)
    elif isinstance(value, Array):
        for inner in value:
            yield from _texts(inner)


def of_each(table: Table, name: str, names: Sequence[str], stem: str) -> Table:
    """The content of a file for one of its names; every place in it knows the id of the part."""
    leaf = table.get("id")
    part = leaf.raw.replace(MARK, name) if isinstance(leaf, Leaf) and isinstance(leaf.raw, str) else stem
    found: Table = _put_in(Table({**table, "each": Array([], table.where)}, table.where), name, part)
    found["each"] = Array([Leaf(one, table.where) for one in names], table.where)
    return found


def _put_in(value: Any, name: str, part: str) -> Any:
    """A tree with a name put in for the mark, in keys and texts."""
    where = Location(value.where.file, value.where.line, value.where.key.replace(MARK, name), part)
    if isinstance(value, Table):
        inside = {key.replace(MARK, name): _put_in(inner, name, part) for key, inner in value.items()}
        return Table(inside, where)
    if isinstance(value, Array):
        return Array([_put_in(inner, name, part) for inner in value], where)
    return Leaf(value.raw.replace(MARK, name) if isinstance(value.raw, str) else value.raw, where)
