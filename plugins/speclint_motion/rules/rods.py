"""The piston rod: buckling, finish for its packing."""

from __future__ import annotations

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Grade, Judgement, Limit, Sheet, rule
from speclint.equations import Metres, Newtons, Ratio
from speclint.facts import STIFFEST_ENDS, length_in_compression
from speclint.handbook.bolted_joints import pressure_load
from speclint.handbook.members import (
    buckling_factor,
    critical_load,
    crushing_strength,
    end_fixity,
    radius_of_gyration,
    rankine_constant,
    rankine_gordon_load,
    round_area,
    round_second_moment,
    slenderness,
)
from speclint.handbook.tables import SHIGLEY
from speclint.specs import LoadCase, PistonRod, StuffingBox
from speclint_motion.formulae.tables import (
    greatest_roughness,
    least_hardness,
)
from speclint_motion.inputs.thrust import (
    ALONG_STROKE,
    PUSH,
    Cylinder,
    boiler_pressure,
    cylinder_of,
    greatest,
    piston_of,
    relief_pressure,
)

DEFERS = "the local code and a competent person decide"


@rule(
    "rod.buckling",
    title="The buckling load of the piston rod is at least its factor times the greatest compressive load",
    wrong="factor against buckling {found}, {limit} wanted",
    on=PistonRod,
    cases=("starting", "running", "water"),
    edition=8,
    grade=Grade.HOLD,
    cites=[SHIGLEY.at("sections 4-12 and 4-13"), COMMON_PRACTICE],
    why="A rod that buckles once stays bent: it cuts its packing, scores its guide and breaks soon after.",
    leaves_out="a rod out of line, loose in its piston, worn thin under its packing or bored hollow; the "
    f"formula of Rankine and Gordon is only reported; the greater mass of pistons for later bores; {DEFERS}",
    against=("break under load",),
    limits=[Limit("factor", "5", "ratio", COMMON_PRACTICE, "least factor against buckling")],
)
def buckling(rod: PistonRod, case: LoadCase, sheet: Sheet) -> Judgement:
    """Johnson's or Euler's load by slenderness and stated ends, over the greatest compressive load at the last bore.

    The pin of the crosshead lets its end turn: ends stated as held better than that count as this.
    """
    piston = piston_of(rod, sheet)
    cylinder = cylinder_of(piston, sheet)
    d, L = sheet.take("d", rod.diameter), length_in_compression(rod, piston, cylinder.block, sheet)
    A, second = sheet.work("A_r", round_area, d=d), sheet.work("I", round_second_moment, d=d)
    K = max(
        sheet.look_up("K", end_fixity, ends=sheet.read("ends", rod.ends)),
        sheet.look_up("K_0", end_fixity, ends=STIFFEST_ENDS),
    )
    at, material = sheet.take("T_r", case.temperature_of(rod)), sheet.material_of(rod)
    F_c = sheet.work(
        "F_c",
        critical_load,
        E=sheet.look_up("E", material.modulus, of=rod, at=at),
        S_y=sheet.look_up("R_p", material.proof_stress, of=rod, at=at, thickness=d),
        A=A,
        I=second,
        K=K,
        L=L,
    )
    _rankine_gordon(d, K, L, sheet)
    n = sheet.work("n", buckling_factor, F_c=F_c, F=_push(cylinder, case, sheet))
    return sheet.at_least(n, sheet.limit("factor"))


def _push(cylinder: Cylinder, case: LoadCase, sheet: Sheet) -> Newtons:
    """The greatest compressive load: of steam and inertia over a revolution, or of the water before the piston."""
    if case.name == "water":
        p = relief_pressure(cylinder, case, sheet, sides=("front",))
        return sheet.work("F_w", pressure_load, p=p, D=cylinder.D)
    steam = sheet.work("F_p", pressure_load, p=boiler_pressure(case, sheet), D=cylinder.D)
    return max(steam, greatest("F_θ", "compressive load", ALONG_STROKE, cylinder, case, sheet, sense=PUSH))


def _rankine_gordon(d: Metres, K: Ratio, L: Metres, sheet: Sheet) -> None:
    """The period's formula with the constants of mild steel, reported only."""
    A, second = sheet.work("A_r", round_area, d=d), sheet.work("I", round_second_moment, d=d)
    λ = sheet.work("λ", slenderness, K=K, L=L, r=sheet.work("i", radius_of_gyration, I=second, A=A))
    sheet.work(
        "F_RG",
        rankine_gordon_load,
        sigma_c=sheet.look_up("σ_RG", crushing_strength, material="mild steel"),
        A=A,
        a=sheet.look_up("a", rankine_constant, material="mild steel"),
        lambda_=λ,
    )


@rule(
    "rod.finish",
    title="The roughness of the piston rod does not exceed, and its hardness is not below, that required by "
    "its packing",
    on=PistonRod,
    grade=Grade.OBSERVATION,
    cites=[COMMON_PRACTICE, FIRST_PRINCIPLES],
    why="A rough rod wears its packing away, and a soft one is scored by it.",
    leaves_out="straightness, waviness, and lay of the grinding; the packing maker's data sheet takes "
    "precedence over the table",
    against=("wear",),
)
def finish(rod: PistonRod, sheet: Sheet) -> Judgement:
    """Roughness and hardness against the table, for each stuffing box that the rod runs in."""
    boxes = sheet.belonging_to(rod, StuffingBox)
    if not boxes:
        raise sheet.not_assessed(f"no stuffing box is stated to seal {rod.id}", rod.where)
    rough = sheet.take("Ra", rod.roughness)
    if sheet.is_stated("hardness", rod.hardness):
        hard = sheet.take("HB", rod.hardness)
    else:
        hard = sheet.look_up("HB", sheet.material_of(rod).hardness, of=rod)

    def judge(box: StuffingBox) -> Judgement:
        packing = sheet.read(f"packing of {box.id}", box.packing)
        return sheet.worst(
            sheet.at_most(rough, sheet.look_up("Ra_max", greatest_roughness, packing=packing)).else_says(
                "roughness of the rod {found}, the packing of {item} allows {limit}"
            ),
            sheet.at_least(hard, sheet.look_up("HB_min", least_hardness, packing=packing)).else_says(
                "hardness of the rod {found}, the packing of {item} wants {limit}"
            ),
        )

    return sheet.each(boxes, judge)


RULES = (buckling, finish)
