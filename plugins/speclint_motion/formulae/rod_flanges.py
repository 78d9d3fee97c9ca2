"""Room for bolts on the flange of a piston rod."""

from __future__ import annotations

import math

from speclint import FIRST_PRINCIPLES, formula, require
from speclint.equations import Metres, Ratio


@formula("b = (D − d)/2 − r", cites=[FIRST_PRINCIPLES])
def ring_beside_fillet(D: Metres, d: Metres, r: Metres) -> Metres:
    """Width of a flange between its fillet and its rim.

    b = (D − d)/2 − r

    ``D`` outside of the flange, ``d`` rod, ``r`` fillet [m]. Returns [m], below 0 if the fillet is wider.

    >>> round(ring_beside_fillet(D=0.190, d=0.088, r=0.012), 9)
    0.039
    """
    return (D - d) / 2 - r


@formula("a = π (D − s)/n", cites=[FIRST_PRINCIPLES])
def arc_of_each_bolt(D: Metres, s: Metres, n: Ratio) -> Metres:
    """Share of each bolt in the widest circle that keeps its nut within the rim.

    a = π (D − s)/n

    ``D`` outside of the flange, ``s`` width of a nut [m], ``n`` number of bolts. Returns [m]. Raises OutOfRange unless
    n is above 0.

    Hand working: π (190 − 36)/8 = 60.476 mm.

    >>> round(arc_of_each_bolt(D=0.190, s=0.036, n=8) * 1e3, 3)
    60.476
    """
    require(n > 0, "no bolt is stated")
    return math.pi * (D - s) / n
