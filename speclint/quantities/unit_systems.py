"""Quantities in the units that a reader chooses: as the spec wrote them, metric, or inch-pound."""

from __future__ import annotations

from typing import Literal, get_args

from speclint.quantities.units import by_si
from speclint.quantities.writing import displayed, number, readable, without_rounding

System = Literal["as written", "metric", "imperial"]
SYSTEMS: tuple[System, ...] = get_args(System)

#: The inch-pound unit of each dimension, as a drawing office writes it.
_IMPERIAL = {
    "length": "in",
    "area": "in²",
    "volume": "in³",
    "mass": "lb",
    "force": "lbf",
    "moment": "lbf·ft",
    "pressure": "psi",
    "stress": "psi",
    "stiffness": "lbf/in",
    "speed": "ft/s",
    "acceleration": "ft/s²",
    "density": "lb/in³",
    "mass flow": "lb/h",
    "power": "hp",
    "energy": "ft·lbf",
    "thermal conductivity": "Btu/(h·ft·°F)",
    "expansion": "1/°F",
}
_OF_INCH_AND_POUND = frozenset(
    {"in", "ft", "thou", "in²", "ft²", "in³", "ft³", "lb", "oz", "lbf", "tonf", "lbf·ft", "lbf ft", "lbf·in"}
    | {"lbf in", "psi", "ksi", "lbf/in²", "tonf/in²", "lbf/in", "mph", "ft/s", "ft/min", "ft/s²", "lb/in³"}
    | {"lb/ft³", "lb/h", "hp", "ft·lbf", "Btu/(h·ft·°F)", "1/°F", "°F"}
)
_FAHRENHEIT = 1.8  # degrees Fahrenheit to the kelvin, by definition


def amount_in(system: System, value: float, si_unit: str, written_in: str = "") -> str:
    """Number and unit together, in the chosen units.

    A unit that the chosen system does not list stays as a sheet writes it.

    >>> amount_in("imperial", 0.0254, "m"), amount_in("metric", 0.0254, "m", "in")
    ('1 in', '25.4 mm')
    >>> amount_in("imperial", 50.0, "ΔK"), amount_in("as written", 0.0254, "m", "in")
    ('90 °F difference', '1 in')
    """
    shown, unit = readable(*_shown(system, value, si_unit, written_in), written_in)
    text = number(shown, unit)
    return (
        f"{text}{unit.removeprefix('1')}" if unit.startswith(("1e-6", "1/°")) else f"{text} {unit}".rstrip()
    )


def _shown(system: System, value: float, si_unit: str, written_in: str) -> tuple[float, str]:
    if system == "metric" and written_in in _OF_INCH_AND_POUND:
        return displayed(value, si_unit)
    if system != "imperial" or written_in in _OF_INCH_AND_POUND:
        return displayed(value, si_unit, written_in)
    if si_unit == "ΔK":
        return without_rounding(value, si_unit) * _FAHRENHEIT, "°F difference"
    if si_unit == "K":
        return displayed(value, si_unit, "°F")
    dimension = by_si(si_unit)
    unit = _IMPERIAL.get(dimension.name, "") if dimension else ""
    return displayed(value, si_unit, unit)
