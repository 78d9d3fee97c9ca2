"""What several rules take of a weldment's plates: their metal, and their thickness as rolled and as it wastes."""

from __future__ import annotations

from collections.abc import Sequence

from speclint import Sheet
from speclint.equations import Metres
from speclint.handbook.materials import Material
from speclint.handbook.plates import wasted_thickness
from speclint.specs import NotStated, Plate, Stated, Weldment


def plate_named(weldment: Weldment, name: Stated[str] | NotStated, sheet: Sheet) -> Plate:
    """The plate that a wall or a joint names."""
    return sheet.entry(weldment.plates, name, f"plates of {weldment.id}")


def metal_of(called: str, plate: Plate, sheet: Sheet) -> Material:
    """The material of a plate."""
    return sheet.material_named(f"plate of {called}", plate.material)


def rolled_thickness(called: str, plate: Plate, sheet: Sheet) -> Metres:
    """Thickness as rolled, by which the standard states strength; machining does not make a plate stronger.

    Not assessed where it is less than the drawing's, which no machining makes of it.
    """
    rolled = sheet.take(f"t_r of {called}", plate.rolled_thickness)
    drawn = sheet.take_nominal(f"t_n of {called}", plate.thickness)
    if rolled < drawn:
        raise sheet.not_assessed(
            f"the plate of {called} is rolled thinner than its drawing", plate.rolled_thickness.where
        )
    return rolled


def wall_left(called: str, plate: Plate, sides: Sequence[str], sheet: Sheet) -> Metres:
    """Thickness less the corrosion allowance, where steam or a cylinder is on a side of the wall.

    Not assessed where both sides are the open air, though the plate meets steam.
    """
    t = sheet.take(f"t of {called}", plate.thickness)
    meets = sheet.read(f"{called} meets steam", plate.meets_steam)
    if all(side == "atmosphere" for side in sides):
        if meets:
            said = f"{called} has the open air on both sides, but its plate meets steam"
            raise sheet.not_assessed(said, plate.where)
        return t
    c = sheet.take(f"c of {called}", plate.corrosion_allowance)
    return sheet.work(f"t_c of {called}", wasted_thickness, t=t, c=c)
