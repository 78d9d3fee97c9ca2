"""The nuts of the bolts that hold a block on its frames."""

from __future__ import annotations

from speclint import COMMON_PRACTICE, Grade, Judgement, Rule, Sheet, rule
from speclint.handbook.bolted_joints import FED_STD_H28
from speclint.handbook.members import load_with_factor
from speclint.specs import FrameFastening
from speclint_joints.formulae.preloads import breaking_load
from speclint_joints.inputs.studs import studs_of
from speclint_joints.inputs.thread_ends import LIMITS_OF_THREADS, ThreadEnd, nut_matches, strippings
from speclint_joints.sources import ISO_898_2, VDI_STRIPPING


@rule(
    "frame.nuts-outlast-bolts",
    title="The threads of bolt and nut of a pad strip at no less than the breaking load of the bolt by the margin, "
    "unless the nut matches its bolt in height and strength",
    on=FrameFastening,
    grade=Grade.NONCONFORMITY,
    cites=[FED_STD_H28, VDI_STRIPPING, ISO_898_2, COMMON_PRACTICE],
    why="a bolt that breaks is seen and renewed; a nut whose thread has stripped stands in its place and holds nothing",
    leaves_out="the head or the nut at the other end, wear of threads, and loss of strength by heat, of which the pads "
    "have little",
    against=("break under load",),
    limits=LIMITS_OF_THREADS,
)
def nuts_outlast_bolts(fastening: FrameFastening, sheet: Sheet) -> Judgement:
    """Stripping loads of both threads, the worst within their limits, against the breaking load of the bolt."""
    bolts, nut = studs_of(fastening, sheet), fastening.nut
    at = sheet.take("T_0", fastening.tightening.temperature)
    steel, metal = sheet.material_of(fastening), sheet.material_named("the nut", nut.material)
    strength = sheet.look_up("R_m", steel.tensile_strength, of=fastening, at=at, thickness=bolts.d)
    other = sheet.look_up("R_n", metal.tensile_strength, at=at)
    end = ThreadEnd(
        "the nut", "n", sheet.take("L_n", nut.engagement), sheet.take("s_n", nut.across_flats), metal
    )
    if nut_matches(fastening, end, sheet, bolts, other, strength):
        return sheet.states(True, "the nut matches its bolt in height, width and strength")
    breaking = sheet.work("F_m", breaking_load, R_m=strength, A_s=bolts.A_s)
    broken = sheet.work("F_break", load_with_factor, x=sheet.limit("margin"), F=breaking)
    judged = [
        sheet.at_least(strips, broken)
        .else_says(f"{thread} strips at {{found}}, {{limit}} wanted to outlast the bolt")
        .pointing_at(nut.where)
        for thread, strips in strippings(end, sheet, bolts, steel, strength, other)
    ]
    return sheet.worst(*judged)


RULES: tuple[Rule, ...] = (nuts_outlast_bolts,)
