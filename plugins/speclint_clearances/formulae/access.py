"""Room to reach and to draw out."""

from __future__ import annotations

import math

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, formula, require
from speclint.equations import Metres, Radians, Ratio


@formula("r = k s", cites=[COMMON_PRACTICE])
def spanner_head(k: Ratio, s: Metres) -> Metres:
    """Room that the head of a spanner wants beside the nut's axis.

    r = k s

    ``k`` half of the head over the nut's width [-]; ``s`` width across flats [m]. Returns [m].

    >>> round(spanner_head(k=0.8, s=0.036) * 1e3, 6)
    28.8
    """
    return k * s


@formula("φ = 2 π/n", cites=[FIRST_PRINCIPLES])
def swing_wanted(n: Ratio) -> Radians:
    """Swing that takes the spanner to its next hold on the nut.

    φ = 2 π/n

    ``n`` holds in a turn: 12, 6, or 12 of an open spanner that is turned over [-]. Returns [rad].

    >>> round(math.degrees(swing_wanted(n=12.0)), 6)
    30.0
    """
    require(n > 0, f"{n:.4g} holds in a turn")
    return 2 * math.pi / n


@formula("r = l + c", cites=[FIRST_PRINCIPLES])
def withdrawal_room(l: Metres, c: Metres) -> Metres:  # noqa: E741
    """Room wanted to draw it out.

    r = l + c

    ``l`` its length, ``c`` clearance beyond [m]. Returns [m].

    >>> round(withdrawal_room(l=0.110, c=0.010) * 1e3, 6)
    120.0
    """
    return l + c
