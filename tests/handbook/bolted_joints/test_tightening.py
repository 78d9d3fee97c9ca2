"""Torque and preload: both forms turn round, scale and agree where they must."""

from __future__ import annotations

import math

import pytest
from hypothesis import given, strategies as st

from speclint.errors import OutOfRange
from speclint.handbook.bolted_joints import tightening as t

preloads = st.floats(1e3, 1e6)
frictions = st.floats(0.04, 0.3)
threads = st.sampled_from([(2.0e-3, 14.701e-3), (2.5e-3, 18.376e-3), (3.0e-3, 22.051e-3)])


@given(preloads, st.floats(0.1, 0.4), st.floats(0.005, 0.05))
def test_short_form_turns_round(F: float, K: float, d: float) -> None:
    assert t.preload_from_torque(t.tightening_torque(F, K, d), K, d) == pytest.approx(F)
    assert t.torque_coefficient(t.tightening_torque(F, K, d), F, d) == pytest.approx(K)


@given(preloads, frictions, frictions, threads)
def test_long_form_turns_round(F: float, mu_t: float, mu_h: float, thread: tuple[float, float]) -> None:
    P, d_2 = thread
    T = t.tightening_torque_with_friction(F, P, d_2, mu_t, t.METRIC_FLANK_ANGLE, mu_h, 1.3 * d_2)
    assert t.preload_with_friction(T, P, d_2, mu_t, t.METRIC_FLANK_ANGLE, mu_h, 1.3 * d_2) == pytest.approx(F)


@given(preloads, threads)
def test_without_friction_the_work_of_a_turn_lifts_the_load_by_the_pitch(
    F: float, thread: tuple[float, float]
) -> None:
    P, d_2 = thread
    assert t.thread_torque(F, P, d_2, 0.0, t.METRIC_FLANK_ANGLE) * 2 * math.pi == pytest.approx(F * P)


@given(preloads, frictions, threads)
def test_thread_torque_by_wedge_on_the_inclined_plane(
    F: float, mu: float, thread: tuple[float, float]
) -> None:
    """tan(helix + friction angle) is the statics of a block pushed up a slope."""
    P, d_2 = thread
    angle = math.atan(P / (math.pi * d_2)) + math.atan(mu / math.cos(t.METRIC_FLANK_ANGLE))
    expected = F * d_2 / 2 * math.tan(angle)
    assert t.thread_torque(F, P, d_2, mu, t.METRIC_FLANK_ANGLE) == pytest.approx(expected)


@given(preloads, st.floats(0.05, 0.2))
def test_more_friction_takes_more_torque(F: float, mu: float) -> None:
    less = t.thread_torque(F, 2e-3, 14.701e-3, mu, t.METRIC_FLANK_ANGLE)
    more = t.thread_torque(F, 2e-3, 14.701e-3, mu * 1.1, t.METRIC_FLANK_ANGLE)
    assert more > less


def test_coefficient_must_be_above_zero() -> None:
    assert t.tightening_torque(1.0, 1e-6, 1.0) == 1e-6
    for refused in (t.tightening_torque, t.preload_from_torque):
        with pytest.raises(OutOfRange, match="torque coefficient 0 is not above 0"):
            refused(1.0, 0.0, 1.0)


def test_a_thread_that_locks_is_refused() -> None:
    """π d_2 = mu P at mu = π × 10 for d_2 = 10 P, flat flanks."""
    assert t.thread_torque(1.0, 1e-3, 10e-3, 31.0, 0.0) > 0
    with pytest.raises(OutOfRange, match=r"thread friction 31\.5 locks"):
        t.thread_torque(1.0, 1e-3, 10e-3, 31.5, 0.0)


def test_bearing_diameter_lies_midway() -> None:
    assert t.mean_bearing_diameter(0.030, 0.022) == pytest.approx(0.026)
