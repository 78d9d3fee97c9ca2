"""Room along a shaft."""

from __future__ import annotations

from speclint import FIRST_PRINCIPLES, formula
from speclint.equations import Metres, Ratio


@formula("b_c = b_0 + b", cites=[FIRST_PRINCIPLES])
def room_together(b_0: Metres, b: Metres) -> Metres:
    """Length of a shaft that parts side by side take.

    b_c = b_0 + b

    ``b_0`` what the others take, ``b`` the next [m]. Returns [m].

    >>> round(room_together(b_0=0.060, b=0.030), 6)
    0.09
    """
    return b_0 + b


@formula("L_a = x_2 − x_1", cites=[FIRST_PRINCIPLES])
def places_apart(x_1: Metres, x_2: Metres) -> Metres:
    """Length of a shaft from the middle of one part on it, or of one bearing, to that of another.

    L_a = x_2 − x_1

    ``x_1``, ``x_2`` their places along the shaft [m]. Returns [m], below 0 where the second stands before the first.

    >>> round(places_apart(x_1=0.098, x_2=0.132), 6)
    0.034
    """
    return x_2 - x_1


@formula("b = (b_1 + b_2)/2", cites=[FIRST_PRINCIPLES])
def half_of_both(b_1: Metres, b_2: Metres) -> Metres:
    """Length between the middles of two parts on a shaft that touch.

    b = (b_1 + b_2)/2

    ``b_1``, ``b_2`` their lengths along the shaft [m]; nothing for the end of the shaft. Returns [m].

    >>> round(half_of_both(b_1=0.030, b_2=0.050), 6)
    0.04
    """
    return (b_1 + b_2) / 2


@formula("a_1 = a − b/2", cites=[FIRST_PRINCIPLES])
def before_place(a: Metres, b: Metres) -> Metres:
    """Place along a shaft at which a part begins.

    a_1 = a − b/2

    ``a`` place of its middle, ``b`` its length along the shaft [m]. Returns [m].

    >>> round(before_place(a=0.098, b=0.028), 6)
    0.084
    """
    return a - b / 2


@formula("a_2 = a + b/2", cites=[FIRST_PRINCIPLES])
def beyond_place(a: Metres, b: Metres) -> Metres:
    """Place along a shaft at which a part ends.

    a_2 = a + b/2

    ``a`` place of its middle, ``b`` its length along the shaft [m]. Returns [m].

    >>> round(beyond_place(a=0.098, b=0.028), 6)
    0.112
    """
    return a + b / 2


@formula("a_t = a + j D", cites=[FIRST_PRINCIPLES])
def place_of_other_arm(a: Metres, j: Ratio, D: Metres) -> Metres:
    """Place along a shaft of the other arm of a rocker.

    a_t = a + j D

    ``a`` place of the one, ``D`` how far the other stands from it [m]; ``j`` 1 where that stands farther along the
    shaft, −1 where it stands before. Returns [m], below 0 where the shaft has not begun.

    >>> round(place_of_other_arm(a=0.075, j=1, D=0.250), 6)
    0.325
    """
    return a + j * D
