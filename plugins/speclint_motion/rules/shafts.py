"""Shafts under torque and bending."""

from __future__ import annotations

from speclint import COMMON_PRACTICE, Grade, Judgement, Limit, Sheet, rule
from speclint.equations import Metres
from speclint.handbook.fits import DRAWING_TEMPERATURE
from speclint.handbook.materials import share_of_strength
from speclint.handbook.members import (
    MOORE,
    bending_stress,
    greatest_shear,
    keyway_strength_factor,
    keyway_twist_factor,
    torsion_shear,
    tube_polar_moment,
    twist,
)
from speclint.handbook.tables import SHIGLEY
from speclint.specs import Shaft
from speclint_motion.formulae.pins import round_modulus, weakened_shear, weakened_twist
from speclint_motion.sources import SHAFTING

#: The length whose twist is judged [m].
_ONE_METRE: Metres = 1.0


@rule(
    "shaft.torsion",
    title="The greatest shear stress of the shaft with its keyway does not exceed its share of proof "
    "stress, nor the twist of one metre its limit",
    on=Shaft,
    grade=Grade.NONCONFORMITY,
    cites=[SHAFTING, SHIGLEY.at("eq. 3-14"), MOORE, COMMON_PRACTICE],
    why="A keyway can take a quarter of a shaft's strength; a camshaft that twists opens its valves late.",
    leaves_out="shocks, whirling, fatigue at the ends of keyways, heat",
    limits=[
        Limit(
            "share",
            "0.3",
            "ratio",
            COMMON_PRACTICE,
            "greatest shear stress, torque and bending together, over proof stress",
        ),
        Limit("twist", "1 °", "angle", COMMON_PRACTICE, "greatest twist of one metre"),
    ],
)
def torsion(shaft: Shaft, sheet: Sheet) -> Judgement:
    """Greatest shear over the share that the keyway leaves, against 0.3 of the proof stress; twist of a metre."""
    d, T = sheet.take("d", shaft.diameter), sheet.take("T", shaft.torque)
    w, h = sheet.take("w", shaft.keyway_width), sheet.take("h", shaft.keyway_depth)
    M = sheet.take("M", shaft.bending_moment)
    σ = sheet.work("σ", bending_stress, M=M, Z=sheet.work("Z", round_modulus, d=d))
    τ = sheet.work("τ", torsion_shear, T=T, D=d, d=0.0)
    plain = sheet.work("τ_max", greatest_shear, sigma=σ, tau=τ)
    left = sheet.work("e", keyway_strength_factor, w=w, h=h, d=d)
    judged = sheet.work("τ_e", weakened_shear, τ=plain, e=left)
    material = sheet.material_of(shaft)
    R_p = sheet.look_up("R_p", material.proof_stress, of=shaft, at=DRAWING_TEMPERATURE, thickness=d)
    allowed = sheet.work("τ_all", share_of_strength, k=sheet.limit("share", "x"), R=R_p)
    wound = sheet.work(
        "θ",
        twist,
        T=T,
        L=_ONE_METRE,
        G=sheet.look_up("G", material.shear_modulus, of=shaft, at=DRAWING_TEMPERATURE),
        J=sheet.work("J", tube_polar_moment, D=d, d=0.0),
    )
    turned = sheet.work("θ_k", weakened_twist, k=sheet.work("k", keyway_twist_factor, w=w, h=h, d=d), θ=wound)
    return sheet.worst(sheet.at_most(judged, allowed), sheet.at_most(turned, sheet.limit("twist")))


RULES = (torsion,)
