"""The steam in a cylinder over a revolution, in the notch and at the speed of a load case, within a band.

The cycle is worked as drawn with the clearances hot, and again with the chest's pressure low and high, with the least
clearance volume, and with the tappets' clearances cold and worn. The band of a result is the least and the greatest of
these. What went in decides: the same cylinder is never worked twice.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from functools import lru_cache
from typing import TYPE_CHECKING

from msgspec import Struct

from speclint.equations import (
    CubicMetres,
    Hertz,
    Kelvins,
    Metres,
    Pascals,
    Radians,
    Ratio,
    SquareMetres,
    WattsPerSquareMetreKelvin,
)
from speclint.facts.cylinder_volume import bore_as_drawn, clearance_volume, rod_as_drawn
from speclint.facts.drives import cold_clearance
from speclint.facts.gear_at_work import GearAtWork
from speclint.facts.port_volumes import all_ports_drawn, volume_drawn, volume_of_passages
from speclint.facts.speeds import speed_of_crank
from speclint.facts.valve_gear import end_on
from speclint.facts.valve_passages import passage_of
from speclint.facts.valve_timing import CamAtWork
from speclint.handbook.cams import CamMotion, revolutions
from speclint.handbook.steam_cycle import (
    CylinderCycle,
    CylinderEnd,
    Running,
    Supply,
    Valve,
    Walls,
    balanced_cycle,
    cycle_of,
)
from speclint.handbook.valve_events import Crank, End, ValvePassage, ValveTrain
from speclint.quantities import Measure
from speclint.rules import Sheet
from speclint.specs import NotStated

if TYPE_CHECKING:
    from speclint.specs import LoadCase


@dataclass(frozen=True, slots=True)
class ValveGiven:
    """A valve as the cycle needs it: cam in the direction of running, foot, travel ratio, clearances, passage.

    The clearances hold what the shaft of its rocker gives way under the springs.
    """

    cam: CamMotion
    foot: Radians
    ratio: Ratio
    cold: Metres
    hot: Metres
    worn: Metres
    passage: ValvePassage

    def at(self, state: str) -> Valve:
        """The valve with its clearance cold, hot or worn."""
        clearance: float = getattr(self, state)
        return Valve(ValveTrain(self.cam, self.foot, clearance, self.ratio), self.passage.effective_area)


@dataclass(frozen=True, slots=True)
class EndGiven:
    """An end as the cycle needs it; ``clearance`` its volume as drawn and at its least."""

    side: End
    crank: Crank
    bore: Metres
    rod: Metres
    clearance: tuple[CubicMetres, CubicMetres]
    inlet: ValveGiven
    exhaust: ValveGiven
    surface: SquareMetres | None

    def at(self, state: str, *, least: bool = False) -> CylinderEnd:
        """The end with its clearances cold, hot or worn, its volume as drawn or at its least."""
        volume = self.clearance[1 if least else 0]
        valves = self.inlet.at(state), self.exhaust.at(state)
        return CylinderEnd(self.side, self.crank, self.bore, self.rod, volume, *valves, self.surface)


class CylinderGiven(Struct, frozen=True):
    """Everything on which the cycle of a cylinder rests. ``chest``: pressure as stated, low and high, absolute.

    ``coefficient`` of heat to the walls; 0 without. ``lifting`` is the pressure of the chest as the safety valves lift,
    absolute, and no less than that stated of it.
    """

    front: EndGiven
    back: EndGiven
    chest: tuple[Pascals, Pascals, Pascals]
    temperature: Kelvins
    belt: Pascals
    speed: Hertz
    coefficient: WattsPerSquareMetreKelvin
    lifting: Pascals = 0.0


@dataclass(frozen=True, slots=True)
class CylinderBand:
    """The cycle of a cylinder as drawn, and at each of the corners that are named."""

    nominal: CylinderCycle
    corners: tuple[CylinderCycle, ...]

    def of(self, result: Callable[[CylinderCycle], float]) -> tuple[float, float, float]:
        """A result as drawn, and its least and its greatest."""
        nominal = result(self.nominal)
        found = (nominal, *(result(one) for one in self.corners))
        return nominal, min(found), max(found)


@lru_cache(maxsize=32)
def worked_cycles(given: CylinderGiven) -> CylinderBand:
    """The band of a cylinder's cycles; OutOfRange where one of them is not covered."""
    nominal, walls = _nominal(given)
    states = [(given.chest[1], "hot", False), (given.chest[2], "hot", False), (given.chest[0], "hot", True)]
    states += [(given.chest[0], state, False) for state in ("cold", "worn")]
    corners = [
        _both(given, chest, state, least, walls)
        for chest, state, least in states
        if (chest, state) != (given.chest[0], "hot") or least
    ]
    return CylinderBand(nominal, tuple(corners))


@lru_cache(maxsize=32)
def cycles_to_safety_valves(given: CylinderGiven) -> CylinderBand:
    """The band with one corner more, for whatever must bear it: the chest at the pressure of the safety valves."""
    band = worked_cycles(given)
    if given.lifting <= given.chest[2]:
        return band
    lifting = _both(given, given.lifting, "hot", False, _nominal(given)[1])
    return CylinderBand(band.nominal, (*band.corners, lifting))


@lru_cache(maxsize=64)
def cycles_as_drawn(given: CylinderGiven) -> CylinderCycle:
    """The cycle of a cylinder as drawn alone; OutOfRange where it is not covered."""
    return _nominal(given)[0]


@lru_cache(maxsize=64)
def _nominal(given: CylinderGiven) -> tuple[CylinderCycle, tuple[Walls | None, Walls | None]]:
    if not given.coefficient:
        return _both(given, given.chest[0], "hot", False, (None, None)), (None, None)
    running = _running(given, given.chest[0], None)
    ends = [balanced_cycle(end.at("hot"), running, given.coefficient) for end in (given.front, given.back)]
    return CylinderCycle(*ends), (ends[0].running.walls, ends[1].running.walls)


def _both(
    given: CylinderGiven, chest: Pascals, state: str, least: bool, walls: tuple[Walls | None, Walls | None]
) -> CylinderCycle:
    front, back = (
        cycle_of(end.at(state, least=least), _running(given, chest, wall))
        for end, wall in zip((given.front, given.back), walls, strict=True)
    )
    return CylinderCycle(front, back)


def _running(given: CylinderGiven, chest: Pascals, walls: Walls | None) -> Running:
    return Running(Supply.superheated(chest, given.temperature, given.belt), given.speed, walls)


def cylinder_given(gear: GearAtWork, notch: str, case: LoadCase, sheet: Sheet) -> CylinderGiven:
    """What the cycle of a notch rests on in a load case, sizes as drawn.

    :raises RuleEnded: where something is not stated, or the gear does not run in that notch.
    """
    key = "cylinder given", gear.gear.id, case.where, notch, gear.cold
    return sheet.once(key, lambda: _given(gear, notch, case, sheet))


def _given(gear: GearAtWork, notch: str, case: LoadCase, sheet: Sheet) -> CylinderGiven:
    ends = [_end_given(gear, notch, side, case, sheet) for side in End]
    chest = _absolute(case.live_pressure, sheet)
    belt, _, _ = _absolute(case.exhaust_pressure, sheet, "p_b")
    walls = sheet.is_stated("coefficient of heat to the walls", case.wall_coefficient)
    return CylinderGiven(
        front=ends[0],
        back=ends[1],
        chest=chest,
        temperature=sheet.take_nominal("T_1", case.live_temperature),
        belt=belt,
        speed=sheet.work("n", revolutions, ω=speed_of_crank(gear.place[0], case, sheet, sheet.take_nominal)),
        coefficient=sheet.take_nominal("α", case.wall_coefficient) if walls else 0.0,
        lifting=max(chest[2], _at_safety_valves(case, sheet)),
    )


def _at_safety_valves(case: LoadCase, sheet: Sheet) -> Pascals:
    """The greatest pressure of the safety valves, absolute; nothing where the case states none."""
    if not sheet.is_stated("safety valve pressure", case.safety_valve_pressure):
        return 0.0
    return _absolute(case.safety_valve_pressure, sheet, "p_v")[2]


def _absolute(value: Measure | NotStated, sheet: Sheet, symbol: str = "p_1") -> tuple[float, float, float]:
    """A pressure as stated, low and high, absolute."""
    low, high = sheet.take_limits(symbol, value)
    nominal = sheet.take_nominal(symbol, value)
    shift = (
        float(sheet.setting("site pressure"))
        if isinstance(value, Measure) and value.datum == "gauge"
        else 0.0
    )
    return nominal + shift, low + shift, high + shift


def _end_given(gear: GearAtWork, notch: str, side: End, case: LoadCase, sheet: Sheet) -> EndGiven:
    at_work, (block, bore) = gear.end(notch, side), gear.place
    mark = side.value[0]
    name, end = end_on(block, bore, side, sheet)
    d = sheet.take_nominal("d", bore_as_drawn(block, bore, sheet))
    rod = sheet.take_nominal("d_r", rod_as_drawn(block, bore, sheet)) if side is End.BACK else 0.0
    V_p = volume_of_passages(block, end, f"V_p{mark}", sheet, sheet.take_nominal)
    c = cold_clearance(block, end, sheet, sheet.take_nominal, bore)
    drawn = sheet.work(f"V_c{mark}", clearance_volume, V_p=V_p, d=d, d_r=rod, c=c)
    V_p = volume_of_passages(
        block, end, f"V_p{mark}", sheet, lambda name, one: sheet.take_limits(name, one)[0]
    )
    if sheet.is_stated("clearance", end.clearance):
        low, _ = sheet.take_limits(f"c_{mark}", end.clearance)
        # what the faces leave has the limits of the stated one
        c -= sheet.take_nominal("c", end.clearance) - low
    if all_ports_drawn(block, name, sheet) and (
        ports := volume_drawn(block, name, sheet, lambda name, one: sheet.take_limits(name, one)[0])
    ):
        V_p = min(V_p, ports.value)  # pockets that a stated volume may hold are drawn nowhere: not counted on
    least = sheet.work(f"V_l{mark}", clearance_volume, V_p=V_p, d=d, d_r=rod, c=c)
    warm = sheet.is_stated("coefficient of heat to the walls", case.wall_coefficient)
    return EndGiven(
        side=side,
        crank=gear.crank,
        bore=d,
        rod=rod,
        clearance=(drawn, least),
        inlet=_valve_given(at_work.inlet, sheet),
        exhaust=_valve_given(at_work.exhaust, sheet),
        surface=sheet.take_nominal(f"A_s{mark}", end.clearance_surface) if warm else None,
    )


def _valve_given(cam: CamAtWork, sheet: Sheet) -> ValveGiven:
    known, shaft = cam.clearances, cam.shaft.shuts
    passage = passage_of(cam.train.valve, cam.mark, sheet)
    cold, hot, worn = (one + shaft for one in (known.cold, known.hot, known.worn))
    return ValveGiven(cam.cam, cam.foot, cam.ratio, cold, hot, worn, passage)
