"""A rule asks for no limit that it does not declare, by whatever function of its family or fact it goes.

A function that two rules share may ask for a limit that one of them alone declares: in the case where it does, the
other could not be run. Names that are not written where they are asked for are not looked at here.
"""

from __future__ import annotations

import ast
import inspect
import textwrap
from collections.abc import Callable
from functools import cache
from types import FunctionType
from typing import Any

from speclint import Rule, Sheet
from speclint.testing import installed_families
from tests.each import each

_RULES = installed_families().rules


@cache
def _read(function: FunctionType) -> ast.Module:
    return ast.parse(textwrap.dedent(inspect.getsource(function)))


@cache
def asked_by(function: FunctionType) -> frozenset[str]:
    """The limits that a function asks a sheet for, by name."""
    return frozenset(
        str(call.args[0].value)
        for call in ast.walk(_read(function))
        if isinstance(call, ast.Call)
        and isinstance(call.func, ast.Attribute)
        and call.func.attr == "limit"
        and call.args
        and isinstance(call.args[0], ast.Constant)
    )


@cache
def named_by(function: FunctionType) -> frozenset[FunctionType]:
    """The functions of families, and the facts, that a function names."""
    named = (node.id for node in ast.walk(_read(function)) if isinstance(node, ast.Name))
    held = {**function.__globals__, **inspect.getclosurevars(function).nonlocals}
    found = (held.get(name) for name in named)
    return frozenset(inspect.unwrap(one) for one in found if isinstance(one, FunctionType) and _may_ask(one))


def _may_ask(function: FunctionType) -> bool:
    return function.__module__.startswith(("speclint_", "speclint.facts", __name__))


def not_declared(check: Callable[..., Any], declared: set[str]) -> set[str]:
    """What a rule asks for, by all functions that it reaches, and does not declare: with the function that asks."""
    first = inspect.unwrap(check)
    assert isinstance(first, FunctionType)
    reached, open_ones = {first}, [first]
    while open_ones:
        further = named_by(open_ones.pop()) - reached
        reached |= further
        open_ones += further
    return {f"{name}, by {one.__name__}" for one in reached for name in asked_by(one) - declared}


def test_there_are_limits_to_be_asked_for() -> None:
    """Else nothing here could fail."""
    declaring = [rule for rule in _RULES if rule.limits]
    assert len(declaring) > 100
    assert len([rule for rule in declaring if not_declared(rule.function, set())]) > 100


@each(_RULES, lambda rule: rule.name)
def test_a_rule_declares_every_limit_that_it_asks_for(rule: Rule) -> None:
    assert not not_declared(rule.function, {limit.name for limit in rule.limits})


def _deep(sheet: Sheet) -> float:
    return sheet.limit("deep", "k")


def _rule(sheet: Sheet) -> float:
    return sheet.limit("near", "k") + _deep(sheet)


def test_a_limit_that_another_function_asks_for_is_found() -> None:
    assert not_declared(_rule, {"near"}) == {"deep, by _deep"}
    assert not_declared(_rule, {"deep"}) == {"near, by _rule"}
    assert not not_declared(_rule, {"near", "deep"})
