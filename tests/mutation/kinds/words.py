"""A word that something is compared with, misspelt."""

from __future__ import annotations

import ast
from collections.abc import Iterator

from tests.mutation.spots import Change, Spot


def changes(spot: Spot) -> Iterator[Change]:
    """One for each text in a comparison, alone or in a tuple, a list or a set of them, and in a case."""
    node = spot.node
    if not isinstance(node, ast.Constant) or not isinstance(node.value, str) or spot.parent is None:
        return
    holder = spot.parent
    if isinstance(holder.node, ast.Tuple | ast.List | ast.Set) and holder.parent is not None:
        holder = holder.parent
    if isinstance(holder.node, ast.Compare | ast.MatchValue):
        yield spot.instead(f"{node.value!r} -> {node.value + '~'!r}", ast.Constant(node.value + "~"))
