"""Tries mutants one after another and counts those that no test notices."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass, field
from pathlib import Path

from tests.mutation.exempt import counted
from tests.mutation.installing import module_name
from tests.mutation.mutants import Mutant
from tests.mutation.running import file_of
from tests.mutation.trials import Baseline, killer


@dataclass
class Score:
    """What became of the mutants of one file."""

    file: str
    mutants: int = 0
    exempt: int = 0
    survivors: list[Mutant] = field(default_factory=list)

    @property
    def killed(self) -> int:
        return self.mutants - len(self.survivors)

    @property
    def share(self) -> float:
        """Of the mutants, how many were noticed; 1 where there is none."""
        return self.killed / self.mutants if self.mutants else 1.0

    def __str__(self) -> str:
        left_out = f", {self.exempt} exempt" if self.exempt else ""
        return f"{self.mutants:5} mutants {self.killed:5} killed {self.share:7.1%}  {self.file}{left_out}"


def scored(root: Path, file: str, mutants: Sequence[Mutant], known: Baseline) -> Score:
    """Try each mutant of the file that is not exempt on the tests that can see it."""
    tried = counted(mutants)
    score = Score(file, len(tried), len(mutants) - len(tried))
    order = _Order(root, file, known)
    for mutant in tried:
        for tests in order.rounds(mutant):
            if found := killer(root, mutant, tests, order.patience(tests)):
                order.killers.insert(0, found)
                break
        else:
            score.survivors.append(mutant)
    return score


class _Order:
    """Tests that can see a mutant: first those of the module's own name and those that noticed another, then all."""

    def __init__(self, root: Path, file: str, known: Baseline) -> None:
        self._root = root
        self._file = file
        self._known = known
        self._importers: set[str] | None = None
        self.killers: list[str] = []

    def rounds(self, mutant: Mutant) -> list[list[str]]:
        tests = sorted(self._seeing(mutant), key=self._haste)
        near = [test for test in tests if self._is_near(test)]
        return [some for some in (near, [test for test in tests if test not in set(near)]) if some]

    def patience(self, tests: Sequence[str]) -> float:
        """Seconds after which the mutant has made one of the tests endless."""
        return 60 + 5 * sum(self._known.seconds.get(test, 0.0) for test in tests)

    def _seeing(self, mutant: Mutant) -> set[str]:
        if mutant.function:
            key = f"{mutant.file}:{mutant.function}"
            return {test for test, keys in self._known.touched.items() if key in keys}
        return self._anywhere()

    def _anywhere(self) -> set[str]:
        """Tests that touch the file at all, or stand in a file that imports the module."""
        if self._importers is None:
            files = {file_of(test) for test in self._known.touched}
            importing = {file for file in files if self._names_module((self._root / file).read_text("utf-8"))}
            self._importers = {
                test
                for test, keys in self._known.touched.items()
                if self._file in keys or file_of(test) in importing
            }
        return self._importers

    def _names_module(self, text: str) -> bool:
        """Whether a file of tests imports the module, whole or by its package."""
        package, _, name = module_name(self._file).rpartition(".")
        return package in text and re.search(rf"\b{name}\b", text) is not None

    def _haste(self, test: str) -> tuple[int, float]:
        noticed = self.killers.index(test) if test in self.killers else len(self.killers)
        return noticed, self._known.seconds.get(test, 0.0)

    def _is_near(self, test: str) -> bool:
        stem = Path(self._file).stem
        return test in self.killers or stem in Path(file_of(test)).stem
