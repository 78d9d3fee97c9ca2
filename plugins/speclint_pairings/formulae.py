"""What surfaces and oils are held against."""

from __future__ import annotations

from typing import Annotated

from speclint import FIRST_PRINCIPLES, formula
from speclint.formula import KelvinDifference, Kelvins

Brinell = Annotated[float, ""]


@formula("ΔH = H_1 − H_2", cites=[FIRST_PRINCIPLES])
def harder_by(H_1: Brinell, H_2: Brinell) -> Brinell:
    """By how much one surface is harder than the other.

    ΔH = H_1 − H_2

    ``H_1``, ``H_2`` Brinell hardness [HB]. Returns [HB], negative where the first is the softer.

    >>> harder_by(H_1=250.0, H_2=200.0)
    50.0
    """
    return H_1 - H_2


@formula("ΔT = T_f − T", cites=[FIRST_PRINCIPLES])
def flash_margin(T_f: Kelvins, T: Kelvins) -> KelvinDifference:
    """Margin of an oil's flash point over the wall that it wets.

    ΔT = T_f − T

    ``T_f`` flash point, ``T`` metal of the wall [K]. Returns [K], negative where the wall is the hotter.

    >>> flash_margin(T_f=590.0, T=550.0)
    40.0
    """
    return T_f - T
