"""The outside of a chamber of springs or gear."""

from __future__ import annotations

import math

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, formula
from speclint.equations import Metres, Ratio, SquareMetres


@formula("A = π D²/4 + π D (H + L_0)", cites=[FIRST_PRINCIPLES])
def outside_of_drum(D: Metres, H: Metres, L_0: Metres) -> SquareMetres:
    """Outside of a chamber of springs, a drum that stands on its cover.

    A = π D²/4 + π D (H + L_0)

    ``D`` diameter of the cover, ``H`` height of the stool, ``L_0`` free length of the spring on it [m]. Returns [m²].

    Hand working: 0.0962 + 1.0996 × 0.35 = 0.4811.

    >>> round(outside_of_drum(D=0.35, H=0.15, L_0=0.20), 4)
    0.4811
    """
    return math.pi * D**2 / 4 + math.pi * D * (H + L_0)


@formula("A_m = k A", cites=[COMMON_PRACTICE])
def with_uneven(k: Ratio, A: SquareMetres) -> SquareMetres:
    """Greatest outside of a chamber without fins.

    A_m = k A

    ``k`` ratio for bosses and feet [-]; ``A`` of its plain faces [m²]. Returns [m²].

    >>> round(with_uneven(k=1.1, A=0.77), 3)
    0.847
    """
    return k * A
