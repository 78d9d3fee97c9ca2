"""A rule run once: at one corner of the tolerances, in one load case."""

from __future__ import annotations

from collections.abc import Hashable, Mapping

from msgspec import Struct

from speclint.checking.corner_runs import Sides
from speclint.checking.load_case import case_of
from speclint.checking.severity import Ending
from speclint.checking.time_limit import BY_THE_CLOCK, Overrun, TimeLimit
from speclint.checking.unstated_case import UnstatedCase
from speclint.errors import in_words, raised_at
from speclint.families import Guard
from speclint.rules import (
    Context,
    Corner,
    Judgement,
    NotApplicable,
    NotAssessed,
    Record,
    Rule,
    RuleEnded,
    Sheet,
)
from speclint.specs import Component, LoadCase


def run_once(
    rule: Rule, component: Component, case: str, sides: Mapping[Hashable, bool], context: Context
) -> Ending:
    """The rule at one corner of one load case ("" where it has none), without writing anything down.

    Where it raises, nothing is known of it there.

    :raises Overrun: when it takes longer than the settings allow.
    """
    found = case_of(rule, component, case, context) if case else None  # type: ignore[arg-type]
    try:
        with Guard(rule.family), in_time(rule, component, context):
            return ending_at(rule, component, found, context, Corner(sides))
    except (KeyboardInterrupt, Overrun):
        raise
    except BaseException as problem:
        return NotAssessed(f"could not be run: {in_words(problem)}")


class Written(Struct, frozen=True):
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
    found = case_of(rule, component, case, context) if case else None  # type: ignore[arg-type]
    if isinstance(found, NotAssessed):
        return None
    corner = Corner(sides)
    try:
        with Guard(rule.family), in_time(rule, component, context):
            ending, sheet = run(rule, component, found, context, corner, record=True)
    except (KeyboardInterrupt, Overrun):
        raise
    except BaseException:
        return None
    return Written(ending, sheet.record, dict(corner.met))


def in_time(rule: Rule, component: Component, context: Context) -> TimeLimit:
    """The time that the settings allow a rule on one component."""
    return TimeLimit(rule.name, component.id, context.design.settings.seconds_per_rule)


def raised_by(problem: BaseException, rule: Rule, context: Context) -> str:
    """What a rule raised, in words, with the place in its family where it did."""
    if isinstance(problem, Overrun):
        return late(context.design.settings.seconds_per_rule)
    place = raised_at(problem, rule.function.__module__)
    return f"{in_words(problem)} ({place})" if place else in_words(problem)


def late(seconds: int) -> str:
    """What is said of a rule that did not end in its time."""
    clock = BY_THE_CLOCK * seconds
    within = f"{seconds} s of the processor, or {clock} s by the clock"
    return f"it did not end within {within} (seconds_per_rule in speclint.toml)"


def ending_at(
    rule: Rule, component: Component, case: LoadCase | NotAssessed | None, context: Context, corner: Corner
) -> Ending:
    """How a rule ends at a corner; where its load case is not stated, what is wanting."""
    if isinstance(case, NotAssessed):
        return _without(case, rule, component, context, corner)
    return run(rule, component, case, context, corner)[0]


def _without(
    wanting: NotAssessed, rule: Rule, component: Component, context: Context, corner: Corner
) -> NotApplicable | NotAssessed:
    """How a rule ends in a load case that is not stated: not applicable where it says so before it asks for the case.

    Whatever else becomes of it, the case is what an assessment needs.
    """
    try:
        ending, _ = run(rule, component, UnstatedCase(wanting), context, corner)
    except Exception:  # it is not known to be at fault: it was not given what it asks for
        return wanting
    return ending if isinstance(ending, NotApplicable) else wanting


def run(
    rule: Rule,
    component: Component,
    case: LoadCase | None,
    context: Context,
    corner: Corner,
    *,
    record: bool = False,
) -> tuple[Ending, Sheet]:
    """A rule at a corner, with the sheet on which it was worked, written down where ``record`` says so."""
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
