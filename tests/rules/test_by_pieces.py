"""Formulae of what a cam does over a range of its angle, worked on parts of the range."""

from __future__ import annotations

from typing import Any

import pytest

from speclint.handbook.cams import CamProfile, Flank, cam_law
from speclint.rules.by_pieces import Pieced, by_pieces
from speclint.rules.enclosed_cams import follower_at
from speclint.rules.enclosure import Enclosure, Input
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
