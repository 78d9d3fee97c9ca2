"""Entering that the drawings of some components were read against their specs."""

from __future__ import annotations

import datetime as dt
import re
from collections.abc import Iterator, Sequence
from pathlib import Path
from typing import TYPE_CHECKING

from msgspec import Struct

from speclint.errors import DesignError, replace
from speclint.register.lock import locked
from speclint.register.opened import Opened, opened
from speclint.register.reading_standing import not_accepted, not_named, role_of
from speclint.register.signing import signed_by
from speclint.register.writing import append_entries
from speclint.repository import DrawingReading, DrawingState, Register, component_called, drawing_state
from speclint.specs import Component, names_nothing

if TYPE_CHECKING:
    from speclint.families import Loaded

_NUMBER = re.compile(r"^R-(\d+)$")


class Reader(Struct, frozen=True):
    """Who read the drawings. ``role`` may come from the settings where they name a reviewer."""

    name: str
    role: str = ""


def enter_reading(
    components: Sequence[str],
    reader: Reader,
    folder: Path,
    loaded: Loaded,
    today: dt.date,
    key: Path | None = None,
) -> tuple[tuple[DrawingReading, ...], str]:
    """Enter that the drawings of some components were read, each with the digest of its file; all of them or none.

    Parts that are said to be alike, and name the same file at the same revision, are read with the one that is named.
    Each entry is signed where a key is given. Returns the entries and the file of the register.

    :raises DesignError: where a component names no file that can be read, or this person may not enter a reading.
    :raises SettingsError: where the register cannot be read.
    :raises OutputError: where it cannot be locked or written.
    :raises SigningError: where the key does not sign for the person.
    """
    repository = opened(folder, loaded, today)
    _refuse_reader(reader, repository)
    list(_read(components, reader, repository, today))  # before the lock is held, as a file may be large
    with locked(repository.file):
        repository = repository.read_again()
        entries = tuple(_numbered(_read(components, reader, repository, today), repository.register))
        if key is not None:
            entries = tuple(signed_by(one, repository.surroundings, key) for one in entries)
        append_entries(repository.file, *entries)
    return entries, repository.register.file


def _refuse_reader(reader: Reader, repository: Opened) -> None:
    if names_nothing(reader.name):
        raise DesignError("a reading states who read the drawing")
    if reader.role and names_nothing(reader.role):
        raise DesignError(f'a reading states in what role, or leaves it out; read "{reader.role}"')
    if why := not_named(reader.name, repository.settings):
        raise DesignError(why)


def _read(
    components: Sequence[str], reader: Reader, repository: Opened, today: dt.date
) -> Iterator[DrawingReading]:
    """One reading for each file, at each revision of the specs that name it."""
    role = reader.role or role_of(reader.name, repository.settings)
    together: dict[tuple[str, str], list[DrawingState]] = {}
    for name in dict.fromkeys(components):
        state = _to_read(name, repository)
        group = together.setdefault((state.file, state.revision), [])
        for one in (state, *_alike(state, repository)):
            if one.component not in [other.component for other in group]:
                group.append(one)
    for (file, revision), states in together.items():
        first, *others = states
        also_on = tuple(one.component for one in others)
        yield DrawingReading(
            "", first.component, file, first.sha256, reader.name, today, revision, role, also_on
        )


def _to_read(name: str, repository: Opened) -> DrawingState:
    """How the drawing of a component stands.

    :raises DesignError: where there is no such component, no file of its drawing that can be read, or it is read.
    """
    design = repository.surroundings.context.design
    component_called(name, design)
    state = _state_of(name, repository)
    if state is None:
        says = f'{name} names no file of its drawing; drawing_file = "…" in {design.files[name]} names one'
        raise DesignError(says)
    if state.fault:
        raise DesignError(f"{name}: {state.says}")
    if _is_read(state, repository):
        raise DesignError(f"{name} is read as it is: {state.says}")
    return state


def _state_of(name: str, repository: Opened) -> DrawingState | None:
    surroundings = repository.surroundings
    design = surroundings.context.design
    spec = design.specs.get(name)
    if not isinstance(spec, Component):
        return None
    return drawing_state(spec, design, repository.register.readings, surroundings.today)


def _is_read(state: DrawingState, repository: Opened) -> bool:
    """Whether the drawing was read as it is, by somebody whose reading counts."""
    if state.word != "read" or state.reading is None:
        return False
    return not list(not_accepted(state.reading, repository.surroundings))


def _alike(state: DrawingState, repository: Opened) -> Iterator[DrawingState]:
    """How the drawing of each part alike stands, where it is the same and still to be read."""
    for name in repository.surroundings.context.design.names_alike(state.component):
        one = _state_of(name, repository)
        same = one is not None and (one.file, one.revision) == (state.file, state.revision)
        if one is not None and same and not _is_read(one, repository):
            yield one


def _numbered(found: Iterator[DrawingReading], register: Register) -> Iterator[DrawingReading]:
    """Readings with the next free numbers: ``R-001`` for the first."""
    used = [int(match[1]) for one in register.readings if (match := _NUMBER.match(one.number))]
    for number, one in enumerate(found, max(used, default=0) + 1):
        yield replace(one, number=f"R-{number:03}")
