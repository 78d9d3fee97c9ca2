"""The seam of a barrel: the weld of a plate that is bent round a bore, and its stress range over a stroke."""

from __future__ import annotations

from speclint import Sheet
from speclint.equations import Pascals
from speclint.handbook.steam import excess_pressure
from speclint.specs import CylinderBlock, LoadCase, WeldedJoint, Weldment
from speclint_fabrication.formulae.fatigue import range_round_barrel
from speclint_fabrication.inputs.openings import bores_of_plate
from speclint_fabrication.inputs.plates import plate_named, wall_left
from speclint_fabrication.inputs.pressures import greatest_on, least_in_cylinder


def range_in_barrel(
    name: str, joint: WeldedJoint, weldment: Weldment, block: CylinderBlock, case: LoadCase, sheet: Sheet
) -> Pascals | None:
    """Stress range round the widest bore whose barrel the plate of a weld is; None where it is that of none."""
    of_plate = sheet.read(f"plate of {name}", joint.plate)
    bores = bores_of_plate(of_plate, block, sheet)
    if not bores:
        return None
    r = max(sheet.take(f"D of {bore}", block.bores[bore].diameter) for bore in bores) / 2
    e = wall_left(name, plate_named(weldment, joint.plate, sheet), ["cylinder"], sheet)
    greatest, least = greatest_on("cylinder", case, block, sheet), least_in_cylinder(case, sheet)
    Δp = sheet.work(f"Δp of {name}", excess_pressure, p_1=greatest, p_2=least)
    return sheet.work(f"Δσ_s of {name}", range_round_barrel, Δp=Δp, r=r, e=e)
