"""A block and its lifting plan state one place of its weight."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import Grade, Pair, Rule, Sheet, Worked, agreement
from speclint.equations import Kilograms
from speclint.facts import centre_together, mass_together, middle_of_liner, part_weighed
from speclint.specs import CylinderBlock, CylinderLiner, LiftingPlan, Weight
from speclint_agreement.formulae.weights import from_fixed_point


def _centres(block: CylinderBlock, sheet: Sheet) -> Iterator[Pair]:
    """The stated place against that of all pieces of the plan, measured from the liner, whose place the block gives."""
    if not sheet.is_stated("place of the weight", block.weight_at):
        return
    for plan in sheet.fillers(block, LiftingPlan, by="lifts"):
        for name, weight in plan.weights.items():
            if not sheet.is_stated(f"part of {name}", weight.of):
                continue
            part = sheet.follow(weight.of)
            if not isinstance(part, CylinderLiner) or not sheet.is_stated(
                "block of the liner", part.housed_in
            ):
                continue
            middle = middle_of_liner(part, block, sheet, sheet.take_nominal)
            if middle is None or sheet.follow(part.housed_in).id != block.id:
                continue
            centre, x_p = _centre(plan, sheet), sheet.take_nominal(f"x {name}", weight.x)
            x = sheet.work("x_w", from_fixed_point, x_l=middle.value, x_c=centre.value, x_p=x_p)
            yield Pair(block.weight_at, Worked(x, (*centre.places, *middle.places)), name=part.id)


def _centre(plan: LiftingPlan, sheet: Sheet) -> Worked:
    """Centre of gravity of all pieces of a plan, those put in after the lift included, forward."""
    m, x = 0.0, 0.0
    for name, weight in plan.weights.items():
        m_1, x_1 = _mass(name, weight, sheet), sheet.take_nominal(f"x {name}", weight.x)
        x = sheet.work("x_c", centre_together, m_0=m, x_0=x, m_1=m_1, x_1=x_1)
        m = sheet.work("m", mass_together, m_0=m, m_1=m_1)
    return Worked(x, tuple(weight.x.where for weight in plan.weights.values()))


def _mass(name: str, weight: Weight, sheet: Sheet) -> Kilograms:
    """The mass of a piece: as stated, else that of the part which it names."""
    stated = sheet.is_stated(f"mass of {name}", weight.mass)
    part = None if stated else part_weighed(weight, sheet, sheet.take_nominal)
    mass: Kilograms = sheet.take_nominal(f"m {name}", weight.mass) if part is None else part.value
    return mass


weight_by_plan: Rule = agreement(
    "block.weight-by-plan",
    title="The weight of a block is where the pieces of its lifting plan have their centre, counted from its liner",
    on=CylinderBlock,
    pairs=_centres,
    within="100 mm",
    grade=Grade.NONCONFORMITY,
    why="the pads are loaded by the one place and the slings by the other: where they differ, one is overloaded",
    leaves_out="what is fitted after the lift, for which the two may differ by so much; a plan that names no liner, or "
    "one whose place in the block or collar is not stated; a liner is taken to weigh in the middle of its length",
)

RULES = (weight_by_plan,)
