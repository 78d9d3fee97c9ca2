"""Openings between bars."""

from __future__ import annotations

import math

from speclint import FIRST_PRINCIPLES, formula, require
from speclint.equations import Metres, Ratio


@formula("b_m = π D/n − w", cites=[FIRST_PRINCIPLES])
def mean_opening(D: Metres, n: Ratio, w: Metres) -> Metres:
    """Mean opening between bars on a circle: the widest is no narrower.

    b_m = π D/n − w

    ``D`` diameter of the circle [m]; ``n`` number of bars [-]; ``w`` width of each along the circle [m]. Returns [m],
    0 or less where the bars close the circle. Raises OutOfRange where there is no bar.

    >>> round(mean_opening(D=0.2, n=12, w=0.030), 6)  # 628.32/12 − 30
    0.02236
    """
    require(n >= 1, "there is no bar")
    return math.pi * D / n - w


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
