"""From the results of the load cases to what is said of a check."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence

from speclint.checking.case_result import CaseResult
from speclint.checking.check_result import Check, Outcome, fingerprint
from speclint.checking.severity import Ending, severity, told
from speclint.errors import Location, in_words
from speclint.rules import Grade, Judgement, NotApplicable, NotAssessed, NotCovered, Rule
from speclint.specs import Component


def in_plain_words(results: Sequence[CaseResult]) -> Iterator[tuple[str, str]]:
    """What a check rests on, each once; what differs between load cases with the name of its case."""
    for result in results:
        record = result.sheet.record
        for words, shown in record.rests_on.items():
            varies = bool(result.case) and words.rstrip("′") in record.varying
            yield (f"{words} ({result.case})" if varies else words), shown


def by_severity(results: Sequence[CaseResult], rule: Rule) -> list[CaseResult]:
    """The gravest first."""
    return sorted(results, key=lambda result: severity(result.ending, rule), reverse=True)


def missing_of(ending: Ending) -> Iterator[NotAssessed]:
    """What an assessment needs, of the rule as a whole or of items that it goes over."""
    ended = ending.ended if isinstance(ending, Judgement) else (ending, *ending.beside)
    return (why for why in ended if isinstance(why, NotAssessed))


def each_once(failing: Iterable[tuple[object, Judgement]]) -> tuple[Judgement, ...]:
    """Each comparison once, at its worst load case, known by its place and by what is compared with what."""
    found: dict[object, Judgement] = {}
    for place, part in failing:
        names = (part.found.name, part.limit.name if part.limit else "") if part.found else part.says
        found.setdefault((place, names), part)
    return tuple(found.values())


def unsaid(concluded: Check) -> str:
    """Why it cannot be said what is wrong; "" where it can: the sentence is the family's, and asks for numbers."""
    try:
        _ = concluded.actual
    except (KeyError, ValueError, IndexError, AttributeError) as problem:
        return f"its sentence on what is wrong asks for what this comparison has not: {in_words(problem)}"
    return ""


def concluded_from(rule: Rule, component: Component, result: CaseResult, basis: Mapping[str, str]) -> Check:
    """The check of a rule on a component by the result that governs."""
    ending = told(result.ending)
    outcome, grade = outcome_of(ending, rule)
    return Check(
        component=component.id,
        kind=component.kind,
        rule=rule,
        outcome=outcome,
        says=ending.says,
        where=_pointed_at(result, component),
        fingerprint=fingerprint(rule, component.id, basis),
        grade=grade,
        judgement=ending if isinstance(ending, Judgement) else None,
        case=result.case,
        governing=result.governing,
        at_worst=result.at_worst,
        steps=tuple(result.sheet.record.steps),
    )


def outcome_of(ending: Ending, rule: Rule) -> tuple[Outcome, Grade | None]:
    """The outcome of an ending, and its grade where it stands in the way."""
    if isinstance(ending, Judgement):
        return ("conforms", None) if ending.holds else ("finding", ending.grade or rule.grade)
    if isinstance(ending, NotCovered):
        # of a safety rule nobody has then shown that the part is safe: a competent person must
        return "finding", Grade.HOLD if rule.gravest is Grade.HOLD else Grade.QUERY
    if isinstance(ending, NotApplicable):
        return "not applicable", None
    return "not assessed", Grade.HOLD if rule.gravest is Grade.HOLD else None


def _pointed_at(result: CaseResult, component: Component) -> Location:
    """The place to look at: what the ending names, else among the values taken from the component's own file the one
    judged, or held against; else the first whose side governs; else the first."""
    ending, record = told(result.ending), result.sheet.record
    if ending.where.file:
        return ending.where
    taken = [step for step in record.steps if step.kind in ("taken", "counted")]
    own = [step for step in taken if step.where.file == component.where.file]
    judged = (ending.found, ending.limit) if isinstance(ending, Judgement) else ()
    named = (
        step for one in judged if one for step in own if (step.name, step.value) == (one.name, one.value)
    )
    sides = tuple(words.rsplit(" ", 1)[0] for words in result.governing)
    governing = (step for step in own if step.name in sides)
    return next((step.where for step in (*named, *governing, *own)), component.where)


def could_not_run(rule: Rule, component: Component, why: str) -> Check:
    """The hold on a component of which a rule could not be run."""
    says = f"could not be run (family {rule.family}): {why}"
    return Check(
        component=component.id,
        kind=component.kind,
        rule=rule,
        outcome="finding",
        says=says,
        where=component.where,
        fingerprint=fingerprint(rule, component.id, {"error": says}),
        grade=Grade.HOLD,
        could_not_run=why,
    )
