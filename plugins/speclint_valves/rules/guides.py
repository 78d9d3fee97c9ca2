"""The guide of a spindle in its place: of the metal that holds it, gripped by that, or kept there otherwise."""

from __future__ import annotations

from collections.abc import Iterator

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Grade, Judgement, Pair, Rule, Sheet, agreement, rule
from speclint.handbook.fits import DRAWING_TEMPERATURE, SHRINK_FIT, size_of_stress
from speclint.handbook.materials import share_of_strength
from speclint.specs import HOT_CASES, LoadCase, ValveSpindle
from speclint_valves.inputs.guides import guide_grip, guide_pressed, holder_of
from speclint_valves.rules.seats import SHARES


@rule(
    "spindle.guide-stays",
    title="A guide that is pressed in has an interference above zero in every case, or a collar, a locking screw or a "
    "cover keeps it in its place",
    wrong="guide loose hot: {left} of interference left, and nothing keeps it",
    on=ValveSpindle,
    cases=(*HOT_CASES, "water"),
    grade=Grade.NONCONFORMITY,
    cites=[FIRST_PRINCIPLES],
    why="an iron guide in a steel block loses its grip as both grow hot; it walks out with its spindle, and lets "
    "steam past",
    leaves_out="the roughness that is smoothed as the guide goes in, the strength of collar and screw, and steam that "
    "passes round a guide that is loose where it is kept",
    against=("leak",),
    edition=2,
)
def guide_stays(spindle: ValveSpindle, case: LoadCase, sheet: Sheet) -> Judgement:
    """δ + D (α_g − α_b)(T − 20 °C) > 0, guide and what holds it as hot as one another, unless something keeps it."""
    if sheet.read("guide held", spindle.guide_held) == "part of the block":
        raise sheet.not_applicable("the guide is bored in what holds it")
    kept = sheet.said("guide kept by", spindle.guide_kept_by) or "nothing"
    if kept != "nothing":
        says = f"whether or not its fit grips hot, the guide is kept by: {kept}"
        return sheet.states(True, says, where=spindle.guide_kept_by.where)
    cold, left = guide_grip(spindle, case, sheet)
    return sheet.stays(left, cold, strictly=True)


@rule(
    "spindle.guide-fit-stress",
    title="Pressed in as tight as its drawing allows, at 20 °C, a guide of iron is stressed to at most 0.5 of its "
    "compressive strength, any other to at most 0.67 of its proof stress",
    wrong="fit stresses the guide to {found}, {limit} allowed",
    on=ValveSpindle,
    grade=Grade.NONCONFORMITY,
    cites=[*SHRINK_FIT, COMMON_PRACTICE],
    why="a guide that is too tight cracks or yields as it goes in, and has lost its grip when it is hot",
    leaves_out="what holds the guide, which is thick all round it and stressed less; the peak at its ends",
    against=("leak",),
    limits=SHARES,
)
def guide_fit_stress(spindle: ValveSpindle, sheet: Sheet) -> Judgement:
    """2 p D²/(D² − d²) at the bore of the guide, p of the greatest interference in a block thick all round."""
    if sheet.read("guide held", spindle.guide_held) == "part of the block":
        raise sheet.not_applicable("the guide is bored in what holds it")
    hoop, metal = guide_pressed(spindle, sheet)
    if metal.holds("compressive-strength"):
        share, table = sheet.limit("ring-share", "k_g"), metal.compressive_strength
    else:
        share, table = sheet.limit("block-share", "k_g"), metal.proof_stress
    S = sheet.look_up("S_g", table, at=DRAWING_TEMPERATURE)
    allowed = sheet.work("σ_g", share_of_strength, k=share, R=S)
    return sheet.at_most(sheet.work("σ", size_of_stress, sigma=hoop), allowed)


def _metals(spindle: ValveSpindle, sheet: Sheet) -> Iterator[Pair]:
    """The metal of a guide that is bored in block or cam box against that of this part."""
    if sheet.said("guide held", spindle.guide_held) != "part of the block":
        return
    holder = holder_of(spindle, sheet)
    if sheet.is_stated(f"material of {holder.id}", holder.material):
        yield Pair(spindle.guide_material, holder.material)


metal_of_its_holder: Rule = agreement(
    "spindle.guide-of-its-holder",
    title="A guide that is bored in its block, or in its cam box, is of the metal of that",
    on=ValveSpindle,
    pairs=_metals,
    within="",
    grade=Grade.NONCONFORMITY,
    why="a guide that is judged as bronze wears as the steel that it is bored in, or a bush is never made",
    leaves_out="a guide that is pressed in, and one whose metal is not stated",
)

RULES = (guide_stays, guide_fit_stress, metal_of_its_holder)
