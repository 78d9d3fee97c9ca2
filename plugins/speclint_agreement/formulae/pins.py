"""Room for a connecting rod in its crosshead."""

from __future__ import annotations

from speclint import FIRST_PRINCIPLES, formula
from speclint.equations import Metres


@formula("g = L − b", cites=[FIRST_PRINCIPLES])
def between_bosses(L: Metres, b: Metres) -> Metres:
    """Gap between two equal bosses that hold a pin.

    g = L − b

    ``L`` between the middles of the bosses, ``b`` width of one boss along the pin [m]. Returns [m].

    >>> round(between_bosses(L=0.175, b=0.060), 6)
    0.115
    """
    return L - b
