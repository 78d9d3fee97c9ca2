"""Areas of openings."""

from __future__ import annotations

from speclint import FIRST_PRINCIPLES, formula
from speclint.equations import Metres, SquareMetres


@formula("A = A_0 + w h", cites=[FIRST_PRINCIPLES])
def with_opening(A_0: SquareMetres, w: Metres, h: Metres) -> SquareMetres:
    """Area of some openings and one more, right-angled.

    A = A_0 + w h

    ``A_0`` area of the others [m²]; ``w`` width along the arc, ``h`` height of the one more [m]. Returns [m²].

    >>> round(with_opening(A_0=0.0, w=0.400, h=0.040) * 1e6, 3)
    16000.0
    """
    return A_0 + w * h
