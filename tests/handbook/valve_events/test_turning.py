"""Turning moment over a revolution: work, direction, cranks at angles, and refusals."""

from __future__ import annotations

import math

import pytest
from hypothesis import given, strategies as st

from speclint.errors import OutOfRange
from speclint.handbook.valve_events import (
    Crank,
    End,
    TurningMoment,
    ValveTrain,
    WorkingCylinder,
    crank_moment,
    mach_index,
    standing_pressure,
    tractive_effort,
    tractive_effort_by_the_trade,
    turning_moment,
)
from tests.handbook.valve_events.test_trains import CAM

CRANK = Crank(0.33, 1.9)
RIGHT = math.pi / 2


def full_gear(angle: float) -> float:
    """Live steam of 12 bar all the stroke, exhaust at 2 bar all the way back."""
    return 12e5 if angle % (2 * math.pi) < math.pi else 2e5


def cylinder(crank: Crank = CRANK) -> WorkingCylinder:
    return WorkingCylinder(crank, 0.2, 0.19, full_gear, full_gear, 1e5)


def test_the_mean_moment_is_the_work_of_a_revolution() -> None:
    """By hand: 10 bar · 0.39 m² · 0.66 m = 257.4 kJ in 2 π."""
    mean = turning_moment([(cylinder(), 0.0)], steps=3600).mean
    assert mean == pytest.approx(257.4e3 / (2 * math.pi), rel=1e-4)


def test_two_cranks_at_right_angles_start_from_everywhere() -> None:
    one = turning_moment([(cylinder(), 0.0)])
    two = turning_moment([(cylinder(), 0.0), (cylinder(), RIGHT)])
    assert two.mean == pytest.approx(2 * one.mean, rel=1e-9)
    assert one.least[1] < 0.01 * one.mean
    assert two.least[1] > 0.7 * two.mean
    assert two.least[1] < two.mean < two.greatest[1]
    assert two.moments[90] == pytest.approx(one.moments[90] + one.moments[180])


@given(angle=st.floats(min_value=0.0, max_value=6.28))
def test_the_moment_does_the_work_of_the_force(angle: float) -> None:
    moment = crank_moment(1e3, CRANK.radius, CRANK.rod, angle)
    assert moment == pytest.approx(1e3 * CRANK.slope(End.FRONT, angle), abs=1e-9)


def test_live_steam_stands_where_the_inlet_is_open() -> None:
    train = ValveTrain(CAM, -0.18, 0.5e-3)
    pressure = standing_pressure(train, 16e5, 1e5)
    middle = (train.opening + train.closing) / 2
    assert pressure(middle) == 16e5
    assert pressure(middle + math.pi) == 1e5
    assert pressure(train.opening - 1e-3) == 1e5


def test_the_least_beside_a_jump_is_found() -> None:
    """Steam of 10 bar more behind the piston pushes it back and is let go at 60.5°, between two steps.

    10 bar × 0.2 m² × 330 mm × 0.87036 × (1 + 0.17368 × 0.49242/0.98851) = 62.41 kN·m just before.
    """
    shut = math.radians(60.5)

    def behind(angle: float) -> float:
        return 11e5 if (angle + math.pi) % (2 * math.pi) < shut else 1e5

    one = WorkingCylinder(CRANK, 0.2, 0.2, lambda _: 1e5, behind, 1e5)
    angle, moment = turning_moment([(one, 0.0)], jumps=(shut,)).least
    assert angle == pytest.approx(shut, abs=1e-5)
    assert moment == pytest.approx(-62.41e3, rel=1e-4)
    assert turning_moment([(one, 0.0)]).least[0] == pytest.approx(math.radians(60))


def test_least_and_greatest_name_their_angle() -> None:
    found = TurningMoment((0.0, 1.0, 2.0), (5.0, 1.0, 9.0))
    assert (found.least, found.greatest, found.mean) == ((1.0, 1.0), (2.0, 9.0), 5.0)


def test_what_is_refused() -> None:
    with pytest.raises(OutOfRange, match="longer than the crank"):
        crank_moment(1.0, 1.0, 1.0, 0.0)
    with pytest.raises(OutOfRange, match="driving wheel"):
        tractive_effort(1e5, 0.2, 0.6, 0.0)
    with pytest.raises(OutOfRange, match="driving wheel"):
        tractive_effort_by_the_trade(1e5, 0.5, 0.6, 2, 0.0)
    with pytest.raises(OutOfRange, match="speed of sound"):
        mach_index(4.0, 0.2, 0.0, 0.004)
    with pytest.raises(OutOfRange, match="mean effective area"):
        mach_index(4.0, 0.2, 600.0, 0.0)
    with pytest.raises(OutOfRange, match="one step"):
        turning_moment([], steps=0)
