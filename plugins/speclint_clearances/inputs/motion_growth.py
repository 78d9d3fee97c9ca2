"""Over what length a cylinder is known to grow towards the motion behind it."""

from __future__ import annotations

from typing import TYPE_CHECKING

from speclint import Sheet
from speclint.facts import side_closed
from speclint.specs import CylinderBlock, CylinderCover
from speclint_clearances.inputs.motion_wear import moving_at

if TYPE_CHECKING:
    from speclint.equations import Metres
    from speclint.specs import MotionGap


def growth_known(name: str, gap: MotionGap, block: CylinderBlock, sheet: Sheet) -> Metres | None:
    """Thickness of the back cover, m, which stands behind the block and where that is held; None where none is drawn.

    It grows towards crosshead and connecting rod alone. Of several cylinders of a block the thinnest cover counts.
    """
    if moving_at(name, gap, sheet) not in ("crosshead", "connecting rod"):
        return None
    covers = [one for one in sheet.belonging_to(block, CylinderCover) if side_closed(one, sheet) == "back"]
    thick = [one for one in covers if sheet.is_stated(f"thickness of {one.id}", one.thickness)]
    return min((sheet.take(f"t {one.id}", one.thickness) for one in thick), default=None)
