"""The train between cam and valve: its lever ratio, and the lift that it gives."""

from __future__ import annotations

from speclint.equations import FIRST_PRINCIPLES, Metres, Ratio, formula, require


@formula("i = b_v/b_t", cites=[FIRST_PRINCIPLES])
def lever_ratio(b_v: Metres, b_t: Metres) -> Ratio:
    """Lever ratio: travel of the valve over travel of the tappet.

    i = b_v/b_t

    ``b_v`` arm of the rocker at the valve, ``b_t`` its arm at the tappet [m]. Returns [-]. Raises OutOfRange unless
    both are above 0.

    >>> lever_ratio(b_v=0.06, b_t=0.05)
    1.2
    """
    require(b_v > 0 and b_t > 0, "the arms of a rocker must be above 0")
    return b_v / b_t


@formula("h = i max(s − c, 0)", cites=[FIRST_PRINCIPLES])
def valve_lift(i: Ratio, s: Metres, c: Metres) -> Metres:
    """Lift of the valve.

    h = i max(s − c, 0)

    ``i`` travel of the valve over travel of the tappet; ``s`` lift of the tappet, ``c`` clearance at the
    tappet [m]. Returns [m].

    >>> round(valve_lift(i=1.5, s=0.0104, c=0.0004), 9)
    0.015
    """
    beyond = s - c
    return i * (beyond + abs(beyond)) / 2
