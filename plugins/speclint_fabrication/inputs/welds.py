"""Which welds hold pressure."""

from __future__ import annotations

from speclint import Sheet
from speclint.specs import WeldedJoint, Weldment
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


def holds_pressure(name: str, joint: WeldedJoint, weldment: Weldment, sheet: Sheet) -> bool:
    """Whether a weld holds pressure: as it states, and always where its wall has steam or a cylinder beside it.

    Not assessed where it says that it does not, names no wall, and its plate meets steam.
    """
    if sheet.read(f"{name} holds pressure", joint.on_pressure):
        return True
    if not sheet.is_stated(f"wall of {name}", joint.wall):
        plate = plate_named(weldment, joint.plate, sheet)
        if sheet.read(f"plate of {name} meets steam", plate.meets_steam):
            said = (
                f"{name} is stated to hold no pressure, but its plate meets steam, and its wall is not stated"
            )
            raise sheet.not_assessed(said, joint.on_pressure.where)
        return False
    wall = sheet.entry(weldment.walls, joint.wall, f"walls of {weldment.id}")
    return any(side != "atmosphere" for side in sides_of(name, wall, sheet))
