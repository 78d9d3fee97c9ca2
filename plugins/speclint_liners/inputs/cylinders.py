"""The ends of a block's cylinders and the liners in its bores."""

from __future__ import annotations

from collections.abc import Sequence

from speclint import Sheet
from speclint.specs import CylinderBlock, CylinderEnd, CylinderLiner


def ends_of(block: CylinderBlock, sheet: Sheet) -> Sequence[CylinderEnd]:
    """Every end of the block; each bore must have a front and a back."""
    if not block.bores:
        raise sheet.not_assessed(f"bores is not stated in {block.where.file}", block.where)
    sides = {
        (sheet.read("bore of end", end.of_bore), sheet.read("side of end", end.side)): end
        for end in block.ends.values()
    }
    for bore in block.bores:
        for side in ("front", "back"):
            if (bore, side) not in sides:
                said = f"ends: the {side} of bore {bore} is not stated in {block.where.file}"
                raise sheet.not_assessed(said, block.where)
    return tuple(sides.values())


def end_of(block: CylinderBlock, liner: CylinderLiner, side: str, sheet: Sheet) -> CylinderEnd:
    """The front or back end of the bore that a liner sits in."""
    bore = sheet.read("bore of liner", liner.in_bore)
    for end in block.ends.values():
        if sheet.read("bore of end", end.of_bore) == bore and sheet.read("side of end", end.side) == side:
            return end
    said = f"ends: the {side} of bore {bore} is not stated in {block.where.file}"
    raise sheet.not_assessed(said, block.where)


def liners_of(block: CylinderBlock, bore: str, sheet: Sheet) -> list[CylinderLiner]:
    """The liners that are stated in one bore of a block."""
    return [
        liner
        for liner in sheet.belonging_to(block, CylinderLiner)
        if sheet.read("bore of liner", liner.in_bore) == bore
    ]


def liner_in(block: CylinderBlock, end: CylinderEnd, sheet: Sheet) -> CylinderLiner:
    """The liner in the bore of an end."""
    bore = sheet.read("bore of end", end.of_bore)
    for liner in liners_of(block, bore, sheet):
        return liner
    raise sheet.not_assessed(f"no liner is stated in bore {bore} of {block.id}", block.where)
