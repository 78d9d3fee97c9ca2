"""Contact of a lens ring with its seats."""

from __future__ import annotations

import math

from speclint import FIRST_PRINCIPLES, formula
from speclint.equations import Metres, Newtons, NewtonsPerMetre, Pascals, Ratio


@formula("L = π D", cites=[FIRST_PRINCIPLES])
def round_the_seat(D: Metres) -> Metres:
    """Length of the circle of contact.

    L = π D

    D: diameter of the circle, m. Returns m.

    >>> round(round_the_seat(D=0.1), 4)
    0.3142
    """
    return math.pi * D


@formula("N = q L", cites=[FIRST_PRINCIPLES])
def load_square_to_seat(q: NewtonsPerMetre, L: Metres) -> Newtons:
    """Load normal to the seat round the whole circle.

    N = q L

    q: line load, N/m. L: length of the circle of contact, m. Returns N.

    >>> load_square_to_seat(q=600e3, L=0.5)
    300000.0
    """
    return q * L


@formula("e = |D_c − D|", cites=[FIRST_PRINCIPLES])
def circle_missed(D_c: Metres, D: Metres) -> Metres:
    """Difference of the stated circle of contact from that of the geometry.

    e = |D_c − D|

    D_c: stated diameter of contact, m. D: diameter at which sphere and cone touch, m. Returns m.

    >>> round(circle_missed(D_c=0.150, D=0.1503) * 1e3, 3)
    0.3
    """
    return abs(D_c - D)


@formula("p_perm = k R_p", cites=[FIRST_PRINCIPLES])
def permitted_contact(k: Ratio, R_p: Pascals) -> Pascals:
    """Permitted mean contact pressure: at 2.8 times proof stress the contact is fully plastic.

    p_perm = k R_p

    k: multiple. R_p: least 0.2 % proof stress, Pa. Returns Pa.

    >>> round(permitted_contact(k=2.8, R_p=250e6) / 1e6)
    700
    """
    return k * R_p
