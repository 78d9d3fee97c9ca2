"""A cam known only by a table of lifts, read by a smooth curve.

The curve is the clamped cubic spline through every entry: lift, velocity and acceleration are continuous,
and the velocity is zero at both ends, where the cam leaves and meets its base circle or its dwell. It passes
through each lift as stated, so the rounding of the table shows in the acceleration, amplified by the
square of the spacing: ``acceleration_doubt`` gives the amount.
"""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Sequence
from functools import cached_property
from itertools import pairwise
from math import isfinite

from speclint.equations import (
    FIRST_PRINCIPLES,
    Metres,
    MetresPerSecondSquared,
    Radians,
    RadiansPerSecond,
    Source,
    formula,
    require,
)
from speclint.handbook.cams.profiles import Follower

SPLINES = Source(
    "C. de Boor, A Practical Guide to Splines", "1978", "ch. IV, complete cubic splines", memory=True
)
#: A cubic needs this many points to show a bend.
_FEWEST = 4


@formula("δA = 12 δ ω²/Δ²", cites=[FIRST_PRINCIPLES, SPLINES])
def acceleration_doubt(δ: Metres, Δ: Radians, ω: RadiansPerSecond) -> MetresPerSecondSquared:
    """Greatest error of the acceleration that rounding of an evenly spaced table can cause.

    δA = 12 δ ω²/Δ²

    ``δ`` half the last digit of the lifts [m]; ``Δ`` spacing of the angles [rad], above 0; ``ω`` speed of the
    cam [rad/s]. Returns [m/s²]. The second difference of lifts wrong by ±δ is wrong by up to 4 δ/Δ², and the
    spline's equations, which weigh 1 : 4 : 1, raise it at most threefold: |M| ≤ 6 · 4 δ/Δ² / (4 − 2).
    Raises OutOfRange for Δ.

    By hand: 5 µm at 2° and 30 rad/s: 12 · 5e-6 · 900/0.0349066² = 44.3 m/s².

    >>> round(acceleration_doubt(δ=5e-6, Δ=0.0349066, ω=30.0), 1)
    44.3
    """
    require(Δ > 0, "the spacing of the table must be above 0")
    return 12 * δ * ω**2 / Δ**2


class LiftTable:
    """The lift of a cam as stated at rising angles, read by a clamped cubic spline.

    ``angles`` [rad] rise from 0; ``lifts`` [m] are not below 0; at least four of each. OutOfRange otherwise.
    """

    def __init__(self, angles: Sequence[float], lifts: Sequence[float]) -> None:
        require(len(angles) == len(lifts), f"{len(angles)} angles do not match {len(lifts)} lifts")
        require(len(angles) >= _FEWEST, f"{len(angles)} entries are too few for a curve; give at least 4")
        require(all(isfinite(each) for each in (*angles, *lifts)), "a lift table must hold finite numbers")
        require(angles[0] == 0, f"the first angle {angles[0]:.6g} rad must be 0")
        require(all(a < b for a, b in pairwise(angles)), "the angles of a lift table must rise")
        require(min(lifts) >= 0, f"lift {min(lifts) * 1e3:.6g} mm must not be below 0")
        self.angles = tuple(angles)
        self.lifts = tuple(lifts)

    @property
    def duration(self) -> float:
        """Last angle of the table [rad]."""
        return self.angles[-1]

    @property
    def joins(self) -> tuple[float, ...]:
        """The angles of the table [rad]."""
        return self.angles

    def at(self, angle: float) -> Follower:
        """The follower at an angle [rad], 0 to the last of the table; OutOfRange outside."""
        require(
            isfinite(angle) and 0 <= angle <= self.duration,
            f"cam angle {angle:.6g} rad lies outside 0 to {self.duration:.6g} rad, the table",
        )
        n = min(bisect_right(self.angles, angle), len(self.angles) - 1) - 1
        h = self.angles[n + 1] - self.angles[n]
        b, a = (angle - self.angles[n]) / h, (self.angles[n + 1] - angle) / h
        (y, z), (m, k) = self.lifts[n : n + 2], self._curvatures[n : n + 2]
        return Follower(
            a * y + b * z + ((a**3 - a) * m + (b**3 - b) * k) * h**2 / 6,
            (z - y) / h + ((1 - 3 * a**2) * m + (3 * b**2 - 1) * k) * h / 6,
            a * m + b * k,
        )

    @cached_property
    def _curvatures(self) -> tuple[float, ...]:
        """Second derivative at each entry: a symmetric tridiagonal system, solved by elimination."""
        gaps = [b - a for a, b in pairwise(self.angles)]
        slopes = [0.0, *((z - y) / h for (y, z), h in zip(pairwise(self.lifts), gaps, strict=True)), 0.0]
        diagonal = [2 * (a + b) for a, b in pairwise([0.0, *gaps, 0.0])]
        right = [6 * (b - a) for a, b in pairwise(slopes)]
        for n, gap in enumerate(gaps, start=1):
            share = gap / diagonal[n - 1]
            diagonal[n] -= share * gap
            right[n] -= share * right[n - 1]
        solved = [right[-1] / diagonal[-1]]
        for n in range(len(gaps) - 1, -1, -1):
            solved.append((right[n] - gaps[n] * solved[-1]) / diagonal[n])
        return tuple(reversed(solved))
