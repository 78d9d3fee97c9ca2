"""Figures for drawings: numbers only, in SI, for whoever draws a chart from them."""

from __future__ import annotations

import math
from collections.abc import Iterable

from msgspec import Struct

from speclint.errors import OutOfRange, replace
from speclint.handbook.steam_cycle.both_ends import CylinderCycle
from speclint.handbook.steam_cycle.cycles import Cycle, cycle_of
from speclint.handbook.steam_cycle.ends import CylinderEnd, Running
from speclint.handbook.steam_cycle.grids import TURN
from speclint.handbook.valve_events import positions_of, theoretical_pressure


class ChartPoint(Struct, frozen=True):
    """At a crank angle of the end [rad]: lifts [m] and effective areas [m²] of both valves, piston speed [m/rad].

    The piston's demand is its speed times its area.
    """

    angle: float
    inlet_lift: float
    exhaust_lift: float
    inlet_area: float
    exhaust_area: float
    piston_speed: float


def valve_chart(end: CylinderEnd, steps: int = 720) -> tuple[ChartPoint, ...]:
    """Lift and area over the crank angle, 0 to 2π in even steps, both ends of it included."""
    inlet, exhaust = end.inlet, end.exhaust
    points = []
    for step in range(steps + 1):
        angle = TURN * step / steps
        lifts = inlet.train.lift(angle), exhaust.train.lift(angle)
        areas = inlet.effective_area(lifts[0]), exhaust.effective_area(lifts[1])
        points.append(ChartPoint(angle, *lifts, *areas, end.crank.slope(end.end, angle)))
    return tuple(points)


def indicator_card(cycle: Cycle) -> tuple[tuple[float, float], ...]:
    """Share of the stroke from the end's dead centre and pressure [Pa absolute] over a revolution, closed."""
    end = cycle.end
    return tuple(
        (end.crank.share(end.end, angle), charge.p)
        for angle, charge in zip(cycle.angles, cycle.charges, strict=True)
    )


def theoretical_card(cycle: Cycle, steps: int = 200) -> tuple[tuple[float, float], ...]:
    """The hyperbolic diagram with the same events, chest and belt, as ``indicator_card``; from dead centre, closed."""
    end, supply = cycle.end, cycle.running.supply
    at = positions_of(end.events, end.crank, end.end)
    limits = (supply.chest, supply.belt, at.cut_off, end.clearance_share, at.release, at.compression)
    out = sorted({*(n / steps for n in range(steps + 1)), at.cut_off, at.release, at.compression})
    outward = [(x, theoretical_pressure(x, True, *limits)) for x in out]
    freed = outward.index(next(point for point in outward if point[0] >= at.release))
    outward.insert(freed + 1, (at.release, supply.belt))
    inward = [(x, theoretical_pressure(x, False, *limits)) for x in reversed(out)]
    return (*outward, *inward, outward[0])


class SpeedPoint(Struct, frozen=True):
    """At revolutions in a second: what one cylinder does. None where the cycle is not covered or does no work."""

    speed: float
    mean_pressure: float | None
    tractive_effort: float | None
    steam_flow: float | None
    per_kilowatt_hour: float | None


def over_speed(
    front: CylinderEnd, back: CylinderEnd, running: Running, wheel: float, speeds: Iterable[float]
) -> tuple[SpeedPoint, ...]:
    """Tractive effort [N] and steam of one cylinder over its speed [1/s]; ``wheel`` diameter of the drivers [m]."""
    return tuple(_at_speed(front, back, replace(running, speed=speed), wheel) for speed in speeds)


def _at_speed(front: CylinderEnd, back: CylinderEnd, running: Running, wheel: float) -> SpeedPoint:
    try:
        both = CylinderCycle(cycle_of(front, running), cycle_of(back, running))
    except OutOfRange:
        return SpeedPoint(running.speed, None, None, None, None)
    mean = both.power / ((front.swept + back.swept) * running.speed)
    rate = both.per_kilowatt_hour if both.power > 0 else None
    return SpeedPoint(running.speed, mean, both.tractive_effort(wheel), both.steam_flow, rate)


def circle_of_events(end: CylinderEnd) -> dict[str, tuple[float, float]]:
    """Arcs of the crank circle on which each valve is open: from and to [rad], 0 to 2π, the second after the first."""
    events = end.events
    inlet = events.admission % TURN
    return {
        "inlet": (inlet, inlet + events.inlet_open),
        "exhaust": (events.release % TURN, events.release % TURN + events.exhaust_open),
    }


def tenths_of_stroke(end: CylinderEnd) -> tuple[float, ...]:
    """Crank angles of the end [rad], 0 to π, at which the piston has made 0, 10 % … 100 % of its stroke."""
    return tuple(min(end.crank.angle(end.end, n / 10), math.pi) for n in range(11))
