"""Openings between bars."""

from __future__ import annotations

import math

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, formula, require
from speclint.equations import Metres, Ratio, SquareMetres


@formula("b_m = π D/n − w", cites=[FIRST_PRINCIPLES])
def mean_opening(D: Metres, n: Ratio, w: Metres) -> Metres:
    """Mean opening between bars on a circle, along it.

    b_m = π D/n − w

    ``D`` diameter of the circle [m]; ``n`` number of bars [-]; ``w`` width of each along the circle [m]. Returns [m],
    0 or less where the bars close the circle. Raises OutOfRange where there is no bar.

    >>> round(mean_opening(D=0.2, n=12, w=0.030), 6)  # 628.32/12 − 30
    0.02236
    """
    require(n >= 1, "there is no bar")
    return math.pi * D / n - w


@formula("b_h = k b_m", cites=[COMMON_PRACTICE])
def uneven_opening(k: Ratio, b_m: Metres) -> Metres:
    """Widest opening between bars that stand at unlike distances.

    b_h = k b_m

    ``k`` widest over mean opening [-]; ``b_m`` mean opening [m]. Returns [m].

    >>> round(uneven_opening(k=2.0, b_m=0.028), 6)
    0.056
    """
    return k * b_m


@formula("D_n = n w/π", cites=[FIRST_PRINCIPLES])
def closed_diameter(n: Ratio, w: Metres) -> Metres:
    """Diameter of the circle that bars close when they touch: they stand on none that is smaller.

    D_n = n w/π

    ``n`` number of bars [-]; ``w`` width of each along the circle [m]. Returns [m].

    >>> round(closed_diameter(n=12, w=0.030), 6)  # 360/π
    0.114592
    """
    return n * w / math.pi


@formula("b_w = b + w", cites=[FIRST_PRINCIPLES])
def opening_with_bar(b: Metres, w: Metres) -> Metres:
    """An opening and the bar beside it.

    b_w = b + w

    ``b`` opening, ``w`` width of the bar [m]. Returns [m].

    >>> round(opening_with_bar(b=0.060, w=0.015), 6)
    0.075
    """
    return b + w


@formula("t = A/w", cites=[FIRST_PRINCIPLES])
def depth_of_bar(A: SquareMetres, w: Metres) -> Metres:
    """Depth of a bar across the circle on which it stands.

    t = A/w

    ``A`` its section [m²]; ``w`` its width along the circle [m]. Returns [m]. Raises OutOfRange unless w > 0.

    >>> round(depth_of_bar(A=60e-6, w=0.012), 6)
    0.005
    """
    require(w > 0, "the bar has no width")
    return A / w


@formula("D_i = D − 2 t", cites=[FIRST_PRINCIPLES])
def bore_within(D: Metres, t: Metres) -> Metres:
    """Bore that a wall leaves within an outside diameter.

    D_i = D − 2 t

    ``D`` outside, ``t`` wall [m]. Returns [m].

    >>> round(bore_within(D=0.222, t=0.006), 6)
    0.21
    """
    return D - 2 * t


@formula("A = max(π D²/4, π D a)", cites=[FIRST_PRINCIPLES])
def room_in_box(D: Metres, a: Metres) -> SquareMetres:
    """Greatest section by which steam can leave the box round a valve: along its bore, or out of it between both beats.

    A = max(π D²/4, π D a)

    ``D`` bore of the box [m]; ``a`` distance of the beats [m]. Returns [m²].

    >>> round(room_in_box(D=0.2, a=0.06), 6)  # π × 200 × 60 = 37 699 mm², its bore 31 416 mm²
    0.037699
    >>> round(room_in_box(D=0.2, a=0.04), 6)
    0.031416
    """
    return max(math.pi * D**2 / 4, math.pi * D * a)
