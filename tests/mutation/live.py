"""Puts a mutant into a process that has everything imported: the functions that live there run its code from now on."""

from __future__ import annotations

import ast
import gc
import sys
from collections import defaultdict
from collections.abc import Iterator
from pathlib import Path
from types import CodeType, FunctionType

from tests.mutation import kinds
from tests.mutation.installing import change_modules, change_table, module_name
from tests.mutation.mutants import Mutant
from tests.mutation.outside import bring_in

_Name = tuple[str, int, int]


class Live:
    """The functions that live in this process, by the file that they were read from."""

    def __init__(self, root: Path) -> None:
        self._root = root
        self._functions: dict[str, list[FunctionType]] = defaultdict(list)
        for found in gc.get_objects():
            if isinstance(found, FunctionType) and found.__code__.co_filename.startswith(str(root)):
                self._functions[found.__code__.co_filename].append(found)

    def install(self, mutant: Mutant) -> bool:
        """Whether the mutant is in place; False where only a fresh import would bring it in."""
        if not mutant.file.endswith(".py"):
            change_table(self._root, mutant)
            return True
        if module_name(mutant.file) not in sys.modules:
            change_modules(self._root, {mutant.file: lambda tree: kinds.make(tree, mutant)}, at_once=False)
            return True
        if not mutant.block:
            return bring_in(self._root, mutant, self._functions[str(self._root / mutant.file)])
        return self._exchange(mutant)

    def _exchange(self, mutant: Mutant) -> bool:
        place = str(self._root / mutant.file)
        tree = ast.parse(Path(place).read_text(encoding="utf-8"))
        kinds.make(tree, mutant)
        made = compile(ast.fix_missing_locations(tree), place, "exec", dont_inherit=True)
        codes: dict[_Name, list[CodeType]] = defaultdict(list)
        for code in _inside(made):
            codes[_name(code)].append(code)
        exchanged = False
        for function in self._functions[place]:
            new = codes[_name(function.__code__)]
            if len(new) != 1:
                if mutant.function.endswith(function.__qualname__):
                    return False
            elif new[0] != function.__code__:
                if new[0].co_freevars != function.__code__.co_freevars:
                    return False
                function.__code__ = new[0]
                exchanged = True
        return exchanged


def _inside(code: CodeType) -> Iterator[CodeType]:
    for constant in code.co_consts:
        if isinstance(constant, CodeType):
            yield constant
            yield from _inside(constant)


def _name(code: CodeType) -> _Name:
    """What tells a function from the others of its file: name, line, and column of its first step."""
    column = next((start for _, _, start, _ in code.co_positions() if start), 0)
    return (
        getattr(code, "co_qualname", code.co_name),
        code.co_firstlineno,
        column if code.co_name == "<lambda>" else 0,
    )
