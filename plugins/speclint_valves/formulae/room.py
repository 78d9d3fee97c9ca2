"""Room along a shaft."""

from __future__ import annotations

from speclint import FIRST_PRINCIPLES, formula
from speclint.equations import Metres


@formula("b_c = b_0 + b", cites=[FIRST_PRINCIPLES])
def room_together(b_0: Metres, b: Metres) -> Metres:
    """Length of a shaft that parts side by side take.

    b_c = b_0 + b

    ``b_0`` what the others take, ``b`` the next [m]. Returns [m].

    >>> round(room_together(b_0=0.060, b=0.030), 6)
    0.09
    """
    return b_0 + b


@formula("L_b = x_2 − x_1", cites=[FIRST_PRINCIPLES])
def between_bearings(x_1: Metres, x_2: Metres) -> Metres:
    """Length of a shaft from the middle of one bearing to that of another.

    L_b = x_2 − x_1

    ``x_1``, ``x_2`` their places along the shaft [m], the farther one second. Returns [m].

    >>> round(between_bearings(x_1=-0.050, x_2=0.350), 6)
    0.4
    """
    return x_2 - x_1
