"""How hot the block is when a liner or a seat goes into it."""

from __future__ import annotations

from typing import TYPE_CHECKING

from speclint.quantities import Measure
from speclint.rules import Sheet
from speclint.specs import NotStated

if TYPE_CHECKING:
    from speclint.specs import CylinderBlock, CylinderLiner, ValveSeat


def block_when_entering(
    part: CylinderLiner | ValveSeat, block: CylinderBlock, sheet: Sheet
) -> Measure | NotStated:
    """Temperature of the block when a part goes in: that of its one heating, else what the part itself states."""
    if sheet.is_stated("heating of the block", block.heated_to):
        return block.heated_to
    return part.block_heated_to
