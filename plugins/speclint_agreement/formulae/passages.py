"""The section of a passage."""

from __future__ import annotations

import math

from speclint import FIRST_PRINCIPLES, formula
from speclint.equations import Metres, SquareMetres


@formula("P = 2 √(π A)", cites=[FIRST_PRINCIPLES])
def least_perimeter(A: SquareMetres) -> Metres:
    """Perimeter of a round section, the least that a section of some area can have.

    P = 2 √(π A)

    ``A`` area [m²]. Returns [m].

    Hand working, a circle of 100 mm, 7853.98 mm²: π × 100 = 314.159 mm.

    >>> round(least_perimeter(A=7853.9816e-6) * 1e3, 3)
    314.159
    """
    root: float = (math.pi * A) ** 0.5
    return 2 * root
