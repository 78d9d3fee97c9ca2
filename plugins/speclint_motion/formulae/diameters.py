"""Sizes that follow from a diameter, or from two."""

from __future__ import annotations

from speclint import FIRST_PRINCIPLES, formula, require
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


@formula("w = (d_b − d)/2", cites=[FIRST_PRINCIPLES])
def room_round(d_b: Metres, d: Metres) -> Metres:
    """Room on each side of a rod in its bore.

    w = (d_b − d)/2

    ``d_b`` bore [m]; ``d`` diameter of the rod [m], no greater. Returns [m].

    :raises OutOfRange: for a rod wider than the bore.

    >>> round(room_round(d_b=0.130, d=0.090), 9)
    0.02
    """
    require(d <= d_b, f"a rod of {d * 1e3:.6g} mm does not go into a bore of {d_b * 1e3:.6g} mm")
    return (d_b - d) / 2
