"""Results of the cycle in a cylinder, as readings: as drawn, and between the corners that were worked."""

from __future__ import annotations

from collections.abc import Callable

from speclint import FIRST_PRINCIPLES
from speclint.facts import CylinderGiven, exhaust_dryness, exhaust_temperature, worked_cycles
from speclint.handbook.steam_cycle import Cycle, CylinderCycle
from speclint.handbook.tables import Reading
from speclint.handbook.valve_events import End


def of_cylinder(cylinder: CylinderGiven, at: str, name: str) -> Reading:
    """A result of both ends of a cylinder, by its name below; ``at`` says of which gear, notch and speed."""
    says, unit, result = _OF_CYLINDER[name]
    return _reading(cylinder, f"{says}, calculated: {at}", unit, result)


def of_end(cylinder: CylinderGiven, side: End, at: str, name: str) -> Reading:
    """A result of one end of a cylinder, by its name below; ``at`` says of which gear, notch and speed."""
    says, unit, result = _OF_END[name]
    words = f"{says}, calculated: {at}, {side.value}"

    def of_both(both: CylinderCycle) -> float:
        return result(both.front if side is End.FRONT else both.back)

    return _reading(cylinder, words, unit, of_both)


def as_drawn(cylinder: CylinderGiven, side: End, at: str, name: str) -> Reading:
    """A figure of the diagram of one end as drawn, without its band, by its name below: a step of a calculation."""
    says, unit, result = _OF_DIAGRAM[name]
    both = worked_cycles(cylinder).nominal
    value = result(both.front if side is End.FRONT else both.back)
    words = f"{says}, calculated as drawn: {at}, {side.value}"
    return Reading(words, value, value, value, unit, FIRST_PRINCIPLES, worked=True)


def _reading(
    cylinder: CylinderGiven, says: str, unit: str, result: Callable[[CylinderCycle], float]
) -> Reading:
    nominal, low, high = worked_cycles(cylinder).of(result)
    return Reading(says, nominal, low, high, unit, FIRST_PRINCIPLES, worked=True)


_OF_CYLINDER: dict[str, tuple[str, str, Callable[[CylinderCycle], float]]] = {
    "steam": ("steam of both ends", "kg/s", lambda both: both.steam_flow),
    "power": ("indicated power of both ends", "W", lambda both: both.power),
    "greatest": ("greatest pressure of both ends, absolute", "Pa", lambda both: both.greatest_pressure),
    "least": ("least pressure of both ends, absolute", "Pa", lambda both: both.least_pressure),
    "exhaust temperature": ("temperature of the exhaust steam, mixed", "K", exhaust_temperature),
    "exhaust dryness": ("dryness of the exhaust steam, mixed", "", exhaust_dryness),
    "mean temperature": (
        "mean temperature of the steam in the cylinder over a revolution",
        "K",
        lambda both: both.mean_temperature,
    ),
    "admission temperature": (
        "temperature of the steam in the cylinder at admission, mean of both ends",
        "K",
        lambda both: (both.front.at_admission.temperature + both.back.at_admission.temperature) / 2,
    ),
    "release temperature": (
        "temperature of the steam in the cylinder at release, mean of both ends",
        "K",
        lambda both: (both.front.at_release.temperature + both.back.at_release.temperature) / 2,
    ),
    "kilograms for kilowatt hour": (
        "steam for each indicated kilowatt-hour, in kg/kWh",
        "",
        lambda both: both.per_kilowatt_hour,
    ),
    "pounds for horsepower hour": (
        "steam for each indicated horsepower-hour, in lb/ihp·h",
        "",
        lambda both: both.per_horsepower_hour,
    ),
    "work": ("work of the front over that of the back", "", lambda both: both.work_ratio),
}

_OF_END: dict[str, tuple[str, str, Callable[[Cycle], float]]] = {
    "mean pressure": ("mean effective pressure", "Pa", lambda cycle: cycle.mean_pressure),
    "compression": (
        "greatest pressure before admission, absolute",
        "Pa",
        lambda cycle: cycle.compression_peak,
    ),
    "cut-off": ("pressure at cut-off, absolute", "Pa", lambda cycle: cycle.at_cut_off.pressure),
    "release": ("pressure at release, absolute", "Pa", lambda cycle: cycle.at_release.pressure),
    "release dryness": ("dryness at release", "", lambda cycle: cycle.at_release.dryness),
    "return": ("mean pressure of the return stroke, absolute", "Pa", lambda cycle: cycle.return_pressure),
    "factor": ("diagram factor", "", lambda cycle: cycle.diagram_factor),
}

_OF_DIAGRAM: dict[str, tuple[str, str, Callable[[Cycle], float]]] = {
    "cut-off travel": ("travel of the piston at cut-off", "m", lambda cycle: _travel(cycle, "cut_off")),
    "cut-off pressure": ("pressure at cut-off, absolute", "Pa", lambda cycle: cycle.at_cut_off.pressure),
    "cut-off enthalpy": ("enthalpy of the steam at cut-off", "J/kg", lambda cycle: cycle.at_cut_off.enthalpy),
    "release pressure": ("pressure at release, absolute", "Pa", lambda cycle: cycle.at_release.pressure),
    "compression travel": (
        "travel of the piston as the exhaust shuts",
        "m",
        lambda cycle: _travel(cycle, "compression"),
    ),
    "compression pressure": (
        "pressure as the exhaust shuts, absolute",
        "Pa",
        lambda cycle: cycle.at_compression.pressure,
    ),
    "compression enthalpy": (
        "enthalpy of the steam as the exhaust shuts",
        "J/kg",
        lambda cycle: cycle.at_compression.enthalpy,
    ),
    "admission pressure": (
        "pressure at admission, absolute",
        "Pa",
        lambda cycle: cycle.at_admission.pressure,
    ),
    "work": ("work of the diagram, a revolution", "J", lambda cycle: cycle.work),
    "clearance": ("clearance volume", "m³", lambda cycle: cycle.end.clearance),
    "area": ("area of the piston", "m²", lambda cycle: cycle.end.area),
}


def _travel(cycle: Cycle, event: str) -> float:
    """Travel of the piston from the end at an event [m]."""
    angle: float = getattr(cycle.end.events, event)
    return cycle.end.crank.travel(cycle.end.end, angle)
