"""The load of a valve train as it opens its valve against steam."""

from __future__ import annotations

from dataclasses import dataclass

from speclint import Sheet
from speclint.equations import Kilograms, Metres, Newtons, RadiansPerSecond, Ratio
from speclint.handbook.cams import Follower
from speclint.specs import LoadCase
from speclint_valves.formulae.motion import tappet_load, valve_acceleration, valve_end_load, valve_lift
from speclint_valves.formulae.shutting import holding_load, spring_load_at_lift, sum_of_loads
from speclint_valves.inputs.shutting import on_spindle, unbalanced, weight
from speclint_valves.inputs.train import (
    Springs,
    Train,
    WholeLift,
    clearance,
    mass,
    motion,
    ratio,
    springs_hot,
)


@dataclass(frozen=True)
class Loaded:
    """Everything on which the load at the cam depends, at any angle."""

    train: Train
    cam: WholeLift
    i: Ratio
    m: Kilograms
    c: Metres
    ω: RadiansPerSecond
    springs: Springs
    steam: Newtons
    friction: Newtons
    weight: Newtons
    cracked: Metres

    def spring_at(self, h: Metres) -> Newtons:
        """Load of the springs at a lift of the valve."""
        return spring_load_at_lift(F_U=self.springs.shut, R=self.springs.rate, h=h)

    def steam_at(self, h: Metres) -> Newtons:
        """Steam load that holds the valve shut: all of it until the valve has cracked open, then none."""
        return self.steam if h <= self.cracked else 0.0

    def tappet(self, at: Follower) -> Newtons:
        """Load along the tappet; zero before it has taken up its clearance, or where it has left the cam."""
        if at.lift < self.c:
            return 0.0
        h = valve_lift(i=self.i, s=at.lift, c=self.c)
        a = valve_acceleration(i=self.i, κ=at.curvature, ω=self.ω)
        steam = self.steam_at(h) if at.slope >= 0 else 0.0
        F_f = self.spring_at(h)
        load = tappet_load(i=self.i, F_f=F_f, F_st=steam, m=self.m, a=a, F_r=self.friction, W=self.weight)
        return max(load, 0.0)

    def tappet_at(self, angle: float) -> Newtons:
        """Load along the tappet at an angle of the cam."""
        return self.tappet(self.cam.at(angle))


def loaded(train: Train, case: LoadCase, sheet: Sheet) -> Loaded:
    """The load of a train in a load case; friction adds to the load of the cam."""
    i, cam = ratio(train, sheet), motion(train.cam, sheet)
    return Loaded(
        train=train,
        cam=cam,
        i=i,
        m=mass(train, i, sheet),
        c=clearance(train, sheet),
        ω=sheet.take("ω", case.rotational_speed),
        springs=springs_hot(train.valve, case, sheet),
        steam=held_by_steam(train, case, sheet),
        friction=sheet.take("F_r", train.spindle.friction),
        weight=weight(train.valve, sheet),
        cracked=sheet.take("h", train.valve.lift) * sheet.limit("cracked", "x_c"),
    )


def held_by_steam(train: Train, case: LoadCase, sheet: Sheet) -> Newtons:
    """Steam load that holds the valve shut, with supply on one side and exhaust on the other."""
    supply, delivery = sheet.take("p_s", case.live_pressure), sheet.take("p_d", case.exhaust_pressure)
    on_valve = unbalanced(train.valve, sheet, supply, delivery)
    on_end = on_spindle(train.spindle, sheet, supply, delivery)
    return sheet.work("F_st", holding_load, F=sheet.work("F_s′", sum_of_loads, F_1=on_valve, F_2=on_end))


def worked_tappet_load(load: Loaded, angle: float, sheet: Sheet) -> Newtons:
    """The load along the tappet at an angle, written on the sheet."""
    at = load.cam.at(angle)
    h = sheet.work("h_φ", valve_lift, i=load.i, s=at.lift, c=load.c)
    a = sheet.work("a", valve_acceleration, i=load.i, κ=at.curvature, ω=load.ω)
    F_f = sheet.work("F_h", spring_load_at_lift, F_U=load.springs.shut, R=load.springs.rate, h=h)
    steam = load.steam_at(h) if at.slope >= 0 else 0.0
    return sheet.work(
        "F_t", tappet_load, i=load.i, F_f=F_f, F_st=steam, m=load.m, a=a, F_r=load.friction, W=load.weight
    )


def worked_valve_load(load: Loaded, sheet: Sheet) -> tuple[Newtons, Newtons]:
    """The greatest load at the valve during its lift, and the load at the tappet that goes with it."""
    angle = sheet.scan(
        "φ", "cam angle of the greatest load", load.tappet_at, 0.0, load.cam.duration, unit="rad"
    )
    at_tappet = worked_tappet_load(load, angle, sheet)
    return sheet.work("F_v", valve_end_load, F_t=at_tappet, i=load.i), at_tappet
