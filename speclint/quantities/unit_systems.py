"""Quantities in the units that a reader chooses: as the spec wrote them, metric, or inch-pound."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Literal, get_args

from speclint.quantities.units import by_si
from speclint.quantities.writing import FAHRENHEIT_DIFFERENCE, amount

System = Literal["as written", "metric", "imperial"]
_MILLIMETRES = 1e3  # in a metre
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
_OF_TEMPERATURE = {"K": "°F", "ΔK": FAHRENHEIT_DIFFERENCE}


def amount_in(system: System, value: float, si_unit: str, written_in: str = "") -> str:
    """Number and unit together, in the chosen units.

    A unit that the chosen system does not list stays as a sheet writes it.

    >>> amount_in("imperial", 0.0254, "m"), amount_in("metric", 0.0254, "m", "in")
    ('1 in', '25.4 mm')
    >>> amount_in("imperial", 50.0, "ΔK"), amount_in("as written", 0.0254, "m", "in")
    ('90 °F difference', '1 in')
    """
    return amount(value, si_unit, unit_in(system, si_unit, written_in))


def beside(system: System, value: float, si_unit: str, written_in: str) -> str:
    """A quantity in the chosen units, to stand beside the text of its spec; "" where that is in them already.

    >>> beside("imperial", 0.5, "m", "mm"), beside("imperial", 0.0254, "m", "in"), beside("metric", 0.0254, "m", "in")
    ('19.685 in', '', '25.4 mm')
    """
    chosen = amount_in(system, value, si_unit, written_in)
    return "" if chosen == amount(value, si_unit, written_in) else chosen


def unit_in(system: System, si_unit: str, written_in: str = "") -> str:
    """The unit of a system in which a SI unit is printed, in place of that in which its spec wrote it.

    "" stands for the unit of a sheet. What has no unit of its own in the system stays as it is written.

    >>> unit_in("imperial", "m", "mm"), unit_in("metric", "m", "in"), unit_in("metric", "m", "µm")
    ('in', '', 'µm')
    """
    if system == "as written" or written_in in _OF_INCH_AND_POUND:
        return "" if system == "metric" else written_in
    if system == "metric":
        return written_in
    dimension = by_si(si_unit)
    return _OF_TEMPERATURE.get(si_unit) or _IMPERIAL.get(dimension.name if dimension else "", written_in)


def lengths_in(system: System, lengths: Sequence[float], form: str) -> str:
    """Some lengths, m, as a range in a sentence: millimetres in a format, or inches.

    >>> lengths_in("metric", (0.00032, 0.0004), ".2f"), lengths_in("imperial", (0.0254,), "+.3f")
    ('0.32 to 0.40 mm', '+1 in')
    """
    if system != "imperial":
        return f"{' to '.join(f'{one * _MILLIMETRES:{form}}' for one in lengths)} mm"
    signed = form.startswith("+")
    return " to ".join(f"{'+' if signed and one > 0 else ''}{amount_in(system, one, 'm')}" for one in lengths)
