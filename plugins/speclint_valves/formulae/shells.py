"""The shell of a double-beat valve under steam from outside."""

from __future__ import annotations

from speclint import formula, require
from speclint.equations import Metres, Pascals, Ratio
from speclint_valves.sources import ELASTIC_STABILITY


@formula("p_k = 2 E/(1 − ν²) (t/D)³", cites=[ELASTIC_STABILITY])
def collapsing_pressure(E: Pascals, nu: Ratio, t: Metres, D: Metres) -> Pascals:
    """Pressure outside a long thin tube at which it flattens.

    p_k = 2 E/(1 − ν²) (t/D)³

    ``E`` modulus [Pa]; ``nu`` Poisson's ratio; ``t`` wall, ``D`` mean diameter [m]. Returns [Pa]. A short tube that is
    held round at its ends stands more. Raises OutOfRange unless 0 < 5 t ≤ D, beyond which a wall is not thin.

    Hand working, steel, 6 mm on 144 mm: 2 × 210 000/0.91 × (1/24)³ = 461 538 × 72.338e-6 = 33.387 MPa.

    >>> round(collapsing_pressure(E=210e9, nu=0.3, t=0.006, D=0.144) / 1e6, 3)
    33.387
    """
    require(0 < 5 * t <= D, f"a wall of {t * 1e3:.4g} mm on {D * 1e3:.4g} mm is not that of a thin tube")
    return 2 * E / (1 - nu**2) * (t / D) ** 3
