"""Engagement of the threads at both ends of a stud."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

from speclint import COMMON_PRACTICE, Grade, Judgement, Limit, Sheet, rule
from speclint.facts import edge_of_hole, metal_tapped
from speclint.handbook.bolted_joints import (
    FED_STD_H28,
    inner_thread_bending_factor,
    loads,
    nut_widening_factor,
    outer_thread_bending_factor,
    shear_strength,
    shear_strength_ratio,
    stripping_load_with_factors,
    thread_strength_ratio,
)
from speclint.handbook.materials import Material
from speclint.handbook.members import load_with_factor
from speclint.handbook.threads import external_stripping_area, internal_stripping_area
from speclint.specs import BoltedJoint, Gland, LoadCase
from speclint_joints.formulae.holes import engaged_diameters, ring_round_hole
from speclint_joints.formulae.preloads import breaking_load
from speclint_joints.inputs.engagement import tapped_engagement
from speclint_joints.inputs.preload import working_preload
from speclint_joints.inputs.seals import lift_per_stud
from speclint_joints.inputs.studs import Studs, studs_of
from speclint_joints.sources import ISO_898_2, VDI_STRIPPING

#: The group of the table of shear strengths to which a family of metals belongs.
_GROUPS = {
    "grey-iron": "grey iron",
    "ductile-iron": "spheroidal iron",
    "stainless-austenitic": "austenitic steel",
    "stainless-martensitic": "steel",
}
#: A diameter in floating-point arithmetic.
_ROUNDING = 1e-9


@dataclass(frozen=True, slots=True)
class _End:
    """One end of a stud: what its thread is in, how much of it is engaged and how much metal stands round it, m."""

    called: str
    mark: str
    length: float
    round_it: float
    material: Material


def _group(material: Material, sheet: Sheet) -> str:
    found = _GROUPS.get(material.family, "steel" if "steel" in material.family else "")
    if not found:
        raise sheet.not_assessed(f"the handbook has no shear strength of {material.title}")
    return found


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
    limits=[
        Limit("margin", "1.2", "ratio", COMMON_PRACTICE, "least stripping load over the load it must hold"),
        Limit(
            "matching nut", "1", "ratio", COMMON_PRACTICE, "least height of a matching nut over the diameter"
        ),
        Limit(
            "flats of a matching nut",
            "1.45",
            "ratio",
            COMMON_PRACTICE,
            "least width across flats over the diameter",
        ),
    ],
    edition=8,
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
        matches = end.mark == "n" and _matches(joint, end, sheet, studs, other, strength)
        for thread, strips in _strippings(end, sheet, studs, steel, strength, other):
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
            if not matches:
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


def _ends(joint: BoltedJoint, sheet: Sheet) -> Iterator[_End]:
    """The nut, and the tapped hole of a stud."""
    nut = joint.nut
    length, flats = sheet.take("L_n", nut.engagement), sheet.take("s_n", nut.across_flats)
    steel = sheet.material_named("the nut", nut.material)
    yield _End("the nut", "n", length, flats, steel)
    if sheet.read("fastener", joint.fastener) == "stud":
        length = tapped_engagement(joint, sheet)
        across = sheet.work("s_e", ring_round_hole, e=edge_of_hole(joint, sheet))
        yield _End("the tapped hole", "e", length, across, metal_tapped(joint, sheet))


def _matches(
    joint: BoltedJoint, end: _End, sheet: Sheet, studs: Studs, other: float, strength: float
) -> bool:
    """Whether a nut is high, wide and strong enough for its stud to break first, as standard nuts are proved to be."""
    high = end.length >= sheet.limit("matching nut") * studs.d * (1 - _ROUNDING)
    wide = end.round_it >= sheet.limit("flats of a matching nut") * studs.d * (1 - _ROUNDING)
    of_one_steel = sheet.read("material of the nut", joint.nut.material) == sheet.read(
        "material", joint.material
    )
    return high and wide and (of_one_steel or other >= strength)


def _strippings(
    end: _End, sheet: Sheet, studs: Studs, steel: Material, strength: float, other: float
) -> Iterator[tuple[str, float]]:
    """Load that strips the stud's own thread and that of the nut or hole."""
    mark, length = end.mark, end.length
    sheet.work(f"k_{mark}", engaged_diameters, L_e=length, d=studs.d)
    outer = sheet.look_up(f"A_b{mark}", external_stripping_area, designation=studs.thread, length=length)
    inner = sheet.look_up(f"A_{mark}", internal_stripping_area, designation=studs.thread, length=length)
    widens = sheet.work(f"C_1{mark}", nut_widening_factor, s=end.round_it, d=studs.d)
    ratio = sheet.work(f"R_S{mark}", thread_strength_ratio, R_n=other, A_n=inner, R_b=strength, A_b=outer)
    bends = sheet.work(f"C_3{mark}", inner_thread_bending_factor, R_S=ratio)
    own = sheet.look_up("C_2", outer_thread_bending_factor)
    for called, name, metal, R_m, area, factor in (
        ("thread of the stud", f"b{mark}", steel, strength, outer, own),
        ("thread", mark, end.material, other, inner, bends),
    ):
        share = sheet.look_up(f"r_{name}", shear_strength_ratio, material=_group(metal, sheet))
        shear = sheet.work(f"tau_{name}", shear_strength, r=share, R_m=R_m)
        load = sheet.work(f"F_{name}", stripping_load_with_factors, tau_B=shear, A=area, C_1=widens, C=factor)
        yield called, load


def _named(thread: str, end: _End, joint: BoltedJoint, judged: Judgement) -> Judgement:
    """The same judgement, naming the thread and the end that it is of."""
    of = f"{thread} in {end.called}" if "stud" in thread else f"{thread} of {end.called}"
    says = f"{of}: {judged.says}" if judged.says else ""
    stated = joint.nut.engagement if end.mark == "n" else joint.tapped.engagement
    return replace(judged, says=says, wrong=f"{of} {judged.wrong}").pointing_at(stated.where)


RULES = (engagement,)
