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
