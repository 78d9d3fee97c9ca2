"""Formulae of walls as cast."""

from __future__ import annotations

from speclint import FIRST_PRINCIPLES, formula
from speclint.equations import Metres


@formula("t = t_0 + z", cites=[FIRST_PRINCIPLES])
def with_allowance(t_0: Metres, z: Metres) -> Metres:
    """Thickness of a wall with the machining allowance of one more face.

    t = t_0 + z

    ``t_0`` thickness before, ``z`` allowance [m]. Returns [m].

    >>> round(with_allowance(t_0=0.039, z=0.008), 9)
    0.047
    """
    return t_0 + z


@formula("t_0 = (D − d)/2", cites=[FIRST_PRINCIPLES])
def finished_wall(D: Metres, d: Metres) -> Metres:
    """Thickness of the finished wall of a ring.

    t_0 = (D − d)/2

    ``D`` outside, ``d`` inside diameter [m]. Returns [m].

    >>> round(finished_wall(D=0.578, d=0.500), 9)
    0.039
    """
    return (D - d) / 2
