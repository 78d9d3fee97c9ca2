"""Every way from a part leads to one cylinder block."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from speclint import Grade, Pair, Rule, Sheet, agreement
from speclint.facts import Way, ways_to_blocks
from speclint.specs import (
    AccessPlan,
    BoltedJoint,
    ChamberCover,
    Component,
    CompressionSpring,
    CylinderCover,
    Envelope,
    Fit,
    Partition,
    Piston,
    PistonRing,
    PoppetValve,
    Rocker,
    SlideBar,
    StuffingBox,
    Tappet,
    ValveCage,
    ValveGear,
    Weldment,
)
from speclint_agreement.inputs.blocks import in_block


def _blocks(part: Component, sheet: Sheet) -> Iterator[Pair]:
    """The block to which each link of the part leads against that to which its first leads."""
    ways = tuple(ways_to_blocks(part, sheet))
    if not ways or _joins_blocks(part, ways):
        return
    first, *others = ways
    for way in others:
        here, there = in_block(way.link, way.block), in_block(first.link, first.block)
        yield Pair(here, there, name=way.link.where.key)


def _joins_blocks(part: Component, ways: Sequence[Way]) -> bool:
    """Whether a joint or a fit is between two blocks themselves, such as inside cylinders bolted together."""
    named = {way.block.id for way in ways if way.itself}
    return len(named) > 1 and isinstance(part, BoltedJoint | Fit)


of_one_block: Rule = agreement(
    "part.of-one-block",
    title="All that a part names, but along the path of steam, is on, in or made into one and the same block",
    on=(
        AccessPlan,
        BoltedJoint,
        ChamberCover,
        CompressionSpring,
        CylinderCover,
        Envelope,
        Fit,
        Partition,
        Piston,
        PistonRing,
        PoppetValve,
        Rocker,
        SlideBar,
        StuffingBox,
        Tappet,
        ValveCage,
        ValveGear,
        Weldment,
    ),
    pairs=_blocks,
    within="",
    grade=Grade.NONCONFORMITY,
    why="a part whose spec was copied from the other side of the engine, and altered in one place only, is worked with "
    "the sizes and the steam of one cylinder and fitted to another",
    leaves_out="parts that lead to one block or to none, such as pipes and shafts; joints and fits between two blocks "
    "themselves; what moves beside a block; what is named without a link, such as the joint of a spanner or of a "
    "pattern of holes; the ends and the cylinders of the block",
)

RULES = (of_one_block,)
