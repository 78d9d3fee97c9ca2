"""Load cases of a block's duty, and tables without which a spec says nothing."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import Rule, Sheet, ToFill, filled_once
from speclint.specs import (
    CaseName,
    CylinderBlock,
    CylinderLiner,
    Envelope,
    LiftingPlan,
)
from speclint_wholeness.inputs import entries

_SAFETY: tuple[CaseName, ...] = ("starting", "running", "test", "water")
_OTHERS: tuple[CaseName, ...] = ("drifting", "warming", "cooling", "standing-hot")


def _safety_cases(block: CylinderBlock, sheet: Sheet) -> Iterator[ToFill]:
    """Starting, running, test and water of the duty that the block sees."""
    return _cases(block, _SAFETY, sheet)


def _other_cases(block: CylinderBlock, sheet: Sheet) -> Iterator[ToFill]:
    """Drifting, warming, cooling and standing hot of the duty that the block sees."""
    return _cases(block, _OTHERS, sheet)


def _cases(block: CylinderBlock, names: tuple[CaseName, ...], sheet: Sheet) -> Iterator[ToFill]:
    stated = sheet.cases_of(block)
    for name in names:
        yield ToFill(
            f"duty of {block.id}", f"load case {name}", (name,) if name in stated else (), where=block.where
        )


def _tables(part: CylinderLiner | Envelope | LiftingPlan, sheet: Sheet) -> Iterator[ToFill]:
    """The tables without which a liner, an envelope or a lifting plan says nothing."""
    if isinstance(part, CylinderLiner):
        yield from entries(part, "lands", sheet)
    elif isinstance(part, LiftingPlan):
        yield from entries(part, "weights", sheet)
        yield from entries(part, "points", sheet)
    elif not sheet.names_under(part, "points") and not sheet.names_under(part, "gaps"):
        yield ToFill(part.id, "statement of its points or gaps", where=part.where)


safety_cases: Rule = filled_once(
    "duty.cases-there",
    title="The duty of a block states starting, running, test and water",
    on=CylinderBlock,
    places=_safety_cases,
    row=560,
    gravity="hold",
    why="what holds the pressure is judged in these cases, and not at all where they are not stated",
    leaves_out="what the cases state",
)

other_cases: Rule = filled_once(
    "duty.other-cases",
    title="The duty of a block states drifting, warming, cooling and standing hot",
    on=CylinderBlock,
    places=_other_cases,
    row=570,
    gravity="part",
    why="valves stick and joints leak while an engine warms and cools, not while it runs",
    leaves_out="what the cases state",
)

tables: Rule = filled_once(
    "part.tables-stated",
    title="A liner states its sealing lands, an envelope its points or gaps, a lifting plan its weights and points",
    on=(CylinderLiner, Envelope, LiftingPlan),
    places=_tables,
    row=580,
    gravity="part",
    why="a plan without its tables looks finished and says nothing",
    leaves_out="how many there must be",
)

RULES = (other_cases, safety_cases, tables)
