"""Who examined and tested a part as made is not who made it."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import COMMON_PRACTICE, Grade, Judgement, Sheet, rule
from speclint.facts import names_another, names_no_person, names_only_a_role
from speclint.specs import ExaminationRecord, HydraulicTestRecord, MadePart, WeldRecord
from speclint_release.sources import EN_13445_5


@rule(
    "made.independent-examination",
    title="A hydraulic test on record had a witness beside who made it, and each examination was made by somebody "
    "who is named, and who did not weld the part",
    on=MadePart,
    edition=6,
    grade=Grade.NONCONFORMITY,
    cites=[
        EN_13445_5.at("clauses 6 and 10, inspection during fabrication and final assessment"),
        COMMON_PRACTICE,
    ],
    why="a welder who examines his own weld, and a tester whom nobody watched, find what they hope to find",
    leaves_out="whether examiner and witness are qualified, and whether the witness must be of the competent body: the "
    "local code decides; a welder whom the record of a weld does not name (made.examined)",
    against=(),
)
def independent_examination(made: MadePart, sheet: Sheet) -> Judgement:
    """Each test and each examination that has a result; what is wrong is listed."""
    tests = {name: one for name, one in made.hydraulic_tests.items() if sheet.is_stated(name, one.result)}
    examined = {name: one for name, one in made.examinations.items() if sheet.is_stated(name, one.result)}
    if not tests and not examined:
        raise sheet.not_applicable("no hydraulic test and no examination is on record")
    wrong = [
        *(says for name, one in tests.items() for says in _of_test(name, one, sheet)),
        *(says for name, one in examined.items() for says in _of_examination(name, one, made, sheet)),
    ]
    says = "; ".join(wrong) if wrong else "each is by somebody who is named, and looked at by another"
    return sheet.states(not wrong, says, where=made.where)


def _of_test(name: str, record: HydraulicTestRecord, sheet: Sheet) -> Iterator[str]:
    by = sheet.said(f"who made {name}", record.by)
    witness = sheet.said(f"witness of {name}", record.witnessed_by)
    if by is None or names_only_a_role(by):
        yield f"{name} names nobody who made it"
    if witness is None or names_only_a_role(witness):
        yield f"{name} names no witness"
    elif by is not None and not names_another(witness, by):
        yield f"{name} was made and witnessed by {by}"


def _of_examination(name: str, record: ExaminationRecord, made: MadePart, sheet: Sheet) -> Iterator[str]:
    by = sheet.said(f"who made {name}", record.by)
    if by is None or names_no_person(by):
        yield f"{name} names nobody who made it"
        return
    for weld, one in made.welds.items():
        welder = _welder(weld, one, sheet)
        if welder is not None and not names_another(by, welder):
            yield f"{name} was made by {by}, who welded {weld}"


def _welder(weld: str, record: WeldRecord, sheet: Sheet) -> str | None:
    """The welder of a weld by name; where the record has only his mark, whoever is said to have made the weld."""
    welder = sheet.said(f"welder of {weld}", record.welder)
    if welder is not None and not names_no_person(welder):
        return welder
    return sheet.said(f"who made {weld}", record.by)


RULES = (independent_examination,)
