"""True in the place of False, and the other way: defaults of parameters and fields, and what is given by keyword."""

from __future__ import annotations

import ast
from collections.abc import Iterator

from tests.mutation.spots import Change, Spot, called

#: Keywords that guard the programmer alone, or say how a class is built.
_OF_BUILDING = frozenset(
    {"strict", "frozen", "slots", "repr", "init", "eq", "kw_only", "compare", "hash", "order", "memory"}
)


def changes(spot: Spot) -> Iterator[Change]:
    """One for each of them."""
    node = spot.node
    if not isinstance(node, ast.Constant) or not isinstance(node.value, bool) or spot.parent is None:
        return
    holder = spot.parent.node
    given = isinstance(holder, ast.keyword) and holder.arg not in _OF_BUILDING
    default = isinstance(holder, ast.arguments)
    field = isinstance(holder, ast.AnnAssign) and any(isinstance(a.node, ast.ClassDef) for a in spot.above())
    if given and called(spot.parent.parent.node if spot.parent.parent else node) in {
        "dataclass",
        "lru_cache",
    }:
        return
    if given or default or field:
        yield spot.instead(f"{node.value} -> {not node.value}", ast.Constant(not node.value))
