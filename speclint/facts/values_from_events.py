"""What a load case takes from the valve events: steam used, pressures and temperatures in the cylinder, the exhaust.

The band of a value is that of the corners that were worked; of compression, and of expansion below the exhaust, with
the error of the method. A pressure counts the chest at the pressure of the safety valves too. Steam has no such error
here: ports and nozzle are made for what the cylinders take, and by how much a duty may be off, a rule of the gear says.

Temperatures and dryness are worked with the clearances cold: metal may be tied to them, and how the gear grows with it
counts little.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import TYPE_CHECKING, Literal

from speclint.errors import OutOfRange
from speclint.facts.cylinder_cycles import (
    CylinderBand,
    CylinderGiven,
    cycles_to_safety_valves,
    cylinder_given,
    worked_cycles,
)
from speclint.facts.gear_at_work import GearAtWork
from speclint.facts.steam_in_cylinders import error_of_pressures, highest_compression
from speclint.facts.valve_gear import gears_of
from speclint.handbook.steam import SteamState, state_at_enthalpy
from speclint.handbook.steam_cycle import Cycle, CylinderCycle
from speclint.quantities import Measure
from speclint.rules import Sheet
from speclint.specs import Component, CylinderBlock, NotStated, ValveGear

if TYPE_CHECKING:
    from speclint.specs import LoadCase

#: The keys of a load case that may come from the events.
FromEventsKey = Literal[
    "steam_flow",
    "cylinder_pressure",
    "least_cylinder_pressure",
    "exhaust_temperature",
    "exhaust_dryness",
    "cylinder_temperature",
    "admission_temperature",
    "release_temperature",
]

_Result = Callable[[CylinderCycle], float]


def _exhaust(both: CylinderCycle) -> SteamState:
    return state_at_enthalpy(both.front.running.supply.belt, both.exhaust_enthalpy)


def exhaust_temperature(both: CylinderCycle) -> float:
    """Temperature of the steam that leaves both ends, mixed, at the pressure of the belt [K]."""
    return _exhaust(both).temperature


def exhaust_dryness(both: CylinderCycle) -> float:
    """Dryness of the steam that leaves both ends, mixed, at the pressure of the belt; 1 where it is dry."""
    return _exhaust(both).dryness


def _belt(both: CylinderCycle) -> float:
    return both.front.running.supply.belt


def _most(both: CylinderCycle) -> float:
    """The greatest pressure, compression within the error; steam from the chest is pressed no higher than that."""
    peak = max(highest_compression(end)[0] for end in (both.front, both.back))
    return max(both.greatest_pressure, _belt(both) + error_of_pressures().high * (peak - _belt(both)))


def _least(both: CylinderCycle) -> float:
    """The least pressure, within the error where it is below the exhaust's."""
    below = min(both.least_pressure - _belt(both), 0.0)
    return min(both.least_pressure, _belt(both) + error_of_pressures().high * below)


@dataclass(frozen=True, slots=True)
class _Taken:
    """How a value comes from the cycles: as drawn, its least, its greatest; ``lifting`` with the safety valves too."""

    dimension: str
    unit: str
    nominal: _Result
    least: _Result
    most: _Result
    lifting: bool = False

    def band(self, given: CylinderGiven) -> tuple[float, float, float]:
        """The value, its least and its greatest; OutOfRange where a cycle is not covered."""
        cycles: CylinderBand = cycles_to_safety_valves(given) if self.lifting else worked_cycles(given)
        return self.nominal(cycles.nominal), cycles.of(self.least)[1], cycles.of(self.most)[2]


def _of_ends(result: Callable[[Cycle], float]) -> _Taken:
    """A temperature of each end, that of both their mean."""

    def ends(both: CylinderCycle) -> tuple[float, float]:
        return result(both.front), result(both.back)

    return _Taken(
        "temperature",
        "°C",
        lambda both: sum(ends(both)) / 2,
        lambda both: min(ends(both)),
        lambda both: max(ends(both)),
    )


def _alike(dimension: str, unit: str, result: _Result) -> _Taken:
    return _Taken(dimension, unit, result, result, result)


_RESULTS: dict[str, _Taken] = {
    "steam_flow": _alike("mass flow", "kg/s", lambda both: both.steam_flow),
    "cylinder_pressure": _Taken(
        "fluid pressure", "bar absolute", *(lambda both: both.greatest_pressure,) * 2, _most, lifting=True
    ),
    "least_cylinder_pressure": _Taken(
        "fluid pressure",
        "bar absolute",
        lambda both: both.least_pressure,
        _least,
        lambda both: both.least_pressure,
        lifting=True,
    ),
    "exhaust_temperature": _alike("temperature", "°C", exhaust_temperature),
    "exhaust_dryness": _alike("ratio", "", exhaust_dryness),
    "cylinder_temperature": _of_ends(lambda cycle: cycle.mean_temperature),
    "admission_temperature": _of_ends(lambda cycle: cycle.at_admission.temperature),
    "release_temperature": _of_ends(lambda cycle: cycle.at_release.temperature),
}


def gears_beside(component: Component, sheet: Sheet) -> tuple[ValveGear, ...]:
    """The valve gears of the cylinders that a component belongs to: those of the nearest block, or itself.

    :raises NotAssessed: where no block is near, or no gear serves it.
    """
    if isinstance(component, ValveGear):
        return (component,)
    block = sheet.nearest(component, "cylinder-block")
    if not isinstance(block, CylinderBlock):
        raise sheet.not_assessed(f"no cylinder block is joined to {component.id}")
    gears = tuple(gears_of(block, sheet).values())
    if not gears:
        raise sheet.not_assessed(f"no valve gear serves {block.id}", block.where)
    return gears


def value_from_events(key: str, component: Component, case: LoadCase, sheet: Sheet) -> Measure:
    """A value of a load case by the cycle of the component's cylinder, with the band of what was worked and its error.

    Of several cylinders the whole band. ``where`` and what it rests on are the caller's to say.

    :raises RuleEnded: where the cycle cannot be worked.
    """
    taken = _RESULTS[key]
    cold = taken.dimension in ("temperature", "ratio")
    worked = [_of_gear(gear, case, sheet, cold=cold) for gear in gears_beside(component, sheet)]
    bands = []
    for given, _ in worked:
        try:
            bands.append(taken.band(given))
        except OutOfRange as problem:
            raise sheet.not_covered(str(problem)) from problem
    says = "; ".join(said for _, said in worked)
    datum: Literal["", "absolute"] = "absolute" if taken.dimension == "fluid pressure" else ""
    return Measure(
        nominal=bands[0][0],
        low=min(low for _, low, _ in bands),
        high=max(high for _, _, high in bands),
        dimension=taken.dimension,
        text=f"calculated: {says}",
        unit=taken.unit,
        datum=datum,
        provenance="calculated",
    )


def _of_gear(gear: ValveGear, case: LoadCase, sheet: Sheet, *, cold: bool) -> tuple[CylinderGiven, str]:
    notch = sheet.read("notch", case.notch)
    at_work = GearAtWork(gear, case, sheet, cold=cold)
    if notch not in at_work.running:
        raise sheet.not_assessed(
            f"{gear.id} has no notch {notch!r} in which the engine runs", case.notch.where
        )
    given = cylinder_given(at_work, notch, case, sheet)
    return given, f"{gear.id}, notch {notch}, {given.speed * 60:.6g} rev/min, both ends"


def is_typed(name: str, value: Measure | NotStated, sheet: Sheet) -> bool:
    """Whether a load case states a value itself, and does not have it worked from the events."""
    return sheet.is_stated(name, value) and not (isinstance(value, Measure) and value.worked)
