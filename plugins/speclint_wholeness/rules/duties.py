"""Load cases of a block's duty, and tables without which a spec says nothing."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import Rule, Sheet, ToFill, filled_once
from speclint.specs import (
    CaseName,
    Component,
    CylinderBlock,
    CylinderLiner,
    Envelope,
    LiftingPlan,
)

_SAFETY: tuple[CaseName, ...] = ("starting", "running", "test", "water")
_OTHERS: tuple[CaseName, ...] = ("cold", "drifting", "warming", "cooling", "standing-hot")


def _safety_cases(block: CylinderBlock, sheet: Sheet) -> Iterator[ToFill]:
    """Starting, running, test and water of the duty that the block sees."""
    return _cases(block, _SAFETY, sheet)


def _other_cases(block: CylinderBlock, sheet: Sheet) -> Iterator[ToFill]:
    """Cold, drifting, warming, cooling and standing hot of the duty that the block sees."""
    return _cases(block, _OTHERS, sheet)


def _cases(block: CylinderBlock, names: tuple[CaseName, ...], sheet: Sheet) -> Iterator[ToFill]:
    stated, where = sheet.cases_of(block), sheet.cases_at(block)
    for name in names:
        yield ToFill(
            f"duty of {block.id}", f"load case {name}", (name,) if name in stated else (), where=where
        )


def _tables(part: CylinderLiner | Envelope | LiftingPlan, sheet: Sheet) -> Iterator[ToFill]:
    """The tables without which a liner, an envelope or a lifting plan says nothing, each filled by what it states."""
    if isinstance(part, CylinderLiner):
        yield _statement(part, ("lands",), sheet)
    elif isinstance(part, LiftingPlan):
        yield _statement(part, ("weights",), sheet)
        yield _statement(part, ("points",), sheet)
    else:
        yield _statement(part, ("points", "gaps"), sheet)


def _statement(part: Component, tables: tuple[str, ...], sheet: Sheet) -> ToFill:
    """A place for what stands in one of some tables: one entry fills it, and there may be any number."""
    stated = tuple(name for table in tables for name in sheet.names_under(part, table))
    return ToFill(part.id, f"statement of its {' or '.join(tables)}", stated, most=0, where=part.where)


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
    title="The duty of a block states the engine cold, drifting, warming, cooling and standing hot",
    on=CylinderBlock,
    places=_other_cases,
    row=570,
    gravity="part",
    why="valves stick and joints leak while an engine warms and cools, not while it runs; fits are put together cold",
    leaves_out="what the cases state",
    edition=2,
)

tables: Rule = filled_once(
    "part.tables-stated",
    edition=2,
    title="A liner states its sealing lands, an envelope its points or gaps, a lifting plan its weights and points",
    on=(CylinderLiner, Envelope, LiftingPlan),
    places=_tables,
    row=580,
    gravity="part",
    why="a plan without its tables looks finished and says nothing",
    leaves_out="how many there must be",
)

RULES = (other_cases, safety_cases, tables)
