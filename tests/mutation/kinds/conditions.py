"""A condition that always holds, or never."""

from __future__ import annotations

import ast
from collections.abc import Iterator

from tests.mutation.spots import Change, Spot


def changes(spot: Spot) -> Iterator[Change]:
    """Both for each condition of an if, a conditional expression and a filter; a while only never runs."""
    if not isinstance(spot.node, ast.expr) or isinstance(spot.node, ast.Constant) or spot.parent is None:
        return
    asked = isinstance(spot.parent.node, ast.If | ast.IfExp | ast.While) and spot.name == "test"
    if not asked and not (isinstance(spot.parent.node, ast.comprehension) and spot.name == "ifs"):
        return
    yield spot.instead("condition -> False", ast.Constant(False))
    if not isinstance(spot.parent.node, ast.While):
        yield spot.instead("condition -> True", ast.Constant(True))
