"""Flow and fittings: limits from both sides, scaling and monotony."""

from __future__ import annotations

import math

import pytest
from hypothesis import given, strategies as st

from speclint.errors import OutOfRange
from speclint.handbook.steam import fittings, flow

turbulent = st.floats(min_value=4e3, max_value=1e8)
rough = st.floats(min_value=0.0, max_value=0.05)


@pytest.mark.parametrize(
    ("Re", "ε_r", "words"),
    [
        (2000.1, 0.001, "between 2000 and 4000"),
        (3999.9, 0.001, "between 2000 and 4000"),
        (1.001e8, 0.001, "outside 0 to 1e8"),
        (0.0, 0.001, "outside 0 to 1e8"),
        (-1e5, 0.001, "outside 0 to 1e8"),
        (math.nan, 0.001, "Reynolds number nan"),
        (1e5, 0.0501, "roughness over bore 0.0501 lies outside 0 to 0.05"),
        (1e5, -1e-9, "roughness over bore"),
        (1e5, math.nan, "roughness over bore nan"),
    ],
)
def test_friction_factor_outside_is_refused(Re: float, ε_r: float, words: str) -> None:
    with pytest.raises(OutOfRange, match=words):
        flow.friction_factor(Re, ε_r)


@pytest.mark.parametrize("Re", [1e-3, 2000.0, 4000.0, 1e8])
def test_friction_factor_answers_at_its_limits(Re: float) -> None:
    assert flow.friction_factor(Re, 0.05) > 0


@given(Re=turbulent, ε_r=rough)
def test_friction_factor_satisfies_colebrook(Re: float, ε_r: float) -> None:
    x = flow.friction_factor(Re, ε_r) ** -0.5
    assert x == pytest.approx(-2 * math.log10(ε_r / 3.7 + 2.51 * x / Re), rel=1e-9)


@given(Re=turbulent, ε_r=rough)
def test_friction_factor_keeps_near_haaland(Re: float, ε_r: float) -> None:
    """Haaland claims 2 % of Colebrook; within 4 % at the corner of low Re and great roughness."""
    haaland = (-1.8 * math.log10(6.9 / Re + (ε_r / 3.7) ** 1.11)) ** -2
    assert flow.friction_factor(Re, ε_r) == pytest.approx(haaland, rel=0.04)


@given(Re=st.floats(4e3, 1e7), ε_r=st.floats(1e-6, 0.02), times=st.floats(1.1, 2.0))
def test_friction_falls_with_reynolds_number_and_rises_with_roughness(
    Re: float, ε_r: float, times: float
) -> None:
    here = flow.friction_factor(Re, ε_r)
    assert flow.friction_factor(times * Re, ε_r) < here
    assert flow.friction_factor(Re, times * ε_r) > here
    assert here > flow.rough_friction_factor(ε_r)


@given(times=st.floats(0.1, 10.0), v=st.floats(0.1, 100.0))
def test_losses_go_with_the_square_of_speed_and_the_length(times: float, v: float) -> None:
    loss = flow.friction_pressure_loss(0.02, 3.0, 0.1, 5.0, v)
    assert flow.friction_pressure_loss(0.02, 3.0, 0.1, 5.0, times * v) == pytest.approx(times**2 * loss)
    assert flow.friction_pressure_loss(0.02, times * 3.0, 0.1, 5.0, v) == pytest.approx(times * loss)
    assert flow.fitting_pressure_loss(0.02 * 3.0 / 0.1, 5.0, v) == pytest.approx(loss)


def test_hydraulic_diameter_of_a_round_pipe_is_its_bore() -> None:
    assert flow.hydraulic_diameter(math.pi * 0.1**2 / 4, math.pi * 0.1) == pytest.approx(0.1)


@pytest.mark.parametrize(
    ("ask", "given_"),
    [
        (flow.mean_speed, (1.0, 0.0, 0.1)),
        (flow.mean_speed, (1.0, 5.0, 0.0)),
        (flow.mean_speed, (1.0, math.nan, 0.1)),
        (flow.mach_number, (100.0, 0.0)),
        (flow.hydraulic_diameter, (0.0, 1.0)),
        (flow.hydraulic_diameter, (1.0, 0.0)),
        (flow.reynolds_number, (5.0, 40.0, 0.1, 0.0)),
        (flow.friction_pressure_loss, (0.02, 1.0, 0.0, 5.0, 1.0)),
        (flow.rough_friction_factor, (0.0,)),
        (flow.rough_friction_factor, (0.051,)),
        (fittings.bend_loss, (0.99, 1.0, 0.016)),
        (fittings.bend_loss, (20.1, 1.0, 0.016)),
        (fittings.bend_loss, (2.0, math.radians(44.9), 0.016)),
        (fittings.bend_loss, (2.0, math.radians(360.1), 0.016)),
        (fittings.mitre_loss, (math.radians(90.1), 0.016)),
        (fittings.mitre_loss, (-0.01, 0.016)),
        (fittings.entrance_loss, (-0.001,)),
        (fittings.entrance_loss, (0.151,)),
        (fittings.entrance_loss, (math.nan,)),
        (fittings.enlargement_loss, (0.02, 0.01)),
        (fittings.enlargement_loss, (0.0, 0.01)),
        (fittings.contraction_loss, (0.01, 0.02)),
        (fittings.contraction_loss, (0.01, 0.0)),
    ],
)
def test_outside_is_refused(ask: object, given_: tuple[float, ...]) -> None:
    assert callable(ask)
    with pytest.raises(OutOfRange):
        ask(*given_)


def test_bends_and_mitres_answer_at_their_limits() -> None:
    assert fittings.bend_loss(1.0, math.pi / 2, 0.01) == pytest.approx(0.20)
    assert fittings.bend_loss(20.0, math.pi / 2, 0.01) == pytest.approx(0.50)
    assert fittings.mitre_loss(0.0, 0.01) == pytest.approx(0.02)
    assert fittings.mitre_loss(math.pi / 2, 0.01) == pytest.approx(0.60)


def test_bend_of_half_a_turn_by_hand() -> None:
    """r/d = 1.5: ζ₉₀ = 14 f; n = 2: ζ = (π·1.5/4 + 7 + 14) f = 22.178 f."""
    assert fittings.bend_loss(1.5, math.pi, 0.02) == pytest.approx(22.1781 * 0.02, rel=1e-5)


def test_a_mitre_of_half_way_between_two_tabled_angles() -> None:
    """Between 45° (15) and 60° (25) at 52.5°: 20."""
    assert fittings.mitre_loss(math.radians(52.5), 1.0) == pytest.approx(20.0)


@given(a=st.floats(0.001, 0.01), more=st.floats(1.0, 50.0))
def test_step_losses_stay_between_nothing_and_all_of_the_kinetic_energy(a: float, more: float) -> None:
    assert 0 <= fittings.enlargement_loss(a, more * a) < fittings.EXIT_LOSS
    assert 0 <= fittings.contraction_loss(more * a, a) < fittings.entrance_loss(0.0)
    assert fittings.enlargement_loss(a, a) == fittings.contraction_loss(a, a) == 0


@given(v=st.floats(0.1, 500.0), v_0=st.floats(0.1, 500.0))
def test_speeds_and_pressures_compare_both_ways(v: float, v_0: float) -> None:
    assert flow.speed_ratio(v, v_0) * flow.speed_ratio(v_0, v) == pytest.approx(1)
    assert flow.excess_pressure(v, v_0) == -flow.excess_pressure(v_0, v)


def test_a_speed_is_no_multiple_of_standstill() -> None:
    assert flow.speed_ratio(1.0, 1e-9) == pytest.approx(1e9)
    with pytest.raises(OutOfRange, match="the speed to compare with must be above 0"):
        flow.speed_ratio(1.0, 0.0)
