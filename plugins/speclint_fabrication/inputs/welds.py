"""Which welds hold pressure."""

from __future__ import annotations

from speclint import Sheet
from speclint.specs import WeldedJoint, Weldment
from speclint_fabrication.inputs.pressures import sides_of


def holds_pressure(name: str, joint: WeldedJoint, weldment: Weldment, sheet: Sheet) -> bool:
    """Whether a weld holds pressure: as it states, and always where its wall has steam or a cylinder beside it."""
    if sheet.read(f"{name} holds pressure", joint.on_pressure):
        return True
    if not sheet.is_stated(f"wall of {name}", joint.wall):
        return False
    wall = sheet.entry(weldment.walls, joint.wall, f"walls of {weldment.id}")
    return any(side != "atmosphere" for side in sides_of(name, wall, sheet))
