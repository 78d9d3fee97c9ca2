"""Preload of a stud at tightening, and its stress in service."""

from __future__ import annotations

from speclint import COMMON_PRACTICE, Grade, Judgement, Limit, Sheet, rule
from speclint.handbook.bolted_joints import loads, stud_stress, tightening
from speclint.handbook.materials import share_of_strength
from speclint.handbook.members import equivalent_stress
from speclint.specs import BoltedJoint, Gland, LoadCase
from speclint_joints.formulae.loads import least_area
from speclint_joints.formulae.preloads import (
    friction_of_coefficient,
    preload_without_torsion,
    torsion_in_service,
)
from speclint_joints.inputs.preload import TORQUE_METHODS, Tightened, tightened_preload, working_preload
from speclint_joints.inputs.seals import lift_per_stud
from speclint_joints.inputs.studs import Studs, flank_angle, least_area_of, pitch, pitch_diameter, studs_of
from speclint_joints.sources import ASTM_A193, EN_10269, ISO_898_1, SHIGLEY, TORQUE, VDI_PRELOAD, VDI_TORSION

_NO_TORSION = "hydraulic tensioner"


@rule(
    "joint.preload",
    title="The greatest preload does not exceed that at which tension and torsion reach their share of "
    "proof stress, and the scatter of the tightening method does not exceed its limit",
    on=BoltedJoint,
    grade=Grade.NONCONFORMITY,
    cites=[VDI_PRELOAD, TORQUE, COMMON_PRACTICE],
    why="The same torque loads one stud a third more than its neighbour; both extremes must be safe.",
    leaves_out="Bending of the stud under the nut, and galling of threads; tightening trials on the joint "
    "itself take precedence.",
    against=("break under load",),
    limits=[
        Limit(
            "share of proof",
            "0.9",
            "ratio",
            VDI_PRELOAD,
            "greatest share of proof stress during tightening",
        ),
        Limit(
            "scatter", "0.35", "ratio", COMMON_PRACTICE, "greatest scatter of preload in a joint under steam"
        ),
    ],
    edition=4,
)
def preload(joint: BoltedJoint, sheet: Sheet) -> Judgement:
    """Scatter of the method; greatest preload against that at which tension and torsion reach proof."""
    held = sheet.follow(joint.holds)
    if isinstance(held, Gland):
        raise sheet.not_applicable(
            "a gland is tightened by feel on its packing; gland.studs judges its studs"
        )
    studs = studs_of(joint, sheet)
    sheet.read("lubrication", joint.tightening.lubrication)
    tightened = tightened_preload(joint, sheet, studs)
    area = least_area_of(joint, sheet, studs)
    at = sheet.take("T_0", joint.tightening.temperature)
    proof = sheet.look_up("R_p", sheet.material_of(joint).proof_stress, at=at, thickness=studs.d)
    share = sheet.limit("share of proof", "nu")
    bears = sheet.at_most(
        tightened.high, _permissible(joint, sheet, studs, tightened, nu=share, R_p02=proof, A_s=area)
    ).else_says("studs tightened to {found}, they bear {limit}")
    return sheet.worst(
        bears,
        sheet.at_most(tightened.scatter, sheet.limit("scatter")).else_says(
            "preload scatters by a share of {found}, {limit} allowed"
        ),
    )


def _permissible(
    joint: BoltedJoint, sheet: Sheet, studs: Studs, tightened: Tightened, **like: float
) -> float:
    if tightened.method == _NO_TORSION:
        return sheet.work("F_max", preload_without_torsion, **like)
    twist = _twist(joint, sheet, studs, tightened)
    return sheet.work("F_max", stud_stress.permissible_preload, **like, **twist)


def _twist(joint: BoltedJoint, sheet: Sheet, studs: Studs, tightened: Tightened) -> dict[str, float]:
    """Pitch, pitch diameter, friction and flank angle of the thread, at the friction that gives most preload."""
    coefficient = sheet.take("K", joint.tightening.torque_coefficient)
    if tightened.method in TORQUE_METHODS:
        torque = sheet.take("T", joint.tightening.torque)
        coefficient = sheet.work(
            "K_low", tightening.torque_coefficient, T=torque, F=tightened.high, d=studs.d
        )
    P = sheet.look_up("P", pitch, designation=studs.thread)
    d_2 = sheet.look_up("d_2", pitch_diameter, designation=studs.thread)
    alpha = sheet.look_up("α", flank_angle, designation=studs.thread)
    face, hole = sheet.take("D_w", joint.nut.face), sheet.take("d_h", joint.hole)
    D_h = sheet.work("D_h", tightening.mean_bearing_diameter, D_w=face, d_h=hole)
    like = {"d": studs.d, "P": P, "d_2": d_2, "alpha": alpha, "D_h": D_h}
    mu = sheet.work("mu", friction_of_coefficient, K=coefficient, **like)
    return {"P": P, "d_2": d_2, "mu_t": mu, "alpha": alpha}


@rule(
    "joint.stud-stress",
    title="The stress of the studs from greatest preload, pressure, heat and remaining torsion together "
    "does not exceed its share of proof stress",
    wrong="studs stressed to {found}, {limit} allowed",
    on=BoltedJoint,
    cases=("warming", "starting", "running", "cooling", "test", "water"),
    grade=Grade.HOLD,
    cites=[VDI_TORSION, SHIGLEY.at("eq. 8-24"), COMMON_PRACTICE],
    why="A stud that yields when hot has lost its preload when cold, and the joint then opens at the next "
    "stroke.",
    leaves_out="Bending of studs and creep; the local code and a competent person decide on bolting of "
    "pressure parts.",
    against=("break under load",),
    limits=[
        Limit(
            "share, torque",
            "0.8",
            "ratio",
            COMMON_PRACTICE,
            "share of proof stress in service, tightened by torque",
        ),
        Limit(
            "share, measured",
            "0.9",
            "ratio",
            COMMON_PRACTICE,
            "share of proof stress in service, preload measured",
        ),
        Limit("share, hot", "0.7", "ratio", COMMON_PRACTICE, "share of proof stress in service, hot stud"),
        Limit(
            "hot",
            "300 °C",
            "temperature",
            COMMON_PRACTICE,
            "metal temperature from which a stud counts as hot",
        ),
        Limit(
            "torsion left",
            "0.5",
            "ratio",
            VDI_TORSION,
            "share of the tightening torsion that remains in service",
        ),
    ],
    edition=7,
)
def service_stress(joint: BoltedJoint, case: LoadCase, sheet: Sheet) -> Judgement:
    """Tension of greatest hot preload and share of the pressure load, with half the torsion, against proof stress."""
    if isinstance(sheet.follow(joint.holds), Gland):
        raise sheet.not_applicable("a gland's studs carry its packing; gland.studs judges them")
    working = working_preload(joint, case, sheet)
    studs = working.stack.studs
    lift = lift_per_stud(joint, case, sheet, studs)
    load = sheet.work("F_b", loads.stud_load, F_i=working.high, Phi=working.Phi, P=lift)
    area = sheet.work("A", least_area, A_s=studs.A_s, A_d=working.stack.shank_area)
    pull = sheet.work("sigma", stud_stress.tension, F=load, A_s=area)
    twist = _torsion_left(joint, sheet, studs, working.tightened, area)
    stress = sheet.work("sigma_eq", equivalent_stress, sigma=pull, tau=twist)
    at = sheet.take("T_b", case.temperature_of(joint))
    proof = sheet.look_up("R_p", sheet.material_of(joint).proof_stress, at=at, thickness=studs.d)
    limit = sheet.work("sigma_lim", share_of_strength, k=_share(sheet, working.tightened, at), R=proof)
    return sheet.at_most(stress, limit)


def _torsion_left(joint: BoltedJoint, sheet: Sheet, studs: Studs, tightened: Tightened, area: float) -> float:
    if tightened.method == _NO_TORSION:
        return 0.0
    twist = _twist(joint, sheet, studs, tightened)
    torque = sheet.work("M_t", tightening.thread_torque, F=tightened.high, **twist)
    across = sheet.work("d_s", stud_stress.stress_diameter, A_s=area)
    whole = sheet.work("tau_0", stud_stress.torsion_shear, M_t=torque, d_s=across)
    return sheet.work("tau", torsion_in_service, k=sheet.limit("torsion left"), tau_0=whole)


def _share(sheet: Sheet, tightened: Tightened, at: float) -> float:
    by_method = "share, torque" if tightened.method in TORQUE_METHODS else "share, measured"
    return sheet.limit("share, hot" if at >= sheet.limit("hot") else by_method)


@rule(
    "joint.bolting-material",
    title="The studs are of a standard bolting steel, and the metal is no hotter than its limit for bolting and its "
    "creep limit",
    on=BoltedJoint,
    cases=("starting", "running", "drifting", "standing-hot"),
    grade=Grade.HOLD,
    cites=[EN_10269, ASTM_A193, ISO_898_1.at("scope, 150 °C"), COMMON_PRACTICE],
    why="An ordinary high-tensile stud relaxes in the heat, a little every day, until the joint blows.",
    leaves_out="Relaxation over years below the creep limit; the local code and a competent person decide on bolting "
    "materials.",
    against=("loosen", "burn"),
    limits=[
        Limit(
            "no creep",
            "350 °C",
            "temperature",
            COMMON_PRACTICE,
            "temperature limit up to which a steel needs no creep limit beside it",
        )
    ],
    edition=4,
)
def bolting_material(joint: BoltedJoint, case: LoadCase, sheet: Sheet) -> Judgement:
    """A bolting steel, not hotter than the highest temperature of its standard and the first of its creep table."""
    material = sheet.material_of(joint)
    if material.family != "bolting-steel":
        says = f"{material.title} is not a bolting steel of a standard"
        return sheet.states(False, says, where=joint.material.where)
    at = sheet.take("T_b", case.temperature_of(joint))
    hottest = sheet.look_up("T_max", material.temperature_limit, use="bolting")
    judged = [sheet.no_hotter(at, hottest).else_says("studs at {found}, their steel is for {limit}")]
    if hottest > sheet.limit("no creep") or material.holds("time-dependent-from"):
        judged.append(
            sheet.no_hotter(at, sheet.look_up("T_c", material.time_dependent_from, of=joint)).else_says(
                "studs creep at {found}, from {limit} on"
            )
        )
    return sheet.worst(*judged)


RULES = (preload, service_stress, bolting_material)
