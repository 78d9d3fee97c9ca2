"""Room for spanners and for withdrawing parts."""

from __future__ import annotations

import math

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, formula, require
from speclint.equations import Metres, Radians, Ratio


@formula("r = k s", cites=[COMMON_PRACTICE])
def spanner_head(k: Ratio, s: Metres) -> Metres:
    """Room that the head of a spanner needs from the axis of the nut.

    r = k s

    ``k`` half the diameter of the head over the width across flats [-]; ``s`` width across flats [m]. Returns [m].

    >>> round(spanner_head(k=0.8, s=0.036) * 1e3, 6)
    28.8
    """
    return k * s


@formula("φ = 2 π/n", cites=[FIRST_PRINCIPLES])
def swing_wanted(n: Ratio) -> Radians:
    """Swing that brings the spanner to its next position on the nut.

    φ = 2 π/n

    ``n`` positions in a turn, which are 12, 6, or 12 for an open spanner that is turned over [-]. Returns [rad].

    >>> round(math.degrees(swing_wanted(n=12.0)), 6)
    30.0
    """
    require(n > 0, f"{n:.4g} positions of the spanner in a turn")
    return 2 * math.pi / n


@formula("r = l + c", cites=[FIRST_PRINCIPLES])
def withdrawal_room(l: Metres, c: Metres) -> Metres:  # noqa: E741
    """Room needed to withdraw the part.

    r = l + c

    ``l`` length of the part, ``c`` clearance beyond it [m]. Returns [m].

    >>> round(withdrawal_room(l=0.110, c=0.010) * 1e3, 6)
    120.0
    """
    return l + c


@formula("H = k d + k_r s + h", cites=[COMMON_PRACTICE])
def room_over_nut(k: Ratio, d: Metres, k_r: Ratio, s: Metres, h: Metres) -> Metres:
    """Height over the face of a nut that it takes with what turns it.

    H = k d + k_r s + h

    ``k`` height of the nut with its thread over the diameter of the thread; ``d`` diameter of the thread [m]; ``k_r``
    height of the spanner over the width across flats; ``s`` width across flats [m]; ``h`` height of any other tool [m].
    Returns [m].

    Hand working, M24 of 36 mm flats under a ring: 31.2 + 21.6 = 52.8 mm.

    >>> round(room_over_nut(k=1.3, d=0.024, k_r=0.6, s=0.036, h=0.0) * 1e3, 6)
    52.8
    """
    return k * d + k_r * s + h
