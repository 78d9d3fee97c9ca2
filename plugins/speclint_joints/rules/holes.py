"""Depth of the tapped hole, and the metal round it."""

from __future__ import annotations

from speclint import COMMON_PRACTICE, Grade, Judgement, Limit, Sheet, rule
from speclint.facts import edge_of_hole, metal_tapped
from speclint.handbook.bolted_joints import FED_STD_H28
from speclint.handbook.cylinders import bore_hoop_stress
from speclint.handbook.materials import share_of_strength
from speclint.handbook.threads import nominal_diameter
from speclint.specs import BoltedJoint, ChamberCover, CylinderCover, Gland
from speclint_joints.formulae.holes import (
    bursting_pressure,
    depth_needed,
    least_edge_distance,
    ring_round_hole,
)
from speclint_joints.inputs.engagement import left_by_tap, tapped_engagement
from speclint_joints.inputs.preload import tightened_preload
from speclint_joints.inputs.studs import flank_angle, pitch_diameter, studs_of
from speclint_joints.sources import ASME_BENDING


@rule(
    "joint.hole-depth",
    title="A tapped hole, blind or through, is at least as deep as set-in, engagement and what the tap leaves, "
    "a hole that opens into steam is sealed, and a blind one in a cover ends within its plate",
    wrong="tapped hole {found} deep, {limit} needed",
    on=BoltedJoint,
    grade=Grade.NONCONFORMITY,
    cites=[COMMON_PRACTICE],
    why="A stud that bottoms splits the block or is never tight; one that comes through into steam always "
    "leaks.",
    leaves_out="The drill point, and the strength of the metal below a blind hole.",
    against=("leak",),
    edition=3,
)
def hole_depth(joint: BoltedJoint, sheet: Sheet) -> Judgement:
    """Depth against engagement and what the tap leaves; a hole through into steam is sealed, a blind one is blind."""
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
    parts = {"s": sheet.take("s", joint.set_in), "L_e": sheet.take("L_e", hole.engagement)}
    needed = sheet.work("L_n", depth_needed, r=left_by_tap(joint, sheet), **parts)
    L = sheet.take("L", hole.depth)
    judged.append(sheet.at_least(L, needed))
    tapped = sheet.follow(joint.screwed_into)
    if opens_into == "nothing" and isinstance(tapped, CylinderCover | ChamberCover):
        within = sheet.at_least(sheet.take("t", tapped.thickness), L)
        judged.append(within.else_says("hole said to be blind is {limit} deep in a plate of {found}"))
    return sheet.worst(*judged)


@rule(
    "joint.edge",
    title="The edge distance of the tapped holes is at least its limit in diameters, and the local stress "
    "round them does not exceed the allowable local stress",
    on=BoltedJoint,
    grade=Grade.NONCONFORMITY,
    cites=[COMMON_PRACTICE, FED_STD_H28.at("form of thread", memory=True), ASME_BENDING],
    why="The flanks of a loaded thread force the hole open; with little metal round it the edge cracks.",
    leaves_out="Stress from steam in the neighbouring bore, and rows of holes.",
    against=("break under load",),
    limits=[
        Limit(
            "diameters", "0.7", "ratio", COMMON_PRACTICE, "least distance from centre to edge over diameter"
        ),
        Limit("local", "1.5", "ratio", ASME_BENDING, "allowable local stress over allowable tension"),
    ],
    edition=7,
)
def edge(joint: BoltedJoint, sheet: Sheet) -> Judgement:
    """Distance in diameters, and hoop stress of the ring of metal round the thread.

    To the nearest edge, by the circle, the bore or recess and the face of the block where they are drawn. A hole that
    breaks through the edge has no metal round it to be judged.
    """
    if sheet.read("fastener", joint.fastener) != "stud":
        raise sheet.not_applicable("bolts go through both parts")
    if isinstance(sheet.follow(joint.holds), Gland):
        d = sheet.look_up("d", nominal_diameter, designation=sheet.read("thread", joint.thread))
        return _far_enough(joint, sheet, d)
    studs, e = studs_of(joint, sheet), edge_of_hole(joint, sheet)
    far_enough = _far_enough(joint, sheet, studs.d)
    outside = sheet.work("D", ring_round_hole, e=e)
    if outside <= studs.d:
        return far_enough  # the hole breaks through the edge: no metal is left round it
    tightened = tightened_preload(joint, sheet, studs)
    tapped = sheet.follow(joint.screwed_into)
    alpha = sheet.look_up("α", flank_angle, designation=studs.thread)
    d_2 = sheet.look_up("d_2", pitch_diameter, designation=studs.thread)
    length = tapped_engagement(joint, sheet)
    wedge = sheet.work("q", bursting_pressure, F=tightened.high, alpha=alpha, d_2=d_2, L_e=length)
    stress = sheet.work("sigma_h", bore_hoop_stress, p=wedge, d=studs.d, D=outside)
    at = sheet.take("T_0", joint.tightening.temperature)
    tension = sheet.look_up("f", metal_tapped(joint, sheet).allowable_tension, of=tapped, at=at)
    local = sheet.work("f_l", share_of_strength, k=sheet.limit("local"), R=tension)
    return sheet.worst(
        far_enough,
        sheet.at_most(stress, local).else_says(
            "metal round the tapped hole stressed to {found}, {limit} allowed"
        ),
    )


def _far_enough(joint: BoltedJoint, sheet: Sheet, d: float) -> Judgement:
    least = sheet.work("e_low", least_edge_distance, d=d, k=sheet.limit("diameters"))
    return sheet.at_least(edge_of_hole(joint, sheet), least).else_says(
        "tapped hole {found} from the edge, {limit} wanted"
    )


RULES = (hole_depth, edge)
