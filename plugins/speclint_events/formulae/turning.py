"""Turning moment of all cylinders at standstill, as a reading over the clearances cold, hot and worn."""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass

from speclint import FIRST_PRINCIPLES
from speclint.equations import Pascals, Radians, SquareMetres
from speclint.handbook.tables import Reading
from speclint.handbook.valve_events import (
    Crank,
    TurningMoment,
    ValveTrain,
    WorkingCylinder,
    standing_pressure,
    turning_moment,
)


@dataclass(frozen=True, slots=True)
class Standing:
    """An engine of cylinders alike at standstill: cranks, areas, and the pressures of live steam, exhaust and air.

    ``leads`` are the angles by which the cranks of all cylinders lead the first, in the direction in which it is to
    start.
    """

    crank: Crank
    front_area: SquareMetres
    back_area: SquareMetres
    leads: tuple[Radians, ...]
    live: Pascals
    exhaust: Pascals
    air: Pascals

    def moment(self, front: ValveTrain | None, back: ValveTrain | None) -> TurningMoment:
        """Turning moment over a revolution, live steam behind every piston whose inlet is open.

        An end without an inlet train stays shut.
        """

        def pressure(train: ValveTrain | None) -> Callable[[float], float]:
            if train is None:
                return lambda _: self.exhaust
            return standing_pressure(train, self.live, self.exhaust)

        cylinder = WorkingCylinder(
            self.crank, self.front_area, self.back_area, pressure(front), pressure(back), self.air
        )
        jumps = (*_acts(front, 0.0), *_acts(back, math.pi))
        return turning_moment(
            [(cylinder, lead) for lead in self.leads],
            jumps=[jump - lead for jump in jumps for lead in self.leads],
        )


def _acts(inlet: ValveTrain | None, from_front: Radians) -> tuple[Radians, ...]:
    """The front's crank angles at which an inlet opens and shuts."""
    if inlet is None or not inlet.opens:
        return ()
    return inlet.opening + from_front, inlet.closing + from_front


def least_moment(engine: Standing, fronts: tuple[ValveTrain, ...], backs: tuple[ValveTrain, ...]) -> Reading:
    """The least turning moment of a revolution [N·m]; the trains hot, then with the least and greatest clearance."""
    found = [engine.moment(front, back).least[1] for front, back in zip(fronts, backs, strict=True)]
    says = "least turning moment of a revolution at standstill: cold, hot, worn"
    return Reading(says, found[0], min(found), max(found), "N·m", FIRST_PRINCIPLES, worked=True)


def greatest_moment(
    engine: Standing, fronts: tuple[ValveTrain | None, ...], backs: tuple[ValveTrain | None, ...]
) -> Reading:
    """The greatest size of the turning moment of a revolution, either way [N·m]; trains as for the least."""
    sizes = []
    for front, back in zip(fronts, backs, strict=True):
        found = engine.moment(front, back)
        sizes.append(max(abs(found.least[1]), abs(found.greatest[1])))
    says = "greatest size of the turning moment at standstill: cold, hot, worn"
    return Reading(says, sizes[0], min(sizes), max(sizes), "N·m", FIRST_PRINCIPLES, worked=True)
