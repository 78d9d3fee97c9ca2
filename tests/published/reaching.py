"""Which modules of the handbook a test reaches: through its own file, its parameters and the handbook's imports."""

from __future__ import annotations

import ast
from collections.abc import Callable, Iterator
from functools import cache
from pathlib import Path
from types import CodeType, FunctionType, MappingProxyType, ModuleType
from typing import Any

from speclint.errors import field_names, is_record

_PREFIX = "speclint.handbook."
_TABLES = "tables.csv_files"
HANDBOOK = Path(__file__).parents[2] / "speclint" / "handbook"


def _name_of(path: Path) -> str:
    """The module's name below the handbook; a package's own file is named for the package."""
    return ".".join(path.relative_to(HANDBOOK).with_suffix("").parts).removesuffix(".__init__")


#: Every module of the handbook by its name below it.
MODULES = {_name_of(path): path for path in sorted(HANDBOOK.rglob("*.py"))}


def parametrisations(test: Callable[..., None]) -> list[list[Any]]:
    """The argument lists of a test's parametrisations, one above another."""
    marks = getattr(test, "pytestmark", [])
    return [list(mark.args[1]) for mark in marks if mark.name == "parametrize"]


def reached(test: Callable[..., None]) -> set[str]:
    """Modules of the handbook that a test reaches.

    A test that reads a data file through ``tables.csv_files`` reaches every module that reads its data so.
    """
    at_first: set[str] = set()
    waiting = [test, *(thing for cases in parametrisations(test) for thing in _flat(cases))]
    seen: set[int] = set()
    while waiting:
        thing = waiting.pop()
        if id(thing) in seen or thing is None:
            continue
        seen.add(id(thing))
        if isinstance(thing, MappingProxyType):  # a row of a table is a parameter
            at_first.add(_TABLES)
        home = thing.__name__ if isinstance(thing, ModuleType) else getattr(thing, "__module__", None) or ""
        if home.startswith(_PREFIX):
            at_first.add(home.removeprefix(_PREFIX))
        elif isinstance(thing, FunctionType) and home == test.__module__:
            waiting += [thing.__globals__.get(name) for name in _names_in(thing.__code__)]
    found = {name for one in at_first for name in _imported_by(one)}
    return found | {name for name in MODULES if _TABLES in at_first and _TABLES in _imported_by(name)}


def _flat(thing: Any) -> Iterator[Any]:
    """A parameter, or what it holds: cases of pytest, tuples, and dataclasses of this folder."""
    if isinstance(thing, list | tuple):
        values = list(thing.values) if hasattr(thing, "values") else list(thing)
    elif is_record(type(thing)):
        values = [getattr(thing, name) for name in field_names(type(thing))]
    else:
        yield thing
        return
    for one in values:
        yield from _flat(one)


def _names_in(code: CodeType) -> set[str]:
    inner = (const for const in code.co_consts if isinstance(const, CodeType))
    return set(code.co_names).union(*(_names_in(one) for one in inner))


@cache
def _exported(package: str) -> dict[str, str]:
    """The module that each public name of a package of the handbook comes from; none for a module."""
    stub = HANDBOOK.joinpath(*package.split("."), "__init__.pyi")
    found: dict[str, str] = {}
    if stub.exists():
        for node in ast.walk(ast.parse(stub.read_text(encoding="utf-8"))):
            if isinstance(node, ast.ImportFrom) and node.module:
                found.update({alias.name: f"{package}.{node.module}" for alias in node.names})
    return found


@cache
def _imported_by(module: str) -> frozenset[str]:
    """A module of the handbook and all that it imports of the handbook."""
    found: set[str] = set()
    waiting = [module]
    while waiting:
        one = waiting.pop()
        if one in found or one not in MODULES:
            continue
        found.add(one)
        waiting += _exported(one).values()
        for node in ast.walk(ast.parse(MODULES[one].read_text(encoding="utf-8"))):
            if isinstance(node, ast.ImportFrom) and f"{node.module}.".startswith(_PREFIX):
                base = f"{node.module}.".removeprefix(_PREFIX)
                exported = _exported(base.removesuffix("."))
                waiting += [exported.get(alias.name, base + alias.name) for alias in node.names]
                waiting += [] if exported else [base.removesuffix(".")]
    return frozenset(found)
