"""How high the axis of a cylinder lies above the rail."""

from __future__ import annotations

import math

from speclint.equations import FIRST_PRINCIPLES, Metres, Radians, formula
from speclint.facts.engine import connecting_rod_of, crank_gear, cranks_of, engine_of, new_wheel
from speclint.facts.taking import Take
from speclint.rules import Sheet, Worked, worked
from speclint.specs import CylinderBlock


@formula("X = l + L", cites=[FIRST_PRINCIPLES])
def rods_in_line(l: Metres, L: Metres) -> Metres:  # noqa: E741
    """Distance of the middle of a piston at half its stroke from the axle that it drives.

    X = l + L

    ``l`` length of the connecting rod, ``L`` from the crosshead's centre to the piston's middle [m]. Returns [m].

    >>> round(rods_in_line(l=1.9, L=1.45), 6)
    3.35
    """
    return l + L


@formula("h = D/2 + X sin β", cites=[FIRST_PRINCIPLES])
def height_of_axis(D: Metres, X: Metres, β: Radians) -> Metres:
    """Height of the axis of a cylinder above the rail, at the middle between its covers.

    h = D/2 + X sin β

    D: diameter of the driving wheels with new tyres, m. X: from the axle to the middle of the cylinder, along its axis,
    m. β: by which the axis rises towards the front, rad. Returns m.

    Hand working: 0.875 + 3.35 × 0.05 = 1.0425.

    >>> round(height_of_axis(D=1.75, X=3.35, β=math.asin(0.05)), 6)
    1.0425
    """
    return D / 2 + X * math.sin(β)


def axis_height(block: CylinderBlock, sheet: Sheet, take: Take) -> Worked | None:
    """The height of the axis of a block's only cylinder above the rail: of its axle, and what it rises if inclined.

    None where no engine states its wheels, the crank is geared to them, or an inclined cylinder states no rods.
    """
    engine, wheel = engine_of(block, sheet), new_wheel(block, sheet)
    if engine is None or len(block.bores) != 1 or not sheet.is_stated("wheel", wheel):
        return None
    if sheet.is_stated("gear", crank_gear(block, sheet)):
        return None
    D = take("D_w", wheel)
    for name, crank in cranks_of(engine, block, sheet):
        if sheet.is_stated(f"inclination of {name}", crank.inclined):
            rods = connecting_rod_of(block, sheet), block.drive.rod_length
            if not all(sheet.is_stated("rod", one) for one in rods):
                return None
            l, L = (take(symbol, one) for symbol, one in zip("lL", rods, strict=True))  # noqa: E741
            X, β = sheet.work("X", rods_in_line, l=l, L=L), take("β", crank.inclined)
            return worked(sheet.work("h_a", height_of_axis, D=D, X=X, β=β), wheel, crank.inclined, *rods)
    return worked(sheet.work("h_a", height_of_axis, D=D, X=0.0, β=0.0), wheel)
