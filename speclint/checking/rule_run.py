"""The loop: every rule on every component it concerns, guarded, at its worst load case and corner."""

from __future__ import annotations

from collections.abc import Callable, Collection, Hashable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from functools import partial
from typing import Literal, NoReturn

from speclint.checking.check_result import Check, Outcome, fingerprint
from speclint.checking.corner_runs import CornerRun, CornerRuns, Highs, Sides, highs
from speclint.checking.failing_corner import failing_corner
from speclint.checking.parts_alike import digest_of
from speclint.checking.proof import Proof, Ranges
from speclint.checking.severity import HOLDS, Ending, severity, told
from speclint.checking.time_limit import Overrun, TimeLimit
from speclint.checking.unstated_case import UnstatedCase
from speclint.checking.worked_case import worked_case
from speclint.checking.worked_once import CaseWorked, Renamed, Worked, WorkedOnce
from speclint.checking.worst_corner import Effort, find_worst
from speclint.errors import Location, in_words, raised_at
from speclint.families import Guard
from speclint.rules import (
    Context,
    Corner,
    Grade,
    Judgement,
    KnownRanges,
    NotApplicable,
    NotAssessed,
    NotCovered,
    NotEnclosed,
    OverBox,
    Record,
    Rule,
    RuleEnded,
    Sheet,
    Unstated,
    over_box,
)
from speclint.specs import CaseName, Component, Link, LoadCase

#: A check that a part alike shares, and how it is renamed.
Known = tuple[Worked, Renamed] | None
_PLAIN = Effort()
#: Of a load case that is not stated no corner is run.
_NOTHING_RUN = Proof("nothing is toleranced", True, 0)


@dataclass(frozen=True)
class CaseResult:
    """A rule at the governing corner of one load case, written down in full.

    ``failing`` are its comparisons that fail, each at its own worst corner, the gravest first, with its place among
    all that the rule made.
    """

    case: str
    ending: Ending
    sheet: Sheet
    corner: Corner
    governing: tuple[str, ...]
    proof: Proof
    failing: tuple[tuple[object, Judgement], ...] = ()
    also: tuple[Record, ...] = ()
    worked: CaseWorked | None = None
    at_worst: tuple[str, ...] = ()

    @property
    def basis(self) -> dict[str, str]:
        """What it rests on, the inputs of what fails elsewhere among it."""
        found: dict[str, str] = {}
        for record in (*self.also, self.sheet.record):
            found.update(record.basis)
        return found


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


def check(rule: Rule, component: Component, context: Context, *, effort: Effort = _PLAIN) -> Check:
    """Apply one rule to one component. A rule that raises becomes a hold: it could not be run."""
    context.begin()
    shared = _shared(context, effort)
    known = shared.known(rule, component.id, context) if shared else None
    try:
        with Guard(rule.family), _in_time(rule, component, context), context.asking() as asked:
            asked.specs.add(component.id)
            if known:
                asked.add(known[1].consulted(known[0].consulted))
            results = list(_by_case(rule, component, context, effort, known))
            asked.opened |= context.asked.opened
    except KeyboardInterrupt:
        raise
    except BaseException as problem:  # whatever a family does, the others go on and the report says so
        return could_not_run(rule, component, _raised(problem, rule, context))
    if shared and not known:  # of one that is shared only some corners were run
        cases = {one.case: one.worked for one in results if one.worked}
        shared.keep(rule, component.id, cases, asked, context)
    governing = max(results, key=lambda result: severity(result.ending, rule))
    basis = {f"{result.case} {name}": value for result in results for name, value in result.basis.items()}
    records = [result.sheet.record for result in results]
    concluded = _concluded(rule, component, governing, basis)
    if fault := _unsaid(concluded):
        return could_not_run(rule, component, fault)
    written = [(one.case, record) for one in results for record in (one.sheet.record, *one.also)]
    in_the_way = concluded.stands_in_the_way is not None or concluded.outcome == "not assessed"
    wanting = [why for result in results for why in _missing(result.ending)]
    return replace(
        concluded,
        alike=digest_of(concluded, written) if in_the_way else "",
        missing=tuple(dict.fromkeys(why.says for why in wanting)),
        failing=_each_once(part for result in _by_severity(results, rule) for part in result.failing),
        assumed=tuple(dict.fromkeys(where for record in records for where in record.assumed)),
        proofs={result.case: result.proof for result in results},
        corners={result.case: dict(result.corner.met) for result in results},
        rests_on=dict(_in_plain_words(results)),
        consulted=asked,
        places=tuple(dict.fromkeys(place for record in records for place in record.places)),
        unstated=tuple(dict.fromkeys(why.where for why in wanting if isinstance(why, Unstated))),
    )


def _shared(context: Context, effort: Effort) -> WorkedOnce | None:
    """What parts alike share of their checks; nothing where values are moved, or another effort is made."""
    if context.moved or context.worded or effort is not _PLAIN or context.shared is False:
        return None
    if context.shared is None:
        context.shared = WorkedOnce()
    found: WorkedOnce = context.shared
    return found


def _in_plain_words(results: Sequence[CaseResult]) -> Iterator[tuple[str, str]]:
    """What a check rests on, each once; what differs between load cases with the name of its case."""
    for result in results:
        record = result.sheet.record
        for words, shown in record.rests_on.items():
            varies = bool(result.case) and words.rstrip("′") in record.varying
            yield (f"{words} ({result.case})" if varies else words), shown


def _by_severity(results: Sequence[CaseResult], rule: Rule) -> list[CaseResult]:
    return sorted(results, key=lambda result: severity(result.ending, rule), reverse=True)


def _missing(ending: Ending) -> Iterator[NotAssessed]:
    """What an assessment needs, of the rule as a whole or of items that it goes over."""
    ended = ending.ended if isinstance(ending, Judgement) else (ending, *ending.beside)
    return (why for why in ended if isinstance(why, NotAssessed))


def _each_once(failing: Iterable[tuple[object, Judgement]]) -> tuple[Judgement, ...]:
    """Each comparison once, at its worst load case, known by its place and by what is compared with what."""
    found: dict[object, Judgement] = {}
    for place, part in failing:
        names = (part.found.name, part.limit.name if part.limit else "") if part.found else part.says
        found.setdefault((place, names), part)
    return tuple(found.values())


def run_once(
    rule: Rule, component: Component, case: str, sides: Mapping[Hashable, bool], context: Context
) -> Ending:
    """The rule at one corner of one load case ("" where it has none), without writing anything down.

    Where it raises, nothing is known of it there.

    :raises Overrun: when it takes longer than the settings allow.
    """
    found = _worked_case(rule, component, case, context) if case else None  # type: ignore[arg-type]
    try:
        with Guard(rule.family), _in_time(rule, component, context):
            return _ending(rule, component, found, context, Corner(sides))
    except (KeyboardInterrupt, Overrun):
        raise
    except BaseException as problem:
        return NotAssessed(f"could not be run: {in_words(problem)}")


@dataclass(frozen=True)
class Written:
    """A rule at one corner of one load case, with its written record and the inputs that have sides there."""

    ending: Ending
    record: Record
    sides: Sides


def written_at(
    rule: Rule, component: Component, case: str, sides: Mapping[Hashable, bool], context: Context
) -> Written | None:
    """The rule at one corner of one load case ("" where it has none), written down; None where it raises, or the load
    case is not stated.

    :raises Overrun: when it takes longer than the settings allow.
    """
    found = _worked_case(rule, component, case, context) if case else None  # type: ignore[arg-type]
    if isinstance(found, NotAssessed):
        return None
    corner = Corner(sides)
    try:
        with Guard(rule.family), _in_time(rule, component, context):
            ending, sheet = _run(rule, component, found, context, corner, record=True)
    except (KeyboardInterrupt, Overrun):
        raise
    except BaseException:
        return None
    return Written(ending, sheet.record, dict(corner.met))


def still_conforms(found: Check, component: Component, context: Context) -> bool:
    """Whether a check that conforms would still do so in slightly other surroundings. Nothing is written down."""
    return where_it_fails(found.rule, component, context, found.corners) is None


def where_it_fails(
    rule: Rule, component: Component, context: Context, known: Mapping[str, Sides]
) -> tuple[str, Sides] | None:
    """A load case and a corner where a rule does not hold; None where it conforms.

    Of each load case one corner is ``known`` that is likely to fail: it is tried first. A rule that raises does not
    conform, as for a check. Nothing is written down.
    """
    context.begin()
    ranks: dict[int, tuple[str, Sides]] = {}
    try:
        with Guard(rule.family), _in_time(rule, component, context):
            for name in rule.cases or ("",):
                met = _failing_in(rule, component, name, context, known.get(name, {}))
                ranks.setdefault(met.severity[0], (name, met.corner.met))
                if max(ranks) > HOLDS:
                    break
    except (KeyboardInterrupt, Overrun):
        raise
    except BaseException:
        return "", {}
    return None if max(ranks) == HOLDS else ranks[max(ranks)]


def _failing_in(
    rule: Rule, component: Component, name: CaseName | Literal[""], context: Context, known: Sides
) -> CornerRun:
    """The first corner found in one load case where a rule does not hold; one where it does if there is none."""
    case = _worked_case(rule, component, name, context) if name else None
    ranges = KnownRanges()

    def boxed(sides: Sides, within: Ranges) -> OverBox | RuleEnded:
        if isinstance(case, NotAssessed):
            raise NotEnclosed("the load case is not stated")
        return over_box(rule, component, case, context, sides, within, ranges)

    return failing_corner(partial(_ending, rule, component, case, context), rule, boxed, known)


def _in_time(rule: Rule, component: Component, context: Context) -> TimeLimit:
    return TimeLimit(rule.name, component.id, context.design.settings.seconds_per_rule)


def _unsaid(concluded: Check) -> str:
    """Why it cannot be said what is wrong; "" where it can: the sentence is the family's, and asks for numbers."""
    try:
        _ = concluded.actual
    except (KeyError, ValueError, IndexError, AttributeError) as problem:
        return f"its sentence on what is wrong asks for what this comparison has not: {in_words(problem)}"
    return ""


def _raised(problem: BaseException, rule: Rule, context: Context) -> str:
    if isinstance(problem, Overrun):
        return late(context.design.settings.seconds_per_rule)
    place = raised_at(problem, rule.function.__module__)
    return f"{in_words(problem)} ({place})" if place else in_words(problem)


def late(seconds: int) -> str:
    """What is said of a rule that did not end in its time."""
    return f"it did not end within {seconds} s (seconds_per_rule in speclint.toml)"


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
    rule: Rule, component: Component, context: Context, effort: Effort, known: Known
) -> Iterator[CaseResult]:
    for name in rule.cases or ("",):
        case = _worked_case(rule, component, name, context) if name else None
        if isinstance(case, NotAssessed):
            yield _unstated(rule, component, case, name, context, effort)
        else:
            again = _again(rule, component, case, name, context, known)
            yield again or _governing(rule, component, case, name, context, effort)


def _again(
    rule: Rule, component: Component, case: LoadCase | None, name: str, context: Context, known: Known
) -> CaseResult | None:
    """A load case at the corners that govern a part alike; None where there is none, or it comes out otherwise."""
    worked = known[0].cases.get(name) if known else None
    if known is None or worked is None:
        return None
    renamed = known[1]
    corner = Corner(renamed.sides(worked.sides))
    ending, sheet = _run(rule, component, case, context, corner, record=True)
    if severity(ending, rule) != worked.severity:
        return None
    matter = [(renamed.key(key), high) for key, high in worked.matter]
    if any(key not in sheet.record.labels for key, _ in matter):
        return None
    words, values = _sides(sheet.record, matter)
    written = {highs(corner.met): (ending, sheet)}

    def write(other: Corner) -> tuple[Ending, Sheet]:
        key = highs(other.met)
        if key not in written:
            written[key] = _run(rule, component, case, context, Corner(other.met), record=True)
        return written[key]

    places = [(place, _met(renamed.sides(sides))) for place, sides in worked.failing]
    failing, also = _failing(places, write)
    return CaseResult(name, ending, sheet, corner, words, worked.proof, failing, also, worked, values)


def _sides(
    record: Record, matter: Sequence[tuple[Hashable, bool]]
) -> tuple[tuple[str, ...], tuple[str, ...]]:
    """The inputs whose side decides in words, and the same with the value of each."""
    words = tuple(f"{record.labels[key]} {'high' if high else 'low'}" for key, high in matter)
    return words, tuple(record.side(key, high=high) for key, high in matter)


def _met(sides: Mapping[Hashable, bool]) -> Corner:
    """A corner as it is once its inputs were taken."""
    corner = Corner(sides)
    corner.met.update(sides)
    return corner


def _unstated(
    rule: Rule, component: Component, case: NotAssessed, name: str, context: Context, effort: Effort
) -> CaseResult:
    """A load case that is not stated: written down as wanting, unless the rule never asks for it."""
    runs = CornerRuns(partial(_ending, rule, component, case, context), rule)
    worst = runs.at({})
    if isinstance(worst.ending, NotApplicable):  # at every corner, or the case is wanting
        worst = find_worst(_no_box, runs, replace(effort, boxes=0)).run
    if isinstance(worst.ending, NotApplicable):
        corner = worst.corner
        ending, sheet = _run(rule, component, UnstatedCase(case), context, Corner(corner.met), record=True)
        return CaseResult(name, ending, sheet, corner, (), _NOTHING_RUN)
    sheet = Sheet(rule, component, context, Corner(), record=True)
    sheet.record.note(f"load case {name}", "not stated")
    return CaseResult(name, case, sheet, Corner(), (), _NOTHING_RUN)


def _no_box(_: Mapping[Hashable, bool], __: Ranges) -> NoReturn:
    raise NotEnclosed("the load case is not stated")


def _worked_case(
    rule: Rule, component: Component, name: CaseName, context: Context
) -> LoadCase | NotAssessed:
    return worked_case(_load_case(component, name, context), rule, component, context)


def _load_case(component: Component, name: CaseName, context: Context) -> LoadCase | NotAssessed:
    duty, passed = context.design.duty_of(component)
    context.consulted.specs |= passed
    if duty is None:
        return _no_duty(component, passed, context)
    case = duty.cases.get(name)
    if case is None:
        where = duty.where.at(f"cases.{name}")
        return NotAssessed(f"load case {name} is not stated in {duty.where.file}", where)
    return case


def _no_duty(component: Component, passed: Collection[str], context: Context) -> NotAssessed:
    """Why a component has no duty: none is stated on the way ``passed``, or that or a spec on the way is not read."""
    design = context.design
    for part in (design.specs[name] for name in sorted(passed) if name in design.index.entries):
        if isinstance(part, Component) and isinstance(part.duty, Link):  # the way ends at the first
            said = f'{part.id} states the duty "{part.duty.id}", and no duty of that id could be read'
            return NotAssessed(said, part.duty.where)
    said = "duty is not stated, nor inherited from a component it is linked to"
    if lost := sorted(name for name in passed if name not in design.index.entries):
        said = f"{said}: {', '.join(lost)} could not be read"
    return NotAssessed(said, component.duty.where)


def _governing(
    rule: Rule, component: Component, case: LoadCase | None, name: str, context: Context, effort: Effort
) -> CaseResult:
    runs = CornerRuns(partial(_ending, rule, component, case, context), rule)
    written: dict[Highs, tuple[Ending, Sheet]] = {}

    def write(corner: Corner) -> tuple[Ending, Sheet]:
        key = highs(corner.met)
        if key not in written:
            written[key] = _run(rule, component, case, context, Corner(corner.met), record=True)
        return written[key]

    if rule.name not in context.toleranced:  # then the first run is likely to be the only one
        at_low = Corner()
        first = _run(rule, component, case, context, at_low, record=True)
        runs.keep(at_low, first[0])
        written[highs(at_low.met)] = first

    known = KnownRanges()

    def boxed(sides: Mapping[Hashable, bool], ranges: Ranges) -> OverBox | RuleEnded:
        return over_box(rule, component, case, context, sides, ranges, known)

    found = find_worst(boxed, runs, effort)
    corner = found.run.corner
    if corner.met:
        context.toleranced.add(rule.name)
    ending, sheet = write(corner)
    words, values = _sides(sheet.record, found.matter)
    failing, also = _failing(runs.failing, write)
    places = tuple((place, dict(one.met)) for place, one in runs.failing)
    worked = CaseWorked(dict(corner.met), severity(ending, rule), found.matter, found.proof, places)
    return CaseResult(name, ending, sheet, corner, words, found.proof, failing, also, worked, values)


def _failing(
    places: Sequence[tuple[tuple[int, int, str], Corner]], write: Callable[[Corner], tuple[Ending, Sheet]]
) -> tuple[tuple[tuple[object, Judgement], ...], tuple[Record, ...]]:
    """Every comparison that fails, written down at its own worst corner; and what else those rest on.

    What one look-up gives at another corner is no other input: only what the governing corner does not take is added.
    """
    parts: list[tuple[object, Judgement]] = []
    also: list[Record] = []
    for (number, index, compared), corner in places:
        there, sheet = write(corner)
        if isinstance(there, Judgement) and index < len(there.every):
            parts.append(((number, index, compared), there.every[index]))
            also.append(sheet.record)
    return tuple(parts), () if len(parts) < 2 else tuple(also)


def _concluded(rule: Rule, component: Component, result: CaseResult, basis: Mapping[str, str]) -> Check:
    ending = told(result.ending)
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
        at_worst=result.at_worst,
        steps=tuple(result.sheet.record.steps),
    )


def _outcome(ending: Ending, rule: Rule) -> tuple[Outcome, Grade | None]:
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
