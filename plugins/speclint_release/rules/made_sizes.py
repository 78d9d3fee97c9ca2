"""The record of a part as made: its sizes, each proved within its limits."""

from __future__ import annotations

from speclint import Grade, Judgement, Sheet, rule
from speclint.handbook.inspection import (
    DECISIONS,
    ISO_14253_1,
    ISO_TR_14253_6,
    Decision,
    conformity,
    guard_band,
)
from speclint.specs import MadePart, MeasuredSize, QuantityAt, sizes_of


@rule(
    "made.within-limits",
    title="Every measured size of a part is proved to lie within the limits of its drawing",
    on=MadePart,
    grade=Grade.NONCONFORMITY,
    cites=[ISO_14253_1.at("decision rules"), ISO_TR_14253_6.at("simple acceptance")],
    why="a size that is out was not what the calculation took, and one that is not proved may be out",
    leaves_out="what the departure does: speclint check --made runs the rules with what was measured; sizes that were "
    "not measured, and form",
    against=(),
)
def within_limits(made: MadePart, sheet: Sheet) -> Judgement:
    """A size that is neither proved in nor proved out is a query; one proved out may be conceded."""
    drawn = sheet.follow(made.of)
    word = sheet.setting("decision")
    decision = next(one for one in DECISIONS if one == word)
    toleranced = [
        (size, at)
        for size, at in sizes_of(made.measured, drawn)
        if sheet.is_stated(at.key, at.drawn) and sheet.tolerance(f"T {at.key}", at.drawn) > 0
    ]
    if not toleranced:
        raise sheet.not_applicable("nothing was measured that the drawing gives limits")
    return sheet.each(toleranced, lambda item: _proved(*item, decision, sheet))


def _proved(size: MeasuredSize, at: QuantityAt, decision: Decision, sheet: Sheet) -> Judgement:
    if size.uncertainty is None:
        raise sheet.not_assessed(f"no uncertainty is recorded for {at.key}", size.where)
    guard = guard_band(size.uncertainty, decision)
    low, high = sheet.take_limits(f"{at.key} drawn", at.drawn, f"{at.key} as drawn")
    least, greatest = sheet.take_limits(
        f"{at.key} made", size.band(guard), f"{at.key} as made, with guard band"
    )
    verdict = conformity(size.least, size.greatest, low, high, guard)
    grade = Grade.NONCONFORMITY if verdict == "out" else Grade.QUERY
    word = "is out" if verdict == "out" else "is not proved in"
    return (
        sheet.worst(
            sheet.at_least(least, low).else_says(f"{at.key} {word}: down to {{found}}, from {{limit}} drawn"),
            sheet.at_most(greatest, high).else_says(f"{at.key} {word}: up to {{found}}, to {{limit}} drawn"),
        )
        .graded(grade)
        .pointing_at(size.where)
    )


RULES = (within_limits,)
