"""The ends of a block's cylinders and the liners in its bores."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from speclint import Sheet
from speclint.facts import bore_named, ends_of, liners_of
from speclint.specs import CylinderBlock, CylinderLiner, Length

if TYPE_CHECKING:
    from speclint.specs import CylinderEnd


def every_end(block: CylinderBlock, sheet: Sheet) -> Sequence[CylinderEnd]:
    """Every end of the block; each bore must have a front and a back."""
    if not block.bores:
        raise sheet.not_assessed(f"bores is not stated in {block.where.file}", block.where)
    found: list[CylinderEnd] = []
    for bore in block.bores:
        ends = ends_of(block, bore, sheet).values()
        sides = {sheet.read("side of end", end.side) for end in ends}
        for side in ("front", "back"):
            if side not in sides:
                raise sheet.not_assessed(_no_end(side, bore, block), block.where)
        found += ends
    return found


def end_of(block: CylinderBlock, liner: CylinderLiner, side: str, sheet: Sheet) -> CylinderEnd:
    """The front or back end of the bore that a liner sits in."""
    bore = sheet.read("bore of liner", liner.in_bore)
    for end in ends_of(block, bore, sheet).values():
        if sheet.read("side of end", end.side) == side:
            return end
    raise sheet.not_assessed(_no_end(side, bore, block), block.where)


def ends_beside(block: CylinderBlock, liner: CylinderLiner, sheet: Sheet) -> Sequence[CylinderEnd]:
    """The ends of the bore that a liner sits in."""
    return tuple(ends_of(block, sheet.read("bore of liner", liner.in_bore), sheet).values())


def _no_end(side: str, bore: str, block: CylinderBlock) -> str:
    return f"ends: the {side} of bore {bore} is not stated in {block.where.file}"


def bores_in_work(block: CylinderBlock, bore: str, sheet: Sheet) -> tuple[Length, Length]:
    """The bore in which the piston works, new and at its last: of the liner, or of the block where it has none.

    Not assessed where neither a liner is stated nor the bore says that it has none.
    """
    for liner in liners_of(block, bore, sheet):
        return liner.bore, liner.last_bore
    own = bore_named(block, bore, sheet)
    if sheet.read(f"{bore} is lined", own.lined):
        raise sheet.not_assessed(f"no liner is stated in bore {bore} of {block.id}", block.where)
    return own.diameter, own.last_bore
