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


@formula("d_w = d_b + 2 a", cites=[FIRST_PRINCIPLES])
def bore_when_wasted(d_b: Metres, a: Metres) -> Metres:
    """Bore when metal has wasted away all round it.

    d_w = d_b + 2 a

    ``d_b`` bore as made [m]; ``a`` metal that has wasted away, on each side [m]. Returns [m].

    >>> round(bore_when_wasted(d_b=0.130, a=0.001), 9)
    0.132
    """
    return d_b + 2 * a


@formula("c_r = c − p", cites=[FIRST_PRINCIPLES])
def left_off_centre(c: Metres, p: Metres) -> Metres:
    """Clearance of a rod in its bush that is left when what carries the bush lies to one side.

    c_r = c − p

    ``c`` of the rod in the bush, ``p`` play of what carries it, both on the diameter [m]: off centre by half of ``p``,
    it takes as much of the half of ``c`` on one side. Returns [m], below 0 where the rod touches.

    >>> round(left_off_centre(c=0.65e-3, p=0.2e-3) * 1e3, 9)
    0.45
    """
    return c - p
