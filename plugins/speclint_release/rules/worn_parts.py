"""Wear of a part as it was measured at overhauls, against the limits of its drawing."""

from __future__ import annotations

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Grade, Judgement, Limit, Sheet, rule
from speclint.facts import LastWear, Worn, last_wear_of, wear_of
from speclint.handbook.inspection import DECISIONS, GUM, ISO_14253_1, Decision, conformity, guard_band
from speclint.specs import MadePart
from speclint_release.formulae.records import time_left

_UNBOUNDED = 1e3  # m: no part of an engine is so long


@rule(
    "made.worn",
    title="What was measured last of each size of a part that wears is proved to lie within the limit of its drawing",
    on=MadePart,
    grade=Grade.NONCONFORMITY,
    cites=[ISO_14253_1.at("decision rules"), COMMON_PRACTICE],
    why="past its limit of wear a part is no longer what the other rules count on",
    leaves_out="sizes that were not measured; whether the limit is right (wear.works-at-limit, wear.rings)",
    against=(),
)
def worn(made: MadePart, sheet: Sheet) -> Judgement:
    """A size that is neither proved to be within nor past its limit is a query."""
    drawn = sheet.follow(made.of)
    word = sheet.setting("decision")
    decision = next(one for one in DECISIONS if one == word)
    found = list(last_wear_of(made, drawn))
    if not found:
        raise sheet.not_applicable("nothing was measured that wears and has a limit")
    return sheet.each(found, lambda one: _within(one, decision, sheet))


def _within(one: LastWear, decision: Decision, sheet: Sheet) -> Judgement:
    called = one.size.called
    if one.uncertainty is None:
        raise sheet.not_assessed(f"no uncertainty is recorded for the {called}", one.where)
    guard = guard_band(one.uncertainty, decision)
    low, high = sheet.take_limits("L", one.limit, f"limit of wear, {called}")
    least, greatest = sheet.take_limits("m", one.band(guard), f"{called} as measured, with guard band")
    least_of_all = one.size.what == "least"
    allowed = (high, _UNBOUNDED) if least_of_all else (-_UNBOUNDED, low)
    verdict = conformity(one.value, one.value, *allowed, guard)
    word = "is past its limit of wear" if verdict == "out" else "is not proved within its limit of wear"
    if least_of_all:
        judged = sheet.at_least(least, high).else_says(f"{called} {word}: {{found}}, least {{limit}}")
    else:
        judged = sheet.at_most(greatest, low).else_says(f"{called} {word}: {{found}}, limit {{limit}}")
    grade = Grade.NONCONFORMITY if verdict == "out" else Grade.QUERY
    return judged.graded(grade).pointing_at(one.where)


@rule(
    "made.worn-by-next-overhaul",
    title="At the rate that was measured no size of a part meets its limit of wear before the next overhaul",
    on=MadePart,
    grade=Grade.NONCONFORMITY,
    cites=[FIRST_PRINCIPLES, GUM.at("5.1.2 and H.3"), COMMON_PRACTICE],
    why="a part that wears out between two overhauls stops the engine, or goes on working worn out",
    leaves_out="sizes measured on one day alone; wear that does not keep to a straight line; a size that is past its "
    "limit already (made.worn)",
    limits=[
        Limit(
            "interval", "1 year", "time", COMMON_PRACTICE, "from the last measurement to the next overhaul"
        ),
    ],
    against=(),
)
def worn_by_next_overhaul(made: MadePart, sheet: Sheet) -> Judgement:
    """By the line through the measurements; one that may, by its uncertainty, and need not, is a query."""
    found = [one for one in wear_of(made, sheet.follow(made.of)) if not one.past]
    if not found:
        raise sheet.not_applicable("nothing was measured on two days that wears and has a limit ahead")
    interval = sheet.limit("interval", "t_n")
    return sheet.each(found, lambda one: _lasts(one, interval, sheet))


def _lasts(one: Worn, interval: float, sheet: Sheet) -> Judgement:
    called = one.size.called
    if one.meets is None or one.rate is None:
        return sheet.states(True, f"{called}: no wear towards the limit is proved")
    limits = sheet.take_limits("L", one.limit, f"limit of wear, {called}")
    sizes = sheet.take_limits("m", one.last, f"{called} as measured last, with its U")
    slow, fast = sheet.take_limits("w", one.rate, f"rate of wear, {called}, with its U")
    L, m, other = (
        (limits[1], sizes[0], sizes[1]) if one.size.what == "least" else (limits[0], sizes[1], sizes[0])
    )
    soonest = sheet.work("t", time_left, L=L, m=m, w=fast)
    latest = sheet.work("t_l", time_left, L=L, m=other, w=slow)
    judged = sheet.at_least(soonest, interval).else_says(
        f"{called} may meet its limit of wear {{found}} after it was measured, the next overhaul is at {{limit}}"
    )
    return judged.graded(Grade.NONCONFORMITY if latest < interval else Grade.QUERY).pointing_at(
        one.last.where
    )


RULES = (worn, worn_by_next_overhaul)
