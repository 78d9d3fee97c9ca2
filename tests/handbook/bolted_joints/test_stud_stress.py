"""Stress in a stud: torsion carries its torque, preload reaches its share of proof strength."""

from __future__ import annotations

import math

import pytest
from hypothesis import given, strategies as st
from scipy.integrate import quad

from speclint.errors import OutOfRange
from speclint.handbook.bolted_joints import stud_stress as ss
from speclint.handbook.bolted_joints.tightening import METRIC_FLANK_ANGLE, thread_torque
from speclint.handbook.members.combined_stress import equivalent_stress


@given(st.floats(1e-5, 1e-2))
def test_stress_diameter_gives_its_area_back(A: float) -> None:
    assert math.pi * ss.stress_diameter(A) ** 2 / 4 == pytest.approx(A)


@given(st.floats(1.0, 1e4), st.floats(0.005, 0.05))
def test_torsion_shear_carries_its_torque(M: float, d: float) -> None:
    """The torque of a shear that grows linearly to tau at the surface, summed over rings."""
    tau = ss.torsion_shear(M, d)
    torque, _ = quad(lambda r: tau * r / (d / 2) * 2 * math.pi * r**2, 0, d / 2)
    assert torque == pytest.approx(M)


@given(st.floats(0.1, 0.9), st.floats(0.04, 0.3))
def test_permissible_preload_reaches_its_share_of_proof_strength(nu: float, mu: float) -> None:
    """Put back: tension and the fully plastic shear 12 M/(π d³) make nu R_p02."""
    A, P, d_2, R = 245e-6, 2.5e-3, 18.376e-3, 660e6
    F = ss.permissible_preload(nu, R, A, P, d_2, mu, METRIC_FLANK_ANGLE)
    linear = F * d_2 / 2 * (P / (math.pi * d_2) + mu / math.cos(METRIC_FLANK_ANGLE))
    shear = 12 * linear / (math.pi * ss.stress_diameter(A) ** 3)
    assert equivalent_stress(ss.tension(F, A), shear) == pytest.approx(nu * R)
    assert linear == pytest.approx(thread_torque(F, P, d_2, mu, METRIC_FLANK_ANGLE), rel=0.02)


def test_share_of_proof_strength_has_both_bounds() -> None:
    def preload(nu: float) -> float:
        return ss.permissible_preload(nu, 640e6, 84.3e-6, 1.75e-3, 10.863e-3, 0.12, METRIC_FLANK_ANGLE)

    assert preload(1.0) > preload(0.9) > 0
    for wrong in (0.0, 1.01):
        with pytest.raises(OutOfRange, match="share of proof strength"):
            preload(wrong)
