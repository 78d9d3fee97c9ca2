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


@formula("x_m = L − S/2 − X_f/2", cites=[FIRST_PRINCIPLES])
def pin_to_cylinder(L: Metres, S: Metres, X_f: Metres) -> Metres:
    """From the crosshead pin to the back face of its cylinder, with the piston at its front dead centre.

    x_m = L − S/2 − X_f/2

    ``L`` from the crosshead's centre to the piston's middle, ``S`` stroke, ``X_f`` distance of the faces of both
    covers [m]. Returns [m]: the middle of the stroke is that of the cylinder.

    >>> round(pin_to_cylinder(L=1.45, S=0.66, X_f=0.826), 6)
    0.707
    """
    return L - S / 2 - X_f / 2


@formula("l_m = x_m + l", cites=[FIRST_PRINCIPLES])
def crank_to_cylinder(x_m: Metres, l: Metres) -> Metres:  # noqa: E741
    """From the circle of the crank pin to the back face of its cylinder, along the axis.

    l_m = x_m + l

    ``x_m`` from the crosshead pin to that face at the front dead centre, where the crank pin is foremost; ``l`` length
    of the connecting rod [m]. Returns [m].

    >>> round(crank_to_cylinder(x_m=0.707, l=1.9), 6)
    2.607
    """
    return x_m + l
