"""The pressure in the cylinder against which a valve works, by the cycle of its notch where it has a valve gear."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from functools import partial

from speclint.equations import FIRST_PRINCIPLES, Pascals
from speclint.facts.cylinder_cycles import CylinderGiven, cylinder_given, worked_cycles
from speclint.facts.gear_at_work import GearAtWork
from speclint.facts.seats import ends_of_valve
from speclint.facts.valve_gear import gears_of
from speclint.facts.valves import block_under
from speclint.handbook.steam_cycle import Cycle, CylinderCycle
from speclint.handbook.tables import Reading
from speclint.handbook.valve_events import End
from speclint.rules import Sheet
from speclint.specs import CylinderBlock, CylinderEnd, LoadCase, PoppetValve

_RESULTS: dict[str, tuple[str, Callable[[Cycle], float]]] = {
    "compression": ("greatest pressure before admission", lambda cycle: cycle.compression_peak),
    "release": ("pressure at release", lambda cycle: cycle.at_release.pressure),
}


@dataclass(frozen=True, slots=True)
class SteamAtValve:
    """The cycle of the cylinder that a valve serves, and the end at which it sits."""

    cylinder: CylinderGiven
    side: End
    at: str


def pressure_at_valve(steam: SteamAtValve, event: str) -> Reading:
    """The absolute pressure in the end of a valve, with the band of the corners that were worked [Pa]."""
    says, result = _RESULTS[event]
    nominal, low, high = worked_cycles(steam.cylinder).of(partial(_of_end, steam.side, result))
    words = f"{says}, absolute, calculated: {steam.at}, {steam.side.value}"
    return Reading(words, nominal, low, high, "Pa", FIRST_PRINCIPLES, worked=True)


def _of_end(side: End, result: Callable[[Cycle], float], both: CylinderCycle) -> float:
    return result(both.front if side is End.FRONT else both.back)


def steam_at_valve(valve: PoppetValve, case: LoadCase, sheet: Sheet) -> SteamAtValve | None:
    """The cycle of a valve's cylinder in the notch of a load case.

    None where its cylinder has no valve gear, or the case names no notch: then nothing is known of its events.
    """
    ends = ends_of_valve(valve, sheet)
    if not ends:
        return None
    block = block_under(valve, sheet)
    end, gears = block.ends.get(ends[0].value), gears_of(block, sheet)
    if end is None or not gears or not sheet.is_stated("side of the end", end.side):
        return None
    gear = gears.get(_bore_of(end, block, sheet))
    if gear is None or not sheet.is_stated("notch", case.notch):
        return None
    notch = sheet.read("notch", case.notch)
    at_work = GearAtWork(gear, case, sheet)
    if notch not in at_work.running:
        return None
    given = cylinder_given(at_work, notch, case, sheet)
    side = End(sheet.read("side of the end", end.side))
    return SteamAtValve(given, side, f"{gear.id}, notch {notch}, {given.speed * 60:.6g} rev/min")


def _bore_of(end: CylinderEnd, block: CylinderBlock, sheet: Sheet) -> str:
    """The bore of an end: as it states, or the only one of the block; "" where neither tells."""
    if sheet.is_stated("bore of the end", end.of_bore):
        return sheet.read("bore of the end", end.of_bore)
    return next(iter(block.bores)) if len(block.bores) == 1 else ""


def event_pressure(steam: SteamAtValve, event: str, symbol: str, sheet: Sheet) -> Pascals:
    """The absolute pressure in the end of a valve at an event: compression or release."""
    return sheet.look_up(symbol, pressure_at_valve, steam=steam, event=event)
