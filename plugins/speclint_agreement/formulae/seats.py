"""The length that a bore leaves for a seat, and the bore of a valve's rim."""

from __future__ import annotations

from speclint import FIRST_PRINCIPLES, formula
from speclint.equations import Metres


@formula("L = L_b + a", cites=[FIRST_PRINCIPLES])
def as_long_as_bore(L_b: Metres, a: Metres) -> Metres:
    """Greatest length of a ring in its bore.

    L = L_b + a

    ``L_b`` depth of the bore, ``a`` what the ring may stand proud of it [m]. Returns [m].

    >>> round(as_long_as_bore(L_b=0.028, a=0.0005), 6)
    0.0285
    """
    return L_b + a
