"""What holds a liner whose fit has gone loose: a collar that the cover nips, or dowels."""

from __future__ import annotations

from typing import TYPE_CHECKING

from speclint import COMMON_PRACTICE, Judgement, Limit, Sheet
from speclint.facts import clamp_on_collar
from speclint.handbook.fits import DRAWING_TEMPERATURE
from speclint.handbook.materials import share_of_strength
from speclint.specs import CylinderLiner
from speclint_liners.formulae.seating import (
    collar_nip,
    collar_nip_hot,
    dowel_bearing,
    dowel_shear,
    steam_on_liner_end,
)
from speclint_liners.inputs.cylinders import ends_beside
from speclint_liners.inputs.fitted import HotFit, Housing
from speclint_liners.inputs.pressures import pressure_inside

if TYPE_CHECKING:
    from speclint.specs import LoadCase

LIMITS = [
    Limit("shear_share", "0.4", "ratio", COMMON_PRACTICE, "share of a dowel's proof stress in shear"),
    Limit("bearing_share", "0.5", "ratio", COMMON_PRACTICE, "share of the iron's compressive strength"),
]


def retention(
    liner: CylinderLiner, housed: Housing, hot: HotFit, case: LoadCase, sheet: Sheet
) -> Judgement | None:
    """Whether what is stated to hold a loose liner holds it; None where nothing does or nothing is stated.

    The force is that of the steam on one end of the liner, the other end without.
    """
    if not sheet.is_stated("retention", liner.retained_by):
        return None
    by = sheet.read("held by", liner.retained_by)
    if by == "nothing":
        return None
    d, D = sheet.take("d", liner.bore), sheet.take("D_l", liner.outside_diameter)
    p = pressure_inside(case, ends_beside(housed.block, liner, sheet), sheet)
    force = sheet.work("F", steam_on_liner_end, p=p, D=D, d=d)
    if by == "dowel":
        return _dowels(liner, force, hot, sheet)
    return _collar(liner, housed, force, hot, sheet)


def _collar(liner: CylinderLiner, housed: Housing, force: float, hot: HotFit, sheet: Sheet) -> Judgement:
    """The collar is nipped hot as well as cold, and the cover presses harder than the steam."""
    b, h = sheet.take("b", liner.collar.thickness), sheet.take("h", housed.bore.recess_depth)
    cold = sheet.work("n", collar_nip, b=b, h=h)
    nip = sheet.work(
        "n_h",
        collar_nip_hot,
        b=b,
        alpha_l=sheet.look_up("α_l", sheet.material_of(liner).expansion, of=liner, at=hot.at_liner),
        T_l=hot.at_liner,
        h=h,
        alpha_b=sheet.look_up(
            "α_b", sheet.material_of(housed.block).expansion, of=housed.block, at=hot.at_block
        ),
        T_b=hot.at_block,
        T_ref=DRAWING_TEMPERATURE,
    )
    pressed = sheet.at_least(clamp_on_collar(liner, sheet), force).else_says(
        "loose hot: its collar is clamped by {found} of {limit} wanted"
    )
    return sheet.worst(
        sheet.stays(nip, cold, strictly=True).else_says("loose hot: of the nip of its collar {left} is left"),
        pressed,
    )


def _dowels(liner: CylinderLiner, force: float, hot: HotFit, sheet: Sheet) -> Judgement:
    """Shear of the dowels, and their bearing on the iron."""
    n, d = sheet.count("n", liner.dowels.count), sheet.take("d_d", liner.dowels.diameter)
    shear = sheet.work("τ", dowel_shear, F=force, n=n, d=d)
    metal = sheet.material_named(f"dowels of {liner.id}", liner.dowels.material)
    proof = sheet.look_up("R_p", metal.proof_stress, at=hot.at_block, thickness=d)
    may = sheet.work("τ_all", share_of_strength, k=sheet.limit("shear_share", "k_τ"), R=proof)
    bearing = sheet.work("σ_d", dowel_bearing, F=force, n=n, d=d, L=sheet.take("L_d", liner.dowels.depth))
    iron = sheet.look_up("R_c", sheet.material_of(liner).compressive_strength, of=liner, at=hot.at_liner)
    bears = sheet.work("σ_d,all", share_of_strength, k=sheet.limit("bearing_share", "k_σ"), R=iron)
    return sheet.worst(
        sheet.at_most(shear, may).else_says("loose hot: its dowels are sheared by {found}, {limit} allowed"),
        sheet.at_most(bearing, bears).else_says(
            "loose hot: its dowels bear on the iron with {found}, {limit} allowed"
        ),
    )
