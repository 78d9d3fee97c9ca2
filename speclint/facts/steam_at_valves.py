"""The pressure in the cylinder beside a valve or a seat, by the cycle of its notch where it has a valve gear."""

from __future__ import annotations

import math
from collections.abc import Callable
from functools import partial
from typing import TYPE_CHECKING

from msgspec import Struct

from speclint.equations import FIRST_PRINCIPLES, Pascals
from speclint.facts.cylinder_cycles import CylinderGiven, cycles_to_safety_valves
from speclint.facts.seats import bore_of, ends_of_valve
from speclint.facts.steam_in_cylinders import (
    error_of_pressures,
    gauge_within_error,
    highest_compression,
    steam_in_bore,
)
from speclint.facts.valves import block_under
from speclint.handbook.steam_cycle import Cycle, CylinderCycle
from speclint.handbook.tables import Reading
from speclint.handbook.valve_events import End
from speclint.rules import RuleEnded, Sheet
from speclint.specs import CylinderBlock, PoppetValve, ValveSeat

if TYPE_CHECKING:
    from speclint.specs import CylinderEnd, LoadCase

_TURN = 2 * math.pi
#: A pressure [Pa], and the crank angle of the end where it stands [rad].
_Found = tuple[float, float]


def _peak(cycle: Cycle) -> _Found:
    return cycle.compression_peak, cycle.end.events.admission


def _released(cycle: Cycle) -> _Found:
    return cycle.at_release.pressure, cycle.end.events.release


def _shutting(cycle: Cycle) -> _Found:
    return cycle.at_compression.pressure, cycle.end.events.compression


def _with_inlet_shut(cycle: Cycle) -> _Found:
    events = cycle.end.events
    return cycle.least_between(events.cut_off, events.admission + _TURN)


def _with_exhaust_shut(cycle: Cycle) -> _Found:
    events = cycle.end.events
    return cycle.least_between(events.compression - _TURN, events.release)


_RESULTS: dict[str, tuple[str, Callable[[Cycle], _Found]]] = {
    "compression": ("greatest pressure before admission", _peak),
    "highest": ("highest pressure of compression", highest_compression),
    "release": ("pressure at release", _released),
    "shutting": ("pressure as the exhaust shuts", _shutting),
    "least, inlet shut": ("least pressure while the inlet is shut", _with_inlet_shut),
    "least, exhaust shut": ("least pressure while the exhaust is shut", _with_exhaust_shut),
    "least": ("least pressure", lambda cycle: cycle.least_pressure),
}


class SteamAtValve(Struct, frozen=True):
    """The cycle of the cylinder that a valve or a seat stands beside, and the end at which it is."""

    cylinder: CylinderGiven
    side: End
    at: str


def pressure_at_valve(steam: SteamAtValve, event: str) -> Reading:
    """The absolute pressure in the end of a valve [Pa], with the band of the corners that were worked.

    The chest at the pressure of the safety valves is one of them.
    """
    says, result = _RESULTS[event]
    band = cycles_to_safety_valves(steam.cylinder)
    nominal, low, high = band.of(partial(_pressure, steam.side, result))
    angle = math.degrees(_of_end(steam.side, result, band.nominal)[1]) % 360
    words = (
        f"{says}, absolute, at {angle:.0f}° of its end's crank, calculated: {steam.at}, {steam.side.value}"
    )
    return Reading(words, nominal, low, high, "Pa", FIRST_PRINCIPLES, worked=True)


def _of_end(side: End, result: Callable[[Cycle], _Found], both: CylinderCycle) -> _Found:
    return result(both.front if side is End.FRONT else both.back)


def _pressure(side: End, result: Callable[[Cycle], _Found], both: CylinderCycle) -> float:
    return _of_end(side, result, both)[0]


def steam_at_valve(valve: PoppetValve, case: LoadCase, sheet: Sheet) -> SteamAtValve | None:
    """The cycle of a valve's cylinder in the notch of a load case.

    None where its cylinder has no valve gear, or the case names no notch: then nothing is known of its events.

    :raises RuleEnded: where the gear does not state all that its cycle rests on.
    """
    ends = ends_of_valve(valve, sheet)
    return _at_end(block_under(valve, sheet), ends[0].value, case, sheet) if ends else None


def known_steam_beside(part: PoppetValve | ValveSeat, case: LoadCase, sheet: Sheet) -> SteamAtValve | None:
    """The cycle beside a valve or a seat; None too where its gear does not state all of it, or it is not covered.

    For rules that hold without it: those of the gear itself tell what is missing.
    """
    try:
        if isinstance(part, PoppetValve):
            found = steam_at_valve(part, case, sheet)
        else:
            end = bore_of(part, sheet).end
            stated = sheet.is_stated(f"end of {part.id}", end)
            name = sheet.read(f"end of {part.id}", end) if stated else ""
            found = _at_end(sheet.follow(part.pressed_into), name, case, sheet)
        if found is not None:
            sheet.look_up("p", pressure_at_valve, steam=found, event="compression")
    except RuleEnded:
        return None
    return found


def _at_end(block: CylinderBlock, name: str, case: LoadCase, sheet: Sheet) -> SteamAtValve | None:
    end = block.ends.get(name)
    if end is None or not sheet.is_stated("side of the end", end.side):
        return None
    steam = steam_in_bore(block, _bore_of(end, block, sheet), case, sheet)
    if steam is None:
        return None
    return SteamAtValve(steam.cylinder, End(sheet.read("side of the end", end.side)), steam.at)


def _bore_of(end: CylinderEnd, block: CylinderBlock, sheet: Sheet) -> str:
    """The bore of an end: as it states, or the only one of the block; "" where neither tells."""
    if sheet.is_stated("bore of the end", end.of_bore):
        return sheet.read("bore of the end", end.of_bore)
    return next(iter(block.bores)) if len(block.bores) == 1 else ""


def event_pressure(steam: SteamAtValve, event: str, symbol: str, case: LoadCase, sheet: Sheet) -> Pascals:
    """The gauge pressure in the end of a valve at an event, within the error of the cycle.

    That of "compression" is the greatest before admission, "highest" beyond it where it passes the chest's; those of
    "least" the least of the turn, or while a valve is shut; those of "release" and "shutting" stand as the exhaust
    opens and shuts.
    """
    p = sheet.look_up(symbol, pressure_at_valve, steam=steam, event=event)
    p_b, p_0 = sheet.take_absolute("p_b", case.exhaust_pressure), sheet.take("p_0", case.exhaust_pressure)
    k = sheet.look_up("k_p", error_of_pressures)
    return sheet.work(f"{symbol}_g", gauge_within_error, p_0=p_0, k=k, p=p, p_b=p_b)
