"""The blocks of one engine have one stroke, one length of connecting rod, one wheel and one gear."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Any

from speclint import Grade, Pair, Rule, Sheet, Worked, agreement, worked
from speclint.facts import cranks_of, engine_of
from speclint.specs import Crank, CylinderBlock, Engine


def _strokes(block: CylinderBlock, sheet: Sheet) -> Iterator[Pair]:
    """Stroke and connecting rod of the block against those of each crank that its cylinders turn.

    A crank that states none has that of the engine, or else of the first other block that states one.
    """
    engine = engine_of(block, sheet)
    for bore, crank in cranks_of(engine, block, sheet) if engine is not None else ():
        for key in ("stroke", "connecting_rod_length"):
            yield from _pair(key, bore, block, (crank, engine), sheet)


def _wheels(block: CylinderBlock, sheet: Sheet) -> Iterator[Pair]:
    """The wheels of the block, new and worn, against those of its engine, or of the first other block of it."""
    engine = engine_of(block, sheet)
    if engine is not None:
        for key in ("driving_wheel_diameter", "least_wheel_diameter"):
            yield from _pair(key, "", block, (engine,), sheet)


def _gears(block: CylinderBlock, sheet: Sheet) -> Iterator[Pair]:
    """The gear of the block against that of its engine; an engine that states none has its cranks on its axle."""
    engine = engine_of(block, sheet)
    if engine is None:
        return
    if sheet.is_stated(f"gear of {engine.id}", engine.gear_ratio):
        yield Pair(block.drive.gear_ratio, engine.gear_ratio)
    elif sheet.is_stated("gear of the block", block.drive.gear_ratio):
        ratio, within = sheet.take_nominal("i", block.drive.gear_ratio), sheet.limit("difference", "Δ")
        here = "a gear" if abs(ratio - 1) > within else "no gear"
        says = f"{engine.id}, which states no gear, so that the crank turns with the wheels"
        yield Pair(worked(here, block.drive.gear_ratio), Worked("no gear", (engine.where,), says))
    else:
        yield Pair(
            block.drive.gear_ratio, Worked("no gear", (engine.where,))
        )  # which says that it is not stated


def _pair(
    key: str, bore: str, block: CylinderBlock, first: Sequence[Crank | Engine | None], sheet: Sheet
) -> Iterator[Pair]:
    """A key of the block against the first of crank, engine and other blocks of the engine that states it."""
    places: list[Any] = [getattr(one, key) for one in first if one is not None]
    engine = first[-1]
    if isinstance(engine, Engine):
        places += [getattr(other.drive, key) for other in _others(engine, block, sheet)]
    name = ", ".join(part for part in (bore, key.replace("_", " ")) if part)
    for there in places:
        if sheet.is_stated(f"{name} there", there):
            yield Pair(getattr(block.drive, key), there, name=name)
            return


def _others(engine: Engine, block: CylinderBlock, sheet: Sheet) -> list[CylinderBlock]:
    named = (
        sheet.follow(crank.block)
        for name, crank in engine.cranks.items()
        if sheet.is_stated(f"block of crank {name}", crank.block)
    )
    return [other for other in named if other.id != block.id]


strokes_agree: Rule = agreement(
    "engine.strokes-agree",
    title="The stroke and the connecting rod in a block's spec are those of the cranks that its cylinders turn",
    on=CylinderBlock,
    pairs=_strokes,
    grade=Grade.HOLD,
    why="a piston that makes another stroke than its block was reckoned with meets the cover, with other forces",
    leaves_out="a block that no engine names",
)

one_wheel: Rule = agreement(
    "engine.one-wheel",
    title="The driving wheels in a block's spec, new and worn, are those of its engine",
    on=CylinderBlock,
    pairs=_wheels,
    grade=Grade.HOLD,
    why="speed, the strokes of a life and the water that a piston drives out go by this wheel",
    leaves_out="a block that no engine names",
)

one_gear: Rule = agreement(
    "engine.one-gear",
    title="The gear between crank and wheels in a block's spec is that of its engine",
    on=CylinderBlock,
    pairs=_gears,
    within="0.001",
    dimension="ratio",
    edition=2,
    grade=Grade.HOLD,
    why="a crank geared otherwise turns at another speed, and forces of inertia go with the square of it",
    leaves_out="a block that no engine names",
)

RULES = (one_gear, one_wheel, strokes_agree)
