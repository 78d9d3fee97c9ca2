"""The block, its pads, and what fastens it to the frame state one face of each pad and one thrust."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import Grade, Pair, Rule, Sheet, agreement
from speclint.facts import face_by_sides
from speclint.specs import CylinderBlock


def _areas(block: CylinderBlock, sheet: Sheet) -> Iterator[Pair]:
    """The stated face of each pad against its sides, less the holes of the bolts of its fastening."""
    for name, pad in block.pads.items():
        by_sides = face_by_sides(block, name, sheet, sheet.take)
        if by_sides is not None:
            yield Pair(pad.area, by_sides, "at most", name=name)


area_of_sides: Rule = agreement(
    "pad.area-of-sides",
    title="The stated face of a pad is no larger than its sides leave beside the holes of its bolts",
    on=CylinderBlock,
    pairs=_areas,
    within="",
    grade=Grade.HOLD,
    why="a pad that is smaller than it was reckoned is crushed where the couple presses it on the frame",
    leaves_out="chamfers, grooves and other reliefs of the face, and the frame under it",
)

RULES = (area_of_sides,)
