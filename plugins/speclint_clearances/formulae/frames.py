"""The gap between a cylinder and the frame plate that it hangs on."""

from __future__ import annotations

from speclint import FIRST_PRINCIPLES, formula
from speclint.equations import Metres


@formula("g = a − D/2", cites=[FIRST_PRINCIPLES])
def gap_to_frame(a: Metres, D: Metres) -> Metres:
    """Gap between the frame plate and what lies round the axis of a cylinder; below 0 where they overlap.

    g = a − D/2

    ``a`` of the axis from the face of the frame, ``D`` diameter of what lies round the axis [m]. Returns [m].

    >>> round(gap_to_frame(a=0.410, D=0.804), 9)
    0.008
    """
    return a - D / 2
