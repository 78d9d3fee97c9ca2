"""How hard a cam presses on its shaft at any angle, and as it takes up its clearance with a blow."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache
from typing import TYPE_CHECKING

from speclint.equations import FIRST_PRINCIPLES, Metres, Newtons, Radians
from speclint.facts.cam_torques import turning
from speclint.facts.train_loads import normal_load
from speclint.facts.turning_cams import Turning
from speclint.facts.valve_gear import train_of_cam
from speclint.handbook.tables import Reading
from speclint.rules import Sheet
from speclint.specs import Cam

if TYPE_CHECKING:
    from speclint.specs import LoadCase

_TURN = 2 * math.pi
#: Steps of a turn in which the angle of the greatest load is looked for.
_STEPS = 720


@dataclass(frozen=True, slots=True)
class Pressing:
    """A cam as it presses on its shaft at the place ``a`` along it.

    ``sizes`` are those of base circle and roller, of a foot none.
    """

    turning: Turning
    a: Metres
    sizes: tuple[Metres, Metres] | None

    def load(self, θ: Radians) -> Newtons:
        """Load between cam and tappet at an angle of the shaft, square to the track, N."""
        at = self.turning.follower(θ)
        along = self.turning.along(θ, at)
        if self.sizes is None or not along:
            return along
        return normal_load(F_t=along, s_prime=at.slope, s=at.lift, R_b=self.sizes[0], r=self.sizes[1])

    def worked(self, θ: Radians, sheet: Sheet) -> Newtons:
        """The same, written on the sheet; a cam on its base circle presses nothing."""
        at = self.turning.follower(θ)
        along = self.turning.worked_along(θ, at, sheet)
        if self.sizes is None or not along:
            return along
        R_b, r = self.sizes
        return sheet.work(
            f"F_n of {self.turning.name}", normal_load, F_t=along, s_prime=at.slope, R_b=R_b, r=r, s=at.lift
        )


def pressing(cam: Cam, case: LoadCase, phase: Radians, sheet: Sheet, *, backward: bool = False) -> Pressing:
    """A cam with its train, every size, load and pressure as the drawings and the duty aim at it."""
    turned, train = turning(cam, case, phase, sheet, backward=backward), train_of_cam(cam, sheet)
    roller = sheet.read("follower", train.tappet.follower) == "roller"
    take = sheet.take_nominal
    sizes = (take("R_b", cam.base_radius), take("r", train.tappet.follower_radius)) if roller else None
    return Pressing(turned, take("a", cam.at, f"place of {cam.id} along its shaft"), sizes)


def angle_of_load(cams: tuple[Pressing, ...], shares: tuple[float, ...]) -> Reading:
    """The angle of the shaft at which the loads of some cams, each times its share, are together greatest, rad."""
    θ, _ = max(loads_in_turn(cams), key=lambda one: together(one[1], shares))
    return Reading.exact("angle of the shaft at the greatest load", θ, "rad", FIRST_PRINCIPLES)


def together(loads: Sequence[Newtons], shares: Sequence[float]) -> float:
    """Loads, each times its share."""
    return sum(F * share for F, share in zip(loads, shares, strict=True))


@lru_cache(maxsize=256)
def loads_in_turn(cams: tuple[Pressing, ...]) -> tuple[tuple[Radians, tuple[Newtons, ...]], ...]:
    """The loads of some cams at angles of a turn, and at those at which one of them strikes."""
    angles = [_TURN * step / _STEPS for step in range(_STEPS)] + [one.turning.struck_at for one in cams]
    return tuple((θ, tuple(one.load(θ) for one in cams)) for θ in angles)
