"""The block, its pads, and what fastens it to the frame state one face of each pad and one thrust."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import Grade, Pair, Rule, Sheet, Worked, agreement
from speclint.facts import bores_on_frame, face_by_sides
from speclint.specs import CylinderBlock, FrameFastening


def _areas(block: CylinderBlock, sheet: Sheet) -> Iterator[Pair]:
    """The stated face of each pad against its sides, less the holes of the bolts of its fastening."""
    for name, pad in block.pads.items():
        by_sides = face_by_sides(block, name, sheet, sheet.take)
        if by_sides is not None:
            yield Pair(pad.area, by_sides, "at most", name=name)


def _bores(fastening: FrameFastening, sheet: Sheet) -> Iterator[Pair]:
    """The bore that a fastening names against all bores of the block that no pad on another frame takes."""
    block = sheet.follow(fastening.holds)
    on_frame = bores_on_frame(fastening, block, sheet)
    yield Pair(
        fastening.bore, Worked(" and ".join(on_frame), tuple(block.bores[name].where for name in on_frame))
    )


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

thrust_of_all: Rule = agreement(
    "frame.thrust-of-all",
    title="The bore whose thrust a fastening names is the only one of the block that comes on its frame",
    on=FrameFastening,
    pairs=_bores,
    within="",
    grade=Grade.HOLD,
    why="bolts chosen for the thrust of one cylinder slip under that of two",
    leaves_out="how two frames share the thrust of a bore between them",
)

RULES = (area_of_sides, thrust_of_all)
