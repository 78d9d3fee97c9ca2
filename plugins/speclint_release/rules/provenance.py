"""Where the figures of a component come from."""

from __future__ import annotations

from speclint import COMMON_PRACTICE, Grade, Judgement, Sheet, rule
from speclint.specs import Component


@rule(
    "release.assumed",
    title="From the review stage on, no dimension is marked as assumed",
    on=Component,
    grade=Grade.QUERY,
    gravest=Grade.HOLD,
    cites=[COMMON_PRACTICE],
    why="a figure assumed to get on with the drawing is forgotten, and the part is made to it",
    leaves_out="whether the assumed figure is right: where a rule of hold grade used it, a competent "
    "person decides",
    against=(),
    reviews=True,
)
def assumed(component: Component, sheet: Sheet) -> Judgement:
    """Lists every quantity of the spec that is marked as assumed, and the rules of hold grade that used one."""
    if sheet.setting("stage") == "draft":
        raise sheet.not_applicable("the design is a draft: figures may still be assumed")
    found = sheet.stated_from("assumed", component)
    holds = sheet.assumed_by_holds()
    if not found and not holds:
        return sheet.states(True, "nothing is assumed")
    says = f"assumed: {', '.join(where.key for where in found) or 'values taken from other specs'}"
    if not holds:
        return sheet.states(False, says, where=found[0])
    where = found[0] if found else component.where
    return sheet.states(False, f"{says}; used by {', '.join(holds)}", where=where).graded(Grade.HOLD)


@rule(
    "release.measured-only",
    title="No dimension is only a measurement of an original part",
    on=Component,
    grade=Grade.QUERY,
    cites=[COMMON_PRACTICE],
    why="a worn part no longer has its design size: a part copied from it starts its life partly worn",
    leaves_out="how far the original was worn, and what its designer intended: the drawing office decides",
    against=(),
)
def measured_only(component: Component, sheet: Sheet) -> Judgement:
    """Lists every quantity of the spec that is marked as measured."""
    if component.is_one_of(("dimension-chain",)):
        raise sheet.not_applicable("a chain is measured on the parts as made, for the fitter")
    found = sheet.stated_from("measured", component)
    if not found:
        return sheet.states(True, "no dimension is only measured")
    return sheet.states(
        False, f"measured, without a design value: {', '.join(where.key for where in found)}", where=found[0]
    )


RULES = (assumed, measured_only)
