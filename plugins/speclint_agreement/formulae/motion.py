"""Where the motion of a cylinder runs."""

from __future__ import annotations

from speclint import FIRST_PRINCIPLES, formula
from speclint.equations import Metres


@formula("a = |y_a − y_f|", cites=[FIRST_PRINCIPLES])
def axis_beside_frame(y_a: Metres, y_f: Metres) -> Metres:
    """Distance of the axis of a cylinder from the face of the frame on which its block is located.

    a = |y_a − y_f|

    y_a: of the axis, y_f: of the face, both from the middle of the engine, m. Returns m.

    Hand working: rods that run 950 mm from the middle, on a frame whose outer face is at 600 mm.

    >>> round(axis_beside_frame(y_a=0.950, y_f=0.600), 6)
    0.35
    """
    return abs(y_a - y_f)
