"""Cam laws against printed coefficients and examples, and numerical differentiation."""

from __future__ import annotations

import math

import pytest

from speclint.handbook.cams.laws import cam_law, lift_acceleration, lift_velocity
from speclint.handbook.cams.lift_tables import LiftTable, acceleration_doubt
from speclint.handbook.cams.profiles import CamProfile, Flank, Ramp, scan
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
    "cams.laws", memory="R. L. Norton, Cam Design and Manufacturing Handbook", derived="scan of 20 001 places"
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


@proves("cams.laws", derived="central differences")
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


@proves("cams.laws", seen="B. K. Sarkar, Theory of Machines")
def test_sarkar_harmonic_follower() -> None:
    """B. K. Sarkar, Theory of Machines, ch. 9, illustration 3 (seen): 6.2 and 24.7 m/s² for 50 mm.

    Rise in 120° and return in 60° at 100 rev/min.
    """
    law, ω = cam_law("harmonic"), 100 * 2 * math.pi / 60
    rise = lift_acceleration(law.greatest_acceleration, 0.050, ω, math.radians(120))
    assert rise == pytest.approx(6.2, abs=0.05)
    back = lift_acceleration(law.greatest_acceleration, 0.050, ω, math.radians(60))
    assert back == pytest.approx(24.7, abs=0.05)


@proves("cams.laws", seen="B. K. Sarkar, Theory of Machines")
@pytest.mark.parametrize(
    ("name", "lift", "turning", "flanks"),
    [
        # illustrations 9.2, p. 247, and 9.5, p. 252, whose companion prints cm/s² as m/s²
        ("harmonic", 0.040, 300, {60: 177.7, 90: 79.0}),
        ("parabolic", 0.025, 1000, {120: 250.0, 90: 444.4}),
    ],
)
def test_sarkar_greatest_accelerations(
    name: str, lift: float, turning: float, flanks: dict[float, float]
) -> None:
    """Companion seen: rise and fall by their angles, m/s²."""
    law, ω = cam_law(name), turning * 2 * math.pi / 60
    for degrees, printed in flanks.items():
        found = lift_acceleration(law.greatest_acceleration, lift, ω, math.radians(degrees))
        assert found == pytest.approx(printed, rel=1e-3)


@proves("cams.laws", derived="hand working")
def test_greatest_velocity_of_a_cycloidal_cam() -> None:
    """By hand: 20 mm in 60° at 300 rev/min: 2 · 0.020 · 31.416/1.0472 = 1.2 m/s."""
    law = cam_law("cycloidal")
    speed = lift_velocity(law.greatest_velocity, 0.020, 300 * 2 * math.pi / 60, math.radians(60))
    assert speed == pytest.approx(1.2, rel=1e-9)


@proves("cams.laws", derived="hand working")
def test_ratio_of_greatest_accelerations() -> None:
    """By hand: 4 : π²/2 : 2π, so cycloidal over parabolic 1.5708 and harmonic over parabolic 1.2337."""
    parabolic, harmonic, cycloidal = (cam_law(name).greatest_acceleration for name in NAMES[:3])
    assert cycloidal / parabolic == pytest.approx(1.5708, abs=5e-5)
    assert harmonic / parabolic == pytest.approx(1.2337, abs=5e-5)


@proves("cams.lift_tables", library="scipy, CubicSpline")
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


def profile(name: str, lift: float, rise: float, dwell: float, fall: float) -> CamProfile:
    """A cam of one law on both flanks, angles in degrees, without ramps."""
    law = cam_law(name)
    return CamProfile(
        Flank(law, lift, math.radians(rise)), math.radians(dwell), Flank(law, lift, math.radians(fall))
    )


@proves("cams.profiles", seen="B. K. Sarkar, Theory of Machines")
def test_sarkar_harmonic_cam_as_a_whole() -> None:
    """Chapter 9, illustration 3: 50 mm, rise in 120° and return in 60° at 100 rev/min: 6.2 and 24.7 m/s²."""
    ω = 100 * 2 * math.pi / 60
    followers = list(scan(profile("harmonic", 0.050, 120, 30, 60), 2100))
    rise = max(at.acceleration(ω) for angle, at in followers if angle < math.radians(119))
    back = max(at.acceleration(ω) for angle, at in followers if angle > math.radians(151))
    assert rise == pytest.approx(6.2, abs=0.05)
    assert back == pytest.approx(24.7, abs=0.05)


@proves("cams.profiles", memory="R. L. Norton, Cam Design and Manufacturing Handbook")
@pytest.mark.parametrize("name", NAMES)
def test_a_whole_cam_has_the_printed_factors(name: str) -> None:
    """Lift L in β: greatest slope v L/β, greatest curvature a L/β²."""
    lift, β = 0.020, math.radians(60)
    followers = [at for _, at in scan(profile(name, lift, 60, 10, 60), 13_000)]
    velocity, acceleration = PRINTED[name]
    assert max(at.slope for at in followers) == pytest.approx(velocity * lift / β, rel=5e-4)
    assert min(at.slope for at in followers) == pytest.approx(-velocity * lift / β, rel=5e-4)
    assert max(at.curvature for at in followers) == pytest.approx(acceleration * lift / β**2, rel=2.5e-3)


@proves("cams.profiles", derived="acceleration integrated twice by scipy")
@pytest.mark.parametrize("name", ["harmonic", "cycloidal", "3-4-5 polynomial"])
def test_acceleration_integrates_to_velocity_and_lift(name: str) -> None:
    """With ramps: the velocity starts at that of the ramp, 0.2 mm in 10°, and the lift at nothing."""
    from scipy.integrate import cumulative_simpson

    ramp = Ramp(0.2e-3, math.radians(10))
    opening = Flank(cam_law(name), 0.018, math.radians(70), ramp)
    closing = Flank(cam_law(name), 0.018, math.radians(90), ramp)
    cam = CamProfile(opening, math.radians(20), closing)
    followers = list(scan(cam, 20_000))
    angles = [angle for angle, _ in followers]
    slope = cumulative_simpson([at.curvature for _, at in followers], x=angles, initial=0) + ramp.slope
    lift = cumulative_simpson(slope, x=angles, initial=0)
    for n in range(0, 19_900, 100):
        at = followers[n][1]
        assert at.slope == pytest.approx(slope[n], abs=2e-5)
        assert at.lift == pytest.approx(lift[n], abs=4e-5)
    assert cam.duration == pytest.approx(math.radians(200))


@proves("cams.lift_tables", derived="the law itself, of which the table is a sample")
@pytest.mark.parametrize("degrees", [1.0, 2.0, 4.0])
def test_a_sampled_law_is_read_back(degrees: float) -> None:
    """30 mm of cycloidal lift and fall; a clamped spline errs by 5/384 h⁴ of the fourth derivative."""
    law, lift, β = cam_law("cycloidal"), 0.030, math.radians(60)
    count = round(120 / degrees)
    angles = [math.radians(degrees * n) for n in range(count + 1)]

    def exact(angle: float) -> float:
        x = angle / β
        return lift * law.displacement(x if x <= 1 else max(0.0, 2 - x))

    table = LiftTable(angles, [exact(angle) for angle in angles])
    error = 5 / 384 * math.radians(degrees) ** 4 * (2 * math.pi) ** 3 * lift / β**4
    for n in range(1, 240):
        angle = math.radians(n / 2)
        assert table.at(angle).lift == pytest.approx(exact(angle), abs=2 * error)
    slope = law.greatest_velocity * lift / β
    assert table.at(β / 2).slope == pytest.approx(slope, rel=1e-3)


@proves("cams.lift_tables", derived="a table whose lifts are rounded, against itself not rounded")
@pytest.mark.parametrize("digit", [1e-5, 1e-6])
def test_doubt_bounds_what_rounding_does(digit: float) -> None:
    """Lifts wrong by half the last digit with alternating sign move the acceleration most; the bound holds."""
    ω, step = 30.0, math.radians(2)
    angles = [step * n for n in range(61)]
    clean = [0.01 * math.sin(math.pi * n / 60) ** 2 for n in range(61)]
    wrong = [one + digit / 2 * (-1) ** n + digit for n, one in enumerate(clean)]
    tables = LiftTable(angles, [one + digit for one in clean]), LiftTable(angles, wrong)
    found = max(
        abs(tables[0].at(angle).acceleration(ω) - tables[1].at(angle).acceleration(ω)) for angle in angles
    )
    bound = acceleration_doubt(digit / 2, step, ω)
    assert 0.9 * bound < found <= bound * (1 + 1e-9)
