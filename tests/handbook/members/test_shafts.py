"""Shafts against sums over rings and against work, and the limits of the keyway trials."""

from __future__ import annotations

import math

import pytest
from hypothesis import given, strategies as st
from scipy.integrate import quad

from speclint.errors import OutOfRange
from speclint.handbook.members import shafts
from speclint.handbook.members.combined_stress import equivalent_stress
from speclint.handbook.members.sections import tube_polar_moment

torques = st.floats(1.0, 1e5)
diameters = st.floats(0.01, 0.3)


@given(torques, diameters, st.floats(0.0, 0.9))
def test_rings_in_shear_carry_the_torque(T: float, D: float, bore: float) -> None:
    tau = shafts.torsion_shear(T, D, bore * D)
    carried, _ = quad(lambda r: tau * 2 * r / D * 2 * math.pi * r**2, bore * D / 2, D / 2, epsabs=0)
    assert carried == pytest.approx(T)


@given(torques, diameters, st.floats(0.1, 5.0))
def test_work_of_the_torque_is_the_strain_energy(T: float, D: float, L: float) -> None:
    """T theta/2 is τ²/(2 G) summed over the shaft."""
    G = 80e9
    theta = shafts.twist(T, L, G, tube_polar_moment(D, 0.0))
    tau = shafts.torsion_shear(T, D, 0.0)
    energy, _ = quad(lambda r: (tau * 2 * r / D) ** 2 / (2 * G) * 2 * math.pi * r * L, 0, D / 2, epsabs=0)
    assert T * theta / 2 == pytest.approx(energy)


@given(st.floats(1.0, 1e6), st.floats(0.1, 500.0))
def test_power_is_torque_times_speed(P: float, omega: float) -> None:
    assert shafts.torque_of_power(P, omega) * omega == pytest.approx(P)


def test_a_shaft_at_rest_passes_on_no_power() -> None:
    with pytest.raises(OutOfRange, match="at rest"):
        shafts.torque_of_power(1.0, 0.0)


@given(st.floats(0, 0.5), st.floats(0, 0.1875))
def test_a_keyway_weakens_and_softens(w: float, h: float) -> None:
    assert 0 < shafts.keyway_strength_factor(w, h, 1.0) <= 1
    assert shafts.keyway_twist_factor(w, h, 1.0) >= 1


def test_keyways_beyond_the_trials_are_refused() -> None:
    """The largest tried: 1 - 0.1 - 0.20625 and 1 + 0.2 + 0.13125."""
    assert shafts.keyway_strength_factor(0.5, 0.1875, 1.0) == pytest.approx(0.69375)
    assert shafts.keyway_twist_factor(0.5, 0.1875, 1.0) == pytest.approx(1.33125)
    for factor in (shafts.keyway_strength_factor, shafts.keyway_twist_factor):
        with pytest.raises(OutOfRange, match="keyway width"):
            factor(0.501, 0.1, 1.0)
        with pytest.raises(OutOfRange, match="keyway depth"):
            factor(0.4, 0.19, 1.0)


@given(st.floats(1, 1e4), st.floats(1, 1e4), st.floats(1, 1e4), st.floats(1, 1e4), st.floats(1.1, 5.0))
def test_shaft_diameter_brings_soderberg_s_line_to_the_factor(
    M_m: float, M_a: float, T_m: float, T_a: float, n: float
) -> None:
    """Stress of mean plus amplitude × S_y/S_e, bending and torsion by distortion energy, is S_y/n."""
    S_y, S_e = 400e6, 170e6
    d = shafts.shaft_diameter(M_m, M_a, T_m, T_a, S_y, S_e, n)
    sigma = (M_m + M_a * S_y / S_e) * 32 / (math.pi * d**3)
    tau = shafts.torsion_shear(T_m + T_a * S_y / S_e, d, 0.0)
    assert equivalent_stress(sigma, tau) == pytest.approx(S_y / n)
