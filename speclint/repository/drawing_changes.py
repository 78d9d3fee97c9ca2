"""Which drawings changed between two states of a design, as files or by their readings."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import TypeAlias

from speclint.repository.concession import Register
from speclint.repository.design import Design

_State: TypeAlias = tuple[Design, Register]


def drawn_otherwise(before: _State, now: _State) -> set[str]:
    """The ids of the components of which the file of the drawing, or a reading of it, is another. Reads the files."""
    was, is_now = _drawings(*before), _drawings(*now)
    return {name for name in was.keys() | is_now.keys() if was.get(name) != is_now.get(name)}


def _drawings(design: Design, register: Register) -> Mapping[str, object]:
    return dict(_each(design, register))


def _each(design: Design, register: Register) -> Iterator[tuple[str, object]]:
    for name, entry in design.index.entries.items():
        if entry.drawing_file is not None:
            state = design.drawing_files.state(entry.drawing_file)
            readings = [one for one in register.readings if name in one.parts]
            yield name, (state.sha256, bool(state.fault), readings)
