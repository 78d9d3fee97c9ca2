"""Ports of liner and block: their overlap, and openings that rings run over."""

from __future__ import annotations

import math

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, formula
from speclint.equations import Metres, Radians, Ratio


@formula("s = D θ/2", cites=[FIRST_PRINCIPLES])
def place_round_bore(D: Metres, theta: Radians) -> Metres:
    """Position round the bore, along the arc.

    s = D θ/2

    ``D`` diameter [m]; ``theta`` angle [rad]. Returns [m].

    >>> place_round_bore(D=0.560, theta=0.5)
    0.14
    """
    return D * theta / 2


@formula("φ = 2 arctan(tan((θ_1 − θ_2)/2))", cites=[FIRST_PRINCIPLES])
def angle_between(theta_1: Radians, theta_2: Radians) -> Radians:
    """Angle from one place round a bore to another, the shorter way.

    φ = 2 arctan(tan((θ_1 − θ_2)/2))

    ``theta_1``, ``theta_2`` angles [rad]; whole turns count for nothing. Returns [rad], from −π to π.

    Hand working: from 0° to 359.9° it is −0.1°.

    >>> round(math.degrees(angle_between(theta_1=math.radians(359.9), theta_2=0.0)), 6)
    -0.1
    """
    return 2 * math.atan(math.tan((theta_1 - theta_2) / 2))


@formula("o = max(0, min(x_a + a/2, x_b + b/2) − max(x_a − a/2, x_b − b/2))", cites=[FIRST_PRINCIPLES])
def overlap(x_a: Metres, a: Metres, x_b: Metres, b: Metres) -> Metres:
    """Length over which two openings overlap.

    o = max(0, min(x_a + a/2, x_b + b/2) − max(x_a − a/2, x_b − b/2))

    ``x_a``, ``x_b`` their middles and ``a``, ``b`` their lengths [m]. Returns [m].

    Hand working: 40 mm at 60 mm and 40 mm at 61 mm overlap from 41 to 80 mm.

    >>> round(overlap(x_a=0.060, a=0.040, x_b=0.061, b=0.040) * 1e3, 6)
    39.0
    """
    met = min(x_a + a / 2, x_b + b / 2) - max(x_a - a / 2, x_b - b / 2)
    return max(met, 0 * met)


@formula("k = 1 − o_x o_s/(h w)", cites=[FIRST_PRINCIPLES])
def blocked_share(o_x: Metres, o_s: Metres, h: Metres, w: Metres) -> Ratio:
    """Share of the port that the liner blocks.

    k = 1 − o_x o_s/(h w)

    ``o_x``, ``o_s`` lengths over which the openings overlap along the axis and round the bore; ``h``, ``w`` height
    and width of the block's port [m]. Returns a ratio. Corners are taken as square; rounded ones that
    match block no more than these.

    Hand working: 39 of 40 mm along, all of 300 mm round: 1/40 is blocked.

    >>> round(blocked_share(o_x=0.039, o_s=0.300, h=0.040, w=0.300), 6)
    0.025
    """
    return 1 - o_x * o_s / (h * w)


@formula("b = k d", cites=[COMMON_PRACTICE])
def widest_opening(k: Ratio, d: Metres) -> Metres:
    """Widest opening that a ring may run over.

    b = k d

    ``k`` share of the bore [-], ``d`` bore [m]. Returns [m].

    >>> round(widest_opening(k=0.12, d=0.500) * 1e3, 6)
    60.0
    """
    return k * d


@formula("w = max(k t, w_0)", cites=[COMMON_PRACTICE])
def least_bar(k: Ratio, t: Metres, w_0: Metres) -> Metres:
    """Least bar between openings that rings run over.

    w = max(k t, w_0)

    ``k`` share of the wall [-], ``t`` wall of the liner, ``w_0`` least bar whatever the wall [m]. Returns [m].

    >>> round(least_bar(k=0.6, t=0.030, w_0=0.012) * 1e3, 6)
    18.0
    """
    return max(k * t, w_0)
