"""Tightness of a joint: gasket, ground face, separation, heat."""

from __future__ import annotations

from speclint import COMMON_PRACTICE, Grade, Judgement, Limit, Sheet, rule
from speclint.facts import gasket_ring, load_of_all
from speclint.handbook.bolted_joints import gasket_materials, gaskets, loads
from speclint.handbook.members import tube_area
from speclint.specs import BoltedJoint, LoadCase
from speclint_joints.formulae.loads import pressure_on_face, times
from speclint_joints.formulae.preloads import share_of_load
from speclint_joints.inputs.preload import working_preload
from speclint_joints.inputs.pressures import acting_pressure
from speclint_joints.inputs.seals import lift_per_stud, not_a_gland, sealed_by
from speclint_joints.sources import CODE_GASKETS, JINDAL, SHIGLEY, VDI_2230

_DEFERS = "the local code and a competent person decide."


@rule(
    "joint.gasket-load",
    title="The least preload of all studs is at least the seating load of the gasket cold and its operating "
    "load hot",
    on=BoltedJoint,
    cases=("starting", "running", "test", "water"),
    grade=Grade.HOLD,
    cites=[
        CODE_GASKETS,
        VDI_2230.at("section 5.4.2"),
    ],
    why="A gasket that was never seated, or is too loose when hot, leaks; the jet of steam then cuts it out.",
    leaves_out=f"Bowing of the flange, and the maker's own factors for the gasket; {_DEFERS}",
    against=("leak",),
    edition=7,
)
def gasket_load(joint: BoltedJoint, case: LoadCase, sheet: Sheet) -> Judgement:
    """Seating and operating load of the classic form against all studs at their least preload."""
    sealed_by("gasket", joint, sheet)
    working = working_preload(joint, case, sheet)
    n = working.stack.studs.n
    name = sheet.read("gasket", joint.gasket.name)
    y = sheet.look_up("y", gasket_materials.seating_stress, gasket=name)
    m = sheet.look_up("m", gasket_materials.gasket_factor, gasket=name)
    ring = gasket_ring(joint, sheet)
    pressure = acting_pressure(joint, case, sheet)
    cold = sheet.work("W_cold", load_of_all, F=working.settled_low, n=n)
    hot = sheet.work("W_hot", load_of_all, F=working.low, n=n)
    seating = sheet.work("W_m2", gaskets.seating_bolt_load, G=ring.G, b=ring.b, y=y)
    operating = sheet.work("W_m1", gaskets.operating_bolt_load, G=ring.G, b=ring.b, m=m, p=pressure)
    return sheet.worst(
        sheet.at_least(cold, seating).else_says("studs bed the gasket in with {found}, {limit} wanted"),
        sheet.at_least(hot, operating).else_says("gasket slack hot: studs press {found}, {limit} wanted"),
    )


@rule(
    "joint.face-pressure",
    title="The contact pressure of a ground face, at least preload and hot, is at least its multiple of the "
    "steam pressure",
    wrong="ground face slack hot: pressed by {found}, {limit} wanted",
    on=BoltedJoint,
    cases=("starting", "running", "test", "water"),
    grade=Grade.HOLD,
    cites=[COMMON_PRACTICE, VDI_2230.at("section 5.5.4")],
    why="Metal faces seal steam only while their contact pressure is well above its pressure.",
    leaves_out=f"Flatness and finish of the faces, and bowing between studs; {_DEFERS}",
    against=("leak",),
    limits=[
        Limit(
            "times the pressure", "3", "ratio", COMMON_PRACTICE, "least contact pressure over steam pressure"
        )
    ],
    edition=7,
)
def face_pressure(joint: BoltedJoint, case: LoadCase, sheet: Sheet) -> Judgement:
    """Load left on the face under pressure, over its area, against a multiple of the pressure."""
    sealed_by("ground face", joint, sheet)
    working = working_preload(joint, case, sheet)
    studs = working.stack.studs
    pressure = acting_pressure(joint, case, sheet)
    lift = lift_per_stud(joint, case, sheet, studs)
    left = sheet.work("F_m", loads.clamping_load_left, F_i=working.low, Phi=working.Phi_face, P=lift)
    outside, inside = (
        sheet.take("D_o", joint.ground_face.outside),
        sheet.take("D_i", joint.ground_face.inside),
    )
    area = sheet.work("A_f", tube_area, D=outside, d=inside)
    pressed = sheet.work("q", pressure_on_face, F=left, n=studs.n, A=area)
    least = sheet.work("q_low", times, k=sheet.limit("times the pressure"), p=pressure)
    return sheet.at_least(pressed, least)


@rule(
    "joint.separation",
    title="The factor against separation of the joint is not below its limit, in service, on test and with "
    "water in the cylinder",
    wrong="studs let the joint part at {found} times the load, {limit} wanted",
    on=BoltedJoint,
    cases=("starting", "running", "test", "water"),
    grade=Grade.HOLD,
    cites=[SHIGLEY.at("eq. 8-30"), VDI_2230.at("section 5.5.1"), JINDAL.at("Ex. 9-4"), COMMON_PRACTICE],
    why="Once the faces separate, the studs carry the whole load of every stroke, and they break one after "
    "another.",
    leaves_out="Prying by a flange that bows, and pressures above those that the relief valves allow; "
    f"{_DEFERS}",
    against=("leak",),
    limits=[Limit("factor", "1.2", "ratio", COMMON_PRACTICE, "least factor against separation")],
    edition=7,
)
def separation(joint: BoltedJoint, case: LoadCase, sheet: Sheet) -> Judgement:
    """Least hot preload over what of the pressure load unloads the faces: all, where its entry is not stated."""
    not_a_gland(joint, sheet)
    working = working_preload(joint, case, sheet)
    lift = lift_per_stud(joint, case, sheet, working.stack.studs)
    factor = sheet.work("n_p", loads.separation_factor, F_i=working.low, Phi=working.Phi_face, P=lift)
    return sheet.at_least(factor, sheet.limit("factor"))


@rule(
    "joint.thermal",
    title="The least preload in heating, running and cooling is at least its share of the same preload cold",
    wrong="studs slacken hot: {found} of preload left, {limit} wanted",
    on=BoltedJoint,
    cases=("warming", "running", "standing-hot", "cooling"),
    grade=Grade.NONCONFORMITY,
    cites=[VDI_2230.at("eq. 118"), COMMON_PRACTICE],
    why="Where the stud grows more than the parts it clamps, the joint is loose just when the steam is on.",
    leaves_out="Growth of a thin gasket, and stress above proof stress, which joint.stud-stress judges.",
    against=("leak", "loosen"),
    limits=[
        Limit(
            "share left", "0.5", "ratio", COMMON_PRACTICE, "least share of the cold preload that remains hot"
        )
    ],
    edition=4,
)
def thermal(joint: BoltedJoint, case: LoadCase, sheet: Sheet) -> Judgement:
    """Least preload hot against a share of the same preload cold, with stiffnesses at temperature."""
    not_a_gland(joint, sheet)
    working = working_preload(joint, case, sheet)
    share = sheet.limit("share left")
    return sheet.at_least(working.low, sheet.work("F_share", share_of_load, nu=share, F=working.settled_low))


RULES = (gasket_load, face_pressure, separation, thermal)
