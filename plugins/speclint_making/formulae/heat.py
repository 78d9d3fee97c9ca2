"""Temperatures of the making."""

from __future__ import annotations

from speclint import COMMON_PRACTICE, formula
from speclint.equations import KelvinDifference, Kelvins


@formula("T_max = T_r − ΔT", cites=[COMMON_PRACTICE])
def hottest_after(T_r: Kelvins, ΔT: KelvinDifference) -> Kelvins:
    """Greatest temperature of a later step, which must not undo an earlier one.

    T_max = T_r − ΔT

    ``T_r`` temperature of the earlier step [K]; ``ΔT`` distance to be kept [K]. Returns [K].

    >>> round(hottest_after(T_r=843.15, ΔT=50.0), 6)
    793.15
    """
    return T_r - ΔT
