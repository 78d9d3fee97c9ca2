"""Engagement of the threads, depth of the tapped hole, and the metal round it."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import COMMON_PRACTICE, Grade, Judgement, Limit, Sheet, rule
from speclint.handbook.bolted_joints import (
    FED_STD_H28,
    loads,
    shear_strength,
    shear_strength_ratio,
    stripping_load,
)
from speclint.handbook.cylinders import bore_hoop_stress
from speclint.handbook.materials import Material, share_of_strength
from speclint.handbook.members import load_with_factor
from speclint.handbook.threads import external_stripping_area, internal_stripping_area
from speclint.specs import BoltedJoint, Gland, LoadCase
from speclint_joints.formulae.holes import (
    bursting_pressure,
    depth_needed,
    engaged_diameters,
    least_edge_distance,
    ring_round_hole,
)
from speclint_joints.formulae.preloads import breaking_load
from speclint_joints.inputs.preload import tightened_preload, working_preload
from speclint_joints.inputs.seals import lift_per_stud
from speclint_joints.inputs.studs import flank_angle, nominal_diameter, pitch_diameter, studs_of
from speclint_joints.sources import ASME_BENDING, VDI_2230

#: The group of the table of shear strengths to which a family of metals belongs.
_GROUPS = {
    "grey-iron": "grey iron",
    "ductile-iron": "spheroidal iron",
    "stainless-austenitic": "austenitic steel",
    "stainless-martensitic": "steel",
}


def _group(material: Material, sheet: Sheet) -> str:
    found = _GROUPS.get(material.family, "steel" if "steel" in material.family else "")
    if not found:
        raise sheet.not_assessed(f"the handbook has no shear strength of {material.title}")
    return found


@rule(
    "joint.engagement",
    title="The stripping load of every thread exceeds both the greatest load and the breaking load of the "
    "stud by the margin",
    on=BoltedJoint,
    cases=("starting", "running", "test", "water"),
    grade=Grade.NONCONFORMITY,
    gravest=Grade.HOLD,
    cites=[FED_STD_H28, VDI_2230.at("section 5.5.5"), COMMON_PRACTICE],
    why="A broken stud is noticed and drilled out; a stripped hole fails without warning and spoils the "
    "block.",
    leaves_out="Loss of tensile strength when hot, and wear of threads; the local code and a competent "
    "person decide.",
    limits=[
        Limit("margin", "1.2", "ratio", COMMON_PRACTICE, "least stripping load over the load it must hold")
    ],
)
def engagement(joint: BoltedJoint, case: LoadCase, sheet: Sheet) -> Judgement:
    """Stripping loads of stud, hole and nut at least thread overlap, against greatest and breaking load of the stud."""
    if isinstance(sheet.follow(joint.holds), Gland):
        raise sheet.not_applicable("a gland's studs carry only its packing; gland.studs judges them")
    working = working_preload(joint, case, sheet)
    studs = working.stack.studs
    lift = lift_per_stud(joint, case, sheet, studs)
    greatest = sheet.work("F_b", loads.stud_load, F_i=working.high, Phi=working.Phi, P=lift)
    at = sheet.take("T_0", joint.tightening.temperature)
    strength = sheet.look_up(
        "R_m", sheet.material_of(joint).tensile_strength, of=joint, at=at, thickness=studs.d
    )
    breaking = sheet.work("F_m", breaking_load, R_m=strength, A_s=studs.A_s)
    margin = sheet.limit("margin")
    held = sheet.work("F_need", load_with_factor, x=margin, F=greatest)
    broken = sheet.work("F_break", load_with_factor, x=margin, F=breaking)
    judged = []
    for strips in _strippings(joint, sheet, studs.thread, studs.d, strength, at):
        judged.append(sheet.at_least(strips, held).graded(Grade.HOLD))
        judged.append(sheet.at_least(strips, broken))
    return sheet.worst(*judged)


def _strippings(
    joint: BoltedJoint, sheet: Sheet, thread: str, d: float, strength: float, at: float
) -> Iterator[float]:
    """Load that strips each thread at each end."""
    stud = sheet.material_of(joint)
    ends = [("n", joint.nut.engagement, sheet.material_named("the nut", joint.nut.material))]
    if sheet.read("fastener", joint.fastener) == "stud":
        ends.append(("e", joint.tapped.engagement, sheet.material_of(sheet.follow(joint.screwed_into))))
    for mark, stated, other in ends:
        length = sheet.take(f"L_{mark}", stated)
        sheet.work(f"k_{mark}", engaged_diameters, L_e=length, d=d)
        outer = sheet.look_up(f"A_b{mark}", external_stripping_area, designation=thread, length=length)
        inner = sheet.look_up(f"A_{mark}", internal_stripping_area, designation=thread, length=length)
        other_strength = sheet.look_up(f"R_{mark}", other.tensile_strength, at=at)
        yield _strips(stud, strength, outer, sheet, f"b{mark}")
        yield _strips(other, other_strength, inner, sheet, mark)


def _strips(material: Material, strength: float, area: float, sheet: Sheet, mark: str) -> float:
    ratio = sheet.look_up(f"r_{mark}", shear_strength_ratio, material=_group(material, sheet))
    shear = sheet.work(f"tau_{mark}", shear_strength, r=ratio, R_m=strength)
    return sheet.work(f"F_{mark}", stripping_load, tau_B=shear, A=area)


@rule(
    "joint.hole-depth",
    title="A blind tapped hole is at least as deep as set-in, engagement and run-out together, and a hole "
    "that opens into steam is sealed",
    on=BoltedJoint,
    grade=Grade.NONCONFORMITY,
    cites=[COMMON_PRACTICE],
    why="A stud that bottoms splits the block or is never tight; one that comes through into steam always "
    "leaks.",
    leaves_out="The drill point, and the strength of the metal below a blind hole.",
)
def hole_depth(joint: BoltedJoint, sheet: Sheet) -> Judgement:
    """Depth against engagement and run-out; a hole through into steam is sealed."""
    if sheet.read("fastener", joint.fastener) != "stud":
        raise sheet.not_applicable("bolts go through both parts")
    hole = joint.tapped
    opens_into = sheet.read("hole opens into", hole.opens_into)
    sealed = opens_into != "steam" or sheet.read("sealed", hole.sealed) != "none"
    says = (
        "no tapped hole leaks steam past its stud"
        if sealed
        else "the hole opens into steam and is not sealed"
    )
    judged = [sheet.states(sealed, says, where=hole.opens_into.where)]
    if opens_into == "nothing":
        parts = {"s": sheet.take("s", joint.set_in), "L_e": sheet.take("L_e", hole.engagement)}
        needed = sheet.work("L_n", depth_needed, r=sheet.take("r", hole.run_out), **parts)
        judged.append(sheet.at_least(sheet.take("L", hole.depth), needed))
    return sheet.worst(*judged)


@rule(
    "joint.edge",
    title="The edge distance of the tapped holes is at least its limit in diameters, and the local stress "
    "round them does not exceed the allowable local stress",
    on=BoltedJoint,
    grade=Grade.NONCONFORMITY,
    cites=[COMMON_PRACTICE, FED_STD_H28.at("form of thread"), ASME_BENDING],
    why="The flanks of a loaded thread force the hole open; with little metal round it the edge cracks.",
    leaves_out="Stress from steam in the neighbouring bore, and rows of holes.",
    limits=[
        Limit(
            "diameters", "0.7", "ratio", COMMON_PRACTICE, "least distance from centre to edge over diameter"
        ),
        Limit("local", "1.5", "ratio", ASME_BENDING, "allowable local stress over allowable tension"),
    ],
)
def edge(joint: BoltedJoint, sheet: Sheet) -> Judgement:
    """Distance in diameters, and hoop stress of the ring of metal round the thread."""
    if sheet.read("fastener", joint.fastener) != "stud":
        raise sheet.not_applicable("bolts go through both parts")
    if isinstance(sheet.follow(joint.holds), Gland):
        d = sheet.look_up("d", nominal_diameter, designation=sheet.read("thread", joint.thread))
        return _far_enough(joint, sheet, d)
    studs = studs_of(joint, sheet)
    tightened = tightened_preload(joint, sheet, studs)
    tapped = sheet.follow(joint.screwed_into)
    alpha = sheet.look_up("α", flank_angle, designation=studs.thread)
    d_2 = sheet.look_up("d_2", pitch_diameter, designation=studs.thread)
    length = sheet.take("L_e", joint.tapped.engagement)
    wedge = sheet.work("q", bursting_pressure, F=tightened.high, alpha=alpha, d_2=d_2, L_e=length)
    outside = sheet.work("D", ring_round_hole, e=sheet.take("e", joint.edge_distance))
    stress = sheet.work("sigma_h", bore_hoop_stress, p=wedge, d=studs.d, D=outside)
    at = sheet.take("T_0", joint.tightening.temperature)
    tension = sheet.look_up("f", sheet.material_of(tapped).allowable_tension, of=tapped, at=at)
    local = sheet.work("f_l", share_of_strength, k=sheet.limit("local"), R=tension)
    return sheet.worst(_far_enough(joint, sheet, studs.d), sheet.at_most(stress, local))


def _far_enough(joint: BoltedJoint, sheet: Sheet, d: float) -> Judgement:
    least = sheet.work("e_low", least_edge_distance, d=d, k=sheet.limit("diameters"))
    return sheet.at_least(sheet.take("e", joint.edge_distance), least)


RULES = (engagement, hole_depth, edge)
