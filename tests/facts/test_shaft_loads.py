"""What turns a shaft, and where its cams and its drive bend it most."""

from __future__ import annotations

import pytest

from speclint.errors import OutOfRange, replace
from speclint.facts.shaft_loads import Bearers, force_of_drive, section_of_moment, share_of_drive
from tests.facts.test_cam_thrusts import FOOT

#: Bearings at 100 and 400 mm, and 1 kN of the drive 60 mm beyond the second.
BOTH = Bearers(("near", "far"), (0.1, 0.4), (1000.0, 0.46))
ALONE = replace(BOTH, drive=None)


@pytest.mark.parametrize(("by", "share"), [("cranks and rods", 2**0.5), ("gear wheel", 1.25), ("chain", 1.0)])
def test_shares_of_drives(by: str, share: float) -> None:
    assert share_of_drive(by).nominal == pytest.approx(share)


def test_a_drive_has_a_radius() -> None:
    assert force_of_drive(k=2.0, T=100.0, r=0.1) == pytest.approx(2000.0)
    with pytest.raises(OutOfRange, match="radius of the drive must be above 0"):
        force_of_drive(k=2.0, T=100.0, r=0.0)


def test_a_cam_and_a_drive_bend_a_shaft() -> None:
    """9 kN at 200 mm: 9 × 200/3 = 600 N·m; the drive 60 N·m over the far bearing, a third of it at 200 mm."""
    assert ALONE.most([(FOOT,)]) == pytest.approx((600.0, 0.2))
    assert BOTH.most([(FOOT,)]) == pytest.approx((620.0, 0.2))
    assert section_of_moment(BOTH, ((FOOT,),)).nominal == pytest.approx(0.2)
    small = replace(FOOT, turning=replace(FOOT.turning, c=1.0, struck=0.0))
    assert BOTH.most([(small,)]) == pytest.approx((60.0, 0.4))


def test_groups_press_each_at_its_own_angle() -> None:
    """Two cams at 200 mm, half a turn apart: together only one at a time, by themselves both."""
    other = replace(FOOT, turning=replace(FOOT.turning, phase=4.0))
    assert ALONE.most([(FOOT, other)])[0] == pytest.approx(600.0)
    assert ALONE.most([(FOOT,), (other,)])[0] == pytest.approx(1200.0)
    assert ALONE.reaction([(FOOT,), (other,)], 0) == pytest.approx(12000.0)


def test_reactions_of_cam_and_drive() -> None:
    """Of 9 kN two thirds and one third; of the drive 0.2 lifts the one, 1.2 the other bears."""
    assert BOTH.reaction([(FOOT,)], 0) == pytest.approx(6000.0 + 200.0)
    assert BOTH.reaction([(FOOT,)], 1) == pytest.approx(3000.0 + 1200.0)
