"""Where the piston stands, seen from either end of the cylinder, and at which crank angle it has made a share.

The front end is the one away from the driving axle. The crank angle φ of an end counts from that end's own dead
centre in the direction of running: φ = θ of ``piston_travel`` for the front, φ = θ − 180° for the back. Travel and
share count from the end whose steam works. Through the obliquity of the rod the front's travel is the greater at
every angle. λ = r/l.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from enum import Enum

from speclint.equations import FIRST_PRINCIPLES, Metres, Radians, Ratio, formula, require
from speclint.handbook.cams import piston_speed, piston_travel


@formula("s = r (1 − cos φ) − l (1 − √(1 − (r/l)² sin² φ))", cites=[FIRST_PRINCIPLES])
def back_travel(r: Metres, l: Metres, φ: Radians) -> Metres:  # noqa: E741 - the symbol of the trade
    """Travel of the piston from the dead centre of the back end, exact.

    s = r (1 − cos φ) − l (1 − √(1 − (r/l)² sin² φ))

    ``r`` crank radius and ``l`` rod length [m], 0 < r < l; ``φ`` crank angle from the back dead centre [rad].
    Returns [m], 0 to 2 r. Raises OutOfRange outside. The front's is ``piston_travel``.

    By hand, r = 3, l = 5, φ = 90°: 3 − 5 + √(25 − 9) = 2.

    >>> round(back_travel(r=3.0, l=5.0, φ=math.pi / 2), 9)
    2.0
    """
    require(0 < r < l, "the connecting rod must be longer than the crank, and that above 0")
    return r * (1 - math.cos(φ)) - l * (1 - math.sqrt(1 - (r / l * math.sin(φ)) ** 2))


@formula("X = s/(2 r)", cites=[FIRST_PRINCIPLES])
def share_of_stroke(s: Metres, r: Metres) -> Ratio:
    """Share of the stroke that the piston has made.

    X = s/(2 r)

    ``s`` travel [m]; ``r`` crank radius [m], above 0. Raises OutOfRange outside.

    By hand: 231 mm of 660 mm.

    >>> round(share_of_stroke(s=0.231, r=0.33), 9)
    0.35
    """
    require(r > 0, "the crank radius must be above 0")
    return s / (2 * r)


@formula("φ = arccos(((r − s) (D + l) + r²)/(2 D r)), s = 2 r X, D = r + l − s", cites=[FIRST_PRINCIPLES])
def front_angle(r: Metres, l: Metres, X: Ratio) -> Radians:  # noqa: E741
    """Crank angle at which the piston has made a share of its stroke from the front, on the way out.

    φ = arccos(((r − s) (D + l) + r²)/(2 D r)), s = 2 r X, D = r + l − s

    ``r`` crank radius and ``l`` rod length [m], 0 < r < l; ``X`` share of the stroke, 0 to 1. Returns [rad], 0 to
    π. Raises OutOfRange outside. D is the distance of the crosshead's pin from the axle; the law of cosines in the
    triangle of crank, rod and D.

    By hand, r = 3, l = 5, 4 of 6: D = 4, (−1 · 9 + 9)/24 = 0, a right angle.

    >>> round(math.degrees(front_angle(r=3.0, l=5.0, X=4 / 6)), 9)
    90.0
    """
    _require_share(r, l, X)
    s = 2 * r * X
    D = r + l - s
    return math.acos(_cosine(((r - s) * (D + l) + r**2) / (2 * D * r)))


@formula("φ = arccos(((r − s) (D + l) − r²)/(2 D r)), s = 2 r X, D = l − r + s", cites=[FIRST_PRINCIPLES])
def back_angle(r: Metres, l: Metres, X: Ratio) -> Radians:  # noqa: E741
    """Crank angle at which the piston has made a share of its stroke from the back, on the way out.

    φ = arccos(((r − s) (D + l) − r²)/(2 D r)), s = 2 r X, D = l − r + s

    Arguments, limits and result as ``front_angle``, from the back dead centre.

    By hand, r = 3, l = 5, 2 of 6: D = 4, (1 · 9 − 9)/24 = 0, a right angle.

    >>> round(math.degrees(back_angle(r=3.0, l=5.0, X=2 / 6)), 9)
    90.0
    """
    _require_share(r, l, X)
    s = 2 * r * X
    D = l - r + s
    return math.acos(_cosine(((r - s) * (D + l) - r**2) / (2 * D * r)))


class End(Enum):
    """An end of a cylinder: the front is the one away from the driving axle."""

    FRONT = "front"
    BACK = "back"


@dataclass(frozen=True, slots=True)
class Crank:
    """A crank of a ``radius`` with a connecting rod of a length ``rod`` [m]; OutOfRange unless 0 < radius < rod."""

    radius: float
    rod: float

    def __post_init__(self) -> None:
        require(
            0 < self.radius < self.rod, "the connecting rod must be longer than the crank, and that above 0"
        )

    @property
    def stroke(self) -> float:
        """m."""
        return 2 * self.radius

    def travel(self, end: End, angle: float) -> float:
        """Travel [m] from the end's dead centre at its crank angle [rad], any."""
        travelled = piston_travel if end is End.FRONT else back_travel
        return travelled(self.radius, self.rod, angle)

    def share(self, end: End, angle: float) -> float:
        """Share of the stroke at the end's crank angle [rad], any; on the way back, the share left."""
        return share_of_stroke(self.travel(end, angle), self.radius)

    def slope(self, end: End, angle: float) -> float:
        """Travel for each unit of crank angle [m/rad] at the end's crank angle [rad]: speed at 1 rad/s."""
        if end is End.FRONT:
            return piston_speed(self.radius, self.rod, 1.0, angle)
        return -piston_speed(self.radius, self.rod, 1.0, angle + math.pi)

    def angle(self, end: End, share: float) -> float:
        """Crank angle [rad], 0 to π, at which a share of the stroke is made; OutOfRange outside 0 to 1."""
        asked = front_angle if end is End.FRONT else back_angle
        return asked(self.radius, self.rod, share)


def _cosine(found: float) -> float:
    """A cosine without the round-off that carries it past 1 at a dead centre."""
    return min(max(found, -1.0), 1.0)


def _require_share(r: float, l: float, X: float) -> None:  # noqa: E741
    require(0 < r < l, "the connecting rod must be longer than the crank, and that above 0")
    require(0 <= X <= 1, f"share of the stroke {X:.4g} lies outside 0 to 1")
