"""What is changed in a module: one kind of change a module, each a function from a place to the changes there."""

from __future__ import annotations

import ast
from collections import Counter
from collections.abc import Iterator
from pathlib import Path

from tests.mutation.blocks import Blocks
from tests.mutation.kinds import (
    arguments,
    arithmetic,
    comparisons,
    conditions,
    counts,
    extremes,
    flags,
    limits,
    logic,
    numbers,
    statements,
    words,
)
from tests.mutation.mutants import Mutant
from tests.mutation.spots import Change, spots

_KINDS = (
    arguments,
    arithmetic,
    comparisons,
    conditions,
    counts,
    extremes,
    flags,
    limits,
    logic,
    numbers,
    statements,
    words,
)


def mutants(root: Path, file: str) -> list[Mutant]:
    """One for each change of the module, in the order of the text."""
    text = (root / file).read_text(encoding="utf-8")
    lines = text.splitlines()
    tree = ast.parse(text)
    blocks = Blocks(tree, file)
    alike: Counter[tuple[str, str]] = Counter()
    found = []
    for order, change in enumerate(_changes(tree, file)):
        code = lines[change.line - 1].strip()
        again = alike[change.text, code]
        alike[change.text, code] += 1
        block = blocks.of_node.get(change.node, "")
        found.append(Mutant(file, change.line, order, change.text, code, block, again))
    return found


def make(tree: ast.Module, mutant: Mutant) -> None:
    """Change the tree of the mutant's file as the mutant says."""
    change = _changes(tree, mutant.file)[mutant.order]
    assert change.text == mutant.change
    change.make()


def _changes(tree: ast.Module, file: str) -> list[Change]:
    return sorted(_all(tree, file), key=lambda change: (change.line, change.column, change.text))


def _all(tree: ast.Module, file: str) -> Iterator[Change]:
    for spot in spots(tree):
        for kind in _KINDS:
            if kind is not numbers or numbers.measured_in(file):
                yield from kind.changes(spot)
