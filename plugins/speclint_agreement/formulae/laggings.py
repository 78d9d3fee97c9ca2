"""Formulae of lagging and the part under it."""

from __future__ import annotations

from speclint import FIRST_PRINCIPLES, formula
from speclint.equations import Metres


@formula("L_l = L − 2 e", cites=[FIRST_PRINCIPLES])
def less_bare_ends(L: Metres, e: Metres) -> Metres:
    """Length of a pipe that is to be lagged.

    L_l = L − 2 e

    ``L`` length of the pipe, ``e`` length left bare at each end for a flange and its bolts [m]. Returns [m].

    >>> round(less_bare_ends(L=2.7, e=0.1), 9)
    2.5
    """
    return L - 2 * e
