"""The edge of a tapped hole, by the face of the block in which it stands."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import Grade, Pair, Rule, Sheet, agreement
from speclint.facts import edges_left
from speclint.specs import BoltedJoint


def _edges(joint: BoltedJoint, sheet: Sheet) -> Iterator[Pair]:
    """The edge distance against what circle, opening and face leave, as drawn."""
    if sheet.read("fastener", joint.fastener) != "stud":
        return
    for name, left in edges_left(joint, sheet, sheet.take).items():
        yield Pair(joint.edge_distance, left, "at most", name=name)


edge_left: Rule = agreement(
    "joint.edge-left",
    title="The edge distance that studs state is no more than their circle leaves to the widest bore, recess or "
    "opening of the block, or the hole of the cover, that they stand round, and to the edge of its face",
    on=BoltedJoint,
    pairs=_edges,
    within="",
    grade=Grade.NONCONFORMITY,
    why="a stud judged with more metal round it than is there cracks the edge, or strips its hole",
    leaves_out="studs of a pipe with both ends at openings of one block; drillings and pockets beside a hole",
    edition=4,
)

RULES = (edge_left,)
