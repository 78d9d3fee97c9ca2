"""Dry air at the pressure of the atmosphere, for the film round a hot surface.

Figures of table A.4 of Incropera at 1.01325 bar, read in a straight line between its temperatures. Over the
range they agree with CoolProp within 2 %.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache
from itertools import pairwise

from speclint.equations import Source, require
from speclint.handbook import tables

INCROPERA = Source(
    "F. P. Incropera, D. P. DeWitt, T. L. Bergman and A. S. Lavine, Fundamentals of Heat and Mass Transfer",
    "6th ed., 2007",
    memory=True,
)
#: Natural convection and radiation of a bare steam pipe.
INCROPERA_EXAMPLE = INCROPERA.at("example 9.4, as printed in a public companion notebook", memory=False)
_TABLE = "air-incropera-6th-ed-2007-table-a4.csv"


@dataclass(frozen=True, slots=True)
class Air:
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
