"""A part of a vessel is designed for what the vessel is designed for."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import Grade, Pair, Rule, Sheet, agreement
from speclint.facts import vessel_of
from speclint.specs import (
    BoltedJoint,
    ChamberCover,
    Component,
    CylinderBlock,
    CylinderCover,
    Gland,
    LensJoint,
    PipeFlange,
    StuffingBox,
    Weldment,
)


def _designs(part: Component, sheet: Sheet) -> Iterator[Pair]:
    """Design pressure of the part against that of block or pipe; of a weldment its design temperature, too.

    The test pressure of a block's weldment and studs; of its covers and glands, and of all that belongs to a pipe, the
    rules of parts tested together tell.
    """
    vessel = vessel_of(part, sheet)
    if vessel is None:
        return
    if sheet.is_stated("design pressure of the vessel", vessel.design_pressure):
        yield Pair(part.design_pressure, vessel.design_pressure, "at least", name="design pressure")
    of_block = isinstance(vessel, CylinderBlock) and isinstance(part, BoltedJoint | Weldment)
    if of_block and sheet.is_stated("test pressure of the vessel", vessel.test_pressure):
        yield Pair(part.test_pressure, vessel.test_pressure, "at least", name="test pressure")
    hot = sheet.is_stated("design temperature of the vessel", vessel.design_temperature)
    if hot and isinstance(part, Weldment):
        yield Pair(part.design_temperature, vessel.design_temperature, "at least", name="design temperature")
        yield Pair(part.design_temperature, vessel.design_temperature, "at most", name="design temperature")


one_vessel: Rule = agreement(
    "release.one-vessel",
    title="No part of a vessel is designed for less pressure than the vessel, nor is a block's weldment tested "
    "at less, nor studs of what is on the block; a weldment has the design temperature of its block",
    on=(BoltedJoint, ChamberCover, CylinderCover, Gland, LensJoint, PipeFlange, StuffingBox, Weldment),
    pairs=_designs,
    within="",
    grade=Grade.HOLD,
    why="the vessel is as strong as the weakest part on it, and one body has one design temperature",
    edition=2,
    leaves_out="the temperature of covers, glands and studs, which may differ from the block's, each by its own metal; "
    "tests of other parts (cylinder.tested-together, pipe.tested-together)",
)

RULES = (one_vessel,)
