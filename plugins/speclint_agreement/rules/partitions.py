"""A wall between live and exhaust steam is no larger than the passages on its sides, no smaller than it is drawn."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import Grade, Pair, Rule, Sheet, agreement, worked
from speclint.facts import block_of_partition, walls_of
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
    if sheet.is_stated("area", partition.area):
        yield from _panels(partition, sheet)


def _panels(partition: Partition, sheet: Sheet) -> Iterator[Pair]:
    """The area in contact against that of each flat wall that the partition is, or of the sides that it states."""
    A = sheet.take_nominal("A", partition.area)
    sides = [("sides", partition.short_side, partition.long_side)]
    if sheet.is_stated("flat wall", partition.wall):
        drawn = walls_of(partition, block_of_partition(partition, sheet), sheet)
        sides = [(f"flat wall {n}", wall.short, wall.long) for n, (_, wall) in enumerate(drawn, start=1)]
    for name, short, long in sides:
        if sheet.is_stated(f"shorter side, {name}", short) and sheet.is_stated(f"longer side, {name}", long):
            b, h = sheet.take_nominal("b", short), sheet.take_nominal("h", long)
            wall = sheet.work("A_w", rectangle_area, b=b, h=h)
            yield Pair(worked(A, partition.area), worked(wall, short, long), "at least", name=name)


within_passage: Rule = agreement(
    "partition.within-passage",
    title="The area of a wall in contact with both streams is no more than the whole wall of either passage, and no "
    "less than the flat wall that it is",
    on=Partition,
    pairs=_sides,
    within="",
    grade=Grade.NONCONFORMITY,
    why="heat and stress are worked for a wall larger than the passage that it lies in, or for a part of it",
    leaves_out="passages that state no perimeter or no length, walls that state not both sides, and what several "
    "walls of one partition are together",
    edition=2,
)

RULES = (within_passage,)
