"""Sizes that are taken as a multiple of a diameter."""

from __future__ import annotations

from speclint import FIRST_PRINCIPLES, formula
from speclint.equations import Metres, Ratio


@formula("c = k d", cites=[FIRST_PRINCIPLES])
def times_diameter(k: Ratio, d: Metres) -> Metres:
    """Multiple of a diameter.

    c = k d

    ``k`` multiple, whose source stands at the limit that gives it; ``d`` diameter [m]. Returns [m].

    >>> round(times_diameter(k=1.5, d=0.024), 9)
    0.036
    """
    return k * d
