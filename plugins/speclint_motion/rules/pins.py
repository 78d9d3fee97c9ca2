"""Crosshead pin and crank pin: bearing pressure, and fully reversed bending."""

from __future__ import annotations

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Grade, Judgement, Limit, Sheet, rule
from speclint.equations import Metres, NewtonMetres, Newtons, Ratio
from speclint.facts import length_of_bearing
from speclint.handbook.fits import DRAWING_TEMPERATURE
from speclint.handbook.members import (
    bending_stress,
    cantilever_moment,
    direct_stress,
    equivalent_stress,
    fatigue_notch_factor,
    notch_sensitivity,
    projected_pressure,
    round_area,
    share_of_bore,
    shoulder_in_bending,
    size_ratio,
)
from speclint.handbook.tables import PETERSON, SHIGLEY
from speclint.specs import LoadCase, Pin
from speclint_motion.formulae.pins import moment_of_held_pin, round_modulus
from speclint_motion.formulae.sections import fatigue_factor
from speclint_motion.formulae.shafts import effective_diameter, share_of_specimen, size_factor
from speclint_motion.formulae.tables import proportion_of_bore
from speclint_motion.inputs.thrust import load_on_pin, overhang_of_force
from speclint_motion.sources import (
    PERIOD_PROPORTIONS,
    RAILWAY_MECHANICAL_ENGINEER,
    SHIGLEY_GOODMAN,
    SHIGLEY_MARIN,
)


@rule(
    "pin.bearing-pressure",
    title="The pressure of the pin on the projected area of its bearing exceeds neither the usual nor the "
    "greatest pressure of practice",
    on=Pin,
    cases=("starting", "running"),
    grade=Grade.NONCONFORMITY,
    gravest=Grade.NONCONFORMITY,
    cites=[RAILWAY_MECHANICAL_ENGINEER, PERIOD_PROPORTIONS, FIRST_PRINCIPLES],
    why="A pin that is too small squeezes out its oil, runs hot and destroys its bearing.",
    leaves_out="rubbing speed and heat, coupling rods on the same pin, the greater mass of pistons for later bores; "
    "the pocket-book's proportions are only reported",
    against=("seize", "wear"),
    limits=[
        Limit(
            "crank_pin",
            "1700 psi",
            "pressure",
            RAILWAY_MECHANICAL_ENGINEER,
            "greatest pressure of a crank pin",
        ),
        Limit(
            "crank_pin_usual",
            "1600 psi",
            "pressure",
            RAILWAY_MECHANICAL_ENGINEER,
            "usual pressure of a crank pin",
        ),
        Limit(
            "crosshead_pin",
            "4800 psi",
            "pressure",
            RAILWAY_MECHANICAL_ENGINEER,
            "greatest pressure of a crosshead pin",
        ),
        Limit(
            "crosshead_pin_usual",
            "4600 psi",
            "pressure",
            RAILWAY_MECHANICAL_ENGINEER,
            "usual pressure of a crosshead pin",
        ),
    ],
    edition=7,
)
def bearing_pressure(pin: Pin, case: LoadCase, sheet: Sheet) -> Judgement:
    """Rod force over projected area: beyond the lower figure an observation, beyond the upper a nonconformity.

    The force is that at the last bore of the liner.
    """
    place = sheet.read("place", pin.place)
    F, cylinder = load_on_pin(pin, case, sheet)
    d, b = sheet.take("d", pin.diameter), length_of_bearing(pin, sheet)
    if place == "crank pin":
        _period_proportions(d, b, sheet.take("D", cylinder.liner.bore), sheet)
    p = sheet.work("p", projected_pressure, F=F, d=d, b=b)
    name = place.replace(" ", "_")
    usual = (
        sheet.at_most(p, sheet.limit(f"{name}_usual"))
        .else_says("pin pressed by {found}, up to {limit} is usual")
        .graded(Grade.OBSERVATION)
    )
    return sheet.worst(
        sheet.at_most(p, sheet.limit(name)).else_says("pin pressed by {found}, {limit} allowed"), usual
    )


def _period_proportions(d: Metres, b: Metres, D: Metres, sheet: Sheet) -> None:
    for symbol, size, part in (("d", d, "crank pin diameter"), ("b", b, "crank pin length")):
        k = sheet.look_up(f"k_{symbol}", proportion_of_bore, part=part)
        period = sheet.work(f"{symbol}_0", share_of_bore, D=D, k=k)
        sheet.work(f"{symbol}/{symbol}_0", size_ratio, d=size, d_0=period)


@rule(
    "pin.bending",
    title="Under fully reversed bending and shear the pin, weakened by its fillet, its surface and its size, has at "
    "least the least factor of safety for infinite life",
    wrong="factor of the pin against fatigue {found}, {limit} wanted",
    on=Pin,
    cases=("starting", "running"),
    edition=9,
    grade=Grade.NONCONFORMITY,
    cites=[
        FIRST_PRINCIPLES,
        SHIGLEY.at("eq. 5-15"),
        SHIGLEY_GOODMAN,
        SHIGLEY_MARIN,
        PETERSON.at("chart 3.10, as reproduced in a public calculation of shafts", memory=False),
        PETERSON.at("eq. 1.31, notch sensitivity"),
        COMMON_PRACTICE,
    ],
    why="A crank pin breaks at its fillet, and at speed the rods then come loose.",
    leaves_out="coupling rods on the same pin, loss of fatigue strength by a press fit, seizure, the greater mass of "
    "pistons for later bores",
    against=("break under load", "break in fatigue"),
    limits=[
        Limit("fatigue", "1.5", "ratio", COMMON_PRACTICE, "least factor against fatigue"),
        Limit(
            "surface",
            "0.85",
            "ratio",
            COMMON_PRACTICE,
            "surface factor of a ground pin on the fatigue strength of a polished bar",
        ),
    ],
)
def bending(pin: Pin, case: LoadCase, sheet: Sheet) -> Judgement:
    """Bending and mean shear as one stress by distortion energy, fully reversed, with the notch of the fillet.

    A crank pin turns under its load; a crosshead pin does not, and less of its metal is fully stressed. The force is
    that at the last bore of the liner.
    """
    crank = sheet.read("place", pin.place) == "crank pin"
    F, _ = load_on_pin(pin, case, sheet)
    d = sheet.take("d", pin.diameter)
    M = _moment(pin, F, sheet, crank=crank)
    σ = sheet.work("σ", bending_stress, M=M, Z=sheet.work("Z", round_modulus, d=d))
    shear = F if crank else F / 2
    τ = sheet.work("τ", direct_stress, F=shear, A=sheet.work("A_p", round_area, d=d))
    σ_eq = sheet.work("σ_eq", equivalent_stress, sigma=σ, tau=τ)
    material = sheet.material_of(pin)
    R_m = sheet.look_up("R_m", material.tensile_strength, of=pin, at=DRAWING_TEMPERATURE, thickness=d)
    n = sheet.work(
        "n",
        fatigue_factor,
        σ_a=σ_eq,
        σ_m=0.0,
        K_f=_notch(pin, R_m, d, sheet) if crank else 1.0,
        k=sheet.work(
            "k", share_of_specimen, k_a=sheet.limit("surface", "k_a"), k_b=_size(d, sheet, crank=crank)
        ),
        S_f=sheet.look_up("S_f", material.fatigue_strength, of=pin, loading="bending", diameter=d),
        R_m=R_m,
    )
    return sheet.at_least(n, sheet.limit("fatigue"))


def _size(d: Metres, sheet: Sheet, *, crank: bool) -> Ratio:
    return sheet.work("k_b", size_factor, d=d if crank else sheet.work("d_e", effective_diameter, d=d))


def _moment(pin: Pin, F: Newtons, sheet: Sheet, *, crank: bool) -> NewtonMetres:
    if crank:
        return sheet.work("M", cantilever_moment, F=F, a=overhang_of_force(pin, sheet))
    b = length_of_bearing(pin, sheet)
    return sheet.work("M", moment_of_held_pin, F=F, L=sheet.take("L", pin.span), b=b)


def _notch(pin: Pin, R_m: float, d: Metres, sheet: Sheet) -> Ratio:
    r = sheet.take("r_f", pin.fillet)
    K_t = sheet.work("K_t", shoulder_in_bending, D=sheet.take("D_s", pin.larger_diameter), d=d, r=r)
    q = sheet.work("q", notch_sensitivity, R_m=R_m, r=r)
    return sheet.work("K_f", fatigue_notch_factor, K_t=K_t, q=q)


RULES = (bearing_pressure, bending)
