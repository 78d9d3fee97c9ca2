"""Shafts under torque and bending."""

from __future__ import annotations

from speclint import COMMON_PRACTICE, Grade, Judgement, Limit, Sheet, rule
from speclint.equations import Metres, NewtonMetres, Pascals, Ratio
from speclint.facts import CRACKED, keyways_of_no_size, moment_of_shaft, torque_of_shaft
from speclint.handbook.fits import DRAWING_TEMPERATURE
from speclint.handbook.members import (
    MOORE,
    keyway_strength_factor,
    keyway_twist_factor,
    tube_polar_moment,
    twist,
)
from speclint.specs import Shaft
from speclint_motion.formulae.pins import weakened_twist
from speclint_motion.formulae.shafts import (
    half_of_torque,
    moments_together,
    shaft_fatigue_factor,
    shafting_allowable,
    shafting_shear,
    share_of_specimen,
    size_factor,
)
from speclint_motion.sources import SHAFTING, SHIGLEY_MARIN, SHIGLEY_SHAFTS

#: The length whose twist is judged [m].
_ONE_METRE: Metres = 1.0


@rule(
    "shaft.torsion",
    title="Shear by the shafting code is at most 0.30 of yield and 0.18 of tensile strength, less a quarter or more"
    " for a keyway; factor against fatigue and twist of one metre are within limits",
    on=Shaft,
    edition=6,
    grade=Grade.NONCONFORMITY,
    cites=[SHAFTING, SHIGLEY_SHAFTS, SHIGLEY_MARIN, MOORE, COMMON_PRACTICE],
    why="A keyway can take a quarter of a shaft's strength; a camshaft that twists opens its valves late.",
    leaves_out="sudden loads other than the blow of its cams, whirling, shoulders and press fits at the section, heat; "
    "limits of the sizes, springs and pressures behind its cams; bearings out of line or with play",
    against=("break under load", "break in fatigue"),
    limits=[
        Limit(
            "bending",
            "1.5",
            "ratio",
            SHAFTING,
            "factor of the bending moment, load steady or gradually applied",
        ),
        Limit("torque", "1", "ratio", SHAFTING, "factor of the torque, load steady or gradually applied"),
        Limit("keyway", "0.75", "ratio", SHAFTING, "share of strength that a keyway leaves at most"),
        Limit(
            "keyway_bending",
            "2.14",
            "ratio",
            SHIGLEY_SHAFTS.at("table 7-1, end-milled keyseat"),
            "fatigue notch factor of a keyway in bending",
        ),
        Limit(
            "keyway_torsion",
            "3",
            "ratio",
            SHIGLEY_SHAFTS.at("table 7-1, end-milled keyseat"),
            "fatigue notch factor of a keyway in torsion",
        ),
        Limit("fatigue", "1.5", "ratio", COMMON_PRACTICE, "least factor against fatigue"),
        Limit("surface", "0.85", "ratio", COMMON_PRACTICE, "surface factor of a turned shaft"),
        CRACKED,
        Limit("twist", "1 °", "angle", COMMON_PRACTICE, "greatest twist of one metre"),
    ],
)
def torsion(shaft: Shaft, sheet: Sheet) -> Judgement:
    """The code's shear; fatigue by distortion energy, the bending reversed at each turn; twist of a metre.

    Torque and bending moment are those of the cams on it where they need more than is stated: bearings and drive stand
    where the shaft states, and each cam presses at its place. The blow as each takes up its clearance is in both. The
    torque is taken to rise from nothing to its greatest and to fall again at each turn, as that of cams does.
    """
    if wrong := keyways_of_no_size(shaft, sheet):
        return sheet.states(False, wrong, where=shaft.keyway_width.where)
    M, T = moment_of_shaft(shaft, sheet), torque_of_shaft(shaft, sheet)
    return sheet.worst(
        _by_code(shaft, M, T, sheet), _against_fatigue(shaft, M, T, sheet), _twist(shaft, T, sheet)
    )


def _keyway(shaft: Shaft, sheet: Sheet) -> tuple[Metres, Metres, bool]:
    w, h = sheet.take("w", shaft.keyway_width), sheet.take("h", shaft.keyway_depth)
    return w, h, w > 0 or h > 0


def _by_code(shaft: Shaft, M: NewtonMetres, T: NewtonMetres, sheet: Sheet) -> Judgement:
    """Shear with the code's factors, against the lesser share of yield and tensile strength."""
    d, (w, h, keyed) = sheet.take("d", shaft.diameter), _keyway(shaft, sheet)
    left: Ratio = 1.0
    if keyed:
        left = min(sheet.work("e_M", keyway_strength_factor, w=w, h=h, d=d), sheet.limit("keyway", "e"))
    material = sheet.material_of(shaft)
    allowed = sheet.work(
        "S",
        shafting_allowable,
        S_y=sheet.look_up("R_p", material.proof_stress, of=shaft, at=DRAWING_TEMPERATURE, thickness=d),
        S_ut=_tensile(shaft, sheet),
        e=left,
    )
    stress = sheet.work(
        "τ",
        shafting_shear,
        M=M,
        T=T,
        C_m=sheet.limit("bending", "C_m"),
        C_t=sheet.limit("torque", "C_t"),
        d=d,
    )
    return sheet.at_most(stress, allowed).else_says("shaft sheared by {found}, {limit} allowed")


def _tensile(shaft: Shaft, sheet: Sheet) -> Pascals:
    d, material = sheet.take("d", shaft.diameter), sheet.material_of(shaft)
    return sheet.look_up("R_m", material.tensile_strength, of=shaft, at=DRAWING_TEMPERATURE, thickness=d)


def _against_fatigue(shaft: Shaft, M: NewtonMetres, T: NewtonMetres, sheet: Sheet) -> Judgement:
    d, (_, _, keyed) = sheet.take("d", shaft.diameter), _keyway(shaft, sheet)
    K_f = sheet.limit("keyway_bending", "K_f") if keyed else 1.0
    K_s = sheet.limit("keyway_torsion", "K_s") if keyed else 1.0
    half = sheet.work("T_a", half_of_torque, T=T)
    material = sheet.material_of(shaft)
    n = sheet.work(
        "n",
        shaft_fatigue_factor,
        S_a=sheet.work("S_a", moments_together, M=M, T=half, K_f=K_f, K_s=K_s),
        S_m=sheet.work("S_m", moments_together, M=0.0, T=half, K_f=K_f, K_s=K_s),
        k=sheet.work(
            "k", share_of_specimen, k_a=sheet.limit("surface", "k_a"), k_b=sheet.work("k_b", size_factor, d=d)
        ),
        S_f=sheet.look_up("S_f", material.fatigue_strength, of=shaft, loading="bending", diameter=d),
        R_m=_tensile(shaft, sheet),
        d=d,
    )
    return sheet.at_least(n, sheet.limit("fatigue")).else_says(
        "factor of the shaft against fatigue {found}, {limit} wanted"
    )


def _twist(shaft: Shaft, T: NewtonMetres, sheet: Sheet) -> Judgement:
    d, (w, h, _) = sheet.take("d", shaft.diameter), _keyway(shaft, sheet)
    wound = sheet.work(
        "θ",
        twist,
        T=T,
        L=_ONE_METRE,
        G=sheet.look_up("G", sheet.material_of(shaft).shear_modulus, of=shaft, at=DRAWING_TEMPERATURE),
        J=sheet.work("J", tube_polar_moment, D=d, d=0.0),
    )
    turned = sheet.work(
        "θ_k", weakened_twist, k=sheet.work("k_θ", keyway_twist_factor, w=w, h=h, d=d), θ=wound
    )
    return sheet.at_most(turned, sheet.limit("twist")).else_says(
        "shaft twists by {found} in a metre, {limit} allowed"
    )


RULES = (torsion,)
