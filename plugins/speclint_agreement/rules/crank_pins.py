"""A crank pin that turns with an axle is that of the cylinder whose crank it is, as far out, and in the boss there."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import Grade, Pair, Rule, Sheet, Worked, agreement, worked
from speclint.facts import block_of
from speclint.handbook.cams import crank_radius
from speclint.specs import Crank, DrivingAxle, Engine, Pin, Turning
from speclint_agreement.inputs.blocks import in_block


def _pins(axle: DrivingAxle, sheet: Sheet) -> Iterator[Pair]:
    """Each pin against the crank at which it turns: its block, the axle that this drives, and half of its stroke.

    A crank pin, and not one of a crosshead; its seat against the boss that the axle states for it.
    """
    for name, piece in axle.turning.items():
        if not sheet.is_stated(f"part of {name}", piece.of):
            continue
        pin = sheet.follow(piece.of)
        if isinstance(pin, Pin):
            yield from _of_crank(name, piece, pin, sheet)
            yield from _in_boss(name, piece, pin, sheet)
        if (
            isinstance(pin, Pin)
            and sheet.is_stated(f"crank of {name}", piece.crank)
            and sheet.is_stated(f"engine of {axle.id}", axle.engine)
        ):
            engine = sheet.follow(axle.engine)
            crank = sheet.entry(engine.cranks, piece.crank, f"cranks of {engine.id}")
            yield from _at_crank(name, piece, pin, crank, sheet)
            yield _driven(name, piece, axle, sheet)
            if sheet.is_stated(f"radius of {name}", piece.radius):
                yield from _as_far_out(name, piece, crank, engine, sheet)


def _of_crank(name: str, piece: Turning, pin: Pin, sheet: Sheet) -> Iterator[Pair]:
    """Its place against the only one that turns with an axle."""
    if sheet.is_stated(f"place of {pin.id}", pin.place):
        turns = Worked("crank pin", (piece.of.where,), f"what turns with {name}")
        yield Pair(pin.place, turns, name=f"{name}, place")


def _in_boss(name: str, piece: Turning, pin: Pin, sheet: Sheet) -> Iterator[Pair]:
    """The seat no longer and in no larger a boss than the axle has, and of its metal; sizes as they are aimed at."""
    sizes = {"length of the seat": (pin.seat.length, piece.boss_width), "boss": (pin.seat.boss, piece.boss)}
    for called, (own, drawn) in sizes.items():
        if sheet.is_stated(f"{called}, {name}", own) and sheet.is_stated(f"{called} at {name}", drawn):
            aimed = worked(sheet.take_nominal(f"x {called} {name}", own), own)
            there = worked(sheet.take_nominal(f"y {called} {name}", drawn), drawn)
            yield Pair(aimed, there, "at most", name=f"{name}, {called}")
    if sheet.is_stated(f"metal of the boss, {name}", piece.boss_material):
        yield Pair(pin.seat.boss_material, piece.boss_material, name=f"{name}, metal of the boss")


def _at_crank(name: str, piece: Turning, pin: Pin, crank: Crank, sheet: Sheet) -> Iterator[Pair]:
    """The block of the crank against that in which the piston works that moves the pin."""
    block = block_of(pin, sheet)
    if block is not None and sheet.is_stated("block of the crank", crank.block):
        here = worked(sheet.follow(crank.block).id, crank.block, piece.crank)
        yield Pair(here, in_block(pin.moved_by, block), name=name)


def _driven(name: str, piece: Turning, axle: DrivingAxle, sheet: Sheet) -> Pair:
    """The crank of a pin that a connecting rod turns, against those whose rods turn the axle."""
    crank = sheet.read(f"crank of {name}", piece.crank)
    turn = {sheet.read("driven by", one): one.where for one in axle.driven_by}
    if not turn:
        drives = Worked("", (axle.where,), f"the axle {axle.id}, which no connecting rod drives")
    else:
        drives = Worked(crank if crank in turn else ", ".join(turn), tuple(turn.values()))
    return Pair(worked(crank, piece.crank), drives, name=f"{name}, driven by")


def _as_far_out(name: str, piece: Turning, crank: Crank, engine: Engine, sheet: Sheet) -> Iterator[Pair]:
    """The radius of a pin against half of the stroke of its crank, or of its engine."""
    stroke = crank.stroke if sheet.is_stated(f"own stroke of {name}", crank.stroke) else engine.stroke
    if sheet.is_stated("stroke", stroke):
        S = sheet.take_nominal(f"S of {name}", stroke)
        half = sheet.work(f"r of {name}", crank_radius, S=S)
        yield Pair(piece.radius, worked(half, stroke), name=f"{name}, radius")


of_its_crank: Rule = agreement(
    "axle.pins-of-its-cranks",
    title="A pin that turns with an axle at a crank is a crank pin, moved by the piston of that crank's block, on the "
    "axle that the crank drives, half of its stroke out of the middle, its seat in the boss there",
    on=DrivingAxle,
    pairs=_pins,
    within="0.1 mm",
    grade=Grade.NONCONFORMITY,
    edition=4,
    why="the pin of an outside crank weighed for that of the crank axle balances the wrong mass at the wrong angle",
    leaves_out="pieces that name no pin or no crank, and a pin that no links lead from to a block; a boss that the "
    "axle does not state, for which pin.seat-has-room asks",
)

RULES = (of_its_crank,)
