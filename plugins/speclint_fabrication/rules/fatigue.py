"""Fatigue of welds over the strokes of the engine's life."""

from __future__ import annotations

from speclint import COMMON_PRACTICE, Grade, Judgement, Limit, Rule, Sheet, rule
from speclint.equations import Pascals, Ratio
from speclint.handbook.plates import pressure_across
from speclint.specs import CylinderBlock, LoadCase, WeldedJoint, Weldment
from speclint_fabrication.formulae.fatigue import (
    fatigue_size_factor,
    fatigue_strength,
    fatigue_temperature_factor,
    range_allowed,
    strokes_of_life,
)
from speclint_fabrication.inputs import greatest_on, least_in_cylinder, plate_named, wall_left
from speclint_fabrication.rules.walls import across, edge_stress
from speclint_fabrication.sources import EN_1993_1_9, EN_13445_3, IIW_FATIGUE

CLAMPED = "clamped"


@rule(
    "block.weld-fatigue",
    title="The stress range of every pressure weld does not exceed its allowable range for the cycles of "
    "the engine's life at metal temperature",
    on=Weldment,
    cases=("starting", "running", "drifting"),
    grade=Grade.HOLD,
    cites=[EN_1993_1_9.at("7.1 and 8"), EN_13445_3.at("clause 18"), IIW_FATIGUE.at("3.2"), COMMON_PRACTICE],
    why="A cylinder sees some hundred million strokes: a stress range that a boiler weld withstands for its "
    "few cycles breaks a cylinder weld.",
    leaves_out="thermal stress, welds whose root cannot be inspected, corrosion at the weld toe, damage "
    "summed over different loads; the local code and a competent person decide",
    limits=[
        Limit(
            "partial_factor",
            "1.35",
            "ratio",
            EN_1993_1_9.at("Table 3.1, safe life, high consequence"),
            "partial factor on fatigue strength",
        )
    ],
)
def weld_fatigue(weldment: Weldment, case: LoadCase, sheet: Sheet) -> Judgement:
    """Nominal stress range of a stroke, or of raising steam, against Δσ of the detail at its cycles × f_T f_t/γ."""
    if not weldment.joints:
        raise sheet.not_assessed("no welded joint is stated", weldment.where)
    block = sheet.follow(weldment.makes)
    at = sheet.take("T", case.temperature_of(block))
    f_T = sheet.work("f_T", fatigue_temperature_factor, T=at)
    judged = [
        _joint(name, joint, weldment, block, case, f_T, sheet)
        for name, joint in weldment.joints.items()
        if sheet.read(f"{name} holds pressure", joint.on_pressure)
    ]
    if not judged:
        raise sheet.not_applicable("no weld holds pressure")
    return sheet.worst(*judged)


def _joint(
    name: str,
    joint: WeldedJoint,
    weldment: Weldment,
    block: CylinderBlock,
    case: LoadCase,
    f_T: Ratio,
    sheet: Sheet,
) -> Judgement:
    found, cycles = _range(name, joint, weldment, block, case, sheet)
    category = sheet.take(f"Δσ_C of {name}", joint.detail_category)
    strength = sheet.work(f"Δσ of {name}", fatigue_strength, Δσ_C=category, N=cycles)
    plate = plate_named(weldment, joint.plate, sheet)
    f_t = sheet.work("f_t", fatigue_size_factor, t=sheet.take(f"t of {name}", plate.thickness))
    gamma = sheet.limit("partial_factor", "γ")
    return sheet.at_most(
        found, sheet.work(f"S of {name}", range_allowed, Δσ=strength, f_T=f_T, f_t=f_t, gamma=gamma)
    )


def _range(
    name: str,
    joint: WeldedJoint,
    weldment: Weldment,
    block: CylinderBlock,
    case: LoadCase,
    sheet: Sheet,
) -> tuple[Pascals, Ratio]:
    """Stress range and cycles: as stated for every stroke, or worked at the edge of the wall that the weld joins."""
    if sheet.is_stated(f"stress range of {name}", joint.stress_range):
        return sheet.take(f"σ_R of {name}", joint.stress_range), _strokes(weldment, block, sheet)
    if sheet.read(f"weld of {name}", joint.weld) != "full penetration":
        raise sheet.not_assessed(
            f"the stress range of {name} must be stated: its weld is not full penetration",
            joint.stress_range.where,
        )
    wall = sheet.entry(weldment.walls, joint.wall, f"walls of {weldment.id}")
    t = wall_left(name, plate_named(weldment, wall.plate, sheet), sheet)
    if "cylinder" in (sheet.read("one side", wall.one_side), sheet.read("other side", wall.other_side)):
        greatest, least = greatest_on("cylinder", case, sheet), least_in_cylinder(case, sheet)
        p = sheet.work(f"Δp of {name}", pressure_across, p_1=greatest, p_2=least)
        cycles = _strokes(weldment, block, sheet)
    else:
        p = across(name, wall, case, sheet)
        cycles = float(sheet.count("n", weldment.starts))
    return edge_stress(name, wall, CLAMPED, p, t, sheet), cycles


def _strokes(weldment: Weldment, block: CylinderBlock, sheet: Sheet) -> Ratio:
    distance, wheel = (
        sheet.take("S", weldment.life_distance),
        sheet.take("D", block.drive.driving_wheel_diameter),
    )
    return sheet.work("N", strokes_of_life, S=distance, D=wheel)


RULES: tuple[Rule, ...] = (weld_fatigue,)
