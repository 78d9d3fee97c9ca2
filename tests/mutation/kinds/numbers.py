"""A number that states something about the world, 2 % greater.

Left out, because 2 % of it means nothing: zero; booleans; and an integer that counts or points rather than measures,
which is one inside a subscript, one in a comparison or a sum with ``len``, one given to a function in ``COUNTING``, and
the edition of a rule. Where a drawing puts its ink is left to the eye: numbers of reports and of figures are left out.
What the rule cannot know is left out by hand, in ``accepted.toml``.
"""

from __future__ import annotations

import ast
from collections.abc import Iterator

from tests.mutation.mutants import corrupted
from tests.mutation.spots import Change, Spot, called

#: Functions whose integers are positions, counts or digits to print.
COUNTING = frozenset(
    {"range", "islice", "enumerate", "round", "split", "rsplit", "get_close_matches", "lru_cache"}
)


def measured_in(file: str) -> bool:
    """Whether the numbers of a file measure anything but ink and paper."""
    return not file.startswith("speclint/reports/") and "/figures/" not in file


def changes(spot: Spot) -> Iterator[Change]:
    """One for each number that measures."""
    node = spot.node
    if not isinstance(node, ast.Constant) or type(node.value) not in (int, float) or node.value == 0:
        return
    value = node.value
    assert isinstance(value, int | float)
    if not (isinstance(value, int) and counts(spot)):
        yield spot.instead(f"{value!r} -> {corrupted(value)!r}", ast.Constant(corrupted(value)))


def counts(spot: Spot) -> bool:
    """Whether an integer here counts or points."""
    inner = spot
    for outer in spot.above():
        node = outer.node
        if isinstance(node, ast.stmt):
            return False
        if isinstance(node, ast.Subscript) and inner.name == "slice":
            return True
        if isinstance(node, ast.keyword) and node.arg == "edition":
            return True
        if isinstance(node, ast.Call) and called(node) in COUNTING and inner.name != "func":
            return True
        if _is_beside_length(node):
            return True
        inner = outer
    return False


def _is_beside_length(node: ast.AST) -> bool:
    if isinstance(node, ast.Compare):
        sides = [node.left, *node.comparators]
    elif isinstance(node, ast.BinOp):
        sides = [node.left, node.right]
    else:
        return False
    return any(isinstance(side, ast.Call) and called(side) == "len" for side in sides)
