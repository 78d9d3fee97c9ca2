"""Invariants of balance in two planes, and the ranges of its formulae."""

from __future__ import annotations

import math

import pytest
from hypothesis import given, strategies as st

from speclint import OutOfRange
from speclint.handbook.balance import (
    across_in_plane,
    along_in_plane,
    angle_of_balance,
    big_end_share,
    mass_of_balance,
    out_of_balance,
    rotating_force,
    share_balanced,
    small_end_share,
)

angles = st.floats(-math.pi, math.pi)
masses = st.floats(1.0, 500.0)


@given(m=masses, α=angles, y=st.floats(-1.1, 1.1))
def test_a_mass_and_its_own_opposite_leave_nothing(m: float, α: float, y: float) -> None:
    X = along_in_plane(along_in_plane(0.0, m, 0.3, α, 0.75, y), m, 0.3, α + math.pi, 0.75, y)
    Y = across_in_plane(across_in_plane(0.0, m, 0.3, α, 0.75, y), m, 0.3, α + math.pi, 0.75, y)
    assert out_of_balance(X, Y) == pytest.approx(0.0, abs=1e-9)


@given(X=st.floats(-200, 200), Y=st.floats(-200, 200))
def test_the_balance_leaves_nothing(X: float, Y: float) -> None:
    m, α = mass_of_balance(out_of_balance(X, Y), 0.6), angle_of_balance(out_of_balance(X, Y), X, Y)
    assert X + m * 0.6 * math.cos(α) == pytest.approx(0.0, abs=1e-6)
    assert Y + m * 0.6 * math.sin(α) == pytest.approx(0.0, abs=1e-6)


@given(R=st.floats(0.1, 50), ω=st.floats(1, 50), k=st.floats(1.1, 3))
def test_hammer_blow_grows_with_the_square_of_the_speed(R: float, ω: float, k: float) -> None:
    assert rotating_force(R, k * ω) == pytest.approx(k**2 * rotating_force(R, ω))


@given(m=masses, α=angles)
def test_three_equal_cranks_a_third_of_a_turn_apart_leave_no_force(m: float, α: float) -> None:
    X = Y = 0.0
    for number, y in enumerate((0.9, 0.0, -0.9)):
        for side in (1, -1):
            X = along_in_plane(X, m, 0.33, α + number * 2 * math.pi / 3, 0.76, side * y)
            Y = across_in_plane(Y, m, 0.33, α + number * 2 * math.pi / 3, 0.76, side * y)
    assert out_of_balance(X, Y) == pytest.approx(0.0, abs=1e-9)


@given(y=st.floats(-1.1, 1.1), α=angles)
def test_both_planes_together_take_the_whole_of_a_mass(y: float, α: float) -> None:
    both = along_in_plane(along_in_plane(0.0, 100.0, 0.3, α, 0.76, y), 100.0, 0.3, α, 0.76, -y)
    assert both == pytest.approx(30.0 * math.cos(α), abs=1e-9)


@pytest.mark.parametrize("a", [0.0, 1.9, -0.1])
def test_a_rod_whose_centre_is_not_between_its_pins_is_refused(a: float) -> None:
    for share in (big_end_share, small_end_share):
        with pytest.raises(OutOfRange, match="between its pins"):
            share(100.0, 1.9, a)


def test_planes_on_one_another_are_refused() -> None:
    for part in (along_in_plane, across_in_plane):
        with pytest.raises(OutOfRange, match="stand apart"):
            part(0.0, 1.0, 0.3, 0.0, 0.0, 0.1)


def test_a_balance_on_the_axle_is_refused() -> None:
    with pytest.raises(OutOfRange, match="radius"):
        mass_of_balance(1.0, 0.0)


def test_a_share_of_nothing_is_refused() -> None:
    with pytest.raises(OutOfRange, match="reciprocate"):
        share_balanced(1.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0)
