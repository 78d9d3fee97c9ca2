"""Cams: contact stress under the follower, and jumps in the lift law."""

from __future__ import annotations

import math

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Grade, Judgement, Limit, Sheet, rule
from speclint.equations import Metres, Pascals
from speclint.handbook.cams import NORTON, Follower, cam_law
from speclint.handbook.members import line_pressure, relative_radius
from speclint.handbook.tables import JOHNSON_CONTACT
from speclint.specs import Cam, LoadCase, Tappet
from speclint_valves.formulae.motion import (
    cam_radius_under_flat,
    cam_radius_under_roller,
    normal_load,
    valve_acceleration,
)
from speclint_valves.formulae.tables import modulus_of_pair
from speclint_valves.inputs.loads import Loaded, loaded, worked_tappet_load
from speclint_valves.inputs.train import SCAN, motion, ratio, train_of, valve_of

CRACKED = Limit(
    "cracked", "2 %", "ratio", COMMON_PRACTICE, "share of the lift at which steam no longer loads the valve"
)


class Touch:
    """The contact of cam and follower: their sizes and the modulus of the pair."""

    def __init__(self, cam: Cam, tappet: Tappet, sheet: Sheet) -> None:
        self.kind = sheet.read("follower", tappet.follower)
        self.base = sheet.take("R_b", cam.base_radius)
        flat = self.kind == "flat foot"
        self.radius: Metres = math.inf if flat else sheet.take("r", tappet.follower_radius)
        self.width = min(sheet.take("L_c", cam.width), sheet.take("L_t", tappet.face_width))
        one, other = sheet.material_of(cam), sheet.material_of(tappet)
        self.modulus = sheet.look_up("E*", modulus_of_pair, one=one, other=other)

    def pressure(self, load: Loaded, angle: float) -> Pascals:
        """Greatest contact stress at an angle of the cam."""
        at = load.cam.at(angle)
        F = load.tappet(at)
        if self.kind == "roller":
            F = normal_load(F_t=F, s_prime=at.slope, R_b=self.base, r=self.radius, s=at.lift)
            ρ = self._under_roller(at)
        else:
            ρ = cam_radius_under_flat(R_b=self.base, s=at.lift, κ=at.curvature)
        return line_pressure(
            F=F, L=self.width, R=relative_radius(R_1=ρ, R_2=self.radius), E_star=self.modulus
        )

    def worked(self, load: Loaded, angle: float, sheet: Sheet) -> Pascals:
        """Greatest contact stress at an angle of the cam, written on the sheet."""
        at, F = load.cam.at(angle), worked_tappet_load(load, angle, sheet)
        if self.kind == "roller":
            F = sheet.work(
                "F_n", normal_load, F_t=F, s_prime=at.slope, R_b=self.base, r=self.radius, s=at.lift
            )
            sizes = {"R_b": self.base, "r": self.radius, "s": at.lift}
            ρ = sheet.work("ρ", cam_radius_under_roller, s_prime=at.slope, κ=at.curvature, **sizes)
        else:
            ρ = sheet.work("ρ", cam_radius_under_flat, R_b=self.base, s=at.lift, κ=at.curvature)
        R = sheet.work("R", relative_radius, R_1=ρ, R_2=self.radius)
        return sheet.work("p_0", line_pressure, F=F, L=self.width, R=R, E_star=self.modulus)

    def _under_roller(self, at: Follower) -> Metres:
        return cam_radius_under_roller(
            R_b=self.base, r=self.radius, s=at.lift, s_prime=at.slope, κ=at.curvature
        )


@rule(
    "cam.contact-stress",
    title="The greatest contact stress of cam and follower is at most 1200 MPa on hardened steel, 900 "
    "MPa on chilled iron",
    on=Cam,
    cases=("starting", "running"),
    grade=Grade.NONCONFORMITY,
    cites=[JOHNSON_CONTACT.at("line contact, eq. 4.45"), COMMON_PRACTICE],
    why="a track that pits gets rough, wears through its hardened layer and then fails within weeks",
    leaves_out="edge loading, misalignment, and oil that fails to reach the track",
    limits=[
        Limit("hardened-steel", "1200 MPa", "stress", COMMON_PRACTICE, "hardened steel on hardened steel"),
        Limit("chilled-iron", "900 MPa", "stress", COMMON_PRACTICE, "chilled iron on hardened steel"),
        CRACKED,
    ],
)
def contact_stress(cam: Cam, case: LoadCase, sheet: Sheet) -> Judgement:
    """p_0 = √(F E*/(π L R)) over the whole lift: springs, inertia, friction, and steam until the valve cracks."""
    train = train_of(valve_of(cam, sheet), sheet)
    touch, load = Touch(cam, train.tappet, sheet), loaded(train, case, sheet)

    def pressure(angle: float) -> float:
        return touch.pressure(load, angle)

    angle = sheet.scan(
        "φ", "cam angle of the greatest pressure", pressure, 0.0, load.cam.duration, unit="rad"
    )
    hardened = sheet.read("contact", cam.contact) == "hardened steel on hardened steel"
    most = sheet.limit("hardened-steel" if hardened else "chilled-iron")
    return sheet.at_most(touch.worked(load, angle, sheet), most)


@rule(
    "cam.acceleration",
    title="The lift law of the cam has no jump in acceleration where it joins ramp or dwell",
    on=Cam,
    cases=("running",),
    grade=Grade.OBSERVATION,
    cites=[NORTON, FIRST_PRINCIPLES],
    why="a jump in acceleration makes the whole gear vibrate and excites the natural frequency of the spring",
    leaves_out="jumps that the rounding of a table of lifts hides",
)
def acceleration(cam: Cam, case: LoadCase, sheet: Sheet) -> Judgement:
    """The greatest accelerations in both directions, and whether the jerk of the law is infinite where it joins."""
    train = train_of(valve_of(cam, sheet), sheet)
    i, moved, ω = ratio(train, sheet), motion(cam, sheet), sheet.take("ω", case.rotational_speed)

    def accelerated(angle: float) -> float:
        return valve_acceleration(i=i, κ=moved.at(angle).curvature, ω=ω)

    end = moved.duration
    gained = sheet.scan(
        "φ_max", "cam angle of the greatest acceleration", accelerated, 0.0, end, unit="rad", steps=SCAN
    )
    sheet.work("a_max", valve_acceleration, i=i, κ=moved.at(gained).curvature, ω=ω)
    slowed = sheet.scan(
        "φ_min", "cam angle of the greatest slowing", accelerated, 0.0, end, unit="rad", find="least"
    )
    sheet.work("a_min", valve_acceleration, i=i, κ=moved.at(slowed).curvature, ω=ω)
    if cam.table:
        return sheet.states(
            True, "the lifts are stated as a table, and the curve through them has no jump in acceleration"
        )
    law = sheet.read("law of the cam", cam.law)
    if cam_law(law).infinite_jerk:
        return sheet.states(
            False, f"a {law} law jumps in acceleration where it joins ramp or dwell", where=cam.law.where
        )
    return sheet.states(True, f"a {law} law joins ramp and dwell without a jump in acceleration")


RULES = (contact_stress, acceleration)
