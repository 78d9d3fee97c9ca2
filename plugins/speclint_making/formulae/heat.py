"""Temperatures of the making, and how much of a joint's diameter its interference is."""

from __future__ import annotations

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, formula, require
from speclint.equations import KelvinDifference, Kelvins, Metres, Ratio


@formula("T_max = T_r − ΔT", cites=[COMMON_PRACTICE])
def hottest_after(T_r: Kelvins, ΔT: KelvinDifference) -> Kelvins:
    """Greatest temperature of a later step, which must not undo an earlier one.

    T_max = T_r − ΔT

    ``T_r`` temperature of the earlier step [K]; ``ΔT`` distance to be kept [K]. Returns [K].

    >>> round(hottest_after(T_r=843.15, ΔT=50.0), 6)
    793.15
    """
    return T_r - ΔT


@formula("ε = δ/D", cites=[FIRST_PRINCIPLES])
def share_of_joint(delta: Metres, D: Metres) -> Ratio:
    """Interference of a joint as a share of its diameter, by which the heat to enter it is reckoned.

    ε = δ/D

    ``delta`` interference, ``D`` joint [m]. Returns [-]. Raises OutOfRange unless D is above 0.

    >>> round(share_of_joint(delta=0.35e-3, D=0.500), 9)
    0.0007
    """
    require(D > 0, f"a joint of {D:.6g} has no diameter")
    return delta / D
