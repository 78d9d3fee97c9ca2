"""Formulae of what a cam does over a range of its angle, worked on parts of the range."""

from __future__ import annotations

from typing import Any

import pytest

from speclint.handbook.cams import CamProfile, Flank, cam_law
from speclint.rules.by_pieces import Pieced, Ranged, by_pieces
from speclint.rules.enclosed_cams import follower_at
from speclint.rules.enclosure import Enclosure, Input, Undecided
from speclint.rules.slopes import slopes

FLANK = Flank(cam_law("3-4-5 polynomial"), 0.020, 1.0)
CAM = CamProfile(FLANK, 0.1, FLANK)


def bent(s: Any, κ: Any, m: Any) -> Any:
    """A load that rises with the lift and falls as the curvature does."""
    return 30 * s + m * κ


def over(low: float, high: float, m: Any) -> Enclosure:
    at = follower_at(Input("angle", low, high), CAM)
    found: Enclosure = by_pieces(bent, {}, bent, {"s": at.lift, "κ": at.curvature, "m": m})
    return found


def test_the_bounds_hold_every_angle_and_every_mass() -> None:
    found = over(0.5, 0.9, Input("mass", 1.0, 2.0))
    assert isinstance(found, Pieced)
    for step in range(101):
        at = CAM.at(0.5 + 0.4 * step / 100)
        for m in (1.0, 1.5, 2.0):
            assert found.low <= bent(at.lift, at.curvature, m) <= found.high


def test_the_slopes_hold_those_of_every_angle() -> None:
    """By the mass the slope is the curvature: by hand between its values at the ends of the range, and beyond."""
    found = slopes(over(0.5, 0.9, Input("mass", 1.0, 2.0)))["mass"]
    every = [CAM.at(0.5 + 0.4 * step / 100).curvature for step in range(101)]
    assert found[0] <= min(every)
    assert found[1] >= max(every)


def test_parts_are_tighter_than_the_whole_range() -> None:
    """The lift is least where the range begins and the curvature where it is steepest: no one angle has both."""
    at = follower_at(Input("angle", 0.5, 0.9), CAM)
    whole: Any = bent(at.lift, at.curvature, 2.0)
    found = over(0.5, 0.9, 2.0)
    assert found.high - found.low < 0.8 * (whole.high - whole.low)


def test_what_is_found_on_each_part_goes_into_the_next_formula() -> None:
    """The lift less itself is nothing at every angle; over the whole range it would be as wide as the lift changes."""
    at = follower_at(Input("angle", 0.2, 0.8), CAM)
    known: dict[Any, Any] = {}
    doubled = by_pieces(lambda s: 2 * s, known, "double", {"s": at.lift})
    left = by_pieces(lambda s, d: 2 * s - d, known, "less", {"s": at.lift, "d": doubled})
    change = CAM.at(0.8).lift - CAM.at(0.2).lift
    assert -0.5 * change < left.low <= 0.0 <= left.high < 0.5 * change


@pytest.mark.parametrize(("low", "high"), [(0.5, 0.5), (0.5, 0.501)])
def test_a_narrow_range_is_left_whole(low: float, high: float) -> None:
    assert not isinstance(over(low, high, 1.0), Pieced)


class Lift(Ranged):
    """Twice an angle, which notes the parts of the range that it is asked for."""

    __slots__ = ("asked",)

    def __init__(self, angle: Input, whole: float) -> None:
        super().__init__((2 * angle.low, 2 * angle.high), (2.0, 2.0), angle, whole)
        self.asked: list[tuple[float, float]] = []

    def over(self, low: float, high: float) -> tuple[float, float]:
        self.asked.append((low, high))
        return 2 * low, 2 * high


def angle(low: float, high: float) -> Input:
    return Input("angle", low, high)


def test_a_range_is_asked_for_in_twelve_equal_parts() -> None:
    lift = Lift(angle(3.0, 15.0), 20.0)
    found = by_pieces(lambda s: s + 1.0, {}, "more", {"s": lift})
    assert lift.asked == [(3.0 + part, 4.0 + part) for part in range(12)]
    assert [one for piece in found.pieces for one in piece] == pytest.approx(
        [one for part in range(12) for one in (7.0 + 2 * part, 9.0 + 2 * part)]
    )
    assert found.bounds == pytest.approx((7.0, 31.0))
    assert slopes(found)["angle"] == pytest.approx((2.0, 2.0))


@pytest.mark.parametrize(
    ("low", "high", "whole", "wide"),
    [
        (0.0, 1.0, 100.0, False),  # a hundredth of the lift
        (0.0, 1.01, 100.0, True),
        (5.0, 6.0, 1000.0, False),
        (5.0, 6.0, 50.0, True),
    ],
)
def test_a_range_of_more_than_a_hundredth_of_the_lift_is_taken_in_parts(
    low: float, high: float, whole: float, wide: bool
) -> None:
    found = by_pieces(lambda s: s + 1.0, {}, "more", {"s": Lift(angle(low, high), whole)})
    assert isinstance(found, Pieced) is wide


def test_what_hangs_on_two_angles_is_left_whole() -> None:
    one, other = Lift(angle(0.0, 1.0), 2.0), Lift(angle(0.5, 1.0), 2.0)
    found = by_pieces(lambda s, t: s + t, {}, "sum", {"s": one, "t": other})
    assert not isinstance(found, Pieced)
    assert found.bounds == pytest.approx((1.0, 4.0))
    assert by_pieces(lambda s: s + 1.0, {}, "more", {"s": 2.0}) == 3.0


def test_what_was_worked_for_the_same_bounds_is_not_worked_again() -> None:
    asked: list[Any] = []

    def more(s: Any, m: Any, k: float) -> Any:
        asked.append(s)
        return s * m + k

    known: dict[Any, Any] = {}
    turned = angle(0.0, 1.0)
    for mass, k, calls in ((1.0, 0.5, 12), (1.0, 0.5, 12), (1.5, 0.5, 24), (1.0, 0.75, 36)):
        arguments = {"s": Lift(turned, 2.0), "m": Input("mass", mass, 2.0), "k": k}
        found = by_pieces(more, known, "more", arguments)
        assert len(asked) == calls
        assert found.bounds == pytest.approx((k, 4.0 + k))
        assert slopes(found)["mass"] == pytest.approx((0.0, 2.0))
        assert slopes(found)["angle"] == pytest.approx((2 * mass, 4.0))


def test_a_formula_that_hangs_on_nothing_gives_one_number_on_each_part() -> None:
    found = by_pieces(lambda s: 4.0, {}, "four", {"s": Lift(angle(0.0, 1.0), 2.0)})  # noqa: ARG005
    assert found.pieces == ((4.0, 4.0),) * 12
    assert found.bounds == (4.0, 4.0)
    assert slopes(found).get("angle", (0.0, 0.0)) == (0.0, 0.0)


def test_what_is_not_decided_on_a_part_is_asked_over_all_of_the_range() -> None:
    def whole(s: Any) -> Any:
        if s.high - s.low < 1.0:
            raise Undecided(s)
        return 1.5

    assert by_pieces(whole, {}, "whole", {"s": Lift(angle(0.0, 1.0), 2.0)}) == 1.5


def test_what_cannot_be_asked_on_a_part_says_so() -> None:
    with pytest.raises(NotImplementedError):
        Ranged((0.0, 1.0), (1.0, 1.0), angle(0.0, 1.0), 1.0).over(0.0, 0.5)
