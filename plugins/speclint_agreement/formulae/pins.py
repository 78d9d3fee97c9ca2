"""The bosses that hold a pin, and the shoulder at which it is held."""

from __future__ import annotations

from speclint import FIRST_PRINCIPLES, formula
from speclint.equations import Metres


@formula("h = (D − d)/2", cites=[FIRST_PRINCIPLES])
def height_of_shoulder(D: Metres, d: Metres) -> Metres:
    """Height of a shoulder on a pin.

    h = (D − d)/2

    ``D`` diameter beyond the shoulder, ``d`` diameter before the shoulder [m]. Returns [m].

    Hand working: (225 − 185)/2 = 20 mm.

    >>> round(height_of_shoulder(D=0.225, d=0.185), 6)
    0.02
    """
    return (D - d) / 2


@formula("b_m = g − c", cites=[FIRST_PRINCIPLES])
def widest_eye(g: Metres, c: Metres) -> Metres:
    """Greatest width of an eye between two bosses.

    b_m = g − c

    ``g`` gap between the bosses, ``c`` least play of the eye in it, both sides together [m]. Returns [m].

    >>> round(widest_eye(g=0.113, c=0.0002), 6)
    0.1128
    """
    return g - c
