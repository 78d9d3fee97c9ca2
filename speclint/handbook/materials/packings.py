"""Packings of rods and spindles: limits of temperature, pressure and speed.

The figures are common practice, for a packing that is well maintained; the maker's data take precedence.

>>> round(hottest("grey iron segments").nominal - 273.15), fastest("grey iron segments").nominal
(400, 8.0)
"""

from __future__ import annotations

from speclint.equations import COMMON_PRACTICE
from speclint.handbook.tables import Reading, entries, number, row

_TABLE = "packings-common-practice.csv"
_ICE = 273.15
_BAR = 1e5


def packings() -> tuple[str, ...]:
    """Names of the packings in the table."""
    return entries(_TABLE, "packing")


def hottest(packing: str) -> Reading:
    """Greatest temperature at the packing, K; NotKnown for a packing that is not in the table."""
    what = f"greatest temperature of {packing}"
    return Reading.exact(what, _number(packing, "hottest_C", what) + _ICE, "K", COMMON_PRACTICE)


def greatest_pressure(packing: str) -> Reading:
    """Greatest pressure across the packing, Pa gauge."""
    what = f"greatest pressure of {packing}"
    return Reading.exact(what, _number(packing, "greatest_bar", what) * _BAR, "Pa", COMMON_PRACTICE)


def fastest(packing: str) -> Reading:
    """Greatest rubbing speed, m/s; NotKnown for a seal of parts that do not slide."""
    what = f"greatest speed of {packing}"
    return Reading.exact(what, _number(packing, "fastest", what), "m/s", COMMON_PRACTICE)


def advice(packing: str) -> str:
    """What a fitter should know before choosing it."""
    return row(_TABLE, "packing", packing)["note"]


def _number(packing: str, field: str, what: str) -> float:
    return number(_TABLE, "packing", packing, field, what)
