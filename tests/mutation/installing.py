"""Puts a mutant in the place of the real file, for this process only."""

from __future__ import annotations

import ast
import builtins
import importlib
import io
import os
import sys
from collections.abc import Callable, Mapping
from importlib.abc import MetaPathFinder
from importlib.machinery import ModuleSpec, SourceFileLoader
from importlib.util import spec_from_file_location
from pathlib import Path
from types import CodeType
from typing import Any

from tests.mutation import cells, kinds
from tests.mutation.mutants import Mutant

Change = Callable[[ast.Module], None]


def install(root: Path, mutant: Mutant) -> None:
    """From now on this process imports, or reads, the corrupted file."""
    if mutant.file.endswith(".py"):
        change_modules(root, {mutant.file: lambda tree: kinds.make(tree, mutant)})
    else:
        change_table(root, mutant)


def change_modules(root: Path, changes: Mapping[str, Change], at_once: bool = True) -> None:
    """Import each of these modules as its change makes it, now or when something asks for it."""
    finder = Finder(root, changes)
    sys.meta_path.insert(0, finder)
    for name in finder.files if at_once else ():
        importlib.import_module(name)


def module_name(file: str) -> str:
    """What the module in the file is imported as."""
    return file.removeprefix("plugins/").removesuffix(".py").removesuffix("/__init__").replace("/", ".")


class Finder(MetaPathFinder):
    """Finds the modules that are to be changed."""

    def __init__(self, root: Path, changes: Mapping[str, Change]) -> None:
        self._root = root
        self._changes = changes
        self.files = {module_name(file): file for file in changes}

    def find_spec(self, fullname: str, *_: object) -> ModuleSpec | None:
        file = self.files.get(fullname)
        if file is None:
            return None
        place = str(self._root / file)
        return spec_from_file_location(fullname, place, loader=_Changed(fullname, place, self._changes[file]))


class _Changed(SourceFileLoader):
    """Compiles the changed syntax tree and leaves the store of compiled modules alone."""

    def __init__(self, name: str, place: str, change: Change) -> None:
        super().__init__(name, place)
        self._change = change

    def get_code(self, fullname: str) -> CodeType:  # noqa: ARG002 - the one module of this loader
        tree = ast.parse(self.get_data(self.path))
        self._change(tree)
        code = compile(ast.fix_missing_locations(tree), self.path, "exec", dont_inherit=True)
        assert isinstance(code, CodeType)
        return code


def change_table(root: Path, mutant: Mutant) -> None:
    """From now on this process reads the corrupted table."""
    place = root / mutant.file
    text = cells.corrupt(mutant, place.read_text(encoding="utf-8"))
    watch_files(lambda file: text if file == place else None)


def watch_files(instead: Callable[[Path], str | None]) -> None:
    """Show ``instead`` the path of each file that is opened; what it returns is read in the place of the file."""
    real = io.open

    def opened(file: Any, mode: str = "r", *arguments: Any, **named: Any) -> Any:
        text = (
            instead(Path(os.path.abspath(os.fspath(file)))) if isinstance(file, str | os.PathLike) else None
        )
        if text is None:
            return real(file, mode, *arguments, **named)
        return io.BytesIO(text.encode()) if "b" in mode else io.StringIO(text)

    io.open = builtins.open = opened
