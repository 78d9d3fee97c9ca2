"""Where wheels and cylinders stand along an engine, and how near they come."""

from __future__ import annotations

from speclint import FIRST_PRINCIPLES, formula
from speclint.equations import Metres, Ratio


@formula("D_f = D + 2 h", cites=[FIRST_PRINCIPLES])
def over_flanges(D: Metres, h: Metres) -> Metres:
    """Diameter of a wheel over its flange.

    D_f = D + 2 h

    ``D`` of the running circle, ``h`` height of the flange over it [m]. Returns [m].

    >>> round(over_flanges(D=1.75, h=0.028), 9)
    1.806
    """
    return D + 2 * h


@formula("δ_0 = (D_1 + D_2)/2", cites=[FIRST_PRINCIPLES])
def wheels_touch(D_1: Metres, D_2: Metres) -> Metres:
    """Distance of two axles at which their wheels touch.

    δ_0 = (D_1 + D_2)/2

    ``D_1``, ``D_2`` diameters of their wheels over the flanges [m]. Returns [m].

    >>> round(wheels_touch(D_1=1.806, D_2=1.006), 9)
    1.406
    """
    return (D_1 + D_2) / 2


@formula("x = x_0 + k b/2", cites=[FIRST_PRINCIPLES])
def outer_axle(x_0: Metres, k: Ratio, b: Metres) -> Metres:
    """Place of the first or the last axle of a truck.

    x = x_0 + k b/2

    ``x_0`` of its middle [m]; ``k`` 1 for the axle in front, −1 for the one behind [-]; ``b`` its wheelbase [m].
    Returns [m].

    >>> outer_axle(x_0=6.0, k=-1.0, b=2.2)
    4.9
    """
    return x_0 + k * b / 2


@formula("x_m = x + l + L", cites=[FIRST_PRINCIPLES])
def middle_of_stroke(x: Metres, l: Metres, L: Metres) -> Metres:  # noqa: E741 - the symbol of the trade
    """Place of the middle of the stroke, ahead of the axle that the cylinder drives.

    x_m = x + l + L

    ``x`` of the axle, ``l`` length of the connecting rod, ``L`` from the crosshead's centre to the piston's middle [m].
    Returns [m].

    >>> round(middle_of_stroke(x=1.85, l=1.9, L=1.45), 9)
    5.2
    """
    return x + l + L


@formula("x_e = x_m + X_e − (x_f + x_b)/2", cites=[FIRST_PRINCIPLES])
def place_along(x_m: Metres, X_e: Metres, x_f: Metres, x_b: Metres) -> Metres:
    """Place along the engine of a point of a cylinder: the middle of the stroke is halfway between its covers.

    x_e = x_m + X_e − (x_f + x_b)/2

    ``x_m`` middle of the stroke [m]; ``X_e`` of the point, ``x_f``, ``x_b`` of the inner faces of the front and of the
    back cover, all forward of one datum of the block [m]. Returns [m].

    Hand working: faces at 676 and −150 mm have their middle at 263; a point at −236 is 499 mm behind it.

    >>> round(place_along(x_m=5.2, X_e=-0.236, x_f=0.676, x_b=-0.150), 9)
    4.701
    """
    return x_m + X_e - (x_f + x_b) / 2


@formula("g = max(x_1 − (x + D/2), (x − D/2) − x_2)", cites=[FIRST_PRINCIPLES])
def gap_to_wheel(x_1: Metres, x_2: Metres, x: Metres, D: Metres) -> Metres:
    """Gap along the engine between a cylinder and a wheel; below 0 where they overlap.

    g = max(x_1 − (x + D/2), (x − D/2) − x_2)

    ``x_1``, ``x_2`` back and front of the cylinder, ``x`` of the axle, ``D`` of its wheel over the flange [m].
    Returns [m].

    >>> round(gap_to_wheel(x_1=4.701, x_2=5.718, x=3.7, D=1.806), 9)
    0.098
    """
    return max(x_1 - (x + D / 2), (x - D / 2) - x_2)


@formula("g_y = |y − b| − (D + w)/2", cites=[FIRST_PRINCIPLES])
def gap_across(y: Metres, b: Metres, D: Metres, w: Metres) -> Metres:
    """Gap across the engine between a cylinder and a tyre; below 0 where one stands before the other.

    g_y = |y − b| − (D + w)/2

    ``y`` of the cylinder's axis and ``b`` of the plane of the wheel from the middle of the engine, ``D`` diameter of
    the cylinder's larger end, ``w`` width of the tyre, whose middle is in that plane [m]. Returns [m].

    >>> round(gap_across(y=0.880, b=0.750, D=0.804, w=0.140), 9)
    -0.342
    """
    return abs(y - b) - (D + w) / 2
