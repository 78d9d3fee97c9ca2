"""The studs of a gland, and its flange."""

from __future__ import annotations

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Grade, Judgement, Limit, Sheet, rule
from speclint.facts import box_of, circle_of_studs, packing_in, rod_in
from speclint.handbook.bolted_joints import stud_stress, tightening
from speclint.handbook.materials import share_of_strength
from speclint.handbook.members import equivalent_stress
from speclint.specs import BoltedJoint, Gland, LoadCase
from speclint_joints.formulae.covers import gasket_lever
from speclint_joints.formulae.glands import bending_by_stud, greatest_share, packing_load, width_by_stud
from speclint_joints.inputs.holding import joint_holding
from speclint_joints.inputs.pressures import acting_pressure
from speclint_joints.inputs.studs import Studs, flank_angle, least_area_of, pitch, pitch_diameter, studs_of
from speclint_joints.sources import ASME_BENDING, SHIGLEY, VDI_TORSION

_UNEVEN = Limit(
    "uneven",
    "1.2",
    "ratio",
    COMMON_PRACTICE,
    "least ratio of the greatest stud load to the mean, of nuts that are drawn up one after the other",
)


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
    leaves_out="Bending of the studs, and friction of the packing on the box; the flange is judged by gland.flange.",
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
        _UNEVEN,
    ],
    edition=7,
)
def studs(gland: Gland, case: LoadCase, sheet: Sheet) -> Judgement:
    """Tension and torsion of the most heavily loaded stud, against proof stress.

    Nuts that are said to be drawn up more evenly than is done by hand are told, and counted at the least.
    """
    joint = joint_holding(gland, sheet)
    own = studs_of(joint, sheet)
    load = _load(gland, joint, _ring(gland, sheet), case, sheet)
    uneven, told = _uneven(gland, sheet)
    worst = sheet.work("F_1", greatest_share, k=uneven, F=load, n=own.n)
    area = least_area_of(joint, sheet, own)
    pull = sheet.work("sigma", stud_stress.tension, F=worst, A_s=area)
    stress = sheet.work("sigma_eq", equivalent_stress, sigma=pull, tau=_twist(own, area, worst, sheet))
    at = sheet.take("T_b", case.temperature_of(joint))
    proof = sheet.look_up("R_p", sheet.material_of(joint).proof_stress, of=joint, at=at, thickness=own.d)
    allowed = sheet.work("sigma_lim", share_of_strength, k=sheet.limit("share of proof"), R=proof)
    return sheet.worst(*told, sheet.at_most(stress, allowed))


def _uneven(gland: Gland, sheet: Sheet) -> tuple[float, list[Judgement]]:
    """Greatest stud load over the mean, no less than by hand, and what is told of one that is stated to be less."""
    stated, least = sheet.take("k", gland.tilt), sheet.limit(_UNEVEN.name, "k_0")
    told = sheet.at_least(stated, least).else_says(
        "nuts are said to be drawn up to {found} of the mean load at most, {limit} is the least"
    )
    return max(stated, least), [] if told.holds else [told]


def _ring(gland: Gland, sheet: Sheet) -> dict[str, float]:
    """Bore of the box and diameter of the rod, m, between which packing and steam press on the gland."""
    box = box_of(gland, sheet)
    rod = None if box is None else rod_in(box, sheet)
    drawn = box is not None and sheet.is_stated("bore of the box", box.bore)
    return {
        "D_b": sheet.take("D_b", box.bore if box is not None and drawn else gland.box),
        "D_r": sheet.take("D_r", gland.rod if rod is None else rod.diameter),
    }


def _load(gland: Gland, joint: BoltedJoint, ring: dict[str, float], case: LoadCase, sheet: Sheet) -> float:
    """The greater of packing and steam load; metallic packing is not compressed by the gland."""
    steam = sheet.work("F_s", packing_load, q=acting_pressure(joint, case, sheet), **ring)
    box = box_of(gland, sheet)
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


@rule(
    "gland.flange",
    title="The flange of a gland, bent between its most heavily loaded stud and the packing or steam, is stressed to "
    "no more than its allowable bending stress",
    wrong="flange of the gland bent to {found}, {limit} allowed",
    on=Gland,
    cases=("starting", "running", "test", "water"),
    grade=Grade.NONCONFORMITY,
    cites=[FIRST_PRINCIPLES, ASME_BENDING, COMMON_PRACTICE],
    why="A thin flange bends as its nuts are drawn up, and the gland cants and rubs on the rod, until it breaks.",
    leaves_out="The stud holes; what the nuts are drawn up beyond what packing or steam asks, where the flange stands "
    "on a ground face.",
    against=("break under load",),
    limits=[
        Limit("bending", "1.5", "ratio", ASME_BENDING, "allowable bending stress over allowable tension"),
        _UNEVEN,
    ],
    edition=2,
)
def flange(gland: Gland, case: LoadCase, sheet: Sheet) -> Judgement:
    """6 F_1 h/(b t²) where the flange leaves the nose in the box, on the width that the stud's load spreads to."""
    joint = joint_holding(gland, sheet)
    n, ring = float(sheet.count("n", joint.count)), _ring(gland, sheet)
    load = _load(gland, joint, ring, case, sheet)
    uneven, told = _uneven(gland, sheet)
    worst = sheet.work("F_1", greatest_share, k=uneven, F=load, n=n)
    nose = ring["D_b"]
    h = sheet.work("h", gasket_lever, D_b=circle_of_studs(joint, sheet), G=nose)
    width = sheet.work("b", width_by_stud, D=nose, n=n, s=sheet.take("s", joint.nut.across_flats), h=h)
    t = sheet.take("t", gland.flange_thickness)
    stress = sheet.work("sigma", bending_by_stud, F_1=worst, h=h, b=width, t=t)
    at = sheet.take("T", case.temperature_of(gland))
    tension = sheet.look_up("f", sheet.material_of(gland).allowable_tension, of=gland, at=at, wall=t)
    allowed = sheet.work("f_b", share_of_strength, k=sheet.limit("bending"), R=tension)
    return sheet.worst(*told, sheet.at_most(stress, allowed))


RULES = (studs, flange)
