"""How hard a cam presses on its shaft: the cam of test_cam_torques, each load by hand."""

from __future__ import annotations

import math

import pytest

from speclint.errors import replace
from speclint.facts.cam_blows import greatest_share_of_stiffness
from speclint.facts.cam_thrusts import Pressing, angle_of_load, loads_in_turn, together
from tests.facts.test_cam_torques import STRUCK, TURN

#: A foot at 200 mm.
FOOT = Pressing(turning=STRUCK, a=0.2, sizes=None)
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


def test_a_load_below_nothing_lifts_no_shaft() -> None:
    light = replace(STRUCK, springs=(0.0, 0.0), steam=0.0, friction=0.0, weight=-500.0, struck=-1.0)
    assert replace(FOOT, turning=light).load(1.16) == 0.0


def test_loads_of_a_turn_have_each_blow_among_them() -> None:
    """720 angles, and one for each of two cams; half a turn apart one strikes while the other rests."""
    other = replace(FOOT, turning=replace(STRUCK, phase=1.0 + math.pi, struck=9500.0))
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
    other = replace(FOOT, turning=replace(STRUCK, phase=1.0 + math.pi, struck=9500.0))
    assert angle_of_load((FOOT, other), shares).nominal == pytest.approx(angle)


def test_loads_together() -> None:
    assert together((100.0, 10.0), (2.0, 3.0)) == pytest.approx(230.0)


def test_the_stiffest_train_is_taken() -> None:
    found = greatest_share_of_stiffness()
    assert (found.low, found.nominal, found.high) == (0.5, 0.5, 0.5)
