"""Distances along a cylinder."""

from __future__ import annotations

from speclint import FIRST_PRINCIPLES, formula
from speclint.equations import Metres, Ratio


@formula("r = |d_l − d − k s|", cites=[FIRST_PRINCIPLES])
def beyond_whole_steps(d_l: Metres, d: Metres, k: Ratio, s: Metres) -> Metres:
    """How far a last bore lies from that which some whole steps of boring give.

    r = |d_l − d − k s|

    d_l: last bore, m. d: new bore, m. k: how many steps, the nearest whole number. s: step, m. Returns m.

    >>> round(beyond_whole_steps(d_l=0.510, d=0.500, k=3, s=0.003) * 1e3, 6)
    1.0
    """
    return abs(d_l - d - k * s)
