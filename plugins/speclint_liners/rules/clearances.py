"""The piston at the ends of its stroke, and the axis of the bore when the block is hot."""

from __future__ import annotations

from typing import TYPE_CHECKING

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Grade, Judgement, Limit, Sheet, rule
from speclint.facts import (
    clearance_ratio,
    cold_clearance,
    greatest_cold_clearance,
    liners_of,
    pistons_in,
    rod_diameter,
    stroke_of,
    swept_volume,
    volume_of_passages,
    wear_along,
)
from speclint.handbook.fits import DRAWING_TEMPERATURE
from speclint.specs import CylinderBlock
from speclint_liners.formulae.ends import (
    axis_out_of_line,
    clearance_beside_hot_piston,
    clearance_left,
)
from speclint_liners.inputs.cylinders import bores_in_work, every_end
from speclint_liners.inputs.travel import hot_clearance, stretch
from speclint_liners.sources import AHRONS

if TYPE_CHECKING:
    from speclint.specs import Bore, CylinderEnd, LoadCase


@rule(
    "cylinder.end-clearance",
    title="The clearance from piston to both covers, with block, frame, rods and piston hot, worn and at speed, is not "
    "below its limit, and the cold clearance is within period practice",
    on=CylinderBlock,
    cases=("starting", "running", "drifting"),
    grade=Grade.HOLD,
    cites=[FIRST_PRINCIPLES, AHRONS.at("p. 98"), COMMON_PRACTICE],
    why="A piston that strikes its cover breaks the cylinder.",
    leaves_out="failed bearings, bending of the frame, the force of the steam, which shortens the rods, growth of a "
    "piston without a spec; the local code and a competent person decide",
    against=("foul",),
    against_on={"piston": ("foul",), "cylinder-cover": ("foul",)},
    limits=[
        Limit("hot", "3 mm", "length", COMMON_PRACTICE, "least clearance hot"),
        Limit(
            "cold_least", "1/4 in", "length", AHRONS.at("p. 98"), "least clearance cold by period practice"
        ),
        Limit(
            "cold_most", "3/8 in", "length", AHRONS.at("p. 98"), "greatest clearance cold by period practice"
        ),
    ],
    edition=8,
)
def end_clearance(block: CylinderBlock, case: LoadCase, sheet: Sheet) -> Judgement:
    """Cold clearance plus growth of rods, block, frame and piston, less stretch and wear; the cold one by practice."""
    pulled = stretch(block, case, sheet)

    def judge(end: CylinderEnd) -> Judgement:
        worn = wear_along(block, sheet.read("bore of the end", end.of_bore), sheet)
        cold, hot = hot_clearance(block, end, case, sheet)
        beside = _beside_hot_piston(block, end, hot, case, sheet)
        left = sheet.at_least(
            sheet.work("c_l", clearance_left, c_h=beside, u=pulled, w=worn), sheet.limit("hot")
        ).else_says("piston nears the cover of {item}: {found} left hot, {limit} wanted")
        most = greatest_cold_clearance(block, end, sheet)
        period = (
            sheet.at_least(cold, sheet.limit("cold_least")).else_says(
                "cold clearance of {item} {found}, {limit} wanted by practice"
            ),
            sheet.at_most(most, sheet.limit("cold_most")).else_says(
                "cold clearance of {item} {found}, no more than {limit} by practice"
            ),
        )
        return sheet.worst(left, *(one.graded(Grade.OBSERVATION) for one in period))

    return sheet.each(every_end(block, sheet), judge)


def _beside_hot_piston(
    block: CylinderBlock, end: CylinderEnd, hot: float, case: LoadCase, sheet: Sheet
) -> float:
    """The hot clearance with the growth of the piston, of each that is drawn in the bore."""
    bore = sheet.read("bore of the end", end.of_bore)
    for piston in (one for liner in liners_of(block, bore, sheet) for one in pistons_in(liner, sheet)):
        at = sheet.take("T_p", case.temperature_of(piston))
        hot = sheet.work(
            "c_p",
            clearance_beside_hot_piston,
            c=hot,
            L_p=sheet.take("L_p", piston.length),
            alpha_p=sheet.look_up("α_p", sheet.material_of(piston).expansion, of=piston, at=at),
            T_p=at,
            T_ref=DRAWING_TEMPERATURE,
        )
    return hot


@rule(
    "cylinder.clearance-volume",
    title="The clearance volume of each end, as a share of the swept volume, is within its limits",
    wrong="clearance volume of {item} {found}, where the limit is {limit}",
    on=CylinderBlock,
    grade=Grade.OBSERVATION,
    cites=[FIRST_PRINCIPLES, COMMON_PRACTICE],
    why="Steam that fills the clearance is lost at every stroke; with too little clearance, compression "
    "lifts the valves.",
    leaves_out="volume of valve pockets and relief valves unless stated with the passages",
    against=(),
    limits=[
        Limit("least", "4 %", "ratio", COMMON_PRACTICE, "least clearance volume"),
        Limit("most", "12 %", "ratio", COMMON_PRACTICE, "greatest clearance volume"),
        Limit("most_long", "14 %", "ratio", COMMON_PRACTICE, "greatest clearance volume with long passages"),
    ],
    edition=5,
)
def clearance_volume(block: CylinderBlock, sheet: Sheet) -> Judgement:
    """Passages and clearance in the bore over the swept volume, less the rod at the back end."""

    def judge(end: CylinderEnd) -> Judgement:
        new, _ = bores_in_work(block, sheet.read("bore of end", end.of_bore), sheet)
        d = sheet.take("d", new)
        back = sheet.read("side of end", end.side) == "back"
        rod = rod_diameter(block, sheet) if back else 0.0
        stroke = sheet.take("s", stroke_of(block, sheet, end.of_bore))
        swept = sheet.work("V_s", swept_volume, d=d, d_r=rod, s=stroke)
        passages = volume_of_passages(block, end, "V_p", sheet)
        least, most = (
            sheet.work(
                symbol, clearance_ratio, V_p=passages, d=d, d_r=rod, c=gap(block, end, sheet), V_s=swept
            )
            for symbol, gap in (("k_1", cold_clearance), ("k_2", greatest_cold_clearance))
        )
        long = sheet.read("long passages", end.long_passages)
        return sheet.worst(
            sheet.at_least(least, sheet.limit("least")),
            sheet.at_most(most, sheet.limit("most_long" if long else "most")),
        )

    return sheet.each(every_end(block, sheet), judge)


@rule(
    "cylinder.centre-line-hot",
    title="The axis of the hot bore is no farther off the centre line of the motion than the limit",
    wrong="hot axis of {item} {found} off the centre line, {limit} allowed",
    on=CylinderBlock,
    cases=("starting", "running"),
    grade=Grade.NONCONFORMITY,
    cites=[FIRST_PRINCIPLES, COMMON_PRACTICE],
    why="A bore out of line with slide bars and gland wears piston, rod and packing on one side.",
    leaves_out="growth of the frame, bowing of the block by uneven heat, height of the axis",
    against=(),
    against_on={
        "crosshead": ("wear",),
        "slide-bar": ("wear",),
        "stuffing-box": ("wear",),
        "piston-rod": ("wear",),
    },
    limits=[
        Limit("out_of_line", "0.3 mm", "length", COMMON_PRACTICE, "greatest distance off the centre line hot")
    ],
)
def centre_line_hot(block: CylinderBlock, case: LoadCase, sheet: Sheet) -> Judgement:
    """Growth from the frame face to the axis, less the cold offset."""
    if not block.bores:
        raise sheet.not_assessed(f"bores is not stated in {block.where.file}", block.where)
    at = sheet.take("T_b", case.temperature_of(block))
    alpha = sheet.look_up("α_b", sheet.material_of(block).expansion, of=block, at=at)

    def judge(bore: Bore) -> Judgement:
        away, set_to = sheet.take("a", bore.axis_from_frame), sheet.take("s", bore.cold_set)
        off = sheet.work(
            "m", axis_out_of_line, a=away, alpha=alpha, T=at, T_ref=DRAWING_TEMPERATURE, s=set_to
        )
        return sheet.at_most(off, sheet.limit("out_of_line"))

    return sheet.each(block.bores.values(), judge)


RULES = (end_clearance, clearance_volume, centre_line_hot)
