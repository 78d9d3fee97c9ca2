"""Which steam stands under the cover over a valve's chamber, and beside which end of a cylinder."""

from __future__ import annotations

from typing import TYPE_CHECKING

from speclint.facts.seats import bores_under
from speclint.rules import Sheet, Worked, worked
from speclint.specs import ChamberCover

if TYPE_CHECKING:
    from speclint.specs import SeatBore

#: Which pressure that steam has.
_PRESSURE = {"live steam": "live", "exhaust steam": "exhaust"}
#: The steam in the chamber of a valve that serves so.
_CHAMBER = {"inlet": "live", "exhaust": "exhaust"}


def bore_under_cover(cover: ChamberCover, sheet: Sheet) -> SeatBore | None:
    """The seat bore beyond which a cover's chamber lies: as it names it, else of the upper beat of its valve."""
    if sheet.is_stated("seat bore", cover.seat_bore):
        block = sheet.follow(cover.closes)
        return sheet.entry(block.seat_bores, cover.seat_bore, f"seat bores of {block.id}")
    if not sheet.is_stated("valve under the cover", cover.over):
        return None
    return next((bore for _, _, bore in bores_under(sheet.follow(cover.over), sheet)), None)


def pressure_under_cover(cover: ChamberCover, sheet: Sheet) -> Worked | None:
    """Which pressure stands under a chamber cover: "cylinder", "live" or "exhaust".

    By the space into which its valve lifts; None where its seat bore does not say into which.
    """
    bore = bore_under_cover(cover, sheet)
    if bore is None or not sheet.is_stated("space into which the valve lifts", bore.opens_into):
        return None
    if sheet.read("space into which the valve lifts", bore.opens_into) == "cylinder":
        return worked("cylinder", bore.opens_into)
    if sheet.is_stated("what the seat bore serves", bore.serves):
        return worked(_CHAMBER[sheet.read("what the seat bore serves", bore.serves)], bore.serves)
    return worked(_PRESSURE[sheet.read("chamber", bore.chamber)], bore.chamber)
