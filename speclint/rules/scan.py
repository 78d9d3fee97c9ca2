"""Where a function is greatest along a line: the best of an even grid, closed in on by golden section."""

from __future__ import annotations

import math
from collections.abc import Callable

Function = Callable[[float], float]
_RATIO = (math.sqrt(5) - 1) / 2  # the golden section
#: Narrows the grid's interval to 0.618^24, 1e-5 of it: the value of a smooth function to some 1e-10.
_CLOSER = 24
#: Share of a grid's interval by which the place found may miss that of a kink.
MISSED = 4e-5


def place_on(start: float, stop: float, share: float) -> float:
    """The place at a share of the way from start to stop."""
    return start + (stop - start) * share


def greatest_place(
    function: Function, start: float, stop: float, steps: int, *, within: float = 0.0
) -> float:
    """Where a function is greatest, on a grid of so many intervals and between them; to ``within``, where that is
    coarser than what is sought anyhow.
    """
    grid = [start + (stop - start) * index / steps for index in range(steps + 1)]
    best = max(range(steps + 1), key=lambda index: function(grid[index]))
    return _golden(function, grid[max(best - 1, 0)], grid[min(best + 1, steps)], grid[best], within)


def _golden(function: Function, low: float, high: float, best: float, within: float) -> float:
    a, b = high - _RATIO * (high - low), low + _RATIO * (high - low)
    at_a, at_b = function(a), function(b)
    for _ in range(_CLOSER):
        if high - low <= within:
            break
        if at_a >= at_b:
            high, b, at_b = b, a, at_a
            a = high - _RATIO * (high - low)
            at_a = function(a)
        else:
            low, a, at_a = a, b, at_b
            b = low + _RATIO * (high - low)
            at_b = function(b)
    inside = (low + high) / 2
    return inside if function(inside) > function(best) else best
