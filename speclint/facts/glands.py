"""What is fitted to a cover: its joints, the stuffing box with its gland and packing, and the rod in it."""

from __future__ import annotations

from collections.abc import Iterator

from speclint.rules import Sheet
from speclint.specs import BoltedJoint, Component, CylinderCover, Gland, PistonRod, StuffingBox

#: Packings that a gland compresses; all others have springs of their own, or none to compress.
_BRAIDED = "braided"


def box_of(gland: Gland, sheet: Sheet) -> StuffingBox | None:
    """The stuffing box that a gland closes: that which it names, else the only one in the cover which it names."""
    if not sheet.is_stated("box or cover of the gland", gland.of):
        return None
    of = sheet.follow(gland.of)
    if isinstance(of, StuffingBox):
        return of
    boxes = sheet.belonging_to(of, StuffingBox) if isinstance(of, CylinderCover) else ()
    return boxes[0] if len(boxes) == 1 else None


def rod_in(box: StuffingBox, sheet: Sheet) -> PistonRod | None:
    """The rod that a stuffing box seals; None where it names none."""
    return sheet.follow(box.seals) if sheet.is_stated("rod of the box", box.seals) else None


def packing_in(box: StuffingBox, sheet: Sheet) -> str | None:
    """Whether the gland compresses the packing of a box, "soft", or not, "metallic"; None where it names none."""
    if not sheet.is_stated("packing of the box", box.packing):
        return None
    return "soft" if sheet.read("packing of the box", box.packing).startswith(_BRAIDED) else "metallic"


def fitted_to(cover: CylinderCover, sheet: Sheet) -> Iterator[Component]:
    """The joints, stuffing boxes and glands of a cover, and the joints of the glands."""
    yield from sheet.belonging_to(cover, BoltedJoint)
    boxes = sheet.belonging_to(cover, StuffingBox)
    yield from boxes
    for part in (cover, *boxes):
        for gland in sheet.belonging_to(part, Gland):
            yield gland
            yield from sheet.belonging_to(gland, BoltedJoint)
