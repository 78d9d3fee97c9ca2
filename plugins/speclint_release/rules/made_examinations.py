"""The record of a part as made: examinations, welds and heat treatments."""

from __future__ import annotations

from collections.abc import Container, Iterable, Iterator, Mapping
from typing import TypeVar

from speclint import COMMON_PRACTICE, Grade, Judgement, Sheet, rule
from speclint.facts import is_welded, own_steps
from speclint.specs import Component, MadePart, NotStated, ProcessRecord, Stated
from speclint_release.inputs.clauses import names_nobody
from speclint_release.inputs.examinations import methods_missing, no_examination
from speclint_release.inputs.known_words import FORMS, says_strange
from speclint_release.inputs.marks import marks_in_words
from speclint_release.inputs.outcomes import as_examined
from speclint_release.inputs.recorded_extents import (
    Recorded,
    not_shown,
    not_understood,
    out_of_stage,
    recorded,
    too_little,
)
from speclint_release.inputs.records import no_record
from speclint_release.inputs.repairs import made_good
from speclint_release.inputs.treatments import (
    AFTER_WELDING,
    OF_SURFACE,
    is_of_a_part,
    is_understood,
    treatments_missing,
)
from speclint_release.sources import EN_13445_5

T = TypeVar("T", bound=ProcessRecord)

#: Steps after which the furnace chart is kept.
_TREATMENTS = ("stress relieve", "normalize", "harden", "temper")
#: Kinds that state the steps of their making.
_WITH_STEPS = ("cylinder-block", "weldment", "casting", "cylinder-liner", "valve-seat")


@rule(
    "made.examined",
    title="What the spec of a part asks of examination, welds and heat treatment is on record, to the extent and at "
    "the stage asked: a record without an extent counts as all, save where all is asked in words",
    on=MadePart,
    grade=Grade.NONCONFORMITY,
    gravest=Grade.HOLD,
    cites=[EN_13445_5.at("clause 6, inspection during fabrication"), COMMON_PRACTICE],
    why="what is not on record cannot be told from what was not done",
    leaves_out="examinations by sight, size, load or hardness; whether procedure and welder were qualified for the "
    "joint, and whether an examination covered what it should where no words limit it: the competent person or body "
    "that the local code names decides",
    against=(),
    edition=13,
)
def examined(made: MadePart, sheet: Sheet) -> Judgement:
    """What is missing is listed; an examination, a weld or a heat treatment that failed is a hold.

    An examination that failed is none where the record names a repair, as a weld that is called one or in the words of
    an examination, and on a later day one by the same methods, of the same or of what was repaired, was passed.

    A hold is also an examination of a part of what the spec asks for: its words, or those of its extent, say one weld
    in ten, the front half, or not accessible. One made before a step of the work, where the spec asks for it after
    that, is no such examination. Where the spec asks in so many words that all is examined, a record says so too: one
    without an extent, or with one such as "welds 1 to 3" or "as agreed", may be of a part. Elsewhere such a record
    counts as of all. What a record says of repairs, of flaws that were accepted and of the outcome limits nothing. A
    heat treatment of a part of the piece is none of the piece, save of a pipe. What is not on record is a query until
    the drawings are released, and a nonconformity from then on.
    Every word of an extent must be known, from the drawing or from what drawings and records say; else it is a query.
    Where the spec asks for non-destructive testing and names no method, that of any method counts.
    """
    drawn = sheet.follow(made.of)
    settled = made_good(made, sheet)
    if failed := list(_failed(made, settled, sheet)):
        return sheet.states(False, f"failed: {', '.join(failed)}", where=made.where).graded(Grade.HOLD)
    how, made_by = _examinations(made, drawn, sheet)
    if short := too_little(how, made_by):
        says = f"examined in part: {', '.join(short)}, and its spec asks for more"
        return sheet.states(False, says, where=made.where).graded(Grade.HOLD)
    asked = list(_records_asked(made, drawn, sheet))
    if not asked:
        raise sheet.not_applicable("its spec asks for no examination, no weld and no heat treatment")
    wrong, unclear = out_of_stage(how, made_by)
    if wrong:
        return sheet.states(False, f"not when it is asked for: {', '.join(wrong)}", where=made.where)
    missing = [what for what, there in asked if not there]
    missing += [*not_shown(how, made_by), *unclear]
    if missing:
        return no_record(f"not on record: {', '.join(missing)}", made, Grade.NONCONFORMITY, sheet)
    if doubtful := not_understood(how, made_by):
        says = f"{'; '.join(_in_doubt(one) for one in doubtful)}: nobody can tell how much was examined. Write {FORMS}"
        says += ", welds 1 to 3, after turning, or the words of the drawing"
        return sheet.states(False, says, where=made.where).graded(Grade.QUERY)
    said = [f"on record: {', '.join(what for what, _ in asked)}", *settled.values()]
    return sheet.states(True, "; ".join(said))


def _in_doubt(record: Recorded) -> str:
    """What of a record is not understood, or may leave some out."""
    if record.strange:
        return f'in "{record.said}" {says_strange(record.strange)}'
    return f'"{record.said}" may leave some out'


def _failed(made: MadePart, settled: Container[str], sheet: Sheet) -> Iterator[str]:
    """The welds, heat treatments, entries and examinations that failed, save the examinations that are settled."""
    examinations = {name: one for name, one in made.examinations.items() if name not in settled}
    for records in (examinations, made.welds, made.heat_treatments, made.entries):
        for name, one in records.items():
            if sheet.said(f"result of {name}", one.result) == "failed":
                yield name


def _examinations(made: MadePart, drawn: Component, sheet: Sheet) -> tuple[str, list[Recorded]]:
    """What the spec asks to be examined, if anything, and what each record with a result says that it is of."""
    how = sheet.said("examination", drawn.examination)
    if how is None or no_examination(how):
        return "", []
    records = [
        (_says(name, one.method, sheet), sheet.said(f"extent of {name}", one.extent) or "")
        for name, one in _done(made.examinations, sheet)
    ]
    how = marks_in_words(how)
    return how, recorded(how, records, drawn.kind)


def _records_asked(made: MadePart, drawn: Component, sheet: Sheet) -> Iterator[tuple[str, bool]]:
    """Each record that the spec asks for, and whether it is there; one without a result is none."""
    if sheet.is_stated("examination", drawn.examination):
        how = sheet.read("examination", drawn.examination)
        if not no_examination(how):
            said = [
                as_examined(_says(name, one.method, sheet)) for name, one in _done(made.examinations, sheet)
            ]
            missing = methods_missing(how, said)
            by = f", by {' and '.join(missing)}" if said and missing else ""
            yield f"examination ({how}){by}", bool(said) and not missing
    if is_welded(drawn, sheet):
        known = [
            _is_named(f"procedure of {name}", one.procedure, sheet)
            and _is_named(f"welder of {name}", one.welder, sheet)
            for name, one in _done(made.welds, sheet)
        ]
        whole = len(known) == len(made.welds) and all(known)
        yield "welds, each with its procedure and its welder", bool(known) and whole
    if treatments := list(_treatments_asked(drawn, sheet)):
        records = list(_done(made.heat_treatments, sheet))
        charts = [sheet.is_stated(f"chart of {name}", one.chart) for name, one in records]
        said = [_says(name, one.treatment, sheet) for name, one in records]
        of_a_part = [] if drawn.is_one_of(("steam-pipe",)) else _of_a_part(said, drawn, sheet)
        left = treatments_missing(treatments, [one for one in said if one not in of_a_part])
        strange = [
            f"{one}, which is not understood" for one in said if not (is_understood(one) or one in of_a_part)
        ]
        other = " and ".join([*of_a_part, *strange])
        beside = f", on record is {other}" if left and other else ""
        yield f"{(left or treatments)[0]}, with its chart{beside}", bool(charts) and all(charts) and not left


def _of_a_part(said: Iterable[str], drawn: Component, sheet: Sheet) -> list[str]:
    """The heat treatments whose words say that they were of a part of the piece alone.

    Of a pipe each weld is relieved where it is, and that is all of them.
    """
    title = sheet.said("title of its spec", drawn.title)
    return [one for one in said if is_of_a_part(one, f"{drawn.kind} {title or ''}")]


def _treatments_asked(drawn: Component, sheet: Sheet) -> Iterator[str]:
    """The heat treatments among the steps of the making, that which follows its welding, and that of its surface."""
    if drawn.is_one_of(_WITH_STEPS):
        for one in own_steps(drawn, sheet):  # type: ignore[arg-type]
            if one.word in _TREATMENTS:
                yield one.word
    if sheet.is_stated("heat treatment", drawn.welding.heat_treatment):
        yield from AFTER_WELDING.get(sheet.read("heat treatment", drawn.welding.heat_treatment), ())
    surface = sheet.said("surface", drawn.surface)
    if surface in OF_SURFACE:
        yield OF_SURFACE[surface]


def _done(records: Mapping[str, T], sheet: Sheet) -> Iterator[tuple[str, T]]:
    """The records that have a result: what has none may still be to do."""
    for name, one in records.items():
        if sheet.is_stated(f"result of {name}", one.result):
            yield name, one


def _says(name: str, word: Stated[str] | NotStated, sheet: Sheet) -> str:
    """What a record says that it is of, or where it does not the name by which it is called."""
    said = sheet.said(f"what {name} is", word)
    return name if said is None else said


def _is_named(what: str, word: Stated[str] | NotStated, sheet: Sheet) -> bool:
    return sheet.is_stated(what, word) and not names_nobody(sheet.read(what, word))


RULES = (examined,)
