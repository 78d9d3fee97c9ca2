"""A limit that a rule declares, 3 % up and down: a test from both sides of the limit tells."""

from __future__ import annotations

import ast
import re
from collections.abc import Iterator

from tests.mutation.spots import Change, Spot, called

_NUMBER = re.compile(r"[+-]?\d+(?:\.\d+)?(?:[eE][+-]?\d+)?")


def changes(spot: Spot) -> Iterator[Change]:
    """Both for the default of each ``Limit``."""
    node, holder = spot.node, spot.parent
    if holder is None or not isinstance(holder.node, ast.Call) or called(holder.node) != "Limit":
        return
    if (spot.name, spot.index) != ("args", 1) or not isinstance(node, ast.Constant):
        return
    text = str(node.value)
    number = _NUMBER.match(text)
    if number is None or float(number[0]) == 0:
        return
    for factor in (0.97, 1.03):
        moved = f"{float(number[0]) * factor:.6g}{text[number.end() :]}"
        yield spot.instead(f"limit {text} -> {moved}", ast.Constant(moved))
