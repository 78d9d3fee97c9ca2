"""The units that drawings write: metric, in which they are laid out, or inch-pound where the works chose these.

Every drawing is laid out and scaled in metric units. What is written on it and beside it, numbers, marks of axes and
words, is in the units of one system, which is set while the drawings of a document are made.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from contextvars import ContextVar
from functools import cache
from string import Formatter

from speclint.quantities import DIMENSIONS, System

#: The inch-pound unit that is written in place of each metric one. What is not here is written as it is: °, %.
_IMPERIAL: Mapping[str, str] = {
    "mm": "in",
    "µm": "thou",
    "mm²": "in²",
    "cm²": "in²",
    "N": "lbf",
    "kN": "lbf",
    "N/mm": "lbf/in",
    "kN·m": "lbf·ft",
    "MPa": "psi",
    "bar": "psi",
    "mbar": "psi",
    "m/s": "ft/s",
    "m/s²": "ft/s²",
    "km/h": "mph",
    "°C": "°F",
    "kg/s": "lb/h",
    "kg/kWh": "lb/ihp·h",
}
_METRIC: Mapping[str, str] = {unit: unit for unit in _IMPERIAL}
_COARSER = 2.0  # a last decimal may be worth up to twice as much as that of the metric number
_ZERO_CELSIUS = 273.15
#: Where the scales of temperature begin, in kelvin.
_BEGINS = {"°C": _ZERO_CELSIUS, "°F": _ZERO_CELSIUS - 32 / 1.8}

_system: ContextVar[System] = ContextVar("system of drawings", default="as written")


@cache
def _units() -> Mapping[str, float]:
    """SI value of one of each unit; of steam for each unit of work, its value in kg/kWh, as sheets have it."""
    known = {unit: si for one in DIMENSIONS.values() for unit, si in one.units.items()}
    horsepower, kilowatt = (DIMENSIONS["power"].units[unit] for unit in ("hp", "kW"))
    pound = DIMENSIONS["mass"].units["lb"]
    of_work = {"kg/kWh": 1.0, "lb/ihp·h": pound / (horsepower / kilowatt)}
    of_heat = {"°C": 1.0, "°F": 1 / 1.8, "K": 1.0, "°F difference": 1 / 1.8}
    return {**known, **of_work, **of_heat}


def from_si(value: float, unit: str) -> float:
    """The number of a SI value in a unit that drawings write.

    >>> round(from_si(0.0254, "thou"), 9), round(from_si(373.15, "°F"), 9)
    (1000.0, 212.0)
    """
    return (value - _BEGINS.get(unit, 0.0)) / _units()[unit]


def _to_si(number: float, unit: str) -> float:
    return number * _units()[unit] + _BEGINS.get(unit, 0.0)


@contextmanager
def drawn_in(system: System) -> Iterator[None]:
    """Write what is drawn meanwhile in the units of a system; metric where it is "as written".

    >>> with drawn_in("imperial"):
    ...     drawn("mm"), drawn("°")
    ('in', '°')
    """
    before = _system.set(system)
    try:
        yield
    finally:
        _system.reset(before)


def drawn_system() -> System:
    """The system that drawings are made in now."""
    return _system.get()


def drawn_names() -> Mapping[str, str]:
    """By its metric name each unit as it is written now."""
    return _IMPERIAL if _system.get() == "imperial" else _METRIC


def drawn(unit: str) -> str:
    """The unit in which numbers of a metric unit are written now."""
    return drawn_names().get(unit, unit)


def drawn_number(value: float, unit: str) -> float:
    """A number of a metric unit as it is written now: itself, or what it is in inch-pound units.

    >>> with drawn_in("imperial"):
    ...     round(drawn_number(25.4, "µm"), 9), round(drawn_number(100.0, "°C"), 9)
    (1.0, 212.0)
    """
    own = drawn(unit)
    return value if own == unit else from_si(_to_si(value, unit), own)


def metric_number(written: float, unit: str) -> float:
    """The number of a metric unit that is written so now: the other way of :func:`drawn_number`."""
    own = drawn(unit)
    return written if own == unit else from_si(_to_si(written, own), unit)


def drawn_places(unit: str, places: int) -> int:
    """How many decimals a number is written with that has so many in a metric unit, to be as fine.

    By hand: 0.01 mm is 0.0004 in, 1 MPa is 145 psi, and 1 m/s is 3.3 ft/s.

    >>> with drawn_in("imperial"):
    ...     drawn_places("mm", 2), drawn_places("MPa", 1), drawn_places("m/s", 1)
    (4, 0, 1)
    """
    own = drawn(unit)
    if own == unit:
        return places
    finer = math.ceil(math.log10(_units()[own] / _units()[unit] / _COARSER))
    return max(0, places + finer)


def unit_named(title: str) -> str:
    """The metric unit that the title of an axis names in braces; "" where it names none.

    >>> unit_named("load of the spring, {N}"), unit_named("share of the stroke")
    ('N', '')
    """
    return next((name for _, name, _, _ in Formatter().parse(title) if name), "")
