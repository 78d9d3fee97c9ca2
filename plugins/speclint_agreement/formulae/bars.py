"""What a slipper needs of its slide bar."""

from __future__ import annotations

from speclint import FIRST_PRINCIPLES, formula
from speclint.equations import Metres


@formula("b = b_0 − e", cites=[FIRST_PRINCIPLES])
def width_that_bears(b_0: Metres, e: Metres) -> Metres:
    """Width of a slide bar between its rounded edges.

    b = b_0 − e

    ``b_0`` width of the bar, ``e`` what both edges take off [m]. Returns [m].

    >>> round(width_that_bears(b_0=0.250, e=0.002), 6)
    0.248
    """
    return b_0 - e


@formula("L_2 = L/2", cites=[FIRST_PRINCIPLES])
def half_of_slipper(L: Metres) -> Metres:
    """From the middle of a slipper to its end.

    L_2 = L/2

    ``L`` length of the slipper [m]. Returns [m].

    >>> half_of_slipper(L=0.420)
    0.21
    """
    return L / 2


@formula("l = x + S + L/2", cites=[FIRST_PRINCIPLES])
def reach_of_slipper(x: Metres, S: Metres, L: Metres) -> Metres:
    """How far from the front support the end of a slipper comes at the back dead centre.

    l = x + S + L/2

    ``x`` from the front support to the slipper's middle at the front dead centre, ``S`` stroke, ``L`` length of the
    slipper [m]. Returns [m].

    >>> round(reach_of_slipper(x=0.300, S=0.660, L=0.420), 6)
    1.17
    """
    return x + S + L / 2
