"""How hard a cam presses on its shaft: the cam of test_cam_torques, each load by hand."""

from __future__ import annotations

import math
from dataclasses import replace

import pytest

from speclint.facts.cam_thrusts import (
    Pressing,
    angle_of_load,
    greatest_share_of_stiffness,
    loads_in_turn,
    together,
)
from tests.facts.test_cam_torques import ONE, TURN

#: A foot at 200 mm: 0.5 mm of the ramp, 1 mm in 0.3 rad, lie at 0.15 rad; then it is struck by 9 kN.
FOOT = Pressing(turning=ONE, a=0.2, sizes=None, taken_up=0.15, struck=9000.0)
#: A roller of 20 mm on a base circle of 40 mm.
ROLLER = replace(FOOT, sizes=(0.040, 0.020))
RAMP = 0.001 / 0.3


def test_a_foot_presses_with_what_its_tappet_bears() -> None:
    """1.16 rad: 0.16/0.3 mm of the ramp, 0.033333 mm beyond the clearance, 1.5 times that at the valve."""
    lift = 1.5 * (0.001 * 0.16 / 0.3 - 0.0005)
    assert FOOT.load(1.16) == pytest.approx(1.5 * (1000 + 40e3 * lift + 3000 + 20 + 50))
    assert FOOT.load(1.14) == 0.0
    assert FOOT.load(0.5) == 0.0


def test_a_roller_presses_square_to_its_track() -> None:
    """On the ramp it rises by 3.333 mm/rad at 60.533 mm from the axis."""
    square = math.hypot(1, RAMP / (0.040 + 0.020 + 0.001 * 0.16 / 0.3))
    assert ROLLER.load(1.16) == pytest.approx(FOOT.load(1.16) * square)
    assert ROLLER.load(1.14) == 0.0


@pytest.mark.parametrize("θ", [1.15, 1.15 + TURN, 1.15 - TURN, 1.15 + 0.99e-9, 1.15 - 0.99e-9])
def test_the_blow_falls_where_the_clearance_is_taken_up(θ: float) -> None:
    assert FOOT.struck_at == pytest.approx(1.15)
    assert FOOT.strikes(θ)
    assert FOOT.load(θ) == 9000.0


@pytest.mark.parametrize("θ", [1.15 + 1.01e-9, 1.15 - 1.01e-9, 1.15 + math.pi])
def test_elsewhere_nothing_strikes(θ: float) -> None:
    assert not FOOT.strikes(θ)
    assert FOOT.load(θ) < 9000.0


def test_a_blow_that_is_less_than_the_load_counts_for_nothing() -> None:
    at = FOOT.struck_at + 5e-10  # within what is one angle: the tappet bears already
    borne = ONE.load(at, ONE.follower(at))
    load = 1.5 * sum(borne[key] for key in ("F_f", "F_st", "F_r", "W"))
    assert replace(FOOT, struck=10.0).load(at) == pytest.approx(load)


def test_a_load_below_nothing_lifts_no_shaft() -> None:
    light = replace(ONE, springs=(0.0, 0.0), steam=0.0, friction=0.0, weight=-500.0)
    assert replace(FOOT, turning=light, struck=-1.0).load(1.16) == 0.0


def test_loads_of_a_turn_have_each_blow_among_them() -> None:
    """720 angles, and one for each of two cams; half a turn apart one strikes while the other rests."""
    other = replace(FOOT, turning=replace(ONE, phase=1.0 + math.pi), struck=9500.0)
    found = loads_in_turn((FOOT, other))
    assert len(found) == 722
    assert found[0][0] == 0.0
    assert found[1][0] == pytest.approx(TURN / 720)
    assert (found[720][0], found[720][1][0]) == (pytest.approx(1.15), 9000.0)
    assert (found[721][0], found[721][1][1]) == (pytest.approx(1.15 + math.pi), 9500.0)
    assert found[720][1][1] == 0.0


@pytest.mark.parametrize(("shares", "angle"), [((1.0, 1.0), 1.15 + math.pi), ((1.0, 0.9), 1.15)])
def test_the_angle_of_the_greatest_load(shares: tuple[float, float], angle: float) -> None:
    """9000 N and 9500 N; nine tenths of the second are 8550."""
    other = replace(FOOT, turning=replace(ONE, phase=1.0 + math.pi), struck=9500.0)
    assert angle_of_load((FOOT, other), shares).nominal == pytest.approx(angle)


def test_loads_together() -> None:
    assert together((100.0, 10.0), (2.0, 3.0)) == pytest.approx(230.0)


def test_the_stiffest_train_is_taken() -> None:
    found = greatest_share_of_stiffness()
    assert (found.low, found.nominal, found.high) == (0.5, 0.5, 0.5)
