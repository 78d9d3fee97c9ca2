"""Straight lines between the points of a table, and a refusal beyond its ends."""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Sequence
from itertools import pairwise

from speclint.errors import OutOfRange

_SLACK = 1e-9


def between(points: Sequence[tuple[float, float]], x: float, what: str) -> float:
    """The value at ``x`` on the straight lines through points of rising x.

    ``what`` names the table and its unit for the message. OutOfRange beyond the first and last point;
    a rounding error of one part in 10⁹ of the span is allowed.

    >>> between([(20.0, 1.0), (120.0, 3.0)], 70.0, "loss over °C")
    2.0
    """
    first, last = points[0][0], points[-1][0]
    slack = _SLACK * (last - first)
    if not first - slack <= x <= last + slack:
        raise OutOfRange(f"{x:.6g} is outside the table of {what}, {first:g} to {last:g}")
    x = min(max(x, first), last)
    (low, at_low), (high, at_high) = next(pair for pair in pairwise(points) if x <= pair[1][0])
    return at_low + (at_high - at_low) * (x - low) / (high - low)


def on_lines(places: Sequence[float], rows: Sequence[Sequence[float]], x: float) -> tuple[float, ...]:
    """What stands at ``x`` on the straight lines between rows of figures at rising places, held beyond both ends.

    >>> on_lines((20.0, 120.0), [(1.0, 5.0), (3.0, 9.0)], 70.0), on_lines((20.0, 120.0), [(1.0,), (3.0,)], 130.0)
    ((2.0, 7.0), (3.0,))
    """
    right = min(max(bisect_right(places, x), 1), len(places) - 1)
    share = min(max((x - places[right - 1]) / (places[right] - places[right - 1]), 0.0), 1.0)
    return tuple(a + share * (b - a) for a, b in zip(rows[right - 1], rows[right], strict=True))
