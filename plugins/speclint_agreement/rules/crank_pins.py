"""A crank pin that turns with an axle is that of the cylinder whose crank it is."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import Grade, Pair, Rule, Sheet, Worked, agreement, worked
from speclint.specs import DrivingAxle, Pin, Turning


def _pins(axle: DrivingAxle, sheet: Sheet) -> Iterator[Pair]:
    """The block in which the piston works that moves each pin, against the block of the crank at which it turns."""
    for name, piece in axle.turning.items():
        if not (
            sheet.is_stated(f"part of {name}", piece.of) and sheet.is_stated(f"crank of {name}", piece.crank)
        ):
            continue
        pin = sheet.follow(piece.of)
        if not isinstance(pin, Pin):
            continue
        works, turns = _block_of_pin(pin, sheet), _block_of_crank(axle, piece, sheet)
        if works is not None and turns is not None:
            yield Pair(works, turns, name=name)


def _block_of_crank(axle: DrivingAxle, piece: Turning, sheet: Sheet) -> Worked | None:
    if not sheet.is_stated(f"engine of {axle.id}", axle.engine):
        return None
    engine = sheet.follow(axle.engine)
    crank = sheet.entry(engine.cranks, piece.crank, f"cranks of {engine.id}")
    if not sheet.is_stated("block of the crank", crank.block):
        return None
    return worked(sheet.follow(crank.block).id, crank.block, piece.crank)


def _block_of_pin(pin: Pin, sheet: Sheet) -> Worked | None:
    """The block to which crosshead, rod, piston and liner lead from a pin; None where one of them names no other."""
    if not sheet.is_stated(f"crosshead of {pin.id}", pin.moved_by):
        return None
    crosshead = sheet.follow(pin.moved_by)
    if not sheet.is_stated(f"rod of {crosshead.id}", crosshead.on_rod):
        return None
    rod = sheet.follow(crosshead.on_rod)
    if not sheet.is_stated(f"piston of {rod.id}", rod.carries):
        return None
    piston = sheet.follow(rod.carries)
    if not sheet.is_stated(f"liner of {piston.id}", piston.runs_in):
        return None
    liner = sheet.follow(piston.runs_in)
    if not sheet.is_stated(f"block of {liner.id}", liner.housed_in):
        return None
    return worked(sheet.follow(liner.housed_in).id, pin.moved_by, liner.housed_in)


of_its_crank: Rule = agreement(
    "axle.pins-of-its-cranks",
    title="A crank pin that turns with an axle is moved by the piston of the block whose crank it turns at",
    on=DrivingAxle,
    pairs=_pins,
    within="",
    grade=Grade.NONCONFORMITY,
    why="the pin of an outside crank weighed for that of the crank axle balances the wrong mass at the wrong angle",
    leaves_out="pieces that name no pin or no crank, and a pin whose crosshead, rod, piston or liner names no other",
)

RULES = (of_its_crank,)
