"""What a lifting plan weighs and lifts by its jibs is of the block that it lifts."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from speclint import Grade, Pair, Rule, Sheet, agreement, worked
from speclint.specs import (
    CamBox,
    ChamberCover,
    Component,
    CylinderBlock,
    CylinderCover,
    CylinderLiner,
    LiftingPlan,
    Link,
    NotStated,
    Weldment,
)


def _blocks(plan: LiftingPlan, sheet: Sheet) -> Iterator[Pair]:
    """The block of each part that is weighed or lifted by a jib, as far as it names one, against that of the plan."""
    if not sheet.is_stated("what the plan lifts", plan.lifts):
        return
    block = sheet.follow(plan.lifts)
    if not isinstance(block, CylinderBlock):
        return
    lifted = worked(block.id, plan.lifts)
    for name, weight in plan.weights.items():
        if sheet.is_stated(f"part of {name}", weight.of):
            yield from _of(name, sheet.follow(weight.of), lifted, sheet)
    for name, jib in plan.jibs.items():
        for link in jib.lifts:
            yield from _of(name, sheet.follow(link), lifted, sheet)


def _of(name: str, part: Component, lifted: Any, sheet: Sheet) -> Iterator[Pair]:
    link = _block_of(part)
    if link is not None and sheet.is_stated(f"block of {part.id}", link):
        yield Pair(worked(sheet.follow(link).id, link), lifted, name=name)


def _block_of(part: Component) -> Link[Any] | NotStated | None:
    """The link by which a part says which block it belongs to; None of other kinds."""
    if isinstance(part, Weldment):
        return part.makes
    if isinstance(part, CylinderLiner):
        return part.housed_in
    if isinstance(part, CamBox):
        return part.mounted_on
    return part.closes if isinstance(part, CylinderCover | ChamberCover) else None


of_its_block: Rule = agreement(
    "lifting.parts-of-its-block",
    title="Each weldment, liner, cover and cam box that a lifting plan weighs or lifts by a jib is of the block that "
    "the plan lifts",
    on=LiftingPlan,
    pairs=_blocks,
    within="",
    grade=Grade.NONCONFORMITY,
    why="a plan copied from another block goes on weighing the parts of that one, which are no longer alike some day",
    leaves_out="pieces that name no part, parts of other kinds, and a plan that lifts another part than a block",
)

RULES = (of_its_block,)
