"""The loop: every rule on every component it concerns, guarded, at its worst load case and corner."""

from __future__ import annotations

from collections.abc import Callable, Hashable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from functools import partial

from speclint.checking.check_result import Check, Outcome, fingerprint
from speclint.checking.unstated_case import UnstatedCase
from speclint.errors import Location
from speclint.rules import (
    FULL_ENUMERATION,
    Context,
    Corner,
    Grade,
    Judgement,
    NotApplicable,
    NotAssessed,
    NotCovered,
    Rule,
    RuleEnded,
    Severity,
    Sheet,
    worse_nearby,
    worst_corner,
)
from speclint.specs import CaseName, Component, LoadCase

Ending = Judgement | RuleEnded

#: How grave an ending is beside others of the same rule: what fails governs, then what could not be said.
_RANK = {NotApplicable: 0, NotAssessed: 2, NotCovered: 3}
_HOLDS, _FAILS = 1, 4
#: Endings kept of one load case: all of them where the inputs are few; of many, running a few again is cheaper.
_KNOWN = 64


@dataclass(frozen=True)
class CaseResult:
    """A rule at the governing corner of one load case, written down in full."""

    case: str
    ending: Ending
    sheet: Sheet
    corner: Corner
    governing: tuple[str, ...]


def check_component(component: Component, rules: Sequence[Rule], context: Context) -> list[Check]:
    """Apply every rule of its kind to one component, in the order of their names.

    Rules that review the other checks of the component are run after them.
    """
    concerned = [rule for rule in rules if isinstance(component, rule.on)]
    checks = [check(rule, component, context) for rule in concerned if not rule.reviews]
    remember(component.id, checks, context)
    checks += [check(rule, component, context) for rule in concerned if rule.reviews]
    return sorted(checks, key=lambda one: one.order)


def check_named(name: str, rules: Sequence[Rule], context: Context) -> list[Check]:
    """Every check of the component of that id."""
    part = context.design.specs[name]
    if not isinstance(part, Component):
        raise TypeError(f"{name} is no component")
    return check_component(part, rules, context)


def remember(component: str, checks: Iterable[Check], context: Context) -> None:
    """Keep how the checks of a component came out, for the rules that review them."""
    plain = [one for one in checks if not one.rule.reviews]
    if context.outcomes is not None:
        context.outcomes[component] = {one.rule.name: one.outcome for one in plain}
        context.assumed_by_holds[component] = tuple(
            one.rule.name for one in plain if one.assumed and one.rule.gravest is Grade.HOLD
        )


def check(
    rule: Rule, component: Component, context: Context, *, enumerate_up_to: int = FULL_ENUMERATION
) -> Check:
    """Apply one rule to one component. A rule that raises becomes a hold: it could not be run."""
    context.begin()
    try:
        results = list(_by_case(rule, component, context, enumerate_up_to))
    except Exception as problem:  # whatever a family does, the others go on and the report says so
        return _could_not_run(rule, component, problem)
    governing = max(results, key=lambda result: severity(result.ending, rule))
    missing = tuple(
        dict.fromkeys(result.ending.says for result in results if isinstance(result.ending, NotAssessed))
    )
    basis = {
        f"{result.case} {name}": value
        for result in results
        for name, value in result.sheet.record.basis.items()
    }
    records = [result.sheet.record for result in results]
    return replace(
        _concluded(rule, component, governing, basis),
        missing=missing,
        corners={result.case: dict(result.corner.met) for result in results},
        rests_on=dict(_in_plain_words(results)),
        consulted=frozenset().union(*(record.consulted for record in records)),
    )


def _in_plain_words(results: Sequence[CaseResult]) -> Iterator[tuple[str, str]]:
    """What a check rests on, each once; what differs between load cases with the name of its case."""
    for result in results:
        record = result.sheet.record
        for words, shown in record.rests_on.items():
            varies = bool(result.case) and words.rstrip("′") in record.varying
            yield (f"{words} ({result.case})" if varies else words), shown


def severity(ending: Ending, rule: Rule) -> Severity:
    """Orders endings: the more severe governs over corners and over load cases."""
    if isinstance(ending, Judgement):
        if ending.holds:
            return _HOLDS, 0, _number(ending.utilisation)
        return _FAILS, ending.grade or rule.grade, _number(ending.utilisation)
    return _RANK[type(ending)], 0, 0.0


def _number(utilisation: float | None) -> float:
    return -1.0 if utilisation is None else utilisation


def run_once(
    rule: Rule, component: Component, case: str, sides: Mapping[Hashable, bool], context: Context
) -> Ending:
    """The rule at one corner of one load case ("" where it has none), without writing anything down."""
    found = _load_case(component, case, context) if case else None  # type: ignore[arg-type]
    return _ending(rule, component, found, context, Corner(sides))


def still_conforms(found: Check, component: Component, context: Context) -> bool:
    """Whether a check that conforms would still do so in slightly other surroundings.

    In each load case the search for the worst corner sets out from the one that governed. Nothing is written down.
    """
    rule = found.rule
    context.begin()
    ranks = set()
    try:
        for name in rule.cases or ("",):
            case = _load_case(component, name, context) if name else None
            run = partial(_ending, rule, component, case, context)
            _, worst = worse_nearby(run, lambda ending: severity(ending, rule), found.corners.get(name, {}))
            ranks.add(severity(worst, rule)[0])
            if max(ranks) > _HOLDS:
                return False
    except Exception:  # a rule that raises does not conform, as for a check
        return False
    return _HOLDS in ranks


def _ending(
    rule: Rule, component: Component, case: LoadCase | NotAssessed | None, context: Context, corner: Corner
) -> Ending:
    if isinstance(case, NotAssessed):
        return _without(case, rule, component, context, corner)
    return _run(rule, component, case, context, corner)[0]


def _without(
    wanting: NotAssessed, rule: Rule, component: Component, context: Context, corner: Corner
) -> NotApplicable | NotAssessed:
    """How a rule ends in a load case that is not stated: not applicable where it says so before it asks for the case.

    Whatever else becomes of it, the case is what an assessment needs.
    """
    try:
        ending, _ = _run(rule, component, UnstatedCase(wanting), context, corner)
    except Exception:  # it is not known to be at fault: it was not given what it asks for
        return wanting
    return ending if isinstance(ending, NotApplicable) else wanting


def _run(
    rule: Rule,
    component: Component,
    case: LoadCase | None,
    context: Context,
    corner: Corner,
    *,
    record: bool = False,
) -> tuple[Ending, Sheet]:
    sheet = Sheet(rule, component, context, corner, record=record)
    try:
        ending: Ending = (
            rule.function(component, sheet) if case is None else rule.function(component, case, sheet)
        )
    except RuleEnded as ended:
        ending = ended
    if not isinstance(ending, Judgement | RuleEnded):
        raise TypeError(f"the rule returned {type(ending).__name__}, not a judgement of its sheet")
    return ending, sheet


def _by_case(
    rule: Rule, component: Component, context: Context, enumerate_up_to: int
) -> Iterator[CaseResult]:
    if not rule.cases:
        yield _governing(rule, component, None, "", context, enumerate_up_to)
        return
    for name in rule.cases:
        case = _load_case(component, name, context)
        if isinstance(case, NotAssessed):
            yield _unstated(rule, component, case, name, context, enumerate_up_to)
        else:
            yield _governing(rule, component, case, name, context, enumerate_up_to)


def _unstated(
    rule: Rule, component: Component, case: NotAssessed, name: str, context: Context, enumerate_up_to: int
) -> CaseResult:
    """A load case that is not stated: written down as wanting, unless the rule never asks for it."""
    run = partial(_ending, rule, component, case, context)
    corner, ending = Corner(), run(Corner())
    if isinstance(ending, NotApplicable):
        corner, ending = worst_corner(run, lambda found: severity(found, rule), enumerate_up_to)
    if isinstance(ending, NotApplicable):
        stand_in = UnstatedCase(case)
        ending, sheet = _run(rule, component, stand_in, context, Corner(corner.met), record=True)
        return CaseResult(name, ending, sheet, corner, ())
    sheet = Sheet(rule, component, context, Corner(), record=True)
    sheet.record.note(f"load case {name}", "not stated")
    return CaseResult(name, case, sheet, Corner(), ())


def _load_case(component: Component, name: CaseName, context: Context) -> LoadCase | NotAssessed:
    duty = context.design.duty_of(component)
    if duty is None:
        return NotAssessed(
            "duty is not stated, nor inherited from a component it is linked to", component.duty.where
        )
    case = context.design.case_of(duty, name)
    if case is None:
        where = Location(duty.where.file, duty.where.line, f"cases.{name}")
        return NotAssessed(f"load case {name} is not stated in {duty.where.file}", where)
    return case


def _governing(
    rule: Rule, component: Component, case: LoadCase | None, name: str, context: Context, enumerate_up_to: int
) -> CaseResult:
    known: dict[frozenset[Hashable], Ending] = {}

    def run(corner: Corner) -> Ending:
        ending, _ = _run(rule, component, case, context, corner)
        if len(known) < _KNOWN:
            known[_highs(corner.met)] = ending
        return ending

    def turned(sides: Mapping[Hashable, bool]) -> Ending:
        found = known.get(_highs(sides))
        return run(Corner(sides)) if found is None else found

    corner, _ = worst_corner(run, lambda found: severity(found, rule), enumerate_up_to)
    ending, sheet = _run(rule, component, case, context, Corner(corner.met), record=True)
    return CaseResult(name, ending, sheet, corner, _in_words(turned, corner, ending, sheet))


def _highs(sides: Mapping[Hashable, bool]) -> frozenset[Hashable]:
    """A corner as those of its inputs that are high: whatever else a rule meets is low."""
    return frozenset(key for key, high in sides.items() if high)


def _in_words(
    turned: Callable[[Mapping[Hashable, bool]], Ending], corner: Corner, ending: Ending, sheet: Sheet
) -> tuple[str, ...]:
    """The sides that matter: those whose turning over changes the result."""
    if not isinstance(ending, Judgement):
        return ()
    words = []
    for key, high in corner.met.items():
        other = turned({**corner.met, key: not high})
        if not isinstance(other, Judgement) or _differs(other, ending):
            words.append(f"{sheet.record.labels[key]} {'high' if high else 'low'}")
    return tuple(words)


def _differs(one: Judgement, other: Judgement) -> bool:
    return one.utilisation != other.utilisation or one.holds != other.holds


def _concluded(rule: Rule, component: Component, result: CaseResult, basis: Mapping[str, str]) -> Check:
    ending = result.ending
    outcome, grade = _outcome(ending, rule)
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
        steps=tuple(result.sheet.record.steps),
        assumed=tuple(dict.fromkeys(result.sheet.record.assumed)),
    )


def _outcome(ending: Ending, rule: Rule) -> tuple[Outcome, Grade | None]:
    if isinstance(ending, Judgement):
        return ("conforms", None) if ending.holds else ("finding", ending.grade or rule.grade)
    if isinstance(ending, NotCovered):
        return "finding", Grade.QUERY
    if isinstance(ending, NotApplicable):
        return "not applicable", None
    return "not assessed", Grade.HOLD if rule.gravest is Grade.HOLD else None


def _pointed_at(result: CaseResult, component: Component) -> Location:
    """The place to look at: what the ending names, else among the values taken from the component's own file the one
    judged, or held against; else the first whose side governs; else the first."""
    ending, record = result.ending, result.sheet.record
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


def _could_not_run(rule: Rule, component: Component, problem: Exception) -> Check:
    says = f"could not be run (family {rule.family}): {type(problem).__name__}: {problem}"
    return Check(
        component=component.id,
        kind=component.kind,
        rule=rule,
        outcome="finding",
        says=says,
        where=component.where,
        fingerprint=fingerprint(rule, component.id, {"error": says}),
        grade=Grade.HOLD,
        could_not_run=f"{type(problem).__name__}: {problem}",
    )
