"""The block is heated once for all that is shrunk into it, and no hotter than its stress relief."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import Grade, Pair, Rule, Sheet, agreement
from speclint.specs import CylinderBlock, CylinderLiner, ValveSeat, Weldment


def _heatings(block: CylinderBlock, sheet: Sheet) -> Iterator[Pair]:
    """What each liner, seat and step states against the heating of the block, or against the first that is stated."""
    parts: tuple[CylinderLiner | ValveSeat, ...] = (
        *sheet.belonging_to(block, CylinderLiner),
        *sheet.belonging_to(block, ValveSeat),
    )
    named = [part for part in parts if sheet.is_stated(f"heating for {part.id}", part.block_heated_to)]
    once = sheet.is_stated("heating of the block", block.heated_to)
    if not (once or named):
        return
    heating = block.heated_to if once else named[0].block_heated_to
    for part in named if once else named[1:]:
        yield Pair(part.block_heated_to, heating, name=part.id)
    for step, detail in block.making.details.items():
        if step.startswith("heat block") and sheet.is_stated(f"temperature of {step}", detail.temperature):
            yield Pair(detail.temperature, heating, name=step)
    for weldment in sheet.belonging_to(block, Weldment):
        if sheet.is_stated("stress relief", weldment.treatment.temperature):
            yield Pair(heating, weldment.treatment.temperature, "at most", name="stress relief")


heated_once: Rule = agreement(
    "block.heated-once",
    title="All that is shrunk into a block goes in at one temperature of it, not above that of its stress relief",
    on=CylinderBlock,
    pairs=_heatings,
    within="5 K",
    dimension="temperature difference",
    edition=2,
    grade=Grade.NONCONFORMITY,
    why="a block heated a second time lets go what is already in it, and one heated like a furnace load moves again",
    leaves_out="how long block and parts take to come to one temperature; a stress relief made after the parts are in",
)


def _warmed(weldment: Weldment, sheet: Sheet) -> Iterator[Pair]:
    """The time of warming that a weldment states against that of its duty."""
    duty = sheet.duty_of(weldment)
    if duty is not None and sheet.is_stated("time of warming", duty.warming.time):
        yield Pair(weldment.warming_time, duty.warming.time)


warmed_in_time: Rule = agreement(
    "duty.one-warming",
    title="A weldment is warmed in the time that its duty states",
    on=Weldment,
    pairs=_warmed,
    within="1 min",
    dimension="time",
    grade=Grade.NONCONFORMITY,
    why="a block that is warmed faster than its walls were reckoned for cracks, and its drains do not pass the water",
    leaves_out="a duty that states no time of warming",
)

RULES = (heated_once, warmed_in_time)
