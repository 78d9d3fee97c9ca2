"""And in the place of or, and a not that is dropped."""

from __future__ import annotations

import ast
from collections.abc import Iterator

from tests.mutation.spots import Change, Spot


def changes(spot: Spot) -> Iterator[Change]:
    """One for each row of ands or ors, and for each not."""
    node = spot.node
    if isinstance(node, ast.BoolOp):
        if isinstance(node.op, ast.And):
            yield spot.change("and -> or", lambda: setattr(node, "op", ast.Or()))
        else:
            yield spot.change("or -> and", lambda: setattr(node, "op", ast.And()))
    elif isinstance(node, ast.UnaryOp) and isinstance(node.op, ast.Not):
        yield spot.instead("not x -> x", node.operand)
