"""Formulae of lengths that follow from others along one line."""

from __future__ import annotations

from speclint import FIRST_PRINCIPLES, formula
from speclint.equations import Metres


@formula("e_g = t + m", cites=[FIRST_PRINCIPLES])
def flange_with_nut(t: Metres, m: Metres) -> Metres:
    """Least height over a face of a flange on it with the nuts on the flange.

    e_g = t + m

    ``t`` thickness of the flange, ``m`` height of the nuts [m]. Returns [m].

    >>> round(flange_with_nut(t=0.030, m=0.020), 9)
    0.05
    """
    return t + m


@formula("L_f = L − a − L_g", cites=[FIRST_PRINCIPLES])
def beyond_guide(L: Metres, a: Metres, L_g: Metres) -> Metres:
    """Length of a spindle from its guide to the point where the gear drives it.

    L_f = L − a − L_g

    ``L`` length from the seat to that point, ``a`` from the seat to the guide, ``L_g`` length of the guide [m]. Returns
    [m], below 0 where the guide reaches beyond that point.

    >>> round(beyond_guide(L=0.330, a=0.060, L_g=0.100), 9)
    0.17
    """
    return L - a - L_g


@formula("L_b = a − L_v", cites=[FIRST_PRINCIPLES])
def before_guide(a: Metres, L_v: Metres) -> Metres:
    """Length of a spindle from the point where its valve is attached to its guide.

    L_b = a − L_v

    ``a`` length from the seat to the guide, ``L_v`` from the seat to where the valve is attached [m]. Returns [m],
    below 0 where the valve is attached within the guide.

    >>> round(before_guide(a=0.060, L_v=0.055), 9)
    0.005
    """
    return a - L_v
