"""Areas of openings, and volumes of ports."""

from __future__ import annotations

from speclint import FIRST_PRINCIPLES, formula
from speclint.equations import CubicMetres, Metres, Ratio, SquareMetres


@formula("V = V_0 + A L", cites=[FIRST_PRINCIPLES])
def with_passage(V_0: CubicMetres, A: SquareMetres, L: Metres) -> CubicMetres:
    """Volume of some passages and one more.

    V = V_0 + A L

    ``V_0`` volume of the others [m³]; ``A`` section, ``L`` length of the one more [m², m]. Returns [m³].

    >>> round(with_passage(V_0=0.0, A=0.020, L=0.350) * 1e6, 3)
    7000.0
    """
    return V_0 + A * L


@formula("V_m = k V", cites=[FIRST_PRINCIPLES])
def times(k: Ratio, V: CubicMetres) -> CubicMetres:
    """A multiple of a volume.

    V_m = k V

    ``k`` how many times, ``V`` volume [m³]. Returns [m³].

    >>> round(times(k=1.5, V=0.007), 6)
    0.0105
    """
    return k * V
