"""Literals of which 2 % means nothing and the rule cannot tell: each with the reason."""

from __future__ import annotations

from dataclasses import dataclass

from tests.mutation.mutants import Mutant


@dataclass(frozen=True)
class Exempt:
    """All literals of this value in lines of the file that hold this code."""

    file: str
    code: str
    value: float
    reason: str

    def covers(self, mutant: Mutant) -> bool:
        return (mutant.file, mutant.original) == (self.file, self.value) and self.code in mutant.code


EXEMPT: tuple[Exempt, ...] = (
    Exempt(
        "speclint/handbook/tables.py", "cutoff=0.5", 0.5, "how alike a name must be to be offered to a reader"
    ),
    Exempt(
        "speclint/handbook/materials/library.py",
        "cutoff=0.6",
        0.6,
        "how alike a name must be to be offered to a reader",
    ),
)


def counted(mutants: list[Mutant]) -> list[Mutant]:
    """Those that are not exempt."""
    return [mutant for mutant in mutants if not any(exempt.covers(mutant) for exempt in EXEMPT)]
