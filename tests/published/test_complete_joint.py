"""A complete bolted joint after VDI 2230, against an example worked by hand step by step.

Example B of a public calculation source: M12 of 12.9 in a tapped hole of 42CrMo4, 20 mm of S355 clamped, tightened by
torque to a factor of 1.4, 5 to 15 kN along and 3 kN across. Its author worked it by hand after the method of Annex B
of VDI 2230-1 (2015); it is no example of the guideline. Its cone and the length of engagement are left: the cone of
the guideline and its equation for the engagement are not in the handbook, which has Shigley's cone and the areas of
FED-STD-H28.
"""

from __future__ import annotations

import math

import pytest

from speclint.handbook.bolted_joints import fatigue, loads, scatter, stiffness, stud_stress, tightening
from speclint.handbook.members import equivalent_stress
from speclint_joints.formulae.frames import factor_against_slip
from speclint_joints.formulae.loads import pressure_on_face
from tests.published.proof import proves

MM, MM2 = 1e-3, 1e-6
EXAMPLE_B = "Example B after VDI 2230-1 (2015), Annex B, in a public calculation source"
#: What the author works from bolt and parts: 2.0372e-6 and 3.0629e-7 mm/N.
K_B, K_M = 1 / 2.0372e-9, 1 / 3.0629e-10
PHI_N, A_S = 0.091491, 84.27 * MM2
THREAD = {"P": 1.75 * MM, "d_2": 10.863 * MM, "mu_t": 0.1, "alpha": tightening.METRIC_FLANK_ANGLE}
F_M, F_Z, F_A = 75_949.5, 3413.8, 15e3


@proves("bolted_joints.stiffness", derived=EXAMPLE_B)
def test_load_factor() -> None:
    """Loaded at 0.7 of the clamped length: Φ_n = 0.091491."""
    assert stiffness.load_factor_at(0.7, stiffness.load_factor(K_B, K_M)) == pytest.approx(PHI_N, rel=5e-4)


@proves("bolted_joints.scatter", derived=EXAMPLE_B)
def test_embedding_and_what_it_costs() -> None:
    """Rz below 10 µm and a load across: 3 + 3 + 2 = 8 µm, 3413.8 N."""
    settles = scatter.embedding(5e-6, 1, 1, across=True)
    assert settles.nominal == pytest.approx(8e-6)
    assert scatter.preload_lost(settles.nominal, K_B, K_M) == pytest.approx(F_Z, rel=1e-4)


@proves("bolted_joints.stud_stress", "bolted_joints.tightening", "bolted_joints.scatter", derived=EXAMPLE_B)
def test_preloads_and_torque() -> None:
    """75 949.5 N at friction 0.1, 54 249.7 N where the scatter is worst, 127.47 N m on 17.23 mm over a hole of 13.5."""
    assert stud_stress.permissible_preload(0.9, 1100e6, A_S, **THREAD) == pytest.approx(F_M, rel=2e-3)
    s = scatter.scatter_of_factor(1.4)
    mean = F_M / scatter.preload_high(1.0, s)
    assert scatter.preload_low(mean, s) == pytest.approx(54_249.7, rel=1e-5)
    D_h = tightening.mean_bearing_diameter(17.23 * MM, 13.5 * MM)
    torque = tightening.tightening_torque_with_friction(F_M, mu_h=0.1, D_h=D_h, **THREAD)
    assert torque == pytest.approx(127.47, rel=1e-3)


@proves("bolted_joints.loads", "speclint_joints.formulae.frames", derived=EXAMPLE_B)
def test_preload_asked_and_factor_against_slip() -> None:
    """3 kN at a friction of 0.2 ask 15 kN between the faces, 32 041.4 N of preload; factor against slip 2.4806."""
    assert loads.clamping_load_left(32_041.4 - F_Z, PHI_N, F_A) == pytest.approx(15e3, rel=1e-4)
    left = loads.clamping_load_left(54_249.7 - F_Z, PHI_N, F_A)
    assert factor_against_slip(mu=0.2, n=1, F=left, P=0.0, T=3e3) == pytest.approx(2.4806, rel=1e-4)


@proves("bolted_joints.loads", "bolted_joints.stud_stress", "bolted_joints.tightening", derived=EXAMPLE_B)
def test_yield_in_service() -> None:
    """Half of the torsion stays: 1.149 of the 1100 MPa."""
    direct = stud_stress.tension(loads.stud_load(F_M, PHI_N, F_A), A_S)
    twist = tightening.thread_torque(F_M, **THREAD)
    torsion = stud_stress.torsion_shear(twist, stud_stress.stress_diameter(A_S))
    assert 1100e6 / equivalent_stress(direct, torsion / 2) == pytest.approx(1.149, rel=1e-3)


@proves("bolted_joints.fatigue", derived=EXAMPLE_B)
def test_endurance() -> None:
    """5.4287 MPa of 48.875, a factor of 9.0031."""
    amplitude = fatigue.stress_amplitude(PHI_N, 15e3, 5e3, A_S)
    endurance = fatigue.endurance_rolled_before_treatment(12 * MM)
    assert amplitude / 1e6 == pytest.approx(5.4287, rel=1e-4)
    assert endurance / 1e6 == pytest.approx(48.875)
    assert endurance / amplitude == pytest.approx(9.0031, rel=1e-4)


@proves("bolted_joints.loads", "speclint_joints.formulae.loads", derived=EXAMPLE_B)
def test_pressure_under_the_head() -> None:
    """858.90 MPa on π/4 (17.23² − 13.5²) mm²."""
    area = math.pi / 4 * (17.23**2 - 13.5**2) * MM2
    pressed = pressure_on_face(F=loads.stud_load(F_M, PHI_N, F_A), n=1, A=area)
    assert pressed / 1e6 == pytest.approx(858.90, rel=1e-4)
