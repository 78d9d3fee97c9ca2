"""A cycle worked until it repeats itself."""

from __future__ import annotations

import math
from dataclasses import dataclass

from msgspec import Struct

from speclint.equations import require
from speclint.handbook.steam import (
    pressure_of_energy,
    state_at_enthalpy,
    state_at_entropy,
    temperature_and_exponent,
)
from speclint.handbook.steam_cycle.charges import Charge, Flow, charge_of, shut, through
from speclint.handbook.steam_cycle.ends import CylinderEnd, Running, Walls
from speclint.handbook.steam_cycle.grids import TURN, Grid, grid_of
from speclint.handbook.steam_cycle.throats import Reservoir

#: A cycle repeats itself when pressure and mass at the shutting of the exhaust change by less than this share.
PERIODIC = 2e-4
#: Rounds on the coarse grid and on the fine one, at most.
_ROUNDS = 24
#: How much coarser the first rounds are, and how near they come.
_COARSE, _NEAR = 2.5, 2e-3
#: Gas constant of steam [J/(kg·K)], IAPWS-IF97: R/(κ − 1) stands for its heat at constant volume.
_GAS_CONSTANT = 461.526
#: Charges in a row from which the next is guessed, and the greatest share of a change that is left by a revolution.
_FOR_AHEAD, _GREATEST_SHARE = 3, 0.6


@dataclass(frozen=True)
class Revolution:
    """One revolution: the charge at every angle of the grid, the flow of every step, mean enthalpy to the belt."""

    charges: tuple[Charge, ...]
    flows: tuple[Flow, ...]
    exhaust_enthalpy: float

    @property
    def change(self) -> float:
        """Greatest relative change of pressure and mass over the revolution."""
        first, last = self.charges[0], self.charges[-1]
        return max(abs(last.p / first.p - 1), abs(last.m / first.m - 1))


class Solved(Struct, frozen=True):
    """A periodic cycle: its grid, its last revolution, and the rounds it took."""

    grid: Grid
    revolution: Revolution
    rounds: int


def solved(end: CylinderEnd, running: Running, coarseness: float = 1.0) -> Solved:
    """Work the cycle of an end until it repeats itself within 0.02 %.

    ``coarseness`` multiplies the steps of the grid. OutOfRange where a valve never opens, where the steam leaves
    IAPWS-IF97, and where the cycle does not settle.
    """
    supply, V = running.supply, end.volume(end.events.compression)
    exhaust = (supply.enthalpy + state_at_entropy(supply.belt, supply.entropy).enthalpy) / 2
    chest = _reservoir(supply.chest, supply.enthalpy)
    charge, rounds = charge_of(supply.belt, V, exhaust), 0
    for factor, near in ((_COARSE * coarseness, _NEAR), (coarseness, PERIODIC)):
        grid, starts = grid_of(end, factor), [charge]
        for _ in range(_ROUNDS):
            rounds += 1
            found = _revolution(grid, running, starts[-1], chest, exhaust)
            exhaust = found.exhaust_enthalpy
            starts.append(found.charges[-1])
            if found.change < near:
                break
            if len(starts) == _FOR_AHEAD:
                starts = [_ahead(starts, V)]
        charge = starts[-1]
    require(found.change < PERIODIC, f"the cycle does not repeat itself within {rounds} revolutions")
    return Solved(grid, found, rounds)


def _revolution(grid: Grid, running: Running, first: Charge, chest: Reservoir, exhaust: float) -> Revolution:
    """One revolution from a charge on, steam drawn back from the belt having ``exhaust`` enthalpy [J/kg]."""
    walls, belt = running.walls, _reservoir(running.supply.belt, exhaust)
    charge, charges, flows = first.copy(), [first], []
    for step in grid.steps:
        time = step.angle / (TURN * running.speed)
        heat = _given(charge, walls, step.surface, time) if walls else 0.0
        if step.inlet or step.exhaust:
            flows.append(through(charge, step, time, heat, chest, belt))
        else:
            flows.append(shut(charge, step, heat))
        charges.append(charge.copy())
    return Revolution(tuple(charges), tuple(flows), _mean_enthalpy(flows, exhaust))


def _given(charge: Charge, walls: Walls, surface: float, time: float) -> float:
    """Heat from the walls in a time [J]: the difference dies away as the steam takes it up."""
    held = charge.m * _GAS_CONSTANT / (charge.κ - 1)
    taken_up = -math.expm1(-walls.coefficient * surface * time / held)
    return held * taken_up * (walls.temperature - charge.T)


def _mean_enthalpy(flows: list[Flow], otherwise: float) -> float:
    """Mean enthalpy of the steam that left for the belt [J/kg]."""
    left = sum(flow.left for flow in flows if flow.left > 0)
    return sum(flow.taken for flow in flows if flow.left > 0) / left if left > 0 else otherwise


def _reservoir(p: float, h: float) -> Reservoir:
    return Reservoir(p, state_at_enthalpy(p, h).density, temperature_and_exponent(p, h)[1], h)


def _ahead(starts: list[Charge], V: float) -> Charge:
    """Where three charges in a row are heading: each change is about the same share of the one before it."""
    m = _limit(*(charge.m for charge in starts))
    u = _limit(*(charge.u for charge in starts))
    p = pressure_of_energy(u, V / m, starts[-1].p)
    h = u + p * V / m
    T, κ = temperature_and_exponent(p, h)
    return Charge(p, m, u, h, T, κ)


def _limit(first: float, second: float, third: float) -> float:
    share = (third - second) / (second - first) if second != first else 0.0
    share = min(max(share, -_GREATEST_SHARE), _GREATEST_SHARE)
    return third + (third - second) * share / (1 - share)
