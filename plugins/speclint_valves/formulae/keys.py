"""A key between a shaft and what it turns: how deep it lies in both."""

from __future__ import annotations

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, formula
from speclint.equations import Metres, Ratio


@formula("t = t_1 + t_2", cites=[FIRST_PRINCIPLES])
def depth_together(t_1: Metres, t_2: Metres) -> Metres:
    """Room for a key in height, in both its keyways.

    t = t_1 + t_2

    ``t_1`` depth of the keyway in the shaft, ``t_2`` depth of the keyway in the hub, beside the key [m]. Returns [m].

    Hand working: a key 18 mm by 11 mm lies 7 mm deep in a shaft and has 4.4 mm in the hub: 11.4 mm.

    >>> round(depth_together(t_1=0.007, t_2=0.0044), 6)
    0.0114
    """
    return t_1 + t_2


@formula("t_n = k b", cites=[COMMON_PRACTICE])
def depth_for_width(k: Ratio, b: Metres) -> Metres:
    """The least height that a key of a width has.

    t_n = k b

    ``k`` least height over width; ``b`` width of the key [m]. Returns [m].

    >>> depth_for_width(k=0.5, b=0.018)
    0.009
    """
    return k * b
