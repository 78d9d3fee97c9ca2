"""What wear of its bearings is known to let a moving part come nearer to its cylinder."""

from __future__ import annotations

from typing import TYPE_CHECKING

from speclint import Sheet
from speclint.facts import plays_along, wear_along
from speclint.specs import Crosshead, CylinderBlock

if TYPE_CHECKING:
    from speclint.equations import Metres
    from speclint.specs import MotionGap


def wear_known(name: str, gap: MotionGap, block: CylinderBlock, sheet: Sheet) -> Metres | None:
    """By which a part moves along its cylinder when axleboxes and pins are worn, m; None where nothing says so.

    A wheel by its axleboxes, and a coupling rod with it; crosshead and connecting rod by all bearings between wheel and
    piston. Of several cylinders of a block the greatest counts.
    """
    word = moving_at(name, gap, sheet)
    drive = block.drive
    if word in ("wheel", "coupling rod") and sheet.is_stated("wear of the axleboxes", drive.axlebox_wear):
        return sheet.take(f"w_a {name}", drive.axlebox_wear)
    if word not in ("crosshead", "connecting rod"):
        return None
    if sheet.is_stated("wear along the cylinder", drive.wear):
        return max((wear_along(block, bore, sheet) for bore in block.bores), default=None)
    plays = [plays_along(block, bore, sheet) for bore in block.bores]
    return max((one.value for one in plays if one is not None), default=None)


def moving_at(name: str, gap: MotionGap, sheet: Sheet) -> str | None:
    """What moves: by the part that the gap is to, else by its word."""
    if sheet.is_stated(f"part at {name}", gap.to) and isinstance(sheet.follow(gap.to), Crosshead):
        return "crosshead"
    return sheet.said(f"moving at {name}", gap.moving)
