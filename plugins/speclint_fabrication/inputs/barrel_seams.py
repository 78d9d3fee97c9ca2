"""The seam of a round plate, of a barrel or another shell, and its stress range over a stroke."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import Sheet
from speclint.equations import Metres, Pascals
from speclint.facts import wall_beyond_relief
from speclint.handbook.steam import excess_pressure
from speclint.specs import Bore, CylinderBlock, LoadCase, WeldedJoint, Weldment
from speclint_fabrication.formulae.fatigue import range_round_barrel
from speclint_fabrication.inputs.openings import bores_of_plate, cuts_of, sides_of_cut
from speclint_fabrication.inputs.plates import plate_named, wall_left
from speclint_fabrication.inputs.pressures import greatest_on, least_in_cylinder


def range_in_barrel(
    name: str, joint: WeldedJoint, weldment: Weldment, block: CylinderBlock, case: LoadCase, sheet: Sheet
) -> Pascals | None:
    """Stress range round the widest bore whose barrel the plate of a weld is; None where it is that of none.

    Where a bore is relieved, the barrel is as much thinner, and the seam may lie there.
    """
    of_plate = sheet.read(f"plate of {name}", joint.plate)
    bores = bores_of_plate(of_plate, block, sheet)
    if not bores:
        return None
    widest = max(sheet.take(f"D of {bore}", block.bores[bore].diameter) for bore in bores)
    e = wall_left(name, plate_named(weldment, joint.plate, sheet), ["cylinder"], sheet)
    greatest, least = greatest_on("cylinder", case, block, sheet), least_in_cylinder(case, sheet)
    Δp = sheet.work(f"Δp of {name}", excess_pressure, p_1=greatest, p_2=least)
    rings = [(widest, e), *(ring for bore in bores for ring in _relieved(bore, block.bores[bore], e, sheet))]
    return max(sheet.work(f"Δσ_s of {name}", range_round_barrel, Δp=Δp, r=D / 2, e=left) for D, left in rings)


def _relieved(name: str, bore: Bore, e: Metres, sheet: Sheet) -> Iterator[tuple[Metres, Metres]]:
    """Diameter of each relieved length of a bore, and what is left there of its barrel [m]."""
    for called, length in bore.relieved.items():
        D, D_r = sheet.take(f"D of {name}", bore.diameter), sheet.take(f"D_r of {called}", length.diameter)
        yield D_r, sheet.work(f"e_r of {called}", wall_beyond_relief, w=e, D=D, D_r=D_r)


def range_in_shell(
    name: str, joint: WeldedJoint, weldment: Weldment, block: CylinderBlock, case: LoadCase, sheet: Sheet
) -> tuple[Pascals, bool] | None:
    """Stress range round a shell that no bore names as it is filled and let off, and whether every stroke may bring it.

    In it is what passes its openings, live steam where none says; a bore that names no plate may have it as its barrel.
    None where the plate serves as no shell.
    """
    of_plate = sheet.read(f"plate of {name}", joint.plate)
    plate = plate_named(weldment, joint.plate, sheet)
    if sheet.said(f"plate of {name} serves as", plate.serves_as) != "shell":
        return None
    cuts = [
        one
        for one in cuts_of(block, sheet)
        if sheet.said(f"plate at {one.name}", one.opening.plate) == of_plate
    ]
    sides = [side for cut in cuts for side in sides_of_cut(cut, [], sheet)] or ["live steam"]
    r, e = sheet.take(f"D of {of_plate}", plate.inside_diameter) / 2, wall_left(name, plate, sides, sheet)
    p = max(greatest_on(side, case, block, sheet) for side in sides)
    stroke = not all(sheet.is_stated(f"plate of {bore}", one.plate) for bore, one in block.bores.items())
    return sheet.work(f"Δσ_s of {name}", range_round_barrel, Δp=p, r=r, e=e), stroke
