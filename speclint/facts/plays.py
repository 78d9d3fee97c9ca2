"""How far the bearings between wheel and piston let it move along its cylinder when they are worn."""

from __future__ import annotations

from speclint.equations import FIRST_PRINCIPLES, Metres, formula
from speclint.facts.cylinders import crossheads_on, rods_in
from speclint.quantities import Measure
from speclint.rules import Sheet, Worked
from speclint.specs import CylinderBlock, NotStated, Pin


@formula("w = w_0 + w_1", cites=[FIRST_PRINCIPLES])
def plays_together(w_0: Metres, w_1: Metres) -> Metres:
    """Movement by the wear of some bearings and one more.

    w = w_0 + w_1

    ``w_0`` of the others, ``w_1`` of the one more, either way [m]. Returns [m].

    >>> round(plays_together(w_0=0.0005, w_1=0.0003) * 1e3, 6)
    0.8
    """
    return w_0 + w_1


def wears_along(block: CylinderBlock, bore: str, sheet: Sheet) -> list[tuple[str, Measure | NotStated]]:
    """What each bearing between wheel and piston of a bore may wear, either way, by its name: axleboxes and pins."""
    found: list[tuple[str, Measure | NotStated]] = [("axleboxes", block.drive.axlebox_wear)]
    for rod in rods_in(block, bore, sheet):
        for head in crossheads_on(rod, sheet):
            found += [(pin.id, pin.wear.along) for pin in sheet.belonging_to(head, Pin)]
    return found


def plays_along(block: CylinderBlock, bore: str, sheet: Sheet) -> Worked | None:
    """What axlebox, crank pin and crosshead pin of a bore may wear together, either way; None where none states it."""
    known = [one for _, one in wears_along(block, bore, sheet) if sheet.is_stated("wear", one)]
    if not known:
        return None
    total = 0.0
    for number, one in enumerate(known, start=1):
        total = sheet.work("w", plays_together, w_0=total, w_1=sheet.take(f"w_{number}", one))
    return Worked(total, tuple(one.where for one in known))


def wear_along(block: CylinderBlock, bore: str, sheet: Sheet) -> float:
    """How far wear may let a piston move along its cylinder, m: as stated, and no less than by the bearings together.

    A bearing that states no wear of its own has some all the same, so that the stated movement is always asked.
    """
    stated, plays = sheet.take("w", block.drive.wear), plays_along(block, bore, sheet)
    return stated if plays is None else max(stated, plays.value)
