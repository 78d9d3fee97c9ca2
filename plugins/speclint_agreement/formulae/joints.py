"""Room inside the holes of a joint."""

from __future__ import annotations

from speclint import FIRST_PRINCIPLES, formula
from speclint.equations import Metres


@formula("D_f = D_h − d_h", cites=[FIRST_PRINCIPLES])
def inside_of_holes(D_h: Metres, d_h: Metres) -> Metres:
    """Diameter left inside the holes of a joint.

    D_f = D_h − d_h

    D_h: diameter of the bolt circle, m. d_h: diameter of the holes, m. Returns m.

    >>> round(inside_of_holes(D_h=0.740, d_h=0.026) * 1e3, 3)
    714.0
    """
    return D_h - d_h
