"""Cam laws against printed coefficients and examples, and numerical differentiation."""

from __future__ import annotations

import math

import pytest

from speclint.handbook.cam_laws import cam_law, lift_acceleration, lift_velocity
from speclint.handbook.lift_tables import LiftTable
from tests.published.proof import proves

NAMES = ["parabolic", "harmonic", "cycloidal", "3-4-5 polynomial"]

# R. L. Norton, Cam Design and Manufacturing Handbook, factors for peak velocity and acceleration of
# double-dwell cams (from memory): constant acceleration 2.000 and 4.000, simple harmonic 1.571 and 4.945,
# cycloidal 2.000 and 6.283, 3-4-5 polynomial 1.875 and 5.777. The printed 4.945 and 5.777 differ in the
# third decimal from π²/2 = 4.9348 and 10/√3 = 5.7735.
PRINTED = {
    "parabolic": (2.000, 4.000),
    "harmonic": (1.571, 4.945),
    "cycloidal": (2.000, 6.283),
    "3-4-5 polynomial": (1.875, 5.777),
}


@proves(
    "cam_laws", memory="R. L. Norton, Cam Design and Manufacturing Handbook", derived="scan of 20 001 places"
)
@pytest.mark.parametrize("name", NAMES)
def test_greatest_values_are_those_printed_and_those_of_a_scan(name: str) -> None:
    law = cam_law(name)
    velocity, acceleration = PRINTED[name]
    assert law.greatest_velocity == pytest.approx(velocity, abs=5e-4)
    assert law.greatest_acceleration == pytest.approx(acceleration, rel=2.5e-3)
    shares = [n / 20_000 for n in range(20_001)]
    assert max(map(law.velocity, shares)) == pytest.approx(law.greatest_velocity, rel=1e-6)
    assert max(map(law.acceleration, shares)) == pytest.approx(law.greatest_acceleration, rel=1e-6)
    assert min(map(law.acceleration, shares)) == pytest.approx(-law.greatest_acceleration, rel=1e-6)


@proves("cam_laws", derived="central differences")
@pytest.mark.parametrize("name", NAMES)
def test_velocity_and_acceleration_are_the_derivatives(name: str) -> None:
    """Central differences of 1e-5 away from the jump of the parabolic law."""
    law, step = cam_law(name), 1e-5
    for n in range(1, 100):
        x = n / 100 + 0.0013
        slope = (law.displacement(x + step) - law.displacement(x - step)) / (2 * step)
        bend = (law.velocity(x + step) - law.velocity(x - step)) / (2 * step)
        assert law.velocity(x) == pytest.approx(slope, abs=1e-6)
        assert law.acceleration(x) == pytest.approx(bend, abs=1e-5)


@proves("cam_laws", seen="B. K. Sarkar, Theory of Machines")
def test_sarkar_harmonic_follower() -> None:
    """B. K. Sarkar, Theory of Machines, ch. 9, illustration 3 (seen): 6.2 and 24.7 m/s² for 50 mm.

    Rise in 120° and return in 60° at 100 rev/min.
    """
    law, ω = cam_law("harmonic"), 100 * 2 * math.pi / 60
    rise = lift_acceleration(law.greatest_acceleration, 0.050, ω, math.radians(120))
    assert rise == pytest.approx(6.2, abs=0.05)
    back = lift_acceleration(law.greatest_acceleration, 0.050, ω, math.radians(60))
    assert back == pytest.approx(24.7, abs=0.05)


@proves("cam_laws", derived="hand working")
def test_greatest_velocity_of_a_cycloidal_cam() -> None:
    """By hand: 20 mm in 60° at 300 rev/min: 2 · 0.020 · 31.416/1.0472 = 1.2 m/s."""
    law = cam_law("cycloidal")
    speed = lift_velocity(law.greatest_velocity, 0.020, 300 * 2 * math.pi / 60, math.radians(60))
    assert speed == pytest.approx(1.2, rel=1e-9)


@proves("cam_laws", derived="hand working")
def test_ratio_of_greatest_accelerations() -> None:
    """By hand: 4 : π²/2 : 2π, so cycloidal over parabolic 1.5708 and harmonic over parabolic 1.2337."""
    parabolic, harmonic, cycloidal = (cam_law(name).greatest_acceleration for name in NAMES[:3])
    assert cycloidal / parabolic == pytest.approx(1.5708, abs=5e-5)
    assert harmonic / parabolic == pytest.approx(1.2337, abs=5e-5)


@proves("lift_tables", library="scipy, CubicSpline")
def test_table_agrees_with_scipy() -> None:
    from scipy.interpolate import CubicSpline

    angles = [0.0, 0.1, 0.18, 0.3, 0.42, 0.55, 0.6, 0.75]
    lifts = [0.0, 0.4e-3, 1.9e-3, 6e-3, 9e-3, 7e-3, 4e-3, 0.0]
    theirs, ours = CubicSpline(angles, lifts, bc_type="clamped"), LiftTable(angles, lifts)
    for n in range(151):
        angle = 0.75 * n / 150
        at = ours.at(angle)
        assert at.lift == pytest.approx(float(theirs(angle)), abs=1e-15)
        assert at.slope == pytest.approx(float(theirs(angle, 1)), abs=1e-13)
        assert at.curvature == pytest.approx(float(theirs(angle, 2)), abs=1e-11)
