"""To what pressure everything is tested that holds the water of an end of a cylinder."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import Sheet
from speclint.equations import Pascals
from speclint.specs import (
    BoltedJoint,
    Component,
    CylinderBlock,
    CylinderCover,
    CylinderEnd,
    Gland,
    StuffingBox,
)


def least_test_pressure(block: CylinderBlock, end: CylinderEnd, sheet: Sheet) -> Pascals:
    """The least test pressure of the block, of the covers at an end, and of what their own specs add to them.

    Each cover must state its own; a joint, a stuffing box or a gland that states none is tested with its cover.
    """
    pressures = [sheet.take("p_t", block.test_pressure)]
    for cover in sheet.belonging_to(block, CylinderCover):
        if not _at(end, cover, sheet):
            continue
        pressures.append(sheet.take(f"p_t of {cover.id}", cover.test_pressure))
        pressures += [
            sheet.take(f"p_t of {part.id}", part.test_pressure)
            for part in _fitted_to(cover, sheet)
            if sheet.is_stated(f"test pressure of {part.id}", part.test_pressure)
        ]
    return min(pressures)


def _at(end: CylinderEnd, cover: CylinderCover, sheet: Sheet) -> bool:
    """Whether a cover is at an end; where either does not say its side it may be."""
    if not (sheet.is_stated("end", cover.end) and sheet.is_stated("side of end", end.side)):
        return True
    return sheet.read(f"end of {cover.id}", cover.end) == sheet.read("side of end", end.side)


def _fitted_to(cover: CylinderCover, sheet: Sheet) -> Iterator[Component]:
    """Joints, stuffing boxes and glands of a cover."""
    yield from sheet.belonging_to(cover, BoltedJoint)
    boxes = sheet.belonging_to(cover, StuffingBox)
    yield from boxes
    for part in (cover, *boxes):
        for gland in sheet.belonging_to(part, Gland):
            yield gland
            yield from sheet.belonging_to(gland, BoltedJoint)
