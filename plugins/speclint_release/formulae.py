"""What a record of release is held against."""

from __future__ import annotations

from speclint import FIRST_PRINCIPLES, formula
from speclint.formula import KelvinDifference, Kelvins


@formula("ΔT = T_d − T", cites=[FIRST_PRINCIPLES])
def temperature_margin(T_d: Kelvins, T: Kelvins) -> KelvinDifference:
    """Margin of the design temperature over that in service.

    ΔT = T_d − T

    ``T_d`` design temperature, ``T`` greatest temperature in service [K]. Returns [K], negative where the
    design temperature is passed.

    >>> temperature_margin(T_d=673.0, T=650.0)
    23.0
    """
    return T_d - T
