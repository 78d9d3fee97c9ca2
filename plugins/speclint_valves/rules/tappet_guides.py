"""The clearance of a tappet in its guide."""

from __future__ import annotations

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, Grade, Judgement, Limit, Sheet, rule
from speclint.facts import growth_since_drawn
from speclint.specs import HOT_CASES, LoadCase, Tappet
from speclint_valves.formulae.guides import guide_clearance_hot, share_of_diameter
from speclint_valves.inputs.rollers import rocks


@rule(
    "tappet.guide-clearance",
    title="Hot, a tappet has a clearance in its guide of 0.0001 to 0.004 of its diameter",
    on=Tappet,
    cases=HOT_CASES,
    grade=Grade.NONCONFORMITY,
    cites=[FIRST_PRINCIPLES, COMMON_PRACTICE],
    why="a tappet that seizes holds its valve open; a loose one tilts, and its roller runs on an edge of the cam",
    leaves_out="wear of the guide, a bush in it, form of bore and stem, and oil that has burnt; a tappet that rocks, "
    "without a guide",
    against=("seize", "wear"),
    limits=[
        Limit("least", "0.0001", "ratio", COMMON_PRACTICE, "least hot clearance over the diameter"),
        Limit("greatest", "0.004", "ratio", COMMON_PRACTICE, "greatest hot clearance over the diameter"),
    ],
)
def guide_clearance(tappet: Tappet, case: LoadCase, sheet: Sheet) -> Judgement:
    """D (1 + ε_b) − d (1 + ε_t), of the bore in the cam box and of the stem, each as hot as its own part."""
    if rocks(tappet, sheet):
        raise sheet.not_applicable("a tappet that rocks has no guide")
    box = sheet.follow(tappet.carried_in)
    D, d = sheet.take("D", box.tappet_bore), sheet.take("d", tappet.stem_diameter)
    ε_b, ε_t = growth_since_drawn(box, "b", case, sheet), growth_since_drawn(tappet, "t", case, sheet)
    c = sheet.work("c", guide_clearance_hot, D_g=D, ε_g=ε_b, Δ_g=0.0, d=d, ε_s=ε_t)
    least = sheet.work("c_min", share_of_diameter, x=sheet.limit("least", "x_l"), d=d)
    most = sheet.work("c_max", share_of_diameter, x=sheet.limit("greatest", "x_g"), d=d)
    return sheet.worst(
        sheet.at_least(c, least).else_says("tappet tight in its guide: {found} of clearance, {limit} wanted"),
        sheet.at_most(c, most).else_says("tappet loose in its guide: {found} of clearance, {limit} allowed"),
    )


RULES = (guide_clearance,)
