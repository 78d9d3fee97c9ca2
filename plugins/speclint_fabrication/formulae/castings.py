"""Walls that meet in a casting."""

from __future__ import annotations

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, formula, require
from speclint.equations import Metres, Ratio


@formula("r = t_1/t_2", cites=[FIRST_PRINCIPLES])
def ratio_of_walls(t_1: Metres, t_2: Metres) -> Ratio:
    """Ratio of walls that meet.

    r = t_1/t_2

    ``t_1`` thicker, ``t_2`` thinner wall [m]. Returns a ratio. Raises OutOfRange unless t_1 ≥ t_2 > 0.

    >>> round(ratio_of_walls(t_1=0.036, t_2=0.024), 6)
    1.5
    """
    require(
        t_1 >= t_2 > 0, f"wall {t_1 * 1e3:.6g} mm is stated as thicker than {t_2 * 1e3:.6g} mm, and is not"
    )
    return t_1 / t_2


@formula("R = k t", cites=[COMMON_PRACTICE])
def fillet_wanted(k: Ratio, t: Metres) -> Metres:
    """Fillet radius required where walls meet.

    R = k t

    ``k`` share [-]; ``t`` thinner wall [m]. Returns [m].

    >>> round(fillet_wanted(k=0.333, t=0.024) * 1e3, 3)
    7.992
    """
    return k * t
