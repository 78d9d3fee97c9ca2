"""Cams: continuity where parts join, symmetry, ramps, tables, and refusals."""

from __future__ import annotations

import math
from collections.abc import Sequence

import pytest
from hypothesis import given, strategies as st

from speclint.errors import NotKnown, OutOfRange
from speclint.handbook.cams.laws import CamLaw, cam_law, lift_acceleration, lift_velocity
from speclint.handbook.cams.lift_tables import LiftTable, acceleration_doubt
from speclint.handbook.cams.profiles import CamProfile, Flank, Ramp, scan

NAMES = ["parabolic", "harmonic", "cycloidal", "3-4-5 polynomial"]
laws = st.sampled_from(NAMES).map(cam_law)
shares = st.floats(min_value=0.0, max_value=1.0)


@given(law=laws)
def test_a_rise_starts_and_ends_at_rest(law: CamLaw) -> None:
    assert law.displacement(0.0) == pytest.approx(0.0, abs=1e-15)
    assert law.displacement(1.0) == pytest.approx(1.0, abs=1e-15)
    assert law.velocity(0.0) == pytest.approx(0.0, abs=1e-15)
    assert law.velocity(1.0) == pytest.approx(0.0, abs=1e-15)


@given(law=laws, x=shares)
def test_every_law_is_symmetrical_about_its_middle(law: CamLaw, x: float) -> None:
    assert law.displacement(x) + law.displacement(1 - x) == pytest.approx(1.0, abs=1e-9)
    assert law.velocity(x) == pytest.approx(law.velocity(1 - x), abs=1e-9)
    if x != 0.5:
        assert law.acceleration(x) == pytest.approx(-law.acceleration(1 - x), abs=1e-9)


@given(law=laws, x=shares, y=shares)
def test_a_rise_only_rises(law: CamLaw, x: float, y: float) -> None:
    low, high = sorted((x, y))
    assert law.displacement(high) >= law.displacement(low) - 1e-15
    assert law.velocity(x) >= -1e-15


@pytest.mark.parametrize("name", NAMES)
def test_laws_without_bounded_jerk_are_those_whose_acceleration_starts_with_a_jump(name: str) -> None:
    law = cam_law(name)
    assert law.infinite_jerk == (law.acceleration(0.0) > 1)


def test_the_spring_is_given_the_deceleration_at_the_middle_of_a_parabolic_rise() -> None:
    law = cam_law("parabolic")
    assert law.acceleration(math.nextafter(0.5, 0)) == 4
    assert law.acceleration(0.5) == -4


@pytest.mark.parametrize("name", NAMES)
@pytest.mark.parametrize("x", [-1e-9, 1 + 1e-9, math.nan])
def test_a_share_outside_is_refused(name: str, x: float) -> None:
    law = cam_law(name)
    for curve in (law.displacement, law.velocity, law.acceleration):
        with pytest.raises(OutOfRange, match="share of the rise"):
            curve(x)


def test_an_unknown_law_is_refused_with_those_known() -> None:
    with pytest.raises(NotKnown, match="'elliptic'; known: parabolic, harmonic, cycloidal, 3-4-5 polynomial"):
        cam_law("elliptic")


@given(times=st.floats(0.1, 10.0))
def test_velocity_goes_with_speed_and_acceleration_with_its_square(times: float) -> None:
    assert lift_velocity(2.0, 0.02, times * 30, 1.0) == pytest.approx(
        times * lift_velocity(2.0, 0.02, 30, 1.0)
    )
    one = lift_acceleration(4.0, 0.02, 30.0, 1.0)
    assert lift_acceleration(4.0, 0.02, times * 30.0, 1.0) == pytest.approx(times**2 * one)
    assert lift_acceleration(4.0, 0.02, 30.0, times) == pytest.approx(one / times**2)


@pytest.mark.parametrize("β", [0.0, -0.1, math.nan])
def test_a_rise_without_angle_is_refused(β: float) -> None:
    for ask in (lift_velocity, lift_acceleration):
        with pytest.raises(OutOfRange, match="angle of the rise"):
            ask(1.0, 0.02, 30.0, β)


RAMP = Ramp(0.4e-3, 0.15)


def profile(name: str, dwell: float = 0.2, ramp: Ramp | None = RAMP) -> CamProfile:
    law = cam_law(name)
    return CamProfile(Flank(law, 20e-3, 0.9, ramp), dwell, Flank(law, 20e-3, 0.8, ramp))


@given(
    name=st.sampled_from(NAMES),
    where=st.floats(0.001, 0.999),
    dwell=st.sampled_from([0.0, 0.2]),
    ramped=st.booleans(),
)
def test_lift_and_velocity_are_continuous_over_the_whole_cam(
    name: str, where: float, dwell: float, ramped: bool
) -> None:
    cam = profile(name, dwell) if ramped else profile(name, dwell, None)
    angle, step = where * cam.duration, 1e-7
    before, here, after = (cam.at(angle + d) for d in (-step, 0.0, step))
    assert (after.lift - before.lift) / (2 * step) == pytest.approx(here.slope, abs=1e-6)
    assert after.slope == pytest.approx(before.slope, abs=1e-6)


@pytest.mark.parametrize("name", ["cycloidal", "3-4-5 polynomial"])
def test_the_ramp_adds_no_jump_in_acceleration(name: str) -> None:
    cam, step = profile(name), 1e-6
    for angle in (0.15, 0.15 + 0.9, 1.05 + 0.2, 1.25 + 0.8):
        assert cam.at(angle - step).curvature == pytest.approx(cam.at(angle + step).curvature, abs=1e-4)


@pytest.mark.parametrize("name", NAMES)
def test_curvature_is_the_derivative_of_the_slope_on_the_flanks(name: str) -> None:
    cam, step = profile(name), 1e-6
    for angle in (0.3, 0.5, 0.75, 0.95, 1.4, 1.6, 1.8, 2.0):
        bend = (cam.at(angle + step).slope - cam.at(angle - step).slope) / (2 * step)
        assert cam.at(angle).curvature == pytest.approx(bend, abs=1e-6)


@given(name=st.sampled_from(NAMES), height=st.floats(0.05e-3, 1e-3), angle=st.floats(0.05, 0.5))
def test_a_ramp_has_constant_velocity_and_hands_it_over(name: str, height: float, angle: float) -> None:
    cam = profile(name, ramp=Ramp(height, angle))
    foot, half, end = cam.at(0.0), cam.at(angle / 2), cam.at(angle * (1 + 1e-9))
    assert foot.lift == 0
    assert half.lift == pytest.approx(height / 2)
    assert end.lift == pytest.approx(height, rel=1e-6)
    assert half.slope == pytest.approx(height / angle)
    assert end.slope == pytest.approx(height / angle, abs=1e-6)
    landing = cam.at(cam.duration)
    assert landing.lift == pytest.approx(0.0, abs=1e-12)
    assert landing.slope == pytest.approx(-height / angle)


def test_full_lift_is_ramp_and_rise_together_and_dwells() -> None:
    cam = profile("cycloidal")
    for angle in (1.05, 1.15, 1.25):
        at = cam.at(angle)
        assert at.lift == pytest.approx(20.4e-3)
        assert at.slope == pytest.approx(0.0, abs=1e-12)
    assert max(at.lift for _, at in scan(cam, 1000)) == pytest.approx(20.4e-3, abs=1e-12)


@pytest.mark.parametrize(("rise", "ramp"), [(1.0, 1.2), (1.1, 1.3), (1.2, 0.4), (1.3, 0.9)])
def test_round_off_at_the_top_is_taken_for_the_top(rise: float, ramp: float) -> None:
    """The sum of both angles, less the ramp's, is a digit more than the rise."""
    flank = Flank(cam_law("cycloidal"), 0.02, rise, Ramp(0.0003, ramp))
    assert (flank.duration - ramp) / rise > 1
    assert flank.at(flank.duration).lift == pytest.approx(0.0203)
    assert flank.at(flank.duration).slope == pytest.approx(0.0, abs=1e-12)


def test_a_symmetrical_cam_falls_as_it_rose() -> None:
    law, ramp = cam_law("harmonic"), Ramp(0.3e-3, 0.1)
    cam = CamProfile(Flank(law, 0.02, 0.9, ramp), 0.3, Flank(law, 0.02, 0.9, ramp))
    for angle in (0.05, 0.2, 0.6, 0.99):
        up, down = cam.at(angle), cam.at(cam.duration - angle)
        assert (up.lift, up.slope, up.curvature) == pytest.approx((down.lift, -down.slope, down.curvature))


def test_without_a_ramp_the_greatest_acceleration_is_that_of_the_law() -> None:
    """Cycloidal: 2π L/β² = 6.2832 · 0.020/0.81 = 0.15514 m/rad²."""
    cam = profile("cycloidal", ramp=None)
    greatest = max(at.curvature for angle, at in scan(cam, 40_000) if angle < 0.9)
    assert greatest == pytest.approx(0.155140, rel=1e-4)
    assert cam.at(0.225).acceleration(30.0) == pytest.approx(0.155140 * 900, rel=1e-4)
    assert cam.at(0.45).velocity(30.0) == pytest.approx(2 * 0.020 / 0.9 * 30, rel=1e-9)


def test_scan_covers_both_ends() -> None:
    places = list(scan(profile("harmonic"), 10))
    assert len(places) == 11
    assert places[0][0] == 0
    assert places[-1][0] == pytest.approx(profile("harmonic").duration)


@pytest.mark.parametrize("angle", [-1e-9, 2.2001, math.nan, math.inf])
def test_an_angle_off_the_lift_is_refused(angle: float) -> None:
    cam = profile("harmonic")
    assert cam.duration == pytest.approx(0.15 + 0.9 + 0.2 + 0.8 + 0.15)
    with pytest.raises(OutOfRange, match="cam angle"):
        cam.at(angle)


def test_a_profile_that_does_not_close_is_refused() -> None:
    law = cam_law("harmonic")
    with pytest.raises(OutOfRange, match=r"opens to 20 mm but closes from 20\.1 mm"):
        CamProfile(Flank(law, 20e-3, 0.9), 0.0, Flank(law, 20.1e-3, 0.9))
    with pytest.raises(OutOfRange, match="dwell"):
        CamProfile(Flank(law, 20e-3, 0.9), -0.1, Flank(law, 20e-3, 0.9))


def test_flanks_and_ramps_without_size_are_refused() -> None:
    law = cam_law("harmonic")
    for height, angle in ((0.0, 0.9), (0.02, 0.0), (math.nan, 0.9)):
        with pytest.raises(OutOfRange):
            Flank(law, height, angle)
        with pytest.raises(OutOfRange):
            Ramp(height, angle)
    with pytest.raises(OutOfRange, match="ramp alone"):
        Flank(law, 1e-3, 1.0, Ramp(1e-3, 0.5))


def sampled(name: str, spacing: int) -> LiftTable:
    """A cycloidal or other cam read off at every so many hundredths of its rise and fall."""
    law = cam_law(name)
    up = [0.02 * law.displacement(n / spacing) for n in range(spacing + 1)]
    lifts = up + up[-2::-1]
    return LiftTable([0.9 * n / spacing for n in range(len(lifts))], lifts)


@pytest.mark.parametrize("name", ["cycloidal", "3-4-5 polynomial"])
def test_a_fine_table_gives_back_its_law(name: str) -> None:
    law, table = cam_law(name), sampled(name, 60)
    for n in range(1, 100):
        x = n / 100
        at = table.at(0.9 * x)
        assert at.lift == pytest.approx(0.02 * law.displacement(x), abs=1e-7)
        assert at.slope == pytest.approx(0.02 / 0.9 * law.velocity(x), abs=2e-5)
        assert at.curvature == pytest.approx(0.02 / 0.81 * law.acceleration(x), abs=2e-3)


@given(lifts=st.lists(st.floats(0.0, 0.03), min_size=4, max_size=30), where=st.floats(0.0, 1.0))
def test_a_table_is_smooth_and_passes_through_its_entries(lifts: list[float], where: float) -> None:
    table = LiftTable([0.1 * n for n in range(len(lifts))], lifts)
    for angle, lift in zip(table.angles, table.lifts, strict=True):
        assert table.at(angle).lift == pytest.approx(lift, abs=1e-12)
    assert table.at(0.0).slope == pytest.approx(0.0, abs=1e-9)
    assert table.at(table.duration).slope == pytest.approx(0.0, abs=1e-9)
    angle = min(max(where * table.duration, 1e-7), table.duration - 1e-7)
    before, after = table.at(angle - 1e-7), table.at(angle + 1e-7)
    assert before.slope == pytest.approx(after.slope, abs=1e-5)
    assert before.curvature == pytest.approx(after.curvature, abs=1e-2)


@given(errors=st.lists(st.sampled_from([-1.0, 1.0]), min_size=20, max_size=20))
def test_rounding_never_moves_the_acceleration_beyond_its_doubt(errors: Sequence[float]) -> None:
    """The spline is linear in its lifts, so a table of ±δ alone shows what rounding adds."""
    δ = 5e-6
    table = LiftTable([0.05 * n for n in range(20)], [δ + δ * error for error in errors])
    doubt = acceleration_doubt(δ, 0.05, 1.0)
    assert max(abs(at.curvature) for _, at in scan(table, 500)) <= doubt * (1 + 1e-9)


@pytest.mark.parametrize(
    ("angles", "lifts", "words"),
    [
        ([0.0, 0.1, 0.2], [0.0, 1.0, 0.0], "3 entries are too few"),
        ([0.0, 0.1, 0.2, 0.3], [0.0, 1.0, 0.0], "4 angles do not match 3 lifts"),
        ([0.1, 0.2, 0.3, 0.4], [0.0, 1.0, 1.0, 0.0], "first angle 0.1 rad must be 0"),
        ([0.0, 0.2, 0.2, 0.4], [0.0, 1.0, 1.0, 0.0], "must rise"),
        ([0.0, 0.1, 0.2, 0.3], [0.0, 1.0, -0.001, 0.0], "lift -1 mm must not be below 0"),
        ([0.0, 0.1, 0.2, 0.3], [0.0, math.nan, 0.0, 0.0], "finite"),
        ([0.0, 0.1, 0.2, math.inf], [0.0, 0.0, 0.0, 0.0], "finite"),
    ],
)
def test_a_table_that_is_none_is_refused(angles: list[float], lifts: list[float], words: str) -> None:
    with pytest.raises(OutOfRange, match=words):
        LiftTable(angles, lifts)


@pytest.mark.parametrize("angle", [-1e-9, 1.81, math.nan])
def test_an_angle_off_the_table_is_refused(angle: float) -> None:
    with pytest.raises(OutOfRange, match="the table"):
        sampled("cycloidal", 10).at(angle)


def test_doubt_of_a_table_without_spacing_is_refused() -> None:
    with pytest.raises(OutOfRange, match="spacing"):
        acceleration_doubt(5e-6, 0.0, 30.0)
