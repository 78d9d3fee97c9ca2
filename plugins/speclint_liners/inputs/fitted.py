"""Inputs that several rules share: the bore that houses a liner, the pressure, the fit cold and hot."""

from __future__ import annotations

from typing import TYPE_CHECKING

from msgspec import Struct

from speclint import Sheet, replace
from speclint.facts import wall_round
from speclint.handbook.cylinders import outside_of_wall
from speclint.handbook.fits import (
    DRAWING_TEMPERATURE,
    hot_interference,
    interference,
    interference_after_smoothing,
)
from speclint.specs import CylinderBlock, CylinderLiner
from speclint_liners.formulae.walls import eccentricity_of_run_out, outside_without_end

if TYPE_CHECKING:
    from speclint.specs import Bore, LoadCase


class Housing(Struct, frozen=True):
    """A block and the bore of it that a liner sits in."""

    block: CylinderBlock
    bore: Bore


class Fit(Struct, frozen=True):
    """Outside of the liner, bore of the block, and their interference by the drawings."""

    outside: float
    bore: float
    delta: float


class HotFit(Struct, frozen=True):
    """Interference left hot, negative for a gap, and the temperatures of liner and block."""

    delta: float
    at_liner: float
    at_block: float


class Elastic(Struct, frozen=True):
    """The sizes and elastic constants of a liner and the ring of block round it, as the formulae take them."""

    d: float
    D: float
    D_s: float
    E: float
    nu: float
    E_s: float
    nu_s: float


def housing(liner: CylinderLiner, sheet: Sheet) -> Housing:
    """The block and the bore that the liner names."""
    block = sheet.follow(liner.housed_in)
    bore = sheet.entry(block.bores, liner.in_bore, f"bores of {block.id}")
    return Housing(block, bore)


def cold_fit(liner: CylinderLiner, housed: Housing, sheet: Sheet) -> Fit:
    """The fit by the drawings: its interference is negative for a clearance."""
    outside = sheet.take("D_l", liner.outside_diameter)
    bore = sheet.take("D_b", housed.bore.diameter)
    return Fit(outside, bore, sheet.work("δ", interference, d=outside, D=bore))


def gripping(liner: CylinderLiner, housed: Housing, fit: Fit, sheet: Sheet) -> Fit:
    """The fit less all that the smoothing of both faces may take: what is sure to be left to hold the liner."""
    rough = {
        "Rz_in": sheet.take("Rz_l", liner.roughness),
        "Rz_out": sheet.take("Rz_b", housed.bore.roughness),
    }
    return replace(fit, delta=sheet.work("δ_w", interference_after_smoothing, delta=fit.delta, **rough))


def hot_fit(liner: CylinderLiner, housed: Housing, case: LoadCase, fit: Fit, sheet: Sheet) -> HotFit:
    """The fit with liner and block at their own temperatures."""
    at_liner = sheet.take("T_l", case.temperature_of(liner))
    at_block = sheet.take("T_b", case.temperature_of(housed.block))
    iron, steel = sheet.material_of(liner), sheet.material_of(housed.block)
    delta = sheet.work(
        "δ_h",
        hot_interference,
        delta=fit.delta,
        D=fit.bore,
        alpha_in=sheet.look_up("α_l", iron.expansion, of=liner, at=at_liner),
        T_in=at_liner,
        alpha_out=sheet.look_up("α_b", steel.expansion, of=housed.block, at=at_block),
        T_out=at_block,
        T_ref=DRAWING_TEMPERATURE,
    )
    return HotFit(delta, at_liner, at_block)


def elastic(
    liner: CylinderLiner, housed: Housing, fit: Fit, at_liner: float, at_block: float, sheet: Sheet
) -> Elastic:
    """Sizes and constants of a new liner and the block round it, each at its temperature."""
    iron, steel = sheet.material_of(liner), sheet.material_of(housed.block)
    wall = wall_round(housed.bore, housed.block, sheet)
    return Elastic(
        d=sheet.take("d", liner.bore),
        D=fit.outside,
        D_s=sheet.work("D_s", outside_of_wall, d=fit.bore, t=wall),
        E=sheet.look_up("E_l", iron.modulus, of=liner, at=at_liner),
        nu=sheet.look_up("ν_l", iron.poisson, of=liner),
        E_s=sheet.look_up("E_b", steel.modulus, of=housed.block, at=at_block),
        nu_s=sheet.look_up("ν_b", steel.poisson, of=housed.block),
    )


def in_stiffest_block(rings: Elastic, sheet: Sheet) -> Elastic:
    """A liner in a block without end: its wall is stated where it is least, and presses harder elsewhere."""
    return replace(rings, D_s=sheet.work("D_free", outside_without_end, D=rings.D))


def off_centre(liner: CylinderLiner, sheet: Sheet) -> float:
    """Eccentricity of bore and outside of the liner: as stated, or half the run-out; of both the greater."""
    if not sheet.is_stated("run-out", liner.run_out):
        return sheet.take("e", liner.eccentricity)
    by_run_out = sheet.work("e_r", eccentricity_of_run_out, r=sheet.take("r", liner.run_out))
    if not sheet.is_stated("eccentricity", liner.eccentricity):
        return by_run_out
    return max(by_run_out, sheet.take("e", liner.eccentricity))
