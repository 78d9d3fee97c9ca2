"""Which welds hold pressure."""

from __future__ import annotations

from speclint import Sheet
from speclint.specs import FlatWall, WeldedJoint, Weldment
from speclint_fabrication.inputs.meeting_steam import meets_steam
from speclint_fabrication.inputs.plates import plate_named
from speclint_fabrication.inputs.pressures import sides_of


def walls_without_weld(weldment: Weldment, sheet: Sheet) -> list[str]:
    """The listed walls that have steam or a cylinder beside them and are the wall of no listed weld."""
    joined = {
        sheet.read(f"wall of {name}", joint.wall)
        for name, joint in weldment.joints.items()
        if sheet.is_stated(f"wall of {name}", joint.wall)
    }
    return [
        name
        for name, wall in weldment.walls.items()
        if name not in joined and any(side != "atmosphere" for side in sides_of(name, wall, sheet))
    ]


def may_be_of(name: str, wall: FlatWall, seam: str, joint: WeldedJoint, sheet: Sheet) -> bool:
    """Whether a weld is, or may be, one of a flat wall.

    One that names no wall and holds pressure may be of any; a butt weld only of the walls of its plate.
    """
    if sheet.is_stated(f"wall of {seam}", joint.wall):
        return sheet.read(f"wall of {seam}", joint.wall) == name
    if not sheet.read(f"{seam} holds pressure", joint.on_pressure):
        return False
    if sheet.read(f"shape of {seam}", joint.shape) != "butt":
        return True
    return sheet.read(f"plate of {seam}", joint.plate) == sheet.read(f"plate of {name}", wall.plate)


def is_along_own_plate(name: str, joint: WeldedJoint, weldment: Weldment, sheet: Sheet) -> bool:
    """Whether a weld bears what its plate does: it names no wall, or is a butt weld that names one of another plate."""
    if not sheet.is_stated(f"wall of {name}", joint.wall):
        return True
    wall = sheet.entry(weldment.walls, joint.wall, f"walls of {weldment.id}")
    butt = sheet.said(f"shape of {name}", joint.shape) in ("butt", None)
    return butt and sheet.read(f"plate of {name}", joint.plate) != sheet.read(
        f"plate of {joint.wall}", wall.plate
    )


def holds_pressure(name: str, joint: WeldedJoint, weldment: Weldment, sheet: Sheet) -> bool:
    """Whether a weld holds pressure: as it states, and always where its wall has steam or a cylinder beside it.

    Not assessed where it says that it does not, names no wall, and its plate meets steam.
    """
    if sheet.read(f"{name} holds pressure", joint.on_pressure):
        return True
    if not sheet.is_stated(f"wall of {name}", joint.wall):
        of_plate = sheet.read(f"plate of {name}", joint.plate)
        if meets_steam(of_plate, plate_named(weldment, joint.plate, sheet), weldment, sheet):
            said = (
                f"{name} is stated to hold no pressure, but its plate meets steam, and its wall is not stated"
            )
            raise sheet.not_assessed(said, joint.on_pressure.where)
        return False
    wall = sheet.entry(weldment.walls, joint.wall, f"walls of {weldment.id}")
    return any(side != "atmosphere" for side in sides_of(name, wall, sheet))
