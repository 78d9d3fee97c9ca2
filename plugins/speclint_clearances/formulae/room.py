"""Clearance to a gauge outline and to moving parts."""

from __future__ import annotations

from speclint import FIRST_PRINCIPLES, formula, require
from speclint.equations import Metres


@formula("v = |a²/4 − x²|/(2 R)", cites=[FIRST_PRINCIPLES])
def curve_throw(a: Metres, x: Metres, R: Metres) -> Metres:
    """Throw of a point on the sharpest curve.

    v = |a²/4 − x²|/(2 R)

    ``a`` rigid wheelbase, ``x`` of the point from the middle of the wheelbase, ``R`` radius of the curve [m].
    Returns [m]: inwards
    between the axles, outwards beyond them. Raises OutOfRange unless R is ten times a and |x| at the least.

    Hand working: 4.5 m of wheelbase, a point 4 m ahead of its middle, 120 m: (16 − 5.0625)/240 = 45.57 mm.

    >>> round(curve_throw(a=4.5, x=4.0, R=120.0) * 1e3, 2)
    45.57
    """
    require(
        10 * a <= R and 10 * abs(x) <= R, f"a curve of {R:.4g} m is too sharp for the chord approximation"
    )
    return abs(a**2 / 4 - x**2) / (2 * R)


@formula("w = y + s + v", cites=[FIRST_PRINCIPLES])
def half_width_taken(y: Metres, s: Metres, v: Metres) -> Metres:
    """Half width taken up.

    w = y + s + v

    ``y`` of the point from the middle of the engine, ``s`` side play, ``v`` throw on the curve [m]. Returns [m].

    >>> round(half_width_taken(y=1.3, s=0.015, v=0.045), 6)
    1.36
    """
    return y + s + v


@formula("h_1 = h − w − d", cites=[FIRST_PRINCIPLES])
def lowest_height(h: Metres, w: Metres, d: Metres) -> Metres:
    """Lowest height of the point.

    h_1 = h − w − d

    ``h`` with new tyres and springs as set, ``w`` wear of the tyres' radius, ``d`` drop on the
    springs [m]. Returns [m].

    >>> round(lowest_height(h=0.35, w=0.04, d=0.03), 6)
    0.28
    """
    return h - w - d


@formula("h_2 = h + r", cites=[FIRST_PRINCIPLES])
def highest_height(h: Metres, r: Metres) -> Metres:
    """Highest height of the point.

    h_2 = h + r

    ``h`` with new tyres and springs as set, ``r`` rise on the springs [m]. Returns [m].

    >>> round(highest_height(h=0.35, r=0.02), 6)
    0.37
    """
    return h + r


@formula("c = a − s − w − g", cites=[FIRST_PRINCIPLES])
def gap_left(a: Metres, s: Metres, w: Metres, g: Metres) -> Metres:
    """Least gap left.

    c = a − s − w − g

    ``a`` gap cold and new, ``s`` side play, ``w`` wear, ``g`` growth [m]. Returns [m], negative when they collide.

    >>> round(gap_left(a=0.020, s=0.004, w=0.002, g=0.0021) * 1e3, 6)
    11.9
    """
    return a - s - w - g
