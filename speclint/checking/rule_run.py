"""The loop: every rule on every component it concerns, guarded, at its worst load case and corner."""

from __future__ import annotations

from collections.abc import Sequence

from speclint.checking.case_result import results_by_case
from speclint.checking.check_result import Check
from speclint.checking.conclusion import (
    by_severity,
    concluded_from,
    could_not_run,
    each_once,
    in_plain_words,
    missing_of,
    unsaid,
)
from speclint.checking.one_corner import in_time, raised_by
from speclint.checking.outcomes import remember
from speclint.checking.parts_alike import digest_of
from speclint.checking.severity import severity
from speclint.checking.worked_once import WorkedOnce
from speclint.checking.worst_corner import Effort
from speclint.errors import replace
from speclint.families import Guard
from speclint.rules import Context, Rule, Unlisted, Unread, Unstated
from speclint.specs import Component

_PLAIN = Effort()


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


def check(rule: Rule, component: Component, context: Context, *, effort: Effort = _PLAIN) -> Check:
    """Apply one rule to one component. A rule that raises becomes a hold: it could not be run."""
    context.begin()
    shared = _shared(context, effort)
    known = shared.known(rule, component.id, context) if shared else None
    try:
        with Guard(rule.family), in_time(rule, component, context), context.asking() as asked:
            asked.specs.add(component.id)
            if known:
                asked.add(known[1].consulted(known[0].consulted))
            results = list(results_by_case(rule, component, context, effort, known))
            asked.opened |= context.asked.opened
    except KeyboardInterrupt:
        raise
    except BaseException as problem:  # whatever a family does, the others go on and the report says so
        return could_not_run(rule, component, raised_by(problem, rule, context))
    if shared and not known:  # of one that is shared only some corners were run
        cases = {one.case: one.worked for one in results if one.worked}
        shared.keep(rule, component.id, cases, asked, context)
    governing = max(results, key=lambda result: severity(result.ending, rule))
    basis = {f"{result.case} {name}": value for result in results for name, value in result.basis.items()}
    records = [result.sheet.record for result in results]
    concluded = concluded_from(rule, component, governing, basis)
    if fault := unsaid(concluded):
        return could_not_run(rule, component, fault)
    written = [(one.case, record) for one in results for record in (one.sheet.record, *one.also)]
    in_the_way = concluded.stands_in_the_way is not None or concluded.outcome == "not assessed"
    wanting = [why for result in results for why in missing_of(result.ending)]
    return replace(
        concluded,
        alike=digest_of(concluded, written) if in_the_way else "",
        missing=tuple(dict.fromkeys(why.says for why in wanting)),
        failing=each_once(part for result in by_severity(results, rule) for part in result.failing),
        assumed=tuple(dict.fromkeys(where for record in records for where in record.assumed)),
        proofs={result.case: result.proof for result in results},
        corners={result.case: dict(result.corner.met) for result in results},
        rests_on=dict(in_plain_words(results)),
        consulted=asked,
        places=tuple(dict.fromkeys(place for record in records for place in record.places)),
        unstated=tuple(dict.fromkeys(why.where for why in wanting if isinstance(why, Unstated))),
        unread=tuple(dict.fromkeys(file for why in wanting if isinstance(why, Unread) for file in why.files)),
        unlisted=tuple(dict.fromkeys(why.says for why in wanting if isinstance(why, Unlisted))),
    )


def _shared(context: Context, effort: Effort) -> WorkedOnce | None:
    """What parts alike share of their checks; nothing where values are moved, or another effort is made."""
    if context.moved or context.worded or effort is not _PLAIN or context.shared is False:
        return None
    if context.shared is None:
        context.shared = WorkedOnce()
    found: WorkedOnce = context.shared
    return found
