"""What a load case takes from the valve events: steam used, pressures in the cylinder, temperature of the exhaust."""

from __future__ import annotations

from collections.abc import Callable
from typing import Literal

from speclint.errors import OutOfRange
from speclint.facts.cylinder_cycles import CylinderGiven, cylinder_given, worked_cycles
from speclint.facts.gear_at_work import GearAtWork
from speclint.facts.valve_gear import gears_of
from speclint.handbook.steam import state_at_enthalpy
from speclint.handbook.steam_cycle import CylinderCycle
from speclint.quantities import Measure
from speclint.rules import Sheet
from speclint.specs import Component, CylinderBlock, LoadCase, NotStated, ValveGear

#: The keys of a load case that may come from the events.
FromEventsKey = Literal["steam_flow", "cylinder_pressure", "least_cylinder_pressure", "exhaust_temperature"]


def exhaust_temperature(both: CylinderCycle) -> float:
    """Temperature of the steam that leaves both ends, mixed, at the pressure of the belt [K]."""
    return state_at_enthalpy(both.front.running.supply.belt, both.exhaust_enthalpy).temperature


_RESULTS: dict[str, tuple[str, str, Callable[[CylinderCycle], float]]] = {
    "steam_flow": ("mass flow", "kg/s", lambda both: both.steam_flow),
    "cylinder_pressure": ("fluid pressure", "bar absolute", lambda both: both.greatest_pressure),
    "least_cylinder_pressure": ("fluid pressure", "bar absolute", lambda both: both.least_pressure),
    "exhaust_temperature": ("temperature", "°C", exhaust_temperature),
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
    """A value of a load case by the cycle of the component's cylinder, with the band of the corners that were worked.

    Of several cylinders the whole band. ``where`` and what it rests on are the caller's to say.

    :raises RuleEnded: where the cycle cannot be worked.
    """
    dimension, unit, result = _RESULTS[key]
    worked = [_of_gear(gear, case, sheet) for gear in gears_beside(component, sheet)]
    bands = []
    for given, _ in worked:
        try:
            bands.append(worked_cycles(given).of(result))
        except OutOfRange as problem:
            raise sheet.not_covered(str(problem)) from problem
    says = "; ".join(said for _, said in worked)
    datum: Literal["", "absolute"] = "absolute" if dimension == "fluid pressure" else ""
    return Measure(
        nominal=bands[0][0],
        low=min(low for _, low, _ in bands),
        high=max(high for _, _, high in bands),
        dimension=dimension,
        text=f"calculated: {says}",
        unit=unit,
        datum=datum,
        provenance="calculated",
    )


def _of_gear(gear: ValveGear, case: LoadCase, sheet: Sheet) -> tuple[CylinderGiven, str]:
    notch = sheet.read("notch", case.notch)
    at_work = GearAtWork(gear, case, sheet)
    if notch not in at_work.running:
        raise sheet.not_assessed(
            f"{gear.id} has no notch {notch!r} in which the engine runs", case.notch.where
        )
    given = cylinder_given(at_work, notch, case, sheet)
    return given, f"{gear.id}, notch {notch}, {given.speed * 60:.6g} rev/min, both ends"


def is_typed(name: str, value: Measure | NotStated, sheet: Sheet) -> bool:
    """Whether a load case states a value itself, and does not have it worked from the events."""
    return sheet.is_stated(name, value) and not (isinstance(value, Measure) and value.worked)
