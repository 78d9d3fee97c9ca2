"""The order of the records of a part as made: its metal certified, then fitted; welded and heated, then looked at."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterator, Sequence

from speclint import COMMON_PRACTICE, Grade, Judgement, Sheet, rule
from speclint.specs import CylinderBlock, HeatTreatmentRecord, MadePart
from speclint_release.inputs.examinations import is_by
from speclint_release.inputs.extents import extents
from speclint_release.inputs.records import Record, days_of, passed, records_of, with_a_day
from speclint_release.inputs.stages import HEAT_TREATMENT, MACHINING, WELDING, Stage, stages
from speclint_release.inputs.treatments import is_understood, names_relief, relieves
from speclint_release.sources import DOCUMENTS, EN_13445_5


@rule(
    "made.examined-as-finished",
    title="No weld and no stress relief on record is later than the last examination that the part passed, or than one "
    "asked for after it; no weld or heat treatment is later than the last measurement of a size",
    on=MadePart,
    grade=Grade.NONCONFORMITY,
    edition=5,
    cites=[EN_13445_5.at("clause 6, inspection during fabrication"), COMMON_PRACTICE],
    why="a film taken before the weld shows no weld, one taken before the furnace none of the cracks that open in it, "
    "and a bore measured before the furnace is not the bore that comes out of it",
    leaves_out="that an examination was passed (made.examined); which weld an examination looked at, cracks that "
    "another heat treatment than a stress relief opens, and sizes that were cut after they were measured",
    against=(),
)
def examined_as_finished(made: MadePart, sheet: Sheet) -> Judgement:
    """The day of the last examination that was passed, and of each measured size, against the other records.

    Where the spec asks for an examination before or after welding or heat treatment, that of its method counts. A heat
    treatment in words that are not understood, later than the last examination, is a query: it may relieve stress.
    """
    welds = records_of(made.welds, "weld")
    heated, relieved = records_of(made.heat_treatments), records_of(_reliefs(made, sheet))
    judged = [
        *_examined(made, welds, relieved, sheet),
        *_in_time(made, sheet),
        *_measured(made, [*welds, *heated], sheet),
    ]
    if not judged:
        raise sheet.not_applicable("no weld or heat treatment stands on record beside what was looked at")
    return sheet.worst(*judged)


def _reliefs(made: MadePart, sheet: Sheet) -> dict[str, HeatTreatmentRecord]:
    """The heat treatments on record that relieve stress."""
    return {name: one for name, one in made.heat_treatments.items() if _relieves(name, one, sheet)}


def _relieves(name: str, record: HeatTreatmentRecord, sheet: Sheet) -> bool:
    """Whether a record says that it is a stress relief, or where it does not say what it is, is called by it."""
    said = sheet.said(f"treatment of {name}", record.treatment)
    return relieves(name if said is None else said)


def _examined(
    made: MadePart, welds: Sequence[Record], relieved: Sequence[Record], sheet: Sheet
) -> Iterator[Judgement]:
    """Examinations: the last that was passed is of the part as it was welded, and then relieved."""
    examined = records_of(passed(made.examinations, sheet))
    if examined and welds:
        last = max(day for _, day in days_of(examined, sheet))
        late = [name for name, day in days_of([*welds, *relieved], sheet) if day > last]
        says = (
            f"{', '.join(late)}: later than the last examination" if late else "examined after it was welded"
        )
        yield sheet.states(not late, says, where=made.where)
        yield from _not_understood(made, last, sheet)


def _not_understood(made: MadePart, last: dt.date, sheet: Sheet) -> Iterator[Judgement]:
    """Heat treatments in words of which nobody can tell what they are, after the last examination."""
    strange = {
        name: said
        for name, one in made.heat_treatments.items()
        if (said := sheet.said(f"treatment of {name}", one.treatment)) and not is_understood(said)
    }
    days = days_of([(name, made.heat_treatments[name].date) for name in strange], sheet)
    if late := [f'{name} ("{strange[name]}")' for name, day in days if day > last]:
        says = f"{', '.join(late)}: later than the last examination, and it is not understood what that is"
        yield sheet.states(False, says, where=made.where).graded(Grade.QUERY)


def _in_time(made: MadePart, sheet: Sheet) -> Iterator[Judgement]:
    """Examinations that the spec asks for before or after welding or heat treatment: the first and the last passed."""
    how = sheet.said("examination", sheet.follow(made.of).examination)
    for methods, _, words in extents(how or ""):
        examined = [
            (name, one.date)
            for name, one in passed(made.examinations, sheet).items()
            if is_by(methods, sheet.said(f"method of {name}", one.method) or name)
        ]
        for stage in stages(words) if examined else ():
            yield from _at_stage(made, " or ".join(methods), stage, examined, sheet)


def _at_stage(
    made: MadePart, called: str, stage: Stage, passed_on: Sequence[Record], sheet: Sheet
) -> Iterator[Judgement]:
    works = list(_works_of(made, stage, sheet))
    if not works:
        return
    end = min if stage.before else max
    examined, worked = (end(day for _, day in days_of(records, sheet)) for records in (passed_on, works))
    wrong = examined > worked if stage.before else examined < worked
    says = f"{called} of {examined}: {stage.words} is asked for"
    says = f"{says}, which was on {worked}" if wrong else f"{called} {stage.words}, as asked for"
    yield sheet.states(not wrong, says, where=made.where)


def _works_of(made: MadePart, stage: Stage, sheet: Sheet) -> Iterator[Record]:
    """The records of the step that a stage names: welds, heat treatments, or those alone that relieve stress."""
    if stage.step == WELDING:
        yield from records_of(made.welds, "weld")
    if stage.step == HEAT_TREATMENT:
        yield from records_of(_reliefs(made, sheet) if names_relief(stage.words) else made.heat_treatments)


def _measured(made: MadePart, works: Sequence[Record], sheet: Sheet) -> Iterator[Judgement]:
    """Sizes: each was measured last on the part as it came from the last weld and the last furnace."""
    for size, on in _last_measured(made, records_of(made.measured), sheet).items() if works else ():
        late = [name for name, day in days_of(works, sheet) if day > on]
        says = (
            f"{', '.join(late)}: later than {size} was measured" if late else f"{size} measured as finished"
        )
        yield sheet.states(not late, says, where=made.where)


def _last_measured(made: MadePart, records: Sequence[Record], sheet: Sheet) -> dict[str, dt.date]:
    """The sizes of some records by their keys, each with the last day on which it was measured."""
    last: dict[str, dt.date] = {}
    for name, day in days_of(records, sheet):
        size = sheet.said(f"dimension of {name}", made.measured[name].dimension) or name
        last[size] = max(day, last.get(size, day))
    return last


@rule(
    "made.certified-before-fitted",
    title="A part was fitted, tightened and put in steam, welded and relieved where it is welded together, measured, "
    "and examined after machining, no earlier than the day on which its metal was certified",
    on=MadePart,
    grade=Grade.NONCONFORMITY,
    edition=7,
    cites=[DOCUMENTS, COMMON_PRACTICE],
    why="a document issued after the part went in, or its plates were welded, is that of another piece, or nobody knew "
    "then of what metal it was",
    leaves_out="that there is a document (made.certificate); one that was issued anew, for which a concession says so; "
    "tests, and welds and heat treatments of castings and forgings, which whoever cast or forged them may have made "
    "before he issued the document",
    against=(),
)
def certified_before_fitted(made: MadePart, sheet: Sheet) -> Judgement:
    """The day of each record of fitting, tightening and steaming against that of the inspection document.

    Of pipes, of weldments and of blocks that are welded together also the days of their welds and stress reliefs. An
    examination after a step of machining and the last measurement of a size are a query: whoever cast or forged a part
    may have machined and measured it too.
    """
    fitted = [
        *_welded_together(made, sheet),
        *records_of(made.entries, "entry"),
        *records_of(made.tightenings, "tightening"),
        *records_of(made.steamings, "steaming"),
    ]
    examined = list(_examined_when_machined(made, sheet))
    sizes = with_a_day(records_of(made.measured), sheet)
    document = made.certificate
    stated = sheet.is_stated("day of the inspection document", document.date)
    if (
        not stated
        and (fitted or examined or sizes)
        and sheet.is_stated("inspection document", document.number)
    ):
        sheet.read("day of the inspection document", document.date)
    if not (fitted or examined or sizes) or not stated:
        raise sheet.not_applicable(
            "no inspection document has a day beside one on which the part was welded, examined, measured or fitted"
        )
    ((_, issued),) = days_of([("the inspection document", made.certificate.date)], sheet)
    last = _last_measured(made, sizes, sheet)
    measured = [(f"measurement of {size}", day) for size, day in last.items()]
    looked_at = (*days_of(examined, sheet), *measured)
    for days, grade in ((tuple(days_of(fitted, sheet)), Grade.NONCONFORMITY), (looked_at, Grade.QUERY)):
        if early := [name for name, day in days if day < issued]:
            says = f"{', '.join(early)}: earlier than its inspection document of {issued}"
            return sheet.states(False, says, where=made.certificate.date.where).graded(grade)
    says = "welded, examined, measured and fitted after its metal was certified"
    return sheet.states(True, says, where=made.certificate.date.where)


def _examined_when_machined(made: MadePart, sheet: Sheet) -> Iterator[Record]:
    """The examinations that were passed and say that they were made after a step of machining."""
    for name, one in passed(made.examinations, sheet).items():
        method, extent = (
            sheet.said(f"method of {name}", one.method),
            sheet.said(f"extent of {name}", one.extent),
        )
        said = f"{method}; {extent}"
        if any(not stage.before and stage.step >= MACHINING for stage in stages(said)):
            yield f"examination {name}", one.date


def _welded_together(made: MadePart, sheet: Sheet) -> Iterator[Record]:
    """The welds and the stress reliefs of what a works welds together of plates and tubes that it bought."""
    drawn = sheet.follow(made.of)
    built = (
        isinstance(drawn, CylinderBlock) and sheet.said("construction", drawn.construction) == "fabricated"
    )
    if built or drawn.is_one_of(("weldment", "steam-pipe")):
        yield from records_of(made.welds, "weld")
        yield from records_of(_reliefs(made, sheet))


RULES = (certified_before_fitted, examined_as_finished)
