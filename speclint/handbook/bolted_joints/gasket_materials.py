"""Gaskets of the trade: what each needs to bed in and stay tight, and its limits of temperature and pressure.

Factors are those of ASME VIII-1 Table 2-5.1 where it has the gasket; limits of use are common practice.

>>> seating_stress("solid copper or brass").nominal / 1e6
90.0
>>> gasket_factor("spiral wound stainless steel with filler").source.place
'Table 2-5.1, as reproduced in a public flange calculation'
"""

from __future__ import annotations

from speclint.equations import COMMON_PRACTICE, Kelvins, Pascals, Ratio, Source, formula
from speclint.handbook.tables import ASME_APPENDIX_2, Reading, entries, number, row

_TABLE = "gaskets-asme-viii-1-2019-table-2-5-1.csv"
_FACTORS = ASME_APPENDIX_2.at("Table 2-5.1, as reproduced in a public flange calculation", memory=False)
_ICE = 273.15
_BAR = 1e5


def gaskets() -> tuple[str, ...]:
    """Names of the gaskets in the table, the softest first."""
    return entries(_TABLE, "gasket")


def gasket_factor(gasket: str) -> Reading:
    """Gasket factor m: pressure on the gasket over pressure held."""
    return _read(gasket, "m", f"gasket factor of {gasket}", 1.0, "", _factor_source(gasket))


def seating_stress(gasket: str) -> Reading:
    """Seating stress y, Pa."""
    return _read(gasket, "y_MPa", f"seating stress of {gasket}", 1e6, "Pa", _factor_source(gasket))


def thickness(gasket: str) -> Reading:
    """Thickness to which the factors belong, m; NotKnown where the factors do not depend on it."""
    return _read(gasket, "thickness_mm", f"thickness of {gasket}", 1e-3, "m", _factor_source(gasket))


def hottest(gasket: str) -> Reading:
    """Greatest steam temperature, K."""
    what = f"greatest temperature of {gasket}"
    return Reading.exact(
        what, number(_TABLE, "gasket", gasket, "hottest_C", what) + _ICE, "K", COMMON_PRACTICE
    )


def greatest_pressure(gasket: str) -> Reading:
    """Greatest steam pressure, Pa gauge."""
    return _read(gasket, "greatest_bar", f"greatest pressure of {gasket}", _BAR, "Pa", COMMON_PRACTICE)


def crushing_stress(gasket: str) -> Reading:
    """Greatest mean stress on its whole ring that does not crush it, hot included, Pa."""
    return _read(gasket, "crushed_above_MPa", f"stress that crushes {gasket}", 1e6, "Pa", COMMON_PRACTICE)


def greatest_pressure_temperature(gasket: str) -> Reading:
    """Greatest product of pressure and temperature, bar × °C; NotKnown where there is no such limit."""
    what = f"greatest pressure × temperature of {gasket}"
    found = number(_TABLE, "gasket", gasket, "greatest_bar_C", what)
    return Reading.exact(what, found, "bar·°C", COMMON_PRACTICE)


@formula("pT = p/bar (T/K − 273.15)", cites=[COMMON_PRACTICE], empirical="bar and degrees Celsius")
def pressure_temperature(p: Pascals, T: Kelvins) -> Ratio:
    """Product of pressure and temperature as rating sheets have it.

    p: pressure, Pa gauge. T: temperature, K. Returns bar × °C.

    >>> round(pressure_temperature(16e5, 473.15))  # hand: 16 bar × 200 °C
    3200
    """
    return p / _BAR * (T - _ICE)


def _factor_source(gasket: str) -> Source:
    asme = row(_TABLE, "gasket", gasket)["factors_from"] == "ASME"
    return _FACTORS if asme else COMMON_PRACTICE


def _read(gasket: str, column: str, what: str, scale: float, unit: str, source: Source) -> Reading:
    return Reading.exact(what, number(_TABLE, "gasket", gasket, column, what) * scale, unit, source)
