"""The load of a valve train as it opens its valve against steam."""

from __future__ import annotations

from dataclasses import dataclass
from typing import NamedTuple

from speclint import Sheet
from speclint.equations import (
    Kilograms,
    Metres,
    Newtons,
    NewtonsPerMetre,
    Pascals,
    Radians,
    RadiansPerSecond,
    Ratio,
)
from speclint.facts import (
    ValvesTrain,
    WholeLift,
    blow,
    estimated_stiffness,
    event_pressure,
    greater_load,
    holding_load,
    mass_of_train,
    mass_struck,
    motion,
    ratio_of_train,
    share_of_stiffness,
    speed_of_gear,
    struck_load,
    tappet_load,
    turning,
    valve_acceleration,
    valve_lift,
    valve_speed,
)
from speclint.handbook.cams import Follower
from speclint.handbook.fits import DRAWING_TEMPERATURE
from speclint.handbook.members import round_area, sum_of_loads
from speclint.handbook.springs import spring_load_at_lift
from speclint.specs import LoadCase, PoppetValve
from speclint_valves.formulae.motion import valve_end_load
from speclint_valves.inputs.cylinder import steam_needed
from speclint_valves.inputs.shutting import on_spindle, supply_at_most, unbalanced, weight
from speclint_valves.inputs.springs import Springs, springs_new
from speclint_valves.inputs.train import SCAN, clearances, trains_of


class Phase(NamedTuple):
    """A part of the lift: its mark, when it is, where it begins and ends, and the steam load that holds the valve.

    It is scanned in so many steps.
    """

    mark: str
    when: str
    start: Radians
    stop: Radians
    steam: Newtons
    steps: int


@dataclass(frozen=True)
class Loaded:
    """Everything on which the load at the cam depends, at any angle."""

    train: ValvesTrain
    cam: WholeLift
    i: Ratio
    m: Kilograms
    c: Metres
    ω: RadiansPerSecond
    springs: Springs
    steam: Newtons
    friction: Newtons
    weight: Newtons
    begins: Radians
    taken_up: Radians
    cracked: Radians
    landed: Radians
    blow: Newtons

    @property
    def phases(self) -> tuple[Phase, Phase]:
        """The lift in two parts: while steam holds the valve shut, all of it, and from where it has cracked open."""
        held = Phase("s", "while steam holds the valve", self.begins, self.cracked, self.steam, 20)
        return held, Phase("o", "once the valve has cracked open", self.cracked, self.landed, 0.0, 180)

    def spring_at(self, h: Metres) -> Newtons:
        """Load of the springs at a lift of the valve."""
        return spring_load_at_lift(F_U=self.springs.shut, R=self.springs.rate, h=h)

    def tappet(self, at: Follower, steam: Newtons) -> Newtons:
        """Load along the tappet that lifts against a steam load; zero where it has left the cam."""
        h = valve_lift(i=self.i, s=at.lift, c=self.c)
        a = valve_acceleration(i=self.i, κ=at.curvature, ω=self.ω)
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


def loaded(train: ValvesTrain, case: LoadCase, sheet: Sheet) -> Loaded:
    """The load of a train in a load case; friction adds to the load of the cam.

    The blow is that of the greatest clearance of its tappet, springs and lift are those of the least.
    """
    i, cam = ratio_of_train(train, sheet), motion(train.cam, sheet)
    m, ω = mass_of_train(train, i, sheet), speed_of_gear(train.valve, case, sheet)
    c, greatest = clearances(train, sheet)
    angle = begins = _taken_up(cam, greatest, sheet)
    if c is not greatest:
        begins = _taken_up(cam, c, sheet)
    opening = sheet.take("h", train.valve.lift) * sheet.limit("cracked", "x_c")
    v = sheet.work("v_c", valve_speed, i=i, s_prime=cam.at(angle).slope, ω=ω)
    struck = sheet.work("m_b", mass_struck, m=m, m_t=sheet.take("m_t", train.tappet.mass), i=i)
    return Loaded(
        train=train,
        cam=cam,
        i=i,
        m=m,
        c=c,
        ω=ω,
        begins=begins,
        taken_up=angle,
        blow=sheet.work("F_b", blow, v=v, k=_stiffness(train, sheet), m=struck),
        springs=springs_new(train.valve, case, sheet),
        steam=held_by_steam(train, case, sheet, events_known=c is greatest),
        friction=sheet.take("F_r", train.spindle.friction),
        weight=weight(train.valve, sheet, helps=False),
        cracked=_cracked(cam, i, c, opening, sheet),
        landed=_landed(cam, c, sheet),
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


def _cracked(cam: WholeLift, i: Ratio, c: Metres, h: Metres, sheet: Sheet) -> Radians:
    """The angle on the rise at which the valve has opened so far that steam no longer holds it."""
    return sheet.scan(
        "φ_h",
        "cam angle at which steam no longer holds the valve",
        lambda angle: abs(valve_lift(i=i, s=cam.at(angle).lift, c=c) - h),
        0.0,
        cam.top,
        unit="rad",
        find="least",
        steps=SCAN,
    )


def _landed(cam: WholeLift, c: Metres, sheet: Sheet) -> Radians:
    """The angle on the fall at which the valve is shut again."""
    return sheet.scan(
        "φ_l",
        "cam angle at which the valve lands",
        lambda angle: abs(cam.at(angle).lift - c),
        cam.top,
        cam.duration,
        unit="rad",
        find="least",
        steps=SCAN,
    )


def _stiffness(train: ValvesTrain, sheet: Sheet) -> NewtonsPerMetre:
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


def held_by_steam(train: ValvesTrain, case: LoadCase, sheet: Sheet, *, events_known: bool = True) -> Newtons:
    """Steam load that holds the valve shut, with supply on one side and exhaust on the other.

    An exhaust valve opens against the pressure at release, where the cycle of its cylinder is known; otherwise against
    all that the boiler gives. So does every inlet: with the drain cocks open nothing is compressed before it. When it
    opens is not known (``events_known``) where its clearance is stated as two.
    """
    delivery = sheet.take("p_d", case.exhaust_pressure)
    released = _released(train.valve, case, sheet) if events_known else None
    supply = supply_at_most(case, sheet) if released is None else released
    on_valve = unbalanced(train.valve, sheet, supply, delivery)
    on_end = on_spindle(train.spindle, sheet, supply, delivery, helps=False)
    return sheet.work("F_st", holding_load, F=sheet.work("F_s′", sum_of_loads, F_1=on_valve, F_2=on_end))


def _released(valve: PoppetValve, case: LoadCase, sheet: Sheet) -> Pascals | None:
    """The gauge pressure against which an exhaust valve opens by the cycle; None for an inlet, and without a cycle."""
    if not sheet.is_stated("serves", valve.serves) or sheet.read("serves", valve.serves) != "exhaust":
        return None
    steam = steam_needed(valve, case, sheet)
    return None if steam is None else event_pressure(steam, "release", "p_r", case, sheet)


def worked_tappet_load(load: Loaded, phase: Phase, angle: float, sheet: Sheet) -> Newtons:
    """The load along the tappet at an angle, written on the sheet."""
    at, mark = load.cam.at(angle), phase.mark
    h = sheet.work(f"h_{mark}", valve_lift, i=load.i, s=at.lift, c=load.c)
    a = sheet.work(f"a_{mark}", valve_acceleration, i=load.i, κ=at.curvature, ω=load.ω)
    F_f = sheet.work(f"F_h{mark}", spring_load_at_lift, F_U=load.springs.shut, R=load.springs.rate, h=h)
    F_r, W = load.friction, load.weight
    return sheet.work(
        f"F_t{mark}", tappet_load, i=load.i, F_f=F_f, F_st=phase.steam, m=load.m, a=a, F_r=F_r, W=W
    )


def worked_struck_load(load: Loaded, sheet: Sheet) -> Newtons:
    """The load along the tappet as it takes up its clearance, written on the sheet."""
    return sheet.work("F_tb", struck_load, **load.struck())


def worked_valve_load(load: Loaded, sheet: Sheet) -> tuple[Newtons, Newtons]:
    """The greatest load at the valve during its lift, and the load at the tappet that goes with it."""
    greatest = worked_struck_load(load, sheet)
    for phase in load.phases:
        angle = sheet.scan(
            f"φ_{phase.mark}",
            f"cam angle of the greatest load {phase.when}",
            lambda angle, phase=phase: load.tappet(load.cam.at(angle), phase.steam),  # type: ignore[misc]
            phase.start,
            phase.stop,
            unit="rad",
            steps=phase.steps,
        )
        here = worked_tappet_load(load, phase, angle, sheet)
        greatest = sheet.work(f"F_max{phase.mark}", greater_load, F_1=here, F_2=greatest)
    return sheet.work("F_v", valve_end_load, F_t=greatest, i=load.i), greatest


def greatest_valve_load(valve: PoppetValve, case: LoadCase, sheet: Sheet) -> tuple[Newtons, Newtons]:
    """The greatest load at a valve, and the load at its tappet that goes with it, on the track that asks most."""
    return worked_valve_load(loaded(_asking_most(valve, case, sheet), case, sheet), sheet)


def _asking_most(valve: PoppetValve, case: LoadCase, sheet: Sheet) -> ValvesTrain:
    """The train with the track of the greatest load, every size as the drawings aim at it."""
    trains = trains_of(valve, sheet)
    if len(trains) == 1:
        return trains[0]

    def greatest(train: ValvesTrain) -> Newtons:
        on_track = turning(train.cam, case, 0.0, sheet)
        angles = [on_track.cam.duration * step / _STEPS for step in range(_STEPS + 1)]
        return max(tappet_load(**on_track.load(θ, on_track.follower(θ))) for θ in angles)

    return sheet.once(("track that asks most", valve.id, case.where), lambda: max(trains, key=greatest))


#: Angles of a lift at which the load of a track is looked at to find the one that asks most.
_STEPS = 120
