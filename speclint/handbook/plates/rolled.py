"""The thicknesses in which plate is rolled and stocked.

>>> [str(one) for one in rolled_thicknesses("in")[:3]]
['1/8', '3/16', '1/4']
"""

from __future__ import annotations

from fractions import Fraction
from functools import cache

from speclint.handbook.tables import rows

ROLLED_TABLE = "rolled-plate-thicknesses-common-practice.csv"


@cache
def rolled_thicknesses(unit: str) -> tuple[Fraction, ...]:
    """The usual thicknesses of plate in a unit, "mm" or "in", the thinnest first; none for any other unit.

    Common practice: lists of merchants differ, and a mill rolls others to order.
    """
    return tuple(
        sum((Fraction(part) for part in row["thickness"].split()), Fraction(0))
        for row in rows(ROLLED_TABLE)
        if row["unit"] == unit
    )
