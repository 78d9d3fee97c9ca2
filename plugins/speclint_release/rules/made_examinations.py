"""The record of a part as made: examinations, welds and heat treatments."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from speclint import COMMON_PRACTICE, Grade, Judgement, Sheet, rule
from speclint.facts import own_steps
from speclint.specs import Component, MadePart, NotStated, Stated
from speclint_release.inputs import (
    AFTER_WELDING,
    is_welded,
    methods_missing,
    no_examination,
    no_record,
    treatments_missing,
)
from speclint_release.sources import EN_13445_5

#: Steps after which the furnace chart is kept.
_TREATMENTS = ("stress relieve", "normalize", "harden", "temper")
#: Kinds that state the steps of their making.
_WITH_STEPS = ("cylinder-block", "weldment", "casting", "cylinder-liner", "valve-seat")


@rule(
    "made.examined",
    title="The examination and the heat treatments that the spec of a part asks for are on record, and its welds are",
    on=MadePart,
    grade=Grade.NONCONFORMITY,
    gravest=Grade.HOLD,
    cites=[EN_13445_5.at("clause 6, inspection during fabrication"), COMMON_PRACTICE],
    why="what is not on record cannot be told from what was not done",
    leaves_out="whether procedure and welder were qualified for the joint, and whether the examination covered what it "
    "should: the competent person or body that the local code names decides",
    against=(),
    edition=5,
)
def examined(made: MadePart, sheet: Sheet) -> Judgement:
    """What is missing is listed; an examination, a weld or a heat treatment that failed is a hold."""
    drawn = sheet.follow(made.of)
    failed = list(_failed(made, sheet))
    if failed:
        return sheet.states(False, f"failed: {', '.join(failed)}", where=made.where).graded(Grade.HOLD)
    asked = list(_records_asked(made, drawn, sheet))
    if not asked:
        raise sheet.not_applicable("its spec asks for no examination, no weld and no heat treatment")
    missing = [what for what, there in asked if not there]
    if missing:
        return no_record(f"not on record: {', '.join(missing)}", made, Grade.NONCONFORMITY, sheet)
    return sheet.states(True, f"on record: {', '.join(what for what, _ in asked)}")


def _failed(made: MadePart, sheet: Sheet) -> Iterator[str]:
    """The examinations, welds, heat treatments and entries whose result is that they failed."""
    for records in (made.examinations, made.welds, made.heat_treatments, made.entries):
        for name, one in records.items():
            if sheet.said(f"result of {name}", one.result) == "failed":
                yield name


def _records_asked(made: MadePart, drawn: Component, sheet: Sheet) -> Iterator[tuple[str, bool]]:
    """Each record that the spec asks for, and whether it is there."""
    if sheet.is_stated("examination", drawn.examination):
        how = sheet.read("examination", drawn.examination)
        if not no_examination(how):
            passed = [one for name, one in made.examinations.items() if sheet.is_stated(name, one.result)]
            said = _texts("method", [one.method for one in passed], sheet)
            missing = methods_missing(how, said) if said else []
            by = f", by {' and '.join(missing)}" if missing else ""
            yield f"examination ({how}){by}", bool(passed) and not missing
    if is_welded(drawn, sheet):
        known = [
            sheet.is_stated(f"procedure of {name}", one.procedure)
            and sheet.is_stated(f"welder of {name}", one.welder)
            for name, one in made.welds.items()
        ]
        yield "welds, each with its procedure and its welder", bool(known) and all(known)
    if treatments := list(_treatments_asked(drawn, sheet)):
        records = made.heat_treatments
        charts = [sheet.is_stated(f"chart of {name}", one.chart) for name, one in records.items()]
        said = _texts("treatment", [one.treatment for one in records.values()], sheet)
        left = treatments_missing(treatments, [*said, *[""] * (len(records) - len(said))])
        yield f"{(left or treatments)[0]}, with its chart", bool(charts) and all(charts) and not left


def _treatments_asked(drawn: Component, sheet: Sheet) -> Iterator[str]:
    """The heat treatments among the steps of the making, and that which the spec says follows its welding."""
    if drawn.is_one_of(_WITH_STEPS):
        for one in own_steps(drawn, sheet):  # type: ignore[arg-type]
            if one.word in _TREATMENTS:
                yield one.word
    if sheet.is_stated("heat treatment", drawn.welding.heat_treatment):
        yield from AFTER_WELDING.get(sheet.read("heat treatment", drawn.welding.heat_treatment), ())


def _texts(what: str, words: Iterable[Stated[str] | NotStated], sheet: Sheet) -> list[str]:
    return [sheet.read(what, word) for word in words if sheet.is_stated(what, word)]


RULES = (examined,)
