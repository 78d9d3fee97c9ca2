"""An operation of arithmetic in the place of another."""

from __future__ import annotations

import ast
from collections.abc import Iterator

from tests.mutation.spots import Change, Spot

_OTHER: dict[type[ast.operator], tuple[str, type[ast.operator]]] = {
    ast.Add: ("+ -> -", ast.Sub),
    ast.Sub: ("- -> +", ast.Add),
    ast.Mult: ("* -> /", ast.Div),
    ast.Div: ("/ -> *", ast.Mult),
    ast.FloorDiv: ("// -> *", ast.Mult),
    ast.Mod: ("% -> *", ast.Mult),
    ast.Pow: ("** -> *", ast.Mult),
}


def changes(spot: Spot) -> Iterator[Change]:
    """One for each operation on numbers; what joins texts or lists is seen by their constants and left alone."""
    node = spot.node
    if isinstance(node, ast.BinOp | ast.AugAssign) and type(node.op) in _OTHER:
        if isinstance(node, ast.BinOp) and any(_is_text(side) for side in (node.left, node.right)):
            return
        text, other = _OTHER[type(node.op)]
        yield spot.change(text, lambda: setattr(node, "op", other()))
    elif (
        isinstance(node, ast.UnaryOp)
        and isinstance(node.op, ast.USub)
        and not isinstance(node.operand, ast.Constant)
    ):
        yield spot.instead("-x -> x", node.operand)


def _is_text(node: ast.expr) -> bool:
    if isinstance(node, ast.BinOp):
        return _is_text(node.left) or _is_text(node.right)
    written = isinstance(node, ast.Constant) and isinstance(node.value, str | bytes)
    return written or isinstance(node, ast.JoinedStr | ast.List | ast.Tuple | ast.ListComp)
