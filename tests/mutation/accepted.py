"""Mutants that no test can catch, or need not, each with the reason: read from ``accepted.toml`` beside this."""

from __future__ import annotations

import functools
import tomllib
from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path

from tests.mutation.mutants import Mutant

LIST = Path("tests/mutation/accepted.toml")


@dataclass(frozen=True)
class Accepted:
    """All mutants of a file with this change in lines that hold this code."""

    file: str
    code: str
    change: str
    reason: str

    def covers(self, mutant: Mutant) -> bool:
        return (mutant.file, mutant.change) == (self.file, self.change) and self.code in mutant.code

    def __str__(self) -> str:
        return f"{self.file}: {self.change}   {self.code}"


@functools.cache
def accepted(root: Path) -> tuple[Accepted, ...]:
    """All that are listed; none where there is no list."""
    place = root / LIST
    if not place.exists():
        return ()
    groups = tomllib.loads(place.read_text(encoding="utf-8"))["accepted"]
    return tuple(
        Accepted(file, code, change, group["reason"])
        for group in groups
        for file, code, change in group["of"]
    )


def counted(root: Path, mutants: Sequence[Mutant]) -> list[Mutant]:
    """Those that are not accepted."""
    return [mutant for mutant in mutants if not any(each.covers(mutant) for each in accepted(root))]


def stale(root: Path, files: Sequence[str], mutants: Sequence[Mutant]) -> list[Accepted]:
    """Entries of these files, or of a file that is gone, that cover none of the mutants any more."""
    return [
        each
        for each in accepted(root)
        if (each.file in files or not (root / each.file).exists())
        and not any(each.covers(mutant) for mutant in mutants)
    ]
