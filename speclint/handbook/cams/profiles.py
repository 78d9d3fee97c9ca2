"""A whole cam: ramp, rise, dwell, fall and ramp again, with what the follower does at any angle.

The ramp lifts at a constant velocity, so that the valve is lifted and landed at low speed wherever in its
height the clearance is used up. The rise starts with the ramp's velocity and reduces it to zero as
1 − 3x² + 2x³, which adds no jump in velocity or acceleration to those of the law itself:

    lift = h + v β q(x) + (L − v β/2) s(x),   q = x − x³ + x⁴/2,   v = h/γ

with h and γ height and angle of the ramp, L and β height and angle of the rise, s the law. At the foot of
the ramp the velocity jumps from 0 to v intentionally: the valve is not yet touched there.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from math import isfinite
from typing import Protocol

from speclint.equations import require
from speclint.handbook.cams.laws import CamLaw


@dataclass(frozen=True, slots=True)
class Follower:
    """Lift [m] at one angle of the cam and its derivatives with respect to the angle [m/rad, m/rad²]."""

    lift: float
    slope: float
    curvature: float

    def velocity(self, speed: float) -> float:
        """m/s at a cam speed in rad/s."""
        return self.slope * speed

    def acceleration(self, speed: float) -> float:
        """m/s² at a cam speed in rad/s."""
        return self.curvature * speed**2


class CamMotion(Protocol):
    """What a rule scans: a profile built of laws, or a stated table."""

    @property
    def duration(self) -> float:
        """Angle over which the follower is off the base circle [rad]."""

    @property
    def joins(self) -> tuple[float, ...]:
        """The angles at which one curve meets the next [rad], rising."""

    def at(self, angle: float) -> Follower:
        """The follower at an angle from the foot of the lift [rad], 0 to the duration."""


@dataclass(frozen=True, slots=True)
class Ramp:
    """A constant-velocity ramp: height [m] and angle [rad], both above 0."""

    height: float
    angle: float

    def __post_init__(self) -> None:
        require(self.height > 0, "the height of a ramp must be above 0")
        require(self.angle > 0, "the angle of a ramp must be above 0")

    @property
    def slope(self) -> float:
        """m/rad."""
        return self.height / self.angle


@dataclass(frozen=True, slots=True)
class Flank:
    """Rise or fall of a cam, without its ramp: law, height [m], angle [rad] and the ramp at its foot."""

    law: CamLaw
    height: float
    angle: float
    ramp: Ramp | None = None

    def __post_init__(self) -> None:
        require(self.height > 0, "the lift of a cam must be above 0")
        require(self.angle > 0, "the angle of a rise or fall must be above 0")
        require(self._law_height > 0, "the ramp alone would lift the valve higher than the cam")

    @property
    def duration(self) -> float:
        """Angle with the ramp [rad]."""
        return self.angle + self.ramp_angle

    @property
    def top(self) -> float:
        """Lift at the top with the ramp [m]."""
        return self.height + (self.ramp.height if self.ramp else 0)

    def at(self, angle: float) -> Follower:
        """The follower at an angle from the foot of this flank, as if it were a rise."""
        ramp_angle = self.ramp_angle
        if self.ramp and angle < ramp_angle:
            return Follower(self.ramp.slope * angle, self.ramp.slope, 0)
        x = min(max((angle - ramp_angle) / self.angle, 0.0), 1.0)
        carried, height, law = self._ramp_slope * self.angle, self._law_height, self.law
        return Follower(
            self.top - self.height + carried * (x - x**3 + x**4 / 2) + height * law.displacement(x),
            (carried * (1 - 3 * x**2 + 2 * x**3) + height * law.velocity(x)) / self.angle,
            (carried * (6 * x**2 - 6 * x) + height * law.acceleration(x)) / self.angle**2,
        )

    @property
    def ramp_angle(self) -> float:
        """Angle of the ramp at its foot [rad]; nothing without one."""
        return self.ramp.angle if self.ramp else 0.0

    @property
    def _ramp_slope(self) -> float:
        return self.ramp.slope if self.ramp else 0

    @property
    def _law_height(self) -> float:
        return self.height - self._ramp_slope * self.angle / 2


@dataclass(frozen=True, slots=True)
class CamProfile:
    """A cam of two flanks with a dwell between, both to the same top.

    ``dwell`` is the angle at full lift [rad], 0 or more. OutOfRange when the flanks do not meet at the top.
    """

    opening: Flank
    dwell: float
    closing: Flank

    def __post_init__(self) -> None:
        require(self.dwell >= 0, "the dwell of a cam must not be below 0")
        apart = abs(self.opening.top - self.closing.top)
        require(
            apart <= _SAME_LIFT * self.opening.top,
            f"the cam opens to {self.opening.top * 1e3:.6g} mm but closes from {self.closing.top * 1e3:.6g} mm",
        )

    @property
    def duration(self) -> float:
        """Angle from the foot of the opening ramp to that of the closing one [rad]."""
        return self.opening.duration + self.dwell + self.closing.duration

    @property
    def joins(self) -> tuple[float, ...]:
        """The ends of ramps, rises and dwell, and the middle of each rise, where a law may change [rad]."""
        foot, top = self.opening.ramp_angle, self.opening.duration
        fall, end = top + self.dwell, self.duration - self.closing.ramp_angle
        return foot, (foot + top) / 2, top, fall, (fall + end) / 2, end

    def at(self, angle: float) -> Follower:
        """The follower at an angle from the foot of the opening ramp [rad]; OutOfRange off the lift."""
        top = self.opening.duration
        fall = top + self.dwell
        end = fall + self.closing.duration
        _require_on_lift(angle, end)
        if angle < top:
            return self.opening.at(angle)
        if angle <= fall and self.dwell > 0:
            return Follower(self.opening.top, 0, 0)
        mirrored = self.closing.at(end - angle)
        return Follower(mirrored.lift, -mirrored.slope, mirrored.curvature)


def follower_at(angle: float, cam: CamMotion) -> Follower:
    """The follower at an angle [rad]; outside the lift, at its nearer end."""
    return cam.at(min(max(angle, 0.0), cam.duration))


def scan(cam: CamMotion, steps: int) -> Iterator[tuple[float, Follower]]:
    """Angle [rad] and follower at ``steps`` + 1 even places over the lift, both ends included."""
    for step in range(steps + 1):
        angle = cam.duration * step / steps
        yield angle, cam.at(angle)


#: Tops that differ by less than this share of the lift are equal: the round-off of sums.
_SAME_LIFT = 1e-9


def _require_on_lift(angle: float, duration: float) -> None:
    holds = isfinite(angle) and 0 <= angle <= duration
    if not holds:  # the words only where they are needed: a scan asks this at every place
        require(holds, f"cam angle {angle:.6g} rad lies outside 0 to {duration:.6g} rad, the lift")
