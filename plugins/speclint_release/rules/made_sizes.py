"""The record of a part as made: its sizes, each proved within its limits."""

from __future__ import annotations

from collections.abc import Callable
from functools import partial

from speclint import COMMON_PRACTICE, Grade, Judgement, Sheet, rule
from speclint.handbook.inspection import (
    DECISIONS,
    ISO_14253_1,
    ISO_TR_14253_6,
    Decision,
    conformity,
    guard_band,
)
from speclint.handbook.steam import MILL, least_wall
from speclint.specs import MadePart, MeasuredDimension, MeasuredSize, QuantityAt, SteamPipe, sizes_of


@rule(
    "made.within-limits",
    title="Every measured size of a part is proved to lie within the limits of its drawing, and the wall of a pipe "
    "not below what its mill tolerance leaves",
    on=MadePart,
    grade=Grade.NONCONFORMITY,
    edition=2,
    cites=[ISO_14253_1.at("decision rules"), ISO_TR_14253_6.at("simple acceptance"), MILL],
    why="a size that is out was not what the calculation took, and one that is not proved may be out",
    leaves_out="what the departure does: speclint check --made runs the rules with what was measured; sizes that were "
    "not measured, and form; a wall measured on the outside of a bend, which bending thins besides",
    against=(),
)
def within_limits(made: MadePart, sheet: Sheet) -> Judgement:
    """A size that is neither proved in nor proved out is a query; one proved out may be conceded."""
    drawn = sheet.follow(made.of)
    word = sheet.setting("decision")
    decision = next(one for one in DECISIONS if one == word)
    sizes = sizes_of(made.measured, drawn)
    judges: list[tuple[MeasuredSize, Callable[[], Judgement]]] = [
        (size, partial(_proved, size, at, decision, sheet)) for size, at in sizes if _has_limits(at, sheet)
    ]
    if isinstance(drawn, SteamPipe) and sheet.is_stated("mill tolerance", drawn.mill_tolerance):
        judges += [
            (size, partial(_left_by_mill, size, drawn, decision, sheet))
            for size, at in sizes
            if at.drawn is drawn.wall and not _has_limits(at, sheet)
        ]
    if not judges:
        raise sheet.not_applicable("nothing was measured that the drawing gives limits")
    return sheet.each(judges, lambda item: item[1]())


def _has_limits(at: QuantityAt, sheet: Sheet) -> bool:
    return sheet.is_stated(at.key, at.drawn) and sheet.tolerance(f"T {at.key}", at.drawn) > 0


def _guard(size: MeasuredSize, decision: Decision, sheet: Sheet) -> float:
    if size.uncertainty is None:
        raise sheet.not_assessed(f"no uncertainty is recorded for {size.key}", size.where)
    return guard_band(size.uncertainty, decision)


def _proved(size: MeasuredSize, at: QuantityAt, decision: Decision, sheet: Sheet) -> Judgement:
    guard = _guard(size, decision, sheet)
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


def _left_by_mill(size: MeasuredSize, pipe: SteamPipe, decision: Decision, sheet: Sheet) -> Judgement:
    """A wall ordered without limits: the mill may leave it thinner by its tolerance, and thicker as it likes."""
    guard = _guard(size, decision, sheet)
    t, u = sheet.take_nominal("t", pipe.wall), sheet.take("u", pipe.mill_tolerance)
    low = sheet.work("t_l", least_wall, t=t, u=u)
    least, _ = sheet.take_limits("wall made", size.band(guard), "wall as made, with guard band")
    verdict = conformity(size.least, size.least, low, max(low, size.least) + guard, guard)
    word, grade = ("is out", Grade.NONCONFORMITY) if verdict == "out" else ("is not proved in", Grade.QUERY)
    judged = sheet.at_least(least, low).else_says(
        f"wall {word}: down to {{found}}, from {{limit}} by the mill's tolerance"
    )
    return judged.graded(grade).pointing_at(size.where)


@rule(
    "made.sizes-traced",
    title="Of every measured size it is on record when it was measured, with which instrument and by whom",
    on=MadePart,
    grade=Grade.NONCONFORMITY,
    cites=[COMMON_PRACTICE],
    why="when an instrument turns out to have been wrong, nobody can tell which parts it passed",
    leaves_out="whether the instrument was in date, and fit for the tolerance: its uncertainty is asked for by "
    "made.within-limits",
    against=(),
)
def sizes_traced(made: MadePart, sheet: Sheet) -> Judgement:
    """Lists what is missing of each size."""
    if not made.measured:
        raise sheet.not_applicable("nothing was measured of it")
    return sheet.each(made.measured.items(), lambda item: _traced(*item, sheet))


def _traced(name: str, size: MeasuredDimension, sheet: Sheet) -> Judgement:
    asked = (("date", size.date), ("instrument", size.instrument), ("inspector", size.inspector))
    missing = [key for key, value in asked if not sheet.is_stated(f"{key} of {name}", value)]
    says = (
        f"{name}: not stated: {', '.join(missing)}" if missing else f"{name}: day, instrument and inspector"
    )
    return sheet.states(not missing, says, where=size.where)


RULES = (within_limits, sizes_traced)
