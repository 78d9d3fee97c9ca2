"""A valve in motion: whether the spring keeps it on the cam, and the speed at which it lands."""

from __future__ import annotations

from dataclasses import dataclass

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Course, Grade, Judgement, Limit, Sheet, rule
from speclint.equations import (
    Kilograms,
    Metres,
    MetresPerSecondSquared,
    Newtons,
    Radians,
    RadiansPerSecond,
    Ratio,
)
from speclint.facts import (
    ValvesTrain,
    WholeLift,
    mass_of_train,
    motion,
    ratio_of_train,
    speed_of_gear,
    valve_acceleration,
    valve_lift,
)
from speclint.handbook.cams import NORTON
from speclint.handbook.members import load_with_factor
from speclint.handbook.springs import spring_load_at_lift
from speclint.specs import LoadCase, PoppetValve
from speclint_valves.formulae.motion import (
    asked_of_springs,
    following_load,
    load_to_follow,
    overspeed,
)
from speclint_valves.formulae.shutting import lifting_load
from speclint_valves.inputs.landed import speed_of_landing
from speclint_valves.inputs.shutting import lifting_pressures, on_spindle, weight
from speclint_valves.inputs.springs import Springs, springs_relaxed
from speclint_valves.inputs.train import clearances, on_every_track

#: A margin that never governs, for angles at which the cam pushes the valve.
_AMPLE = 1e6


@rule(
    "valve.spring-follows-cam",
    edition=7,
    title="At 1.1 times the greatest speed the closing load is at least 1.3 times what keeps the train "
    "on the cam",
    wrong="valve may leave its cam: held to it by {found}, {limit} wanted",
    on=PoppetValve,
    cases=("running", "drifting"),
    grade=Grade.NONCONFORMITY,
    cites=[FIRST_PRINCIPLES, NORTON, COMMON_PRACTICE],
    why="a train that leaves its cam lands with an impact, holds the valve open too long and breaks springs",
    leaves_out="deflection of rocker and spindle and surge of the spring, which reduce the margin",
    against=("wear",),
    limits=[
        Limit(
            "margin",
            "1.3",
            "ratio",
            COMMON_PRACTICE,
            "least closing load over the load that keeps the train on the cam",
        ),
        Limit("overspeed", "1.1", "ratio", COMMON_PRACTICE, "overspeed over the greatest permitted speed"),
    ],
)
def spring_follows_cam(valve: PoppetValve, case: LoadCase, sheet: Sheet) -> Judgement:
    """Springs + weight − friction − steam ≥ margin × m a wherever the valve decelerates; the worst is scanned for."""
    return on_every_track(valve, sheet, lambda train: _followed(train, case, sheet))


def _followed(train: ValvesTrain, case: LoadCase, sheet: Sheet) -> Judgement:
    """Whether the spring keeps the train on one track of its cam."""
    valve = train.valve
    i, cam = ratio_of_train(train, sheet), motion(train.cam, sheet)
    m, (_, c) = mass_of_train(train, i, sheet), clearances(train, sheet)
    ω = sheet.work("ω_o", overspeed, x=sheet.limit("overspeed", "x"), ω=speed_of_gear(valve, case, sheet))
    springs, W = springs_relaxed(valve, case, sheet), weight(valve, sheet)
    F_r, F_w = sheet.take("F_r", train.spindle.friction), _held_open(train, case, sheet)
    moving = Moving(cam, i, m, c, ω, springs, W, F_r, F_w)
    angle = sheet.scan(
        "φ",
        "cam angle of the least margin",
        moving.margin,
        0.0,
        cam.duration,
        unit="rad",
        find="least",
        beside=moving.beside(sheet.limit("margin", "x")),
    )
    return _judged(sheet, angle, moving)


def _held_open(train: ValvesTrain, case: LoadCase, sheet: Sheet) -> Newtons:
    """Steam load that holds the valve open: on its spindle, and of the flow where stated."""
    supply, delivery = lifting_pressures(train.valve, case, sheet)
    spindle = on_spindle(train.spindle, sheet, supply, delivery)
    stated = sheet.is_stated("flow force", train.valve.flow_force)
    flow = sheet.take("F_q", train.valve.flow_force) if stated else 0.0
    return flow + sheet.work("F_o", lifting_load, F_v=0.0, F_s=spindle)


@dataclass(frozen=True)
class Moving:
    """What a train needs to be judged at one angle of the cam."""

    cam: WholeLift
    i: Ratio
    m: Kilograms
    c: Metres
    ω: RadiansPerSecond
    springs: Springs
    W: Newtons
    F_r: Newtons
    F_w: Newtons

    def lift(self, angle: Radians) -> Metres:
        """Lift of the valve."""
        return valve_lift(i=self.i, s=self.cam.at(angle).lift, c=self.c)

    def spring(self, angle: Radians) -> Newtons:
        """Load of the springs."""
        return spring_load_at_lift(F_U=self.springs.shut, R=self.springs.rate, h=self.lift(angle))

    def acceleration(self, angle: Radians) -> MetresPerSecondSquared:
        """Acceleration of the valve while the train follows the cam."""
        return valve_acceleration(i=self.i, κ=self.cam.at(angle).curvature, ω=self.ω)

    def inertia(self, angle: Radians) -> Newtons:
        """Load that makes the train follow the cam; negative where the cam pushes it."""
        return following_load(m=self.m, a=self.acceleration(angle))

    def margin(self, angle: Radians) -> Ratio:
        """Load available over the load that the inertia needs."""
        needed = self.inertia(angle)
        if needed <= 0:
            return _AMPLE
        left = load_to_follow(F_f=self.spring(angle), W=self.W, F_r=self.F_r, F_w=self.F_w)
        return left / needed

    def beside(self, x: Ratio) -> tuple[Course, ...]:
        """Curves over the lift: load of the springs, and load needed for steam, friction, weight and inertia."""
        steady = asked_of_springs(F_n=0.0, F_r=self.F_r, F_w=self.F_w, W=self.W)

        def asked(angle: float) -> float | None:
            inertia = self.inertia(angle)
            return load_with_factor(x=x, F=inertia) + steady if inertia > 0 else None

        return (
            Course("h", "lift of the valve", "m", self.lift),
            Course("F_h", "load of the springs, hot and relaxed", "N", self.spring),
            Course("F_0", "spring load needed for steam, friction and weight", "N", lambda _: steady),
            Course("F_a", "spring load needed in all, including the margin on inertia", "N", asked),
            Course("a", "acceleration of the valve", "m/s²", self.acceleration),
        )


def _judged(sheet: Sheet, angle: Radians, train: Moving) -> Judgement:
    at = train.cam.at(angle)
    h = sheet.work("h", valve_lift, i=train.i, s=at.lift, c=train.c)
    a = sheet.work("a", valve_acceleration, i=train.i, κ=at.curvature, ω=train.ω)
    F_f = sheet.work("F_h", spring_load_at_lift, F_U=train.springs.shut, R=train.springs.rate, h=h)
    follow = sheet.work("F_m", following_load, m=train.m, a=a)
    needed = sheet.work("F_n", load_with_factor, x=sheet.limit("margin", "x"), F=follow)
    sheet.work("F_a", asked_of_springs, F_n=needed, F_r=train.F_r, F_w=train.F_w, W=train.W)
    left = sheet.work("F", load_to_follow, F_f=F_f, W=train.W, F_r=train.F_r, F_w=train.F_w)
    return sheet.at_least(left, needed)


@rule(
    "valve.landing-speed",
    edition=4,
    title="The valve lands on its seat at no more than 0.5 m/s",
    wrong="valve lands at {found}, {limit} allowed",
    on=PoppetValve,
    cases=("running",),
    grade=Grade.OBSERVATION,
    cites=[COMMON_PRACTICE],
    why="a valve that lands fast hammers its seat out, and can be heard",
    leaves_out="a valve that has left its cam (valve.spring-follows-cam)",
    against=("wear",),
    against_on={"valve-seat": ("wear",)},
    limits=[Limit("greatest", "0.5 m/s", "speed", COMMON_PRACTICE, "greatest speed of landing")],
)
def landing_speed(valve: PoppetValve, case: LoadCase, sheet: Sheet) -> Judgement:
    """Speed of the valve where the lift of the falling tappet equals its clearance."""
    return on_every_track(valve, sheet, lambda train: _landed(train, case, sheet))


def _landed(train: ValvesTrain, case: LoadCase, sheet: Sheet) -> Judgement:
    """The speed with which one track of the cam sets the valve down."""
    return sheet.at_most(speed_of_landing(train, case, sheet), sheet.limit("greatest"))


RULES = (spring_follows_cam, landing_speed)
