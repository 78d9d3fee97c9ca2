"""Angles of the cams on one shaft."""

from __future__ import annotations

import math

from speclint import FIRST_PRINCIPLES, formula
from speclint.equations import Radians, Ratio


@formula("α = α_1 + φ − φ_1 + 2 π k", cites=[FIRST_PRINCIPLES])
def foot_by_place(α_1: Radians, φ: Radians, φ_1: Radians, k: Ratio) -> Radians:
    """Crank angle at which a cam begins to lift, by another cam on its shaft, which turns as fast as the crank.

    α = α_1 + φ − φ_1 + 2 π k

    α_1: crank angle at which the other cam begins to lift, rad. φ: angle of the shaft at which this cam begins to lift,
    rad. φ_1: angle of the shaft at which the other cam begins to lift, rad. k: turns between the dead centres from
    which both count, and whole turns. Returns rad.

    Hand working: 171.7° after a cam at −8.3°, one half turn of it between the ends: 171.7 − 180 = −8.3°.

    >>> round(math.degrees(foot_by_place(math.radians(-8.3), math.pi, 0.0, -0.5)), 6)
    -8.3
    """
    return α_1 + φ - φ_1 + 2 * math.pi * k
