"""A valve worked by a cam: its lift over the crank angle, when it leaves its seat and when it is back on it.

The cam turns with the crank, once a revolution. The valve leaves its seat where the tappet's lift passes the
clearance, not at the foot of the ramp, and regains it likewise.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from functools import cached_property
from itertools import pairwise
from typing import Annotated

from speclint.equations import FIRST_PRINCIPLES, Metres, Radians, Ratio, formula, require
from speclint.errors import replace
from speclint.handbook.cams import CamMotion, Follower

TURN = 2 * math.pi
RadiansPerMetre = Annotated[float, "rad/m"]
MetresPerRadian = Annotated[float, "m/rad"]
#: An angle is found when the lift is this near to the clearance (m): a millionth of the least clearance of practice.
_NEAR = 1e-10
_STEPS = 80


@formula("φ_o = φ_f + γ δ/h_r", cites=[FIRST_PRINCIPLES])
def ramp_opening_angle(φ_f: Radians, γ: Radians, δ: Metres, h_r: Metres) -> Radians:
    """Crank angle at which a valve leaves its seat while its tappet is on the cam's ramp.

    φ_o = φ_f + γ δ/h_r

    ``φ_f`` crank angle at which the follower meets the foot of the ramp [rad]; ``γ`` angle and ``h_r`` height of the
    ramp [rad, m], above 0; ``δ`` clearance at the tappet as it works [m], 0 to h_r. Returns [rad]. Raises OutOfRange
    outside: a greater clearance is used up on the flank, ``ValveTrain.opening`` finds where.

    By hand: foot −10.5°, ramp of 1.1 mm over 10°, 0.5 mm: −10.5 + 10 · 0.5/1.1 = −5.9545°.

    >>> round(math.degrees(ramp_opening_angle(math.radians(-10.5), math.radians(10.0), 0.5e-3, 1.1e-3)), 4)
    -5.9545
    """
    require(γ > 0, "the angle of a ramp must be above 0")
    require(h_r > 0, "the height of a ramp must be above 0")
    require(0 <= δ <= h_r, f"clearance {δ * 1e3:.4g} mm lies outside 0 to the ramp's {h_r * 1e3:.4g} mm")
    return φ_f + γ * δ / h_r


@formula("φ_f = −(φ_0 + β)", cites=[FIRST_PRINCIPLES])
def backward_foot(φ_0: Radians, β: Radians) -> Radians:
    """Crank angle of the foot of the opening ramp when the engine runs the other way on the same cam.

    φ_f = −(φ_0 + β)

    ``φ_0`` crank angle of that foot when the engine runs forwards [rad]; ``β`` angle from the foot of one ramp to that
    of the other [rad], above 0. Returns [rad], in the direction of running. Raises OutOfRange outside. What closed the
    valve opens it then.

    By hand: foot at −10.5°, 87.5° long: −77°.

    >>> round(math.degrees(backward_foot(math.radians(-10.5), math.radians(87.5))), 9)
    -77.0
    """
    require(β > 0, "the angle of the lift must be above 0")
    return -(φ_0 + β)


@formula("k = 1/|s′|", cites=[FIRST_PRINCIPLES])
def shift_for_clearance(s_prime: MetresPerRadian) -> RadiansPerMetre:
    """How far an event moves for each unit of clearance: later opening, earlier shutting.

    k = 1/|s′|

    ``s_prime`` slope of the tappet's lift over the crank angle where the event lies [m/rad], not 0.
    Returns [rad/m]. Raises OutOfRange outside. On a ramp that slope is its height over its angle.

    By hand: a ramp of 1.1 mm over 10°: 10/1.1 = 9.09° for a millimetre, 0.91° for 0.1 mm.

    >>> round(math.degrees(shift_for_clearance(1.1e-3 / math.radians(10.0))) * 0.1e-3, 2)
    0.91
    """
    require(s_prime != 0 * s_prime, "the tappet rests where the event would lie")
    return 1 / abs(s_prime)


@dataclass(frozen=True, slots=True)
class ReversedCam:
    """A cam read from its other end, as the engine does that runs the other way."""

    cam: CamMotion

    @property
    def duration(self) -> float:
        """Angle over which the follower is off the base circle [rad]."""
        return self.cam.duration

    @property
    def joins(self) -> tuple[float, ...]:
        """The angles at which one curve meets the next [rad], rising."""
        return tuple(self.duration - angle for angle in reversed(self.cam.joins))

    def at(self, angle: float) -> Follower:
        """The follower at an angle from the foot of the lift [rad], 0 to the duration; OutOfRange outside."""
        found = self.cam.at(self.duration - angle)
        return Follower(found.lift, -found.slope, found.curvature)


def reversed_cam(cam: CamMotion) -> CamMotion:
    """The cam read from its other end; the first again when that is done twice."""
    return cam.cam if isinstance(cam, ReversedCam) else ReversedCam(cam)


@dataclass(frozen=True)
class ValveTrain:
    """A valve of one end with the cam that works it.

    ``foot`` crank angle of the end at which the follower meets the foot of the opening ramp [rad]; ``clearance`` at
    the tappet as it works [m], not below 0; ``ratio`` travel of the valve for each unit of the tappet's, above 0.
    The train is taken as rigid. OutOfRange outside, and for a cam whose lift lasts longer than a revolution.
    """

    cam: CamMotion
    foot: Radians
    clearance: Metres
    ratio: Ratio = 1.0

    def __post_init__(self) -> None:
        require(math.isfinite(self.foot), "the foot of the ramp must be a finite angle")
        require(
            self.clearance >= 0, f"clearance {self.clearance * 1e3:.4g} mm of the tappet must not be below 0"
        )
        require(
            self.ratio > 0, f"travel of the valve for each of the tappet {self.ratio:.4g} must be above 0"
        )
        require(
            self.cam.duration <= TURN,
            f"the cam lifts for {math.degrees(self.cam.duration):.4g}°, longer than a revolution",
        )

    def tappet(self, angle: float) -> Follower:
        """The tappet at a crank angle of the end [rad], any: at rest on the base circle outside the lift."""
        on_cam = (angle - self.foot) % TURN
        return self.cam.at(on_cam) if on_cam <= self.cam.duration else _AT_REST

    def lift(self, angle: float) -> float:
        """Lift of the valve [m] at a crank angle of the end [rad], any."""
        return self.ratio * max(self.tappet(angle).lift - self.clearance, 0.0)

    @cached_property
    def greatest_lift(self) -> float:
        """Greatest lift of the valve [m]; 0 where the clearance uses up the whole cam."""
        return self.ratio * max(_greatest(self.cam) - self.clearance, 0.0)

    @property
    def opens(self) -> bool:
        """Whether the valve leaves its seat at all."""
        return self.greatest_lift > 0

    @cached_property
    def opening(self) -> float:
        """Crank angle at which the valve leaves its seat [rad], from ``foot`` on; OutOfRange where it never does."""
        return self.foot + _first_passing(self.cam, self.clearance)

    @cached_property
    def closing(self) -> float:
        """Crank angle at which the valve is back on its seat [rad], after ``opening``; OutOfRange as there."""
        return self.foot + self.cam.duration - _first_passing(reversed_cam(self.cam), self.clearance)

    @property
    def open_angle(self) -> float:
        """Angle over which the valve is off its seat [rad]; OutOfRange where it never is."""
        return self.closing - self.opening

    def shift_of_opening(self) -> float:
        """Later opening for each unit of clearance [rad/m]; OutOfRange where the valve never opens."""
        return shift_for_clearance(self.tappet(self.opening).slope)

    def shift_of_closing(self) -> float:
        """Earlier shutting for each unit of clearance [rad/m]; OutOfRange where the valve never opens."""
        return shift_for_clearance(self.tappet(self.closing).slope)

    def backward(self) -> ValveTrain:
        """The same train when the engine runs the other way, its angles in that direction."""
        foot = backward_foot(self.foot, self.cam.duration)
        return replace(self, cam=reversed_cam(self.cam), foot=foot)

    def with_clearance(self, clearance: float) -> ValveTrain:
        """The same train with another clearance at the tappet [m]: cold, hot or worn."""
        return replace(self, clearance=clearance)


_AT_REST = Follower(0.0, 0.0, 0.0)


def _places(cam: CamMotion) -> list[float]:
    return sorted({0.0, *(min(max(join, 0.0), cam.duration) for join in cam.joins), cam.duration})


def _greatest(cam: CamMotion) -> float:
    return max(cam.at(place).lift for place in _places(cam))


def _first_passing(cam: CamMotion, clearance: float) -> float:
    """Cam angle at which the lift first passes the clearance: between two joins the lift rises or falls throughout."""
    greatest = _greatest(cam)
    require(
        greatest > clearance,
        f"the clearance of {clearance * 1e3:.4g} mm uses up the cam's lift of {greatest * 1e3:.4g} mm: "
        "the valve never leaves its seat",
    )
    places = _places(cam)
    low, high = next(pair for pair in pairwise([places[0], *places]) if cam.at(pair[1]).lift > clearance)
    return root(lambda angle: cam.at(angle).lift - clearance, low, high, _NEAR) if low < high else low


def root(of: Callable[[float], float], low: float, high: float, near: float) -> float:
    """Where a function that is not above 0 at ``low`` and above it at ``high`` passes 0: false position, Illinois."""
    at_low, at_high = of(low), of(high)
    for _ in range(_STEPS):
        middle = low + (high - low) * -at_low / (at_high - at_low) if at_high != at_low else low
        value = of(middle)
        if abs(value) <= near:
            return middle
        if value > 0:
            high, at_high, at_low = middle, value, at_low / 2
        else:
            low, at_low, at_high = middle, value, at_high / 2
    return (low + high) / 2


def angles(train: ValveTrain, steps: int) -> Iterator[float]:
    """``steps`` + 1 even crank angles over the opening, both ends included [rad]; OutOfRange where it never opens."""
    first, last = train.opening, train.closing
    for step in range(steps + 1):
        yield first + (last - first) * step / steps
