"""A saddle bedded on a barrel."""

from __future__ import annotations

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Grade, Judgement, Limit, Sheet, rule
from speclint.equations import Metres, Radians
from speclint.handbook.fits import DRAWING_TEMPERATURE, size_when_hot
from speclint.specs import HOT_CASES, Component, Dimension, Fit, LoadCase
from speclint_fits.formulae.fits import arcs_apart, half_arc_of_foot, saddle_gap


@rule(
    "fit.curved-seat",
    title="The gap between saddle and barrel, over the arc under its foot, cold and hot, does not exceed what the "
    "jointing fills, and no jointing fills more than a jointing can",
    on=Fit,
    cases=("cold", *HOT_CASES, "water"),
    grade=Grade.NONCONFORMITY,
    cites=[FIRST_PRINCIPLES, COMMON_PRACTICE],
    why="A saddle that bears only on its edges, or only on its middle, rocks, leaks and loosens its bolts "
    "by fretting.",
    leaves_out="barrels out of round, lapped plates and rivet heads under the saddle, bending of either part, and "
    "whether the foot is wide enough for what stands on it",
    against=("loosen",),
    against_on={"saddle": ("loosen",)},
    limits=[
        Limit(
            "jointing",
            "0.5 mm",
            "length",
            COMMON_PRACTICE,
            "greatest gap that jointing fills if none is stated",
        ),
        Limit("thickest", "2 mm", "length", COMMON_PRACTICE, "greatest gap that any jointing fills"),
        Limit(
            "arc",
            "2 °",
            "angle",
            COMMON_PRACTICE,
            "greatest difference of the stated half arc from that of the foot",
        ),
    ],
    edition=4,
)
def curved_seat(fit: Fit, case: LoadCase, sheet: Sheet) -> Judgement:
    """ΔR (1 − cos θ), over cos θ where the saddle has the smaller radius, with each part at its temperature.

    θ is that of the width of the foot. An arc that is stated alone is used, and is a query: nothing bears it out.
    """
    if sheet.read("intent", fit.intent) != "bedded":
        raise sheet.not_applicable("not a saddle on a barrel")
    saddle = _hot("D_s", fit.hole, sheet.follow(fit.hole.of), case, sheet)
    barrel = _hot("D_b", fit.shaft, sheet.follow(fit.shaft.of), case, sheet)
    θ, of_foot = _arc(fit, sheet)
    gap = sheet.work("g", saddle_gap, D_s=saddle, D_b=barrel, theta=θ)
    return sheet.worst(_filled(fit, gap, sheet), *of_foot)


def _arc(fit: Fit, sheet: Sheet) -> tuple[Radians, list[Judgement]]:
    """Half of the arc on which a saddle bears, and what is told of it."""
    if not sheet.is_stated("width of the foot", fit.foot_width):
        θ = sheet.take("θ", fit.half_arc)
        says = "no width of its foot bears out the arc that is stated"
        return θ, [sheet.states(False, says, where=fit.half_arc.where).graded(Grade.QUERY)]
    barrel = sheet.take("D_b", sheet.dimension(fit.shaft))
    θ_w = sheet.work("θ_w", half_arc_of_foot, w=sheet.take("w", fit.foot_width), D_b=barrel)
    if not sheet.is_stated("half arc", fit.half_arc):
        return θ_w, []
    apart = sheet.work("Δθ", arcs_apart, theta_w=θ_w, theta=sheet.take("θ", fit.half_arc))
    return θ_w, [
        sheet.at_most(apart, sheet.limit("arc", "Δθ_a")).else_says(
            "half arc stated {found} off that of its foot, {limit} allowed"
        )
    ]


def _filled(fit: Fit, gap: Metres, sheet: Sheet) -> Judgement:
    if not sheet.is_stated("jointing", fit.jointing):
        return sheet.at_most(gap, sheet.limit("jointing", "j")).else_says(
            "saddle stands off by {found}, jointing fills {limit}"
        )
    own = sheet.take("j", fit.jointing)
    return sheet.worst(
        sheet.at_most(gap, own).else_says("saddle stands off by {found}, its jointing fills {limit}"),
        sheet.at_most(own, sheet.limit("thickest", "j_max")).else_says(
            "jointing stated to fill {found}, no jointing fills above {limit}"
        ),
    )


def _hot(symbol: str, where: Dimension, part: Component, case: LoadCase, sheet: Sheet) -> float:
    T = sheet.take(f"T of {symbol}", case.temperature_of(part))
    alpha = sheet.look_up(f"α of {symbol}", sheet.material_of(part).expansion, of=part, at=T)
    size = sheet.take(symbol, sheet.dimension(where))
    return sheet.work(f"{symbol},h", size_when_hot, L=size, alpha=alpha, T=T, T_ref=DRAWING_TEMPERATURE)


RULES = (curved_seat,)
