"""Engagement of the threads at both ends of a stud."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import COMMON_PRACTICE, Grade, Judgement, Sheet, replace, rule
from speclint.facts import edge_of_hole, metal_tapped
from speclint.handbook.bolted_joints import (
    FED_STD_H28,
    loads,
)
from speclint.handbook.members import load_with_factor
from speclint.specs import BoltedJoint, Gland, LoadCase
from speclint_joints.formulae.holes import ring_round_hole
from speclint_joints.formulae.preloads import breaking_load
from speclint_joints.inputs.engagement import tapped_engagement
from speclint_joints.inputs.preload import working_preload
from speclint_joints.inputs.seals import lift_per_stud
from speclint_joints.inputs.studs import Studs, studs_of
from speclint_joints.inputs.thread_ends import LIMITS_OF_THREADS, ThreadEnd, nut_matches, strippings
from speclint_joints.sources import ISO_898_2, VDI_STRIPPING


@rule(
    "joint.engagement",
    title="The stripping load of every thread exceeds both the greatest load and the breaking load of the stud by the "
    "margin; a nut that matches its stud in height and strength need only exceed the former",
    on=BoltedJoint,
    cases=("starting", "running", "test", "water"),
    grade=Grade.NONCONFORMITY,
    gravest=Grade.HOLD,
    cites=[FED_STD_H28, VDI_STRIPPING, ISO_898_2, COMMON_PRACTICE],
    why="A broken stud is noticed and drilled out; a stripped hole fails without warning and spoils the block.",
    leaves_out="Loss of tensile strength when hot, wear of threads, the head or nut at the far end of a bolt, and "
    "the greatest load of a gland's studs, which gland.studs works; the local code and a competent person decide.",
    against=("break under load",),
    limits=LIMITS_OF_THREADS,
    edition=9,
)
def engagement(joint: BoltedJoint, case: LoadCase, sheet: Sheet) -> Judgement:
    """Stripping loads of stud, hole and nut, worst threads, against greatest and breaking load of the stud."""
    margin = sheet.limit("margin")
    studs, held = _most(joint, case, sheet, margin)
    at = sheet.take("T_0", joint.tightening.temperature)
    steel = sheet.material_of(joint)
    strength = sheet.look_up("R_m", steel.tensile_strength, of=joint, at=at, thickness=studs.d)
    breaking = sheet.work("F_m", breaking_load, R_m=strength, A_s=studs.A_s)
    broken = sheet.work("F_break", load_with_factor, x=margin, F=breaking)
    judged = []
    for end in _ends(joint, sheet):
        other = sheet.look_up(f"R_{end.mark}", end.material.tensile_strength, at=at)
        matching = end.mark == "n" and nut_matches(joint, end, sheet, studs, other, strength)
        for thread, strips in strippings(end, sheet, studs, steel, strength, other):
            if held is not None:
                judged.append(
                    _named(
                        thread,
                        end,
                        joint,
                        sheet.at_least(strips, held)
                        .else_says("strips at {found}, {limit} to be held")
                        .graded(Grade.HOLD),
                    )
                )
            if not matching:
                judged.append(
                    _named(
                        thread,
                        end,
                        joint,
                        sheet.at_least(strips, broken).else_says(
                            "strips at {found}, {limit} wanted to outlast the stud"
                        ),
                    )
                )
    if not judged:
        raise sheet.not_applicable("the nuts match the bolts of the gland, which gland.studs judges")
    return sheet.worst(*judged)


def _most(joint: BoltedJoint, case: LoadCase, sheet: Sheet, margin: float) -> tuple[Studs, float | None]:
    """The studs, and the greatest load of one with its margin; of a gland's gland.studs works it, and this does not."""
    if isinstance(sheet.follow(joint.holds), Gland):
        return studs_of(joint, sheet), None
    working = working_preload(joint, case, sheet)
    studs = working.stack.studs
    lift = lift_per_stud(joint, case, sheet, studs)
    greatest = sheet.work("F_b", loads.stud_load, F_i=working.high, Phi=working.Phi, P=lift)
    return studs, sheet.work("F_need", load_with_factor, x=margin, F=greatest)


def _ends(joint: BoltedJoint, sheet: Sheet) -> Iterator[ThreadEnd]:
    """The nut, and the tapped hole of a stud."""
    nut = joint.nut
    length, flats = sheet.take("L_n", nut.engagement), sheet.take("s_n", nut.across_flats)
    steel = sheet.material_named("the nut", nut.material)
    yield ThreadEnd("the nut", "n", length, flats, steel)
    if sheet.read("fastener", joint.fastener) == "stud":
        length = tapped_engagement(joint, sheet)
        across = sheet.work("s_e", ring_round_hole, e=edge_of_hole(joint, sheet))
        yield ThreadEnd("the tapped hole", "e", length, across, metal_tapped(joint, sheet))


def _named(thread: str, end: ThreadEnd, joint: BoltedJoint, judged: Judgement) -> Judgement:
    """The same judgement, naming the thread and the end that it is of."""
    of = f"{thread} in {end.called}" if "stud" in thread else f"{thread} of {end.called}"
    says = f"{of}: {judged.says}" if judged.says else ""
    stated = joint.nut.engagement if end.mark == "n" else joint.tapped.engagement
    return replace(judged, says=says, wrong=f"{of} {judged.wrong}").pointing_at(stated.where)


RULES = (engagement,)
