"""A bar of one section on two bearings or more, under loads at any place: its moments and reactions.

The moments over the inner bearings are those of Clapeyron's equation of three moments: bearings in line that neither
give nor hold the bar aslant. A load beyond the last bearing bends the bar over it as a cantilever.
"""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise

from speclint.equations import (
    FIRST_PRINCIPLES,
    Metres,
    NewtonMetres,
    Newtons,
    Ratio,
    Source,
    formula,
    require,
)
from speclint.handbook.tables import Reading

TIMOSHENKO = Source(
    "S. Timoshenko, Strength of Materials, Part I",
    "3rd ed., 1955",
    "continuous beams: equation of three moments",
    memory=True,
)


@formula("M = M_0 + F |m|", cites=[FIRST_PRINCIPLES])
def moment_with_load(M_0: NewtonMetres, F: Newtons, m: Metres) -> NewtonMetres:
    """Moment at a section with one load more, whichever way that acts across the bar.

    M_0: of the loads before, N·m. F: one load more, N. m: moment there for a load of 1 N, m. Returns N·m.

    >>> moment_with_load(M_0=100.0, F=2000.0, m=-0.05)
    200.0
    """
    return M_0 + F * abs(m)


@formula("R = R_0 + F |r|", cites=[FIRST_PRINCIPLES])
def reaction_with_load(R_0: Newtons, F: Newtons, r: Ratio) -> Newtons:
    """Load of a bearing with one load on the bar more, whichever way that acts across it.

    R_0: of the loads before, N. F: one load more, N. r: share of it that the bearing takes. Returns N.

    >>> reaction_with_load(R_0=100.0, F=2000.0, r=-0.25)
    600.0
    """
    return R_0 + F * abs(r)


def moment_for_load(supports: tuple[Metres, ...], a: Metres, x: Metres) -> Reading:
    """Moment at ``x`` of a bar on ``supports``, in their order, for a load of 1 N at ``a`` [m]; below 0 over a bearing.

    >>> moment_for_load((0.0, 1.0), 0.5, 0.5).nominal
    0.25
    """
    _in_order(supports)
    return Reading.exact("moment for a load of 1 N", _moment(supports, a, x), "m", TIMOSHENKO)


def share_of_bearing(supports: tuple[Metres, ...], a: Metres, number: int) -> Reading:
    """Share of a load at ``a`` that one bearing takes, by its number along the bar; below 0 where it is lifted.

    >>> share_of_bearing((0.0, 1.0), 0.25, 0).nominal
    0.75
    """
    _in_order(supports)
    return Reading.exact("share of a load on the bearing", _share(supports, a, number), "", TIMOSHENKO)


def _moment(supports: Sequence[Metres], a: Metres, x: Metres) -> Metres:
    """What the bearings before a section push up, less the load where it stands before it."""
    pushed = sum(_share(supports, a, number) * max(x - at, 0.0) for number, at in enumerate(supports))
    return pushed - max(x - a, 0.0)


def _share(supports: Sequence[Metres], a: Metres, number: int) -> Ratio:
    """As if each span lay by itself, and what the moments over bearing and neighbours add at either side."""
    over, here = _over_bearings(supports, a), supports[number]
    taken = _of_single_spans(supports, a, number)
    for j in (number - 1, number + 1):
        if 0 <= j < len(supports):
            taken += (over[j] - over[number]) / abs(supports[j] - here)
    return taken


def _of_single_spans(supports: Sequence[Metres], a: Metres, number: int) -> Ratio:
    """Share of a bearing where each span lies by itself; of a load beyond the last bearing that has all."""
    held, here = min(max(a, supports[0]), supports[-1]), supports[number]
    neighbour = supports[number + 1] if held > here else supports[number - 1]
    return max(1 - (held - here) / (neighbour - here), 0.0)


def _over_bearings(supports: Sequence[Metres], a: Metres) -> list[Metres]:
    """Moments over the bearings for a load of 1 N at ``a``: of the ends by statics, the rest by three moments."""
    spans = [high - low for low, high in pairwise(supports)]
    first, last = -max(supports[0] - a, 0.0), -max(a - supports[-1], 0.0)
    loads = [
        _of_load(a - supports[j], spans[j]) + _of_load(supports[j + 2] - a, spans[j + 1])
        for j in range(len(spans) - 1)
    ]
    return [first, *_three_moments(spans, first, last, loads), last]


def _of_load(a: Metres, L: Metres) -> float:
    """What a load of 1 N, ``a`` from the outer end of a span, adds to the equation of its inner end; none beside it."""
    a = min(max(a, 0.0), L)
    return a * (L**2 - a**2) / L


def _three_moments(
    spans: Sequence[Metres], first: Metres, last: Metres, loads: Sequence[float]
) -> list[Metres]:
    """Inner moments: L_1 M_1 + 2 (L_1 + L_2) M_2 + L_2 M_3 = −P a (L_1² − a²)/L_1 − P b (L_2² − b²)/L_2 of each.

    From the first bearing on, each equation gives a moment by the next; from the last one back they are put in.
    """
    by_next: list[tuple[float, float]] = [(0.0, first)]  # moment over a bearing = slope × the next + rest
    for j, load in enumerate(loads):
        slope, rest = by_next[-1]
        middle = 2 * (spans[j] + spans[j + 1]) + spans[j] * slope
        by_next.append((-spans[j + 1] / middle, (-load - spans[j] * rest) / middle))
    found: list[Metres] = [last]
    for slope, rest in reversed(by_next[1:]):
        found.append(slope * found[-1] + rest)
    return found[:0:-1]


def _in_order(supports: Sequence[Metres]) -> None:
    require(len(supports) > 1, "a bar on fewer than two bearings is not held")
    for low, high in pairwise(supports):
        require(low < high, "two bearings stand at one place")
