"""A cover under what stands on it."""

from __future__ import annotations

import math

from speclint import FIRST_PRINCIPLES, formula, require
from speclint.equations import Metres, Newtons, Pascals


@formula("p = 4 F/(π d²)", cites=[FIRST_PRINCIPLES])
def spread_pressure(F: Newtons, d: Metres) -> Pascals:
    """Load on a cover, spread over the circle on which it bears.

    p = 4 F/(π d²)

    F: load, N. d: diameter of the circle, m. Returns Pa. Raises OutOfRange unless d > 0.

    Hand working: 10 kN on 100 mm: 40 000/(π × 10 000) = 1.2732 MPa.

    >>> round(spread_pressure(F=10e3, d=0.100) / 1e6, 4)
    1.2732
    """
    require(d > 0, "the circle on which it bears must be above 0")
    return 4 * F / (math.pi * d**2)


@formula("σ = σ_p + σ_B", cites=[FIRST_PRINCIPLES])
def stress_together(sigma_p: Pascals, sigma_B: Pascals) -> Pascals:
    """Bending stress of a cover by steam and by what stands on it, at the same place.

    σ = σ_p + σ_B

    ``sigma_p`` stress by the steam [Pa]; ``sigma_B`` stress by what stands on the cover [Pa]. Returns [Pa].

    >>> round(stress_together(sigma_p=40e6, sigma_B=2.5e6) / 1e6, 3)
    42.5
    """
    return sigma_p + sigma_B
