"""Where the part that is named at a place is stated, and everything that is to change when it is called otherwise."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

from msgspec import Struct

from speclint.editing.cursor import cursor_at
from speclint.editing.workspace import OpenText, Workspace
from speclint.errors import DesignError, Location
from speclint.repository import ids_named

_ID = re.compile(r'\s*id\s*=\s*"')


class Place(Struct, frozen=True):
    """A passage of a file: a line and columns of it, all from 0."""

    file: str
    line: int
    start: int
    end: int


def id_at(space: Workspace, text: OpenText, line: int, column: int) -> tuple[str, Place] | None:
    """The id that stands at a place, its own or that of a part named there; None where there is none."""
    at = cursor_at(text.lines, line, column)
    design = space.edited.design
    if at.side == "value" and (at.whole in design.files or at.path == ("id",)):
        return at.whole, Place(text.file, line, at.start, at.end)
    return None


def stated_at(space: Workspace, name: str) -> Place | None:
    """Where a part is stated: the line of its id, or the head of its file."""
    file = space.edited.design.files.get(name)
    if file is None:
        return None
    for number, line in enumerate(lines_of(space, file)):
        if (found := _ID.match(line)) is not None:
            return Place(file, number, found.end(), max(line.find('"', found.end()), found.end()))
    return Place(file, 0, 0, 0)


def lines_of(space: Workspace, file: str) -> Sequence[str]:
    """The lines of a file as the editor has it, or as it lies in the repository."""
    if file in space.texts:
        return space.texts[file].lines
    return (space.root / file).read_text(encoding="utf-8").splitlines()


def renamed(space: Workspace, name: str, new: str) -> list[Place]:
    """Every place where an id is to be written otherwise.

    :raises DesignError: where the new one is taken or is no id, or where the id is not written out at one of them.
    """
    design = space.edited.design
    if not new.strip() or '"' in new or "\\" in new:
        raise DesignError(f"{new!r} is no id: write letters, digits and hyphens")
    if new in design.files:
        raise DesignError(f"{design.files[new]} has the id {new} already")
    own = stated_at(space, name)
    if own is None:
        raise DesignError(f"no spec has the id {name}")
    if _written(space, own) != name:
        why = "is called by its file: rename the file" if own.end == 0 else "states its id for several parts"
        raise DesignError(f"{own.file} {why}, and the links to {name} by hand")
    places = {own, *(_place(space, where, name) for where in _naming(space, name))}
    return sorted(places, key=lambda one: (one.file, one.line, one.start))


def _naming(space: Workspace, name: str) -> Iterator[Location]:
    """The places of all links to a spec, and of words that name it."""
    design = space.edited.design
    for entry in design.index.entries.values():
        yield from (link.where for link in entry.stated if link.id == name)
    yield from ids_named(design, space.loaded.kinds, name)
    yield from (Location(design.files[one]) for one, other in design.alike.items() if other == name)


def _place(space: Workspace, where: Location, name: str) -> Place:
    lines = lines_of(space, where.file)
    numbers = [where.line - 1] if where.line else range(len(lines))
    for number in numbers:
        start = lines[number].find(f'"{name}"') if number < len(lines) else -1
        if start >= 0:
            return Place(where.file, number, start + 1, start + 1 + len(name))
    raise DesignError(f"{where} names {name} without writing it out: rename it there by hand")


def _written(space: Workspace, place: Place) -> str:
    lines = lines_of(space, place.file)
    return lines[place.line][place.start : place.end] if lines else ""
