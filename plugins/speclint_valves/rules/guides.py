"""The guide of a spindle in its place: gripped by what holds it, or kept there otherwise."""

from __future__ import annotations

from speclint import FIRST_PRINCIPLES, Grade, Judgement, Sheet, rule
from speclint.specs import LoadCase, ValveSpindle
from speclint_valves.inputs.guides import guide_grip


@rule(
    "spindle.guide-stays",
    title="A guide that is pressed in has an interference above zero in every case, or a collar, a locking screw or a "
    "cover keeps it in its place",
    wrong="guide loose hot: {left} of interference left, and nothing keeps it",
    on=ValveSpindle,
    cases=("warming", "starting", "running", "drifting", "standing-hot", "cooling", "water"),
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


RULES = (guide_stays,)
