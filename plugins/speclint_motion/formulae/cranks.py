"""Angles between cranks."""

from __future__ import annotations

import math

from speclint import FIRST_PRINCIPLES, formula
from speclint.equations import Radians, Ratio


@formula("x = |sin(θ_1 − θ_2)|", cites=[FIRST_PRINCIPLES])
def across_the_line(θ_1: Radians, θ_2: Radians) -> Ratio:
    """Sine of the angle between two cranks: 0 where they lie in one line, 1 where they stand square to each other.

    x = |sin(θ_1 − θ_2)|

    ``θ_1``, ``θ_2`` their angles [rad]. Returns a ratio [-].

    Hand working: 120° apart: sin 60°.

    >>> round(across_the_line(θ_1=math.radians(-120), θ_2=0.0), 6)
    0.866025
    """
    return abs(math.sin(θ_1 - θ_2))
