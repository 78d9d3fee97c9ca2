"""Load of a gland on its studs."""

from __future__ import annotations

import math

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, formula, require
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


@formula("b = min(π D/n, s + 2 h)", cites=[COMMON_PRACTICE])
def width_by_stud(D: Metres, n: Ratio, s: Metres, h: Metres) -> Metres:
    """Width of a gland's flange that one stud bends, where the flange leaves the nose: its load spreads at 45°.

    b = min(π D/n, s + 2 h)

    D: diameter of the nose, m. n: number of studs, at least 1. s: width of the nut across its flats, m. h: from the
    stud to the nose, m. Returns m.

    Hand working: round 130 mm four studs have π · 130/4 = 102.1 mm each, and nuts of 30 mm at 30 mm spread to 90 mm.

    >>> round(width_by_stud(D=0.130, n=4.0, s=0.030, h=0.030) * 1e3, 6)
    90.0
    """
    require(n >= 1, f"{n:g} studs are fewer than 1")
    return min(math.pi * D / n, s + 2 * h)


@formula("σ = 6 F_1 h/(b t²)", cites=[FIRST_PRINCIPLES])
def bending_by_stud(F_1: Newtons, h: Metres, b: Metres, t: Metres) -> Pascals:
    """Bending stress of a gland's flange where it leaves the nose.

    σ = 6 F_1 h/(b t²)

    F_1: load of the most heavily loaded stud, N. h: from the stud to the nose, m. b: width that it bends, m. t:
    thickness of the flange, m. Returns Pa.

    Hand working: 8.55 kN at 30 mm on 90 mm, 30 mm thick: 6 · 8550 · 30/(90 · 900) = 19.0 MPa.

    >>> round(bending_by_stud(F_1=8550.0, h=0.030, b=0.090, t=0.030) / 1e6, 6)
    19.0
    """
    return 6 * F_1 * h / (b * t**2)
