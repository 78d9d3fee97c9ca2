"""The steps in which a part is made, in one list with those of the part that it becomes."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any, NamedTuple

from speclint.errors import Location
from speclint.rules import Sheet, Worked
from speclint.specs import (
    BlockMaking,
    Casting,
    CastingMaking,
    Component,
    CylinderBlock,
    CylinderLiner,
    LinerMaking,
    SeatMaking,
    ValveSeat,
    Weldment,
    WeldmentMaking,
)

#: What a kind that states its making is.
Made = CylinderBlock | Weldment | Casting | CylinderLiner | ValveSeat
OwnMaking = BlockMaking | WeldmentMaking | CastingMaking | LinerMaking | SeatMaking
#: Steps of which each takes metal off a face to its finished size.
FINISHING = ("finish bore", "hone", "ream guides", "finish seats in line", "face pads", "finish outside")


class MakingStep(NamedTuple):
    """One step: its word without a number, the word as written, and its place."""

    word: str
    written: str
    where: Location


def own_steps(part: Made, sheet: Sheet) -> tuple[MakingStep, ...]:
    """The steps that a part states itself, in their order."""
    found = []
    listed: tuple[Any, ...] = part.making.steps
    for number, stated in enumerate(listed, start=1):
        written: str = sheet.read(f"step {number} of {part.id}", stated)
        found.append(MakingStep(written.rstrip(" 0123456789"), written, stated.where))
    return tuple(found)


def steps_with_blank(part: Made, sheet: Sheet) -> tuple[MakingStep, ...]:
    """The steps of a part, after those of the weldment or casting that becomes it."""
    blanks: tuple[Made, ...] = (
        *sheet.belonging_to(part, Weldment),
        *sheet.belonging_to(part, Casting),
    )
    return (*(step for blank in blanks for step in own_steps(blank, sheet)), *own_steps(part, sheet))


def steps_of(part: Made, sheet: Sheet) -> tuple[MakingStep, ...]:
    """The whole list in which a part is made: of a blank, with that of the block, liner or seat that it becomes."""
    if isinstance(part, Weldment):
        return steps_with_blank(sheet.follow(part.makes), sheet)
    if isinstance(part, Casting):
        becomes: Component = sheet.follow(part.becomes)
        if isinstance(becomes, CylinderBlock | CylinderLiner | ValveSeat):
            return steps_with_blank(becomes, sheet)
        return own_steps(part, sheet)
    return steps_with_blank(part, sheet)


def places_of(words: Sequence[str], steps: Sequence[MakingStep]) -> list[int]:
    """Where in a list the steps of some words stand, whatever their numbers."""
    return [place for place, step in enumerate(steps) if step.word in words]


def finished_after_relief(weldment: Weldment, sheet: Sheet) -> Worked | None:
    """Whether finish machining follows the last stress relief, by the list; None where the list says neither."""
    if not sheet.is_stated("the part that the weldment makes", weldment.makes):
        return None
    steps = steps_of(weldment, sheet)
    relief, finish = places_of(("stress relieve",), steps), places_of(FINISHING, steps)
    if not relief or not finish:
        return None
    return Worked(relief[-1] < finish[0], (steps[relief[-1]].where, steps[finish[0]].where))
