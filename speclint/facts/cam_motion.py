"""The motion that a cam gives its tappet: by its law and ramps, or by its table of lifts."""

from __future__ import annotations

from dataclasses import dataclass, field
from functools import cached_property, lru_cache

from speclint.equations import Radians
from speclint.errors import OutOfRange
from speclint.facts.taking import Take
from speclint.handbook.cams import (
    CamMotion,
    CamProfile,
    Flank,
    Follower,
    LiftTable,
    Ramp,
    cam_law,
    follower_at,
)
from speclint.rules import Sheet
from speclint.specs import Cam

#: How a size is taken from a sheet: with its limits, or as the drawing aims at it.


@dataclass(frozen=True, eq=False)
class WholeLift:
    """A cam's motion that tolerates a rounded angle at either end of its lift, and keeps angles worked out before."""

    cam: CamMotion
    _known: dict[float, Follower] = field(default_factory=dict, repr=False)

    @cached_property
    def duration(self) -> Radians:
        """Angle over which the follower is off the base circle."""
        return self.cam.duration

    @cached_property
    def top(self) -> Radians:
        """The angle of the greatest lift, the first where there are several."""
        steps = [self.duration * step / _STEPS for step in range(_STEPS + 1)]
        return max(steps, key=lambda angle: self.at(angle).lift)

    def at(self, angle: Radians) -> Follower:
        """The tappet at an angle from the start of the lift; outside the lift, its nearer end."""
        try:
            found = self._known.get(angle)
        except TypeError:  # an angle that cannot be hashed is worked each time
            return follower_at(angle, self.cam)
        if found is None:
            found = follower_at(angle, self.cam)
            if len(self._known) < _KEPT_ANGLES:
                self._known[angle] = found
        return found


#: Steps in which the top of a lift is looked for.
_STEPS = 180
#: Angles that a cam's motion keeps: those that all rules scan, which are needed again at every corner of tolerances.
_KEPT_ANGLES = 8000


def motion(cam: Cam, sheet: Sheet, take: Take | None = None) -> WholeLift:
    """The cam's motion: by its law and ramps, or by its table of lifts."""
    try:
        by = _by_table if cam.table else _by_law
        return by(cam, sheet, take or sheet.take)
    except OutOfRange as problem:
        raise sheet.not_covered(str(problem)) from problem


def _by_law(cam: Cam, sheet: Sheet, take: Take) -> WholeLift:
    law = sheet.read("law of the cam", cam.law)
    lift = take("s_1", cam.lift)
    height, angle = take("h_r", cam.ramp_height), take("γ", cam.ramp_angle)
    rise, fall = take("β_1", cam.rise_angle), take("β_2", cam.fall_angle)
    return _profile(law, lift, height, angle, rise, take("δ", cam.dwell_angle), fall)


@lru_cache(maxsize=64)
def _profile(
    law: str, lift: float, ramp_height: float, ramp_angle: float, rise: float, dwell: float, fall: float
) -> WholeLift:
    curve, ramp = cam_law(law), Ramp(ramp_height, ramp_angle)
    return WholeLift(CamProfile(Flank(curve, lift, rise, ramp), dwell, Flank(curve, lift, fall, ramp)))


def _by_table(cam: Cam, _: Sheet, take: Take) -> WholeLift:
    step = take("Δ", cam.table_step)
    return _table(step, tuple(take(f"s_{number}", lift) for number, lift in enumerate(cam.table)))


@lru_cache(maxsize=64)
def _table(step: float, lifts: tuple[float, ...]) -> WholeLift:
    return WholeLift(LiftTable([step * number for number in range(len(lifts))], lifts))
