"""How hard a cam presses on its shaft at any angle, and as it takes up its clearance with a blow."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache
from typing import TYPE_CHECKING

from speclint.equations import COMMON_PRACTICE, FIRST_PRINCIPLES, Metres, Newtons, NewtonsPerMetre, Radians
from speclint.facts.blows import blow, estimated_stiffness, mass_struck, share_of_stiffness, struck_load
from speclint.facts.cam_motion import WholeLift
from speclint.facts.cam_torques import Turning, turning
from speclint.facts.rocker_delays import modulus_as_listed
from speclint.facts.train_loads import normal_load, tappet_load, valve_speed
from speclint.facts.valve_gear import ValvesTrain, train_of_cam
from speclint.handbook.cams import Follower
from speclint.handbook.fits import DRAWING_TEMPERATURE
from speclint.handbook.members import round_area
from speclint.handbook.tables import Reading
from speclint.rules import Sheet

if TYPE_CHECKING:
    from speclint.specs import Cam, LoadCase

_TURN = 2 * math.pi
#: Steps of a turn in which the angle of the greatest load is looked for.
_STEPS = 720
#: Halvings of the rise, about a radian, until the angle is known to 1e-12.
_HALVINGS = 40
#: Angles that differ by less are one: what is lost as a whole turn is taken off [rad].
_SAME: Radians = 1e-9


@dataclass(frozen=True, slots=True)
class Pressing:
    """A cam as it presses on its shaft at the place ``a`` along it.

    ``sizes`` are those of base circle and roller, of a foot none; at the angle ``taken_up`` of its lift the clearance
    is, and ``struck`` is the load along the tappet then.
    """

    turning: Turning
    a: Metres
    sizes: tuple[Metres, Metres] | None
    taken_up: Radians
    struck: Newtons

    @property
    def struck_at(self) -> Radians:
        """The angle of the shaft at which the clearance is taken up."""
        return self.turning.phase + self.taken_up

    def strikes(self, θ: Radians) -> bool:
        """Whether the clearance is taken up at an angle of the shaft."""
        return abs((θ - self.struck_at + math.pi) % _TURN - math.pi) < _SAME

    def load(self, θ: Radians) -> Newtons:
        """Load between cam and tappet at an angle of the shaft, square to the track, N."""
        at = self.turning.follower(θ)
        along = self._along(θ, at)
        if self.sizes is None or not along:
            return along
        return normal_load(F_t=along, s_prime=at.slope, s=at.lift, R_b=self.sizes[0], r=self.sizes[1])

    def _along(self, θ: Radians, at: Follower) -> Newtons:
        borne = tappet_load(**self.turning.load(θ, at)) if self.turning.bears(at) else 0.0
        return max(borne, self.struck if self.strikes(θ) else 0.0, 0.0)

    def worked(self, θ: Radians, sheet: Sheet) -> Newtons:
        """The same, written on the sheet; a cam on its base circle presses nothing."""
        at, name = self.turning.follower(θ), self.turning.name
        along = self._along(θ, at)
        if not along:
            return 0.0
        if along > self.struck or not self.strikes(θ):
            along = sheet.work(f"F of {name}", tappet_load, **self.turning.load(θ, at))
        if self.sizes is None:
            return along
        R_b, r = self.sizes
        return sheet.work(f"F_n of {name}", normal_load, F_t=along, s_prime=at.slope, R_b=R_b, r=r, s=at.lift)


def pressing(cam: Cam, case: LoadCase, phase: Radians, sheet: Sheet, *, backward: bool = False) -> Pressing:
    """A cam with its train, every size, load and pressure as the drawings and the duty aim at it."""
    turned, train = turning(cam, case, phase, sheet, backward=backward), train_of_cam(cam, sheet)
    taken_up = _angle_at(turned.cam, turned.c)
    roller = sheet.read("follower", train.tappet.follower) == "roller"
    take = sheet.take_nominal
    sizes = (take("R_b", cam.base_radius), take("r", train.tappet.follower_radius)) if roller else None
    struck = _struck(turned, taken_up, train, sheet)
    return Pressing(turned, take("a", cam.at, f"place of {cam.id} along its shaft"), sizes, taken_up, struck)


def _struck(turned: Turning, taken_up: Radians, train: ValvesTrain, sheet: Sheet) -> Newtons:
    """The load along the tappet as the clearance is taken up: what holds the valve, and the blow of the mass behind."""
    i, shut = turned.i, turned.springs[0]
    v = sheet.work("v_c", valve_speed, i=i, s_prime=turned.cam.at(taken_up).slope, ω=turned.ω)
    m = sheet.work("m_b", mass_struck, m=turned.m, m_t=sheet.take_nominal("m_t", train.tappet.mass), i=i)
    F_b = sheet.work("F_b", blow, v=v, k=_stiffness(train, sheet), m=m)
    held = {"F_f": shut, "F_st": turned.steam, "F_r": turned.friction, "W": turned.weight}
    return sheet.work(f"F_b of {turned.name}", struck_load, i=i, F_b=F_b, **held)


def _stiffness(train: ValvesTrain, sheet: Sheet) -> NewtonsPerMetre:
    """Stiffness of the train at the valve, as stated, or the greatest by which it is estimated from the spindle."""
    spindle, take = train.spindle, sheet.take_nominal
    if sheet.is_stated("stiffness of the train", spindle.train_stiffness):
        return take("k", spindle.train_stiffness)
    metal = sheet.material_of(spindle)
    return sheet.work(
        "k",
        estimated_stiffness,
        x=sheet.look_up("x_k", greatest_share_of_stiffness),
        E=sheet.look_up("E_s", modulus_as_listed, of=spindle, metal=metal, at=DRAWING_TEMPERATURE),
        A=sheet.work("A_s", round_area, d=take("d_sp", spindle.diameter)),
        L=take("L_h", spindle.heated_length),
    )


def greatest_share_of_stiffness() -> Reading:
    """The greatest share of its spindle's stiffness that a train keeps.

    >>> greatest_share_of_stiffness().nominal
    0.5
    """
    share = share_of_stiffness()
    return Reading.exact(f"{share.what}, greatest", share.high, share.unit, COMMON_PRACTICE)


def _angle_at(cam: WholeLift, lift: Metres) -> Radians:
    """The angle on the rise at which a cam has lifted so far."""
    low, high = 0.0, cam.top
    for _ in range(_HALVINGS):
        middle = (low + high) / 2
        low, high = (middle, high) if cam.at(middle).lift < lift else (low, middle)
    return high


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
    angles = [_TURN * step / _STEPS for step in range(_STEPS)] + [one.struck_at for one in cams]
    return tuple((θ, tuple(one.load(θ) for one in cams)) for θ in angles)
