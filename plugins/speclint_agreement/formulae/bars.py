"""What a slipper needs of its slide bar."""

from __future__ import annotations

from speclint import FIRST_PRINCIPLES, formula
from speclint.equations import Metres


@formula("b = b_0 − e", cites=[FIRST_PRINCIPLES])
def width_that_bears(b_0: Metres, e: Metres) -> Metres:
    """Width of a slide bar between its rounded edges.

    b = b_0 − e

    ``b_0`` width of the bar, ``e`` what both edges take off [m]. Returns [m].

    >>> round(width_that_bears(b_0=0.250, e=0.002), 6)
    0.248
    """
    return b_0 - e
