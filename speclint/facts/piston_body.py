"""What a piston weighs within its rim: its hub, and the walls between them."""

from __future__ import annotations

from speclint.equations import FIRST_PRINCIPLES, Kilograms, KilogramsPerCubicMetre, Metres, formula
from speclint.facts.taking import Take
from speclint.facts.weights import inside_of_wall, mass_of_ring
from speclint.handbook.fits import share_of_size
from speclint.handbook.members import tube_area
from speclint.rules import Sheet
from speclint.specs import Piston, PistonRod

#: Mean thickness of a wall that is thinned towards the rim over that at the hub, least: common practice.
_THINNED = 0.5
#: How many walls join the hub and the rim.
_WALLS = {"one wall": 1, "two walls": 2, "dished": 1}


@formula("l = 2 c", cites=[FIRST_PRINCIPLES])
def both_faces(c: Metres) -> Metres:
    """Length that both faces of a piston are cut back together.

    c: of one face, m. Returns m.

    >>> both_faces(c=0.022)
    0.044
    """
    return 2 * c


def inside_of_rim(piston: Piston, D: Metres, sheet: Sheet, take: Take) -> Metres | None:
    """Inside diameter of the rim of a piston ``D`` over it, m: as stated, and no less than its wall as cast leaves.

    None where neither is stated.
    """
    found = []
    if sheet.is_stated("inside of the rim", piston.crown.rim):
        found.append(take("D_r", piston.crown.rim))
    if sheet.is_stated("wall of the rim", piston.stock_thickness):
        found.append(sheet.work("d_r", inside_of_wall, D=D, t=take("t", piston.stock_thickness)))
    return max(found, default=None)


def with_walls(
    piston: Piston, m: Kilograms, rho: KilogramsPerCubicMetre, inside: Metres, sheet: Sheet, take: Take
) -> Kilograms:
    """The rim of a piston, ``m`` heavy and so wide ``inside``, with hub and walls at their thinnest, kg.

    A hub that two walls join is as long as the piston, that of one wall as long as this is thick; the hole in it is no
    wider than the rod that goes into it. Where no form is stated there is one wall at the least, and where no hub is
    the wall begins at that hole.
    """
    of, hole = piston.crown, max((take("d_0", rod.diameter) for rod in _rods(piston, sheet)), default=None)
    d = take("d_h", of.hub) if sheet.is_stated("hub", of.hub) else hole
    if d is None:
        return m
    form = sheet.said("form of the crown", of.form)
    t = take("t_c", of.thickness) if sheet.is_stated("thickness of the walls", of.thickness) else None
    length = take("L", piston.length) if form == "two walls" else t
    if hole is not None and length is not None and hole < d:
        A = sheet.work("A_h", tube_area, D=d, d=hole)
        m = sheet.work("m_hub", mass_of_ring, m_0=m, rho=rho, A=A, l=length)
    if t is not None and d < inside:
        A, mean = (
            sheet.work("A_w", tube_area, D=inside, d=d),
            sheet.work("t_m", share_of_size, k=_THINNED, t=t),
        )
        for number in range(_WALLS[form] if form else 1):
            m = sheet.work(f"m_wall {number + 1}", mass_of_ring, m_0=m, rho=rho, A=A, l=mean)
    return m


def _rods(piston: Piston, sheet: Sheet) -> list[PistonRod]:
    found = sheet.belonging_to(piston, PistonRod)
    return [rod for rod in found if sheet.is_stated("diameter of the rod", rod.diameter)]
