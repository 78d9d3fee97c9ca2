"""The force of the steam on a piston over a revolution, by the cycles of both ends of its cylinder."""

from __future__ import annotations

import math
from dataclasses import dataclass
from functools import lru_cache
from typing import TYPE_CHECKING

from speclint.equations import FIRST_PRINCIPLES, Metres, Newtons, Pascals, Radians, Ratio
from speclint.errors import OutOfRange, replace
from speclint.facts.cylinder_cycles import CylinderGiven, cycles_to_safety_valves
from speclint.facts.cylinder_volume import greatest_bore_as_drawn
from speclint.facts.steam_in_cylinders import steam_in_bore
from speclint.handbook.members import round_area, tube_area
from speclint.handbook.steam_cycle import working_cylinder
from speclint.handbook.tables import Reading, on_lines
from speclint.handbook.valve_events import piston_force
from speclint.rules import RuleEnded, Sheet
from speclint.specs import CylinderBlock

if TYPE_CHECKING:
    from speclint.specs import LoadCase

#: Steps of a revolution at which the force is kept, each of one degree.
_STEPS = 360


@dataclass(frozen=True, slots=True)
class PistonForces:
    """Force towards the axle [N] at crank angles [rad] from the front dead centre, in the direction of running.

    ``bands`` are the least and the greatest there of all states that were worked, the chest at the pressure of the
    safety valves among them; no pressure of these states gives less than ``lowest`` or more than ``highest``. ``at``
    says of which gear, notch and speed.
    """

    angles: tuple[Radians, ...]
    bands: tuple[tuple[Newtons, Newtons], ...]
    lowest: Newtons
    highest: Newtons
    at: str

    def greatest(self, sense: Ratio) -> Newtons:
        """The most in a sense: 1 towards the axle, −1 away from it."""
        return self.highest if sense > 0 else -self.lowest

    def in_sense(self, sense: Ratio, θ: Radians) -> Newtons:
        """The greatest force in a sense at a crank angle of 0 to 2π; negative where it acts the other way."""
        least, greatest = on_lines(self.angles, self.bands, θ)
        return greatest if sense > 0 else -least


def steam_on_piston(forces: PistonForces, sense: Ratio, θ: Radians) -> Reading:
    """The greatest force of the steam in a sense at a crank angle [N]: 1 towards the axle, −1 away from it."""
    way = "towards the axle" if sense > 0 else "away from the axle"
    F = forces.in_sense(sense, θ)
    says = f"force of the steam on the piston {way}, calculated: {forces.at}, both ends"
    return Reading(says, F, F, F, "N", FIRST_PRINCIPLES, worked=True)


def most_on_piston(forces: PistonForces, sense: Ratio) -> Reading:
    """The force of the greatest pressure on one side of the piston and the least on the other, in a sense [N]."""
    F = forces.greatest(sense)
    says = f"force of the greatest pressure on one side and the least on the other, calculated: {forces.at}"
    return Reading(says, F, F, F, "N", FIRST_PRINCIPLES, worked=True)


@lru_cache(maxsize=32)
def forces_of_cycles(given: CylinderGiven, bore: Metres, air: Pascals, at: str) -> PistonForces:
    """The forces of all states that are worked of a cylinder, each pressure on all of a bore.

    ``bore`` is the greatest of the cylinder's life [m]; ``air`` is the pressure on the piston rod [Pa absolute].

    :raises OutOfRange: where one of its cycles is not covered.
    """
    band = cycles_to_safety_valves(given)
    cycles = (band.nominal, *band.corners)
    angles = tuple(2 * math.pi * step / _STEPS for step in range(_STEPS + 1))
    A_f, A_b = round_area(bore), tube_area(bore, given.back.rod)
    cylinders = [replace(working_cylinder(both, air), front_area=A_f, back_area=A_b) for both in cycles]
    courses = [[one.force(angle) for angle in angles] for one in cylinders]
    areas = {"p_a": air, "A_f": A_f, "A_b": A_b}
    fronts, backs = [one.front for one in cycles], [one.back for one in cycles]
    return PistonForces(
        angles,
        tuple((min(at_once), max(at_once)) for at_once in zip(*courses, strict=True)),
        piston_force(
            p_f=min(one.least_pressure[0] for one in fronts),
            p_b=max(one.greatest_pressure[0] for one in backs),
            **areas,
        ),
        piston_force(
            p_f=max(one.greatest_pressure[0] for one in fronts),
            p_b=min(one.least_pressure[0] for one in backs),
            **areas,
        ),
        at,
    )


def piston_forces(block: CylinderBlock, bore: str, case: LoadCase, sheet: Sheet) -> PistonForces | None:
    """The force of the steam on the piston of a bore in the notch of a load case, on the last bore of its liner.

    The pressures are those of the cylinder as drawn, new.
    None where nothing is known of its events, where its gear does not state all of it, and where its cycle is not
    covered: the rules of the gear tell what is missing.
    """
    try:
        steam = steam_in_bore(block, bore, case, sheet)
        if steam is None:
            return None
        bore_at_last = greatest_bore_as_drawn(block, bore, sheet)
        return forces_of_cycles(steam.cylinder, bore_at_last, float(sheet.setting("site pressure")), steam.at)
    except (RuleEnded, OutOfRange):
        return None
