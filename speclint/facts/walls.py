"""What the plates of a weldment say of the walls and the metal of the block that it makes."""

from __future__ import annotations

from typing import TYPE_CHECKING

from speclint.equations import FIRST_PRINCIPLES, Metres, formula
from speclint.facts.taking import Take
from speclint.rules import Sheet, Worked, worked
from speclint.specs import CylinderBlock, Weldment

if TYPE_CHECKING:
    from speclint.specs import Bore, Division, Pad, Plate, SeatBore


@formula("w = t − a", cites=[FIRST_PRINCIPLES])
def wall_left(t: Metres, a: Metres) -> Metres:
    """Wall of a plate when its allowance for corrosion is gone.

    w = t − a

    t: thickness by the drawing, m. a: allowance, m. Returns m.

    >>> round(wall_left(t=0.040, a=0.0015) * 1e3, 6)
    38.5
    """
    return t - a


@formula("w_r = w − (D_r − D)/2", cites=[FIRST_PRINCIPLES])
def wall_beyond_relief(w: Metres, D: Metres, D_r: Metres) -> Metres:
    """Wall where a bore is relieved.

    w_r = w − (D_r − D)/2

    ``w`` wall at the fit [m]; ``D`` bore at the fit [m]; ``D_r`` relieved diameter [m]. Returns [m], negative where no
    wall is left: the wall is thinner by half of what the bore is wider there.

    >>> round(wall_beyond_relief(w=0.040, D=0.578, D_r=0.620) * 1e3, 6)
    19.0
    """
    return w - (D_r - D) / 2


def plate_of(
    place: Bore | SeatBore | Division | Pad, block: CylinderBlock, sheet: Sheet
) -> tuple[Weldment, Plate] | None:
    """The plate of the weldment that makes a block from which a bore or a wall is cut; None where it names none."""
    if not sheet.is_stated("plate", place.plate):
        return None
    for weldment in sheet.belonging_to(block, Weldment):
        if (
            sheet.is_stated("what the weldment makes", weldment.makes)
            and sheet.follow(weldment.makes) is block
        ):
            return weldment, sheet.entry(weldment.plates, place.plate, f"plates of {weldment.id}")
    return None


def wall_by_plate(
    place: Bore | SeatBore,
    block: CylinderBlock,
    sheet: Sheet,
    take: Take,
) -> Worked | None:
    """The wall that the plate of a bore leaves when the allowance for corrosion is gone; None without a plate."""
    found = plate_of(place, block, sheet)
    if found is None:
        return None
    _, plate = found
    t = take("t_p", plate.thickness)
    allowed = sheet.is_stated("allowance for corrosion", plate.corrosion_allowance)
    a = take("a_c", plate.corrosion_allowance) if allowed else 0.0
    places = (plate.thickness.where, *((plate.corrosion_allowance.where,) if allowed else ()))
    return Worked(sheet.work("w_p", wall_left, t=t, a=a), places)


def wall_round(place: Bore | SeatBore, block: CylinderBlock, sheet: Sheet) -> float:
    """The wall round a bore, m: the less of the stated one and of what its plate leaves."""
    by_plate = wall_by_plate(place, block, sheet, sheet.take)
    walls: list[float] = [] if by_plate is None else [by_plate.value]
    if not walls or sheet.is_stated("wall", place.wall):
        walls.append(sheet.take("w", place.wall))
    return min(walls)


def thickest_wall(
    place: Bore | SeatBore,
    block: CylinderBlock,
    sheet: Sheet,
    take: Take,
) -> Worked | None:
    """How far the metal round a bore may reach: the greater of the stated wall and the plate that it is cut from.

    With its allowance for corrosion, since that is metal while the block is new. None where neither is stated.
    """
    found, walls = plate_of(place, block, sheet), list[Worked]()
    if sheet.is_stated("wall", place.wall):
        walls.append(worked(take("t", place.wall), place.wall))
    if found is not None:
        walls.append(worked(take("t_p", found[1].thickness), found[1].thickness))
    return max(walls, key=lambda one: one.value, default=None)
