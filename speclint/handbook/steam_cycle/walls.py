"""The temperature of walls that give as much heat to the steam as they take from it.

A lagged block settles there, but for what it loses outwards.
"""

from __future__ import annotations

import math

from speclint.equations import WattsPerSquareMetreKelvin, require
from speclint.errors import OutOfRange, replace
from speclint.handbook.steam_cycle.cycles import Cycle, cycle_of
from speclint.handbook.steam_cycle.ends import CylinderEnd, Running, Walls

#: Nearness of the temperature found (K), and cycles that find it.
_NEAR, _RUNS = 0.5, 8
#: Where the metal touched is about the mean of a revolution.
_MIDDLE = math.pi / 2


def balanced_cycle(end: CylinderEnd, running: Running, coefficient: WattsPerSquareMetreKelvin) -> Cycle:
    """The cycle with walls at the temperature where a revolution brings them no heat and takes none.

    ``coefficient`` between steam and metal [W/(m²·K)], above 0; whatever walls ``running`` has are left out. The
    temperature found, within 0.5 K, is ``running.walls.temperature`` of the result. OutOfRange as ``cycle_of``, where
    the end does not state the metal its clearance touches, and where no such temperature is found.
    """
    require(coefficient > 0, "the coefficient of heat to the walls must be above 0")

    def worked(temperature: float) -> Cycle:
        return cycle_of(end, replace(running, walls=Walls(coefficient, temperature)))

    temperature = cycle_of(end, replace(running, walls=None)).mean_temperature
    found = worked(temperature)
    slope = coefficient * end.surface(_MIDDLE) / running.speed
    for _ in range(_RUNS):
        step = -found.heat / slope
        if abs(step) < _NEAR:
            return found
        after = worked(temperature + step)
        slope = (after.heat - found.heat) / step if after.heat != found.heat else slope
        found, temperature = after, temperature + step
    raise OutOfRange("no temperature of the walls was found at which they give as much heat as they take")
