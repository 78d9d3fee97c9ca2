"""A statement that is left out: a call, an addition, a raise, an end of a loop; a result that is dropped."""

from __future__ import annotations

import ast
from collections.abc import Iterator

from tests.mutation.spots import Change, Spot


def changes(spot: Spot) -> Iterator[Change]:
    """One for each such statement. A function's only return is kept: without it nothing is tested."""
    node = spot.node
    if isinstance(node, ast.Expr) and isinstance(node.value, ast.Call):
        yield spot.instead("call -> nothing", ast.Pass())
    elif isinstance(node, ast.AugAssign):
        yield spot.instead("addition -> nothing", ast.Pass())
    elif isinstance(node, ast.Raise):
        yield spot.instead("raise -> nothing", ast.Pass())
    elif isinstance(node, ast.Continue | ast.Break):
        yield spot.instead(f"{type(node).__name__.lower()} -> nothing", ast.Pass())
    elif (
        isinstance(node, ast.Return)
        and isinstance(node.value, ast.Constant)
        and type(node.value.value) is bool
    ):
        other = not node.value.value
        yield spot.change(
            f"return {not other} -> return {other}", lambda: setattr(node, "value", ast.Constant(other))
        )
    elif isinstance(node, ast.Return) and _gives(node) and _returns(spot) > 1:
        yield spot.change("return x -> return None", lambda: setattr(node, "value", ast.Constant(None)))


def _gives(node: ast.Return) -> bool:
    empty = isinstance(node.value, ast.Constant) and node.value.value is None
    return node.value is not None and not empty


def _returns(spot: Spot) -> int:
    for above in spot.above():
        if isinstance(above.node, ast.FunctionDef):
            return sum(isinstance(node, ast.Return) for node in ast.walk(above.node))
    return 0
