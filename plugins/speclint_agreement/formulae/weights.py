"""Where the weight of a block is, by its lifting plan."""

from __future__ import annotations

from speclint import FIRST_PRINCIPLES, formula
from speclint.equations import Metres


@formula("x = x_l + x_c − x_p", cites=[FIRST_PRINCIPLES])
def from_fixed_point(x_l: Metres, x_c: Metres, x_p: Metres) -> Metres:
    """Place of the centre of gravity forward of the fixed point, by a part whose place is known from there.

    x = x_l + x_c − x_p

    ``x_l`` of the part, from the fixed point; ``x_c`` of the centre of gravity and ``x_p`` of the part, both from where
    the plan measures [m]. Returns [m].

    >>> round(from_fixed_point(x_l=0.2735, x_c=0.349, x_p=0.35) * 1e3, 6)
    272.5
    """
    return x_l + x_c - x_p
