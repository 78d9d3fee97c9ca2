"""All in the place of any, the least in the place of the greatest."""

from __future__ import annotations

import ast
from collections.abc import Iterator

from tests.mutation.spots import Change, Spot

_OTHER = {"any": "all", "all": "any", "min": "max", "max": "min"}


def changes(spot: Spot) -> Iterator[Change]:
    """One for each call."""
    node = spot.node
    if isinstance(node, ast.Call) and isinstance(node.func, ast.Name) and node.func.id in _OTHER:
        name = node.func
        yield spot.change(f"{name.id} -> {_OTHER[name.id]}", lambda: setattr(name, "id", _OTHER[name.id]))
