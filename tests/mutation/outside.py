"""Brings a change that stands outside of functions into a process that has its module: a limit, a default, a constant.

What else was worked out from it as the module was imported stays as it was, so a mutant that nothing notices here is
tried again with a fresh import.
"""

from __future__ import annotations

import ast
import sys
from collections.abc import Iterable, Iterator
from pathlib import Path
from types import FunctionType, ModuleType
from typing import Any

from tests.mutation import kinds
from tests.mutation.installing import module_name
from tests.mutation.mutants import Mutant
from tests.mutation.spots import called


def bring_in(root: Path, mutant: Mutant, functions: Iterable[FunctionType]) -> bool:
    """Whether it could be brought in."""
    text = (root / mutant.file).read_text(encoding="utf-8")
    before, after = ast.parse(text), ast.parse(text)
    kinds.make(after, mutant)
    module = sys.modules[module_name(mutant.file)]
    for old, new in zip(before.body, after.body, strict=True):
        if ast.dump(old) != ast.dump(new):
            return _limit(module, old, new) or _default(old, new, functions) or _constant(root, module, new)
    return False


def _limit(module: ModuleType, old: ast.stmt, new: ast.stmt) -> bool:
    """The default of a declared limit, in the rule of a function or by itself."""
    name = getattr(old, "name", "") or next((called(target) for target in getattr(old, "targets", ())), "")
    held = getattr(module, name, None)
    limits = [*getattr(held, "limits", ()), held]
    for before, after in zip(_limits(old), _limits(new), strict=True):
        if before != after:
            found = [limit for limit in limits if getattr(limit, "name", None) == before[0]]
            for limit in found:
                object.__setattr__(limit, "default", after[1])
            return bool(found)
    return False


def _limits(node: ast.stmt) -> list[tuple[str, str]]:
    calls = (each for each in ast.walk(node) if isinstance(each, ast.Call) and called(each) == "Limit")
    given = ([each.value for each in call.args if isinstance(each, ast.Constant)] for call in calls)
    return [(str(some[0]), str(some[1])) for some in given if len(some) > 1]


def _default(old: ast.stmt, new: ast.stmt, functions: Iterable[FunctionType]) -> bool:
    """The default of a parameter, where it is written as a constant."""
    for before, after in zip(_functions(old), _functions(new), strict=True):
        if ast.dump(before.args) == ast.dump(after.args):
            continue
        for function in functions:
            code = function.__code__
            lines = range(before.lineno - len(before.decorator_list) * 40, before.lineno + 1)
            if code.co_name == before.name and code.co_firstlineno in lines:
                return _exchanged(function, before.args, after.args)
    return False


def _functions(node: ast.stmt) -> Iterator[ast.FunctionDef]:
    return (each for each in ast.walk(node) if isinstance(each, ast.FunctionDef))


def _exchanged(function: FunctionType, before: ast.arguments, after: ast.arguments) -> bool:
    defaults: list[Any] = list(function.__defaults__ or ())
    for place, (old, new) in enumerate(zip(before.defaults, after.defaults, strict=True)):
        if isinstance(new, ast.Constant) and ast.dump(old) != ast.dump(new):
            defaults[place] = new.value
            function.__defaults__ = tuple(defaults)
            return True
    for argument, earlier, later in zip(
        before.kwonlyargs, before.kw_defaults, after.kw_defaults, strict=True
    ):
        if isinstance(later, ast.Constant) and earlier and ast.dump(earlier) != ast.dump(later):
            function.__kwdefaults__ = {**(function.__kwdefaults__ or {}), argument.arg: later.value}
            return True
    return False


def _constant(root: Path, module: ModuleType, new: ast.stmt) -> bool:
    """A constant of the module, there and where it was imported from there."""
    if not isinstance(new, ast.Assign | ast.AnnAssign) or new.value is None:
        return False
    targets = new.targets if isinstance(new, ast.Assign) else [new.target]
    if len(targets) != 1 or not isinstance(targets[0], ast.Name):
        return False
    name = targets[0].id
    earlier = getattr(module, name, None)
    expression = ast.fix_missing_locations(ast.Expression(new.value))
    later = eval(compile(expression, module.__file__ or "", "eval"), dict(vars(module)))
    for other in list(sys.modules.values()):
        if (getattr(other, "__file__", None) or "").startswith(str(root)) and vars(other).get(
            name
        ) is earlier:
            setattr(other, name, later)
    return True
