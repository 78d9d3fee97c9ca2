"""What a bearing of a size can be rated for at most."""

from __future__ import annotations

import math

from speclint import COMMON_PRACTICE, formula
from speclint.equations import Metres, Newtons, Pascals, Ratio
from speclint_valves.sources import ISO_76


@formula("C_m = π f_r k d b", cites=[ISO_76, COMMON_PRACTICE])
def rated_at_most(f_r: Pascals, k: Ratio, d: Metres, b: Metres) -> Newtons:
    """Static rating that no rolling bearing of a bore and a width exceeds.

    C_m = π f_r k d b

    ``f_r`` factor of the rating of rollers [Pa]; ``k`` diameter of the inner raceway over the bore [-]; ``d`` bore,
    ``b`` width [m]. Returns [N].

    The rating is f_r (1 − D_w/D_p) i Z L_w D_w, of Z rollers in each of i rows on a pitch circle D_p. They touch where
    Z D_w = π D_p, and i L_w = b where they are as wide as the bearing: f_r π (D_p − D_w) b is left, and D_p − D_w is
    the diameter of the inner raceway.

    Hand working: 44 MPa × π × 1.5 × 60 mm × 50 mm = 622.04 kN.

    >>> round(rated_at_most(f_r=44e6, k=1.5, d=0.060, b=0.050) / 1e3, 2)
    622.04
    """
    return math.pi * f_r * k * d * b
