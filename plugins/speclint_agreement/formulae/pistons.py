"""Grooves and lands along a piston."""

from __future__ import annotations

from speclint import FIRST_PRINCIPLES, formula
from speclint.equations import Metres, Ratio


@formula("x = a + w + b", cites=[FIRST_PRINCIPLES])
def end_of_land(a: Metres, w: Metres, b: Metres) -> Metres:
    """Where the land behind a groove ends at the earliest.

    x = a + w + b

    ``a`` from the piston's front face to the groove, ``w`` width of the groove, ``b`` land behind it [m]. Returns [m].

    >>> round(end_of_land(a=0.036, w=0.016, b=0.015), 6)
    0.067
    """
    return a + w + b


@formula("x = a − b", cites=[FIRST_PRINCIPLES])
def begin_of_land(a: Metres, b: Metres) -> Metres:
    """Where the land before a groove begins at the latest.

    x = a − b

    ``a`` from the piston's front face to the groove, ``b`` land before it [m]. Returns [m].

    >>> round(begin_of_land(a=0.040, b=0.011), 6)
    0.029
    """
    return a - b


@formula("x = x_0 + w + b", cites=[FIRST_PRINCIPLES])
def with_groove(x_0: Metres, w: Metres, b: Metres) -> Metres:
    """Length that some grooves and lands take up, with one more of each.

    x = x_0 + w + b

    ``x_0`` length without them, ``w`` width of the groove, ``b`` its land [m]. Returns [m].

    >>> round(with_groove(x_0=0.030, w=0.016, b=0.014), 6)
    0.06
    """
    return x_0 + w + b


@formula("L_n = x + b", cites=[FIRST_PRINCIPLES])
def with_last_land(x: Metres, b: Metres) -> Metres:
    """Least length of a piston with its grooves, of which each has a land on both sides.

    L_n = x + b

    ``x`` all grooves and one land of each, ``b`` one land more, the thinnest [m]. Returns [m].

    >>> round(with_last_land(x=0.090, b=0.014), 6)
    0.104
    """
    return x + b


@formula("L = x + n c", cites=[FIRST_PRINCIPLES])
def with_faces_cut_back(x: Metres, n: Ratio, c: Metres) -> Metres:
    """Least length of a piston whose faces are cut back beyond what its grooves and lands take up.

    L = x + n c

    ``x`` up to the end of the last land [m]; ``n`` faces beyond it, ``c`` how far each is cut back [m]. Returns [m].

    >>> round(with_faces_cut_back(x=0.092, n=2.0, c=0.022), 6)
    0.136
    """
    return x + n * c


@formula("t = (D − D_r)/2", cites=[FIRST_PRINCIPLES])
def thickness_of_rim(D: Metres, D_r: Metres) -> Metres:
    """Thickness of the rim of a hollow piston, no groove cut in it.

    t = (D − D_r)/2

    ``D`` diameter of the piston, ``D_r`` inside its rim [m]. Returns [m].

    >>> round(thickness_of_rim(D=0.497, D_r=0.400), 6)
    0.0485
    """
    return (D - D_r) / 2
