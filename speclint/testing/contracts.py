"""What must hold for every rule and every formula, whatever its family."""

from __future__ import annotations

import inspect
import re
from collections.abc import Callable, Iterator, Sequence
from typing import Any, get_type_hints

from speclint.equations import FIRST_PRINCIPLES, Source, described
from speclint.errors import FamilyError, QuantityError
from speclint.families import Loaded
from speclint.rules import Grade, Rule
from speclint.specs import Component

#: A rule is called subject.what-it-says, in words.
_NAME = re.compile(r"[a-z]+(-[a-z]+)*\.[a-z]+(-[a-z]+)*")
#: Fewer letters than these say nothing.
_TITLE, _WHY, _SCOPE = 10, 10, 5


def expect_rule(rule: Rule) -> None:
    """A rule is named in words, says what, why and what not, has sources, limits that can be read, and fits its kinds.

    One that can give a hold or a nonconformity says which hazards it guards against, if only that it is none.

    :raises AssertionError: naming everything that is amiss.
    """
    parts = (_texts(rule), _sources(rule), _limits(rule), _function(rule), _hazards(rule))
    _raise_for(rule.name, [fault for part in parts for fault in part])


def expect_formula(formula: Callable[..., Any]) -> None:
    """A formula prints an equation, has a docstring and sources, and each of its numbers has a unit.

    :raises AssertionError: naming everything that is amiss.
    """
    _raise_for(formula.__qualname__, list(_formula(formula)))


def expect_declared_kinds(loaded: Loaded) -> None:
    """Rules that a module declares for some kinds are on these and no other: else they would never be applied.

    Every module of rules is imported, and its rules held to all that a family is held to when it is loaded.

    :raises AssertionError: naming the module and the kinds.
    """
    try:
        _ = loaded.rules
    except FamilyError as problem:
        raise AssertionError(str(problem)) from problem


def _raise_for(name: str, faults: Sequence[str]) -> None:
    if faults:
        raise AssertionError(f"{name}: {'; '.join(faults)}")


def _texts(rule: Rule) -> Iterator[str]:
    if not _NAME.fullmatch(rule.name):
        yield "its name is not subject.what-it-says in small letters and hyphens"
    if len(rule.title) <= _TITLE or rule.title.endswith("."):
        yield "its title is no statement, or ends with a full stop"
    if len(rule.why) <= _WHY:
        yield "it does not say why"
    if len(rule.leaves_out) <= _SCOPE:
        yield "it does not say what it leaves out"
    if rule.gravest is Grade.HOLD and not re.search(r"local code|competent", rule.leaves_out):
        yield "a hold leaves something to the local code or a competent person, and says so"


def _sources(rule: Rule) -> Iterator[str]:
    if not rule.cites:
        yield "it has no source"
    yield from map(_unplaced, filter(_bare, rule.cites))


def _limits(rule: Rule) -> Iterator[str]:
    names = [limit.name for limit in rule.limits]
    if len(names) != len(set(names)):
        yield "two of its limits have one name"
    for limit in rule.limits:
        if not str(limit.source):
            yield f"the limit {limit.name} has no source"
        elif _bare(limit.source):
            yield f"of the limit {limit.name}, {_unplaced(limit.source)}"
        try:
            if not limit.read(limit.default).exact:
                yield f"the limit {limit.name} has a tolerance"
        except QuantityError as problem:
            yield f"the limit {limit.name} cannot be read: {problem}"


def _function(rule: Rule) -> Iterator[str]:
    if rule.edition < 1:
        yield "its edition is less than 1"
    if rule.gravest < rule.grade:
        yield "its gravest finding is lighter than its usual one"
    taken = len(inspect.signature(rule.function).parameters)
    if taken != (3 if rule.cases else 2):
        yield "its function takes the component, the load case where it names cases, and the sheet"
    yield from (
        f"{kind.__name__} is no kind of component"
        for kind in rule.on
        if not kind.is_one_of((Component.kind,))
    )


def _hazards(rule: Rule) -> Iterator[str]:
    if rule.against is None and rule.gravest >= Grade.NONCONFORMITY:
        yield "it does not say which hazards it guards against (against); a record guards against none: ()"
    suffered = {hazard for kind in rule.on for hazard in getattr(kind, "hazards", None) or ()}
    if lost := [
        hazard for hazard in rule.against or () if Component not in rule.on and hazard not in suffered
    ]:
        yield f"it guards against {', '.join(lost)}, which none of its kinds can suffer (hazards of the kind)"


def _formula(formula: Callable[..., Any]) -> Iterator[str]:
    about = described(formula)
    if "=" not in about.equation and "≈" not in about.equation:
        yield f"{about.equation!r} is no equation"
    if not inspect.getdoc(formula):
        yield "it has no docstring"
    if not about.cites:
        yield "it has no source"
    yield from map(_unplaced, filter(_bare, about.cites))
    for name in about.other_arguments:
        if get_type_hints(formula).get(name) in (None, float):
            yield f"{name} has no unit"


def _bare(source: Source) -> bool:
    """Whether a work is cited without its edition, or without the place in it."""
    vouched_for = source.common_practice or source.work == FIRST_PRINCIPLES.work
    return not (vouched_for or (source.edition and source.place))


def _unplaced(source: Source) -> str:
    missing = [what for what, said in (("edition", source.edition), ("place", source.place)) if not said]
    return f"the source {source} has no {' and no '.join(missing)}"
