"""A sample that rests on the seed and on each mutant's own text: a change in one file draws no other file anew."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from tests.mutation.kept import digest
from tests.mutation.mutants import Mutant


def drawn(mutants: Sequence[Mutant], number: int, seed: int) -> list[Mutant]:
    """So many of them, in the order of the files."""
    return sorted(_ranked(mutants, seed)[:number], key=lambda mutant: (mutant.file, mutant.order))


def drawn_evenly(of_packages: Mapping[str, Sequence[Mutant]], number: int, seed: int) -> list[Mutant]:
    """So many of all, one of each package in turn until there are enough."""
    ranked = [_ranked(mutants, seed) for _, mutants in sorted(of_packages.items())]
    rounds = (mutants[turn] for turn in range(number) for mutants in ranked if turn < len(mutants))
    chosen = [mutant for mutant, _ in zip(rounds, range(number), strict=False)]
    return sorted(chosen, key=lambda mutant: (mutant.file, mutant.order))


def _ranked(mutants: Sequence[Mutant], seed: int) -> list[Mutant]:
    return sorted(mutants, key=lambda mutant: _rank(mutant, seed))


def _rank(mutant: Mutant, seed: int) -> str:
    return digest(str(seed), mutant.file, mutant.change, mutant.code, str(mutant.again))
