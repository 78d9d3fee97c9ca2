"""Studs on a circle: geometry and bounds of the rules of pitch and number."""

from __future__ import annotations

import cmath
import math

import pytest
from hypothesis import given, strategies as st

from speclint.errors import OutOfRange
from speclint.handbook.bolted_joints import layout


@given(st.floats(0.05, 2.0), st.integers(2, 80))
def test_pitch_is_the_distance_between_two_points_of_the_circle(D: float, n: int) -> None:
    first, second = cmath.rect(D / 2, 0), cmath.rect(D / 2, 2 * math.pi / n)
    assert layout.chordal_pitch(D, n) == pytest.approx(abs(second - first))


@given(st.floats(0.05, 2.0), st.integers(2, 80))
def test_all_arcs_together_are_the_circle(D: float, n: int) -> None:
    assert n * layout.arc_pitch(D, n) == pytest.approx(math.pi * D)
    assert layout.arc_pitch(D, n) > layout.chordal_pitch(D, n)


def test_two_studs_are_the_fewest() -> None:
    assert layout.chordal_pitch(0.5, 2) == pytest.approx(0.5)
    with pytest.raises(OutOfRange, match="1 studs have no pitch"):
        layout.chordal_pitch(0.5, 1)


@given(st.floats(0.01, 0.04), st.floats(0.01, 0.1), st.floats(0, 7))
def test_greatest_pitch_is_the_smaller_of_both_rules(d: float, t: float, m: float) -> None:
    by_flange, by_size = layout.greatest_pitch_by_flange(d, t, m), layout.greatest_pitch_for_tightness(d)
    assert layout.greatest_pitch(d, t, m) in (by_flange, by_size)
    assert layout.greatest_pitch(d, t, m) <= min(by_flange, by_size)


def test_spanner_pitch_by_hand() -> None:
    """2.5 × 24 mm."""
    assert layout.spanner_pitch(0.024) == pytest.approx(0.060)


@given(st.floats(0.012, 0.05))
def test_the_room_for_a_spanner_is_less_than_the_least_pitch_for_tightness(d: float) -> None:
    """2.5 d = 19 √d at d = 57.8 mm."""
    assert layout.spanner_pitch(d) < layout.least_pitch_for_tightness(d)


@given(st.floats(0.01, 0.04), st.floats(0.01, 0.1), st.floats(0, 6.5))
def test_a_harder_gasket_wants_a_closer_pitch(d: float, t: float, m: float) -> None:
    assert layout.greatest_pitch_by_flange(d, t, m + 0.5) < layout.greatest_pitch_by_flange(d, t, m)


def test_gasket_factor_may_be_nothing_but_not_less() -> None:
    assert layout.greatest_pitch_by_flange(0.02, 0.02, 0.0) == pytest.approx(0.28)
    with pytest.raises(OutOfRange, match="gasket factor"):
        layout.greatest_pitch_by_flange(0.02, 0.02, -0.1)


@given(st.floats(0.1, 1.5))
def test_most_studs_exceed_fewest(D: float) -> None:
    assert layout.most_studs(D) > layout.fewest_studs(D) > 4


@given(st.floats(1e4, 1e7), st.floats(1e-4, 1e-3), st.floats(1e7, 3e8))
def test_that_many_studs_carry_the_load_at_the_stress(F: float, A: float, sigma: float) -> None:
    assert layout.studs_for_stress(F, A, sigma) * A * sigma == pytest.approx(F)
