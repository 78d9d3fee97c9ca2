"""The test that noticed each mutant of the sample when it was last tried in full: in CI it is tried first, by itself.

Where it does not notice any more, or a change of the code drew another mutant, that one is tried in full. So the sample
costs a minute and says the same. ``--write`` renews the list.
"""

from __future__ import annotations

import json
import os
from collections.abc import Iterator, Mapping, Sequence
from pathlib import Path

from tests.mutation.mutants import Mutant
from tests.mutation.running import file_of
from tests.mutation.serving import FRESH, OUT_OF_TIME, Server
from tests.mutation.trials import killer

LIST = Path("tests/mutation/noticed.json")
_PATIENCE = 20.0


def missed(root: Path, mutants: Sequence[Mutant]) -> list[Mutant]:
    """Those of the mutants that have no such test, or whose test passes on them."""
    noticed = _read(root)
    tests = {mutant: noticed.get(_name(mutant), "") for mutant in mutants}
    files = sorted({file_of(test) for test in tests.values() if (root / file_of(test)).is_file()})
    if not files or not hasattr(os, "fork"):
        return list(mutants)
    with Server(root, files, first="") as server:
        return list(_missed(root, tests, server))


def write(root: Path, noticed: Mapping[Mutant, str]) -> None:
    """List these tests in place of those listed."""
    told = {
        _name(mutant): test.removeprefix(f"{OUT_OF_TIME}: ")
        for mutant, test in sorted(noticed.items(), key=lambda each: _name(each[0]))
        if "::" in test
    }
    (root / LIST).write_text(json.dumps(told, ensure_ascii=False, indent=1) + "\n", encoding="utf-8")


def _read(root: Path) -> dict[str, str]:
    place = root / LIST
    return dict(json.loads(place.read_text(encoding="utf-8"))) if place.exists() else {}


def _missed(root: Path, tests: Mapping[Mutant, str], server: Server) -> Iterator[Mutant]:
    for mutant, test in tests.items():
        found = server.first_to_fail(mutant, {test: _PATIENCE}, _PATIENCE) if test else None
        if test and found in (FRESH, None):
            found = killer(root, mutant, [test], _PATIENCE)
        if found is None:
            yield mutant


def _name(mutant: Mutant) -> str:
    return f"{mutant.file}: {mutant.change}   {mutant.code}   {mutant.again}"
