"""Spindles: guide, stress, seal."""

from __future__ import annotations

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Grade, Judgement, Limit, Sheet, rule
from speclint.equations import Newtons
from speclint.handbook.fits import DRAWING_TEMPERATURE
from speclint.handbook.members import critical_load, end_fixity
from speclint.handbook.tables import SHIGLEY
from speclint.specs import LoadCase, Rocker, Tappet, ValveSpindle
from speclint_valves.formulae.fits import share_of_strength
from speclint_valves.formulae.landing import strain_since
from speclint_valves.formulae.motion import valve_speed
from speclint_valves.formulae.spindle import (
    buckling_factor,
    direct_stress,
    guide_clearance,
    guide_clearance_hot,
    length_ratio,
    round_area,
    round_second_moment,
    share_of_diameter,
)
from speclint_valves.inputs.loads import loaded, worked_valve_load
from speclint_valves.inputs.opening import block_of
from speclint_valves.inputs.train import SCAN, motion, ratio, train_of
from speclint_valves.rules.cams import CRACKED


@rule(
    "spindle.guide-clearance-hot",
    title="Hot, the spindle's clearance in its guide is above zero and at most 0.004 of its diameter",
    on=ValveSpindle,
    cases=("warming", "running", "cooling"),
    grade=Grade.NONCONFORMITY,
    cites=[FIRST_PRINCIPLES, COMMON_PRACTICE],
    why="a spindle that seizes holds its valve open; one that is loose lets steam past and wears its "
    "seat on one side",
    leaves_out="scale and burnt oil, which reduce the clearance in service",
    limits=[Limit("greatest", "0.004", "ratio", COMMON_PRACTICE, "greatest hot clearance over the diameter")],
)
def guide_clearance_when_hot(spindle: ValveSpindle, case: LoadCase, sheet: Sheet) -> Judgement:
    """D_g (1 + ε_g) − d (1 + ε_s) above zero and at most 0.004 d, with the guide at the temperature of the block."""
    block = block_of(sheet.follow(spindle.moves), sheet)
    D_g, d = sheet.take("D_g", spindle.guide_bore), sheet.take("d", spindle.diameter)
    T_g, T_s = sheet.take("T_g", case.temperature_of(block)), sheet.take("T_s", case.temperature_of(spindle))
    guide = sheet.material_named(f"the guide of {spindle.id}", spindle.guide_material)
    α_g = sheet.look_up("α_g", guide.expansion, at=T_g)
    α_s = sheet.look_up("α_s", sheet.material_of(spindle).expansion, of=spindle, at=T_s)
    since = {"alpha_0": 0.0, "T_0": DRAWING_TEMPERATURE, "T_ref": DRAWING_TEMPERATURE}
    ε_g = sheet.work("ε_g", strain_since, alpha=α_g, T=T_g, **since)
    ε_s = sheet.work("ε_s", strain_since, alpha=α_s, T=T_s, **since)
    cold = sheet.work("c_0", guide_clearance, D_g=D_g, d=d)
    hot = sheet.work("c", guide_clearance_hot, D_g=D_g, ε_g=ε_g, d=d, ε_s=ε_s)
    most = sheet.work("c_max", share_of_diameter, x=sheet.limit("greatest", "x"), d=d)
    return sheet.worst(sheet.stays(hot, cold, strictly=True), sheet.at_most(hot, most))


@rule(
    "spindle.guide-length",
    title="The guide is at least four spindle diameters long",
    on=ValveSpindle,
    grade=Grade.OBSERVATION,
    cites=[COMMON_PRACTICE],
    why="a short guide lets the valve tilt and land on one side",
    leaves_out="a second guide beyond the valve, which does the same with less length",
    limits=[Limit("least", "4", "ratio", COMMON_PRACTICE, "least guide length over spindle diameter")],
)
def guide_length(spindle: ValveSpindle, sheet: Sheet) -> Judgement:
    """L/d ≥ 4."""
    L, d = sheet.take("L", spindle.guide_length), sheet.take("d", spindle.diameter)
    return sheet.at_least(sheet.work("x", length_ratio, L=L, d=d), sheet.limit("least"))


@rule(
    "spindle.stress",
    title="The stress at the weakest section of the spindle is at most 0.2 of its tensile strength, and "
    "the factor against buckling at least 4",
    on=ValveSpindle,
    cases=("starting", "running"),
    grade=Grade.NONCONFORMITY,
    cites=[FIRST_PRINCIPLES, SHIGLEY.at("section 4-12, columns"), COMMON_PRACTICE],
    why="a spindle that breaks may drop its valve into the cylinder; one that bends jams in its guide",
    leaves_out="the stress concentration of a thread or cotter hole, for which the share of the "
    "strength is low",
    limits=[
        Limit(
            "share-of-strength",
            "0.2",
            "ratio",
            COMMON_PRACTICE,
            "share of tensile strength at 20 °C, for endurance",
        ),
        Limit("buckling-factor", "4", "ratio", COMMON_PRACTICE, "least factor against buckling"),
        CRACKED,
    ],
)
def stress(spindle: ValveSpindle, case: LoadCase, sheet: Sheet) -> Judgement:
    """(springs + steam + inertia + friction)/least section ≤ 0.2 R_m; Johnson or Euler over the free length ≥ 4."""
    train = train_of(sheet.follow(spindle.moves), sheet)
    F, _ = worked_valve_load(loaded(train, case, sheet), sheet)
    T, metal = sheet.take("T", case.temperature_of(spindle)), sheet.material_of(spindle)
    R_m = sheet.look_up("R_m", metal.tensile_strength, of=spindle, at=DRAWING_TEMPERATURE)
    allowed = sheet.work("σ_zul", share_of_strength, k=sheet.limit("share-of-strength", "k"), S=R_m)
    worked = sheet.work("σ", direct_stress, F=F, d=sheet.take("d_1", spindle.least_diameter))
    return sheet.worst(sheet.at_most(worked, allowed), _buckling(spindle, T, F, sheet))


def _buckling(spindle: ValveSpindle, T: float, F: Newtons, sheet: Sheet) -> Judgement:
    d, metal = sheet.take("d", spindle.diameter), sheet.material_of(spindle)
    strut = {
        "E": sheet.look_up("E", metal.modulus, of=spindle, at=T),
        "S_y": sheet.look_up("R_p", metal.proof_stress, of=spindle, at=T),
        "A": sheet.work("A", round_area, d=d),
        "I": sheet.work("I", round_second_moment, d=d),
        "K": sheet.look_up("K", end_fixity, ends=sheet.read("ends", spindle.ends)),
        "L": sheet.take("L", spindle.free_length),
    }
    factor = sheet.work("S", buckling_factor, F_k=sheet.work("F_k", critical_load, **strut), F=F)
    return sheet.at_least(factor, sheet.limit("buckling-factor"))


@rule(
    "spindle.seal",
    title="Temperature, pressure and speed at the seal are within its rating, and its leak-off is stated",
    on=ValveSpindle,
    cases=("running",),
    grade=Grade.QUERY,
    gravest=Grade.NONCONFORMITY,
    cites=[COMMON_PRACTICE],
    why="a seal beyond its rating burns or blows out, and water behind it corrodes gear and springs",
    leaves_out="service life of the seal",
)
def seal(spindle: ValveSpindle, case: LoadCase, sheet: Sheet) -> Judgement:
    """Temperature, pressure and rubbing speed ≤ those of the rating; leak-off stated."""
    train = train_of(sheet.follow(spindle.moves), sheet)
    i, moved, ω = ratio(train, sheet), motion(train.cam, sheet), sheet.take("ω", case.rotational_speed)

    def rubbing(angle: float) -> float:
        return valve_speed(i=i, s_prime=moved.at(angle).slope, ω=ω)

    angle = sheet.scan(
        "φ", "cam angle of the greatest speed", rubbing, 0.0, moved.duration, unit="rad", steps=SCAN
    )
    speed = sheet.work("v", valve_speed, i=i, s_prime=moved.at(angle).slope, ω=ω)
    sheet.read("leak-off", spindle.leak_off)
    T, p = sheet.take("T", case.temperature_of(spindle)), sheet.take("p", case.live_pressure)
    return sheet.worst(
        sheet.no_hotter(T, sheet.take("T_max", spindle.seal_temperature)),
        sheet.at_most(p, sheet.take("p_max", spindle.seal_pressure)),
        sheet.at_most(speed, sheet.take("v_max", spindle.seal_speed)),
    ).graded(Grade.NONCONFORMITY)


@rule(
    "spindle.driven",
    title="Each spindle is driven by exactly one tappet, directly or through one rocker",
    on=ValveSpindle,
    grade=Grade.NONCONFORMITY,
    cites=[COMMON_PRACTICE],
    why="a valve with no tappet never lifts, and one with two tappets is a drawing error",
    leaves_out="whether the tappet belongs to the right end of the cylinder",
)
def driven(spindle: ValveSpindle, sheet: Sheet) -> Judgement:
    """One rocker at most, and one tappet on it or on the spindle."""
    rockers = sheet.belonging_to(spindle, Rocker)
    tappets = [tappet for driver in (spindle, *rockers) for tappet in sheet.belonging_to(driver, Tappet)]
    says = f"{len(rockers)} rockers and {len(tappets)} tappets drive the spindle"
    return sheet.states(len(rockers) <= 1 and len(tappets) == 1, says)


RULES = (guide_clearance_when_hot, guide_length, stress, seal, driven)
