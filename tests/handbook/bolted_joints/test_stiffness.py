"""Springs of a joint against numerical integration along the load path, and their bounds."""

from __future__ import annotations

import math

import pytest
from hypothesis import given, strategies as st
from scipy.integrate import quad

from speclint.errors import OutOfRange
from speclint.handbook.bolted_joints import stiffness as k

diameters = st.floats(0.008, 0.05)
grips = st.floats(0.01, 0.3)
angles = st.sampled_from([k.CONE_30, k.CONE_45])
springs = st.floats(1e6, 1e10)


def slices(E: float, d: float, D: float, t: float, alpha: float) -> float:
    """Stiffness of a hollow cone summed as thin rings: 1/k = ∫ dx/(E A(x))."""
    compliance, _ = quad(
        lambda x: 1 / (E * math.pi / 4 * ((D + 2 * x * math.tan(alpha)) ** 2 - d**2)), 0, t, epsabs=0
    )
    return 1 / float(compliance)


@given(diameters, grips, angles)
def test_cone_is_the_sum_of_its_slices(d: float, t: float, alpha: float) -> None:
    found = k.frustum_stiffness(206e9, d, 1.5 * d, t, alpha)
    assert found == pytest.approx(slices(206e9, d, 1.5 * d, t, alpha), rel=1e-6)


@given(diameters, grips, angles)
def test_parts_are_two_cones_that_meet_in_the_middle(d: float, L: float, alpha: float) -> None:
    half = slices(110e9, d, 1.5 * d, L / 2, alpha)
    assert k.member_stiffness(110e9, d, 1.5 * d, L, alpha) == pytest.approx(half / 2, rel=1e-6)


@given(diameters, grips)
def test_the_wider_cone_is_stiffer(d: float, L: float) -> None:
    narrow = k.member_stiffness(206e9, d, 1.5 * d, L, k.CONE_30)
    wide = k.member_stiffness(206e9, d, 1.5 * d, L, k.CONE_45)
    assert wide > narrow


@given(diameters, st.floats(1e-3, 0.2), st.floats(1e-3, 0.2))
def test_stud_is_its_two_lengths_in_series(d: float, l_d: float, l_t: float) -> None:
    A_d, A_t = math.pi * d**2 / 4, 0.78 * math.pi * d**2 / 4
    shank, thread = k.bar_stiffness(206e9, A_d, l_d), k.bar_stiffness(206e9, A_t, l_t)
    series = k.stiffness_in_series(shank, thread)
    assert k.stud_stiffness(206e9, A_d, l_d, A_t, l_t) == pytest.approx(series)
    assert series < min(shank, thread)


def test_engaged_thread_by_hand() -> None:
    """d 20 mm, core 225 mm², steel on iron, tapped hole.

    Stud: 0.5 × 20/(206 000 × 225) = 2.1575e-7 mm/N. Block: 0.33 × 20/(110 000 × 314.159) = 1.9099e-7 mm/N.
    """
    found = k.engaged_thread_stiffness(206e9, 110e9, 0.020, 225e-6, k.GIVE_OF_TAPPED_HOLE)
    assert found == pytest.approx(1 / (2.1575e-10 + 1.9099e-10), rel=1e-4)


@given(springs, springs)
def test_load_factor_lies_between_nothing_and_all(k_b: float, k_m: float) -> None:
    found = k.load_factor(k_b, k_m)
    assert 0 < found < 1
    assert found + k.load_factor(k_m, k_b) == pytest.approx(1)


@given(springs, springs)
def test_a_softer_stud_takes_less(k_b: float, k_m: float) -> None:
    assert k.load_factor(0.9 * k_b, k_m) < k.load_factor(k_b, k_m)


def test_the_face_must_be_larger_than_the_hole() -> None:
    assert k.frustum_stiffness(206e9, 0.016, 0.0161, 0.02, k.CONE_30) > 0
    with pytest.raises(OutOfRange, match=r"face under the nut, 16 mm, is not larger than the hole, 16 mm"):
        k.frustum_stiffness(206e9, 0.016, 0.016, 0.02, k.CONE_30)


def test_the_cone_may_be_blunt_but_not_flat() -> None:
    assert k.frustum_stiffness(206e9, 0.016, 0.024, 0.02, math.radians(89)) > 0


@pytest.mark.parametrize("alpha", [0.0, math.pi / 2])
def test_the_cone_has_an_angle(alpha: float) -> None:
    with pytest.raises(OutOfRange, match="half angle"):
        k.frustum_stiffness(206e9, 0.016, 0.024, 0.02, alpha)
