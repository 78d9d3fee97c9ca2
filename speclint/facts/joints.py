"""What the parts of a joint say of it: the pressure behind it, its circle, and the metal that it is tapped into."""

from __future__ import annotations

from typing import TYPE_CHECKING

from speclint.facts.chamber_covers import pressure_under_cover
from speclint.facts.dividing_walls import weldment_of
from speclint.facts.pipes import steam_carried
from speclint.facts.taking import as_stated
from speclint.handbook.materials import Material
from speclint.quantities import Measure
from speclint.rules import Sheet, Worked, worked
from speclint.specs import (
    BoltedJoint,
    ChamberCover,
    Component,
    CylinderBlock,
    CylinderCover,
    Gland,
    LensJoint,
    NotStated,
    PipeFlange,
    SteamPipe,
    StuffingBox,
)

if TYPE_CHECKING:
    from speclint.specs import Plate

#: Which pressure a joint holds whose pipe carries that steam.
_OF_STEAM = {"live steam": "live", "exhaust steam": "exhaust"}


def pressure_by_part_held(joint: BoltedJoint, sheet: Sheet) -> Worked | None:
    """Which pressure stands behind the part that a joint holds: "cylinder", "live" or "exhaust".

    None where the part does not say: one that neither closes a cylinder nor belongs to a pipe.
    """
    if not sheet.is_stated("part held", joint.holds):
        return None
    held = sheet.follow(joint.holds)
    if isinstance(held, CylinderCover | StuffingBox | Gland):
        return worked("cylinder", joint.holds)
    if isinstance(held, ChamberCover):
        return pressure_under_cover(held, sheet)
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


def pressure_reach(joint: BoltedJoint, sheet: Sheet) -> Measure | NotStated:
    """The circle to which steam reaches in a joint without a gasket.

    Of a lens ring that on which ring and seat touch; of a ground face its outside, since steam may creep that far.
    """
    if sheet.read("seal", joint.seal) == "lens ring":
        held = sheet.follow(joint.holds)
        return held.contact_diameter if isinstance(held, LensJoint) else joint.pressure_circle
    return joint.ground_face.outside


def circle_of_studs(joint: BoltedJoint, sheet: Sheet) -> float:
    """Diameter of the circle of the studs, m: the greater of those that the joint and the cover it holds state."""
    held, stated = sheet.follow(joint.holds), sheet.take("D_b", joint.circle)
    if isinstance(held, CylinderCover | ChamberCover) and sheet.is_stated(
        f"circle of {held.id}", held.circle
    ):
        return max(stated, sheet.take(f"D_b of {held.id}", held.circle))
    return stated


def metal_tapped(joint: BoltedJoint, sheet: Sheet) -> Material:
    """The metal in which the tapped holes of a joint stand: of the plate that they name, else of the part."""
    part = sheet.follow(joint.screwed_into)
    plate = _plate_tapped(joint, part, sheet)
    if plate is not None and sheet.is_stated("material of the plate", plate.material):
        return sheet.material_named("the plate", plate.material)
    return sheet.material_of(part)


def _plate_tapped(joint: BoltedJoint, part: Component, sheet: Sheet) -> Plate | None:
    """The plate of the block's weldment in which the tapped holes of a joint stand; None where they name none."""
    if not (isinstance(part, CylinderBlock) and sheet.is_stated("plate", joint.tapped.plate)):
        return None
    weldment = weldment_of(part, sheet)
    if weldment is None:
        raise sheet.not_assessed(f"no weldment is stated that makes {part.id}", joint.tapped.plate.where)
    return sheet.entry(weldment.plates, joint.tapped.plate, f"plates of {weldment.id}")


def metal_under_hole(joint: BoltedJoint, sheet: Sheet) -> Measure | None:
    """The thickness of metal in which the tapped holes of a joint stand.

    Of the plate of the block's weldment that they name, of a cover inside its gasket, or of a flange; None where the
    part does not tell.
    """
    if not sheet.is_stated("part with the tapped holes", joint.screwed_into):
        return None
    part = sheet.follow(joint.screwed_into)
    plate = _plate_tapped(joint, part, sheet)
    if plate is not None:
        return next(as_stated(sheet, "thickness of the plate", plate.thickness), None)
    if isinstance(part, CylinderCover | ChamberCover | PipeFlange):
        return next(as_stated(sheet, f"thickness of {part.id}", part.thickness), None)
    return None
