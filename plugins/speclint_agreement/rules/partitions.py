"""A wall between live and exhaust steam is no larger than the passages on its sides."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import Grade, Pair, Rule, Sheet, agreement, worked
from speclint.handbook.members import rectangle_area
from speclint.specs import Partition


def _sides(partition: Partition, sheet: Sheet) -> Iterator[Pair]:
    """The area in contact with both streams against the whole wall of either passage: its perimeter by its length."""
    for name, link in (("live side", partition.live_side), ("exhaust side", partition.exhaust_side)):
        passage = sheet.follow(link)
        if sheet.is_stated(f"perimeter, {name}", passage.perimeter) and sheet.is_stated(
            f"length, {name}", passage.length
        ):
            b, h = sheet.take("P", passage.perimeter), sheet.take("L", passage.length)
            wall = sheet.work("A_p", rectangle_area, b=b, h=h)
            yield Pair(partition.area, worked(wall, passage.perimeter, passage.length), "at most", name=name)


within_passage: Rule = agreement(
    "partition.within-passage",
    title="The area of a wall in contact with both streams is no more than the whole wall of either passage",
    on=Partition,
    pairs=_sides,
    within="",
    grade=Grade.NONCONFORMITY,
    why="heat and stress are worked for a wall larger than the passage that it lies in",
    leaves_out="passages that state no perimeter or no length",
)

RULES = (within_passage,)
