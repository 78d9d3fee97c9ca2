"""A valve and its cam: where it leaves its seat, both directions, and what clearance does."""

from __future__ import annotations

import math

import pytest
from hypothesis import given, strategies as st

from speclint.errors import OutOfRange
from speclint.handbook.cams import CamProfile, Flank, LiftTable, Ramp, cam_law
from speclint.handbook.valve_events import (
    ValveTrain,
    backward_foot,
    ramp_opening_angle,
    reversed_cam,
    shift_for_clearance,
)
from speclint.handbook.valve_events.trains import root

DEGREE = math.pi / 180
RAMP = Ramp(1.1e-3, 10 * DEGREE)
RISE, FALL = (Flank(cam_law("3-4-5 polynomial"), 14e-3, angle * DEGREE, RAMP) for angle in (30, 40))
CAM = CamProfile(RISE, 7.5 * DEGREE, FALL)

clearances = st.floats(min_value=0.0, max_value=14.9e-3)
feet = st.floats(min_value=-4.0, max_value=4.0)
angles = st.floats(min_value=-10.0, max_value=10.0)


@given(clearance=clearances, foot=feet)
def test_the_valve_is_open_between_its_events_and_nowhere_else(clearance: float, foot: float) -> None:
    train = ValveTrain(CAM, foot, clearance)
    opening, closing = train.opening, train.closing
    assert foot <= opening < closing <= foot + CAM.duration
    assert train.tappet(opening).lift == pytest.approx(clearance, abs=2e-10)
    assert train.lift((opening + closing) / 2) > 0
    assert train.lift(opening - 1e-6) == pytest.approx(0.0, abs=1e-9)
    assert train.lift(closing + 1e-6) == pytest.approx(0.0, abs=1e-9)


@given(foot=feet, angle=angles, turns=st.integers(min_value=-3, max_value=3))
def test_a_revolution_brings_the_same_lift(foot: float, angle: float, turns: int) -> None:
    train = ValveTrain(CAM, foot, 0.5e-3)
    assert train.lift(angle + turns * 2 * math.pi) == pytest.approx(train.lift(angle), abs=1e-12)


@given(foot=feet, angle=angles)
def test_running_backwards_the_valve_does_the_same_the_other_way(foot: float, angle: float) -> None:
    train = ValveTrain(CAM, foot, 0.5e-3, 1.3)
    assert train.backward().lift(-angle) == pytest.approx(train.lift(angle), abs=1e-12)
    assert train.backward().opening == pytest.approx(-train.closing, abs=1e-9)


@given(foot=feet)
def test_the_direction_twice_reversed_is_the_first(foot: float) -> None:
    train = ValveTrain(CAM, foot, 0.5e-3)
    again = train.backward().backward()
    assert again.cam is train.cam
    assert again.foot == pytest.approx(foot, abs=1e-15)


@given(clearance=st.floats(min_value=0.2e-3, max_value=0.8e-3))
def test_more_clearance_opens_later_and_shuts_earlier_by_what_the_ramp_says(clearance: float) -> None:
    """On the ramp the events move in a straight line; 9.09° for a millimetre."""
    train, wider = (ValveTrain(CAM, 0.0, one) for one in (clearance, clearance + 0.1e-3))
    later = wider.opening - train.opening
    assert later == pytest.approx(0.1e-3 * train.shift_of_opening(), rel=1e-6)
    assert later == pytest.approx(0.909 * DEGREE, rel=1e-3)
    assert train.closing - wider.closing == pytest.approx(0.1e-3 * train.shift_of_closing(), rel=1e-6)


def test_an_event_on_the_ramp_is_that_of_the_ramp_alone() -> None:
    train = ValveTrain(CAM, -10.5 * DEGREE, 0.5e-3)
    by_ramp = ramp_opening_angle(-10.5 * DEGREE, 10 * DEGREE, 0.5e-3, 1.1e-3)
    assert train.opening == pytest.approx(by_ramp, abs=1e-9)


@pytest.mark.parametrize(("clearance", "opens"), [(15.1e-3 - 1e-7, True), (15.1e-3 + 1e-7, False)])
def test_a_clearance_as_high_as_the_cam_keeps_the_valve_shut(clearance: float, opens: bool) -> None:
    train = ValveTrain(CAM, 0.0, clearance)
    assert train.opens is opens
    assert (train.greatest_lift > 0) is opens
    if not opens:
        for name in ("opening", "closing", "open_angle"):
            with pytest.raises(
                OutOfRange,
                match=r"clearance of 15\.1 mm uses up the cam's lift of 15\.1 mm: the valve never leaves its seat",
            ):
                getattr(train, name)


def test_a_cam_known_by_a_table_of_lifts() -> None:
    """Symmetrical about 30°, so that the events are too."""
    angles = [n * 5 * DEGREE for n in range(13)]
    lifts = [6e-3 * (1 - math.cos(angle * 6)) for angle in angles]
    train = ValveTrain(LiftTable(angles, lifts), 0.0, 6e-3)
    assert train.opening / DEGREE == pytest.approx(15.0, abs=1e-3)
    assert train.closing / DEGREE == pytest.approx(45.0, abs=1e-3)


def test_a_table_that_starts_lifted_opens_at_once() -> None:
    table = LiftTable([0.0, 0.1, 0.2, 0.3], [1e-3, 2e-3, 2e-3, 0.0])
    assert ValveTrain(table, 0.5, 0.5e-3).opening == 0.5


def test_what_is_refused() -> None:
    long = CamProfile(Flank(cam_law("cycloidal"), 0.01, 3.2), 0.0, Flank(cam_law("cycloidal"), 0.01, 3.2))
    with pytest.raises(OutOfRange, match="longer than a revolution"):
        ValveTrain(long, 0.0, 0.0)
    with pytest.raises(OutOfRange, match="clearance -1 mm of the tappet must not be below 0"):
        ValveTrain(CAM, 0.0, -1e-3)
    with pytest.raises(OutOfRange, match="must be above 0"):
        ValveTrain(CAM, 0.0, 0.0, 0.0)
    with pytest.raises(OutOfRange, match="finite angle"):
        ValveTrain(CAM, math.nan, 0.0)
    with pytest.raises(OutOfRange, match=r"clearance 1\.2 mm lies outside 0 to the ramp's 1\.1 mm"):
        ramp_opening_angle(0.0, 0.1, 1.2e-3, 1.1e-3)
    with pytest.raises(OutOfRange, match="angle of a ramp"):
        ramp_opening_angle(0.0, 0.0, 0.5e-3, 1.1e-3)
    with pytest.raises(OutOfRange, match="height of a ramp"):
        ramp_opening_angle(0.0, 0.1, 0.0, 0.0)
    with pytest.raises(OutOfRange, match="angle of the lift"):
        backward_foot(0.0, 0.0)
    with pytest.raises(OutOfRange, match="rests"):
        shift_for_clearance(0.0)


def test_a_cam_read_backwards_has_its_joins_in_order() -> None:
    back = reversed_cam(CAM)
    assert list(back.joins) == sorted(back.joins)
    assert back.duration == CAM.duration
    assert back.at(0.1).slope == pytest.approx(-CAM.at(CAM.duration - 0.1).slope)
    assert back.at(0.1).curvature == pytest.approx(CAM.at(CAM.duration - 0.1).curvature)


@pytest.mark.parametrize("at", [0.1, 0.3, 0.9])
def test_where_a_function_jumps_past_0_the_jump_is_found(at: float) -> None:
    """It is never near to 0, so that the place is halved in until nothing is left of it."""
    assert root(lambda x: -1.0 if x < at else 1.0, 0.0, 1.0, 1e-10) == pytest.approx(at, abs=1e-6)
