"""Known faults of the old design: what proves that each is mended, on every part that it concerns."""

from __future__ import annotations

import datetime as dt
from typing import NamedTuple

from speclint import COMMON_PRACTICE, Grade, Judgement, Sheet, rule
from speclint.specs import Accepted, ByCalculation, ByTest, Component, KnownFault, NotStated, Stated

#: What a fault must say of itself before anyone can tell whether it is mended.
_ASKED = ("went_wrong", "evidence", "evidence_at", "consequence", "grade", "change")


class AskedCheck(NamedTuple):
    """A check that is to prove a fault mended: its name in the spec, the rule's name and the part."""

    name: str
    rule: Stated[str] | NotStated
    part: Component


@rule(
    "fault.described",
    title="A known fault says what went wrong, how it is known, what followed, how grave it is, what is changed and on "
    "which parts",
    on=KnownFault,
    grade=Grade.NONCONFORMITY,
    cites=[COMMON_PRACTICE],
    why="a fault of which nobody wrote down the cause is built into the next engine again",
    leaves_out="whether the account is true, and whether the change meets the cause",
    against=(),
)
def described(fault: KnownFault, sheet: Sheet) -> Judgement:
    """Lists what is missing; a fault that is accepted has no change to state."""
    accepted = sheet.is_stated("accepted grounds", fault.accepted.grounds)
    asked = [name for name in _ASKED if not (accepted and name == "change")]
    missing = [name for name in asked if not sheet.is_stated(name, getattr(fault, name))]
    parts = [sheet.follow(link).id for link in fault.on]
    if not parts:
        missing.append("on")
    if missing:
        return sheet.states(False, f"not stated: {', '.join(missing)}", where=fault.where)
    return sheet.states(True, f"described, on {', '.join(parts)}")


@rule(
    "fault.proved-by-checks",
    title="A known fault of grade hold is proved mended by checks that conform, on every part that it concerns",
    on=KnownFault,
    grade=Grade.HOLD,
    cites=[COMMON_PRACTICE],
    why="what hurt someone once hurts again where nobody showed by figures that it cannot",
    leaves_out="whether the checks named are those that the fault calls for: a competent person judges that, and may "
    "accept the fault by a concession; what the checks leave out themselves",
    against=(),
    reviews=True,
)
def proved_by_checks(fault: KnownFault, sheet: Sheet) -> Judgement:
    """Each check is made, at its own governing corner; a part that no check is made on is told."""
    if sheet.read("grade", fault.grade) != "hold":
        raise sheet.not_applicable("it is of no hold grade: fault.settled judges it")
    if not fault.by_checks:
        return sheet.states(
            False, f"by_checks names no check{_said_instead(fault, sheet)}", where=fault.where
        )
    return _all_conform(fault, sheet)


@rule(
    "fault.settled",
    title="A known fault below hold grade is proved mended by checks that conform on every part, by a calculation or "
    "by a test that was passed, or is accepted with a name, a date and grounds",
    on=KnownFault,
    grade=Grade.NONCONFORMITY,
    cites=[COMMON_PRACTICE],
    why="an open fault that nobody decided on is found again on the road",
    leaves_out="whether calculation, test or grounds are right; a test that is still to be done is asked for by "
    "fault.tests-made",
    against=(),
    reviews=True,
)
def settled(fault: KnownFault, sheet: Sheet) -> Judgement:
    """A check that fails outweighs whatever else is said to prove it."""
    if sheet.read("grade", fault.grade) == "hold":
        raise sheet.not_applicable("it is of hold grade: fault.proved-by-checks judges it")
    if fault.by_checks:
        return _all_conform(fault, sheet)
    proofs = [
        *(name for name, one in fault.by_calculations.items() if _is_made(one, sheet)),
        *(name for name, one in fault.by_tests.items() if _is_passed(one, sheet)),
    ]
    if proofs:
        return sheet.states(True, f"proved by {', '.join(proofs)}")
    if _is_accepted(fault.accepted, sheet):
        return sheet.states(True, f"accepted by {sheet.read('accepted by', fault.accepted.by)}")
    if waits := [name for name, one in fault.by_tests.items() if _is_to_be_done(one, sheet)]:
        raise sheet.not_applicable(f"it waits for {', '.join(waits)}: fault.tests-made asks for that")
    said = f"neither proved nor accepted{_said_instead(fault, sheet)}"
    return sheet.states(False, said, where=fault.where)


@rule(
    "fault.tests-made",
    title="Every test that is to prove a known fault mended was made and passed",
    on=KnownFault,
    grade=Grade.NONCONFORMITY,
    gravest=Grade.HOLD,
    cites=[COMMON_PRACTICE],
    why="a test that is put off until the engine runs is made by those who ride on it",
    leaves_out="how the test was made, and whether it was the right one: a competent person judges that",
    against=(),
)
def tests_made(fault: KnownFault, sheet: Sheet) -> Judgement:
    """A test that failed is as grave as the fault; one still to be done is a query until the drawings are released."""
    if not fault.by_tests:
        raise sheet.not_applicable("no test is to prove it")
    hold = sheet.read("grade", fault.grade) == "hold"
    return sheet.each(fault.by_tests.items(), lambda item: _tested(*item, hold, sheet))


@rule(
    "fault.on-its-like",
    title="A known fault that concerns a part concerns every part that is like it, or the checks that prove it mended "
    "conform there too",
    on=KnownFault,
    grade=Grade.NONCONFORMITY,
    cites=[COMMON_PRACTICE],
    why="a fault that is mended on the left side alone stays on the right",
    leaves_out="parts that do the same and of which no spec says that they are like the other, or its mirror",
    against=(),
    reviews=True,
)
def on_its_like(fault: KnownFault, sheet: Sheet) -> Judgement:
    """Every part alike that the fault does not name, with the checks that are made on those that it names."""
    said_to_be = fault.by_checks or fault.by_calculations or fault.by_tests
    if not said_to_be and not sheet.is_stated("accepted by", fault.accepted.by):
        raise sheet.not_applicable("nothing is named that proves it on any part")
    parts = [sheet.follow(link) for link in fault.on]
    named = {part.id for part in parts}
    alike = {one.id for part in parts for one in sheet.parts_alike(part)} - named
    if not alike:
        raise sheet.not_applicable("no other part is like one that it concerns")
    asked = [
        AskedCheck(one.name, one.rule, other)
        for one in _asked_checks(fault, parts, sheet)
        for other in sheet.parts_alike(one.part)
        if other.id in alike
    ]
    left = alike - {one.part.id for one in asked}
    judged = [sheet.each(asked, lambda one: _conforms(one, sheet))] if asked else []
    if left:
        said = f"neither on nor a check names {', '.join(sorted(left))}, alike to a part that it concerns"
        judged.append(sheet.states(False, said, where=fault.where))
    return sheet.worst(*judged)


def _asked_checks(fault: KnownFault, parts: list[Component], sheet: Sheet) -> list[AskedCheck]:
    """Each check that is named, on the part that it names or on each that the fault concerns."""
    return [
        AskedCheck(name, one.rule, part)
        for name, one in fault.by_checks.items()
        for part in (parts if isinstance(one.of, NotStated) else [sheet.follow(one.of)])
    ]


def _all_conform(fault: KnownFault, sheet: Sheet) -> Judgement:
    """Whether every check that is named conforms, and one is made on every part that the fault concerns."""
    parts = [sheet.follow(link) for link in fault.on]
    if not parts:
        raise sheet.not_assessed("on names no part that it concerns", fault.where)
    asked = _asked_checks(fault, parts, sheet)
    judged = sheet.each(asked, lambda one: _conforms(one, sheet))
    left = [part.id for part in parts if part.id not in {one.part.id for one in asked}]
    if not left:
        return judged
    said = f"by_checks names no check on {', '.join(left)}"
    return sheet.worst(judged, sheet.states(False, said, where=fault.where))


def _conforms(asked: AskedCheck, sheet: Sheet) -> Judgement:
    found = sheet.other_check(asked.part, asked.rule)
    if found.outcome == "conforms":
        return sheet.states(True, f"{found.rule} on {found.part} {found.briefly}")
    says = f"{found.rule} on {found.part}: {found.briefly}"
    return sheet.states(False, f"{says}: {found.says}" if found.says else says, where=asked.rule.where)


def _tested(name: str, one: ByTest, hold: bool, sheet: Sheet) -> Judgement:
    if not sheet.is_stated(f"what {name} is", one.what):
        return sheet.states(False, f"{name}: what is not stated", where=one.where)
    sheet.read(f"what {name} is", one.what)
    result = sheet.read(f"result of {name}", one.result)
    if result == "passed":
        recorded = _is_passed(one, sheet)
        said = f"{name}: passed" if recorded else f"{name}: passed, with no record or no date"
        return sheet.states(recorded, said, where=one.where)
    if result == "failed":
        judged = sheet.states(False, f"{name}: failed", where=one.where)
        return judged.graded(Grade.HOLD) if hold else judged
    judged = sheet.states(False, f"{name}: still to be done", where=one.where)
    return judged if sheet.setting("stage") == "released" else judged.graded(Grade.QUERY)


def _is_made(one: ByCalculation, sheet: Sheet) -> bool:
    stated = sheet.is_stated("document", one.document) and sheet.is_stated("by", one.by)
    return stated and _is_day("date", one.date, sheet)


def _is_passed(one: ByTest, sheet: Sheet) -> bool:
    if not sheet.is_stated("result", one.result) or sheet.read("result", one.result) != "passed":
        return False
    return sheet.is_stated("record", one.record) and _is_day("date", one.date, sheet)


def _is_to_be_done(one: ByTest, sheet: Sheet) -> bool:
    return sheet.said("result", one.result) == "to be done"


def _is_accepted(one: Accepted, sheet: Sheet) -> bool:
    named = sheet.is_stated("accepted by", one.by) and sheet.is_stated("accepted grounds", one.grounds)
    return named and _is_day("accepted date", one.date, sheet)


def _is_day(name: str, value: Stated[str] | NotStated, sheet: Sheet) -> bool:
    if not sheet.is_stated(name, value):
        return False
    try:
        dt.date.fromisoformat(sheet.read(name, value))
    except ValueError:
        return False
    return True


def _said_instead(fault: KnownFault, sheet: Sheet) -> str:
    """What a fault names in place of a proof, for the finding."""
    said = [
        *(f"the calculation {name}" for name in fault.by_calculations),
        *(f"the test {name}" for name in fault.by_tests),
    ]
    if sheet.is_stated("accepted by", fault.accepted.by):
        said.append(f"the acceptance by {sheet.read('accepted by', fault.accepted.by)}")
    return f"; {', '.join(said)} is not enough" if said else ""


RULES = (described, proved_by_checks, settled, tests_made, on_its_like)
