"""Heights of a cylinder and what is on it, above the rail."""

from __future__ import annotations

from speclint import FIRST_PRINCIPLES, formula
from speclint.equations import Metres, Ratio


@formula("h_c = h − d/2 − t + δ", cites=[FIRST_PRINCIPLES])
def highest_cock(h: Metres, d: Metres, t: Metres, delta: Metres) -> Metres:
    """Greatest height of a drain cock, under the barrel of its cylinder.

    h_c = h − d/2 − t + δ

    h: of the axis, m. d: bore of the block, m. t: its wall, m. delta: by which the axis may lie higher, m. Returns m.

    >>> round(highest_cock(h=0.875, d=0.578, t=0.04, delta=0.1), 6)
    0.646
    """
    return h - d / 2 - t + delta


@formula("h_b = h + z + k δ", cites=[FIRST_PRINCIPLES])
def top_of_box(h: Metres, z: Metres, k: Ratio, delta: Metres) -> Metres:
    """Height of the top of a cam box above the rail.

    h_b = h + z + k δ

    h: of the cylinder's axis, m. z: of the top above that axis, m. k: 1 where the axis lies as much higher as it may,
    −1 where it lies as much lower. delta: by which it may, m. Returns m.

    >>> round(top_of_box(h=0.875, z=0.775, k=-1.0, delta=0.1), 6)
    1.55
    """
    return h + z + k * delta


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
