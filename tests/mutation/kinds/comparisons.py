"""A comparison that lets its limit through, or keeps it out; equal for unequal, in for not in."""

from __future__ import annotations

import ast
import functools
from collections.abc import Iterator

from tests.mutation.spots import Change, Spot

_OTHER: dict[type[ast.cmpop], type[ast.cmpop]] = {
    ast.Lt: ast.LtE,
    ast.Gt: ast.GtE,
    ast.Eq: ast.NotEq,
    ast.In: ast.NotIn,
    ast.Is: ast.IsNot,
}
_OTHER |= {after: before for before, after in _OTHER.items()}
_SIGNS: dict[type[ast.cmpop], str] = {
    ast.Lt: "<",
    ast.LtE: "<=",
    ast.Gt: ">",
    ast.GtE: ">=",
    ast.Eq: "==",
    ast.NotEq: "!=",
    ast.In: "in",
    ast.NotIn: "not in",
    ast.Is: "is",
    ast.IsNot: "is not",
}


def changes(spot: Spot) -> Iterator[Change]:
    """One for each sign of a comparison."""
    node = spot.node
    if isinstance(node, ast.Compare):
        for place, sign in enumerate(node.ops):
            other = _OTHER[type(sign)]
            text = f"{_SIGNS[type(sign)]} -> {_SIGNS[other]}"
            yield spot.change(text, functools.partial(_put, node, place, other))


def _put(node: ast.Compare, place: int, sign: type[ast.cmpop]) -> None:
    node.ops[place] = sign()
