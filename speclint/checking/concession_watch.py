"""Whether a concession still holds, so that a rule can check the concessions of its component."""

from __future__ import annotations

import datetime as dt
from collections.abc import Callable, Iterator, Mapping
from functools import partial
from typing import Literal

from speclint.checking.check_result import Check
from speclint.errors import DesignError, one_of
from speclint.families import Loaded
from speclint.quantities import number
from speclint.repository import Concession, Register, component_called
from speclint.rules import Context, Grade, Rule
from speclint.specs import Component


def find_check(context: Context, loaded: Loaded, component: str, rule: str) -> Check | str:
    """The check of one rule on one component, made now; or why there is none."""
    found = _rule_on(context, loaded, component, rule)
    if isinstance(found, Rule) and found.reviews:
        return f"{rule} reviews the other checks: what it reviews can be conceded, not the review itself"
    if isinstance(found, str):
        return found
    from speclint.checking.rule_run import check  # only where a check is made

    return check(found, _component(context, component), context)


def _component(context: Context, name: str) -> Component:
    found = context.design.specs[name]
    assert isinstance(found, Component)  # as its rule was found
    return found


def _rule_on(context: Context, loaded: Loaded, component: str, name: str) -> Rule | str:
    try:
        spec = component_called(component, context.design)
    except DesignError as problem:
        return str(problem)
    rules = {rule.name: rule for rule in loaded.rules_for({spec.kind}) if isinstance(spec, rule.on)}
    return (
        rules.get(name)
        or f"no rule on a {spec.called or spec.kind} is called {name}; write {one_of(name, rules)}"
    )


def nothing_to_concede(found: Check) -> str:
    """Why there is nothing to accept in a check; "" where there is."""
    if found.could_not_run:
        return f"the rule could not be run, which cannot be accepted: {found.could_not_run}"
    if found.stands_in_the_way is None:
        return f"there is nothing to accept any longer: the check {_outcome(found)}"
    return ""


def _outcome(found: Check) -> str:
    return found.outcome if found.outcome == "conforms" else f"is {found.outcome}"


def changes(concession: Concession, found: Check) -> list[str]:
    """What has changed since the finding was accepted, in words; empty when nothing has."""
    if found.component in concession.also_on:
        return _no_longer_alike(concession, found)
    said = []
    if found.rule.edition != concession.edition:
        said.append(f"edition of the rule was {concession.edition}, is {found.rule.edition}")
    if found.fingerprint != concession.fingerprint:
        said += values_changed(concession.rests_on, found.rests_on)
    if found.outcome != concession.outcome:
        said.append(f"the check was: {concession.outcome}, is: {found.outcome}")
    if found.grade is not None and found.grade > Grade[concession.grade.upper()]:
        said.append(f"the finding was of grade {concession.grade}, is of grade {found.grade.word}")
    if (used := used_of(found)) != concession.used:
        said.append(f"used of the limit was {concession.used or 'no number'}, is {used or 'no number'}")
    if not said and found.fingerprint != concession.fingerprint:
        said.append(
            "the fingerprint is not that of the finding, though every value reads the same: "
            "a digit beyond those written changed, or the entry was altered"
        )
    return said


def _no_longer_alike(concession: Concession, found: Check) -> list[str]:
    """Why the finding of one of several parts alike is no longer that which was accepted for all."""
    if found.alike == concession.alike:
        return []
    said = []
    if (used := used_of(found)) != concession.used:
        said.append(f"used of the limit was {concession.used or 'no number'}, is {used or 'no number'}")
    why = f": {said[0]}" if said else ""
    return [f"{found.component} is no longer alike to {concession.component} as it was accepted{why}"]


def values_changed(was: Mapping[str, str], now: Mapping[str, str]) -> Iterator[str]:
    """What differs between the values that two checks rest on, in words."""
    for name in {**was, **now}:
        before, after = was.get(name), now.get(name)
        if before is None:
            yield f"{name} was not used, is {after}"
        elif after is None:
            yield f"{name} was {before}, is no longer used"
        elif before != after:
            yield f"{name} was {before}, is {after}"


def used_of(found: Check) -> str:
    """What a finding used of its limit, as the register has it; "" where it is not a matter of number."""
    used = found.utilisation
    return "" if used is None else number(used, "")


def dated(
    concession: Concession, today: dt.date, years: int
) -> Iterator[tuple[Literal["expired", "not yet in force", "not accepted"], str]]:
    """Why a concession does not hold by its dates: no longer, not yet, or for more years than one may run."""
    if concession.until < today:
        yield "expired", f"it ended on {concession.until}"
    if concession.date > today:
        yield "not yet in force", f"it is dated {concession.date}, which is in the future"
    if runs_longer(concession.date, concession.until, years):
        yield (
            "not accepted",
            f"it runs from {concession.date} to {concession.until}, longer than {years} years",
        )


def runs_longer(began: dt.date, ends: dt.date, years: int) -> bool:
    """Whether one day is more than so many years after another.

    >>> runs_longer(dt.date(2024, 2, 29), dt.date(2054, 3, 1), 30)
    True
    >>> runs_longer(dt.date(2025, 3, 3), dt.date(2055, 3, 3), 30)
    False
    """
    return (ends.year - years, ends.month, ends.day) > (began.year, began.month, began.day)


def watch(context: Context, loaded: Loaded, register: Register, today: dt.date) -> None:
    """Let sheets look up which concessions of their component no longer hold, by a changed input or their dates."""
    remembered: dict[tuple[str, str], tuple[tuple[str, str], ...]] = {}

    def of(component: Component, asking: Rule) -> tuple[tuple[str, str], ...]:
        key = (component.id, asking.name)
        if key not in remembered:
            remembered[key] = _lapsed_in(register, component.id, asking.name, find, today, years)
        return remembered[key]

    find = partial(find_check, context, loaded)
    years = context.design.settings.longest_concession
    context.concessions = of


def _lapsed_in(
    register: Register,
    component: str,
    asking: str,
    find: Callable[[str, str], Check | str],
    today: dt.date,
    years: int,
) -> tuple[tuple[str, str], ...]:
    """The number of each concession of a component, and why it no longer holds; "" where it does."""
    ended: dict[str, tuple[str, str]] = {}
    for one in register.concessions:
        if component in one.parts and one.rule != asking:
            found = find(component, one.rule)
            if not isinstance(found, str) and not nothing_to_concede(found):
                over = [*changes(one, found), *(words for _, words in dated(one, today, years))]
                ended[one.number] = one.rule, "; ".join(over)
    running = {rule for rule, why in ended.values() if not why}
    return tuple((name, "" if rule in running else why) for name, (rule, why) in ended.items())
