"""Where cam and follower touch: the pressure between them, and what the metal of either bears."""

from __future__ import annotations

import math

from msgspec import Struct

from speclint import Judgement, Sheet
from speclint.equations import Metres, Newtons, Pascals
from speclint.facts import normal_load
from speclint.handbook.cams import Follower
from speclint.handbook.members import (
    line_depth_of_shear,
    line_pressure,
    line_shakedown_pressure,
    relative_radius,
)
from speclint.specs import Cam, LoadCase, Tappet
from speclint_valves.formulae.cams import (
    cam_radius_under_flat,
    relative_radius_of_roller,
    roller_over_its_path,
)
from speclint_valves.formulae.rocking import load_square_to_cam
from speclint_valves.formulae.spindle import depth_with_margin
from speclint_valves.formulae.tables import modulus_of_pair
from speclint_valves.inputs.loads import Loaded
from speclint_valves.inputs.rollers import OnALine, OnAnArm, rocks, roller_of

#: Treatments that harden the steel itself to a depth; a plating or a facing is another metal.
_HARDENED: tuple[str | None, ...] = ("case hardened", "induction hardened", "nitrided")


class Pressed(Struct, frozen=True):
    """A contact: its greatest pressure, relative radius and contact modulus."""

    pressure: Pascals
    radius: Metres
    modulus: Pascals


class Touch:
    """Where cam and follower touch: their sizes and the modulus of the pair."""

    def __init__(self, cam: Cam, tappet: Tappet, sheet: Sheet) -> None:
        self.kind = sheet.read("follower", tappet.follower)
        self.base = sheet.take("R_b", cam.base_radius)
        flat = self.kind == "flat foot"
        self.radius: Metres = math.inf if flat else sheet.take("r", tappet.follower_radius)
        self.roller = self._roller(tappet, sheet)
        self.width = min(sheet.take("L_c", cam.width), sheet.take("L_t", tappet.face_width))
        one, other = sheet.material_of(cam), sheet.material_of(tappet)
        self.modulus = sheet.look_up("E*", modulus_of_pair, one=one, other=other)

    def _roller(self, tappet: Tappet, sheet: Sheet) -> OnALine | OnAnArm | None:
        """How a roller follows that does not slide in line with the axis of its cam, whose formulae are shorter."""
        beside = self.kind == "roller" and sheet.is_stated("offset", tappet.offset)
        if rocks(tappet, sheet) or beside:
            return roller_of(tappet, self.base, sheet)
        return None

    def pressure(self, load: Loaded, steam: Newtons, angle: float) -> Pascals:
        """Greatest pressure at an angle of the cam, with the steam load that holds the valve there."""
        F, R = self.line(load, steam, angle)
        return line_pressure(F=F, L=self.width, R=R, E_star=self.modulus)

    def line(self, load: Loaded, steam: Newtons, angle: float) -> tuple[Newtons, Metres]:
        """The load square to the line on which they touch, and the relative radius there."""
        at = load.cam.at(angle)
        F = load.tappet(at, steam)
        if self.roller is not None:
            F = load_square_to_cam(F_t=F, α=self.roller.aslant(at))
            return F, relative_radius_of_roller(r=self.radius, k=self.roller.bent(at))
        if self.kind == "roller":
            sizes = self._sizes(at)
            F = normal_load(F_t=F, s_prime=at.slope, **sizes)
            k = roller_over_its_path(s_prime=at.slope, κ=at.curvature, **sizes)
            return F, relative_radius_of_roller(r=self.radius, k=k)
        ρ = cam_radius_under_flat(R_b=self.base, s=at.lift, κ=at.curvature)
        return F, relative_radius(R_1=ρ, R_2=self.radius)

    def worked(self, at: Follower, F: Newtons, sheet: Sheet) -> Pressed:
        """The pressure for a load along the tappet, written on the sheet."""
        F, R = self.worked_line(at, F, sheet)
        p_0 = sheet.work("p_0", line_pressure, F=F, L=self.width, R=R, E_star=self.modulus)
        return Pressed(p_0, R, self.modulus)

    def worked_line(self, at: Follower, F: Newtons, sheet: Sheet) -> tuple[Newtons, Metres]:
        """The load square to the line and the relative radius for a load along the tappet, written on the sheet."""
        if self.roller is not None:
            F = sheet.work("F_n", load_square_to_cam, F_t=F, α=self.roller.worked_angle(at, sheet))
            k = self.roller.worked_bend(at, sheet)
            return F, sheet.work("R", relative_radius_of_roller, r=self.radius, k=k)
        if self.kind == "roller":
            sizes = self._sizes(at)
            F = sheet.work("F_n", normal_load, F_t=F, s_prime=at.slope, **sizes)
            k = sheet.work("k", roller_over_its_path, s_prime=at.slope, κ=at.curvature, **sizes)
            return F, sheet.work("R", relative_radius_of_roller, r=self.radius, k=k)
        ρ = sheet.work("ρ", cam_radius_under_flat, R_b=self.base, s=at.lift, κ=at.curvature)
        return F, sheet.work("R", relative_radius, R_1=ρ, R_2=self.radius)

    def _sizes(self, at: Follower) -> dict[str, Metres]:
        return {"R_b": self.base, "r": self.radius, "s": at.lift}


def is_hardened(part: Cam | Tappet, sheet: Sheet) -> bool:
    """Whether a part is said to have a hardened skin of its own metal."""
    return sheet.said(f"surface of {part.id}", part.surface) in _HARDENED


def borne(touch: Pressed, part: Cam | Tappet, index: str, case: LoadCase, sheet: Sheet) -> list[Judgement]:
    """The pressure against what the metal of a part bears, and the depth of its hardened skin."""
    metal = sheet.material_of(part)
    if metal.family == "chilled-iron":
        return [
            sheet.at_most(touch.pressure, sheet.limit("chilled-iron")).else_says(
                f"touches with {{found}}, {part.id} bears {{limit}}"
            )
        ]
    if is_hardened(part, sheet):
        deep = sheet.work(
            f"z_{index}", line_depth_of_shear, p_0=touch.pressure, R=touch.radius, E_star=touch.modulus
        )
        wanted = sheet.work(f"t_n{index}", depth_with_margin, x=sheet.limit("depth", "x_d"), z=deep)
        return [
            sheet.at_most(touch.pressure, sheet.limit("hardened-steel")).else_says(
                f"touches with {{found}}, {part.id} bears {{limit}}"
            ),
            sheet.at_least(sheet.take(f"t_{index}", part.hardened_depth), wanted).else_says(
                f"skin of {part.id} hardened {{found}} deep, {{limit}} wanted"
            ),
        ]
    T = sheet.take(f"T_{index}", case.temperature_of(part))
    proof = sheet.look_up(f"R_p{index}", metal.proof_stress, of=part, at=T)
    return [
        sheet.at_most(
            touch.pressure, sheet.work(f"p_s{index}", line_shakedown_pressure, S_y=proof)
        ).else_says(f"touches with {{found}}, {part.id} bears {{limit}}")
    ]
