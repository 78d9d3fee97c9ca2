"""The hole of a cover over a valve."""

from __future__ import annotations

from speclint import FIRST_PRINCIPLES, formula
from speclint.equations import Metres


@formula("d_p = d_s + max(D_g − d, 0)", cites=[FIRST_PRINCIPLES])
def with_play(d_s: Metres, D_g: Metres, d: Metres) -> Metres:
    """Least hole in which a spindle is led by its guide alone.

    d_p = d_s + max(D_g − d, 0)

    ``d_s`` diameter of the spindle in the hole [m]; ``D_g`` bore of the guide [m]; ``d`` diameter of the spindle in the
    guide [m]. Returns [m].

    >>> round(with_play(d_s=0.020, D_g=0.0221, d=0.022) * 1e3, 6)
    20.1
    """
    return d_s + max(D_g - d, 0)
