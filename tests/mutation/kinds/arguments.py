"""Two arguments that stand side by side, of one sort, in each other's place."""

from __future__ import annotations

import ast
import functools
from collections.abc import Iterator

from tests.mutation.spots import Change, Spot, called

#: Where the order means nothing, or where the types tell.
_ANY_ORDER = frozenset(
    {
        "min",
        "max",
        "hypot",
        "isclose",
        "gcd",
        "isinstance",
        "issubclass",
        "getattr",
        "setattr",
        "hasattr",
        "partial",
    }
    | {"Limit", "rule", "rules_in", "Source", "at"}
)
#: What a function is given beside its numbers and words.
_NO_NUMBER = frozenset({"sheet", "self", "cls", "design"})


def changes(spot: Spot) -> Iterator[Change]:
    """One for each two that are both names, both attributes, or both constants of one type.

    Parameters of different types, which the checker of types tells, are not of one sort.
    """
    node = spot.node
    if not isinstance(node, ast.Call) or called(node) in _ANY_ORDER:
        return
    types = _parameters(spot)
    for place, (first, second) in enumerate(zip(node.args, node.args[1:], strict=False)):
        if _alike(first, second, types):
            text = (
                f"{ast.unparse(first)}, {ast.unparse(second)} -> {ast.unparse(second)}, {ast.unparse(first)}"
            )
            yield spot.change(text, functools.partial(_swap, node, place))


def _alike(first: ast.expr, second: ast.expr, types: dict[str, str]) -> bool:
    if isinstance(first, ast.Constant) and isinstance(second, ast.Constant):
        return type(first.value) is type(second.value) and first.value != second.value
    if isinstance(first, ast.Name) and isinstance(second, ast.Name):
        known = [types[name.id] for name in (first, second) if name.id in types]
        return first.id != second.id and not {first.id, second.id} & _NO_NUMBER and len(set(known)) <= 1
    both = isinstance(first, ast.Attribute) and isinstance(second, ast.Attribute)
    return both and ast.dump(first) != ast.dump(second)


def _parameters(spot: Spot) -> dict[str, str]:
    """The types of the parameters of the functions that it stands in."""
    return {
        argument.arg: ast.unparse(argument.annotation)
        for above in spot.above()
        if isinstance(above.node, ast.FunctionDef)
        for argument in (*above.node.args.posonlyargs, *above.node.args.args, *above.node.args.kwonlyargs)
        if argument.annotation is not None
    }


def _swap(node: ast.Call, place: int) -> None:
    node.args[place : place + 2] = node.args[place + 1], node.args[place]
