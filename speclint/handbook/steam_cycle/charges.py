"""The steam in an end as it is carried over one step of the crank.

Mass and internal energy are kept, so that both balances close by themselves; the pressure follows from them. While a
valve is open, the pressure at the end of a step is solved for first, by an isentrope with the masses that flow at it:
a step can at most level both sides. Then the energy is settled with the masses known, once with that pressure and
once with the one found.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from speclint.equations import require
from speclint.handbook.steam import (
    pressure_of_energy,
    state_at_enthalpy,
    state_at_entropy,
    swelling,
    temperature_and_exponent,
)
from speclint.handbook.steam_cycle.grids import Step
from speclint.handbook.steam_cycle.throats import Reservoir, throat_flux

#: Share of the pressure by which the end of a step may miss before the energy is settled, or within which its root
#: must lie, and tries to find it.
_NEAR, _FINER, _CLOSE, _TRIES = 1e-4, 1e-2, 1e-9, 60
#: Times the energy is settled at most, and the share of the pressure by which a levelled end may miss the other side's.
_SETTLINGS, _MISSED = 6, 1e-3
#: A fall of the pressure in one step to less than this share of it is worked by the entropy of what stays.
_DEEP = 0.8
#: Nearer to 1 an exponent of expansion leaves the closed form of work to the hyperbola's.
_NEAR_ONE = 1e-3
#: Shares of the steam in the end to which a step may bring it while its pressure is solved for.
_LEAST_LEFT, _MOST_FILLED = 0.1, 10.0


@dataclass(slots=True)
class Charge:
    """Steam in an end: pressure [Pa], mass [kg], internal energy [J/kg], enthalpy [J/kg], temperature [K], exponent."""

    p: float
    m: float
    u: float
    h: float
    T: float
    κ: float

    def copy(self) -> Charge:
        """The same again, to be carried on while this one stays."""
        return Charge(self.p, self.m, self.u, self.h, self.T, self.κ)


@dataclass(slots=True)
class Flow:
    """What a step moved: mass in [kg], mass out [kg], energy with the latter [J], work [J], heat from the walls [J].

    Mass in is negative where steam is pressed back into the chest, mass out where it comes back from the belt.
    """

    came: float = 0.0
    left: float = 0.0
    brought: float = 0.0
    taken: float = 0.0
    work: float = 0.0
    heat: float = 0.0


def charge_of(p: float, V: float, h: float) -> Charge:
    """The charge at a pressure [Pa] and an enthalpy [J/kg] that fills a volume [m³]; OutOfRange outside IAPWS-IF97."""
    v = state_at_enthalpy(p, h).specific_volume
    T, κ = temperature_and_exponent(p, h)
    return Charge(p, V / v, h - p * v, h, T, κ)


def shut(charge: Charge, step: Step, heat: float) -> Flow:
    """Carry the charge over a step with both valves shut, in place: an isentrope, corrected by the energy."""
    before, after = step.before, step.after
    p = charge.p * (before / after) ** charge.κ
    u = charge.u
    for _ in range(2):
        work = _work(charge.p, p, before, after)
        u = charge.u + (heat - work) / charge.m
        p = pressure_of_energy(u, after / charge.m, p)
    _settle(charge, p, u, after)
    return Flow(work=work, heat=heat)


def through(charge: Charge, step: Step, time: float, heat: float, chest: Reservoir, belt: Reservoir) -> Flow:
    """Carry the charge over a step of ``time`` [s] with a valve open, in place."""
    gain = 1.0
    if step.inlet:
        rise = swelling(charge.p, charge.h, step.before / charge.m)
        gain += rise * (chest.enthalpy - charge.h)
    passing = _Passing(charge, step, time, gain, chest, belt)
    target, came, left = passing.solved()
    if left > 0 and not step.inlet and target < _DEEP * charge.p:
        return _emptied(charge, step, target, heat)
    p, h = target, charge.h + (target - charge.p) * step.before / charge.m
    change, flow, m, u = step.after - step.before, Flow(), charge.m, charge.u
    for attempt in range(_SETTLINGS):
        own = (charge.h + h) / 2
        brought = came * (chest.enthalpy if came > 0 else own)
        taken = left * (own if left > 0 else belt.enthalpy)
        flow = Flow(came, left, brought, taken, (charge.p + p) / 2 * change, heat)
        m = charge.m + came - left
        u = (charge.m * charge.u + brought - taken + heat - flow.work) / m
        p = pressure_of_energy(u, step.after / m, p)
        h, miss = u + p * step.after / m, p / target - 1
        if passing.weight == 1 and abs(miss) > _MISSED:
            came, left = passing.corrected(came, left, m * miss / charge.κ)
        elif attempt:
            break
    charge.m = m
    _settle(charge, p, u, step.after)
    return flow


def _emptied(charge: Charge, step: Step, p: float, heat: float) -> Flow:
    """Let steam out to a pressure much lower: what stays expands without change of entropy."""
    entropy = state_at_enthalpy(charge.p, charge.h).entropy
    state = state_at_entropy(p, entropy)
    m = step.after / state.specific_volume
    u = state.enthalpy - p * state.specific_volume
    left, work = charge.m - m, (charge.p + p) / 2 * (step.after - step.before)
    taken = charge.m * charge.u - work - m * u
    charge.m, u = m, u + heat / m
    _settle(charge, pressure_of_energy(u, state.specific_volume, p), u, step.after)
    return Flow(0.0, left, 0.0, taken, work, heat)


class _Passing:
    """The masses that flow in a step, as they depend on the pressure at its end."""

    __slots__ = ("belt", "charge", "chest", "exhaust", "gain", "grown", "inlet", "weight", "ρ")

    def __init__(
        self, charge: Charge, step: Step, time: float, gain: float, chest: Reservoir, belt: Reservoir
    ) -> None:
        self.charge, self.chest, self.belt, self.gain = charge, chest, belt, gain
        self.inlet, self.exhaust = step.inlet * time, step.exhaust * time
        self.grown, self.ρ = step.before / step.after, charge.m / step.before
        self.weight = 0.5

    def masses(self, p: float) -> tuple[float, float]:
        """Mass in and mass out [kg] when the end is at p [Pa] within the step."""
        charge, came, left = self.charge, 0.0, 0.0
        ρ = self.ρ * (1 + (p / charge.p - 1) / charge.κ)
        if self.inlet:
            if p < self.chest.pressure:
                came = self.inlet * self.chest.flux(p)
            else:
                came = -self.inlet * throat_flux(p, ρ, charge.κ, self.chest.pressure)
        if self.exhaust:
            if p > self.belt.pressure:
                left = self.exhaust * throat_flux(p, ρ, charge.κ, self.belt.pressure)
            else:
                left = -self.exhaust * self.belt.flux(p)
        return came, left

    def reached(self, p: float) -> float:
        """Pressure at the end of the step if the masses flow as at p [Pa] within it."""
        charge = self.charge
        came, left = self.masses(p)
        gain = self.gain if came > 0 else 1.0
        share = 1 + (gain * came - left) / charge.m
        reached: float = charge.p * (min(max(share, _LEAST_LEFT), _MOST_FILLED) * self.grown) ** charge.κ
        return reached

    def solved(self) -> tuple[float, float, float]:
        """Pressure at the end of the step at which the masses that flow bring it there, and those masses."""
        before = self.charge.p
        first = self.reached(before)
        if abs(first - before) < _NEAR * before:
            return first, *self.masses(before)
        return self._with_masses(self._level(first))

    def _level(self, first: float) -> float:
        """The root between the pressure before and one beyond it, by false position; ``first`` without it."""
        before, near = self.charge.p, _NEAR * self.charge.p
        shut = before * self.grown**self.charge.κ
        sides = [side.pressure for side, area in self._sides() if area]
        away = min(abs(before - side) for side in sides)
        emptied = first < before * (1.01 * _LEAST_LEFT * self.grown) ** self.charge.κ
        levels = abs(first - shut) / max(away, near)
        self.weight = 1.0 if emptied else 0.5 + 0.5 * min(max(levels - 0.5, 0.0), 1.0)
        low, miss_low, high = before, first - before, first
        if self.weight == 1:
            near *= _FINER
            high = (max if first > before else min)(before, shut, *sides)
        miss_high = self._miss(high)
        for _ in range(_TRIES):
            if miss_high * miss_low >= 0 or abs(miss_high) < near or abs(high - low) < _CLOSE * before:
                break
            p = high - miss_high * (high - low) / (miss_high - miss_low)
            miss = self._miss(p)
            if miss * miss_high < 0:
                low, miss_low = high, miss_high
            else:
                miss_low /= 2
            high, miss_high = p, miss
        return high

    def _with_masses(self, p: float) -> tuple[float, float, float]:
        """The masses that bring the end to p [Pa]: as they flow; where it is levelled, the greater made to fit."""
        charge = self.charge
        came, left = self.masses(charge.p + self.weight * (p - charge.p))
        if self.weight < 1:
            return p, came, left
        gain = self.gain if came > 0 else 1.0
        missing = charge.m * ((p / charge.p) ** (1 / charge.κ) / self.grown - 1) - (gain * came - left)
        return p, *self.corrected(came, left, -missing)

    def corrected(self, came: float, left: float, surplus: float) -> tuple[float, float]:
        """The masses with the greater changed by a surplus in the end [kg]."""
        if self.exhaust and (not self.inlet or abs(left) >= abs(came)):
            return came, left + surplus
        return came - surplus / (self.gain if came > 0 else 1.0), left

    def _miss(self, p: float) -> float:
        before = self.charge.p
        return self.reached(before + self.weight * (p - before)) - p

    def _sides(self) -> tuple[tuple[Reservoir, float], ...]:
        return (self.chest, self.inlet), (self.belt, self.exhaust)


def _work(p_1: float, p_2: float, V_1: float, V_2: float) -> float:
    """Work of a polytrope through both states [J]."""
    growth = math.log(V_2 / V_1)
    exponent = math.log(p_1 / p_2) / growth if growth else 1.0
    if abs(exponent - 1) < _NEAR_ONE:
        return (p_1 * V_1 + p_2 * V_2) / 2 * growth
    return (p_1 * V_1 - p_2 * V_2) / (exponent - 1)


def _settle(charge: Charge, p: float, u: float, V: float) -> None:
    require(charge.m > 0, "the end empties itself within a step: its valves are too large for the method")
    charge.p, charge.u, charge.h = p, u, u + p * V / charge.m
    charge.T, charge.κ = temperature_and_exponent(p, charge.h)
