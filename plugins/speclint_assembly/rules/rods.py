"""Piston rods, their stuffing boxes and glands."""

from __future__ import annotations

from speclint import Grade, Judgement, Sheet, rule
from speclint.facts import graded_as_assembly
from speclint.specs import Gland, PistonRod, StuffingBox
from speclint_assembly.inputs.ends import CROSSHEAD_END, PISTON_END, forged_to, greatest_at, ways_past
from speclint_assembly.inputs.room import BY_HAND, DEFERS
from speclint_assembly.inputs.studs import studs_pass
from speclint_assembly.sources import GEOMETRY


@rule(
    "rod.enters",
    edition=2,
    title="One end of a piston rod, the piston's only where the piston comes off, passes the hole of the cover, "
    "the neck bush and the gland, unless these are in halves",
    on=PistonRod,
    grade=Grade.NONCONFORMITY,
    cites=GEOMETRY,
    why="a rod with a flange forged on at one end and its piston at the other goes into no box",
    leaves_out="the room behind the cover that the rod needs on its way; the clearance of the rod in bush and gland, "
    "which packing.gland judges; packing, which is laid in afterwards",
    against=(),
)
def rod_enters(rod: PistonRod, sheet: Sheet) -> Judgement:
    """The smaller of the two ends, by its sections, against the narrowest bore of each box that seals the rod."""
    boxes = sheet.belonging_to(rod, StuffingBox)
    if not boxes:
        raise sheet.not_assessed(f"no stuffing box says that it seals {rod.id}", rod.where)
    piston = sheet.follow(rod.carries)
    ends = [greatest_at(rod, CROSSHEAD_END, sheet)]
    if not forged_to(piston, sheet):
        ends.append(greatest_at(rod, PISTON_END, sheet))

    def judge(box: StuffingBox) -> Judgement:
        return sheet.at_most(min(ends), min(ways_past(box, sheet))).else_says(
            f"smaller end of the rod {{found}}, way past {box.id} {{limit}}"
        )

    return sheet.each(boxes, judge)


@rule(
    "box.enters",
    title="A stuffing box enters the hole of its cover, and the studs of a gland pass their holes in it with "
    "0.5 mm to spare",
    on=(StuffingBox, Gland),
    grade=Grade.NONCONFORMITY,
    gravest=Grade.HOLD,
    cites=GEOMETRY,
    why="a box that does not enter is forced, and a gland forced over its studs seizes on them",
    leaves_out=f"the place of the studs on their circle; a box that is one with its cover; {DEFERS}",
    against=(),
    limits=[BY_HAND],
)
def box_enters(part: StuffingBox | Gland, sheet: Sheet) -> Judgement:
    """Outside of the box against the hole; the thread of the gland's studs against the holes."""
    if isinstance(part, Gland):
        judged = studs_pass(part, sheet)
    else:
        hole = sheet.take("D_h", sheet.follow(part.in_cover).central_hole)
        judged = sheet.at_most(sheet.take("D", part.outside_diameter), hole).else_says(
            "stuffing box {found} outside, hole of its cover {limit}"
        )
    return graded_as_assembly(judged, part, sheet)


RULES = (rod_enters, box_enters)
