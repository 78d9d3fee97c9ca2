"""Cams: contact stress under the follower, and jumps in the lift law."""

from __future__ import annotations

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Grade, Judgement, Limit, Sheet, rule
from speclint.facts import CRACKED, motion, ratio_of_train, speed_of_gear, valve_acceleration
from speclint.handbook.cams import NORTON, cam_law
from speclint.handbook.tables import JOHNSON_CONTACT
from speclint.specs import Cam, LoadCase
from speclint_valves.formulae.cams import jump_of_speed
from speclint_valves.inputs.loads import Loaded, Phase, loaded, worked_struck_load, worked_tappet_load
from speclint_valves.inputs.touch import Pressed, Touch, borne
from speclint_valves.inputs.train import SCAN, train_of


@rule(
    "cam.contact-stress",
    edition=10,
    title="The greatest contact stress of cam and follower is at most 1200 MPa on steel hardened deep enough, 900 "
    "MPa on chilled iron, and the shakedown limit on any other metal",
    on=Cam,
    cases=("starting", "running"),
    grade=Grade.NONCONFORMITY,
    cites=[
        JOHNSON_CONTACT.at("line contact, eq. 4.45"),
        JOHNSON_CONTACT.at("section 9.2, rolling without friction"),
        COMMON_PRACTICE,
    ],
    why="a track that pits gets rough, wears through its hardened layer and then fails within weeks",
    leaves_out="the core under a hardened skin (cam.core-under-its-skin); edge loading, misalignment, and oil that "
    "fails to reach the track",
    against=("wear",),
    against_on={"tappet": ("wear",)},
    limits=[
        Limit("hardened-steel", "1200 MPa", "stress", COMMON_PRACTICE, "hardened steel"),
        Limit("chilled-iron", "900 MPa", "stress", COMMON_PRACTICE, "chilled iron"),
        Limit(
            "depth",
            "2",
            "ratio",
            COMMON_PRACTICE,
            "least depth of the hardened skin, in depths of the greatest shear",
        ),
        CRACKED,
    ],
)
def contact_stress(cam: Cam, case: LoadCase, sheet: Sheet) -> Judgement:
    """p_0 = √(F E*/(π L R)) over the whole lift and at the impact that takes up the clearance.

    Against the limit of hardened steel, whose layer must reach below the greatest shear, of chilled iron, or 4 R_p/√3.
    """
    train = train_of(cam, sheet)
    touch, load = Touch(cam, train.tappet, sheet), loaded(train, case, sheet)

    touched = [(_pressed(touch, load, phase, sheet), phase.mark) for phase in load.phases]
    struck = touch.worked(load.cam.at(load.taken_up), worked_struck_load(load, sheet), sheet)
    return sheet.worst(
        *(
            judged
            for pressed, when in (*touched, (struck, "b"))
            for part, index in ((cam, "c"), (train.tappet, "t"))
            for judged in borne(pressed, part, index + when, case, sheet)
        )
    )


def _pressed(touch: Touch, load: Loaded, phase: Phase, sheet: Sheet) -> Pressed:
    """The contact where its pressure is greatest in one part of the lift."""

    def pressure(angle: float) -> float:
        return touch.pressure(load, phase.steam, angle)

    angle = sheet.scan(
        f"φ_{phase.mark}",
        f"cam angle of the greatest pressure {phase.when}",
        pressure,
        phase.start,
        phase.stop,
        unit="rad",
        steps=phase.steps,
    )
    return touch.worked(load.cam.at(angle), worked_tappet_load(load, phase, angle, sheet), sheet)


@rule(
    "cam.acceleration",
    edition=3,
    title="The lift law of the cam has no jump in acceleration where it joins ramp or dwell, and at the foot of a ramp "
    "a jump in tappet speed of at most 0.5 m/s",
    wrong="tappet speed jumps by {found} at a ramp, {limit} allowed",
    on=Cam,
    cases=("running",),
    grade=Grade.OBSERVATION,
    cites=[NORTON, FIRST_PRINCIPLES],
    why="a jump in acceleration makes the whole gear vibrate and excites the natural frequency of the spring",
    leaves_out="jumps that the rounding of a table of lifts hides",
    against=(),
    limits=[
        Limit(
            "jump",
            "0.5 m/s",
            "speed",
            COMMON_PRACTICE,
            "greatest jump in tappet speed, as for landing",
        )
    ],
)
def acceleration(cam: Cam, case: LoadCase, sheet: Sheet) -> Judgement:
    """The greatest accelerations in both directions, the jump in speed at either ramp, and any infinite jerk."""
    train = train_of(cam, sheet)
    i, moved, ω = ratio_of_train(train, sheet), motion(cam, sheet), speed_of_gear(train.valve, case, sheet)

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
    foot = max(0.0, end, key=lambda angle: abs(moved.at(angle).slope))
    jump = sheet.work("v_j", jump_of_speed, s_prime=moved.at(foot).slope, ω=ω)
    return sheet.worst(sheet.at_most(jump, sheet.limit("jump")), _joined(cam, sheet))


def _joined(cam: Cam, sheet: Sheet) -> Judgement:
    """Whether the law jumps in acceleration where it joins ramp or dwell."""
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
