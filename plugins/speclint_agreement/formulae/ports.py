"""Volumes of ports."""

from __future__ import annotations

from speclint import FIRST_PRINCIPLES, formula
from speclint.equations import CubicMetres, Ratio


@formula("V_m = k V", cites=[FIRST_PRINCIPLES])
def times(k: Ratio, V: CubicMetres) -> CubicMetres:
    """A multiple of a volume.

    V_m = k V

    ``k`` how many times, ``V`` volume [m³]. Returns [m³].

    >>> round(times(k=1.5, V=0.007), 6)
    0.0105
    """
    return k * V
