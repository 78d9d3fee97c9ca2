"""What a cam asks of its shaft at any angle, with every size as the drawings aim at it."""

from __future__ import annotations

import math
from dataclasses import dataclass

from speclint import FIRST_PRINCIPLES, Sheet
from speclint.equations import (
    Kilograms,
    Metres,
    NewtonMetres,
    Newtons,
    NewtonsPerMetre,
    RadiansPerSecond,
    Ratio,
)
from speclint.facts import (
    rate_by_sizes,
    speed_of_gear,
    steam_inside_seal,
    supply_acts,
    valve_lift,
    weight_shutting,
)
from speclint.handbook.cams import Follower
from speclint.handbook.members import sum_of_loads
from speclint.handbook.springs import spring_load_at_lift
from speclint.handbook.steam import excess_pressure, unbalanced_load
from speclint.handbook.tables import Reading
from speclint.handbook.valve_events import reversed_cam
from speclint.specs import Cam, LoadCase
from speclint_valves.formulae.cams import torque_of_cam
from speclint_valves.formulae.motion import tappet_load, valve_acceleration
from speclint_valves.formulae.shutting import holding_load, spindle_load
from speclint_valves.formulae.tables import sense_of_push, sense_of_weight
from speclint_valves.inputs.opening import beats_of
from speclint_valves.inputs.springs import springs_of
from speclint_valves.inputs.train import Train, WholeLift, mass, motion, ratio, train_of

_TURN = 2 * math.pi
#: Steps of a turn in which the angle of the greatest torque is looked for, and again of two steps about the best.
_STEPS = 720


@dataclass(frozen=True, slots=True, eq=False)
class Turning:
    """Everything on which the torque of one cam depends; ``phase`` is the shaft's angle at which its lift begins."""

    name: str
    cam: WholeLift
    i: Ratio
    c: Metres
    ω: RadiansPerSecond
    springs: tuple[Newtons, NewtonsPerMetre]
    steam: Newtons
    cracked: Metres
    friction: Newtons
    weight: Newtons
    m: Kilograms
    phase: float

    def follower(self, θ: float) -> Follower:
        """The tappet at an angle of the shaft; on the base circle its end of the lift."""
        return self.cam.at(min((θ - self.phase) % _TURN, self.cam.duration))

    def load(self, θ: float) -> dict[str, float]:
        """What makes up the load along the tappet: arguments of its formula, once the clearance is taken up."""
        at = self.follower(θ)
        h = valve_lift(i=self.i, s=at.lift, c=self.c)
        rises = (θ - self.phase) % _TURN < self.cam.top
        shut, rate = self.springs
        return {
            "i": self.i,
            "F_f": spring_load_at_lift(F_U=shut, R=rate, h=h),
            "F_st": self.steam if rises and h < self.cracked else 0.0,
            "m": self.m,
            "a": valve_acceleration(i=self.i, κ=at.curvature, ω=self.ω),
            "F_r": self.friction,
            "W": self.weight,
        }

    def bears(self, θ: float) -> bool:
        """Whether the tappet has taken up its clearance, so that the valve's load comes on the cam."""
        return self.follower(θ).lift > self.c

    def torque(self, θ: float) -> NewtonMetres:
        """Torque that the cam needs at an angle of the shaft, N·m."""
        if not self.bears(θ):
            return 0.0
        return torque_of_cam(F=max(tappet_load(**self.load(θ)), 0.0), s_prime=self.follower(θ).slope)


def angle_of_greatest(cams: tuple[Turning, ...]) -> Reading:
    """The angle of the shaft at which some cams together need most, rad.

    It may lie where steam lets go of a valve and the torque falls at once; so the place is looked for in steps.
    """
    best, width = 0.0, _TURN
    for _ in range(2):
        angles = [best + width * (step / _STEPS - 1 / 2) for step in range(_STEPS + 1)]
        best, width = max(angles, key=lambda θ: sum(one.torque(θ) for one in cams)), 2 * width / _STEPS
    return Reading.exact("angle of the shaft at the greatest torque", best, "rad", FIRST_PRINCIPLES)


def turning(cam: Cam, case: LoadCase, phase: float, sheet: Sheet, *, backward: bool = False) -> Turning:
    """A cam with its train, every size, load and pressure as the drawings and the duty aim at it.

    Backwards the cam is read from its other end.
    """
    train, take = train_of(cam, sheet), sheet.take_nominal
    i, lift = ratio(train, sheet, take), motion(cam, sheet, take)
    tappet, spindle = train.tappet, train.spindle
    stated = sheet.is_stated("clearance of the tappet", tappet.clearance)
    _, friction = sheet.take_limits("F_r", spindle.friction)
    return Turning(
        name=cam.id,
        cam=WholeLift(reversed_cam(lift.cam)) if backward else lift,
        i=i,
        c=take("c", tappet.clearance) if stated else 0.0,
        ω=speed_of_gear(train.valve, case, sheet, take),
        springs=_springs(train, sheet),
        steam=_steam(train, case, sheet),
        cracked=take("h", train.valve.lift) * sheet.limit("cracked", "x_c"),
        friction=friction,
        weight=_weight(train, sheet),
        m=mass(train, i, sheet, take),
        phase=phase,
    )


def _springs(train: Train, sheet: Sheet) -> tuple[Newtons, NewtonsPerMetre]:
    """Load shut and rate of all springs of a valve together, as stated; a rate that is not by the sizes."""
    shut = rate = 0.0
    for number, spring in enumerate(springs_of(train.valve, sheet), start=1):
        shut += sheet.take_nominal(f"F_U{number}", spring.shut_load)
        by_sizes = (
            None if sheet.is_stated("rate", spring.rate) else rate_by_sizes(spring, sheet, f"_{number}")
        )
        rate += sheet.take_nominal(f"R_{number}", spring.rate) if by_sizes is None else by_sizes
    return shut, rate


def _steam(train: Train, case: LoadCase, sheet: Sheet) -> Newtons:
    """Steam load that holds the valve shut as it is opened, on the small circles of its seats."""
    take, valve = sheet.take_nominal, train.valve
    supply, delivery = take("p_s", case.live_pressure), take("p_d", case.exhaust_pressure)
    circles = [take(f"d_{index}", beat.seat_diameter) for index, beat in beats_of(valve, sheet)]
    between = supply_acts(valve, sheet) == "between the beats"
    inside, outside = (supply, delivery) if between else (delivery, supply)
    on_valve = sheet.work(
        "F_v",
        unbalanced_load,
        Δp=sheet.work("Δp", excess_pressure, p_1=inside, p_2=outside),
        d_u=circles[0],
        d_l=circles[1] if len(circles) == 2 else 0.0,
    )
    leaves = steam_inside_seal(train.spindle, sheet)
    g = sheet.look_up("g_s", sense_of_push, pushed=sheet.read("spindle is pushed", train.spindle.pushed))
    d = take("d_s", train.spindle.seal_diameter)
    on_end = sheet.work("F_s", spindle_load, g=g, d=d, p=supply if leaves == "supply" else delivery)
    return sheet.work("F_st", holding_load, F=sheet.work("F_s′", sum_of_loads, F_1=on_valve, F_2=on_end))


def _weight(train: Train, sheet: Sheet) -> Newtons:
    g = sheet.look_up("g_w", sense_of_weight, opens=sheet.read("opens", train.valve.opens))
    m_v, m_s = sheet.take_nominal("m_v", train.valve.mass), sheet.take_nominal("m_s", train.spindle.mass)
    return sheet.work("W", weight_shutting, g=g, m_v=m_v, m_s=m_s)
