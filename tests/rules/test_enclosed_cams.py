"""The follower of a cam over a range of angles, by hand: of curves that meet with a jump, without one, and of parts."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from math import inf
from typing import Any

import pytest

from speclint.handbook.cams import Follower
from speclint.rules.enclosed_cams import Moved, _meet, _over_range, follower_at
from speclint.rules.enclosure import Enclosure, Input
from speclint.rules.slopes import slopes


def cube(size: float, a: Any) -> Any:
    """Of size times a³: lift, slope and curvature."""
    return Follower(size * a**3, size * 3 * a**2, size * 6 * a)


@dataclass(frozen=True)
class Cam:
    """100 a³ to 1 rad, and from there a parabola of some curvature; to 2 rad."""

    bends: float
    duration: float = 2.0
    joins: tuple[float, ...] = (0.0, 1.0, 2.0)

    def at(self, angle: Any) -> Any:
        if angle < 1.0:
            return cube(100.0, angle)
        on = angle - 1.0
        return Follower(100.0 + 300.0 * on + self.bends / 2 * on**2, 300.0 + self.bends * on, self.bends)


#: At 1 rad the curvature goes on from 600, or jumps from there to 1000.
ON, JUMPS = Cam(600.0), Cam(1000.0)


def near(low: float, high: float) -> Any:
    return pytest.approx((low, high), rel=1e-9, abs=1e-9)


def test_on_one_curve_lift_slope_and_curvature_are_those_of_its_ends() -> None:
    """From 0.2 to 0.6 rad: 0.8 to 21.6, 12 to 108, 120 to 360, and 600 all along."""
    found = _over_range(ON, 0.2, 0.6)
    assert found == (near(0.8, 21.6), near(12.0, 108.0), near(120.0, 360.0), near(600.0, 600.0))
    first, last = ON.at(0.2), ON.at(0.6)
    for (low, high), begins, ends in zip(
        found[:3],
        (first.lift, first.slope, first.curvature),
        (last.lift, last.slope, last.curvature),
        strict=True,
    ):
        assert low <= begins
        assert ends <= high


def test_over_two_curves_that_meet_without_a_jump_the_bounds_are_those_of_both() -> None:
    """From 0.5 to 1.5 rad: 12.5 to 100 + 150 + 75, 75 to 600, 300 to 600; the curvature rises by 600 or by nothing."""
    found = _over_range(ON, 0.5, 1.5)
    assert found == (near(12.5, 325.0), near(75.0, 600.0), near(300.0, 600.0), near(0.0, 600.0))


def test_over_a_jump_the_curvature_rises_without_bound() -> None:
    """To 1.5 rad: 100 + 150 + 125 and 300 + 500."""
    found = _over_range(JUMPS, 0.5, 1.5)
    assert found == (near(12.5, 375.0), near(75.0, 800.0), near(300.0, 1000.0), (-inf, inf))
    down = _over_range(Cam(100.0), 0.5, 1.5)
    assert down[2:] == (near(100.0, 600.0), (-inf, inf))


def test_where_a_range_ends_at_a_join_the_curve_beyond_may_have_it() -> None:
    assert _over_range(JUMPS, 0.5, 1.0)[2:] == (near(300.0, 1000.0), near(600.0, 600.0))
    assert _over_range(JUMPS, 1.0, 1.5)[2:] == (near(1000.0, 1000.0), (0.0, 0.0))
    assert _over_range(JUMPS, 0.5, 0.999)[2] == near(300.0, 599.4)


def test_at_one_angle_there_is_one_follower() -> None:
    """At 0.4 rad: 6.4, 48 and 240."""
    found = _over_range(ON, 0.4, 0.4)
    assert found[:3] == (near(6.4, 6.4), near(48.0, 48.0), near(240.0, 240.0))


@dataclass(frozen=True)
class Arch:
    """a (2 − a), from which bounds of both factors give more than there is."""

    duration: float = 2.0
    joins: tuple[float, ...] = (0.0, 2.0)

    def at(self, angle: Any) -> Any:
        return Follower(angle * (2.0 - angle), 2.0 - 2.0 * angle, -2.0)


def test_the_slope_from_the_middle_tightens_the_bounds() -> None:
    """From 0.5 to 0.9 rad: 0.91 at 0.7, and 0.2 either way at a slope of 1 at most; the factors give 0.55 to 1.35."""
    found = _over_range(Arch(), 0.5, 0.9)
    assert found == (near(0.71, 1.11), near(0.2, 1.0), near(-2.0, -2.0), (0.0, 0.0))


def greater_slope(angle: Any) -> Any:
    return max(angle, 0.5)


@dataclass(frozen=True)
class Side:
    """A part of a cam, with a function of its own."""

    law: Callable[[Any], Any]

    def bent(self, angle: Any) -> Any:
        return max(self.law(angle), 0.6)


@dataclass(frozen=True)
class Parted:
    """A cam of which a part gives the curvature: the greatest of the angle, 0.5 by a function of the part, 0.6 by the
    part and 0.7 by the cam."""

    side: Side
    duration: float = 1.0
    joins: tuple[float, ...] = (0.0, 1.0)

    def at(self, angle: Any) -> Any:
        return Follower(1.0, 0.0, self.own(angle))

    def own(self, angle: Any) -> Any:
        return max(self.side.bent(angle), 0.7)


def test_the_parts_of_a_cam_run_over_a_range_too() -> None:
    cam = Parted(Side(greater_slope))
    assert _over_range(cam, 0.3, 0.8)[2] == near(0.7, 0.8)
    assert cam.at(0.3).curvature == 0.7


def test_what_hangs_on_an_angle_may_be_asked_on_a_part_of_its_range() -> None:
    """From 0.3 to 0.4 rad: 2.7 to 6.4, 27 to 48, 180 to 240."""
    over: Any = follower_at(Input("angle", 0.2, 0.6), ON)
    asked = []
    for one in (over.lift, over.slope, over.curvature):
        assert isinstance(one, Moved)
        asked.append(one.over(0.3, 0.4))
    assert asked == [near(2.7, 6.4), near(27.0, 48.0), near(180.0, 240.0)]
    assert [slopes(one)["angle"] for one in (over.lift, over.slope, over.curvature)] == [
        near(12.0, 108.0),
        near(120.0, 360.0),
        near(600.0, 600.0),
    ]


@pytest.mark.parametrize(("angle", "at"), [(0.4, 0.4), (-0.5, 0.0), (2.5, 2.0)])
def test_at_a_plain_angle_the_cam_is_asked_itself_outside_the_lift_at_its_end(
    angle: float, at: float
) -> None:
    assert follower_at(angle, ON) == ON.at(at)


def test_outside_the_lift_a_range_is_its_end() -> None:
    assert follower_at(Input("angle", -0.5, -0.1), ON) == ON.at(0.0)
    assert follower_at(Input("angle", 2.1, 2.5), ON) == ON.at(2.0)


class Uncertain:
    """A cam whose lift takes 1 to 2 rad."""

    duration = Input("duration", 1.0, 2.0)

    def at(self, angle: object) -> object:
        return ("asked", angle)


def test_a_cam_of_uncertain_duration_is_asked_itself() -> None:
    asked: Any = follower_at(Input("angle", 0.5, 1.5), Uncertain())
    assert asked[0] == "asked"
    assert isinstance(asked[1], Enclosure)
    assert asked[1].bounds == near(0.5, 1.5)


@pytest.mark.parametrize(
    ("one", "other", "meet"),
    [
        ((0.0, 0.0), (0.0, 0.0), True),
        ((0.0, 1.0), (1.0, 2.0), True),
        ((1.0, 2.0), (0.0, 1.0), True),
        ((0.0, 1.0), (1.0 + 1.5e-9, 2.0), True),
        ((0.0, 1.0), (1.0 + 5e-9, 2.0), False),
        ((1.0 + 5e-9, 2.0), (0.0, 1.0), False),
        ((-100.0, 1.0), (1.0 + 5e-8, 2.0), True),  # the greatest of all four tells what is near
        ((1.0, 2.0), (-100.0, 1.0 - 5e-8), True),
        ((1.0 + 5e-8, 100.0), (0.0, 1.0), True),
        ((0.0, 1.0), (1.0 + 5e-8, 100.0), True),
    ],
)
def test_curvatures_that_differ_by_a_rounding_meet(
    one: tuple[float, float], other: tuple[float, float], meet: bool
) -> None:
    assert _meet(one, other) is meet
