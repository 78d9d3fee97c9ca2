"""Turning moment of steam on the axle over a revolution, tractive effort, and how fast steam enters.

Moments are those of the steam alone: inertia and friction are left out, as at starting.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass

from speclint.equations import (
    FIRST_PRINCIPLES,
    Metres,
    MetresPerSecond,
    NewtonMetres,
    Newtons,
    Pascals,
    Radians,
    Ratio,
    Source,
    SquareMetres,
    formula,
    require,
)
from speclint.handbook.valve_events.trains import TURN, ValveTrain
from speclint.handbook.valve_events.travel import Crank

BALDWIN = Source(
    "Baldwin Locomotive Works, Record of Recent Construction",
    "no. 13",
    "p. 10, tractive force of simple engines",
)
JSME = Source(
    "JSME Mechanical Engineering Dictionary", "public online edition", "entry on the inlet Mach index"
)
TAYLOR = Source(
    "C. F. Taylor, The Internal-Combustion Engine in Theory and Practice", "vol. 1", "ch. 6", memory=True
)
#: Share of the boiler pressure that acts as mean pressure at starting (Baldwin).
TRADE_SHARE = 0.85


@formula("M = F r (sin θ + (r/l) sin θ cos θ/√(1 − (r/l)² sin² θ))", cites=[FIRST_PRINCIPLES])
def crank_moment(F: Newtons, r: Metres, l: Metres, θ: Radians) -> NewtonMetres:  # noqa: E741
    """Moment on the crank axle of a force along the line of stroke, friction left out.

    M = F r (sin θ + (r/l) sin θ cos θ/√(1 − (r/l)² sin² θ))

    ``F`` force towards the axle [N]; ``r`` crank radius and ``l`` rod length [m], 0 < r < l; ``θ`` crank angle from
    the front dead centre [rad]. Returns [N·m]. Raises OutOfRange outside. What the force does over a small travel,
    the moment does over the angle.

    By hand, upright crank: 100 kN · 0.33 m.

    >>> round(crank_moment(F=100e3, r=0.33, l=1.9, θ=math.pi / 2), 6)
    33000.0
    """
    require(0 < r < l, "the connecting rod must be longer than the crank, and that above 0")
    root = math.sqrt(1 - (r / l * math.sin(θ)) ** 2)
    return F * r * (math.sin(θ) + r / l * math.sin(θ) * math.cos(θ) / root)


@formula("F = p_f A_f − p_b A_b − p_a (A_f − A_b)", cites=[FIRST_PRINCIPLES])
def piston_force(p_f: Pascals, p_b: Pascals, p_a: Pascals, A_f: SquareMetres, A_b: SquareMetres) -> Newtons:
    """Force of steam on a piston and of air on its rod, towards the axle.

    F = p_f A_f − p_b A_b − p_a (A_f − A_b)

    ``p_f``, ``p_b`` pressure in front and back, ``p_a`` of the air [Pa absolute]; ``A_f``, ``A_b`` area of the piston
    towards each end, the back's less the rod's [m²]. Returns [N].

    By hand: 10 and 2 bar on 0.2 and 0.19 m², air 1 bar: 200 − 38 − 1 kN.

    >>> round(piston_force(p_f=10e5, p_b=2e5, p_a=1e5, A_f=0.20, A_b=0.19), 6)
    161000.0
    """
    return p_f * A_f - p_b * A_b - p_a * (A_f - A_b)


@formula("F = p_m A S/(π D)", cites=[FIRST_PRINCIPLES])
def tractive_effort(p_m: Pascals, A: SquareMetres, S: Metres, D: Metres) -> Newtons:
    """Tractive effort at the rail of one end of a cylinder, friction left out; that of several adds.

    F = p_m A S/(π D)

    ``p_m`` mean effective pressure of the end [Pa]; ``A`` its piston area [m²]; ``S`` stroke [m]; ``D`` diameter of the
    driving wheel [m], above 0. Returns [N]. Raises OutOfRange outside. A turn of the wheel does the work of one stroke
    of the end over the wheel's circumference.

    By hand: 10 bar · 0.2 m² · 0.66 m/(π · 1.75 m) = 24.0 kN.

    >>> round(tractive_effort(p_m=10e5, A=0.2, S=0.66, D=1.75))
    24010
    """
    require(D > 0, "the diameter of the driving wheel must be above 0")
    return p_m * A * S / (math.pi * D)


@formula("F = k p d² S z/(2 D)", cites=[BALDWIN])
def tractive_effort_by_the_trade(
    p: Pascals, d: Metres, S: Metres, z: Ratio, D: Metres, k: Ratio = TRADE_SHARE
) -> Newtons:
    """Tractive effort at starting by the trade's formula.

    F = k p d² S z/(2 D)

    ``p`` boiler pressure [Pa gauge]; ``d`` bore [m]; ``S`` stroke [m]; ``D`` diameter of the driving wheel [m], above
    0; ``z`` cylinders; ``k`` share of the boiler pressure that acts, 0.85. Returns [N]. Raises OutOfRange outside.

    By hand: 0.85 · 17 bar · 0.5² · 0.66 m · 2/(2 · 1.8 m) = 132.5 kN.

    >>> round(tractive_effort_by_the_trade(p=17e5, d=0.5, S=0.66, z=2, D=1.8) / 1e3, 1)
    132.5
    """
    require(D > 0, "the diameter of the driving wheel must be above 0")
    return k * p * d**2 * S * z / (2 * D)


@formula("Z = c_m A/(a A_m)", cites=[JSME, TAYLOR])
def mach_index(c_m: MetresPerSecond, A: SquareMetres, a: MetresPerSecond, A_m: SquareMetres) -> Ratio:
    """Mean speed at which the piston asks for steam through the valve, over the speed of sound.

    Z = c_m A/(a A_m)

    ``c_m`` mean speed of the piston [m/s]; ``A`` its area [m²]; ``a`` speed of sound in the steam before the valve
    [m/s], above 0; ``A_m`` mean of the effective area over the opening [m²], above 0. Raises OutOfRange outside.
    Filling falls steeply above 0.5 in air engines; in a steam engine it shows wire-drawing.

    By hand: 4 m/s · 0.2 m²/(640 m/s · 0.004 m²).

    >>> mach_index(c_m=4.0, A=0.2, a=640.0, A_m=0.004)
    0.3125
    """
    require(a > 0, "the speed of sound must be above 0")
    require(A_m > 0, "the mean effective area must be above 0")
    return c_m * A / (a * A_m)


PressureAt = Callable[[float], float]
#: How far beside a jump its moments are taken, rad.
_BESIDE = 1e-6


@dataclass(frozen=True)
class WorkingCylinder:
    """A cylinder as it turns its crank: areas [m²], and the pressure [Pa absolute] of each end.

    ``front`` and ``back`` give the pressure at the end's own crank angle [rad] in the direction of running.
    """

    crank: Crank
    front_area: float
    back_area: float
    front: PressureAt
    back: PressureAt
    air: float

    def force(self, angle: float) -> float:
        """Force towards the axle [N] at the front end's crank angle [rad]."""
        return piston_force(
            self.front(angle), self.back(angle - math.pi), self.air, self.front_area, self.back_area
        )

    def moment(self, angle: float) -> float:
        """Moment in the direction of running [N·m] at the front end's crank angle [rad]."""
        return crank_moment(self.force(angle), self.crank.radius, self.crank.rod, angle)


@dataclass(frozen=True, slots=True)
class TurningMoment:
    """Moment of all cylinders [N·m] at even crank angles [rad] of the first over a revolution.

    ``beside`` has angles and moments just before and after those at which the moment jumps.
    """

    angles: tuple[float, ...]
    moments: tuple[float, ...]
    beside: tuple[tuple[float, float], ...] = ()

    @property
    def mean(self) -> float:
        """N·m."""
        return sum(self.moments) / len(self.moments)

    @property
    def least(self) -> tuple[float, float]:
        """Crank angle [rad] and moment [N·m] where it is least."""
        return min(self._all(), key=lambda one: one[1])

    @property
    def greatest(self) -> tuple[float, float]:
        """Crank angle [rad] and moment [N·m] where it is greatest."""
        return max(self._all(), key=lambda one: one[1])

    def _all(self) -> list[tuple[float, float]]:
        return [*zip(self.angles, self.moments, strict=True), *self.beside]


def turning_moment(
    cylinders: Sequence[tuple[WorkingCylinder, float]], steps: int = 360, jumps: Iterable[float] = ()
) -> TurningMoment:
    """Moment of all cylinders over a revolution, each with the angle [rad] by which its crank leads the first's.

    ``jumps`` are the crank angles of the first [rad] at which the moment jumps, as where an inlet shuts on live steam:
    between two steps its least would be missed there.
    """
    require(steps > 0, "a revolution needs at least one step")

    def at(angle: float) -> float:
        return sum(cylinder.moment(angle + ahead) for cylinder, ahead in cylinders)

    angles = tuple(TURN * step / steps for step in range(steps))
    near = [(jump + by) % TURN for jump in jumps for by in (-_BESIDE, _BESIDE)]
    return TurningMoment(angles, tuple(map(at, angles)), tuple((angle, at(angle)) for angle in near))


def standing_pressure(inlet: ValveTrain, live: float, otherwise: float) -> PressureAt:
    """Pressure of an end at standstill: ``live`` steam where its inlet is open, ``otherwise`` where it is not.

    The front's and the back's trains of a cylinder make two of these for ``WorkingCylinder``. Steam that leaks past a
    shut valve, or was left behind it, is not counted.
    """
    return lambda angle: live if inlet.lift(angle) > 0 else otherwise
