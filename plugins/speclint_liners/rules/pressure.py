"""The block as a pressure part: its hydraulic test, and the walls between its bores and passages."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import COMMON_PRACTICE, Grade, Judgement, Limit, Sheet, rule
from speclint.handbook.cylinders import bore_hoop_stress, outside_of_wall
from speclint.handbook.fits import DRAWING_TEMPERATURE, outer_tresca_stress
from speclint.handbook.materials import share_of_strength
from speclint.handbook.plates import TIMOSHENKO_PLATES, panel_stress, panel_stress_factor, pressure_across
from speclint.specs import CylinderBlock, Division, LoadCase
from speclint_liners.formulae.walls import thinnest_wall
from speclint_liners.formulae.water import wanted_test_pressure
from speclint_liners.inputs.cylinders import liners_of
from speclint_liners.inputs.fitted import greatest_pressure
from speclint_liners.sources import ASME_VIII, EN_13445_3, EN_13445_5, LAME, PED


@rule(
    "cylinder.test-pressure",
    title="The hydraulic test pressure is at least that required by the hot duty, and the stress at the "
    "test does not exceed its share of the strength",
    on=CylinderBlock,
    cases=("starting", "running"),
    grade=Grade.HOLD,
    cites=[EN_13445_5.at("10.2.3.3"), PED.at("7.4"), ASME_VIII.at("UCI-99"), COMMON_PRACTICE],
    why="Cold metal is stronger: a test pressure only just above the duty proves nothing about the hot "
    "block.",
    leaves_out="the safety of the test itself: only water, proven gauges, and nobody close by; the local "
    "code named in the settings and a competent person decide the pressure",
    limits=[
        Limit("factor", "1.5", "ratio", COMMON_PRACTICE, "least test pressure over the duty"),
        Limit(
            "strength_factor",
            "1.25",
            "ratio",
            EN_13445_5.at("10.2.3.3"),
            "factor on the ratio of strengths, cold over hot",
        ),
        Limit("iron_factor", "2", "ratio", ASME_VIII.at("UCI-99"), "least factor for a block of cast iron"),
        Limit(
            "steel_share", "0.9", "ratio", COMMON_PRACTICE, "share of the proof stress of steel at the test"
        ),
        Limit("iron_share", "0.2", "ratio", COMMON_PRACTICE, "share of the strength of iron at the test"),
    ],
)
def hydraulic_test(block: CylinderBlock, case: LoadCase, sheet: Sheet) -> Judgement:
    """Test pressure against the duty and the loss of strength with heat; stress of block and liners at the test."""
    test = sheet.take("p_t", block.test_pressure)
    duty = sheet.take("p", case.safety_valve_pressure)
    hot = sheet.take("T_b", case.temperature_of(block))
    metal = sheet.material_of(block)
    factor = "iron_factor" if metal.family == "grey-iron" else "factor"
    judgements: list[Judgement] = []
    sheet.setting("pressure codes")
    if not block.bores:
        raise sheet.not_assessed(f"bores is not stated in {block.where.file}", block.where)
    for name, bore in block.bores.items():
        wall = sheet.take("w", bore.wall)
        wanted = sheet.work(
            "p_w",
            wanted_test_pressure,
            p=duty,
            k=sheet.limit(factor),
            k_T=sheet.limit("strength_factor"),
            f_20=sheet.look_up("f_20", metal.allowable_tension, of=block, at=DRAWING_TEMPERATURE, wall=wall),
            f_T=sheet.look_up("f_T", metal.allowable_tension, of=block, at=hot, wall=wall),
        )
        judgements.append(sheet.at_least(test, wanted))
        judgements.append(_block_at_test(block, sheet.take("D_b", bore.diameter), wall, test, sheet))
        judgements += _liners_at_test(block, name, test, sheet)
    return sheet.worst(*judgements)


def _block_at_test(block: CylinderBlock, bore: float, wall: float, test: float, sheet: Sheet) -> Judgement:
    """The ring of block round a bore, as if the liner were not there."""
    metal = sheet.material_of(block)
    outside = sheet.work("D_s", outside_of_wall, d=bore, t=wall)
    if metal.family == "grey-iron":
        stress = sheet.work("σ_b", bore_hoop_stress, p=test, d=bore, D=outside)
        strength = sheet.look_up(
            "R_m", metal.tensile_strength, of=block, at=DRAWING_TEMPERATURE, thickness=wall
        )
        return sheet.at_most(
            stress, sheet.work("S_b", share_of_strength, k=sheet.limit("iron_share"), R=strength)
        )
    stress = sheet.work("σ_b", outer_tresca_stress, p=test, D=bore, D_out=outside)
    proof = sheet.look_up("R_p", metal.proof_stress, of=block, at=DRAWING_TEMPERATURE, thickness=wall)
    return sheet.at_most(stress, sheet.work("S_b", share_of_strength, k=sheet.limit("steel_share"), R=proof))


def _liners_at_test(block: CylinderBlock, bore: str, test: float, sheet: Sheet) -> Iterator[Judgement]:
    """Each liner in a bore, alone."""
    for liner in liners_of(block, bore, sheet):
        d, outside = sheet.take("d", liner.bore), sheet.take("D_l", liner.outside_diameter)
        stress = sheet.work("σ_l", bore_hoop_stress, p=test, d=d, D=outside)
        wall = sheet.work("t", thinnest_wall, d=d, D=outside, e=0.0)
        iron = sheet.material_of(liner)
        strength = sheet.look_up(
            "R_m", iron.tensile_strength, of=liner, at=DRAWING_TEMPERATURE, thickness=wall
        )
        yield sheet.at_most(
            stress, sheet.work("S_l", share_of_strength, k=sheet.limit("iron_share"), R=strength)
        )


@rule(
    "cylinder.between-bores",
    title="The stress of each wall between neighbouring bores and passages does not exceed the allowable "
    "stress of the block",
    on=CylinderBlock,
    cases=("starting", "running", "water"),
    grade=Grade.HOLD,
    cites=[
        LAME,
        TIMOSHENKO_PLATES.at("art. 44, rectangular plates with built-in edges"),
        EN_13445_3.at("6.2"),
    ],
    why="The thin wall between two passages is where a block cracks first, and nobody can see it.",
    leaves_out="thermal stress, welds, walls of another shape; the local code and a competent person decide",
)
def between_bores(block: CylinderBlock, case: LoadCase, sheet: Sheet) -> Judgement:
    """Each dividing wall as a flat plate with clamped edges, as a ring, or as the worse of both."""
    if not block.divisions:
        raise sheet.not_assessed(f"divisions is not stated in {block.where.file}", block.where)
    at = sheet.take("T_b", case.temperature_of(block))
    judgements: list[Judgement] = []
    for division in block.divisions.values():
        thickness = sheet.take("t", division.thickness)
        pressure = _across(division, case, sheet)
        metal = sheet.material_of(block)
        allowable = sheet.look_up("f", metal.allowable_tension, of=block, at=at, wall=thickness)
        for stress in _stresses(division, pressure, thickness, sheet):
            judgements.append(sheet.at_most(stress, allowable))
    return sheet.worst(*judgements)


def _across(division: Division, case: LoadCase, sheet: Sheet) -> float:
    """The greatest pressure across a wall: the cylinder has every pressure from exhaust to its greatest."""
    sides = [sheet.read("one side", division.one_side), sheet.read("other side", division.other_side)]
    pressures = []
    for side in sides:
        if side == "cylinder":
            empty = "live steam" in sides
            pressures.append(
                sheet.take("p_e", case.exhaust_pressure) if empty else greatest_pressure(case, sheet)
            )
        elif side == "atmosphere":
            pressures.append(0.0)
        else:
            steam = case.live_pressure if side == "live steam" else case.exhaust_pressure
            pressures.append(sheet.take("p_s", steam, f"{side} beside the wall"))
    return sheet.work("Δp", pressure_across, p_1=pressures[0], p_2=pressures[1])


def _stresses(division: Division, pressure: float, thickness: float, sheet: Sheet) -> Iterator[float]:
    """Stress as a flat wall where a span is stated, and as a ring where a diameter is."""
    flat = sheet.is_stated("span", division.span)
    if sheet.is_stated("ring", division.ring_diameter):
        d = sheet.take("d", division.ring_diameter)
        outside = sheet.work("D", outside_of_wall, d=d, t=thickness)
        yield sheet.work("σ_r", bore_hoop_stress, p=pressure, d=d, D=outside)
    elif not flat:
        sheet.take("a", division.span)
    if flat:
        span, length = sheet.take("a", division.span), sheet.take("b", division.length)
        factor = sheet.look_up("k", panel_stress_factor, edges="clamped", a=span, b=length)
        yield sheet.work("σ_f", panel_stress, k=factor, p=pressure, a=span, t=thickness)


RULES = (hydraulic_test, between_bores)
