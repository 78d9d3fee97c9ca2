"""Formulae of lagging and the part under it."""

from __future__ import annotations

from speclint import FIRST_PRINCIPLES, formula
from speclint.equations import Metres, Ratio, SquareMetres


@formula("L_l = L − 2 e", cites=[FIRST_PRINCIPLES])
def less_bare_ends(L: Metres, e: Metres) -> Metres:
    """Length of a pipe that is to be lagged.

    L_l = L − 2 e

    ``L`` length of the pipe, ``e`` length left bare at each end for a flange and its bolts [m]. Returns [m].

    >>> round(less_bare_ends(L=2.7, e=0.1), 9)
    2.5
    """
    return L - 2 * e


@formula("D_l = D + c", cites=[FIRST_PRINCIPLES])
def with_play(D: Metres, c: Metres) -> Metres:
    """Widest inside of lagging that still sits on its pipe.

    D_l = D + c

    ``D`` outside diameter of the pipe, ``c`` what the lagging may be wider [m]. Returns [m].

    >>> round(with_play(D=0.169, c=0.020), 6)
    0.189
    """
    return D + c


@formula("A_g = 2 k (b h + (b + h) l)", cites=[FIRST_PRINCIPLES])
def surface_of_block(k: Ratio, b: Metres, h: Metres, l: Metres) -> SquareMetres:  # noqa: E741
    """Lagging of a block by a share of the surface of the box that it fills.

    A_g = 2 k (b h + (b + h) l)

    ``k`` share of that surface, more than 1 for what stands out and in [-]; ``b`` width, ``h`` height, ``l`` length
    [m]. Returns [m²].

    Hand working: 1.05 by 0.9 by 0.9 m: 2 × (0.945 + 1.755) = 5.4, half as much again 8.1 m².

    >>> round(surface_of_block(k=1.5, b=1.05, h=0.9, l=0.9), 9)
    8.1
    """
    return 2 * k * (b * h + (b + h) * l)


@formula("A_l = k A", cites=[FIRST_PRINCIPLES])
def share_of_face(k: Ratio, A: SquareMetres) -> SquareMetres:
    """Lagging of a cover by a share of its face.

    A_l = k A

    ``k`` share of the face [-]; ``A`` the face [m²]. Returns [m²].

    >>> round(share_of_face(k=0.4, A=0.45), 9)
    0.18
    """
    return k * A
