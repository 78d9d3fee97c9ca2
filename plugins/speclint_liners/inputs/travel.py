"""Position of the piston at its dead centres, hot and at speed, for covers and rings."""

from __future__ import annotations

from typing import TYPE_CHECKING

from speclint import Sheet
from speclint.equations import Metres
from speclint.facts import (
    cold_clearance,
    connecting_rod_of,
    face_forward,
    mass_moved,
    rod_diameter,
    rod_steel,
    speed_of_crank,
    stroke_of,
)
from speclint.handbook.cams import crank_radius, inertia_force, piston_acceleration
from speclint.handbook.fits import DRAWING_TEMPERATURE
from speclint.specs import CylinderBlock
from speclint_liners.formulae.ends import (
    clearance_when_hot,
    clearance_with_driving_rod,
    rod_stretch,
    stretch_of_section,
    stretches_together,
)

if TYPE_CHECKING:
    from speclint.specs import CylinderEnd, LoadCase

#: Names under which a duty states the temperatures of what drives the piston, and of the frame as a whole.
_ROD, _CONNECTING_ROD, _FRAME = "piston-rod", "connecting-rod", "frame"


def hot_clearance(
    block: CylinderBlock, end: CylinderEnd, case: LoadCase, sheet: Sheet
) -> tuple[float, float]:
    """Clearance from piston to cover, cold and hot."""
    front = sheet.read("side of end", end.side) == "front"
    cold = cold_clearance(block, end, sheet)
    at_block = sheet.take("T_b", case.temperature_of(block))
    at_rod = sheet.take("T_r", case.temperature_named(_ROD))
    rod = sheet.material_named(f"piston rod of {block.id}", rod_steel(block, sheet))
    sign = 1.0 if front else -1.0
    hot = sheet.work(
        "c_h",
        clearance_when_hot,
        c=cold,
        s=sign,
        x=face_forward(block, end, sheet),
        alpha_b=sheet.look_up("α_b", sheet.material_of(block).expansion, of=block, at=at_block),
        T_b=at_block,
        L=sheet.take("L", block.drive.rod_length),
        alpha_r=sheet.look_up("α_r", rod.expansion, at=at_rod),
        T_r=at_rod,
        T_ref=DRAWING_TEMPERATURE,
    )
    return cold, _with_driving_rod(block, hot, sign, case, sheet)


def _with_driving_rod(block: CylinderBlock, hot: Metres, sign: float, case: LoadCase, sheet: Sheet) -> Metres:
    """The clearance with the growth of the connecting rod, and of the frame between its axle and the block."""
    drive = block.drive
    rod = sheet.material_named(f"connecting rod of {block.id}", drive.connecting_rod_material)
    frame = sheet.material_named(f"frame of {block.id}", drive.frame_material)
    at_rod = sheet.take("T_c", case.temperature_named(_CONNECTING_ROD))
    at_frame = sheet.take("T_f", case.temperature_named(_FRAME))
    return sheet.work(
        "c_r",
        clearance_with_driving_rod,
        c=hot,
        s=sign,
        l=sheet.take("l", connecting_rod_of(block, sheet)),
        alpha_c=sheet.look_up("α_c", rod.expansion, at=at_rod),
        T_c=at_rod,
        L_f=sheet.take("L_f", drive.axle_from_fixed_point),
        alpha_f=sheet.look_up("α_f", frame.expansion, at=at_frame),
        T_f=at_frame,
        T_ref=DRAWING_TEMPERATURE,
    )


def stretch(block: CylinderBlock, case: LoadCase, sheet: Sheet) -> float:
    """Stretch of both rods by the reciprocating masses, at the dead centre where it is greatest."""
    drive = block.drive
    rod = sheet.material_named(f"piston rod of {block.id}", rod_steel(block, sheet))
    acceleration = sheet.work(
        "a",
        piston_acceleration,
        r=sheet.work("r", crank_radius, S=sheet.take("s", stroke_of(block, sheet))),
        l=sheet.take("l", connecting_rod_of(block, sheet)),
        ω=speed_of_crank(block, case, sheet),
        θ=0.0,
    )
    force = sheet.work("F", inertia_force, m=mass_moved(block, sheet), a=acceleration)
    at = sheet.take("T_r", case.temperature_named(_ROD))
    piston_rod = sheet.work(
        "u_1",
        rod_stretch,
        F=force,
        L=sheet.take("L", drive.rod_length),
        d=rod_diameter(block, sheet),
        E=sheet.look_up("E_r", rod.modulus, at=at),
    )
    metal = sheet.material_named(f"connecting rod of {block.id}", drive.connecting_rod_material)
    connecting_rod = sheet.work(
        "u_2",
        stretch_of_section,
        F=force,
        l=sheet.take("l", connecting_rod_of(block, sheet)),
        A=sheet.take("A_c", drive.connecting_rod_area),
        E=sheet.look_up("E_c", metal.modulus, at=sheet.take("T_c", case.temperature_named(_CONNECTING_ROD))),
    )
    return sheet.work("u", stretches_together, u_1=piston_rod, u_2=connecting_rod)
