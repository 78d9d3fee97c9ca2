"""Whether steam touches a plate of a weldment."""

from __future__ import annotations

from speclint import Sheet
from speclint.specs import Plate, Weldment
from speclint_fabrication.inputs.pressures import sides_of


def meets_steam(name: str, plate: Plate, weldment: Weldment, sheet: Sheet) -> bool:
    """As the plate states, and always where a flat wall of it has steam or a cylinder beside it."""
    if sheet.read(f"{name} meets steam", plate.meets_steam):
        return True
    return any(
        side != "atmosphere"
        for called, wall in weldment.walls.items()
        if sheet.read(f"plate of {called}", wall.plate) == name
        for side in sides_of(called, wall, sheet)
    )
