"""The weights of a lifting plan and the parts that they are state one mass."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from speclint import COMMON_PRACTICE, Grade, Limit, Pair, Rule, Sheet, Worked, agreement
from speclint.facts import (
    goes_up,
    mass_of_part,
    mass_together,
    own_steps,
    part_weighed,
    share_of_mass,
)
from speclint.specs import Component, CylinderBlock, CylinderLiner, LiftingPlan, Weldment


def _masses(plan: LiftingPlan, sheet: Sheet) -> Iterator[Pair]:
    """The mass of each weight against that of the part which it names, and of all against the parts that make it up."""
    least, most = sheet.limit("least share", "s_l"), sheet.limit("greatest share", "s_g")
    for name, weight in plan.weights.items():
        part = part_weighed(weight, sheet, sheet.take)
        if part is not None:
            low = sheet.work("m_l", share_of_mass, s=least, M=part.value)
            high = sheet.work("m_g", share_of_mass, s=most, M=part.value)
            yield Pair(weight.mass, Worked(low, part.places), "at least", name=name)
            yield Pair(weight.mass, Worked(high, part.places), "at most", name=name)
    drawn = _drawn(plan, sheet)
    if drawn.places:
        low = sheet.work("m_l", share_of_mass, s=least, M=drawn.value)
        yield Pair(_on_hook(plan, sheet), Worked(low, drawn.places), "at least", name="all together")


def _on_hook(plan: LiftingPlan, sheet: Sheet) -> Worked:
    """The load by its weights: of each what it states, or what the part that it names weighs where it states none."""
    total = Worked(0.0)
    for name, weight in plan.weights.items():
        if not goes_up(weight, sheet):
            continue
        part = part_weighed(weight, sheet, sheet.take)
        if part is None or sheet.is_stated(f"mass of {name}", weight.mass):
            part = Worked(sheet.take(f"m {name}", weight.mass), (weight.mass.where,))
        total = _with(total, part, sheet)
    return total


def _drawn(plan: LiftingPlan, sheet: Sheet) -> Worked:
    """What the part that is lifted weighs by its own spec, or that of its weldment, with the liners in it.

    Without those that are put in after the lift; but one that the steps of the block press in before counts, unless
    another plan lifts the block with it.
    """
    lifted = sheet.follow(plan.lifts)
    afterwards = _named(plan, sheet, up=False)
    parts: tuple[Component, ...] = (lifted,)
    if isinstance(lifted, CylinderBlock):
        liners = sheet.belonging_to(lifted, CylinderLiner)
        if afterwards:
            afterwards -= _in_before_lift(lifted, liners, sheet)
        parts = (*sheet.belonging_to(lifted, Weldment), *liners)
    total = Worked(0.0)
    for part in parts:
        mass = None if part.id in afterwards else mass_of_part(part, sheet, sheet.take)
        if mass is not None:
            total = _with(total, mass, sheet)
    return total


def _named(plan: LiftingPlan, sheet: Sheet, *, up: bool) -> set[str]:
    """The parts that the weights of a plan name, of those that go up or of those put in after the lift."""
    return {
        sheet.follow(weight.of).id
        for weight in plan.weights.values()
        if sheet.is_stated("part", weight.of) and goes_up(weight, sheet) == up
    }


def _in_before_lift(block: CylinderBlock, liners: Sequence[CylinderLiner], sheet: Sheet) -> set[str]:
    """The liners that by the steps of a block go in before it is lifted into the frames, and no plan lifts it with."""
    written = [step.written for step in own_steps(block, sheet)]
    if "lift in" not in written:
        return set()
    before = written[: written.index("lift in")]
    plans = sheet.fillers(block, LiftingPlan, by="lifts")
    lined = {one for plan in plans for one in _named(plan, sheet, up=True)}
    return {
        liner.id
        for liner in liners
        if liner.id not in lined
        and (sheet.said(f"step of {liner.id}", liner.making.at_step) or "press liners") in before
    }


def _with(total: Worked, more: Worked, sheet: Sheet) -> Worked:
    together = sheet.work("m", mass_together, m_0=total.value, m_1=more.value)
    return Worked(together, (*total.places, *more.places))


mass_complete: Rule = agreement(
    "lifting.mass-complete",
    title="Each weight of a lifting plan is within a tenth of the part that it names, and all together are not less "
    "than nine tenths of the part as welded with its liners",
    on=LiftingPlan,
    pairs=_masses,
    within="",
    limits=[
        Limit("least share", "0.9", "ratio", COMMON_PRACTICE, "least share of a part's own mass"),
        Limit("greatest share", "1.1", "ratio", COMMON_PRACTICE, "greatest share of a part's own mass"),
    ],
    grade=Grade.HOLD,
    why="eyes and slings are chosen by what the plan says is on the hook, and hang under what really is",
    leaves_out="ports and openings of a liner, and parts whose specs give neither a mass nor the sizes for one; "
    "whether a liner said to be put in after the lift is, where no steps of the block say when it is pressed in",
    edition=3,
)

RULES = (mass_complete,)
