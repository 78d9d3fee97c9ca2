"""Where a function is greatest along a line: between the places of the grid, at a place of it, and at either end."""

from __future__ import annotations

import math

import pytest
from hypothesis import given, strategies as st

from speclint.rules.scan import MISSED, greatest_place


@given(peak=st.floats(0.0, 1.0), steps=st.integers(1, 12))
def test_the_top_of_a_hill_is_found_wherever_it_lies(peak: float, steps: int) -> None:
    """Property: −(x − b)² is greatest at b, on either side of a place of the grid and at both ends."""
    place = greatest_place(lambda at: -((at - peak) ** 2), 0.0, 1.0, steps)
    assert place == pytest.approx(peak, abs=1e-5)


@pytest.mark.parametrize("peak", [0.26, 0.37, 0.49, 0.61, 0.74])
def test_the_point_of_a_kink_is_found_to_the_share_that_is_stated(peak: float) -> None:
    """−|x − b| on 4 intervals of 0.25."""
    assert abs(greatest_place(lambda at: -abs(at - peak), 0.0, 1.0, 4) - peak) <= MISSED * 0.25


def test_the_greatest_of_several_hills_is_found() -> None:
    """f = x + sin(6πx)/2 on 0 to 1, by hand: f′ = 1 + 3π cos 6πx = 0 on the last of its three hills where 6πx = 4π +
    arccos(−1/(3π)) = 12.56637 + 1.67710, x = 0.755639.
    """
    place = greatest_place(lambda at: at + math.sin(6 * math.pi * at) / 2, 0.0, 1.0, 60)
    assert place == pytest.approx(0.755639, abs=1e-5)


def test_a_greatest_value_at_a_place_of_the_grid_is_kept() -> None:
    """A single point that stands out, beside which all is lower: no place between is taken for it."""
    assert greatest_place(lambda at: 1.0 if at == 0.5 else -at, 0.0, 1.0, 4) == 0.5


@pytest.mark.parametrize(("sign", "end"), [(1, 3.0), (-1, 2.0)])
def test_what_rises_or_falls_all_the_way_is_greatest_at_its_end(sign: int, end: float) -> None:
    assert greatest_place(lambda at: sign * at, 2.0, 3.0, 5) == end
