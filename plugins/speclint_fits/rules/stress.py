"""Stress of both parts of an interference fit, cold and hot."""

from __future__ import annotations

from speclint import COMMON_PRACTICE, Grade, Judgement, Limit, Sheet, rule
from speclint.handbook.fits import (
    SHRINK_FIT,
    inner_hoop_stress,
    outer_hoop_stress,
    outer_tresca_stress,
    size_of_stress,
)
from speclint.handbook.materials import share_of_strength
from speclint.specs import HOT_CASES, Fit, LoadCase
from speclint_fits.formulae.fits import solid_shaft_stress
from speclint_fits.inputs.fits import (
    Hot,
    Parts,
    Pressed,
    Sizes,
    hot_fit,
    intent_of,
    parts_of,
    pressed,
    sizes_of,
)

LIMITS = [
    Limit("proof_share", "0.67", "ratio", COMMON_PRACTICE, "share of proof stress"),
    Limit("crushing_share", "0.5", "ratio", COMMON_PRACTICE, "share of an iron's compressive strength"),
    Limit("iron_hub_share", "0.25", "ratio", COMMON_PRACTICE, "share of an iron hub's tensile strength"),
]


@rule(
    "fit.stress",
    title="At the greatest interference the stress of hub and shaft, cold or in any hot case, does not exceed its "
    "share of the strength",
    on=Fit,
    cases=("cold", *HOT_CASES, "water"),
    grade=Grade.NONCONFORMITY,
    cites=[*SHRINK_FIT, COMMON_PRACTICE],
    why="A hub that yields during assembly has lost its grip before the engine first runs.",
    leaves_out="stress at the ends of the fit, keyways and holes near it, temperature differences within a "
    "wall",
    against=("break under load",),
    limits=LIMITS,
    edition=2,
)
def stress(fit: Fit, case: LoadCase, sheet: Sheet) -> Judgement:
    """Lamé of both under the greatest interference; Tresca in a steel hub, hoop tension in an iron one."""
    if intent_of(fit, sheet) != "interference":
        raise sheet.not_applicable("the fit is not an interference fit")
    sizes, parts = sizes_of(fit, sheet), parts_of(fit, sheet)
    hot = hot_fit(sizes, parts, case, sheet)
    contact = pressed(fit, sizes, parts, hot, sheet)
    return sheet.worst(
        _hub(fit, sizes, parts, hot, contact, sheet), _shaft(sizes, parts, hot, contact, sheet)
    )


def _hub(fit: Fit, sizes: Sizes, parts: Parts, hot: Hot, contact: Pressed, sheet: Sheet) -> Judgement:
    metal = sheet.material_of(parts.outer)
    wall = sheet.take("t", sheet.dimension(fit.wall))
    if metal.holds("proof-stress"):
        found = sheet.work("σ_T", outer_tresca_stress, p=contact.p, D=sizes.hole, D_out=contact.D_out)
        share, table = sheet.limit("proof_share", "k_o"), metal.proof_stress
    else:
        found = sheet.work("σ_t", outer_hoop_stress, p=contact.p, D=sizes.hole, D_out=contact.D_out)
        share, table = sheet.limit("iron_hub_share", "k_o"), metal.tensile_strength
    strength = sheet.look_up("R_o", table, of=parts.outer, at=hot.T_out, thickness=wall)
    return sheet.at_most(found, sheet.work("S_o", share_of_strength, k=share, R=strength)).else_says(
        "fit stresses the outer part to {found}, {limit} allowed"
    )


def _shaft(sizes: Sizes, parts: Parts, hot: Hot, contact: Pressed, sheet: Sheet) -> Judgement:
    metal = sheet.material_of(parts.inner)
    if contact.d_in > 0:
        hoop = sheet.work("σ_θ", inner_hoop_stress, p=contact.p, d_in=contact.d_in, D=sizes.hole)
        found = sheet.work("σ_i", size_of_stress, sigma=hoop)
    else:
        found = sheet.work("σ_i", solid_shaft_stress, p=contact.p)
    if metal.holds("proof-stress"):
        share = sheet.limit("proof_share", "k_i")
        strength = sheet.look_up("R_i", metal.proof_stress, of=parts.inner, at=hot.T_in)
    else:
        share = sheet.limit("crushing_share", "k_i")
        strength = sheet.look_up("R_i", metal.compressive_strength, of=parts.inner, at=hot.T_in)
    return sheet.at_most(found, sheet.work("S_i", share_of_strength, k=share, R=strength)).else_says(
        "fit stresses the inner part to {found}, {limit} allowed"
    )


RULES = (stress,)
