"""Where a pad stands, and how far it reaches from its middle."""

from __future__ import annotations

from speclint import FIRST_PRINCIPLES, formula
from speclint.equations import Metres


@formula("h = w/2", cites=[FIRST_PRINCIPLES])
def half_width(w: Metres) -> Metres:
    """Distance from the middle of a pad to its edge.

    w: width, m. Returns m.

    >>> half_width(w=0.220)
    0.11
    """
    return w / 2


@formula("a = |x|", cites=[FIRST_PRINCIPLES])
def from_datum(x: Metres) -> Metres:
    """Distance of a place from the datum that places count from, whichever way.

    x: place, m, forward positive. Returns m.

    >>> from_datum(x=-0.05)
    0.05
    """
    return abs(x)
