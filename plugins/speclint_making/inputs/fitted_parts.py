"""What goes into a block or onto it, at which step, and whether the block is hot for it."""

from __future__ import annotations

from typing import Any

from msgspec import Struct

from speclint import Sheet
from speclint.facts import bore_of
from speclint.specs import BoltedJoint, CamBox, CylinderBlock, CylinderLiner, ValveSeat

#: What goes into a block or onto it, and names the step at which it does.
Fitted = CylinderLiner | ValveSeat | BoltedJoint | CamBox
_USUAL = {
    "bolted-joint": "set studs",
    "cam-box": "fit gear",
    "cylinder-liner": "press liners",
    "valve-seat": "press seats",
}


class FittedPart(Struct, frozen=True):
    """A liner or seat: whether its block is hot for it, its step, and both sizes of its fit as the specs have them."""

    part: CylinderLiner | ValveSeat
    hot: bool
    at_step: str
    outside: Any
    bore: Any


def goes_in_at(part: Fitted, sheet: Sheet) -> str:
    """The step of the block at which a part goes in: that which it names, else the usual one of its kind."""
    if sheet.is_stated(f"step of {part.id}", part.making.at_step):
        return sheet.read(f"step of {part.id}", part.making.at_step)
    return part.by_kind(_USUAL)


def fitted_parts(block: CylinderBlock, sheet: Sheet) -> tuple[FittedPart, ...]:
    """The liners and seats of a block."""
    found = []
    for liner in sheet.belonging_to(block, CylinderLiner):
        hot = "heated" in sheet.read(f"how {liner.id} is put in", liner.entered)
        bore = sheet.entry(block.bores, liner.in_bore, f"the bores of {block.id}")
        at = goes_in_at(liner, sheet)
        found.append(FittedPart(liner, hot, at, liner.outside_diameter, bore.diameter))
    for seat in sheet.belonging_to(block, ValveSeat):
        hot = "heated" in sheet.read(f"how {seat.id} is put in", seat.entering)
        at = goes_in_at(seat, sheet)
        found.append(FittedPart(seat, hot, at, seat.outside_diameter, bore_of(seat, sheet).diameter))
    return tuple(found)
