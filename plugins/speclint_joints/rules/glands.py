"""The studs of a gland."""

from __future__ import annotations

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Grade, Judgement, Limit, Sheet, rule
from speclint.facts import box_of, packing_in, rod_in
from speclint.handbook.bolted_joints import stud_stress, tightening
from speclint.handbook.materials import share_of_strength
from speclint.handbook.members import equivalent_stress
from speclint.specs import BoltedJoint, Gland, LoadCase
from speclint_joints.formulae.glands import greatest_share, packing_load
from speclint_joints.inputs.holding import joint_holding
from speclint_joints.inputs.pressures import acting_pressure
from speclint_joints.inputs.studs import Studs, flank_angle, least_area_of, pitch, pitch_diameter, studs_of
from speclint_joints.sources import SHIGLEY, VDI_TORSION


@rule(
    "gland.studs",
    title="The stress of the most heavily loaded gland stud, from packing or steam load and torsion, does "
    "not exceed its share of proof stress",
    wrong="gland stud stressed to {found}, {limit} allowed",
    on=Gland,
    cases=("starting", "running", "test", "water"),
    grade=Grade.NONCONFORMITY,
    cites=[FIRST_PRINCIPLES, SHIGLEY.at("eqs. 8-1 and 8-5"), VDI_TORSION, COMMON_PRACTICE],
    why="A gland is tightened by feel, one nut ahead of the other; a stud that breaks lets the packing out.",
    leaves_out="Bending of the gland's flange and of the studs, and friction of the packing on the box.",
    against=("break under load",),
    limits=[
        Limit("share of proof", "0.7", "ratio", COMMON_PRACTICE, "greatest share of proof stress"),
        Limit(
            "thread friction",
            "0.2",
            "ratio",
            COMMON_PRACTICE,
            "coefficient of friction in the thread, tightened dry and hot",
        ),
    ],
    edition=6,
)
def studs(gland: Gland, case: LoadCase, sheet: Sheet) -> Judgement:
    """Tension and torsion of the most heavily loaded stud, against proof stress."""
    joint = joint_holding(gland, sheet)
    own = studs_of(joint, sheet)
    load = _load(gland, joint, case, sheet)
    worst = sheet.work("F_1", greatest_share, k=sheet.take("k", gland.tilt), F=load, n=own.n)
    area = least_area_of(joint, sheet, own)
    pull = sheet.work("sigma", stud_stress.tension, F=worst, A_s=area)
    stress = sheet.work("sigma_eq", equivalent_stress, sigma=pull, tau=_twist(own, area, worst, sheet))
    at = sheet.take("T_b", case.temperature_of(joint))
    proof = sheet.look_up("R_p", sheet.material_of(joint).proof_stress, of=joint, at=at, thickness=own.d)
    return sheet.at_most(
        stress, sheet.work("sigma_lim", share_of_strength, k=sheet.limit("share of proof"), R=proof)
    )


def _load(gland: Gland, joint: BoltedJoint, case: LoadCase, sheet: Sheet) -> float:
    """The greater of packing and steam load; metallic packing is not compressed by the gland."""
    box = box_of(gland, sheet)
    rod = None if box is None else rod_in(box, sheet)
    drawn = box is not None and sheet.is_stated("bore of the box", box.bore)
    ring = {
        "D_b": sheet.take("D_b", box.bore if box is not None and drawn else gland.box),
        "D_r": sheet.take("D_r", gland.rod if rod is None else rod.diameter),
    }
    steam = sheet.work("F_s", packing_load, q=acting_pressure(joint, case, sheet), **ring)
    packing = None if box is None else packing_in(box, sheet)
    if (packing or sheet.read("packing", gland.packing)) == "metallic":
        return steam
    pressed = sheet.work("F_q", packing_load, q=sheet.take("q", gland.packing_pressure), **ring)
    return max(pressed, steam)


def _twist(own: Studs, area: float, load: float, sheet: Sheet) -> float:
    P = sheet.look_up("P", pitch, designation=own.thread)
    d_2 = sheet.look_up("d_2", pitch_diameter, designation=own.thread)
    alpha = sheet.look_up("α", flank_angle, designation=own.thread)
    mu = sheet.limit("thread friction", "mu")
    torque = sheet.work("M_t", tightening.thread_torque, F=load, P=P, d_2=d_2, mu_t=mu, alpha=alpha)
    across = sheet.work("d_s", stud_stress.stress_diameter, A_s=area)
    return sheet.work("tau", stud_stress.torsion_shear, M_t=torque, d_s=across)


RULES = (studs,)
