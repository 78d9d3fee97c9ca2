"""One file for several parts: lists of names under ``each``, and a mark such as ``{each}`` where their specs differ.

``each = ["left", "right"]`` makes two parts, and ``{each}`` stands for the name of each. Where parts differ by more
than one thing, ``each`` is a table of lists: of ``cylinder = ["left", "right"]`` and ``end = ["front", "back"]`` every
combination is one part, with ``{cylinder}`` and ``{end}`` in its texts.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from itertools import product
from typing import Any, TypeAlias

from speclint.errors import Complaint, Location, one_of
from speclint.repository.differing import Choice, differing_of, for_choice
from speclint.repository.validation import quoted
from speclint.specs import MARK, Array, Leaf, Table

_EACH = re.compile(MARK)
_EXAMPLE = 'each = ["left", "right"]'
#: The names in each list, by the word that stands for them in braces.
Lists: TypeAlias = Mapping[str, tuple[str, ...]]


def parts_of(
    table: Table, file: str, stem: str
) -> tuple[tuple[tuple[Table, str], ...], tuple[Complaint, ...]]:
    """The content of each part that a file states, with the name of the file for it; none where they have no ids."""
    lists, complaints = _lists_of(table)
    if not lists:
        return (), complaints
    without = tuple(_of_id(table, lists, file, stem))
    if without:
        return (), (*complaints, *without)
    differing, refused = differing_of(table, lists)
    choices = [dict(zip(lists, names, strict=True)) for names in product(*lists.values())]
    clashes = dict.fromkeys(clash for choice in choices for clash in _clashes(table, choice))
    stray = _stray(table, lists)
    plain = Table({key: value for key, value in table.items() if key not in ("each", "for")}, table.where)
    parts: list[tuple[Table, str]] = []
    for choice in choices:
        stated, twice = for_choice(plain, differing, choice)
        refused += twice
        parts.append((_of_choice(stated, choice, choices, stem), put_in(stem, choice)))
    return tuple(parts), (*complaints, *dict.fromkeys(refused), *clashes, *stray)


def without_each(table: Table) -> Iterator[Complaint]:
    """A complaint for each text with a mark, and for what differs by name, in a file that lists no names."""
    yield from _stray(table, {})
    if "for" in table:
        stated = table["for"]
        first: Any = next(iter(stated.values()), stated) if isinstance(stated, Table) else stated
        where = first.where.at("for")
        said = "what differs between the parts of a file stands here, and this file lists no names under each"
        yield Complaint(where, said, "", f"{_EXAMPLE}, or the values themselves")


def _lists_of(table: Table) -> tuple[dict[str, tuple[str, ...]], tuple[Complaint, ...]]:
    """The lists of names, and what is wrong with them; none where parts cannot be told from them."""
    stated: Any = table["each"]
    lists: dict[str, tuple[str, ...]] = {}
    complaints: list[Complaint] = []
    if not isinstance(stated, Table):
        lists["each"] = tuple(_names(stated, complaints))
    else:
        listed: Any
        for word, listed in stated.items():
            if not re.fullmatch(MARK, f"{{{word}}}"):
                said = "the name of a list is one word, as it stands in braces in the texts"
                complaints.append(Complaint(listed.where, said, quoted(word), 'a word such as "cylinder"'))
            lists[word] = tuple(_names(listed, complaints))
        if not lists:
            said = "each lists the names of the parts that this file states, at least one"
            complaints.append(Complaint(stated.where, said, "", 'cylinder = ["left", "right"]'))
    return (lists if lists and all(lists.values()) else {}), tuple(complaints)


def _names(listed: Any, complaints: list[Complaint]) -> list[str]:
    """The names in one list that can be used."""
    names: list[str] = []
    if not isinstance(listed, Array) or not listed:
        said = "each lists the names of the parts that this file states, at least one"
        complaints.append(Complaint(listed.where, said, quoted(listed), _EXAMPLE))
        return names
    leaf: Any
    for leaf in listed:
        name = leaf.raw if isinstance(leaf, Leaf) else None
        if not isinstance(name, str) or not name.strip() or _EACH.search(name):
            complaints.append(Complaint(leaf.where, "a name in each is a text", quoted(leaf), _EXAMPLE))
        elif name in names:
            complaints.append(
                Complaint(leaf.where, "each lists this name twice", quoted(name), "each name once")
            )
        else:
            names.append(name)
    return names


def _of_id(table: Table, lists: Lists, file: str, stem: str) -> Iterator[Complaint]:
    """A complaint for each list of several names that the id does not tell apart."""
    leaf = table.get("id", Leaf(stem, Location(file, 1, "id")))
    if not isinstance(leaf, Leaf) or not isinstance(leaf.raw, str):
        return
    marks = set(_EACH.findall(leaf.raw))
    wanted = [word for word, names in lists.items() if word not in marks and (len(names) > 1 or not marks)]
    if wanted:
        shown = " and ".join(f"{{{word}}}" for word in wanted)
        said = f"the file states several parts, and an id without {shown} would be that of all"
        instead = "-".join([leaf.raw, *(f"{{{word}}}" for word in wanted)])
        yield Complaint(leaf.where, said, quoted(leaf.raw), f'id = "{instead}"')


def _clashes(value: object, choice: Choice) -> Iterator[Complaint]:
    """A complaint for each key that becomes another of its table when the names are put in."""
    inner: Any
    if isinstance(value, Table):
        for key, inner in value.items():
            if (plain := put_in(key, choice)) != key and plain in value:
                yield Complaint(
                    inner.where, f'this key becomes "{plain}", which the table has too', "", "one of them"
                )
            yield from _clashes(inner, choice)
    elif isinstance(value, Array):
        for inner in value:
            yield from _clashes(inner, choice)


def _stray(table: Table, lists: Lists) -> Iterator[Complaint]:
    """A complaint for each text with a mark for which the file lists no names."""
    for leaf in _texts([value for key, value in table.items() if key != "each"]):
        for word in dict.fromkeys(_EACH.findall(str(leaf.raw))):
            if word not in lists:
                said = f"{{{word}}} stands for nothing here, as the file lists no names under {_key_of(word)}"
                marks = one_of(f"{{{word}}}", [f"{{{one}}}" for one in lists])
                instead = f"{marks}, or the name itself" if lists else f"{_EXAMPLE}, or the name itself"
                yield Complaint(leaf.where, said, quoted(leaf.raw), instead)


def _key_of(word: str) -> str:
    return "each" if word == "each" else f"each.{word}"


def _texts(value: object) -> Iterator[Leaf]:
    if isinstance(value, Leaf):
        if isinstance(value.raw, str):
            yield value
    elif isinstance(value, Table):
        for inner in value.values():
            yield from _texts(inner)
    elif isinstance(value, list):
        for inner in value:
            yield from _texts(inner)


def _of_choice(table: Table, choice: Choice, choices: list[dict[str, str]], stem: str) -> Table:
    """The content of a file for one choice of names; every place in it knows the id of the part."""
    leaf = table.get("id")
    stated = leaf.raw if isinstance(leaf, Leaf) and isinstance(leaf.raw, str) else stem
    found: Table = _put_in_all(table, choice, put_in(stated, choice))
    found["each"] = Array([Leaf(" ".join(one.values()), table.where) for one in choices], table.where)
    return found


def put_in(text: str, choice: Choice) -> str:
    """A text with the names of a choice put in for the marks."""
    return _EACH.sub(lambda mark: choice.get(mark[1], mark[0]), text)


def _put_in_all(value: Any, choice: Choice, part: str) -> Any:
    """A tree with the names put in for the marks, in keys and texts."""
    where = Location(value.where.file, value.where.line, put_in(value.where.key, choice), part)
    if isinstance(value, Table):
        inside = {put_in(key, choice): _put_in_all(inner, choice, part) for key, inner in value.items()}
        return Table(inside, where)
    if isinstance(value, Array):
        return Array([_put_in_all(inner, choice, part) for inner in value], where)
    return Leaf(put_in(value.raw, choice) if isinstance(value.raw, str) else value.raw, where)
