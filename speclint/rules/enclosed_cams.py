"""The follower of a cam over all of a range of angles.

A cam is made of curves that meet at known angles: each is enclosed by itself, on the part of the range where it holds.
Lift, slope and curvature are each the slope of the one before, which tightens their bounds.
"""

from __future__ import annotations

from collections.abc import Iterator
from copy import copy
from dataclasses import fields, is_dataclass
from functools import lru_cache
from itertools import pairwise
from math import inf
from typing import Any

from speclint.handbook.cams import CamMotion, Follower
from speclint.rules import intervals
from speclint.rules.by_pieces import Ranged
from speclint.rules.enclosed_functions import BUILT_IN
from speclint.rules.enclosure import Enclosure, Input
from speclint.rules.intervals import Interval
from speclint.rules.slopes import slopes
from speclint.rules.twins import twin

#: Share of the lift by which the range of one curve ends before the next begins; curves are continued over it.
_GAP = 1e-12
#: Curvatures that differ by less than this share are one: the curves meet without a jump.
_SAME = 1e-9
#: Ranges of angles that are kept.
_KEPT = 8192
#: Cams that are kept, with their parts.
_CAMS = 512
_Bounds = tuple[Interval, Interval, Interval, Interval]  # lift and its first three derivatives by the angle


def follower_at(angle: Any, cam: Any) -> Follower:
    """The follower at an angle, or over all of a range of angles; outside the lift, at its nearer end."""
    least, most = BUILT_IN["min"], BUILT_IN["max"]
    inside: Any = least(most(angle, 0.0), cam.duration)  # type: ignore[operator]
    if not isinstance(inside, Enclosure) or isinstance(cam.duration, Enclosure):
        found: Follower = cam.at(inside)
        return found
    lift, slope, curvature, jerk = _over_range(cam, inside.low, inside.high)
    return Follower(
        Moved(lift, slope, 0, cam, inside),  # type: ignore[arg-type]  # enclosures stand for floats
        Moved(slope, curvature, 1, cam, inside),  # type: ignore[arg-type]
        Moved(curvature, jerk, 2, cam, inside),  # type: ignore[arg-type]
    )


class Moved(Ranged):
    """The lift of a cam over a range of angles, or its derivative of some order, 1 or 2."""

    __slots__ = ("cam", "order")

    def __init__(self, bounds: Interval, slope: Interval, order: int, cam: Any, angle: Enclosure) -> None:
        super().__init__(bounds, slope, angle, cam.duration)
        self.order, self.cam = order, cam

    def over(self, low: float, high: float) -> Interval:
        """Its bounds over a part of the range of angles [rad]."""
        bounds: Interval = _over_range(self.cam, low, high)[self.order]
        return bounds


@lru_cache(maxsize=_KEPT)
def _over_range(cam: Any, low: float, high: float) -> _Bounds:
    """The bounds over a range of angles; a scan asks for the same ranges in many boxes.

    Where a range ends at a join of two curves, the curve beyond may have it there.
    """
    pieces = list(_pieces(cam, low, high))
    ends = [_at_end(cam, end) for end in (low, high) if end in cam.joins]
    lift, slope, curvature, _ = (_hull(bounds) for bounds in zip(*pieces, *ends, strict=True))
    jerk = _hull(tuple(one[3] for one in pieces))
    for (_, _, before, _), (_, _, after, _) in pairwise(pieces):
        if not _meet(before, after):
            jerk = (-inf, inf)
    return lift, slope, curvature, jerk


def _at_end(cam: CamMotion, angle: float) -> _Bounds:
    """The follower at one angle."""
    found = cam.at(angle)
    return (found.lift,) * 2, (found.slope,) * 2, (found.curvature,) * 2, (0.0, 0.0)


def _pieces(cam: CamMotion, low: float, high: float) -> Iterator[_Bounds]:
    """The bounds on each curve that the range of angles touches."""
    gap = _GAP * cam.duration
    ends = [low, *(join for join in cam.joins if low < join < high), high]
    for first, last in pairwise(ends):
        inner = (first + gap, last - gap) if last - first > 4 * gap else ((first + last) / 2,) * 2
        yield _bounds(cam, *inner, (last - first) / 2, gap)


def _bounds(cam: CamMotion, low: float, high: float, reach: float, gap: float) -> _Bounds:
    angle = Input("angle", low, high)
    found = _at(cam, angle)
    middle = cam.at((low + high) / 2)
    jerk = (
        slopes(found.curvature).get("angle", (0.0, 0.0))
        if isinstance(found.curvature, Enclosure)
        else (0.0, 0.0)
    )
    curvature = _tightened(found.curvature, middle.curvature, jerk, reach, gap)
    slope = _tightened(found.slope, middle.slope, curvature, reach, gap)
    return _tightened(found.lift, middle.lift, slope, reach, gap), slope, curvature, jerk


def _tightened(value: Any, middle: float, slope: Interval, reach: float, gap: float) -> Interval:
    """The bounds of a value on a curve; also those given by its middle and its slope, with the gap at either end."""
    grown = intervals.multiply(slope, (-reach, reach))
    by_slope = intervals.add((middle, middle), grown)
    if not isinstance(value, Enclosure):
        return by_slope
    slack = 2 * gap * max(map(abs, slope))
    return max(value.low - slack, by_slope[0]), min(value.high + slack, by_slope[1])


def _hull(bounds: tuple[Interval, ...]) -> Interval:
    return min(low for low, _ in bounds), max(high for _, high in bounds)


def _meet(one: Interval, other: Interval) -> bool:
    near = _SAME * max(abs(one[0]), abs(one[1]), abs(other[0]), abs(other[1]))
    return one[0] <= other[1] + near and other[0] <= one[1] + near


def _at(cam: Any, angle: Enclosure) -> Any:
    """The follower by the code of the cam itself, made to run on enclosures."""
    return twin(type(cam).at)(_deep(cam), angle)


@lru_cache(maxsize=_CAMS)
def _deep(value: Any) -> Any:
    """A copy of a cam whose parts, and the functions among them, run on enclosures."""
    if not is_dataclass(value):
        return twin(value)
    made = copy(value)
    object.__setattr__(made, "__class__", twin(type(value)))
    for each in fields(value):
        object.__setattr__(made, each.name, _deep(getattr(value, each.name)))
    return made
