"""Position of the piston at its dead centres, hot and at speed, for covers and rings."""

from __future__ import annotations

from speclint import Sheet
from speclint.handbook.cams import crank_radius, inertia_force, piston_acceleration
from speclint.handbook.fits import DRAWING_TEMPERATURE
from speclint.specs import CylinderBlock, CylinderEnd, LoadCase
from speclint_liners.formulae.ends import clearance_when_hot, rod_stretch

_ROD = "piston-rod"


def hot_clearance(
    block: CylinderBlock, end: CylinderEnd, case: LoadCase, sheet: Sheet
) -> tuple[float, float]:
    """Clearance from piston to cover, cold and hot."""
    front = sheet.read("side of end", end.side) == "front"
    cold = sheet.take("c", end.clearance)
    at_block = sheet.take("T_b", case.temperature_of(block))
    at_rod = sheet.take("T_r", case.temperature_named(_ROD))
    rod = sheet.material_named(f"piston rod of {block.id}", block.drive.rod_material)
    hot = sheet.work(
        "c_h",
        clearance_when_hot,
        c=cold,
        s=1.0 if front else -1.0,
        x=sheet.take("x", end.face_at),
        alpha_b=sheet.look_up("α_b", sheet.material_of(block).expansion, of=block, at=at_block),
        T_b=at_block,
        L=sheet.take("L", block.drive.rod_length),
        alpha_r=sheet.look_up("α_r", rod.expansion, at=at_rod),
        T_r=at_rod,
        T_ref=DRAWING_TEMPERATURE,
    )
    return cold, hot


def stretch(block: CylinderBlock, case: LoadCase, sheet: Sheet) -> float:
    """Stretch of the piston rod by the reciprocating masses, at the dead centre where it is greatest."""
    drive = block.drive
    rod = sheet.material_named(f"piston rod of {block.id}", drive.rod_material)
    acceleration = sheet.work(
        "a",
        piston_acceleration,
        r=sheet.work("r", crank_radius, S=sheet.take("s", drive.stroke)),
        l=sheet.take("l", drive.connecting_rod_length),
        ω=sheet.take("ω", case.rotational_speed),
        θ=0.0,
    )
    force = sheet.work("F", inertia_force, m=sheet.take("m", drive.reciprocating_mass), a=acceleration)
    at = sheet.take("T_r", case.temperature_named(_ROD))
    return sheet.work(
        "u",
        rod_stretch,
        F=force,
        L=sheet.take("L", drive.rod_length),
        d=sheet.take("d_r", drive.rod_diameter),
        E=sheet.look_up("E_r", rod.modulus, at=at),
    )
