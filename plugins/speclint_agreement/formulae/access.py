"""Formulae of what is drawn out of a block."""

from __future__ import annotations

from speclint import FIRST_PRINCIPLES, formula
from speclint.equations import Metres


@formula("l_g = l + e", cites=[FIRST_PRINCIPLES])
def with_thread_beyond(l: Metres, e: Metres) -> Metres:  # noqa: E741 - the letter of the equation
    """Greatest length of a stud.

    l_g = l + e

    ``l`` length to the end of its nut, ``e`` greatest length beyond it [m]. Returns [m].

    >>> round(with_thread_beyond(l=0.1112, e=0.010), 9)
    0.1212
    """
    return l + e
