"""How far two inclined axes stand apart: by hand, with and without a common side."""

from __future__ import annotations

import math

import pytest

from speclint.specs import axis_in_words


@pytest.mark.parametrize(
    ("one", "other", "degrees"),
    [
        # as seen in the plane of both: on one side the difference, on opposite sides the sum
        ("30 ° from upright, outwards", "60 ° from upright, outwards", 30.0),
        ("30 ° from upright, outwards", "60 ° from upright, inwards", 90.0),
        ("30 ° from upright, forward", "60 ° from upright, back", 90.0),
        # square to one another as seen from above: cos 30° cos 60° = 0.43301, 64.341°
        ("30 ° from upright, outwards", "60 ° from upright, back", 64.341),
        # one without a side: the difference of their angles
        ("upwards", "20 ° from upright, back", 20.0),
        ("sideways", "20 ° from upright, inwards", 70.0),
        ("upwards", "downwards", 180.0),
    ],
)
def test_the_angle_between_two_axes(one: str, other: str, degrees: float) -> None:
    first, second = axis_in_words(one), axis_in_words(other)
    assert first is not None
    assert second is not None
    assert math.degrees(first.from_axis(second)) == pytest.approx(degrees, abs=1e-3)
    assert math.degrees(second.from_axis(first)) == pytest.approx(degrees, abs=1e-3)


@pytest.mark.parametrize(("degrees", "rise", "lean"), [(0, 1.0, 0.0), (30, 0.8660254, 0.5), (180, -1.0, 0.0)])
def test_the_rise_and_the_lean_of_an_axis(degrees: int, rise: float, lean: float) -> None:
    axis = axis_in_words(f"{degrees} ° from upright, back")
    assert axis is not None
    assert (axis.rise, axis.lean) == pytest.approx((rise, lean), abs=1e-7)
    assert (axis_in_words("180.001 ° from upright, back"), axis_in_words("181 ° from upright, back")) == (
        None,
        None,
    )


@pytest.mark.parametrize("side", ["outwards", "back"])
def test_an_axis_stands_with_itself_and_against_the_opposite_whatever_rounding_leaves(side: str) -> None:
    """The product of two directions is 1 or -1, or beyond it by the last digit."""
    other = {"outwards": "inwards", "back": "forward"}[side]
    for degrees in range(1, 180):
        axis = axis_in_words(f"{degrees} ° from upright, {side}")
        opposite = axis_in_words(f"{180 - degrees} ° from upright, {other}")
        assert axis is not None
        assert opposite is not None
        assert math.degrees(axis.from_axis(axis)) == pytest.approx(0, abs=1e-5)
        assert math.degrees(axis.from_axis(opposite)) == pytest.approx(180, abs=1e-5)
