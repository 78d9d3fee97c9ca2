"""The load of a valve train as it opens its valve against steam."""

from __future__ import annotations

from dataclasses import dataclass

from speclint import Sheet
from speclint.equations import Kilograms, Metres, Newtons, NewtonsPerMetre, Radians, RadiansPerSecond, Ratio
from speclint.handbook.cams import Follower, valve_lift
from speclint.handbook.fits import DRAWING_TEMPERATURE
from speclint.handbook.members import round_area, sum_of_loads
from speclint.handbook.springs import spring_load_at_lift
from speclint.specs import LoadCase
from speclint_valves.formulae.blow import blow, estimated_stiffness, greater_load, mass_struck, struck_load
from speclint_valves.formulae.motion import tappet_load, valve_acceleration, valve_end_load, valve_speed
from speclint_valves.formulae.shutting import holding_load
from speclint_valves.formulae.tables import share_of_stiffness
from speclint_valves.inputs.shutting import on_spindle, supply_at_most, unbalanced, weight
from speclint_valves.inputs.springs import Springs, springs_new
from speclint_valves.inputs.train import (
    SCAN,
    Train,
    WholeLift,
    clearance,
    mass,
    motion,
    ratio,
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
    taken_up: Radians
    blow: Newtons

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

    def struck(self) -> dict[str, float]:
        """What makes up the load as the clearance is taken up: arguments of the formula."""
        return {
            "i": self.i,
            "F_f": self.springs.shut,
            "F_st": self.steam,
            "F_r": self.friction,
            "W": self.weight,
            "F_b": self.blow,
        }

    def tappet_at(self, angle: float) -> Newtons:
        """Load along the tappet at an angle of the cam."""
        return self.tappet(self.cam.at(angle))


def loaded(train: Train, case: LoadCase, sheet: Sheet) -> Loaded:
    """The load of a train in a load case; friction adds to the load of the cam."""
    i, cam = ratio(train, sheet), motion(train.cam, sheet)
    m, c, ω = mass(train, i, sheet), clearance(train, sheet), sheet.take("ω", case.rotational_speed)
    angle = _taken_up(cam, c, sheet)
    v = sheet.work("v_c", valve_speed, i=i, s_prime=cam.at(angle).slope, ω=ω)
    struck = sheet.work("m_b", mass_struck, m=m, m_t=sheet.take("m_t", train.tappet.mass), i=i)
    return Loaded(
        train=train,
        cam=cam,
        i=i,
        m=m,
        c=c,
        ω=ω,
        taken_up=angle,
        blow=sheet.work("F_b", blow, v=v, k=_stiffness(train, sheet), m=struck),
        springs=springs_new(train.valve, case, sheet),
        steam=held_by_steam(train, case, sheet),
        friction=sheet.take("F_r", train.spindle.friction),
        weight=weight(train.valve, sheet),
        cracked=sheet.take("h", train.valve.lift) * sheet.limit("cracked", "x_c"),
    )


def _taken_up(cam: WholeLift, c: Metres, sheet: Sheet) -> Radians:
    """The angle on the rise at which the tappet has taken up its clearance."""
    return sheet.scan(
        "φ_c",
        "cam angle at which the clearance is taken up",
        lambda angle: abs(cam.at(angle).lift - c),
        0.0,
        cam.top,
        unit="rad",
        find="least",
        steps=SCAN,
    )


def _stiffness(train: Train, sheet: Sheet) -> NewtonsPerMetre:
    """Stiffness of the train at the valve, as stated, or estimated from the spindle within a band."""
    spindle = train.spindle
    if sheet.is_stated("stiffness of the train", spindle.train_stiffness):
        return sheet.take("k", spindle.train_stiffness)
    return sheet.work(
        "k",
        estimated_stiffness,
        x=sheet.look_up("x_k", share_of_stiffness),
        E=sheet.look_up("E_s", sheet.material_of(spindle).modulus, of=spindle, at=DRAWING_TEMPERATURE),
        A=sheet.work("A_s", round_area, d=sheet.take("d_sp", spindle.diameter)),
        L=sheet.take("L_h", spindle.heated_length),
    )


def held_by_steam(train: Train, case: LoadCase, sheet: Sheet) -> Newtons:
    """Steam load that holds the valve shut, with supply on one side and exhaust on the other."""
    supply, delivery = supply_at_most(case, sheet), sheet.take("p_d", case.exhaust_pressure)
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


def worked_struck_load(load: Loaded, sheet: Sheet) -> Newtons:
    """The load along the tappet as it takes up its clearance, written on the sheet."""
    return sheet.work("F_tb", struck_load, **load.struck())


def worked_valve_load(load: Loaded, sheet: Sheet) -> tuple[Newtons, Newtons]:
    """The greatest load at the valve during its lift, and the load at the tappet that goes with it."""
    angle = sheet.scan(
        "φ", "cam angle of the greatest load", load.tappet_at, 0.0, load.cam.duration, unit="rad"
    )
    at_tappet = sheet.work(
        "F_max", greater_load, F_1=worked_tappet_load(load, angle, sheet), F_2=worked_struck_load(load, sheet)
    )
    return sheet.work("F_v", valve_end_load, F_t=at_tappet, i=load.i), at_tappet
