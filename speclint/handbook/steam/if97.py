"""The only module that calls the library of steam tables, with its ranges checked.

``seuif97`` works in MPa and °C and answers a state outside its regions with a negative code. Here all
arguments and results are in SI, and a state outside raises OutOfRange with the range in words.
Nothing else in speclint imports the library.
"""

from __future__ import annotations

import math
from collections.abc import Callable
from enum import Enum
from functools import cache

from speclint.equations import Source, require
from speclint.errors import OutOfRange

IF97 = Source(
    "IAPWS R7-97, Industrial Formulation 1997 for the Thermodynamic Properties of Water and Steam",
    "2012",
    "regions 1, 2, 4 and 5 and their backward equations",
)
VISCOSITY_2008 = Source(
    "IAPWS R12-08, Formulation for the Viscosity of Ordinary Water Substance", "2008", "equation 10"
)
CONDUCTIVITY_2011 = Source(
    "IAPWS R15-11, Formulation for the Thermal Conductivity of Ordinary Water Substance",
    "2011",
    "equation 15",
)

#: Saturation pressure at 0 °C, the lower end of the formulation in the library (Pa absolute).
LEAST_PRESSURE = 611.213
CRITICAL_PRESSURE = 22.064e6
GREATEST_PRESSURE = 100e6
#: Above 800 °C (region 5) the formulation ends at this pressure.
GREATEST_PRESSURE_VERY_HOT = 50e6

LEAST_TEMPERATURE = 273.15
CRITICAL_TEMPERATURE = 647.096
#: Ends of the backward equations and of region 2, and of region 5.
VERY_HOT = 1073.15
GREATEST_TEMPERATURE = 2273.15

#: No property used here lies below this; every error code of the library does.
_LEAST_ANSWER = -900.0


class Property(Enum):
    """A property: the library's number for it, and the factor from the library's unit to SI."""

    TEMPERATURE = (1, 1.0)
    SPECIFIC_VOLUME = (3, 1.0)
    ENTHALPY = (4, 1e3)
    ENTROPY = (5, 1e3)
    HEAT_CAPACITY = (8, 1e3)
    SPEED_OF_SOUND = (10, 1.0)
    ISENTROPIC_EXPONENT = (11, 1.0)
    VISCOSITY = (24, 1.0)
    CONDUCTIVITY = (26, 1.0)

    @property
    def words(self) -> str:
        return self.name.lower().replace("_", " ")


def at_temperature(p: float, T: float, wanted: Property) -> float:
    """A property of water or steam at pressure p (Pa absolute) and temperature T (K); OutOfRange outside."""
    require_pressure(p)
    require_temperature(T)
    require(
        T <= VERY_HOT or p <= GREATEST_PRESSURE_VERY_HOT,
        f"at {celsius(T)} pressure {bar(p)} lies above 500 bar, the range of IAPWS-IF97 above 800 °C",
    )
    return _ask("pt", p, T - LEAST_TEMPERATURE, wanted)


def on_saturation_line(p: float, x: float, wanted: Property) -> float:
    """A property at pressure p (Pa absolute) and dryness x, 0 boiling water to 1 dry steam."""
    require_saturable(p)
    require(0 <= x <= 1, f"dryness {x:.6g} lies outside 0 to 1")
    return _ask("px", p, x, wanted)


def near(p: float, pair: str, given: float) -> float:
    """Temperature (K) by the backward equation ``pair``: "ph" in J/kg or "ps" in J/(kg·K), within 25 mK."""
    return _ask(pair, p, given / 1e3, Property.TEMPERATURE) + LEAST_TEMPERATURE


def boiling_point(p: float) -> float:
    """Saturation temperature (K) at pressure p (Pa absolute)."""
    return on_saturation_line(p, 1.0, Property.TEMPERATURE) + LEAST_TEMPERATURE


def boiling_pressure(T: float) -> float:
    """Saturation pressure (Pa absolute) at temperature T (K)."""
    require(
        LEAST_TEMPERATURE <= T <= CRITICAL_TEMPERATURE,
        f"temperature {celsius(T)} lies outside 0 to 373.946 °C, where water boils",
    )
    import seuif97

    answer = float(seuif97.tx(T - LEAST_TEMPERATURE, 1.0, 0))
    return _accept(answer, f"the saturation pressure at {celsius(T)}") * 1e6


def by_enthalpy() -> Callable[[float, float, int], float]:
    """The library's own function of p [MPa], h [kJ/kg] and the number of a property, for loops of thousands of calls.

    It answers a state outside its regions with a number below −900: whoever calls it examines the answer.
    """
    return _own("ph")


def by_temperature() -> Callable[[float, float, int], float]:
    """The same of p [MPa], temperature [°C] and the number of a property."""
    return _own("pt")


@cache
def _own(pair: str) -> Callable[[float, float, int], float]:
    import seuif97

    found: Callable[[float, float, int], float] = getattr(seuif97, pair)
    return found


def require_pressure(p: float) -> None:
    """Raise OutOfRange unless p (Pa absolute) lies within IAPWS-IF97."""
    require(
        LEAST_PRESSURE <= p <= GREATEST_PRESSURE,
        f"pressure {bar(p)} lies outside 0.00611213 to 1000 bar absolute, the range of IAPWS-IF97",
    )


def require_temperature(T: float) -> None:
    """Raise OutOfRange unless T (K) lies within IAPWS-IF97."""
    require(
        LEAST_TEMPERATURE <= T <= GREATEST_TEMPERATURE,
        f"temperature {celsius(T)} lies outside 0 to 2000 °C, the range of IAPWS-IF97",
    )


def require_saturable(p: float) -> None:
    """Raise OutOfRange unless water boils at p (Pa absolute)."""
    require(
        LEAST_PRESSURE <= p <= CRITICAL_PRESSURE,
        f"pressure {bar(p)} lies outside 0.00611213 to 220.64 bar absolute, where water boils",
    )


def bar(p: float) -> str:
    """A pressure in Pa as words in bar."""
    return f"{p / 1e5:.6g} bar absolute"


def celsius(T: float) -> str:
    """A temperature in K as words in °C."""
    return f"{T - LEAST_TEMPERATURE:.6g} °C"


def _ask(pair: str, p: float, second: float, wanted: Property) -> float:
    import seuif97

    number, factor = wanted.value
    answer = float(getattr(seuif97, pair)(p / 1e6, second, number))
    return _accept(answer, f"the {wanted.words} of water or steam at {bar(p)}") * factor


def _accept(answer: float, what: str) -> float:
    if not math.isfinite(answer) or answer <= _LEAST_ANSWER:
        raise OutOfRange(f"{what} lies outside the regions of IAPWS-IF97")
    return answer
