"""Rate and loads: the figures on the drawing against its sizes."""

from __future__ import annotations

from speclint import COMMON_PRACTICE, Grade, Judgement, Limit, Sheet, rule
from speclint.equations import Metres, Newtons, NewtonsPerMetre, Ratio
from speclint.handbook.springs import (
    EN_15800,
    deflection,
    en_13906_1_clause,
    load_tolerance,
    quality_factor,
    spring_load,
    spring_rate,
)
from speclint.specs import CompressionSpring, Force, Length
from speclint_springs.formulae.helical import half_of_width, load_difference, rate_difference
from speclint_springs.inputs import aimed_mean_diameter, modulus_of_rigidity

#: Documents of EN 10204 by which what is delivered has itself been tested.
_TESTED: tuple[str | None, ...] = ("3.1", "3.2")


@rule(
    "coil-spring.rate",
    edition=3,
    title="The rate on the drawing is within 5 %, and the loads within EN 15800, of those that wire, coils and lengths "
    "give; limits of a load closer than its quality grade gives rest on springs tested",
    on=CompressionSpring,
    grade=Grade.NONCONFORMITY,
    cites=[en_13906_1_clause("9.4, spring rate"), EN_15800.at("tolerances on load"), COMMON_PRACTICE],
    why="a drawing that contradicts itself gets a spring that is right by one figure and wrong by the other",
    leaves_out="the measured rate of the spring as made: that is for the test certificate, and so is how close the "
    "limits are where a 3.1 or 3.2 is asked for; limits of the rate itself, for which the standard gives none",
    against=(),
    limits=[
        Limit(
            "rate-agreement",
            "5 %",
            "ratio",
            COMMON_PRACTICE,
            "share by which stated and calculated rate may differ",
        )
    ],
)
def stated_rate(spring: CompressionSpring, sheet: Sheet) -> Judgement:
    """R = G d⁴/(8 D³ n) and F = R s from the nominal sizes at 20 °C, against the figures stated.

    Limits of a load that are closer than its grade gives are a query, unless springs of the lot are tested (EN 10204).

    No hold rests on either figure alone: valve.spring-holds-shut takes the lesser, coil-spring.fatigue the greater.
    """
    d = sheet.take_nominal("d", spring.wire)
    D = aimed_mean_diameter(spring, sheet, d)
    n = sheet.take_nominal("n", spring.working_coils)
    R = sheet.work("R", spring_rate, G=modulus_of_rigidity(spring, sheet), d=d, D=D, n=n)
    found = [_rate(spring, sheet, R)] if sheet.is_stated("rate", spring.rate) else []
    for name, load, length in (
        ("shut", spring.shut_load, spring.shut_length),
        ("open", spring.open_load, spring.open_length),
    ):
        if sheet.is_stated(f"{name} load", load):
            F = _worked_load(spring, sheet, R, length)
            found.append(_load(spring, sheet, F, load, (d, D, n)))
    if not found:
        raise sheet.not_assessed(
            "neither rate nor load is stated: there is nothing to compare the sizes with"
        )
    return sheet.worst(*found)


def _rate(spring: CompressionSpring, sheet: Sheet, R: NewtonsPerMetre) -> Judgement:
    stated = sheet.take_nominal("R_s", spring.rate)
    return sheet.at_most(
        sheet.work("δ", rate_difference, R=R, R_s=stated), sheet.limit("rate-agreement")
    ).else_says("stated rate {found} off that of the coil, {limit} allowed")


def _worked_load(spring: CompressionSpring, sheet: Sheet, R: NewtonsPerMetre, length: Length) -> Newtons:
    free, held = sheet.take_nominal("L_0", spring.free_length), sheet.take_nominal("L", length)
    return sheet.work("F", spring_load, R=R, s=sheet.work("s", deflection, L_0=free, L=held))


def _load(
    spring: CompressionSpring,
    sheet: Sheet,
    F: Newtons,
    stated: Force,
    coil: tuple[Metres, Metres, Ratio],
) -> Judgement:
    if sheet.read("process", spring.process) == "hot":
        raise sheet.not_covered("EN 15800 gives load tolerances for cold coiled springs only")
    d, D, n = coil
    F_s = sheet.take_nominal("F_s", stated)
    Q = sheet.look_up("Q", quality_factor, grade=sheet.read("quality grade", spring.quality_grade))
    allowed = sheet.work("A_F", load_tolerance, Q=Q, F=F_s, d=d, D=D, n=n)
    agrees = sheet.at_most(sheet.work("Δ", load_difference, F=F, F_s=F_s), allowed).else_says(
        "stated load {found} off that of the coil, {limit} allowed"
    )
    width = sheet.tolerance("ΔF_s", stated)
    if width <= 0 or sheet.said("inspection document", spring.inspection_document) in _TESTED:
        return agrees
    kept = sheet.at_least(sheet.work("Δ_s", half_of_width, w=width), allowed).else_says(
        "limits of a load {found} to each side, its quality grade gives {limit} and no spring is tested"
    )
    return sheet.worst(agrees, kept.graded(Grade.QUERY))


RULES = (stated_rate,)
