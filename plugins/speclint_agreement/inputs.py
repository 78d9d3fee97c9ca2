"""What several rules share: the block to which a link leads, places of both faces, and the wheelbase."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from speclint import COMMON_PRACTICE, Limit, Sheet, Worked
from speclint.specs import Link, NotStated

if TYPE_CHECKING:
    from speclint.specs import CylinderBlock, CylinderEnd, Length

WHEELBASE = Limit(
    "wheelbase",
    "2 mm",
    "length",
    COMMON_PRACTICE,
    "what the rigid wheelbase may differ by from the distance of two axles",
    "not negative",
)


def in_block(link: Link[Any] | NotStated, block: CylinderBlock) -> Worked:
    """The block to which a link leads, itself or by way of other parts; the second side of a pair, which names it."""
    return Worked(block.id, (link.where,), f"block {block.id}, to which this leads:")


def places_apart(ends: tuple[CylinderEnd, CylinderEnd], sheet: Sheet) -> tuple[Length, Length] | None:
    """Both faces, as counted from the collar's seat, else from the fixed point; None where neither counts both."""
    one, other = ends
    for places in ((one.face_from_seat, other.face_from_seat), (one.face_at, other.face_at)):
        if all(sheet.is_stated("place of a face", place) for place in places):
            return places
    return None
