"""The boss of a rocker."""

from __future__ import annotations

from speclint import FIRST_PRINCIPLES, formula
from speclint.equations import Metres


@formula("w = (D − d)/2 − t", cites=[FIRST_PRINCIPLES])
def wall_round_bush(D: Metres, d: Metres, t: Metres) -> Metres:
    """Wall of a boss round the bush in it.

    w = (D − d)/2 − t

    ``D`` outside of the boss, ``d`` pin, ``t`` thickness of the bush [m]. Returns [m], below 0 where the bush is wider
    than the boss.

    >>> round(wall_round_bush(D=0.060, d=0.040, t=0.005), 9)
    0.005
    """
    return (D - d) / 2 - t
