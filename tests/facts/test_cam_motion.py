"""The motion of a cam: what is kept of it, where its top is, and what its law and its table are made of."""

from __future__ import annotations

import math
from pathlib import Path
from types import SimpleNamespace
from typing import Any

import pytest

from speclint.facts import cam_motion
from speclint.facts.cam_motion import WholeLift, motion
from speclint.rules import NotCovered
from tests.facts.bench import Bench, bench

LAW = """law = "cycloidal"
lift = "20 mm"
ramp_height = "1 mm"
ramp_angle = "10 °"
rise_angle = "60 °"
dwell_angle = "20 °"
fall_angle = "70 °"
"""
TABLE = 'table_step = "10 °"\ntable = ["0 mm", "4 mm", "9 mm", "5 mm", "0 mm"]\n'


@pytest.fixture
def asked(monkeypatch: pytest.MonkeyPatch) -> list[float]:
    """The angles at which the cam itself is asked."""
    found: list[float] = []

    def at(angle: float, cam: Any) -> Any:
        found.append(angle)
        return SimpleNamespace(lift=cam.lift(angle))

    monkeypatch.setattr(cam_motion, "follower_at", at)
    return found


def whole(lift: Any = math.sin, duration: float = 3.0) -> WholeLift:
    cam: Any = SimpleNamespace(duration=duration, lift=lift)
    return WholeLift(cam)


def test_an_angle_is_worked_once(asked: list[float]) -> None:
    one = whole()
    assert one.at(1.0) is one.at(1.0)
    assert asked == [1.0]
    assert one.duration == 3.0


def test_so_many_angles_are_kept_and_no_more(asked: list[float]) -> None:
    one = whole()
    for number in range(8001):
        one.at(float(number))
    for number in (0, 7999, 8000):
        one.at(float(number))
    assert len(asked) == 8002, "the last of them alone is worked again"
    assert asked[-1] == 8000.0


def test_an_angle_that_cannot_be_kept_is_worked_each_time(asked: list[float]) -> None:
    one = whole(lift=len)
    angle: Any = [1.0]
    assert one.at(angle).lift == one.at(angle).lift == 1
    assert len(asked) == 2


def test_the_top_is_the_first_of_the_greatest_lifts_in_steps_of_a_hundred_and_eightieth(
    asked: list[float],
) -> None:
    """From the start to the end of the lift, both among them."""
    assert whole(lambda angle: min(angle, 1.0)).top == pytest.approx(1.0)
    assert len(asked) == 181
    assert whole(lambda angle: angle).top == pytest.approx(3.0)
    assert whole(lambda angle: -angle).top == 0.0


def drawn(folder: Path, text: str) -> Bench:
    return bench(folder, {"cam cam": text}, "cam")


def test_a_cam_by_its_law(tmp_path: Path) -> None:
    """10° of ramp to 1 mm, 60° to 21 mm, 20° of dwell, 70° down to the other ramp."""
    on = drawn(tmp_path, LAW)
    found = motion(on["cam"], on.sheet)

    def lift(degrees: float) -> float:
        return float(found.at(math.radians(degrees)).lift) * 1e3

    assert math.degrees(found.duration) == pytest.approx(170)
    assert lift(10) == pytest.approx(1.0)
    assert lift(70) == pytest.approx(21.0)
    assert lift(90) == pytest.approx(21.0)
    assert 1.0 < lift(40) < lift(69) < 21.0 > lift(91) > lift(125) > 1.0
    assert lift(160) == pytest.approx(1.0)
    assert (lift(5), lift(165)) == pytest.approx((0.5, 0.5)), "ramps rise evenly"
    assert math.degrees(found.top) == pytest.approx(70, abs=1.0)


def test_a_cam_by_its_table(tmp_path: Path) -> None:
    on = drawn(tmp_path, TABLE)
    found = motion(on["cam"], on.sheet, on.sheet.take_nominal)
    assert math.degrees(found.duration) == pytest.approx(40)
    assert found.at(math.radians(20)).lift * 1e3 == pytest.approx(9.0)
    assert found.at(math.radians(30)).lift * 1e3 == pytest.approx(5.0)
    again = motion(on["cam"], on.sheet, on.sheet.take_nominal)
    assert again is found, "the same table is made once"


def test_a_table_that_cannot_be_is_told_of_the_sheet(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    from speclint.errors import OutOfRange

    def refused(*_: object) -> object:
        raise OutOfRange("no cam")

    on = drawn(tmp_path, TABLE)
    monkeypatch.setattr(cam_motion, "_table", refused)
    with pytest.raises(NotCovered, match="no cam"):
        motion(on["cam"], on.sheet)
