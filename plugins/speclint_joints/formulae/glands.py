"""Load of a gland on its studs."""

from __future__ import annotations

import math

from speclint import FIRST_PRINCIPLES, formula, require
from speclint.equations import Metres, Newtons, Pascals, Ratio


@formula("F = π (D_b² − D_r²)/4 q", cites=[FIRST_PRINCIPLES])
def packing_load(D_b: Metres, D_r: Metres, q: Pascals) -> Newtons:
    """Load on a gland from a pressure over the annulus of its packing.

    F = π (D_b² − D_r²)/4 q

    D_b: bore of the stuffing box, m, wider than the rod. D_r: rod, m. q: axial pressure of the packing, or
    gauge pressure of the steam, Pa. Returns N.

    Hand working: 130 and 90 mm, 4 MPa: π/4 (16 900 - 8100) × 4 = 27 646 N.

    >>> round(packing_load(D_b=0.130, D_r=0.090, q=4e6))
    27646
    """
    require(D_b > D_r, f"the stuffing box, {D_b * 1e3:.4g} mm, is not wider than the rod, {D_r * 1e3:.4g} mm")
    return math.pi * (D_b**2 - D_r**2) / 4 * q


@formula("F_1 = k F/n", cites=[FIRST_PRINCIPLES])
def greatest_share(k: Ratio, F: Newtons, n: Ratio) -> Newtons:
    """Load of the most heavily loaded stud.

    F_1 = k F/n

    k: load of that stud over the mean, at least 1. F: load of the gland, N. n: number of studs, at least 1.
    Returns N.

    >>> greatest_share(k=1.5, F=24e3, n=2)
    18000.0
    """
    require(k >= 1, f"greatest stud load over the mean, {k:.3g}, is below 1")
    require(n >= 1, f"{n:g} studs are fewer than 1")
    return k * F / n
