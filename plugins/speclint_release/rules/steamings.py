"""What was measured on a part in steam, beside what its duty assumes."""

from __future__ import annotations

from speclint import COMMON_PRACTICE, Grade, Judgement, Sheet, rule
from speclint.handbook.inspection import DECISIONS, ISO_14253_1, Decision, conformity, guard_band
from speclint.specs import MadePart, Steaming, steamings_of


@rule(
    "made.in-steam",
    title="Every value measured on a part in steam is proved to lie within what its duty assumes, or its drawing "
    "states",
    on=MadePart,
    grade=Grade.NONCONFORMITY,
    cites=[ISO_14253_1.at("decision rules"), COMMON_PRACTICE],
    why="every rule that holds hot holds for the heat and pressure assumed, and not for more or less",
    leaves_out="what the departure does: speclint check --made runs the rules with what was measured; values that the "
    "duty has worked, and moments that nobody measured",
    against=(),
    edition=2,
)
def in_steam(made: MadePart, sheet: Sheet) -> Judgement:
    """A value that is neither proved in nor proved out is a query."""
    drawn = sheet.follow(made.of)
    if not made.steamings:
        raise sheet.not_applicable("nothing was measured on it in steam")
    duty = sheet.duty_of(drawn)
    if duty is None and not all(
        sheet.is_stated(f"dimension of {name}", one.dimension) for name, one in made.steamings.items()
    ):
        raise sheet.not_assessed("it was measured in steam, and sees no duty", made.of.where)
    word = sheet.setting("decision")
    decision = next(one for one in DECISIONS if one == word)
    found = list(steamings_of(made, drawn, duty))
    if len(found) < len(made.steamings):
        told = ", ".join(sorted(set(made.steamings) - {one.name for one in found}))
        raise sheet.not_assessed(f"no load case or value is known for {told}", made.of.where)
    return sheet.each(found, lambda one: _proved(one, decision, sheet))


def _proved(one: Steaming, decision: Decision, sheet: Sheet) -> Judgement:
    called, measured, assumed = f"{one.key} {one.case}", one.measured, one.assumed
    if assumed is None:
        of = "drawing states no" if one.of_part else "duty states no"
        raise sheet.not_assessed(f"the {of} {called}, or has it worked", measured.where)
    if not one.uncertainty_known:
        raise sheet.not_assessed(f"no uncertainty is recorded for {called}", measured.where)
    says = "as the drawing states" if one.of_part else "as the duty assumes"
    low, high = sheet.take_limits(f"{called} assumed", assumed, f"{called} {says}")
    least, greatest = sheet.take_limits(f"{called} measured", measured, f"{called} as measured, with its U")
    half = (measured.high - measured.low) / 2
    verdict = conformity(
        measured.nominal, measured.nominal, assumed.low, assumed.high, guard_band(half, decision)
    )
    of = "drawing" if one.of_part else "duty"
    word = f"is outside the {of}" if verdict == "out" else f"is not proved within the {of}"
    judged = sheet.worst(
        sheet.at_least(least, low).else_says(f"{called} {word}: down to {{found}}, from {{limit}} assumed"),
        sheet.at_most(greatest, high).else_says(f"{called} {word}: up to {{found}}, to {{limit}} assumed"),
    )
    grade = Grade.NONCONFORMITY if verdict == "out" else Grade.QUERY
    return judged.graded(grade).pointing_at(measured.where)


RULES = (in_steam,)
