"""Sizes that a pipe gives its joints."""

from __future__ import annotations

from speclint import FIRST_PRINCIPLES, formula
from speclint.equations import Metres, Ratio


@formula("d = D − 2 t", cites=[FIRST_PRINCIPLES])
def bore_of_pipe(D: Metres, t: Metres) -> Metres:
    """Bore of a pipe.

    d = D − 2 t

    D: outside diameter, m. t: wall, m. Returns m.

    >>> round(bore_of_pipe(D=0.1683, t=0.0056) * 1e3, 6)
    157.1
    """
    return D - 2 * t


@formula("d_l = d − s", cites=[FIRST_PRINCIPLES])
def less_step(d: Metres, s: Metres) -> Metres:
    """Least bore beside a pipe, with the step that is allowed.

    d_l = d − s

    d: bore of the pipe, m. s: step on the diameter, m. Returns m.

    >>> round(less_step(d=0.157, s=0.001) * 1e3, 6)
    156.0
    """
    return d - s


@formula("L_m = L_a (1 + x)", cites=[FIRST_PRINCIPLES])
def longest_straight(L_a: Metres, x: Ratio) -> Metres:
    """Greatest length of a pipe without bends.

    L_m = L_a (1 + x)

    L_a: distance of its anchors, m. x: what it may be longer, as a share. Returns m.

    >>> round(longest_straight(L_a=2.1, x=0.01), 6)
    2.121
    """
    return L_a * (1 + x)
