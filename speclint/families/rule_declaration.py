"""What is wrong with how a rule is declared: what would else be found when it is run, or when a report is written."""

from __future__ import annotations

import inspect
from collections.abc import Callable, Iterator, Sequence
from string import Formatter
from typing import Any, get_args

from speclint.equations import Source
from speclint.errors import QuantityError, one_of
from speclint.repository import MeasuredSetting
from speclint.rules import SENTENCE_WORDS, Grade, Limit
from speclint.specs import CASE_NAMES


def faults_of_declaration(rule: Any) -> Iterator[str]:
    """What is wrong with the name, grades, edition, load cases, limits, sentence and function of a rule."""
    if not isinstance(rule.name, str) or rule.name.split() != [rule.name]:
        yield "has no name of one word: subject.what-it-says"
    for called, grade in (("grade", rule.grade), ("gravest", rule.gravest)):
        if not isinstance(grade, Grade) and (called == "grade" or grade is not rule.grade):
            yield f"states {grade!r} as its {called}: write a speclint.Grade, such as Grade.HOLD"
    for called, number, least in (("edition", rule.edition, 1), ("row", rule.row, 0)):
        if type(number) is not int or number < least:
            yield f"states {number!r} as its {called}, which is a whole number from {least}"
    yield from _faults_of_cases(rule.cases)
    yield from _faults_of_limits(rule.limits)
    yield from _faults_of_sentence(rule.wrong)
    yield from _faults_of_arguments(
        rule.function, ("the component", *["the load case"] * bool(rule.cases), "the sheet")
    )


def _faults_of_cases(cases: Sequence[Any]) -> Iterator[str]:
    if len(cases) != 1 and "".join(map(str, cases)) in CASE_NAMES:
        yield f'names load cases in one text: write ("{"".join(cases)}",)'
        return
    for case in cases:
        if case not in CASE_NAMES:
            yield f"names the load case {case!r}, which is none; write {one_of(str(case), CASE_NAMES)}"


def _faults_of_limits(limits: Sequence[Any]) -> Iterator[str]:
    names = [one.name for one in limits if isinstance(one, Limit)]
    for name in dict.fromkeys(one for one in names if names.count(one) > 1):
        yield f"has two limits called {name}"
    for one in limits:
        if isinstance(one, Limit):
            yield from _faults_of_limit(one)
        else:
            yield f"has {one!r} among its limits, which is no speclint.Limit"


def _faults_of_limit(one: Any) -> Iterator[str]:
    try:
        measure = one.read(one.default)
    except QuantityError as problem:
        yield f"has a limit {one.name} of {one.default!r}, which cannot be read: {problem}"
    except (KeyError, AttributeError, TypeError):
        yield (
            f"has a limit {one.name} of {one.default!r} in the dimension {one.dimension!r}: "
            "write a text with its unit, and a dimension that speclint reads"
        )
    else:
        if not measure.exact:
            yield f"has a limit {one.name} of {one.default!r}: a limit has no tolerance"
    if not isinstance(one.source, Source):
        yield f"has a limit {one.name} whose source is {one.source!r}, not a speclint.Source"
    if one.setting is not None and one.setting not in get_args(MeasuredSetting):
        instead = one_of(str(one.setting), get_args(MeasuredSetting))
        yield f"has a limit {one.name} that takes the setting {one.setting!r}; write {instead}"


def _faults_of_sentence(wrong: Any) -> Iterator[str]:
    try:
        asked = {name for _, name, _, _ in Formatter().parse(wrong) if name is not None}
    except (ValueError, TypeError):
        yield f"says what is wrong in {wrong!r}, whose braces do not match"
        return
    if unknown := sorted(asked - {*SENTENCE_WORDS}):
        words = ", ".join(f"{{{word}}}" for word in SENTENCE_WORDS)
        yield f"says what is wrong with {{{unknown[0]}}}, which nothing is put in for; there are {words}"


def _faults_of_arguments(function: Callable[..., Any], wanted: tuple[str, ...]) -> Iterator[str]:
    try:
        inspect.signature(function).bind(*wanted)
    except TypeError:
        yield f"has a function that does not take {', '.join(wanted)}, in this order and no more"
    except ValueError:  # of a built-in there is no signature
        return
