"""To what pressure everything is tested that holds the water of an end of a cylinder."""

from __future__ import annotations

from typing import TYPE_CHECKING

from speclint import Sheet
from speclint.equations import Pascals
from speclint.facts import end_closed_by, fitted_to
from speclint.specs import CylinderBlock, CylinderCover

if TYPE_CHECKING:
    from speclint.specs import CylinderEnd


def least_test_pressure(block: CylinderBlock, end: CylinderEnd, sheet: Sheet) -> Pascals:
    """The least test pressure of the block, of the covers at an end, and of what their own specs add to them.

    Each cover must state its own; a joint, a stuffing box or a gland that states none is tested with its cover.
    """
    pressures = [sheet.take("p_t", block.test_pressure)]
    for cover in sheet.belonging_to(block, CylinderCover):
        if end_closed_by(cover, sheet)[1] is not end:
            continue
        pressures.append(sheet.take(f"p_t of {cover.id}", cover.test_pressure))
        pressures += [
            sheet.take(f"p_t of {part.id}", part.test_pressure)
            for part in fitted_to(cover, sheet)
            if sheet.is_stated(f"test pressure of {part.id}", part.test_pressure)
        ]
    return min(pressures)
