"""A cam as it turns with its shaft: the load along its tappet and the torque that it needs, at any angle."""

from __future__ import annotations

import math
from dataclasses import dataclass, field
from functools import lru_cache

from speclint.equations import (
    FIRST_PRINCIPLES,
    Kilograms,
    Metres,
    NewtonMetres,
    Newtons,
    NewtonsPerMetre,
    Radians,
    RadiansPerSecond,
    Ratio,
)
from speclint.facts.cam_motion import WholeLift
from speclint.facts.train import valve_lift
from speclint.facts.train_loads import tappet_load, torque_of_cam, valve_acceleration
from speclint.handbook.cams import Follower
from speclint.handbook.springs import spring_load_at_lift
from speclint.handbook.tables import Reading
from speclint.rules import Sheet

_TURN = 2 * math.pi
#: Steps of a turn in which the angle of the greatest torque is looked for, and again of two steps about the best.
_STEPS = 720
#: Angles that differ by less are one: what is lost as a whole turn is taken off [rad].
_SAME: Radians = 1e-9


@dataclass(frozen=True, slots=True)
class Turning:
    """Everything on which the torque of one cam depends; ``phase`` is the shaft's angle at which its lift begins.

    At the angle ``taken_up`` of its lift the clearance is, and ``struck`` is the load along the tappet then. Two are
    equal where all of it is, by whatever names.
    """

    name: str = field(compare=False)
    cam: WholeLift
    i: Ratio
    c: Metres
    ω: RadiansPerSecond
    springs: tuple[Newtons, NewtonsPerMetre]
    steam: Newtons
    cracked: Metres
    friction: Newtons
    weight: Newtons
    m: Kilograms
    phase: Radians
    taken_up: Radians
    struck: Newtons

    @property
    def struck_at(self) -> Radians:
        """The angle of the shaft at which the clearance is taken up."""
        return self.phase + self.taken_up

    def strikes(self, θ: Radians) -> bool:
        """Whether the clearance is taken up at an angle of the shaft."""
        return abs((θ - self.struck_at + math.pi) % _TURN - math.pi) < _SAME

    def follower(self, θ: Radians) -> Follower:
        """The tappet at an angle of the shaft; on the base circle its end of the lift."""
        return self.cam.at(min((θ - self.phase) % _TURN, self.cam.duration))

    def load(self, θ: Radians, at: Follower) -> dict[str, float]:
        """What makes up the load along the tappet: arguments of its formula, once the clearance is taken up."""
        h = valve_lift(i=self.i, s=at.lift, c=self.c)
        rises = (θ - self.phase) % _TURN < self.cam.top
        shut, rate = self.springs
        return {
            "i": self.i,
            "F_f": spring_load_at_lift(F_U=shut, R=rate, h=h),
            "F_st": self.steam if rises and h < self.cracked else 0.0,
            "m": self.m,
            "a": valve_acceleration(i=self.i, κ=at.curvature, ω=self.ω),
            "F_r": self.friction,
            "W": self.weight,
        }

    def bears(self, at: Follower) -> bool:
        """Whether the tappet has taken up its clearance, so that the valve's load comes on the cam."""
        return at.lift > self.c

    def along(self, θ: Radians, at: Follower) -> Newtons:
        """Load along the tappet at an angle of the shaft, never below nothing, N."""
        borne = tappet_load(**self.load(θ, at)) if self.bears(at) else 0.0
        return max(borne, self.struck if self.strikes(θ) else 0.0, 0.0)

    def worked_along(self, θ: Radians, at: Follower, sheet: Sheet) -> Newtons:
        """The same, written on the sheet; the load of a blow stands there already."""
        along = self.along(θ, at)
        if not along or (self.strikes(θ) and along <= self.struck):
            return along
        return sheet.work(f"F of {self.name}", tappet_load, **self.load(θ, at))

    def torque(self, θ: Radians) -> NewtonMetres:
        """Torque that the cam needs at an angle of the shaft, N·m."""
        at = self.follower(θ)
        F = self.along(θ, at)
        return torque_of_cam(F=F, s_prime=at.slope) if F else 0.0


def angle_of_greatest(cams: tuple[Turning, ...]) -> Reading:
    """The angle of the shaft at which some cams together need most, rad.

    It may lie where steam lets go of a valve and the torque falls at once; so the place is looked for in steps.
    """
    return Reading.exact(
        "angle of the shaft at the greatest torque", _looked_for(cams), "rad", FIRST_PRINCIPLES
    )


@lru_cache(maxsize=256)
def _looked_for(cams: tuple[Turning, ...]) -> float:
    """That angle, looked for once for the same cams: a check asks again at every corner and for every remedy."""
    best, width, blows = 0.0, _TURN, [one.struck_at for one in cams]
    for _ in range(2):
        angles = [best + width * (step / _STEPS - 1 / 2) for step in range(_STEPS + 1)] + blows
        best, width = max(angles, key=lambda θ: sum(one.torque(θ) for one in cams)), 2 * width / _STEPS
    return best
