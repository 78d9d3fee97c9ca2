"""Air: its pressure by the height above the sea, and its properties in the film round a hot surface.

Dry air at the pressure of the atmosphere: figures of table A.4 of Incropera at 1.01325 bar, read in a straight line
between its temperatures. Over the range they agree with CoolProp within 2 %.
"""

from __future__ import annotations

from functools import cache
from itertools import pairwise

from msgspec import Struct

from speclint.equations import Metres, Pascals, Source, formula, require
from speclint.handbook import tables

INCROPERA = Source(
    "F. P. Incropera, D. P. DeWitt, T. L. Bergman and A. S. Lavine, Fundamentals of Heat and Mass Transfer",
    "6th ed., 2007",
    memory=True,
)
#: Natural convection and radiation of a bare steam pipe.
INCROPERA_EXAMPLE = INCROPERA.at("example 9.4, as printed in a public companion notebook", memory=False)
ISO_2533 = Source("ISO 2533, Standard Atmosphere", "1975", memory=True)
_TABLE = "air-incropera-6th-ed-2007-table-a4.csv"


@formula(
    "p = 101325 Pa (1 − h/(44330.8 m))^5.2559",
    cites=[ISO_2533.at("the lowest layer, whose temperature falls by 6.5 K in 1000 m from 288.15 K")],
    empirical="101 325 Pa and 44 330.8 m belong to SI units",
)
def standard_air_pressure(h: Metres) -> Pascals:
    """Pressure of the standard atmosphere at a height above the sea.

    p = 101325 Pa (1 − h/(44330.8 m))^5.2559, where 44330.8 m = 288.15 K/(0.0065 K/m)

    ``h`` height [m], −2000 to 11 000. Returns [Pa absolute]. Raises OutOfRange outside. The weather moves the barometer
    by some 5 % to either side (common practice).

    By hand at 4433.08 m: 0.9^5.2559 = e^(5.2559 × −0.1053605) = e^−0.5537642 = 0.574782; × 101 325 = 58 240.

    >>> round(standard_air_pressure(h=4433.08))
    58240
    """
    require(-2000 <= h <= 11_000, f"a height of {h:.5g} m lies outside −2000 to 11 000 m")
    return float(101_325.0 * (1 - h / 44_330.8) ** 5.2559)


class Air(Struct, frozen=True):
    """Properties of air at one temperature: ν [m²/s], λ [W/(m·K)], Prandtl number, β [1/K]."""

    kinematic_viscosity: float
    conductivity: float
    prandtl_number: float
    expansion: float


def air_at(T: float) -> Air:
    """Air at temperature T [K], 250 to 600 K, and 1.01325 bar absolute; OutOfRange outside.

    The expansion is that of a perfect gas, 1/T.

    >>> air_at(400.0).kinematic_viscosity
    2.641e-05
    """
    table = _figures()
    low, high = table[0][0], table[-1][0]
    require(
        low <= T <= high,
        f"film temperature {T:.4g} K lies outside {low:g} to {high:g} K, the range of the air table",
    )
    above = next(at for at, row in enumerate(table) if row[0] >= T)
    before, after = table[max(above - 1, 0)], table[max(above, 1)]
    share = (T - before[0]) / (after[0] - before[0])
    ν, λ, Pr = (a + share * (b - a) for a, b in zip(before[1:], after[1:], strict=True))
    return Air(ν, λ, Pr, 1 / T)


@cache
def _figures() -> tuple[tuple[float, ...], ...]:
    figures = tuple(tuple(float(text) for text in row.values()) for row in tables.rows(_TABLE))
    if any(after[0] <= before[0] for before, after in pairwise(figures)):
        raise ValueError(f"{_TABLE}: temperatures must rise")
    return figures
