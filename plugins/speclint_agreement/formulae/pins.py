"""The bosses that hold a pin, and the shoulder at which it is held."""

from __future__ import annotations

from speclint import FIRST_PRINCIPLES, formula
from speclint.equations import Metres


@formula("L_b = 2 b", cites=[FIRST_PRINCIPLES])
def length_in_bosses(b: Metres) -> Metres:
    """Length of a pin within two equal bosses.

    L_b = 2 b

    ``b`` width of one boss along the pin [m]. Returns [m].

    >>> length_in_bosses(b=0.060)
    0.12
    """
    return 2 * b


@formula("h = (D − d)/2", cites=[FIRST_PRINCIPLES])
def height_of_shoulder(D: Metres, d: Metres) -> Metres:
    """Height of a shoulder on a pin.

    h = (D − d)/2

    ``D`` diameter beyond the shoulder, ``d`` before it [m]. Returns [m].

    Hand working: (225 − 185)/2 = 20 mm.

    >>> round(height_of_shoulder(D=0.225, d=0.185), 6)
    0.02
    """
    return (D - d) / 2


@formula("a_l = b/2 + r_f", cites=[FIRST_PRINCIPLES])
def beside_fillet(b: Metres, r_f: Metres) -> Metres:
    """Distance of the middle of a bearing from the face beside it, where the bearing begins at the end of the fillet.

    a_l = b/2 + r_f

    ``b`` length of the bearing, ``r_f`` fillet radius at that face [m]. Returns [m].

    Hand working: 190/2 + 12 = 107 mm.

    >>> round(beside_fillet(b=0.190, r_f=0.012), 6)
    0.107
    """
    return b / 2 + r_f
