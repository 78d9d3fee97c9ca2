"""A crank pin that turns with an axle is that of the cylinder whose crank it is."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import Grade, Pair, Rule, Sheet, Worked, agreement, worked
from speclint.specs import Component, DrivingAxle, Pin, Turning

#: From a pin to its block: what each part on the way leads to, and the key by which it does.
_TO_THE_BLOCK = (
    ("crosshead", "moved_by"),
    ("rod", "on_rod"),
    ("piston", "carries"),
    ("liner", "runs_in"),
    ("block", "housed_in"),
)


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
    part: Component = pin
    for called, key in _TO_THE_BLOCK:
        link = getattr(part, key)
        if not sheet.is_stated(f"{called} of {part.id}", link):
            return None
        part = sheet.follow(link)
    return worked(part.id, pin.moved_by, link)


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
