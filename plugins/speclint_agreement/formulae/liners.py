"""Lengths along a liner: of its ports that are open."""

from __future__ import annotations

from speclint import FIRST_PRINCIPLES, formula
from speclint.equations import Metres, Ratio


@formula("o = min(x_2, y_2) − max(x_1, y_1)", cites=[FIRST_PRINCIPLES])
def open_between(x_1: Metres, x_2: Metres, y_1: Metres, y_2: Metres) -> Metres:
    """Length of a port that lies between cover and piston.

    o = min(x_2, y_2) − max(x_1, y_1)

    ``x_1``, ``x_2`` nearer and farther edge of the port, ``y_1``, ``y_2`` nearer and farther of cover and crown, all
    from the collar's seat [m]. Returns [m], negative where the piston or the cover hides all of it.

    Hand working: a port from 38 to 78 mm, a cover at 35 mm, a crown at 43 mm: 43 − 38 = 5 mm.

    >>> round(open_between(x_1=0.038, x_2=0.078, y_1=0.035, y_2=0.043) * 1e3, 6)
    5.0
    """
    return min(x_2, y_2) - max(x_1, y_1)


@formula("s_m = k s", cites=[FIRST_PRINCIPLES])
def size_of_port(k: Ratio, s: Metres) -> Metres:
    """Greatest width or height of a liner's port, by that of the port of its block.

    s_m = k s

    ``k`` factor, ``s`` width or height of the block's port [m]. Returns [m].

    >>> round(size_of_port(k=1.1, s=0.5), 6)
    0.55
    """
    return k * s


@formula("h_o = k h", cites=[FIRST_PRINCIPLES])
def share_of_port(k: Ratio, h: Metres) -> Metres:
    """A share of the height of a port.

    h_o = k h

    ``k`` share, ``h`` height [m]. Returns [m].

    >>> share_of_port(k=0.5, h=0.04)
    0.02
    """
    return k * h
