"""How wide the wall of a passage is at the least, by the section and the length of that."""

from __future__ import annotations

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, formula, require
from speclint.equations import Metres, Ratio, SquareMetres


@formula("b = A/(h (n + 1))", cites=[FIRST_PRINCIPLES])
def panel_across(A: SquareMetres, h: Metres, n: Ratio) -> Metres:
    """Width of a panel of a flat wall of a passage, across the stream, between the bridges that part the passage.

    b = A/(h (n + 1))

    ``A`` section of the passage [m²]; ``h`` its depth, square to the wall [m]; ``n`` number of bridges [-]. Returns
    [m]: no wall that bounds a section as deep as that is narrower. Raises OutOfRange unless h is above 0 and n not
    below it.

    Hand working: 200 cm² of 40 mm are 500 mm wide, and three bridges leave four panels of 125 mm.

    >>> round(panel_across(A=0.020, h=0.040, n=3), 6)
    0.125
    """
    require(h > 0 and n >= 0, "a passage has a depth, and no fewer bridges than none")
    return A / (h * (n + 1))


@formula("l = k L/(n + 1)", cites=[COMMON_PRACTICE])
def shortest_leg(k: Ratio, L: Metres, n: Ratio) -> Metres:
    """Length of the shortest straight leg of a passage, as a share of the mean of its legs.

    l = k L/(n + 1)

    ``k`` share [-]; ``L`` length along the centre line [m]; ``n`` number of bends and corners [-]. Returns [m]. Raises
    OutOfRange where n is below 0.

    Hand working: 600 mm with one bend have legs of 300 mm in the mean, and half of that is 150 mm.

    >>> shortest_leg(k=0.5, L=0.6, n=1)
    0.15
    """
    require(n >= 0, "a passage has no fewer bends than none")
    return k * L / (n + 1)


@formula("s_0 = s − t", cites=[FIRST_PRINCIPLES])
def clear_between(s: Metres, t: Metres) -> Metres:
    """Room between two ribs.

    s_0 = s − t

    ``s`` their spacing between centres, ``t`` thickness of a rib [m]. Returns [m].

    >>> round(clear_between(s=0.180, t=0.020), 6)
    0.16
    """
    return s - t
