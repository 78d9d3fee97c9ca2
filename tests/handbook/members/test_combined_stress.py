"""Combined stress against the eigenvalues of the stress tensor."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given, strategies as st

from speclint.errors import OutOfRange
from speclint.handbook.members import combined_stress as cs

tensions = st.floats(-5e8, 5e8)
shears = st.floats(1.0, 5e8)


def principal(sigma: float, tau: float) -> tuple[float, float]:
    low, high = np.linalg.eigvalsh(np.array([[sigma, tau], [tau, 0.0]]))
    return float(low), float(high)


@given(tensions, shears)
def test_greatest_tension_and_shear_are_the_tensor_s(sigma: float, tau: float) -> None:
    low, high = principal(sigma, tau)
    assert cs.greatest_tension(sigma, tau) == pytest.approx(high, abs=1.0)
    assert cs.greatest_shear(sigma, tau) == pytest.approx((high - low) / 2, abs=1.0)


@given(tensions, shears)
def test_equivalent_stress_is_the_distortion_energy_of_the_principal_stresses(
    sigma: float, tau: float
) -> None:
    low, high = principal(sigma, tau)
    expected = (low**2 - low * high + high**2) ** 0.5
    assert cs.equivalent_stress(sigma, tau) == pytest.approx(expected, rel=1e-6)


@given(tensions, shears)
def test_equivalent_stress_lies_between_shear_rule_and_its_parts(sigma: float, tau: float) -> None:
    found = cs.equivalent_stress(sigma, tau)
    assert found >= abs(sigma) * (1 - 1e-12)
    assert found <= 2 * cs.greatest_shear(sigma, tau) * (1 + 1e-12)


@given(st.floats(1.0, 1e5), st.floats(1.0, 1e5))
def test_equivalent_torque_and_moment_bound_their_parts(M: float, T: float) -> None:
    assert cs.equivalent_torque(M, T) >= max(M, T)
    assert M <= cs.equivalent_bending_moment(M, T) <= cs.equivalent_torque(M, T)


@given(F=st.floats(1.0, 1e6), A=st.floats(1e-6, 1.0))
def test_direct_stress_over_its_area_is_the_load(F: float, A: float) -> None:
    assert cs.direct_stress(F, A) * A == pytest.approx(F)


def test_a_section_has_an_area() -> None:
    assert cs.direct_stress(1.0, 1e-9) == pytest.approx(1e9)
    with pytest.raises(OutOfRange, match="area of the section must be above 0"):
        cs.direct_stress(1.0, 0.0)
