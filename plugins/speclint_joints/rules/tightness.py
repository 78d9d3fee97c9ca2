"""Tightness of a joint: gasket, ground face, separation, heat."""

from __future__ import annotations

from speclint import COMMON_PRACTICE, Grade, Judgement, Limit, NotKnown, Sheet, rule
from speclint.handbook.bolted_joints import gasket_materials, gaskets, loads
from speclint.handbook.members import tube_area
from speclint.specs import BoltedJoint, Gland, LoadCase
from speclint_joints.formulae.loads import load_of_all, pressure_on_face, times
from speclint_joints.formulae.preloads import share_of_load
from speclint_joints.inputs.preload import working_preload
from speclint_joints.inputs.seals import acting_pressure, gasket_ring, lift_per_stud
from speclint_joints.sources import ASME_APPENDIX_2, JINDAL, SHIGLEY, VDI_2230

_DEFERS = "the local code and a competent person decide."


def _not_a_gland(joint: BoltedJoint, sheet: Sheet) -> None:
    if isinstance(sheet.follow(joint.holds), Gland):
        raise sheet.not_applicable("a gland compresses packing and closes no faced joint")


def _sealed_by(seal: str, joint: BoltedJoint, sheet: Sheet) -> None:
    """End the rule unless the joint has this seal."""
    _not_a_gland(joint, sheet)
    stated = sheet.read("seal", joint.seal)
    if stated != seal:
        raise sheet.not_applicable(f"the joint is sealed by a {stated}, not by a {seal}")


@rule(
    "joint.gasket-load",
    title="The least preload of all studs is at least the seating load of the gasket cold and its operating "
    "load hot",
    on=BoltedJoint,
    cases=("starting", "running", "test", "water"),
    grade=Grade.HOLD,
    cites=[
        ASME_APPENDIX_2.at("2-5(c)(1) and (2), Table 2-5.1 and Table 2-5.2"),
        VDI_2230.at("section 5.4.2"),
    ],
    why="A gasket that was never seated, or is too loose when hot, leaks; the jet of steam then cuts it out.",
    leaves_out=f"Bowing of the flange, and the maker's own factors for the gasket; {_DEFERS}",
)
def gasket_load(joint: BoltedJoint, case: LoadCase, sheet: Sheet) -> Judgement:
    """Seating and operating load of the classic form against all studs at their least preload."""
    _sealed_by("gasket", joint, sheet)
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
    return sheet.worst(sheet.at_least(cold, seating), sheet.at_least(hot, operating))


@rule(
    "joint.face-pressure",
    title="The contact pressure of a ground face, at least preload and hot, is at least its multiple of the "
    "steam pressure",
    on=BoltedJoint,
    cases=("starting", "running", "test", "water"),
    grade=Grade.HOLD,
    cites=[COMMON_PRACTICE, VDI_2230.at("section 5.5.4")],
    why="Metal faces seal steam only while their contact pressure is well above its pressure.",
    leaves_out=f"Flatness and finish of the faces, and bowing between studs; {_DEFERS}",
    limits=[
        Limit(
            "times the pressure", "3", "ratio", COMMON_PRACTICE, "least contact pressure over steam pressure"
        )
    ],
)
def face_pressure(joint: BoltedJoint, case: LoadCase, sheet: Sheet) -> Judgement:
    """Load left on the face under pressure, over its area, against a multiple of the pressure."""
    _sealed_by("ground face", joint, sheet)
    working = working_preload(joint, case, sheet)
    studs = working.stack.studs
    pressure = acting_pressure(joint, case, sheet)
    lift = lift_per_stud(joint, case, sheet, studs)
    left = sheet.work("F_m", loads.clamping_load_left, F_i=working.low, Phi=working.Phi, P=lift)
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
    on=BoltedJoint,
    cases=("starting", "running", "test", "water"),
    grade=Grade.HOLD,
    cites=[SHIGLEY.at("eq. 8-30"), VDI_2230.at("section 5.5.1"), JINDAL.at("Ex. 9-4"), COMMON_PRACTICE],
    why="Once the faces separate, the studs carry the whole load of every stroke, and they break one after "
    "another.",
    leaves_out="Prying by a flange that bows, and pressures above those that the relief valves allow; "
    f"{_DEFERS}",
    limits=[Limit("factor", "1.2", "ratio", COMMON_PRACTICE, "least factor against separation")],
)
def separation(joint: BoltedJoint, case: LoadCase, sheet: Sheet) -> Judgement:
    """Least hot preload over the share of the pressure load that unloads the faces."""
    _not_a_gland(joint, sheet)
    working = working_preload(joint, case, sheet)
    lift = lift_per_stud(joint, case, sheet, working.stack.studs)
    factor = sheet.work("n_p", loads.separation_factor, F_i=working.low, Phi=working.Phi, P=lift)
    return sheet.at_least(factor, sheet.limit("factor"))


@rule(
    "joint.thermal",
    title="The least preload in heating, running and cooling is at least its share of the same preload cold",
    on=BoltedJoint,
    cases=("warming", "running", "standing-hot", "cooling"),
    grade=Grade.NONCONFORMITY,
    cites=[VDI_2230.at("eq. 118"), COMMON_PRACTICE],
    why="Where the stud grows more than the parts it clamps, the joint is loose just when the steam is on.",
    leaves_out="Growth of a thin gasket, and stress above proof stress, which joint.stud-stress judges.",
    limits=[
        Limit(
            "share left", "0.5", "ratio", COMMON_PRACTICE, "least share of the cold preload that remains hot"
        )
    ],
)
def thermal(joint: BoltedJoint, case: LoadCase, sheet: Sheet) -> Judgement:
    """Least preload hot against a share of the same preload cold, with stiffnesses at temperature."""
    _not_a_gland(joint, sheet)
    working = working_preload(joint, case, sheet)
    share = sheet.limit("share left")
    return sheet.at_least(working.low, sheet.work("F_share", share_of_load, nu=share, F=working.settled_low))


@rule(
    "joint.gasket-rating",
    title="Steam pressure, steam temperature and their product do not exceed the rating of the gasket",
    on=BoltedJoint,
    cases=("starting", "running"),
    grade=Grade.NONCONFORMITY,
    cites=[COMMON_PRACTICE],
    why="A gasket sheet above its rated temperature turns brittle and is blown out in pieces.",
    leaves_out="The maker's own rating, which takes precedence over the handbook's, and the loss of "
    "strength with age.",
)
def gasket_rating(joint: BoltedJoint, case: LoadCase, sheet: Sheet) -> Judgement:
    """Steam pressure, steam temperature and their product against the gasket's table."""
    _sealed_by("gasket", joint, sheet)
    name = sheet.read("gasket", joint.gasket.name)
    pressure = acting_pressure(joint, case, sheet)
    exhaust = sheet.read("pressure", joint.pressure) == "exhaust"
    steam = sheet.take("T_s", case.exhaust_temperature if exhaust else case.live_temperature)
    hottest = sheet.look_up("T_max", gasket_materials.hottest, gasket=name)
    greatest = sheet.look_up("p_max", gasket_materials.greatest_pressure, gasket=name)
    judged = [sheet.no_hotter(steam, hottest), sheet.at_most(pressure, greatest)]
    if _has_product_limit(name):
        product = sheet.work("pT", gasket_materials.pressure_temperature, p=pressure, T=steam)
        judged.append(
            sheet.at_most(
                product, sheet.look_up("pT_max", gasket_materials.greatest_pressure_temperature, gasket=name)
            )
        )
    return sheet.worst(*judged)


def _has_product_limit(gasket: str) -> bool:
    """Sheet gaskets have one, metal ones none; an unknown gasket has been refused before."""
    try:
        gasket_materials.greatest_pressure_temperature(gasket)
    except NotKnown:
        return False
    return True


RULES = (gasket_load, face_pressure, separation, thermal, gasket_rating)
