"""What the tests of a package do as things are: kept by file of tests, and run anew where the file has changed.

What is kept of a file of tests holds as long as its text, that of the helpers it imports, and each function of the
package that it ran are as they were.
"""

from __future__ import annotations

import ast
import re
import sys
from collections.abc import Sequence
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

import pytest

from tests.mutation.apart import apart
from tests.mutation.blocks import Blocks
from tests.mutation.kept import Kept, digest, digest_of
from tests.mutation.running import assess_example, file_of, keep_example, run_pytest
from tests.mutation.touching import Touches

#: Longest that all tests of a package together may take.
_LONGEST = 7200.0
_QUICK = 5.0


@dataclass
class Known:
    """What is known of the tests.

    Fields:
        touched: keys by test.
        imported: keys that run when a file of tests is imported.
        cached: keys of what ran to find a result that a cache keeps.
        seconds: by test.
        libraries: modules from elsewhere that they import.
    """

    touched: dict[str, set[str]] = field(default_factory=dict)
    imported: dict[str, set[str]] = field(default_factory=dict)
    cached: set[str] = field(default_factory=set)
    seconds: dict[str, float] = field(default_factory=dict)
    libraries: list[str] = field(default_factory=list)

    @property
    def widest(self) -> str:
        """Of the quick tests, the one that touches the most; empty where there is none."""
        quick = [test for test, seconds in self.seconds.items() if seconds < _QUICK]
        return max(quick, key=lambda test: (len(self.touched.get(test, ())), test), default="")


def surveyed(
    root: Path, modules: Sequence[str], tests: Sequence[str], kept: Kept, example: bool = False
) -> Known:
    """What the tests touch of the modules, with the example assessed before them where they read it.

    RuntimeError with their output when one fails.
    """
    functions = _functions(root, modules)
    known = Known()
    stale = []
    for file in tests:
        found = kept.get(_key(root, modules, file))
        if found is None or any(functions.get(name) != text for name, text in found["functions"].items()):
            stale.append(file)
        else:
            _add(known, file, found)
    if stale:
        if example:
            keep_example()
        made = apart(
            _LONGEST, _run, root, tuple(modules), tuple(stale), example, called=f"the tests of {modules[0]}"
        )
        if not isinstance(made, dict):
            raise RuntimeError(made or "the tests did not end")
        for file in stale:
            found = made[file]
            names = {key.rpartition(":")[0] for key in found["keys"] if "::" in key}
            found["functions"] = {name: functions[name] for name in names if name in functions}
            kept.put(_key(root, modules, file), found)
            _add(known, file, found)
    return known


def support(root: Path, file: str) -> list[Path]:
    """A file of tests and what it stands on: the conftests above it and the helpers that it imports."""
    place = root / file
    above = [folder / "conftest.py" for folder in place.parents if folder.is_relative_to(root)]
    names = re.findall(r"^from (tests[\w.]*) import", place.read_text(encoding="utf-8"), re.MULTILINE)
    helpers = [root / f"{name.replace('.', '/')}.py" for name in names]
    return [each for each in (place, *above, *helpers) if each.exists()]


def _key(root: Path, modules: Sequence[str], file: str) -> str:
    return digest("survey 3", str(root), file, *modules[:1], digest_of(support(root, file)))


def _functions(root: Path, modules: Sequence[str]) -> dict[str, str]:
    found: dict[str, str] = {}
    for file in modules:
        found |= Blocks(ast.parse((root / file).read_text(encoding="utf-8")), file).functions
    return found


def _add(known: Known, file: str, found: dict[str, Any]) -> None:
    keys = found["keys"]
    for test, (seconds, places) in found["tests"].items():
        known.touched[test] = {keys[place] for place in places}
        known.seconds[test] = seconds
    known.cached |= {keys[place] for place in found["cached"]}
    known.imported[file] = {keys[place] for place in found["imports"]}
    known.libraries = known.libraries or found["libraries"]


def _run(root: Path, modules: tuple[str, ...], tests: tuple[str, ...], example: bool) -> dict[str, Any] | str:
    touches = Touches(root, modules)
    if example:
        assess_example()
    code, said = run_pytest(root, tests, touches, stop=False)
    if code not in (pytest.ExitCode.OK, pytest.ExitCode.TESTS_FAILED) or touches.failed:
        return said
    libraries = _libraries(root)
    return {file: _told(file, touches, libraries) for file in tests}


def _told(file: str, touches: Touches, libraries: list[str]) -> dict[str, Any]:
    of_tests = {test: keys for test, keys in touches.of_tests.items() if file_of(test) == file}
    imports = touches.of_imports.get(file, set())
    places = {key: place for place, key in enumerate(sorted(set().union(imports, *of_tests.values())))}
    tests = {
        test: (round(touches.seconds.get(test, 0.0), 4), sorted(places[key] for key in keys))
        for test, keys in of_tests.items()
    }
    told = {
        "imports": sorted(places[key] for key in imports),
        "cached": sorted(places[key] for key in touches.in_caches & places.keys()),
    }
    return {"keys": list(places), "tests": tests, "libraries": libraries, **told}


def _libraries(root: Path) -> list[str]:
    """Modules from elsewhere, in the order of their import."""
    files = {name: getattr(module, "__file__", None) or "" for name, module in list(sys.modules.items())}
    return [
        name for name, file in files.items() if "site-packages" in file and not file.startswith(str(root))
    ]
