"""The plate of a cover: its strength as rolled or cast, and its bending by pressure and by what stands on it."""

from __future__ import annotations

from msgspec import Struct

from speclint import Sheet
from speclint.facts import hole_through
from speclint.handbook.bolted_joints import loads
from speclint.handbook.plates import circular as plates, rings as ring_plates
from speclint.specs import BoltedJoint, ChamberCover, CylinderCover, LoadCase
from speclint_joints.formulae.borne import stress_together


class Strength(Struct, frozen=True):
    """Allowable tension of the plate as rolled or cast, Pa: cold, and in the load case."""

    cold: float
    hot: float


def strength_of(
    cover: CylinderCover | ChamberCover, joint: BoltedJoint, case: LoadCase, sheet: Sheet, stock: float
) -> Strength:
    """Allowable tension for the thickness as rolled or cast: the middle of a thick plate is weaker."""
    steel = sheet.material_of(cover)
    at, cold = sheet.take("T_m", case.temperature_of(cover)), sheet.take("T_0", joint.tightening.temperature)
    return Strength(
        cold=sheet.look_up("S_0", steel.allowable_tension, at=cold, wall=stock),
        hot=sheet.look_up("f", steel.allowable_tension, at=at, wall=stock),
    )


def plate_stresses(
    cover: CylinderCover | ChamberCover, sheet: Sheet, p: float, G: float, t: float
) -> tuple[float, float]:
    """Stress of the plate with its edge clamped, and simply supported: the real edge lies between.

    What closes a hole, such as the stuffing box of a rod, hangs with all the steam on it at the edge of the hole;
    nothing is taken off for the rod.
    """
    nu = sheet.look_up("nu", sheet.material_of(cover).poisson)
    hole = hole_through(cover, sheet)
    if hole > 0:
        held = _with_hole("clamped", sheet, p, G, t, hole, nu)
        free = _with_hole("supported", sheet, p, G, t, hole, nu)
        F = sheet.work("F_h", loads.pressure_load, D=hole, p=p)
        hung = sheet.work("sigma_h", ring_plates.ring_plate_hole_load_stress, F=F, d=hole, D=G, t=t, nu=nu)
        return held, sheet.work("sigma_s", stress_together, sigma_p=free, sigma_B=hung)
    held = sheet.work("sigma_c", plates.clamped_plate_stress, p=p, D=G, t=t)
    return held, sheet.work("sigma_s", plates.supported_plate_stress, p=p, D=G, t=t, nu=nu)


def _with_hole(edge: str, sheet: Sheet, p: float, G: float, t: float, hole: float, nu: float) -> float:
    k = sheet.look_up(
        f"k_{edge}", ring_plates.ring_plate_stress_factor, outer=edge, inner="free", d=hole, D=G, nu=nu
    )
    return sheet.work(f"sigma_{edge}", ring_plates.ring_plate_stress, k=k, p=p, D=G, t=t)
