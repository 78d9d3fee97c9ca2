"""What the part that a joint holds says of the joint: the pressure behind it, and how thick its flange is."""

from __future__ import annotations

from speclint.facts.pipes import steam_carried
from speclint.quantities import Measure
from speclint.rules import Sheet, Worked, worked
from speclint.specs import (
    BoltedJoint,
    Component,
    CylinderCover,
    Gland,
    LensJoint,
    NotStated,
    PipeFlange,
    SteamPipe,
    StuffingBox,
)

#: Which pressure a joint holds whose pipe carries that steam.
_OF_STEAM = {"live steam": "live", "exhaust steam": "exhaust"}


def pressure_by_part_held(joint: BoltedJoint, sheet: Sheet) -> Worked | None:
    """Which pressure stands behind the part that a joint holds: "cylinder", "live" or "exhaust".

    None where the part does not say: one that neither closes a cylinder nor belongs to a pipe.
    """
    held = sheet.follow(joint.holds)
    if isinstance(held, CylinderCover | StuffingBox | Gland):
        return worked("cylinder", joint.holds)
    if isinstance(held, LensJoint | PipeFlange):
        held = sheet.follow(held.of)
    if isinstance(held, SteamPipe):
        carried = steam_carried(held, sheet)
        return Worked(_OF_STEAM[carried.value], carried.places)
    return None


def pressure_held(joint: BoltedJoint, sheet: Sheet) -> str:
    """Which pressure a joint holds: by the part that it holds, else as it is stated."""
    by_part = pressure_by_part_held(joint, sheet)
    return sheet.read("pressure", joint.pressure) if by_part is None else str(by_part.value)


def flange_held(joint: BoltedJoint, sheet: Sheet) -> Measure | NotStated | None:
    """The thickness of flange that the nuts of a joint clamp; None where the part held states none of its own."""
    return _flange(sheet.follow(joint.holds))


def flange_bolted_to(joint: BoltedJoint, sheet: Sheet) -> Measure | NotStated | None:
    """The thickness of flange under the far nuts, or the heads, of bolts; None where that part states none."""
    return _flange(sheet.follow(joint.bolted_to))


def _flange(part: Component) -> Measure | NotStated | None:
    if isinstance(part, CylinderCover | Gland):
        return part.flange_thickness
    return part.thickness if isinstance(part, PipeFlange) else None
