"""The steam in a cylinder by the cycle of its valve gear, and how far its pressures may be off."""

from __future__ import annotations

from typing import TYPE_CHECKING

from msgspec import Struct

from speclint.equations import COMMON_PRACTICE, FIRST_PRINCIPLES, Pascals, Radians, Ratio, formula
from speclint.facts.cylinder_cycles import CylinderGiven, cylinder_given
from speclint.facts.gear_at_work import GearAtWork
from speclint.facts.valve_gear import gears_of
from speclint.handbook.steam_cycle import Cycle
from speclint.handbook.tables import Reading
from speclint.rules import Sheet
from speclint.specs import CylinderBlock

if TYPE_CHECKING:
    from speclint.specs import LoadCase

#: Load cases in which the cylinders work with steam; a drifting engine draws in and presses air.
_WITH_STEAM = ("starting", "running")


class SteamInCylinder(Struct, frozen=True):
    """What the cycle of a cylinder rests on; ``at`` says of which gear, notch and speed."""

    cylinder: CylinderGiven
    at: str


def steam_in_bore(block: CylinderBlock, bore: str, case: LoadCase, sheet: Sheet) -> SteamInCylinder | None:
    """The steam in a bore of a block in the notch of a load case.

    None where the bore has no valve gear, or the case names no notch in which the engine runs: then nothing is known of
    its events.

    :raises RuleEnded: where the gear does not state all that its cycle rests on.
    """
    gear = gears_of(block, sheet).get(bore)
    if gear is None or not sheet.is_stated("notch", case.notch):
        return None
    notch = sheet.read("notch", case.notch)
    at_work = GearAtWork(gear, case, sheet)
    if notch not in at_work.running:
        return None
    given = cylinder_given(at_work, notch, case, sheet)
    return SteamInCylinder(given, f"{gear.id}, notch {notch}, {given.speed * 60:.6g} rev/min")


def works_with_steam(case: LoadCase) -> bool:
    """Whether the cylinders work with steam in a load case."""
    return case.name in _WITH_STEAM


def highest_compression(cycle: Cycle) -> tuple[Pascals, Radians]:
    """The highest pressure to which the piston presses steam, and where: beyond admission where it passes the chest's.

    An inlet that has hardly opened lets little of it back.
    """
    p, angle = cycle.greatest_pressure
    if p > cycle.running.supply.chest:
        return p, angle
    return cycle.compression_peak, cycle.end.events.admission


def error_of_pressures() -> Reading:
    """How far the pressures of a cycle, above that of the exhaust, may be off: a tenth, as its mean pressure.

    >>> error_of_pressures().high
    1.1
    """
    says = "true pressure above the exhaust's, over that by the cycle, until measured engines say better"
    return Reading(says, 1.0, 0.9, 1.1, "", COMMON_PRACTICE)


@formula("p_g = p_0 + k (p − p_b)", cites=[FIRST_PRINCIPLES, COMMON_PRACTICE])
def gauge_within_error(p_0: Pascals, k: Ratio, p: Pascals, p_b: Pascals) -> Pascals:
    """Gauge pressure in a cylinder from that which its cycle gives, within the error of the cycle.

    p_g = p_0 + k (p − p_b)

    ``p_0`` gauge pressure of the exhaust; ``p_b`` absolute pressure of the exhaust; ``p`` pressure by the cycle,
    absolute [Pa]; ``k`` true pressure above the exhaust's over that by the cycle. Returns [Pa].

    Hand working: 0.35 + 1.1 × (9.5 − 1.35) = 9.315 bar.

    >>> round(gauge_within_error(p_0=0.35e5, k=1.1, p=9.5e5, p_b=1.35e5) / 1e5, 6)
    9.315
    """
    return p_0 + k * (p - p_b)
