"""Tries the mutants of a package one after another and counts those that no test notices."""

from __future__ import annotations

import functools
import os
import re
import time
from collections import Counter
from collections.abc import Iterator, Sequence
from contextlib import ExitStack
from dataclasses import dataclass, field
from pathlib import Path

from tests.mutation.installing import module_name
from tests.mutation.kept import Kept, digest, digest_of
from tests.mutation.mutants import Mutant
from tests.mutation.running import file_of
from tests.mutation.serving import FRESH, Server
from tests.mutation.survey import Known, support
from tests.mutation.trials import killer

#: Seconds more that a process may take which imports everything anew and reads the example as it is kept.
_FOR_EXAMPLE = 60.0


@dataclass
class Score:
    """What became of the mutants of one package, or of all."""

    name: str
    mutants: int = 0
    accepted: int = 0
    survivors: list[Mutant] = field(default_factory=list)

    @property
    def killed(self) -> int:
        return self.mutants - len(self.survivors)

    @property
    def share(self) -> float:
        """Of the mutants, how many were noticed; 1 where there is none."""
        return self.killed / self.mutants if self.mutants else 1.0

    def add(self, other: Score) -> None:
        self.mutants += other.mutants
        self.accepted += other.accepted
        self.survivors += other.survivors

    def __str__(self) -> str:
        left_out = f", {self.accepted} accepted" if self.accepted else ""
        return f"{self.mutants:5} mutants {self.killed:5} killed {self.share:7.1%}  {self.name}{left_out}"


@dataclass
class Trial:
    """How the mutants of one package are tried: on which files of tests, for how long, what was found before, and
    whether the example is assessed first."""

    root: Path
    tests: Sequence[str]
    known: Known
    kept: Kept
    cap: float
    patience: float = 20.0
    verbose: bool = False
    example: bool = False
    noticed: dict[Mutant, str] = field(default_factory=dict)

    def survivors(self, mutants: Sequence[Mutant]) -> Iterator[Mutant]:
        """Those of the mutants that none of the tests notices."""
        orders: dict[str, _Order] = {}
        first = "" if self.example else self.known.widest
        patience = self.patience + _FOR_EXAMPLE * self.example
        with ExitStack() as stack:
            servers: list[Server] = []
            for mutant in mutants:
                order = orders.setdefault(
                    mutant.file, _Order(self.root, mutant.file, self.known, self.cap, patience, first)
                )
                key = self._key(mutant, order)
                verdict = self.kept.get(key)
                if verdict is None:
                    if hasattr(os, "fork") and not servers:
                        server = Server(self.root, self.tests, first, self.example)
                        servers.append(stack.enter_context(server))
                    begun = time.monotonic()
                    verdict = self._tried(mutant, order, servers)
                    self.kept.put(key, verdict)
                    if self.verbose:
                        print(
                            f"{time.monotonic() - begun:6.1f} s  {mutant}: {verdict or 'SURVIVES'}",
                            flush=True,
                        )
                if verdict:
                    order.killers.insert(0, verdict)
                    self.noticed[mutant] = verdict
                else:
                    yield mutant

    def _tried(self, mutant: Mutant, order: _Order, servers: list[Server]) -> str:
        """The test that notices it; empty where none does."""
        seeing = order.hasty(order.seeing(mutant))
        found: str | None = FRESH
        if servers:
            each = {test: order.patience([test]) for test in seeing}
            found = servers[0].first_to_fail(mutant, each, order.patience(seeing)) if seeing else None
        if found == FRESH or (found is None and order.runs_at_import(mutant)):
            for tests in map(order.hasty, order.rounds(mutant)):
                if found := killer(self.root, mutant, tests, order.patience(tests)):
                    return found
            return ""
        return found or ""

    def _key(self, mutant: Mutant, order: _Order) -> str:
        files = sorted({file_of(test) for test in order.seeing(mutant)})
        text = (self.root / mutant.file).read_text(encoding="utf-8")
        said = (mutant.file, mutant.change, mutant.code, str(mutant.order), str(self.cap))
        return digest("verdict 3", text, *(_text_of_tests(self.root, file) for file in files), *said)


@functools.cache
def _text_of_tests(root: Path, file: str) -> str:
    return digest_of(support(root, file))


def _turns(seconds: dict[str, float]) -> dict[str, int]:
    """The place of each test among those of the same function, the quickest first."""
    of_functions: Counter[str] = Counter()
    turns = {}
    for test in sorted(seconds, key=lambda test: (seconds[test], test)):
        function = test.partition("[")[0]
        turns[test] = of_functions[function]
        of_functions[function] += 1
    return turns


class _Order:
    """Tests that can see a mutant: first those that noticed another and those of the module's own name, then the
    quickest, up to so many seconds."""

    def __init__(self, root: Path, file: str, known: Known, cap: float, patience: float, first: str) -> None:
        self._root, self._file, self._known, self._cap = root, file, known, cap
        self._patience = patience
        self._anywhere_: list[str] | None = None
        before = known.cached & known.touched.get(first, set())
        self._at_import = before.union(*known.imported.values())
        self._turns = _turns(known.seconds)
        self.killers: list[str] = []

    def seeing(self, mutant: Mutant) -> list[str]:
        """Tests that run the block of the mutant, or where there is none, all that touch its file."""
        touching = [test for test, keys in self._known.touched.items() if mutant.block in keys]
        return self._capped(touching) if mutant.block else self._capped(self._anywhere())

    def hasty(self, tests: Sequence[str]) -> list[str]:
        """The tests with those first that noticed other mutants of the file lately."""
        return sorted(
            tests, key=lambda test: self.killers.index(test) if test in self.killers else len(self.killers)
        )

    def rounds(self, mutant: Mutant) -> list[list[str]]:
        """Tests for a process that imports anew: near ones first, as each file of tests costs time."""
        tests = self._capped(set(self.seeing(mutant)) | set(self._anywhere()))
        near = [test for test in tests if self._is_near(test)]
        return [some for some in (near, [test for test in tests if test not in set(near)]) if some]

    def runs_at_import(self, mutant: Mutant) -> bool:
        """Whether what it changes may have run before a fork, and its result be kept, so that a fork comes too late."""
        return not mutant.block or mutant.block in self._at_import

    def patience(self, tests: Sequence[str]) -> float:
        """Seconds after which the mutant has made one of the tests endless."""
        return self._patience + 5 * sum(self._known.seconds.get(test, 0.0) for test in tests)

    def _anywhere(self) -> list[str]:
        """Tests that touch the file at all, or stand in a file that imports the module."""
        if self._anywhere_ is None:
            files = {file_of(test) for test in self._known.touched}
            importing = {file for file in files if self._names_module((self._root / file).read_text("utf-8"))}
            self._anywhere_ = [
                test
                for test, keys in self._known.touched.items()
                if self._file in keys or file_of(test) in importing
            ]
        return self._anywhere_

    def _names_module(self, text: str) -> bool:
        """Whether a file of tests imports the module, whole or by its package."""
        package, _, name = module_name(self._file).rpartition(".")
        return package in text and re.search(rf"\b{name}\b", text) is not None

    def _capped(self, tests: Sequence[str] | set[str]) -> list[str]:
        """So many that they fit the cap, and one at least; a slow one keeps out no quick one behind it."""
        left = self._cap
        chosen: list[str] = []
        for test in sorted(tests, key=self._haste):
            seconds = self._known.seconds.get(test, 0.0)
            if seconds <= left or not chosen:
                chosen.append(test)
                left -= seconds
        return chosen

    def _haste(self, test: str) -> tuple[bool, int, float, str]:
        """Near ones first unless they are slow, and one value of each test before the others of it."""
        seconds = self._known.seconds.get(test, 0.0)
        return not self._is_near(test) or seconds > self._cap / 10, self._turns.get(test, 0), seconds, test

    def _is_near(self, test: str) -> bool:
        stem = Path(self._file).stem
        return stem in Path(file_of(test)).stem
