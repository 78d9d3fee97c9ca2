"""Thick cylinders against a numerical solution of equilibrium, and their invariants."""

from __future__ import annotations

from typing import Any

import pytest
from hypothesis import assume, given, strategies as st

from speclint.errors import OutOfRange
from speclint.handbook.cylinders.thick import (
    axial_stress_with_closed_ends,
    bore_growth,
    bore_hoop_stress,
    bore_hoop_stress_between_pressures,
    bore_tresca_stress,
    bore_von_mises_stress,
    hoop_stress,
    minimum_wall,
    minimum_wall_of_ductile_metal,
    outside_growth,
    outside_hoop_stress,
    outside_of_wall,
    outside_pressure_for_bore_stress,
    pressure_blown_off,
    radial_stress,
    relief_accumulation,
)
from tests.handbook.ring_equilibrium import Ring, one_ring

pressures = st.floats(0.01e6, 100e6)
bores = st.floats(0.02, 1.0)
wall_ratios = st.floats(1.02, 4.0)
factors = st.floats(0.1, 10.0)


@pytest.mark.parametrize(
    ("d", "D", "p_i", "p_o"), [(0.1, 0.2, 10e6, 0.0), (0.5, 0.55, 1.7e6, 0.4e6), (0.02, 0.1, 0.0, 30e6)]
)
def test_stress_and_growth_are_those_of_equilibrium_solved_numerically(
    d: float, D: float, p_i: float, p_o: float
) -> None:
    solved = one_ring(Ring(d / 2, D / 2, E=100e9, nu=0.26), p_i, p_o)
    for x in (d, 0.75 * d + 0.25 * D, (d + D) / 2, D):
        assert hoop_stress(p_i, p_o, d, D, x) == pytest.approx(solved.hoop(0, x / 2), rel=1e-5)
        assert radial_stress(p_i, p_o, d, D, x) == pytest.approx(solved.radial(0, x / 2), rel=1e-5, abs=10.0)
    if p_o == 0.0:
        assert bore_growth(p_i, d, D, 100e9, 0.26) == pytest.approx(2 * solved.u(0, d / 2), rel=1e-5)
        assert outside_growth(p_i, d, D, 100e9) == pytest.approx(2 * solved.u(0, D / 2), rel=1e-5)


@given(p=pressures, d=bores, k=wall_ratios)
def test_radial_stress_meets_the_pressures_at_both_faces(p: float, d: float, k: float) -> None:
    D = k * d
    assert radial_stress(p, p / 3, d, D, d) == pytest.approx(-p)
    assert radial_stress(p, p / 3, d, D, D) == pytest.approx(-p / 3, rel=1e-6)


@given(p=pressures, q=pressures, d=bores, k=wall_ratios, share=st.floats(0, 1))
def test_pressures_inside_and_outside_superpose(p: float, q: float, d: float, k: float, share: float) -> None:
    D = k * d
    x = min(d + share * (D - d), D)
    both = hoop_stress(p, q, d, D, x)
    assert both == pytest.approx(
        hoop_stress(p, 0.0, d, D, x) + hoop_stress(0.0, q, d, D, x),
        rel=1e-6,
        abs=1e-6 * k / (k - 1) * (p + q),
    )


@given(p=pressures, d=bores, k=wall_ratios, factor=factors)
def test_stress_follows_pressure_and_ignores_scale(p: float, d: float, k: float, factor: float) -> None:
    stress = bore_hoop_stress(p, d, k * d)
    assert bore_hoop_stress(factor * p, d, k * d) == pytest.approx(factor * stress)
    assert bore_hoop_stress(p, factor * d, factor * k * d) == pytest.approx(stress, rel=1e-6)


@given(p=pressures, d=bores, k=wall_ratios, more=st.floats(1.01, 2.0))
def test_a_thicker_wall_is_less_stressed_but_never_below_the_pressure(
    p: float, d: float, k: float, more: float
) -> None:
    assert p < bore_hoop_stress(p, d, more * k * d) < bore_hoop_stress(p, d, k * d)


@given(p=pressures, d=bores, thinness=st.floats(1e-4, 1e-2))
def test_a_thin_wall_tends_to_the_boiler_formula(p: float, d: float, thinness: float) -> None:
    t = thinness * d
    thin = p * (d + t) / (2 * t)
    assert bore_hoop_stress(p, d, d + 2 * t) == pytest.approx(thin, rel=2 * thinness)
    assert outside_hoop_stress(p, d, d + 2 * t) == pytest.approx(thin, rel=4 * thinness)


@given(p=pressures, d=bores, k=wall_ratios)
def test_hoop_forces_across_a_diameter_balance_the_pressure(p: float, d: float, k: float) -> None:
    from scipy.integrate import quad

    D = k * d
    force, _ = quad(lambda x: hoop_stress(p, 0.0, d, D, min(max(x, d), D)), d, D)
    assert force == pytest.approx(p * d, rel=1e-6)


@given(p=pressures, d=bores, k=wall_ratios)
def test_the_special_cases_are_the_general_one(p: float, d: float, k: float) -> None:
    D = k * d
    assert bore_hoop_stress(p, d, D) == pytest.approx(hoop_stress(p, 0.0, d, D, d))
    assert outside_hoop_stress(p, d, D) == pytest.approx(hoop_stress(p, 0.0, d, D, D), rel=1e-6)
    between = bore_hoop_stress_between_pressures(p, p / 2, d, D)
    assert between == pytest.approx(hoop_stress(p, p / 2, d, D, d), rel=1e-6, abs=1e-6 * p)
    assert outside_pressure_for_bore_stress(between, p, d, D) == pytest.approx(p / 2, rel=1e-6)


@given(p=pressures, d=bores, margin=st.floats(1.05, 50))
def test_the_least_wall_is_just_at_the_allowable(p: float, d: float, margin: float) -> None:
    S = margin * p
    t = minimum_wall(p, S, d)
    assume(t > 1e-3 * d)
    assert bore_hoop_stress(p, d, d + 2 * t) == pytest.approx(S, rel=1e-6)
    assert bore_hoop_stress(p, d, d + 1.98 * t) > S > bore_hoop_stress(p, d, d + 2.02 * t)


@given(p=pressures, d=bores, margin=st.floats(2.05, 50))
def test_the_least_ductile_wall_is_just_at_the_allowable(p: float, d: float, margin: float) -> None:
    t = minimum_wall_of_ductile_metal(p, margin * p, d)
    assume(t > 1e-3 * d)
    assert bore_tresca_stress(p, 0.0, 0.0, d, d + 2 * t) == pytest.approx(margin * p, rel=1e-6)
    assert t > minimum_wall(p, margin * p, d)


@given(p=pressures, d=bores, k=wall_ratios, axial=st.floats(-1, 1))
def test_von_mises_never_exceeds_tresca(p: float, d: float, k: float, axial: float) -> None:
    sigma_z = axial * bore_hoop_stress(p, d, k * d)
    tresca = bore_tresca_stress(p, 0.0, sigma_z, d, k * d)
    assert 0.866 * tresca <= bore_von_mises_stress(p, 0.0, sigma_z, d, k * d) * 1.0001
    assert bore_von_mises_stress(p, 0.0, sigma_z, d, k * d) <= tresca * 1.000001


def test_closed_ends_carry_the_pressure_on_the_bore() -> None:
    # 300 MPa on a 20 mm bore, wall area π/4 (100² − 20²) mm²: 300 × 400/9600 = 12.5 MPa
    assert axial_stress_with_closed_ends(300e6, 0.0, 0.02, 0.1) == pytest.approx(12.5e6)


@pytest.mark.parametrize("formula", [bore_hoop_stress, outside_hoop_stress])
@pytest.mark.parametrize(("d", "D"), [(0.1, 0.1), (0.2, 0.1), (0.0, 0.1), (-0.1, 0.1)])
def test_a_ring_without_a_wall_is_refused(formula: Any, d: float, D: float) -> None:
    with pytest.raises(OutOfRange, match=r"bore .* is not between 0 and the outside diameter"):
        formula(1e6, d, D)
    assert formula(1e6, 0.1, 0.1001) > 0


@pytest.mark.parametrize("x", [0.0999, 0.2001])
def test_a_point_outside_the_wall_is_refused(x: float) -> None:
    with pytest.raises(OutOfRange, match="is not within the wall"):
        hoop_stress(1e6, 0.0, 0.1, 0.2, x)
    assert hoop_stress(1e6, 0.0, 0.1, 0.2, 0.1) > hoop_stress(1e6, 0.0, 0.1, 0.2, 0.2)


def test_a_pressure_that_no_wall_holds_is_refused() -> None:
    with pytest.raises(OutOfRange, match="is not between 0 and the allowable"):
        minimum_wall(p=20e6, S=20e6, d=0.1)
    assert minimum_wall(p=19.9e6, S=20e6, d=0.1) > 0.5
    with pytest.raises(OutOfRange, match="twice the pressure"):
        minimum_wall_of_ductile_metal(p=10e6, S=20e6, d=0.1)
    assert minimum_wall_of_ductile_metal(p=9.99e6, S=20e6, d=0.1) > 0.5


@pytest.mark.parametrize("formula", [minimum_wall, minimum_wall_of_ductile_metal])
def test_no_pressure_needs_no_wall_and_a_vacuum_is_refused(formula: Any) -> None:
    assert formula(0.0, 20e6, 0.1) == 0
    with pytest.raises(OutOfRange, match="is not between 0 and the allowable"):
        formula(-0.5, 20e6, 0.1)


@given(d=st.floats(0.01, 2.0), t=st.floats(0.001, 0.5))
def test_two_walls_one_round_the_other(d: float, t: float) -> None:
    assert outside_of_wall(outside_of_wall(d, t), t) == pytest.approx(outside_of_wall(d, 2 * t))


def test_a_wall_has_some_thickness() -> None:
    assert outside_of_wall(0.2, 1e-9) == pytest.approx(0.2)
    with pytest.raises(OutOfRange, match="wall 0 mm is not above 0"):
        outside_of_wall(0.2, 0.0)


def test_a_relief_valve_lets_the_pressure_rise_by_a_tenth_of_its_setting() -> None:
    """The pressure equipment directive lets a valve exceed the greatest allowed pressure by 10 %."""
    assert relief_accumulation().nominal == pytest.approx(0.1)
    assert pressure_blown_off(p_r=20e5, a=relief_accumulation().high) == pytest.approx(22e5)
