"""The hole of a cover for what goes through it."""

from __future__ import annotations

from speclint.facts.glands import rod_in
from speclint.rules import Sheet
from speclint.specs import ChamberCover, CylinderCover, StuffingBox


def hole_through(cover: CylinderCover | ChamberCover, sheet: Sheet) -> float:
    """Diameter of the hole of a cover, m: as stated, and no less than the box, or else the rod, that goes through it.

    A chamber's cover has no stuffing box: its hole is the stated one.
    """
    holes = [sheet.take("d_o", cover.central_hole)]
    boxes = sheet.belonging_to(cover, StuffingBox) if isinstance(cover, CylinderCover) else ()
    for box in boxes:
        rod = rod_in(box, sheet)
        if sheet.is_stated(f"outside of {box.id}", box.outside_diameter):
            holes.append(sheet.take(f"d_o of {box.id}", box.outside_diameter))
        elif rod is not None:
            holes.append(sheet.take(f"d_o of {rod.id}", rod.diameter))
    return max(holes)
