"""Estimates of metal temperatures where nothing was measured: by the steam that washes a part and the parts beside it.

The mean temperature of the steam in the cylinder comes from its cycle, worked with the clearances cold: the growth of
the gear rests on the temperatures that are sought, and counts little. By how much a part differs from its steam or its
neighbour is common practice, with a band. An estimate is an assumption, and every sheet says so.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING

from speclint.equations import FIRST_PRINCIPLES, KelvinDifference, Kelvins, formula
from speclint.errors import Location, OutOfRange
from speclint.facts.cylinder_cycles import cycles_as_drawn, cylinder_given
from speclint.facts.gear_at_work import GearAtWork
from speclint.facts.hot_clearances import nominal_temperature
from speclint.facts.seats import chamber_beyond
from speclint.facts.values_from_events import exhaust_temperature, gears_beside
from speclint.handbook.steam_cycle import CylinderCycle
from speclint.quantities import Measure
from speclint.rules import Sheet
from speclint.specs import (
    BoltedJoint,
    Component,
    CylinderBlock,
    CylinderCover,
    CylinderLiner,
    Estimate,
    NotStated,
    Piston,
    PoppetValve,
    Spec,
    Tie,
    ValveSeat,
    ValveSpindle,
)

if TYPE_CHECKING:
    from speclint.specs import LoadCase

_Found = Measure | Tie


@formula("ΔT = (T_v − T_b)/2", cites=[FIRST_PRINCIPLES])
def half_way(T_v: Kelvins, T_b: Kelvins) -> KelvinDifference:
    """By how much the middle between two temperatures lies above the second.

    ΔT = (T_v − T_b)/2

    ``T_v`` of a valve, ``T_b`` of the block [K]. Returns [K].

    >>> half_way(T_v=620.0, T_b=540.0)
    40.0
    """
    return (T_v - T_b) / 2


def estimated_temperature(
    asked: Estimate, part: Spec | None, component: Component, case: LoadCase, sheet: Sheet
) -> _Found:
    """The temperature of a part by the steam and the parts beside it, with its band, marked as assumed.

    ``part`` is None where a load case ties another temperature to it by name: then it is the nearest part to the
    component that is checked.

    :raises NotAssessed: for a part of which no estimate is known, and where the cycle cannot be worked.
    """
    found = part if part is not None else sheet.nearest(component, asked.name)
    for kind, estimate in _BY_KIND:
        if isinstance(found, kind):
            return estimate(_Asked(asked, component, case, sheet), found)
    raise sheet.not_assessed(f"no estimate is known for {asked.name}", asked.where)


class _Asked:
    """One estimate as it is asked for."""

    def __init__(self, asked: Estimate, component: Component, case: LoadCase, sheet: Sheet) -> None:
        self.asked, self.component, self.case, self.sheet = asked, component, case, sheet

    def above(self, base: Measure | Tie | NotStated, low: float, high: float, says: str) -> _Found:
        """A temperature that lies by so many kelvins above another."""
        if isinstance(base, NotStated):
            why = base.why if isinstance(base, Estimate) and base.why else f"{base.where.key} is not stated"
            raise self.sheet.not_assessed(why, base.where)
        return Tie(base, self._measure((low + high) / 2, low, high, "temperature difference", "K", says))

    def by_steam(
        self, result: Callable[[CylinderCycle], float], low: float, high: float, says: str
    ) -> Measure:
        """A temperature between so many kelvins about that of the steam in the cylinder."""
        found = [result(one) for one in self._cycles()]
        middle = (min(found) + max(found)) / 2
        return self._measure(
            middle + (low + high) / 2, min(found) + low, max(found) + high, "temperature", "°C", says
        )

    def block(self) -> Measure | Tie | NotStated:
        """The temperature of the block near the component."""
        block = self.sheet.nearest(self.component, "cylinder-block")
        if block is None:
            raise self.sheet.not_assessed(
                f"no cylinder block is joined to {self.component.id}", self.asked.where
            )
        return self.case.temperature_of(block)

    def _cycles(self) -> list[CylinderCycle]:
        sheet, found = self.sheet, []
        for gear in gears_beside(self.component, sheet):
            at_work = GearAtWork(gear, self.case, sheet, cold=True)
            notch = sheet.read("notch", self.case.notch)
            if notch not in at_work.running:
                raise sheet.not_assessed(f"{gear.id} does not run in notch {notch!r}", self.case.notch.where)
            try:
                found.append(cycles_as_drawn(cylinder_given(at_work, notch, self.case, sheet)))
            except OutOfRange as problem:
                raise sheet.not_covered(str(problem)) from problem
        return found

    def _measure(
        self, nominal: float, low: float, high: float, dimension: str, unit: str, says: str
    ) -> Measure:
        where: Location = self.asked.where
        note = f"an estimate, common practice: {says}"
        return Measure(nominal, low, high, dimension, "estimate", unit, "", "", "assumed", note, where)


def _block(asked: _Asked, _: Spec) -> _Found:
    return asked.by_steam(
        lambda both: both.mean_temperature, -15.0, 15.0, "mean of the steam in the cylinder ± 15 K"
    )


def _piston(asked: _Asked, _: Spec) -> _Found:
    return asked.by_steam(
        lambda both: both.mean_temperature, 20.0, 70.0, "mean of the steam in the cylinder + 20..70 K"
    )


def _liner(asked: _Asked, _: Spec) -> _Found:
    return asked.above(asked.block(), 0.0, 20.0, "block + 0..20 K")


def _cover(asked: _Asked, _: Spec) -> _Found:
    return asked.above(asked.block(), -30.0, -10.0, "block − 10..30 K")


def _studs(asked: _Asked, joint: Spec) -> _Found:
    assert isinstance(joint, BoltedJoint)  # as was asked by the table
    held = asked.sheet.follow(joint.holds)
    if not isinstance(held, CylinderCover):
        raise asked.sheet.not_assessed(f"no estimate is known for the studs of {held.id}", asked.asked.where)
    return asked.above(asked.case.temperature_of(held), -40.0, -20.0, "cover − 20..40 K")


def _valve(asked: _Asked, valve: Spec) -> _Found:
    assert isinstance(valve, PoppetValve)  # as was asked by the table
    if asked.sheet.read(f"what {valve.id} serves", valve.serves) == "inlet":
        return asked.above(asked.case.live_temperature, -50.0, -20.0, "live steam − 20..50 K")
    return asked.by_steam(exhaust_temperature, 10.0, 40.0, "exhaust steam + 10..40 K")


def _seat(asked: _Asked, seat: Spec) -> _Found:
    assert isinstance(seat, ValveSeat)  # as was asked by the table
    if chamber_beyond(seat, asked.sheet) == "exhaust steam":
        return asked.above(asked.block(), 0.0, 20.0, "block + 0..20 K")
    valves = asked.sheet.belonging_to(seat, PoppetValve)
    if not valves:
        raise asked.sheet.not_assessed(f"no valve sits on {seat.id}", seat.where)
    block = asked.block()
    T_v, T_b = (
        nominal_temperature(symbol, value, asked.sheet)
        for symbol, value in (("T_v", asked.case.temperature_of(valves[0])), ("T_b", block))
    )
    half = asked.sheet.work("ΔT", half_way, T_v=T_v, T_b=T_b)
    return asked.above(block, half - 10.0, half + 10.0, "half way from block to inlet valve ± 10 K")


def _spindle(asked: _Asked, spindle: Spec) -> _Found:
    assert isinstance(spindle, ValveSpindle)  # as was asked by the table
    valve = asked.sheet.follow(spindle.moves)
    return asked.above(asked.case.temperature_of(valve), -100.0, -60.0, "its valve − 60..100 K, at the guide")


#: How each kind of part is estimated.
_BY_KIND: tuple[tuple[type[Spec], Callable[[_Asked, Spec], _Found]], ...] = (
    (CylinderBlock, _block),
    (CylinderLiner, _liner),
    (CylinderCover, _cover),
    (Piston, _piston),
    (BoltedJoint, _studs),
    (PoppetValve, _valve),
    (ValveSeat, _seat),
    (ValveSpindle, _spindle),
)
