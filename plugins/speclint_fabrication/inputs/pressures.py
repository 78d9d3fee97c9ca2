"""The greatest and the least pressure on a side of a wall in a load case, and what they do across it and in it."""

from __future__ import annotations

from speclint import Sheet
from speclint.equations import Metres, NewtonsPerMetre, Pascals
from speclint.facts import fluids_beside, greatest_exhaust_pressure, greatest_live_pressure, with_water
from speclint.specs import CylinderBlock, FlatWall, LoadCase
from speclint_fabrication.formulae.walls import greatest_difference, membrane_force


def across(name: str, wall: FlatWall, case: LoadCase, block: CylinderBlock, sheet: Sheet) -> Pascals:
    """Greatest pressure across a wall: the most on either side against the least on the other."""
    one, other = sides_of(name, wall, sheet)
    return sheet.work(
        f"Δp of {name}",
        greatest_difference,
        p_1=greatest_on(one, case, block, sheet),
        q_1=least_on(one, case, sheet),
        p_2=greatest_on(other, case, block, sheet),
        q_2=least_on(other, case, sheet),
    )


def pull_in(name: str, wall: FlatWall, case: LoadCase, block: CylinderBlock, sheet: Sheet) -> NewtonsPerMetre:
    """Greatest pull in a wall, per unit of width: each space beside it pushes the walls that stand on this one."""
    one, other = sides_of(name, wall, sheet)
    h_1, h_2 = depths_beside(name, wall, sheet)
    p_1, p_2 = greatest_on(one, case, block, sheet), greatest_on(other, case, block, sheet)
    return sheet.work(f"N of {name}", membrane_force, p_1=p_1, h_1=h_1, p_2=p_2, h_2=h_2)


def sides_of(name: str, wall: FlatWall, sheet: Sheet) -> tuple[str, str]:
    """The fluids on both sides of a wall: of the passages there, else as stated."""
    return fluids_beside(name, wall, sheet)


def depths_beside(name: str, wall: FlatWall, sheet: Sheet) -> tuple[Metres, Metres]:
    """Depth of the space on either side of a wall, square to it; nothing where that is the open air."""
    one, other = sides_of(name, wall, sheet)
    return (
        0.0 if one == "atmosphere" else sheet.take(f"h_1 of {name}", wall.one_depth),
        0.0 if other == "atmosphere" else sheet.take(f"h_2 of {name}", wall.other_depth),
    )


def greatest_on(side: str, case: LoadCase, block: CylinderBlock, sheet: Sheet) -> Pascals:
    """Greatest pressure on a side of a wall.

    On test not less than the test pressure of the block; with water in a cylinder not less than that at which the
    relief valves of the block blow off all of it.
    """
    p = _greatest_in_work(side, case, block, sheet)
    if side == "cylinder":
        p = with_water(p, block.ends.values(), case, sheet)
    tested = case.name == "test" and side in ("cylinder", "live steam")
    if tested and sheet.is_stated("test pressure", block.test_pressure):
        return max(p, sheet.take("p_t", block.test_pressure))
    return p


def _greatest_in_work(side: str, case: LoadCase, block: CylinderBlock, sheet: Sheet) -> Pascals:
    if side == "cylinder" and (_drifts(case) or sheet.is_stated("cylinder pressure", case.cylinder_pressure)):
        return sheet.take("p_cyl", case.cylinder_pressure)
    if side in ("cylinder", "live steam"):
        return sheet.take("p_s", greatest_live_pressure(case, sheet))
    if side == "exhaust steam":
        return greatest_exhaust_pressure(block, case, sheet)
    return 0.0


def least_on(side: str, case: LoadCase, sheet: Sheet) -> Pascals:
    """Least pressure on a side of a wall over the load case and the stroke.

    On test, and in a chest while water is in the cylinder, that of the atmosphere: one space is filled and the next
    may stand empty.
    """
    if side == "cylinder":
        return least_in_cylinder(case, sheet)
    if side == "live steam" and case.name not in ("test", "water"):
        return sheet.take("p_live", case.live_pressure)
    if side == "exhaust steam" and case.name != "test":
        return sheet.take("p_e", case.exhaust_pressure)
    return 0.0


def least_in_cylinder(case: LoadCase, sheet: Sheet) -> Pascals:
    """Least pressure of a stroke: that of the exhaust, unless another is stated; drifting, one must be.

    On test it is that of the atmosphere."""
    if _drifts(case) or sheet.is_stated("least cylinder pressure", case.least_cylinder_pressure):
        return sheet.take("p_least", case.least_cylinder_pressure)
    return 0.0 if case.name == "test" else sheet.take("p_e", case.exhaust_pressure)


def _drifts(case: LoadCase) -> bool:
    """Whether the engine drifts: it compresses what is in its cylinders, of which no pressure of steam tells."""
    return case.name == "drifting"
