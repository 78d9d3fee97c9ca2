"""Which formulae the code of a rule can work, found by following the names that it uses.

Nothing is run. From the function of a rule the search goes to every function, class and table of functions that its
code names, within the package of its family and within ``speclint.facts`` and ``speclint.handbook``; it stops at each
formula. A sheet may work fewer of them, as not every way through a rule is taken for every part.
"""

from __future__ import annotations

import sys
from collections.abc import Callable, Collection, Iterator, Mapping
from contextlib import suppress
from functools import cached_property, partial
from types import CodeType, FunctionType, MethodType, ModuleType
from typing import Any, TypeGuard

from speclint.equations import Described
from speclint.errors import field_names, is_record
from speclint.rules import Rule, Sheet

Formula = Callable[..., Any]
#: Packages of speclint in which the search goes on; a family's own is added.
_OPEN = ("speclint.facts", "speclint.handbook")


class FormulaSearch:
    """Finds formulae behind rules; what was looked into for one rule is known for the next."""

    def __init__(self) -> None:
        self._named: dict[int, tuple[object, tuple[object, ...]]] = {}

    def of_rule(self, rule: Rule) -> tuple[Formula, ...]:
        """The formulae that the code of a rule can work, in the order of their full names."""
        return self.named_by(rule.function)

    def of_sheet(self) -> tuple[Formula, ...]:
        """The formulae that a sheet works by itself, whatever the rule: as it takes a temperature that is tied."""
        return self.named_by(Sheet, *(one.__module__ for one in Sheet.__mro__ if one is not object))

    def named_by(self, start: object, *more: str) -> tuple[Formula, ...]:
        """The formulae behind a function or a class; behind a formula those that it calls itself.

        ``more`` are packages in which the search goes on besides.
        """
        packages = {*_OPEN, *more, *map(_package, (start, *_behind_closure(start)))} - {
            "speclint",
            "builtins",
        }
        found: dict[str, Formula] = {}
        seen = {id(start)}
        waiting = list(self._behind(start))
        while waiting:
            one = waiting.pop()
            if id(one) in seen:
                continue
            seen.add(id(one))
            if is_formula(one):
                found[name_of(one)] = one
            elif _is_open(one, packages):
                waiting += self._behind(one)
        return tuple(found[name] for name in sorted(found))

    def _behind(self, one: object) -> tuple[object, ...]:
        known = self._named.get(id(one))
        if known is None:
            known = self._named[id(one)] = (one, tuple(_named(one)))
        return known[1]


def is_formula(one: object) -> TypeGuard[Formula]:
    """Whether something is marked with ``@formula``."""
    return isinstance(one, FunctionType) and isinstance(vars(one).get("described"), Described)


def name_of(formula: Formula) -> str:
    """The full name of a formula."""
    return f"{formula.__module__}.{formula.__qualname__}"


def _package(one: object) -> str:
    return str(getattr(one, "__module__", "")).partition(".")[0]


def _behind_closure(one: object) -> Iterator[object]:
    """Functions that a function holds which another made, as an agreement does of what gives its pairs."""
    for cell in getattr(one, "__closure__", None) or ():
        with suppress(ValueError):  # a name that is not bound yet
            if isinstance(cell.cell_contents, FunctionType):
                yield cell.cell_contents
                yield from _behind_closure(cell.cell_contents)


def _is_open(one: object, packages: Collection[str]) -> bool:
    """Whether the search goes on within something: tables always, code only of some packages."""
    if not isinstance(one, FunctionType | type | ModuleType):
        return True
    module = one.__name__ if isinstance(one, ModuleType) else str(one.__module__)
    return any(module == package or module.startswith(f"{package}.") for package in packages)


def _named(one: object) -> Iterator[object]:
    """What a function, a class or a table of functions names."""
    inner = getattr(one, "__wrapped__", None)
    if isinstance(one, FunctionType):
        yield from _named_by_function(one)
    elif isinstance(one, type):
        yield from vars(one).values()
        yield from one.__bases__
    elif isinstance(one, MethodType | classmethod | staticmethod):
        yield one.__func__
    elif isinstance(one, property):
        yield one.fget
    elif isinstance(one, cached_property):
        yield one.func
    elif isinstance(one, partial):
        yield from (one.func, *one.args, *one.keywords.values())
    elif isinstance(one, Mapping):
        yield from (*one.keys(), *one.values())
    elif isinstance(one, tuple | list | set | frozenset):
        yield from one
    elif is_record(one if isinstance(one, type) else type(one)):
        kind = one if isinstance(one, type) else type(one)
        yield from (getattr(one, name, None) for name in field_names(kind))
    if inner is not None and callable(inner):
        yield inner


def _named_by_function(function: FunctionType) -> Iterator[object]:
    yield from function.__defaults__ or ()
    yield from (function.__kwdefaults__ or {}).values()
    for cell in function.__closure__ or ():
        with suppress(ValueError):  # a name that is not bound yet
            yield cell.cell_contents
    yield from _named_by_code(function.__code__, function.__globals__)


def _named_by_code(code: CodeType, scope: Mapping[str, Any]) -> Iterator[object]:
    """Globals that code names, attributes of modules among them, and what it imports where it runs."""
    modules: list[ModuleType] = []
    for name in code.co_names:
        found = scope.get(name, sys.modules.get(name))
        if isinstance(found, ModuleType):
            modules.append(found)
        elif found is not None:
            yield found
    for module in (*modules, *_imported(code)):
        yield from (vars(module)[name] for name in code.co_names if name in vars(module))
    for constant in code.co_consts:
        if isinstance(constant, CodeType):
            yield from _named_by_code(constant, scope)


def _imported(code: CodeType) -> Iterator[ModuleType]:
    """Modules that a function imports itself, where they are loaded."""
    for name in code.co_names:
        if "." in name and name in sys.modules:
            yield sys.modules[name]
