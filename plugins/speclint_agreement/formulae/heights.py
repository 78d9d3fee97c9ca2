"""Heights of a cylinder and what is on it, above the rail."""

from __future__ import annotations

from speclint import FIRST_PRINCIPLES, formula
from speclint.equations import Metres


@formula("h_c = h − d/2 − t + δ", cites=[FIRST_PRINCIPLES])
def highest_cock(h: Metres, d: Metres, t: Metres, delta: Metres) -> Metres:
    """Greatest height of a drain cock, under the barrel of its cylinder.

    h_c = h − d/2 − t + δ

    h: of the axis, m. d: bore of the block, m. t: its wall, m. delta: by which the axis may lie higher, m. Returns m.

    >>> round(highest_cock(h=0.875, d=0.578, t=0.04, delta=0.1), 6)
    0.646
    """
    return h - d / 2 - t + delta


@formula("h_l = h − D/2 − δ", cites=[FIRST_PRINCIPLES])
def lowest_of_cover(h: Metres, D: Metres, delta: Metres) -> Metres:
    """Least height of a point of a round cover.

    h_l = h − D/2 − δ

    h: of the axis, m. D: outside diameter of the cover, m. delta: by which the axis may lie lower, m. Returns m.

    >>> round(lowest_of_cover(h=0.875, D=0.80, delta=0.1), 6)
    0.375
    """
    return h - D / 2 - delta


@formula("h_g = h + D/2 + δ", cites=[FIRST_PRINCIPLES])
def highest_of_cover(h: Metres, D: Metres, delta: Metres) -> Metres:
    """Greatest height of a point of a round cover.

    h_g = h + D/2 + δ

    h: of the axis, m. D: outside diameter of the cover, m. delta: by which the axis may lie higher, m. Returns m.

    >>> round(highest_of_cover(h=0.875, D=0.80, delta=0.1), 6)
    1.375
    """
    return h + D / 2 + delta
