"""The ends of a block's cylinders and the liners in its bores."""

from __future__ import annotations

from collections.abc import Sequence

from speclint import Sheet
from speclint.specs import CylinderBlock, CylinderEnd, CylinderLiner, Length


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


def bores_in_work(block: CylinderBlock, bore: str, sheet: Sheet) -> tuple[Length, Length]:
    """The bore in which the piston works, new and at its last: of the liner, or of the block where it has none.

    Not assessed where neither a liner is stated nor the bore says that it has none.
    """
    for liner in liners_of(block, bore, sheet):
        return liner.bore, liner.last_bore
    if bore not in block.bores:
        raise sheet.not_assessed(f"bore {bore} is not stated in {block.where.file}", block.where)
    own = block.bores[bore]
    if sheet.read(f"{bore} is lined", own.lined):
        raise sheet.not_assessed(f"no liner is stated in bore {bore} of {block.id}", block.where)
    return own.diameter, own.last_bore
