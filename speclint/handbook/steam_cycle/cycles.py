"""The cycle of one end, worked by quasi-steady simulation, and what is read from it.

One body of steam in each end: mass, internal energy, and the volume that the piston gives it. Steam flows through
valve and port as through one nozzle, either way, choked or not, from rest on the upstream side; the chest and the
exhaust belt are at constant pressure. Steam pressed back into the chest leaves with the enthalpy of the end; steam
drawn back from the belt comes with the mean enthalpy of what the cycle exhausts. The steam is in equilibrium, wet where
it must be.
Walls give and take heat at one temperature, or not at all. Left out: waves and inertia of steam in chest and belt (they
count from about 200 revolutions a minute), leakage, drop through regulator and pipes, lag of condensation, films of
water, unequal temperature of the walls, bounce of valves.
"""

from __future__ import annotations

import math
from bisect import bisect_right
from collections.abc import Callable
from dataclasses import dataclass, field
from functools import cached_property
from itertools import pairwise

from speclint.handbook.steam import SteamState, state_at_enthalpy
from speclint.handbook.steam_cycle.charges import Charge, Flow
from speclint.handbook.steam_cycle.ends import CylinderEnd, Running
from speclint.handbook.steam_cycle.grids import TURN
from speclint.handbook.steam_cycle.power import (
    SteamForWork,
    indicated_power,
    mean_pressure_of_work,
    steam_flow,
)
from speclint.handbook.steam_cycle.solving import solved
from speclint.handbook.valve_events import diagram_factor, positions_of, theoretical_mean_pressure


@dataclass(frozen=True)
class Cycle(SteamForWork):
    """The periodic cycle of an end. Angles are the end's own [rad]; SI units, pressures absolute.

    ``angles`` rise over a revolution from the shutting of the exhaust; ``charges`` is the steam at each, ``flows`` what
    moved between them; ``exhaust_enthalpy`` mean enthalpy of the steam that leaves [J/kg].
    """

    end: CylinderEnd
    running: Running
    angles: tuple[float, ...] = field(repr=False)
    charges: tuple[Charge, ...] = field(repr=False)
    flows: tuple[Flow, ...] = field(repr=False)
    exhaust_enthalpy: float
    rounds: int

    # -- work and steam ------------------------------------------------------------------------------------------------

    @cached_property
    def work(self) -> float:
        """Work of a revolution [J]."""
        return sum(flow.work for flow in self.flows)

    @property
    def mean_pressure(self) -> float:
        """Mean effective pressure [Pa]."""
        return mean_pressure_of_work(self.work, self.end.area, self.end.crank.stroke)

    @property
    def power(self) -> float:
        """Indicated power [W]."""
        return indicated_power(self.mean_pressure, self.end.area, self.end.crank.stroke, self.running.speed)

    @cached_property
    def steam(self) -> float:
        """Steam of a revolution [kg], less what is pressed back into the chest."""
        return sum(flow.came for flow in self.flows)

    @property
    def steam_flow(self) -> float:
        """Steam taken [kg/s]."""
        return steam_flow(self.steam, self.running.speed)

    @property
    def retained(self) -> float:
        """Steam kept in the end when the exhaust shuts [kg]."""
        return self.charges[-1].m

    @property
    def heat(self) -> float:
        """Heat of a revolution from the walls to the steam [J]; 0 without walls."""
        return sum(flow.heat for flow in self.flows)

    # -- pressures -----------------------------------------------------------------------------------------------------

    def pressure(self, angle: float) -> float:
        """Pressure [Pa] at any crank angle of the end [rad]."""
        n, share = self._place(angle)
        return self.charges[n].p + share * (self.charges[n + 1].p - self.charges[n].p)

    def temperature(self, angle: float) -> float:
        """Temperature of the steam [K] at any crank angle of the end [rad]."""
        n, share = self._place(angle)
        return self.charges[n].T + share * (self.charges[n + 1].T - self.charges[n].T)

    def state(self, angle: float) -> SteamState:
        """State of the steam at any crank angle of the end [rad]."""
        n, share = self._place(angle)
        h = self.charges[n].h + share * (self.charges[n + 1].h - self.charges[n].h)
        return state_at_enthalpy(self.pressure(angle), h)

    @property
    def at_admission(self) -> SteamState:
        """The steam in the end when the inlet opens."""
        return self.state(self.end.events.admission)

    @property
    def at_cut_off(self) -> SteamState:
        """The steam in the end when the inlet shuts."""
        return self.state(self.end.events.cut_off)

    @property
    def at_release(self) -> SteamState:
        """The steam in the end when the exhaust opens."""
        return self.state(self.end.events.release)

    @property
    def at_compression(self) -> SteamState:
        """The steam in the end when the exhaust shuts."""
        return self.state(self.end.events.compression)

    @property
    def greatest_pressure(self) -> tuple[float, float]:
        """Greatest pressure [Pa] and the crank angle where it stands [rad], within ±π."""
        p, angle = max((charge.p, angle) for charge, angle in zip(self.charges, self.angles, strict=True))
        return p, (angle + math.pi) % TURN - math.pi

    @property
    def least_pressure(self) -> tuple[float, float]:
        """Least pressure [Pa] and the crank angle where it stands [rad], 0 to 2π."""
        p, angle = min((charge.p, angle) for charge, angle in zip(self.charges, self.angles, strict=True))
        return p, angle % TURN

    @property
    def compression_peak(self) -> float:
        """Greatest pressure from the shutting of the exhaust to the opening of the inlet [Pa]."""
        until = self.angles[0] + (self.end.events.admission - self.angles[0]) % TURN + _AT_EVENT
        return max(
            charge.p for charge, angle in zip(self.charges, self.angles, strict=True) if angle <= until
        )

    def least_between(self, first: float, last: float) -> tuple[float, float]:
        """Least pressure [Pa] from one crank angle of the end [rad] to a later one, and where it stands.

        ``last`` is less than a revolution after ``first``.
        """
        inside = [
            (charge.p, first + (angle - first) % TURN)
            for charge, angle in zip(self.charges, self.angles, strict=True)
        ]
        ends = [(self.pressure(angle), angle) for angle in (first, last)]
        return min(ends + [(p, angle) for p, angle in inside if angle < last])

    @property
    def return_pressure(self) -> float:
        """Mean pressure over the return stroke, by the piston's travel, from dead centre to compression [Pa]."""
        first, last = math.pi, self.end.events.compression
        inside = sorted(
            angle for angle in ((a - first) % TURN + first for a in self.angles) if first < angle < last
        )
        places = [first, *inside, last]
        volumes = [self.end.volume(angle) for angle in places]
        pressures = [self.pressure(angle) for angle in places]
        swept = sum(
            (p + q) / 2 * (V - U)
            for p, q, V, U in zip(pressures, pressures[1:], volumes, volumes[1:], strict=False)
        )
        return swept / (volumes[0] - volumes[-1])

    @property
    def theoretical_pressure(self) -> float:
        """Mean effective pressure of the hyperbolic diagram with the same events, chest and belt [Pa]."""
        supply = self.running.supply
        at = positions_of(self.end.events, self.end.crank, self.end.end)
        return theoretical_mean_pressure(
            supply.chest, supply.belt, at.cut_off, self.end.clearance_share, at.release, at.compression
        )

    @property
    def diagram_factor(self) -> float:
        """Mean effective pressure over that of the hyperbolic diagram; OutOfRange where that does no work."""
        return diagram_factor(self.mean_pressure, self.theoretical_pressure)

    # -- temperatures --------------------------------------------------------------------------------------------------

    @property
    def exhaust(self) -> SteamState:
        """The steam that leaves, mixed, at the pressure of the belt."""
        return state_at_enthalpy(self.running.supply.belt, self.exhaust_enthalpy)

    @cached_property
    def mean_temperature(self) -> float:
        """Mean temperature of the steam over a revolution [K]."""
        return self._mean_temperature(lambda _: 1.0)

    @cached_property
    def mean_temperature_at_liner(self) -> float:
        """Mean temperature of the steam [K], each moment weighted by the bore that it touches."""
        return self._mean_temperature(lambda angle: self.end.crank.travel(self.end.end, angle))

    # -- closures ------------------------------------------------------------------------------------------------------

    @property
    def mass_error(self) -> float:
        """Steam that came less steam that left, over steam that came."""
        came = sum(flow.came for flow in self.flows)
        return (came - sum(flow.left for flow in self.flows)) / came

    @property
    def energy_error(self) -> float:
        """Energy brought and heat less energy taken and work, over energy brought."""
        brought = sum(flow.brought for flow in self.flows)
        return (brought + self.heat - sum(flow.taken for flow in self.flows) - self.work) / brought

    def _mean_temperature(self, weight: Callable[[float], float]) -> float:
        summed = weighed = 0.0
        for n, (one, other) in enumerate(pairwise(self.angles)):
            part = weight((one + other) / 2) * (other - one)
            summed += part * (self.charges[n].T + self.charges[n + 1].T) / 2
            weighed += part
        return summed / weighed

    def _place(self, angle: float) -> tuple[int, float]:
        """The step in which an angle lies, and how far into it."""
        found = self.angles[0] + (angle - self.angles[0]) % TURN
        n = min(bisect_right(self.angles, found), len(self.angles) - 1) - 1
        return n, (found - self.angles[n]) / (self.angles[n + 1] - self.angles[n])


#: An angle this much behind an event still counts as at it (rad).
_AT_EVENT = 1e-9


def cycle_of(end: CylinderEnd, running: Running) -> Cycle:
    """Work the cycle of an end until it repeats itself within 0.02 %.

    OutOfRange where a valve never opens, where the steam leaves IAPWS-IF97 and where the cycle does not settle: such a
    cycle is not covered and has no number.
    """
    found = solved(end, running)
    revolution = found.revolution
    return Cycle(
        end,
        running,
        found.grid.angles,
        revolution.charges,
        revolution.flows,
        revolution.exhaust_enthalpy,
        found.rounds,
    )
