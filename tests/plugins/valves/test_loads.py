"""What pushes at a valve's gear over a lift: the parts of the lift, where the clearance is taken up, the springs."""

from __future__ import annotations

from types import SimpleNamespace
from typing import Any

import pytest

from speclint.testing import DesignFolder, on_sheet
from speclint_valves.inputs import aside, springs
from speclint_valves.inputs.loads import Loaded
from speclint_valves.inputs.springs import Springs
from tests.plugins.valves.test_regrinding import files

HOLDS, STRESS = "valve.spring-holds-shut", "spindle.stress"


def test_a_lift_has_a_part_with_steam_and_one_without() -> None:
    """Steam of 900 N holds the valve from where the gear begins to push until it has cracked open, and none after."""
    nothing: Any = None
    load = Loaded(
        train=nothing,
        cam=nothing,
        i=1.0,
        m=1.0,
        c=0.0,
        ω=1.0,
        springs=Springs(1.0, 1.0),
        steam=900.0,
        friction=0.0,
        weight=0.0,
        begins=0.1,
        taken_up=0.2,
        cracked=0.3,
        landed=0.9,
        blow=0.0,
    )
    assert [(one.mark, one.start, one.stop, one.steam) for one in load.phases] == [
        ("s", 0.1, 0.3, 900.0),
        ("o", 0.3, 0.9, 0.0),
    ]


@pytest.mark.parametrize(("taken_up", "slope"), [(0.105, 0.105), (0.1101, 0.1101), (0.0, 0.0), (1.3, 0.0)])
def test_the_slope_of_a_track_is_that_where_its_clearance_is_taken_up(
    monkeypatch: pytest.MonkeyPatch, taken_up: float, slope: float
) -> None:
    """A track of 1.2 rad, looked at every 0.01 rad, whose slope is its angle; beyond its end it never bears."""
    track = SimpleNamespace(
        cam=SimpleNamespace(duration=1.2),
        follower=lambda angle: SimpleNamespace(slope=angle),
        bears=lambda at: at.slope >= taken_up,
        torque=lambda angle: 5.0 - abs(angle - 0.6),
    )
    monkeypatch.setattr(aside, "turning", lambda *_: track)
    train: Any = SimpleNamespace(cam=None)
    nothing: Any = None
    found = aside._looked_at(train, nothing, nothing)
    assert found == pytest.approx((slope, 5.0 if taken_up < 1.2 else 0.0), abs=1e-6)


def shut_hot(workshop: DesignFolder, rule: str, subject: str) -> tuple[float, float]:
    """Load shut and rate of the hot spring by the sheet of a rule, as shares of those at 20 °C: 1000 N, 10 N/mm."""
    check = workshop.only(rule, subject)
    share = on_sheet(check, "G_T1") / on_sheet(check, "G_201")
    return on_sheet(check, "F_1") / share / 1000, on_sheet(check, "R_T1") / share / 10e3


def test_springs_are_weak_where_they_hold_and_strong_where_they_load(
    workshop: DesignFolder, monkeypatch: pytest.MonkeyPatch
) -> None:
    """A load of 1000 to 3000 N and a rate of 10 to 30 N/mm; a set of 2 % is of the load when open.

    Open by h mm at the greatest rate the weak spring has 1000 + 30 h N.
    """
    monkeypatch.setattr(springs, "shut_loads", lambda *_: (1000.0, 3000.0))
    monkeypatch.setattr(springs, "rates", lambda *_: (10e3, 30e3))
    workshop.write(files())
    assert shut_hot(workshop, STRESS, "spindle") == pytest.approx((3.0, 3.0))
    load, rate = shut_hot(workshop, HOLDS, "valve")
    assert rate == pytest.approx(1.0)
    check = workshop.only(HOLDS, "valve")
    lift = on_sheet(check, "h_o")
    assert on_sheet(check, "F_O1") == pytest.approx(1000 + 30e3 * lift)
    assert load == pytest.approx((1000 - 0.02 * (1000 + 30e3 * lift)) / 1000)
