"""The slider-crank: symmetry, scaling, the two-term formulae, refusals."""

from __future__ import annotations

import math

import pytest
from hypothesis import given, strategies as st

from speclint.errors import OutOfRange
from speclint.handbook.cams import slider_crank as sc

angles = st.floats(min_value=-10.0, max_value=10.0)
ratios = st.floats(min_value=1.5, max_value=20.0)


@given(n=ratios, θ=angles)
def test_the_piston_keeps_within_its_stroke(n: float, θ: float) -> None:
    assert -1e-12 <= sc.piston_travel(1.0, n, θ) <= 2 + 1e-12


@given(n=ratios)
def test_dead_centres(n: float) -> None:
    assert sc.piston_travel(1.0, n, 0.0) == 0
    assert sc.piston_travel(1.0, n, math.pi) == pytest.approx(2.0)
    assert sc.piston_speed(1.0, n, 10.0, 0.0) == pytest.approx(0.0, abs=1e-12)
    assert sc.piston_speed(1.0, n, 10.0, math.pi) == pytest.approx(0.0, abs=1e-12)


@given(n=ratios, θ=angles)
def test_forward_and_backward_alike(n: float, θ: float) -> None:
    assert sc.piston_travel(1.0, n, -θ) == pytest.approx(sc.piston_travel(1.0, n, θ), abs=1e-12)
    assert sc.piston_speed(1.0, n, 5.0, -θ) == pytest.approx(-sc.piston_speed(1.0, n, 5.0, θ), abs=1e-12)
    assert sc.rod_angle(1.0, n, -θ) == pytest.approx(-sc.rod_angle(1.0, n, θ), abs=1e-12)


@given(n=ratios, θ=angles, times=st.floats(0.1, 10.0))
def test_speed_scales_with_crank_speed_and_size(n: float, θ: float, times: float) -> None:
    v, a = sc.piston_speed(1.0, n, 5.0, θ), sc.piston_acceleration(1.0, n, 5.0, θ)
    assert sc.piston_speed(1.0, n, 5.0 * times, θ) == pytest.approx(times * v)
    assert sc.piston_speed(times, n * times, 5.0, θ) == pytest.approx(times * v)
    assert sc.piston_acceleration(1.0, n, 5.0 * times, θ) == pytest.approx(times**2 * a)


@given(n=st.floats(3.0, 20.0), θ=angles)
def test_two_term_formulae_keep_near_the_exact_ones(n: float, θ: float) -> None:
    """The next terms of the series, with λ = 1/n.

    Speed: λ³ sin 2θ sin² θ/4, at most 0.162 λ³, a little more with the terms after it at n = 3.
    Acceleration: λ³ (1.5 sin² θ − 2 sin⁴ θ), at most 0.5 λ³ at 90°, where the exact one is −λ/√(1 − λ²),
    0.542 λ³ beyond at n = 3.
    """
    v, a = sc.piston_speed(1.0, n, 1.0, θ), sc.piston_acceleration(1.0, n, 1.0, θ)
    assert sc.piston_speed_two_term(1.0, n, 1.0, θ) == pytest.approx(v, abs=0.18 / n**3)
    assert sc.piston_acceleration_two_term(1.0, n, 1.0, θ) == pytest.approx(a, abs=0.55 / n**3)


@given(θ=angles)
def test_a_very_long_rod_gives_harmonic_motion(θ: float) -> None:
    assert sc.piston_travel(1.0, 1e6, θ) == pytest.approx(1 - math.cos(θ), abs=1e-5)
    assert sc.piston_acceleration(1.0, 1e6, 1.0, θ) == pytest.approx(math.cos(θ), abs=1e-5)


@given(F=st.floats(-1e6, 1e6), φ=st.floats(-0.5, 0.5))
def test_side_thrust_turns_with_the_load_and_with_the_rod(F: float, φ: float) -> None:
    assert sc.side_thrust(-F, φ) == pytest.approx(-sc.side_thrust(F, φ))
    assert sc.side_thrust(F, -φ) == pytest.approx(-sc.side_thrust(F, φ))


@pytest.mark.parametrize(("r", "l"), [(0.0, 1.0), (1.0, 1.0), (1.0, 0.9), (math.nan, 1.0), (1.0, math.nan)])
def test_a_crank_without_rod_is_refused(r: float, l: float) -> None:  # noqa: E741
    for ask in (sc.piston_travel, sc.rod_angle):
        with pytest.raises(OutOfRange, match="longer than the crank"):
            ask(r, l, 1.0)
    moving = (
        sc.piston_speed,
        sc.piston_acceleration,
        sc.piston_speed_two_term,
        sc.piston_acceleration_two_term,
    )
    for moved in moving:
        with pytest.raises(OutOfRange, match="longer than the crank"):
            moved(r, l, 30.0, 1.0)


def test_a_rod_nearly_square_to_the_stroke_still_answers() -> None:
    """tan 89.5° = 114.589."""
    assert sc.side_thrust(1e3, math.radians(89.5)) == pytest.approx(114_589, rel=1e-5)


@pytest.mark.parametrize("φ", [math.pi / 2, -math.pi / 2, 2.0, math.nan])
def test_a_rod_square_to_the_stroke_is_refused(φ: float) -> None:
    with pytest.raises(OutOfRange, match="right angle"):
        sc.side_thrust(1e3, φ)


@given(S=st.floats(0.1, 1.0), ω=st.floats(1.0, 60.0))
def test_mean_speed_is_two_over_pi_of_the_crank_pin_s(S: float, ω: float) -> None:
    assert sc.mean_piston_speed(S, sc.revolutions(ω)) == pytest.approx(2 / math.pi * ω * sc.crank_radius(S))


@given(m=st.floats(1.0, 1e3), a=st.floats(-1e3, 1e3))
def test_inertia_turns_with_the_acceleration(m: float, a: float) -> None:
    assert sc.inertia_force(m, -a) == -sc.inertia_force(m, a)
    assert sc.inertia_force(2 * m, a) == pytest.approx(2 * sc.inertia_force(m, a))
