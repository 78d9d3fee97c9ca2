"""Endurance of a spring in service: fatigue, surge, heat."""

from __future__ import annotations

from speclint import COMMON_PRACTICE, Grade, Judgement, Limit, Sheet, rule
from speclint.equations import Kelvins, Metres, Newtons, Pascals, Ratio
from speclint.facts import speed_of_gear
from speclint.handbook.materials import share_of_strength
from speclint.handbook.springs import (
    FATIGUE_DIAGRAMS,
    RELAXATION_DIAGRAMS,
    SMI,
    bergstraesser_factor,
    corrected_shear_stress,
    en_13906_1_clause,
    fatigue_line_slope,
    highest_wire_temperature,
    natural_frequency,
    spring_index,
    stroke_factor,
    stroke_strength,
)
from speclint.handbook.tables import SHIGLEY
from speclint.specs import CompressionSpring, LoadCase
from speclint_springs.formulae.helical import surge_ratio
from speclint_springs.formulae.tables import least_wire_strength
from speclint_springs.inputs import (
    alternates,
    mean_diameter,
    modulus_of_rigidity,
    relaxation_of_wire,
    same_spring_open_load,
    shut_load,
    working_coils,
)

DEFERS = "the local code and a competent person decide"
SOLID = en_13906_1_clause("10.1.1, permissible stress at solid length, cold coiled")
SHIGLEY_SURGE = SHIGLEY.at("ch. 10, critical frequency of helical springs", memory=True)


@rule(
    "coil-spring.fatigue",
    edition=5,
    title="For infinite life the permissible stress range of the spring is at least 1.2 times its "
    "working stress range",
    on=CompressionSpring,
    grade=Grade.NONCONFORMITY,
    gravest=Grade.HOLD,
    cites=[FATIGUE_DIAGRAMS, en_13906_1_clause("7, stress correction factor"), SOLID, COMMON_PRACTICE],
    why="a valve spring makes ten million strokes in some five hundred hours, and breaks from the inside of a coil",
    leaves_out=f"rust, surface damage and surge, each of which takes life that no diagram counts; {DEFERS}",
    against=("break in fatigue",),
    limits=[
        Limit(
            "factor", "1.2", "ratio", COMMON_PRACTICE, "least ratio of permissible to working stress range"
        ),
        Limit(
            "guaranteed",
            "0.56",
            "ratio",
            SOLID,
            "greatest stroke strength that a maker can guarantee, over the tensile strength of the wire",
        ),
    ],
)
def fatigue(spring: CompressionSpring, sheet: Sheet) -> Judgement:
    """S = (τ_H0 − (1 − m) τ_U)/(τ_O − τ_U), stresses corrected after Bergsträsser, loads at 20 °C."""
    if not alternates(spring, sheet):
        raise sheet.not_applicable("the load is steady: coil-spring.stress-static judges it")
    caught = _is_caught(spring, sheet)
    d = sheet.take("d", spring.wire)
    D = mean_diameter(spring, sheet, d)
    k = sheet.work("k", bergstraesser_factor, w=sheet.work("w", spring_index, D=D, d=d))
    F_U = shut_load(spring, sheet, d, D)
    lower = _corrected("τ_U", sheet, k=k, F=F_U, D=D, d=d)
    F_O = same_spring_open_load(spring, sheet, d, D, F_U)
    upper = _corrected("τ_O", sheet, k=k, F=F_O, D=D, d=d)
    m = sheet.look_up("m", fatigue_line_slope)
    strength, believed = _stroke_strength(spring, sheet, d)
    S = sheet.work("S", stroke_factor, tau_U=lower, tau_O=upper, tau_H0=strength, m=m)
    factor = sheet.at_least(S, sheet.limit("factor")).else_says(
        "factor of the spring against fatigue {found}, {limit} wanted"
    )
    judged = sheet.worst(factor, *believed)
    return judged if caught else judged.graded(Grade.HOLD)


def _is_caught(spring: CompressionSpring, sheet: Sheet) -> bool:
    """Whether a broken half is caught: as stated, with the pin or the housing stated that catches it."""
    if not sheet.read("broken half caught", spring.broken_half_caught):
        return False
    return sheet.is_stated("guide pin", spring.guide_pin) or sheet.is_stated("housing", spring.housing)


def _corrected(symbol: str, sheet: Sheet, k: Ratio, F: Newtons, D: Metres, d: Metres) -> Pascals:
    return sheet.work(symbol, corrected_shear_stress, k=k, F=F, D=D, d=d)


def _stroke_strength(
    spring: CompressionSpring, sheet: Sheet, d: Metres
) -> tuple[Pascals, tuple[Judgement, ...]]:
    """Stroke strength by the diagrams, or as the maker guarantees it, and whether a wire can have that.

    No range at zero lower stress is more than the stress to which a wire is pressed solid.
    """
    if not sheet.is_stated("stroke strength", spring.stroke_strength):
        treatment = "peened" if sheet.read("shot-peened", spring.shot_peened) else "none"
        wire = sheet.read("wire grade", spring.wire_grade)
        return sheet.look_up("τ_H0", stroke_strength, wire=wire, treatment=treatment, d=d), ()
    stated = sheet.take("τ_H0", spring.stroke_strength)
    R_m = sheet.look_up("R_m", least_wire_strength, of=spring, material=sheet.material_of(spring), diameter=d)
    most = sheet.work("τ_g", share_of_strength, k=sheet.limit("guaranteed", "x_g"), R=R_m)
    can_be = sheet.at_most(stated, most).else_says(
        "stroke strength of {found} is guaranteed, and the wire is pressed solid with no more than {limit}"
    )
    return stated, (can_be,)


@rule(
    "coil-spring.surge",
    edition=3,
    title="The spring's lowest natural frequency is at least 13 times the rotational frequency of the cam",
    on=CompressionSpring,
    cases=("running", "drifting"),
    grade=Grade.NONCONFORMITY,
    cites=[en_13906_1_clause("9.12, natural frequency"), SHIGLEY_SURGE, COMMON_PRACTICE],
    why="a spring that surges loses control of the valve, overstresses its end coils and soon breaks",
    leaves_out="the harmonics of the cam's lift law, which reach higher orders with a sharp cam than "
    "with a smooth one",
    against=("break in fatigue",),
    limits=[
        Limit(
            "least",
            "13",
            "ratio",
            COMMON_PRACTICE,
            "least natural frequency over rotational frequency of the cam",
        ),
        Limit(
            "preferred",
            "20",
            "ratio",
            SHIGLEY_SURGE,
            "preferred natural frequency over rotational frequency of the cam",
        ),
    ],
)
def surge(spring: CompressionSpring, case: LoadCase, sheet: Sheet) -> Judgement:
    """f = d/(2 π n D²) √(G/(2 ρ)) between fixed ends, over the revolutions of the cam, one for each of the wheels."""
    d = sheet.take("d", spring.wire)
    D, n = mean_diameter(spring, sheet, d), working_coils(spring, sheet)
    G = modulus_of_rigidity(spring, sheet, sheet.take("T", case.temperature_of(spring)))
    rho = sheet.look_up("ρ", sheet.material_of(spring).density, of=spring)
    f = sheet.work("f", natural_frequency, d=d, D=D, n=n, G=G, rho=rho)
    ratio = sheet.work("j", surge_ratio, f=f, omega=speed_of_gear(spring.closes, case, sheet))
    least = sheet.at_least(ratio, sheet.limit("least")).else_says(
        "spring may surge: {found} times the cam's frequency, {limit} wanted"
    )
    preferred = (
        sheet.at_least(ratio, sheet.limit("preferred"))
        .else_says("spring near surge: {found} times the cam's frequency, {limit} preferred")
        .graded(Grade.OBSERVATION)
    )
    return preferred if least.holds else least


@rule(
    "coil-spring.temperature",
    edition=5,
    title="The wire is no hotter than its limit, and the spring loses at most 10 % of its load to relaxation",
    on=CompressionSpring,
    cases=("starting", "running", "drifting", "standing-hot"),
    grade=Grade.NONCONFORMITY,
    cites=[
        RELAXATION_DIAGRAMS,
        SMI,
        COMMON_PRACTICE,
    ],
    why="a spring that is hot under load relaxes: it gets shorter and holds its valve with less load",
    leaves_out="the loss after the 48 hours of the diagrams, which goes on slowly",
    against=("burn",),
    limits=[
        Limit("loss", "10 %", "ratio", COMMON_PRACTICE, "share of the load that may be lost to relaxation")
    ],
)
def temperature(spring: CompressionSpring, case: LoadCase, sheet: Sheet) -> Judgement:
    """T ≤ the limit of the wire by material and by grade; relaxation with the valve as far open as it can go ≤ 10 %."""
    T = sheet.take("T", case.temperature_of(spring))
    rated = sheet.look_up("T_max", sheet.material_of(spring).wire_temperature_limit, of=spring)
    if sheet.is_stated("wire grade", spring.wire_grade):
        of_grade = sheet.look_up(
            "T_g", highest_wire_temperature, wire=sheet.read("wire grade", spring.wire_grade)
        )
        rated = min(rated, of_grade)
    heat = sheet.no_hotter(T, rated).else_says("wire at {found}, rated for {limit}")
    return (
        heat
        if not heat.holds
        else sheet.at_most(_relaxation(spring, sheet, T), sheet.limit("loss")).else_says(
            "spring loses {found} of its load, {limit} allowed"
        )
    )


def _relaxation(spring: CompressionSpring, sheet: Sheet, T: Kelvins) -> Ratio:
    if sheet.is_stated("relaxation", spring.relaxation):
        return sheet.take("r", spring.relaxation)
    return relaxation_of_wire(spring, sheet, T, "r")


RULES = (fatigue, surge, temperature)
