"""The other envelopes of an engine, which runs on one line and stands on one set of springs."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import Must, Pair, Sheet, worked
from speclint.specs import CylinderBlock, Engine, Envelope

#: What an engine and its line have once, and what an envelope may state of it beside another.
_ONCE: tuple[tuple[str, Must], ...] = (
    ("least_curve", "at most"),
    ("spring_drop", "at least"),
    ("spring_rise", "at least"),
)


def on_one_line(envelope: Envelope, block: CylinderBlock, engine: Engine, sheet: Sheet) -> Iterator[Pair]:
    """Curve and springs of an envelope against those of the envelopes of the engine's other blocks.

    Each is held to the others, so that they end equal: that with the wider curve or less way of the springs is told.
    """
    for other in _others(envelope, block, engine, sheet):
        for key, must in _ONCE:
            here, there = getattr(envelope, key), getattr(other, key)
            name = f"{key.replace('_', ' ')} of {other.id}"
            if sheet.is_stated(f"{name}, here", here) and sheet.is_stated(name, there):
                own, far = sheet.take_nominal("a", here), sheet.take_nominal("b", there)
                yield Pair(worked(own, here), worked(far, there), must, name=name)


def _others(envelope: Envelope, block: CylinderBlock, engine: Engine, sheet: Sheet) -> Iterator[Envelope]:
    for name, crank in engine.cranks.items():
        if not sheet.is_stated(f"block of crank {name}", crank.block):
            continue
        beside = sheet.follow(crank.block)
        for one in sheet.belonging_to(beside, Envelope) if beside.id != block.id else ():
            stated = one.id != envelope.id and sheet.is_stated(f"part in {one.id}", one.around)
            if stated and sheet.follow(one.around).id == beside.id:
                yield one
