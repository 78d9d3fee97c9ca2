"""An index, a count or an end of a slice, off by one."""

from __future__ import annotations

import ast
from collections.abc import Iterator

from tests.mutation.kinds import numbers
from tests.mutation.spots import Change, Spot, called

_DIGITS = frozenset({"round", "get_close_matches", "lru_cache"})


def changes(spot: Spot) -> Iterator[Change]:
    """One more for each 0 and each 1 that counts or points."""
    node = spot.node
    if not isinstance(node, ast.Constant) or type(node.value) is not int or node.value not in (0, 1):
        return
    if any(called(above.node) in _DIGITS for above in spot.above() if isinstance(above.node, ast.Call)):
        return
    edition = isinstance(spot.parent and spot.parent.node, ast.keyword)
    if numbers.counts(spot) and not edition:
        yield spot.instead(f"{node.value} -> {node.value + 1}", ast.Constant(node.value + 1))
