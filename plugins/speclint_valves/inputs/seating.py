"""What several rules share of a seat ring: its housing, its fit cold and hot, pressure and stresses."""

from __future__ import annotations

from msgspec import Struct

from speclint import Judgement, Sheet, replace
from speclint.equations import Kelvins, Metres, Pascals
from speclint.facts import wall_round
from speclint.handbook.cylinders import outside_of_wall
from speclint.handbook.fits import (
    DRAWING_TEMPERATURE,
    contact_pressure,
    hot_interference,
    inner_hoop_stress,
    interference,
    interference_after_light_smoothing,
    interference_after_smoothing,
    outer_tresca_stress,
    pressing_interference,
    size_of_stress,
)
from speclint.handbook.materials import share_of_strength
from speclint.specs import CylinderBlock, SeatBore, ValveSeat
from speclint_valves.formulae.seats import length_in_contact, pressure_in_solid_block


class Fit(Struct, frozen=True):
    """A seat in its bore: the block, the bore's table, joint diameters and the cold interference."""

    block: CylinderBlock
    housing: SeatBore
    joint: Metres
    delta: Metres


def cold_fit(seat: ValveSeat, sheet: Sheet) -> Fit:
    """The fit as the drawings give it, at 20 °C."""
    block = sheet.follow(seat.pressed_into)
    housing = sheet.entry(block.seat_bores, seat.in_bore, f"seat bores of {block.id}")
    outside = sheet.take("D_s", seat.outside_diameter)
    bore = sheet.take("D_b", housing.diameter)
    return Fit(block, housing, bore, sheet.work("δ", interference, d=outside, D=bore))


def gripping(seat: ValveSeat, fit: Fit, sheet: Sheet) -> Fit:
    """The fit less all that smoothing may take: what is sure to be left to hold the ring."""
    rough = {
        "Rz_in": sheet.take("Rz_s", seat.roughness),
        "Rz_out": sheet.take("Rz_b", fit.housing.roughness),
    }
    return replace(fit, delta=sheet.work("δ_w", interference_after_smoothing, delta=fit.delta, **rough))


def pressing(seat: ValveSeat, fit: Fit, sheet: Sheet) -> Fit:
    """The fit less the little that smoothing is sure to take: what may stress the parts; all of it where unknown."""
    known = sheet.is_stated("roughness of the ring", seat.roughness)
    if not (known and sheet.is_stated("roughness of the bore", fit.housing.roughness)):
        return fit
    rough = {
        "Rz_in": sheet.take("Rz_s", seat.roughness),
        "Rz_out": sheet.take("Rz_b", fit.housing.roughness),
    }
    return replace(fit, delta=sheet.work("δ_w", interference_after_light_smoothing, delta=fit.delta, **rough))


def joint_length(seat: ValveSeat, fit: Fit, sheet: Sheet) -> Metres:
    """Length in contact: the shorter of ring and bore."""
    L_s, L_b = sheet.take("L_s", seat.length), sheet.take("L_b", fit.housing.depth)
    return sheet.work("L", length_in_contact, L_s=L_s, L_b=L_b)


def interference_at(seat: ValveSeat, fit: Fit, sheet: Sheet, T_s: Kelvins, T_b: Kelvins) -> Metres:
    """The interference with ring and block each at its temperature."""
    ring, block = sheet.material_of(seat), sheet.material_of(fit.block)
    return sheet.work(
        "δ_h",
        hot_interference,
        delta=fit.delta,
        D=fit.joint,
        alpha_in=sheet.look_up("α_s", ring.expansion, of=seat, at=T_s),
        T_in=T_s,
        alpha_out=sheet.look_up("α_b", block.expansion, of=fit.block, at=T_b),
        T_out=T_b,
        T_ref=DRAWING_TEMPERATURE,
    )


def pressure_of(
    seat: ValveSeat, fit: Fit, sheet: Sheet, delta: Metres, T_s: Kelvins, T_b: Kelvins
) -> Pascals:
    """Contact pressure of an interference; zero where the ring is loose."""
    ring, block = sheet.material_of(seat), sheet.material_of(fit.block)
    return sheet.work(
        "p_c",
        contact_pressure,
        delta=sheet.work("δ_p", pressing_interference, delta=delta),
        d_in=sheet.take("d", seat.bore),
        D=fit.joint,
        D_out=backing(fit, sheet),
        E_in=sheet.look_up("E_s", ring.modulus, of=seat, at=T_s),
        nu_in=sheet.look_up("ν_s", ring.poisson, of=seat),
        E_out=sheet.look_up("E_b", block.modulus, of=fit.block, at=T_b),
        nu_out=sheet.look_up("ν_b", block.poisson, of=fit.block),
    )


def backing(fit: Fit, sheet: Sheet) -> Metres:
    """Outside diameter of the part of the block that backs the seat."""
    return sheet.work("D_o", outside_of_wall, d=fit.joint, t=wall_round(fit.housing, fit.block, sheet))


def stresses(seat: ValveSeat, fit: Fit, sheet: Sheet, delta: Metres, T_s: Kelvins, T_b: Kelvins) -> Judgement:
    """Ring and block under an interference, each against its share of strength at its temperature.

    The ring is pressed most where the block behind it is thickest, the block stressed most where it is thinnest.
    """
    p = pressure_of(seat, fit, sheet, delta, T_s, T_b)
    return sheet.worst(_ring(seat, fit, sheet, delta, T_s, T_b), _block(fit, sheet, p, T_b))


def _ring(seat: ValveSeat, fit: Fit, sheet: Sheet, delta: Metres, T_s: Kelvins, T_b: Kelvins) -> Judgement:
    ring, block = sheet.material_of(seat), sheet.material_of(fit.block)
    bore = sheet.take("d", seat.bore)
    p = sheet.work(
        "p_s",
        pressure_in_solid_block,
        delta=sheet.work("δ_p", pressing_interference, delta=delta),
        d=bore,
        D=fit.joint,
        E_s=sheet.look_up("E_s", ring.modulus, of=seat, at=T_s),
        nu_s=sheet.look_up("ν_s", ring.poisson, of=seat),
        E_b=sheet.look_up("E_b", block.modulus, of=fit.block, at=T_b),
        nu_b=sheet.look_up("ν_b", block.poisson, of=fit.block),
    )
    hoop = sheet.work("σ_θ", inner_hoop_stress, p=p, d_in=bore, D=fit.joint)
    if ring.holds("compressive-strength"):
        share, table = sheet.limit("ring-share", "k_s"), ring.compressive_strength
    else:
        share, table = sheet.limit("block-share", "k_s"), ring.proof_stress
    allowed = sheet.work("σ_s", share_of_strength, k=share, R=sheet.look_up("S_s", table, of=seat, at=T_s))
    return sheet.at_most(sheet.work("σ", size_of_stress, sigma=hoop), allowed).else_says(
        "fit stresses the ring to {found}, {limit} allowed"
    )


def _block(fit: Fit, sheet: Sheet, p: Pascals, T_b: Kelvins) -> Judgement:
    tresca = sheet.work("σ_T", outer_tresca_stress, p=p, D=fit.joint, D_out=backing(fit, sheet))
    proof = sheet.look_up("R_p", sheet.material_of(fit.block).proof_stress, of=fit.block, at=T_b)
    return sheet.at_most(
        tresca, sheet.work("σ_b", share_of_strength, k=sheet.limit("block-share", "k_b"), R=proof)
    ).else_says("fit stresses the block to {found}, {limit} allowed")
