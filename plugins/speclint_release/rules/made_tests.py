"""The record of a part as made: its hydraulic tests, and how its nuts were tightened."""

from __future__ import annotations

import datetime as dt

from speclint import COMMON_PRACTICE, Grade, Judgement, Limit, Sheet, rule
from speclint.facts import holds_pressure
from speclint.specs import BoltedJoint, HydraulicTestRecord, MadePart, NotStated, Stated, TighteningRecord
from speclint_release.formulae.records import most_preload, most_torque, most_turn
from speclint_release.inputs.records import no_record
from speclint_release.sources import EN_13445_5


@rule(
    "made.hydraulic-test",
    title="A part whose spec asks for a hydraulic test passed one, at no less than the test pressure and held for long "
    "enough, on a later day than any that fell short",
    on=MadePart,
    grade=Grade.HOLD,
    gravest=Grade.HOLD,
    cites=[EN_13445_5.at("10.2.3, hydrostatic test")],
    why="a flaw that the test would have opened in cold water opens in service in steam",
    leaves_out="how the test was made and who witnessed it: the competent person or body that the local code names "
    "decides; a part tested with the vessel that it belongs to",
    limits=[
        Limit(
            "held",
            "30 min",
            "time",
            EN_13445_5.at("10.2.3, hydrostatic test"),
            "least time for which the test pressure stands",
        ),
    ],
    against=(),
    edition=3,
)
def hydraulic_test(made: MadePart, sheet: Sheet) -> Judgement:
    """Of several tests one that holds is enough, if it is later than each that failed, was too low or too short.

    Where no record is there yet that is a query, until the drawings are released.
    """
    drawn = sheet.follow(made.of)
    if not sheet.is_stated("test pressure", drawn.test_pressure):
        raise sheet.not_applicable("its spec asks for no hydraulic test of its own")
    if not made.hydraulic_tests:
        return no_record("no hydraulic test is on record", made, Grade.HOLD, sheet)
    wanted = sheet.take("p_t", drawn.test_pressure)
    judged = [
        (_day(f"day of {name}", one.date, sheet), _tested(name, one, wanted, sheet))
        for name, one in made.hydraulic_tests.items()
    ]
    enough = max((day or dt.date.min for day, one in judged if one.holds), default=dt.date.min)
    short = [one for day, one in judged if not one.holds and (day or dt.date.max) >= enough]
    return short[0] if short else next(one for _, one in judged if one.holds)


def _day(name: str, value: Stated[str] | NotStated, sheet: Sheet) -> dt.date | None:
    """A day as recorded; None where none is, or what stands there is no day."""
    if not sheet.is_stated(name, value):
        return None
    try:
        return dt.date.fromisoformat(sheet.read(name, value))
    except ValueError:
        return None


def _tested(name: str, record: HydraulicTestRecord, wanted: float, sheet: Sheet) -> Judgement:
    result = sheet.read(f"result of {name}", record.result)
    if result != "passed":
        return sheet.states(False, f"{name}: {result}", where=record.where)
    if not sheet.is_stated("time held", record.held):
        return sheet.states(
            False, f"{name}: the time for which it was held is not on record", where=record.where
        )
    return sheet.worst(
        sheet.at_least(sheet.take("p", record.pressure), wanted).else_says(
            f"{name}: tested at {{found}}, {{limit}} asked for"
        ),
        sheet.at_least(sheet.take("t", record.held), sheet.limit("held", "t_n")).else_says(
            f"{name}: held for {{found}}, {{limit}} asked for"
        ),
    )


@rule(
    "made.tightening",
    title="The nuts of a joint were tightened to what its spec asks, no less and no more, and that is on record",
    on=MadePart,
    grade=Grade.NONCONFORMITY,
    gravest=Grade.HOLD,
    cites=[COMMON_PRACTICE],
    why="a nut that nobody recorded is a nut that somebody may have forgotten; one tightened too far yields its stud",
    leaves_out="whether the wrench was right, and the order in which the nuts were tightened: a competent person, and "
    "the local code, decide on joints under pressure",
    limits=[
        Limit(
            "over",
            "0.05",
            "ratio",
            COMMON_PRACTICE,
            "share by which a figure without tolerance may be passed",
        ),
    ],
    against=(),
    edition=3,
)
def tightening(made: MadePart, sheet: Sheet) -> Judgement:
    """Torque, angle and preload, each as far as the spec states it; a hold on a joint under pressure."""
    drawn = sheet.follow(made.of)
    if not isinstance(drawn, BoltedJoint):
        raise sheet.not_applicable("it is no bolted joint")
    grade = Grade.HOLD if holds_pressure(drawn, sheet) else Grade.NONCONFORMITY
    if not made.tightenings:
        return no_record("no tightening is on record", made, grade, sheet)
    return sheet.each(made.tightenings.items(), lambda item: _tightened(*item, drawn, sheet)).graded(grade)


def _tightened(name: str, record: TighteningRecord, drawn: BoltedJoint, sheet: Sheet) -> Judgement:
    if sheet.said(f"result of {name}", record.result) == "failed":
        return sheet.states(False, f"{name}: failed", where=record.where)
    asked = drawn.tightening
    judged = []
    for symbol, what, wanted, found, most_of in (
        ("M", "torque", asked.torque, record.torque, most_torque),
        ("θ", "angle", asked.angle, record.angle, most_turn),
        ("F", "preload", asked.preload, record.preload, most_preload),
    ):
        if not sheet.is_stated(f"{what} asked for", wanted):
            continue
        least, most = sheet.take_limits(f"{symbol}_s", wanted, f"{what} asked for")
        lowest, highest = sheet.take_limits(symbol, found, f"{what} recorded")
        judged.append(
            sheet.at_least(lowest, least).else_says(f"{name}: {what} {{found}}, {{limit}} asked for")
        )
        if most == least:  # no wrench stops on a figure: without a tolerance a share above it is allowed
            more = {"k": sheet.limit("over", "k"), f"{symbol}_s": most}
            most = sheet.work(f"{symbol}_m", most_of, **more)
        judged.append(sheet.at_most(highest, most).else_says(f"{name}: {what} {{found}}, {{limit}} at most"))
    if not judged:
        return sheet.states(True, f"{name}: its spec asks for no figure")
    return sheet.worst(*judged)


RULES = (
    hydraulic_test,
    tightening,
)
