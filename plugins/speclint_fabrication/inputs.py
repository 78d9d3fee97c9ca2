"""What several rules take of a weldment: its block, its plates and their metal, the pressure on a side."""

from __future__ import annotations

from speclint import Sheet
from speclint.equations import Metres, Pascals
from speclint.handbook.materials import Material
from speclint.specs import LoadCase, NotStated, Plate, Stated, Weldment
from speclint_fabrication.formulae.walls import wasted_thickness


def plate_named(weldment: Weldment, name: Stated[str] | NotStated, sheet: Sheet) -> Plate:
    """The plate that a wall or a joint names."""
    return sheet.entry(weldment.plates, name, f"plates of {weldment.id}")


def metal_of(called: str, plate: Plate, sheet: Sheet) -> Material:
    """The material of a plate."""
    return sheet.material_named(f"plate of {called}", plate.material)


def wall_left(called: str, plate: Plate, sheet: Sheet) -> Metres:
    """Thickness less the corrosion allowance, where steam meets the plate."""
    t = sheet.take(f"t of {called}", plate.thickness)
    if not sheet.read(f"{called} meets steam", plate.meets_steam):
        return t
    c = sheet.take(f"c of {called}", plate.corrosion_allowance)
    return sheet.work(f"t_c of {called}", wasted_thickness, t=t, c=c)


def greatest_on(side: str, case: LoadCase, sheet: Sheet) -> Pascals:
    """Greatest pressure on a side of a wall."""
    if side == "cylinder" and sheet.is_stated("cylinder pressure", case.cylinder_pressure):
        return sheet.take("p_cyl", case.cylinder_pressure)
    if side in ("cylinder", "live steam"):
        if sheet.is_stated("safety valve pressure", case.safety_valve_pressure):
            return sheet.take("p_s", case.safety_valve_pressure)
        return sheet.take("p_live", case.live_pressure)
    if side == "exhaust steam":
        return sheet.take("p_e", case.exhaust_pressure)
    return 0.0


def least_in_cylinder(case: LoadCase, sheet: Sheet) -> Pascals:
    """Least pressure of a stroke: that of the exhaust, unless a vacuum is stated."""
    if sheet.is_stated("least cylinder pressure", case.least_cylinder_pressure):
        return sheet.take("p_least", case.least_cylinder_pressure)
    return sheet.take("p_e", case.exhaust_pressure)
