"""How hot the block and how cold the ring was when a part went in, against what its drawing asks."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import COMMON_PRACTICE, Grade, Judgement, Limit, Sheet, rule
from speclint.facts import block_of_ring, heat_asked_of_block
from speclint.handbook.heat import tied_temperature
from speclint.specs import (
    Component,
    CylinderBlock,
    CylinderLiner,
    EntryRecord,
    MadePart,
    Temperature,
    ValveSeat,
)


@rule(
    "made.fitted-as-asked",
    title="A liner or seat on record went into a block at most 10 K outside the temperatures that its drawing asks, "
    "and no ring was more than 10 K warmer than is asked",
    on=MadePart,
    grade=Grade.NONCONFORMITY,
    cites=[COMMON_PRACTICE],
    why="a block too cool takes the ring half way and holds it there; one too hot lets go what is already in it and "
    "moves, and its fit is not the one that was worked",
    leaves_out="the force of pressing, a ring colder than was asked, how even the block was; a drawing that asks "
    "for no temperature",
    against=(),
    limits=[
        Limit(
            "apart",
            "10 K",
            "temperature difference",
            COMMON_PRACTICE,
            "what a temperature when a part went in may differ from that asked for",
        )
    ],
)
def fitted_as_asked(made: MadePart, sheet: Sheet) -> Judgement:
    """Each entry on record: the hot part to both sides of what is asked, the cold one no warmer."""
    drawn = sheet.follow(made.of)
    hot = _block_asked(drawn, sheet)
    cold = drawn.chilled_to if isinstance(drawn, ValveSeat) else None
    judged = [one for name, entry in made.entries.items() for one in _as_asked(name, entry, hot, cold, sheet)]
    if not judged:
        raise sheet.not_applicable("no temperature on record stands beside one that is asked for")
    return sheet.worst(*judged)


def _block_asked(drawn: Component, sheet: Sheet) -> Temperature | None:
    """What is asked of the heated block: by the part that goes in, else by the block."""
    if isinstance(drawn, CylinderBlock):
        return drawn.heated_to
    if not isinstance(drawn, CylinderLiner | ValveSeat):
        return None
    how: str | None
    if isinstance(drawn, CylinderLiner):
        how = sheet.said("how it goes in", drawn.entered)
    else:
        how = sheet.said("how it goes in", drawn.entering)
    block = block_of_ring(drawn)
    stays_cold = how is not None and "heated" not in how
    if stays_cold or not sheet.is_stated("block", block):
        return drawn.block_heated_to
    return heat_asked_of_block(drawn, sheet.follow(block), sheet)


def _as_asked(
    name: str,
    entry: EntryRecord,
    hot: Temperature | None,
    cold: Temperature | None,
    sheet: Sheet,
) -> Iterator[Judgement]:
    apart = sheet.limit("apart", "ΔT")
    if hot is not None and _both(f"{name}, hot", entry.temperature, hot, sheet):
        low, high = sheet.take_limits("T_a", hot, "temperature asked for")
        least, greatest = sheet.take_limits(f"T {name}", entry.temperature, f"temperature of {name}")
        coolest = sheet.work("T_l", tied_temperature, T_b=low, ΔT=-apart)
        hottest = sheet.work("T_g", tied_temperature, T_b=high, ΔT=apart)
        yield sheet.at_least(least, coolest).else_says(f"{name}: block at {{found}}, {{limit}} asked for")
        yield sheet.at_most(greatest, hottest).else_says(f"{name}: block at {{found}}, {{limit}} at most")
    if cold is not None and _both(f"{name}, cold", entry.cold_temperature, cold, sheet):
        _, chilled = sheet.take_limits("T_c", cold, "chilling asked for")
        _, warmest = sheet.take_limits(
            f"T_c {name}", entry.cold_temperature, f"temperature of the chilled ring of {name}"
        )
        most = sheet.work("T_cg", tied_temperature, T_b=chilled, ΔT=apart)
        yield sheet.at_most(warmest, most).else_says(f"{name}: ring at {{found}}, {{limit}} at most")


def _both(called: str, record: Temperature, asked: Temperature, sheet: Sheet) -> bool:
    """Whether a temperature stands on record and is asked for."""
    return sheet.is_stated(called, record) and sheet.is_stated(f"{called}, asked for", asked)


RULES = (fitted_as_asked,)
