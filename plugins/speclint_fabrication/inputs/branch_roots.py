"""The root of a branch: the weld that joins it, and the stress range of its shell or wall over strokes or starts."""

from __future__ import annotations

from speclint import Sheet
from speclint.equations import Pascals
from speclint.handbook.steam import excess_pressure
from speclint.specs import CylinderBlock, LoadCase, WeldedJoint, Weldment
from speclint_fabrication.formulae.openings import range_at_root
from speclint_fabrication.inputs.openings import (
    Cut,
    bores_of_plate,
    cuts_of,
    plate_of,
    shell_inside,
    sides_of_cut,
)
from speclint_fabrication.inputs.plates import wall_left
from speclint_fabrication.inputs.pressures import greatest_on, least_in_cylinder

_WELDED = ("set in", "set on")


def branches_of(block: CylinderBlock, sheet: Sheet) -> dict[str, Cut]:
    """The openings of a welded block into which a branch is welded, by name."""
    return {
        cut.name: cut
        for cut in cuts_of(block, sheet)
        if (sheet.said(f"{cut.name} is", cut.opening.set) or "") in _WELDED
    }


def branch_joined(name: str, joint: WeldedJoint, cuts: dict[str, Cut], sheet: Sheet) -> Cut | None:
    """The opening whose branch a weld joins; None for any other weld."""
    if not sheet.is_stated(f"opening of {name}", joint.opening):
        return None
    return sheet.entry(cuts, joint.opening, "openings with a branch")


def branches_without_weld(weldment: Weldment, cuts: dict[str, Cut], sheet: Sheet) -> list[str]:
    """The branches that no listed weld joins."""
    joined = {
        sheet.read(f"opening of {name}", joint.opening)
        for name, joint in weldment.joints.items()
        if sheet.is_stated(f"opening of {name}", joint.opening)
    }
    return [name for name in cuts if name not in joined]


def range_beside(cut: Cut, k: float, case: LoadCase, sheet: Sheet) -> tuple[Pascals, bool]:
    """Stress range at the root of a branch in a round shell, and whether every stroke brings it; else every start."""
    plate = plate_of(cut, sheet)
    of_plate = sheet.read(f"plate of {cut.name}", cut.opening.plate)
    bores = bores_of_plate(of_plate, cut.block, sheet)
    sides = sides_of_cut(cut, bores, sheet)
    r, e = shell_inside(of_plate, plate, bores, cut, sheet), wall_left(of_plate, plate, sides, sheet)
    stroke = "cylinder" in sides
    p = max(greatest_on(side, case, cut.block, sheet) for side in sides)
    if stroke:
        p = sheet.work(f"Δp of {cut.name}", excess_pressure, p_1=p, p_2=least_in_cylinder(case, sheet))
    return sheet.work(f"Δσ_r of {cut.name}", range_at_root, k=k, Δp=p, r=r, e=e), stroke
