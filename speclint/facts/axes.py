"""How far the axis of a cylinder lies from its frame."""

from __future__ import annotations

from speclint.equations import FIRST_PRINCIPLES, Metres, formula
from speclint.facts.cylinders import bore_named
from speclint.facts.engine import cranks_of, engine_of
from speclint.facts.taking import Take
from speclint.rules import Sheet, Worked, worked
from speclint.specs import CylinderBlock


@formula("a = |y_a − y_f|", cites=[FIRST_PRINCIPLES])
def axis_beside_frame(y_a: Metres, y_f: Metres) -> Metres:
    """Distance of the axis of a cylinder from the face of the frame on which its block is located.

    a = |y_a − y_f|

    ``y_a`` distance of the axis from the middle of the engine [m]; ``y_f`` distance of the face from the middle of the
    engine [m]. Returns [m].

    Hand working: rods that run 950 mm from the middle, on a frame whose outer face is at 600 mm.

    >>> round(axis_beside_frame(y_a=0.950, y_f=0.600), 6)
    0.35
    """
    return abs(y_a - y_f)


def axis_by_crank(block: CylinderBlock, bore: str, sheet: Sheet, take: Take) -> Worked | None:
    """Distance of the axis of a bore from the frame, m, by the rods of its crank; None where they are not drawn."""
    engine = engine_of(block, sheet)
    for name, crank in cranks_of(engine, block, sheet) if engine is not None else ():
        if name != bore:
            continue
        places = crank.axis_from_centre, crank.frame_from_centre
        if all(sheet.is_stated(f"place of the axis or frame, {name}", one) for one in places):
            y_a, y_f = take("y_a", places[0]), take("y_f", places[1])
            return worked(sheet.work("a_w", axis_beside_frame, y_a=y_a, y_f=y_f), *places)
    return None


def axis_of_bore(block: CylinderBlock, bore: str, sheet: Sheet) -> Metres:
    """Distance of the axis of a bore from the frame, m: the greater of the stated one and of that of its crank."""
    return max(_distances(block, bore, sheet))


def nearest_axis(block: CylinderBlock, bore: str, sheet: Sheet) -> Metres:
    """Distance of the axis of a bore from the frame, m: the lesser of the stated one and of that of its crank."""
    return min(_distances(block, bore, sheet))


def _distances(block: CylinderBlock, bore: str, sheet: Sheet) -> tuple[Metres, ...]:
    """What block and crank say of the distance of an axis from the frame, m."""
    stated = sheet.take("a", bore_named(block, bore, sheet).axis_from_frame)
    by_crank = axis_by_crank(block, bore, sheet, sheet.take)
    return (stated,) if by_crank is None else (stated, by_crank.value)
