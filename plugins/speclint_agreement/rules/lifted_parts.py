"""What a lifting plan weighs and lifts by its jibs is of the block that it lifts."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import Grade, Pair, Rule, Sheet, Worked, agreement, worked
from speclint.facts import block_of
from speclint.specs import Component, CylinderBlock, LiftingPlan, Link, NotStated
from speclint_agreement.inputs.blocks import in_block


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
            yield from _of(name, weight.of, lifted, sheet)
    for name, jib in plan.jibs.items():
        for link in jib.lifts:
            yield from _of(name, link, lifted, sheet)


def _of(name: str, link: Link[Component] | NotStated, lifted: Worked, sheet: Sheet) -> Iterator[Pair]:
    block = block_of(sheet.follow(link), sheet)
    if block is not None:
        yield Pair(lifted, in_block(link, block), name=name)


of_its_block: Rule = agreement(
    "lifting.parts-of-its-block",
    title="Each part that a lifting plan weighs or lifts by a jib is of the block that the plan lifts",
    on=LiftingPlan,
    pairs=_blocks,
    within="",
    grade=Grade.NONCONFORMITY,
    why="a plan copied from another block goes on weighing the parts of that one, which are no longer alike some day",
    leaves_out="pieces that name no part, parts that lead to no block, and a plan that lifts another part than a block",
    edition=2,
)

RULES = (of_its_block,)
