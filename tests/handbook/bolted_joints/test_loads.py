"""Working load and heat on a joint, against a solution of the two springs."""

from __future__ import annotations

import pytest
from hypothesis import given, strategies as st

from speclint.errors import OutOfRange
from speclint.handbook.bolted_joints import loads
from speclint.handbook.bolted_joints.stiffness import load_factor

preloads = st.floats(10e3, 500e3)
shares = st.floats(0.01, 0.9)
springs = st.floats(1e8, 1e10)


@given(preloads, shares, st.floats(1.0, 500e3))
def test_stud_less_face_is_the_working_load(F: float, Phi: float, P: float) -> None:
    carried = loads.stud_load(F, Phi, P) - loads.clamping_load_left(F, Phi, P)
    assert carried == pytest.approx(P, abs=1e-9 * (F + P))


@given(preloads, shares, st.floats(1.0, 500e3))
def test_at_the_separation_factor_nothing_presses_the_faces(F: float, Phi: float, P: float) -> None:
    n = loads.separation_factor(F, Phi, P)
    assert loads.clamping_load_left(F, Phi, n * P) == pytest.approx(0, abs=1e-9 * F)
    assert loads.preload_against_separation(n, Phi, P) == pytest.approx(F)


@given(preloads, springs, springs, st.floats(1.0, 5e3))
def test_share_follows_from_one_stretch_of_both_springs(F: float, k_b: float, k_m: float, P: float) -> None:
    """Both stretch by x: (k_b + k_m) x = P; the stud gains k_b x and the faces lose k_m x."""
    x = P / (k_b + k_m)
    Phi = load_factor(k_b, k_m)
    assert loads.stud_load(F, Phi, P) == pytest.approx(F + k_b * x)
    assert loads.clamping_load_left(F, Phi, P) == pytest.approx(F - k_m * x)


def test_separation_needs_a_load_and_a_share_below_one() -> None:
    assert loads.separation_factor(120.0, 0.0, 100.0) == pytest.approx(1.2)
    with pytest.raises(OutOfRange, match="load factor 1 is not below 1"):
        loads.separation_factor(120.0, 1.0, 100.0)
    with pytest.raises(OutOfRange, match="working load above 0"):
        loads.separation_factor(120.0, 0.0, 0.0)


@given(preloads, springs, springs, st.floats(-20e-6, 100e-6), st.floats(0.7, 1.0))
def test_hot_preload_by_bisection_on_the_gap(
    F: float, k_b: float, k_m: float, Delta: float, softer: float
) -> None:
    """Find by halving the force at which stud stretch and parts' squeeze make up the drawn length."""
    drawn = F / k_b + F / k_m + Delta
    hot_b, hot_m = softer * k_b, softer * k_m
    low, high = -1e9, 1e9
    for _ in range(200):
        middle = (low + high) / 2
        low, high = (middle, high) if middle / hot_b + middle / hot_m < drawn else (low, middle)
    assert loads.preload_hot(F, Delta, k_b, k_m, hot_b, hot_m) == pytest.approx(low, rel=1e-6, abs=1e-3)


@given(preloads, springs, springs)
def test_without_growth_or_softening_heat_changes_nothing(F: float, k_b: float, k_m: float) -> None:
    assert loads.preload_hot(F, 0.0, k_b, k_m, k_b, k_m) == pytest.approx(F)


def test_a_stud_that_outgrows_the_parts_is_slack() -> None:
    """100 kN on 1.25 µm/kN drew up 125 µm: 130 µm of growth leaves less than nothing, 120 µm leaves 4 kN."""
    assert loads.preload_hot(100e3, -120e-6, 1e9, 4e9, 1e9, 4e9) == pytest.approx(4e3)
    assert loads.preload_hot(100e3, -130e-6, 1e9, 4e9, 1e9, 4e9) == pytest.approx(-4e3)


@given(st.floats(0.01, 0.5), st.floats(8e-6, 18e-6), st.floats(-50, 350))
def test_like_metals_at_one_temperature_do_not_part(L: float, alpha: float, DT: float) -> None:
    assert loads.differential_growth(L, alpha, DT, alpha, DT) == 0
