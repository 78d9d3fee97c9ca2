"""Clearance to a gauge outline and to moving parts."""

from __future__ import annotations

from speclint import FIRST_PRINCIPLES, formula, require
from speclint.equations import Metres, Ratio
from speclint_clearances.sources import UIC_505


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


@formula("k = max(1, 2 |x|/a)", cites=[UIC_505])
def overhang_of_side_play(a: Metres, x: Metres) -> Ratio:
    """Multiple of the side play by which a point moves when both axles stand across at their opposite limits.

    k = max(1, 2 |x|/a)

    ``a`` rigid wheelbase, ``x`` of the point from its middle [m]. Returns a ratio: 1 between the axles.
    Raises OutOfRange unless a is above 0.

    Hand working: 4.6 m, a point 3.7 m ahead: 7.4/4.6 = 1.608696.

    >>> round(overhang_of_side_play(a=4.6, x=3.7), 6)
    1.608696
    """
    require(a > 0 * a, "the wheelbase must be above 0")
    return max(1.0, 2 * abs(x) / a)


@formula("w = y + k s + v + g", cites=[UIC_505, FIRST_PRINCIPLES])
def half_width_taken(y: Metres, k: Ratio, s: Metres, v: Metres, g: Metres) -> Metres:
    """Half width taken up.

    w = y + k s + v + g

    ``y`` distance of the point from the middle of the engine [m]; ``k`` multiple of the side play there; ``s`` side
    play [m]; ``v`` throw on the curve, ``g`` growth of the hot part [m]. Returns [m].

    >>> round(half_width_taken(y=1.3, k=1.6, s=0.015, v=0.045, g=0.002), 6)
    1.371
    """
    return y + k * s + v + g


@formula("h_1 = h − w − d − g", cites=[FIRST_PRINCIPLES])
def lowest_height(h: Metres, w: Metres, d: Metres, g: Metres) -> Metres:
    """Lowest height of the point.

    h_1 = h − w − d − g

    ``h`` with new tyres and springs as set, ``w`` wear of the tyres' radius, ``d`` drop on the springs, ``g`` growth
    of the hot part [m]. Returns [m].

    >>> round(lowest_height(h=0.35, w=0.04, d=0.03, g=0.002), 6)
    0.278
    """
    return h - w - d - g


@formula("w = (D − D_w)/2", cites=[FIRST_PRINCIPLES])
def wear_of_radius(D: Metres, D_w: Metres) -> Metres:
    """What a wheel that is worn to its limit stands lower.

    w = (D − D_w)/2

    ``D`` diameter on the tread with new tyres, ``D_w`` with tyres worn to their limit [m]. Returns [m].

    >>> round(wear_of_radius(D=1.75, D_w=1.675), 6)
    0.0375
    """
    return (D - D_w) / 2


@formula("L = |y − y_f|", cites=[FIRST_PRINCIPLES])
def across_from_frame(y: Metres, y_f: Metres) -> Metres:
    """Distance of a point across the engine from the frame face that holds the part, over which it grows at the least.

    L = |y − y_f|

    ``y`` of the point, ``y_f`` of the frame face, on its side, from the middle of the engine [m]. Returns [m].

    >>> round(across_from_frame(y=1.3, y_f=0.53), 6), round(across_from_frame(y=0.4, y_f=0.53), 6)
    (0.77, 0.13)
    """
    return abs(y - y_f)


@formula("L_l = L − u", cites=[FIRST_PRINCIPLES])
def less_rounding(L: Metres, u: Metres) -> Metres:
    """What the parts give, less what rounding may take off.

    L_l = L − u

    ``L`` as the parts give it, ``u`` by which it may be rounded [m]. Returns [m].

    >>> round(less_rounding(L=0.0375, u=0.001), 6)
    0.0365
    """
    return L - u


@formula("h_2 = h + r + g", cites=[FIRST_PRINCIPLES])
def highest_height(h: Metres, r: Metres, g: Metres) -> Metres:
    """Highest height of the point.

    h_2 = h + r + g

    ``h`` with new tyres and springs as set, ``r`` rise on the springs, ``g`` growth of the hot part [m]. Returns [m].

    >>> round(highest_height(h=0.35, r=0.02, g=0.002), 6)
    0.372
    """
    return h + r + g


@formula("c = a − s − w − g", cites=[FIRST_PRINCIPLES])
def gap_left(a: Metres, s: Metres, w: Metres, g: Metres) -> Metres:
    """Least gap left.

    c = a − s − w − g

    ``a`` gap cold and new, ``s`` side play, ``w`` wear, ``g`` growth [m]. Returns [m], negative when they collide.

    >>> round(gap_left(a=0.020, s=0.004, w=0.002, g=0.0021) * 1e3, 6)
    11.9
    """
    return a - s - w - g
