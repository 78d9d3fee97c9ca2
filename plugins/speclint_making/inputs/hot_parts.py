"""The liners and seats that go into a block, at which step, and which of them while it is hot."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

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


@dataclass(frozen=True)
class HotPart:
    """A part that goes into the hot block: its step, and the two sizes of its fit as the specs have them."""

    part: CylinderLiner | ValveSeat
    at_step: str
    outside: Any
    bore: Any

    def heated_to(self, sheet: Sheet) -> float:
        """The temperature of the block that the part asks for, K."""
        return sheet.take(f"T_b of {self.part.id}", self.part.block_heated_to)


def goes_in_at(part: Fitted, sheet: Sheet) -> str:
    """The step of the block at which a part goes in: that which it names, else the usual one of its kind."""
    if sheet.is_stated(f"step of {part.id}", part.making.at_step):
        return sheet.read(f"step of {part.id}", part.making.at_step)
    return part.by_kind(_USUAL)


def hot_parts(block: CylinderBlock, sheet: Sheet) -> tuple[HotPart, ...]:
    """The liners and seats that say that the block is heated for them."""
    found = []
    for liner in sheet.belonging_to(block, CylinderLiner):
        if "heated" in sheet.read(f"how {liner.id} is put in", liner.entered):
            bore = sheet.entry(block.bores, liner.in_bore, f"the bores of {block.id}")
            found.append(HotPart(liner, goes_in_at(liner, sheet), liner.outside_diameter, bore.diameter))
    for seat in sheet.belonging_to(block, ValveSeat):
        if "heated" in sheet.read(f"how {seat.id} is put in", seat.entering):
            own = bore_of(seat, sheet)
            found.append(HotPart(seat, goes_in_at(seat, sheet), seat.outside_diameter, own.diameter))
    return tuple(found)
