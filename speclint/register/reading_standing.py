"""Whether each reading of a drawing still holds: for the file as it is, the revision of the spec, and who read it."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from typing import Literal

from msgspec import Struct

from speclint.register.people import reviewer_called
from speclint.register.standing import Surroundings, bad_signature
from speclint.repository import DrawingReading, DrawingState, Register, Settings
from speclint.rules import Grade
from speclint.specs import Component, Stated

ReadingWord = Literal[
    "valid",
    "replaced",
    "unmatched",
    "duplicate",
    "changed",
    "other revision",
    "cannot be read",
    "not yet in force",
    "not accepted",
    "not signed",
]


class ReadingStanding(Struct, frozen=True):
    """One reading for one of its parts, and whether it holds; ``reasons`` say why not, or what to note of it."""

    reading: DrawingReading
    part: str
    state: ReadingWord
    reasons: tuple[str, ...] = ()

    @property
    def holds(self) -> bool:
        """Whether the drawing counts as read for the part."""
        return self.state == "valid"

    @property
    def in_order(self) -> bool:
        """Whether the entry needs no action: nor does one that a later one replaced."""
        return self.state in ("valid", "replaced")


def reading_standings(register: Register, surroundings: Surroundings) -> tuple[ReadingStanding, ...]:
    """The state of every reading of the register, in the order of the file; for each of its parts."""
    twice = {
        number for number, times in Counter(one.number for one in register.readings).items() if times > 1
    }
    return tuple(_standing(one, part, surroundings, twice) for one in register.readings for part in one.parts)


def _standing(
    reading: DrawingReading, part: str, surroundings: Surroundings, twice: set[str]
) -> ReadingStanding:
    for state, reason in _faults(reading, part, surroundings, twice):
        return ReadingStanding(reading, part, state, (reason,))
    return ReadingStanding(reading, part, "valid")


def _faults(
    reading: DrawingReading, part: str, surroundings: Surroundings, twice: set[str]
) -> Iterator[tuple[ReadingWord, str]]:
    """What is wrong with a reading, the first thing first."""
    if reading.number in twice:
        yield "duplicate", f"more than one entry has the number {reading.number}: none of them counts"
    design = surroundings.context.design
    component = design.specs.get(part)
    if not isinstance(component, Component):
        gone = "could not be read" if part in design.files else "is no component of the repository"
        yield "unmatched", f"{part} {gone}"
        return
    state = surroundings.context.drawing(component)
    if state is None:
        yield "unmatched", f"{part} names no file of its drawing"
        return
    if state.file != reading.file:
        yield "unmatched", f"{part} now names {state.file}"
    elif state.reading is not None and state.reading.number != reading.number:
        yield "replaced", f"{state.reading.number} takes its place"
    else:
        yield from _of_file(state)
    yield from not_accepted(reading, surroundings)


def _of_file(state: DrawingState) -> Iterator[tuple[ReadingWord, str]]:
    if state.word == "read in future":
        yield "not yet in force", state.says
    elif state.word in ("changed", "other revision", "cannot be read"):
        yield state.word, state.says


def not_accepted(reading: DrawingReading, surroundings: Surroundings) -> Iterator[tuple[ReadingWord, str]]:
    """Why a reading does not count by whoever made it, or by its signature."""
    if why := not_named(reading.read_by, surroundings.settings):
        yield "not accepted", why
    if reading.signature:
        yield from (("not signed", why) for why in bad_signature(reading, surroundings))
    elif Grade.NONCONFORMITY.word in surroundings.settings.concessions.signed:
        yield "not signed", "speclint.toml asks for a signature on a nonconformity, and it has none"


def not_named(name: str, settings: Settings) -> str:
    """Why a person may not read drawings for the register: where the settings name reviewers, only these may."""
    if settings.reviewers and reviewer_called(name, settings) is None:
        return f"{name} is not a reviewer in speclint.toml, and only a reviewer can enter a reading"
    return ""


def role_of(name: str, settings: Settings) -> str:
    """The role that the settings give a person; "" where they give none."""
    reviewer = reviewer_called(name, settings)
    return reviewer.role.value if reviewer is not None and isinstance(reviewer.role, Stated) else ""
