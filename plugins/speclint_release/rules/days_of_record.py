"""How the records of a part as made agree: stress relief as it was asked for, and one step after the other."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from speclint import COMMON_PRACTICE, Grade, Judgement, Limit, Sheet, rule
from speclint.specs import HeatTreatmentRecord, MadePart, Weldment
from speclint_release.formulae.records import most_test_pressure
from speclint_release.inputs.records import Record, days_of, passed, records_of, weldment_of_made, with_a_day
from speclint_release.inputs.treatments import is_of_a_part, may_relieve
from speclint_release.sources import ASME_I, EN_13445_4


@rule(
    "made.relieved-as-asked",
    title="A stress relief on record stood at the temperature and for the time that the weldment asks for, no weld on "
    "record is later than the last, and nothing was fitted to the part before one of the whole",
    on=MadePart,
    grade=Grade.NONCONFORMITY,
    cites=[EN_13445_4.at("heat treatment"), COMMON_PRACTICE],
    why="a chart that names another temperature relieved nothing, or softened the plates; a weld laid after it is as "
    "hard as before; a fit is loose once it was in the furnace",
    leaves_out="rates of heating and cooling, and where the thermocouples were; repairs of which nobody made a record",
    against=(),
    edition=3,
)
def relieved_as_asked(made: MadePart, sheet: Sheet) -> Judgement:
    """Each record of a stress relief against the weldment of the part; its day against those of welds and entries."""
    records = {name: one for name, one in made.heat_treatments.items() if _relieves(name, one, sheet)}
    if not records:
        raise sheet.not_applicable("no stress relief is on record: made.examined asks for it")
    judged = []
    if made.welds:
        last = max(day for _, day in days_of(records_of(records), sheet))
        welds = days_of(records_of(made.welds, "weld"), sheet)
        late = [name for name, day in welds if day > last]
        says = "no weld is later than the stress relief"
        if late:
            says = f"{', '.join(late)}: later than the stress relief"
        judged.append(sheet.states(not late, says, where=made.where))
    judged.extend(_before_fitted(made, records, sheet))
    weldment = weldment_of_made(made, sheet)
    if weldment is not None and sheet.is_stated("temperature asked for", weldment.treatment.temperature):
        judged.append(sheet.each(records.items(), lambda item: _as_asked(*item, weldment, sheet)))
    if not judged:
        raise sheet.not_applicable(
            "it has no weld and no entry on record, and no weldment asks for a temperature"
        )
    return sheet.worst(*judged)


def _before_fitted(
    made: MadePart, reliefs: Mapping[str, HeatTreatmentRecord], sheet: Sheet
) -> Iterator[Judgement]:
    """That no stress relief of the whole is later than the last entry on record."""
    entries = with_a_day(records_of(made.entries, "entry"), sheet)
    of_all = {
        name: one
        for name, one in reliefs.items()
        if not is_of_a_part(sheet.said(f"treatment of {name}", one.treatment) or name, "")
    }
    whole = with_a_day(records_of(of_all), sheet)
    if entries and whole:
        last = max(day for _, day in days_of(entries, sheet))
        late = [name for name, day in days_of(whole, sheet) if day > last]
        says = f"{', '.join(late)}: later than it was fitted" if late else "relieved before it was fitted"
        yield sheet.states(not late, says, where=made.where)


def _as_asked(name: str, record: HeatTreatmentRecord, weldment: Weldment, sheet: Sheet) -> Judgement:
    asked = weldment.treatment
    low, high = sheet.take_limits("T_a", asked.temperature, "temperature asked for")
    least, greatest = sheet.take_limits(f"T {name}", record.temperature, f"temperature of {name}")
    judged = [
        sheet.at_least(least, low).else_says(f"{name}: at {{found}}, {{limit}} asked for"),
        sheet.at_most(greatest, high).else_says(f"{name}: at {{found}}, {{limit}} at most asked for"),
    ]
    if sheet.is_stated("time asked for", asked.time):
        held, wanted = sheet.take(f"t {name}", record.held), sheet.take("t_a", asked.time)
        judged.append(
            sheet.at_least(held, wanted).else_says(f"{name}: held for {{found}}, {{limit}} asked for")
        )
    return sheet.worst(*judged)


def _relieves(name: str, record: HeatTreatmentRecord, sheet: Sheet) -> bool:
    """Whether a heat treatment on record is a stress relief, by its words or its name; one that names none may be."""
    said = sheet.said(f"treatment of {name}", record.treatment)
    return may_relieve(name if said is None else said)


@rule(
    "made.tested-as-finished",
    title="No hydraulic test on record is more than 6 % above the test pressure of the part, none that it passed last "
    "is earlier than a weld or a heat treatment of it, and it was in steam after the first",
    on=MadePart,
    grade=Grade.NONCONFORMITY,
    cites=[ASME_I.at("PG-99, hydrostatic test"), COMMON_PRACTICE],
    why="a test that goes far above its pressure stretches what it is to prove, and one before the last weld says "
    "nothing of that weld; steam in a part that was never tested finds its flaw first",
    leaves_out="that a test was passed (made.hydraulic-test); the greatest pressure of which no record was made; "
    "boring of the walls after the test",
    against=(),
    limits=[
        Limit(
            "over",
            "0.06",
            "ratio",
            ASME_I.at("PG-99, hydrostatic test"),
            "share by which a test may be passed",
        ),
    ],
    edition=2,
)
def tested_as_finished(made: MadePart, sheet: Sheet) -> Judgement:
    """Every test, passed or not, against 1.06 times the test pressure; the day of the last passed against others."""
    drawn = sheet.follow(made.of)
    if not made.hydraulic_tests or not sheet.is_stated("test pressure", drawn.test_pressure):
        raise sheet.not_applicable(
            "no hydraulic test is on record, or none is asked for: made.hydraulic-test tells"
        )
    most = sheet.work(
        "p_m", most_test_pressure, k=sheet.limit("over", "k"), p_t=sheet.take("p_t", drawn.test_pressure)
    )
    judged = [
        sheet.at_most(sheet.take(f"p {name}", one.pressure), most).else_says(
            f"{name}: tested at {{found}}, {{limit}} at most"
        )
        for name, one in made.hydraulic_tests.items()
        if sheet.is_stated(f"pressure of {name}", one.pressure)
    ]
    tests = records_of(passed(made.hydraulic_tests, sheet))
    works = [*records_of(made.welds, "weld"), *records_of(made.heat_treatments)]
    if tests and works:
        last = max(day for _, day in days_of(tests, sheet))
        late = [name for name, day in days_of(works, sheet) if day > last]
        says = "nothing was welded or heated after the test"
        if late:
            says = f"{', '.join(late)}: later than the last test"
        judged.append(sheet.states(not late, says, where=made.where))
    judged.extend(_in_steam_after(made, tests, sheet))
    if not judged:
        raise sheet.not_assessed("no pressure and no day of a test is on record", made.where)
    return sheet.worst(*judged)


def _in_steam_after(made: MadePart, tests: Sequence[Record], sheet: Sheet) -> Iterator[Judgement]:
    """That nothing was measured of it in steam before the first test that it passed."""
    steamings = with_a_day(records_of(made.steamings, "steaming"), sheet)
    if tests and steamings:
        first = min(day for _, day in days_of(tests, sheet))
        early = [name for name, day in days_of(steamings, sheet) if day < first]
        says = (
            f"{', '.join(early)}: earlier than the first test that it passed"
            if early
            else "tested before it was in steam"
        )
        yield sheet.states(not early, says, where=made.where)


RULES = (relieved_as_asked, tested_as_finished)
