"""The block into which a liner or a seat goes, and how hot it is then."""

from __future__ import annotations

from typing import TYPE_CHECKING

from speclint.quantities import Measure
from speclint.rules import Sheet
from speclint.specs import CylinderBlock, CylinderLiner, NotStated, ValveSeat

if TYPE_CHECKING:
    from speclint.specs import LinkTo


def block_when_entering(
    part: CylinderLiner | ValveSeat, block: CylinderBlock, sheet: Sheet
) -> Measure | NotStated:
    """Temperature of the block when a part goes in: that of its one heating, else what the part itself states."""
    if sheet.is_stated("heating of the block", block.heated_to):
        return block.heated_to
    return part.block_heated_to


def heat_asked_of_block(
    part: CylinderLiner | ValveSeat, block: CylinderBlock, sheet: Sheet
) -> Measure | NotStated:
    """Temperature of the block that a part asks for: its own, else that of the block's one heating."""
    own = part.block_heated_to
    return own if sheet.is_stated(f"heating for {part.id}", own) else block.heated_to


def block_of_ring(part: CylinderLiner | ValveSeat) -> LinkTo[CylinderBlock]:
    """The link of a liner or a seat to the block into which it goes."""
    return part.housed_in if isinstance(part, CylinderLiner) else part.pressed_into
