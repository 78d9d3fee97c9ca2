"""What differs between the parts of one file: tables under ``for``, each by the names that a part must have.

``[for.exhaust]`` states what an exhaust valve has otherwise, ``[for."left, front"]`` what the one at the left front
has; of two that state the same key, the one that names more holds. A name that stands in two lists is told apart by the
word of its list: ``[for."groove middle"]``. Whoever has a drawing of another number has its own file of it, and issues.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from typing import Any, TypeAlias

from msgspec import Struct

from speclint.errors import Complaint, Location, one_of
from speclint.repository.own_drawing import of_other_drawing
from speclint.repository.validation import quoted
from speclint.specs import Array, Leaf, Table

#: The name that one part has of each list, by the word of the list.
Choice: TypeAlias = Mapping[str, str]
#: What all parts of a file have in common, or what names another file.
_OF_ALL = frozenset({"id", "kind", "each", "for", "like", "mirror_of"})
_Path: TypeAlias = tuple[str, ...]


class Differing(Struct, frozen=True):
    """What the parts with some names have otherwise: the key as it is written, each name with its list, the values."""

    written: str
    names: frozenset[tuple[str, str]]
    table: Table

    def is_of(self, choice: Choice) -> bool:
        """Whether the part of a choice has all the names."""
        return self.names <= set(choice.items())


def differing_of(table: Table, lists: Mapping[str, Sequence[str]]) -> tuple[list[Differing], list[Complaint]]:
    """What stands under ``for`` in a file, those that name more behind those that name fewer; and what is wrong."""
    stated = table.get("for")
    if stated is None:
        return [], []
    if not isinstance(stated, Table):
        said = "for holds a table for each name whose parts differ"
        where = getattr(stated, "where", table.where)
        return [], [Complaint(where, said, quoted(stated), f"[for.{_first(lists)}]")]
    found: list[Differing] = []
    complaints: list[Complaint] = []
    for written, inner in stated.items():
        where = getattr(inner, "where", stated.where)
        names = [_of_list(name.strip(), lists) for name in written.split(",")]
        faults = [*_faults(names, lists, where), *_of_all(inner, where, lists)]
        complaints += faults
        if not faults:
            chosen = frozenset((word, name) for (word,), name in names)
            found.append(Differing(written, chosen, _placed(inner, f"for.{written}")))
    return sorted(found, key=lambda one: len(one.names)), complaints


def _first(lists: Mapping[str, Sequence[str]]) -> str:
    return next(iter(next(iter(lists.values()))))


def _of_list(written: str, lists: Mapping[str, Sequence[str]]) -> tuple[tuple[str, ...], str]:
    """The words of the lists that have a name, and the name: it may stand behind the word of its list."""
    word, _, name = written.partition(" ")
    if name in lists.get(word, ()):
        return (word,), name
    return tuple(word for word, listed in lists.items() if written in listed), written


def _faults(
    names: Sequence[tuple[tuple[str, ...], str]], lists: Mapping[str, Sequence[str]], where: Location
) -> Iterator[Complaint]:
    known = [name for listed in lists.values() for name in listed]
    taken: dict[str, str] = {}
    for words, name in names:
        if not words:
            yield Complaint(where, "no list under each has this name", quoted(name), one_of(name, known))
        elif len(words) > 1:
            said = f"the lists {' and '.join(words)} both have this name"
            yield Complaint(where, said, quoted(name), " or ".join(f'"{word} {name}"' for word in words))
        elif (other := taken.setdefault(words[0], name)) != name:
            said = f"no part is both {other} and {name}"
            yield Complaint(where, said, quoted(f"{other}, {name}"), f"[for.{other}] and [for.{name}]")


def _of_all(inner: Any, where: Location, lists: Mapping[str, Sequence[str]]) -> Iterator[Complaint]:
    if not isinstance(inner, Table):
        said = "what differs for a name is a table of keys"
        yield Complaint(where, said, quoted(inner), f"[for.{_first(lists)}] and the keys below it")
        return
    for key in inner.keys() & _OF_ALL:
        said = f"{key} is stated once for all parts of the file"
        yield Complaint(getattr(inner[key], "where", where), said, "", "it at the head of the file")


def _placed(value: Any, above: str) -> Any:
    """What stands below ``for`` with the keys that it has in the spec."""
    key = value.where.key.removeprefix(above).lstrip(".")
    where = Location(value.where.file, value.where.line, key, value.where.part)
    if isinstance(value, Table):
        return Table({name: _placed(inner, above) for name, inner in value.items()}, where)
    if isinstance(value, Array):
        return Array([_placed(inner, above) for inner in value], where)
    return Leaf(value.raw, where)


def for_choice(table: Table, differing: Sequence[Differing], choice: Choice) -> tuple[Table, list[Complaint]]:
    """What a file states for one choice of names, and a complaint for each key of which it cannot be told."""
    chosen = [one for one in differing if one.is_of(choice)]
    for one in chosen:
        dropped = of_other_drawing(one.table, table)
        table = _put_over(table, one.table)
        table = Table({key: value for key, value in table.items() if key not in dropped}, table.where)
    return table, list(_undecided(chosen))


def _put_over(table: Table, over: Table) -> Table:
    inside = dict(table)
    for key, value in over.items():
        there = table.get(key)
        if isinstance(there, Table) and isinstance(value, Table) and not _is_value(value):
            inside[key] = _put_over(there, value)
        else:
            inside[key] = value
    return Table(inside, table.where)


def _is_value(table: Table) -> bool:
    """Whether a table is one value, with where it comes from."""
    return "value" in table


def _undecided(chosen: Sequence[Differing]) -> Iterator[Complaint]:
    stated: dict[_Path, list[tuple[Differing, Any]]] = {}
    for one in chosen:
        for path, value in _values(one.table, ()):
            stated.setdefault(path, []).append((one, value))
    for said in stated.values():
        most = max(len(one.names) for one, _ in said)
        (first, _), *others = [(one, value) for one, value in said if len(one.names) == most]
        for other, value in others:
            both = ", ".join(dict.fromkeys(name for _, name in sorted(first.names | other.names)))
            why = f"for.{first.written} states this key too, and for the part of both neither goes before the other"
            yield Complaint(value.where, why, "", f'[for."{both}"] with what holds there')


def _values(table: Table, above: _Path) -> Iterator[tuple[_Path, Any]]:
    for key, value in table.items():
        if isinstance(value, Table) and not _is_value(value):
            yield from _values(value, (*above, key))
        else:
            yield (*above, key), value
