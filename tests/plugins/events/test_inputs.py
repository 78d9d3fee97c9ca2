"""What the rules of events take alike, each by hand: clearances, cranks, notches, and what is marked as worked."""

from __future__ import annotations

from pathlib import Path
from types import SimpleNamespace
from typing import Any

import pytest

from speclint.handbook.valve_events import End
from speclint.rules import Grade
from speclint.testing import DesignFolder, expect_finding, expect_not_assessed, on_sheet
from speclint_events import inputs
from speclint_events.formulae.cycles import _OF_CYLINDER
from speclint_events.formulae.turning import Standing
from tests.plugins.events.gear import checked
from tests.plugins.events.test_turning import OPENED
from tests.plugins.events.worked_engine import judged


@pytest.mark.parametrize(("low", "least"), [(0.45e-3, 0.45e-3), (0.0, 0.0), (-0.1e-3, 0.0)])
def test_an_inlet_is_tried_hot_with_its_least_and_with_its_greatest_clearance(
    low: float, least: float
) -> None:
    """A seat may wear by more than the clearance: then the valve does not shut, and there is none."""
    cam: Any = SimpleNamespace(
        clearances=SimpleNamespace(hot=0.5e-3, low=low, high=0.6e-3), with_clearance=lambda δ: δ
    )
    assert inputs.at_all_clearances(cam) == (0.5e-3, least, 0.6e-3)


class _Taken:
    """A sheet that hands on what is taken, and keeps the symbols."""

    def __init__(self) -> None:
        self.symbols: list[str] = []

    def take_nominal(self, symbol: str, value: float) -> float:
        self.symbols.append(symbol)
        return value

    take_absolute = take_nominal

    def setting(self, name: str) -> str:
        return {"site pressure": "101325"}[name]


@pytest.mark.parametrize(("backward", "leads"), [(False, (0.0, 1.5, 4.0)), (True, (0.0, -1.5, -4.0))])
def test_an_engine_at_standstill(
    monkeypatch: pytest.MonkeyPatch, backward: bool, leads: tuple[float, ...]
) -> None:
    """A crank that leads the first running forwards follows it running backwards."""
    cranks = {
        name: SimpleNamespace(angle=at) for name, at in (("left", 0.0), ("right", 1.5), ("middle", 4.0))
    }
    areas = {End.FRONT: 0.20, End.BACK: 0.19}
    monkeypatch.setattr(inputs, "engine_of_gear", lambda _at_work, _sheet: SimpleNamespace(cranks=cranks))
    monkeypatch.setattr(inputs, "piston_area", lambda _block, _bore, side, _sheet: areas[side])
    at_work: Any = SimpleNamespace(crank="crank", place=("block", "main"))
    case: Any = SimpleNamespace(live_pressure=16e5, exhaust_pressure=1.4e5)
    sheet: Any = _Taken()
    crank: Any = "crank"
    found = inputs.standing(at_work, case, backward, sheet)
    assert found == Standing(crank, 0.20, 0.19, leads, 16e5, 1.4e5, 101325.0)
    assert sheet.symbols == ["θ_1", "θ_2", "θ_3", "p_1", "p_b"]


@pytest.mark.parametrize("notch", ["mid", "77"])
def test_the_notch_of_a_load_case_runs_the_engine(tmp_path: Path, notch: str) -> None:
    other = ("duty.toml", 'notch = "20"', f'notch = "{notch}"')
    check = judged(tmp_path, "events.wire-drawing", other)
    expect_not_assessed(check, f"gear has no notch '{notch}' in which the engine runs")


@pytest.mark.parametrize("rule", ["events.both-directions", "events.shutting-speed"])
def test_a_valve_that_its_cam_never_reaches_is_a_query(tmp_path: Path, rule: str) -> None:
    """1.1 mm of ramp and 2 of lift are used up by 3.2 mm of clearance; events.opens tells what is wrong."""
    low = ("cam-inlet-front-20.toml", 'lift = "9.5 mm"', 'lift = "2 mm"')
    wide = ("tappet-inlet-front.toml", 'clearance = "0.6 mm"', 'clearance = "3.4 mm"')
    expect_finding(checked(DesignFolder(tmp_path), rule, low, wide), grade=Grade.QUERY)


def test_a_seat_that_wears_by_more_than_its_clearance_is_a_query(tmp_path: Path) -> None:
    """0.5 mm hot, 0.7 mm of wear: the valve would stand 0.2 mm off its seat."""
    worn = ("tappet-inlet-front.toml", 'seat_wear = "0.05 mm"', 'seat_wear = "0.7 mm"')
    check = checked(DesignFolder(tmp_path), "events.shutting-speed", worn)
    expect_finding(check, grade=Grade.QUERY, says="clearance -0.2 mm of the tappet must not be below 0")


@pytest.mark.parametrize(
    ("rule", "symbol"),
    [
        ("cycle.steam-rate", "P"),
        ("cycle.steam-rate", "p_mf"),
        ("cycle.steam-rate", "W_f"),
        ("events.starts-anywhere", "M_f"),
        ("events.mid-gear", "M_0"),
    ],
)
def test_what_is_long_in_the_working_rests_on_what_goes_in(tmp_path: Path, rule: str, symbol: str) -> None:
    """Not on its last digits, which another machine may round otherwise."""
    check = judged(tmp_path, rule, OPENED)
    assert on_sheet(check, symbol) > 0
    assert {step.long for step in check.steps if step.symbol == symbol} == {True}


def test_a_diagram_says_of_which_notch_and_speed_it_is(tmp_path: Path) -> None:
    check = judged(tmp_path, "cycle.steam-rate")
    names = {step.symbol: step.name for step in check.steps}
    assert "gear, notch 20, 180 rev/min" in names["P"]
    assert names["W_f"].endswith(", front")
    assert names["W_b"].endswith(", back")


@pytest.mark.parametrize(
    ("name", "event"), [("admission temperature", "at_admission"), ("release temperature", "at_release")]
)
def test_a_temperature_of_the_cylinder_is_the_mean_of_its_ends(name: str, event: str) -> None:
    both: Any = SimpleNamespace(
        front=SimpleNamespace(**{event: SimpleNamespace(temperature=400.0)}),
        back=SimpleNamespace(**{event: SimpleNamespace(temperature=500.0)}),
    )
    _, unit, result = _OF_CYLINDER[name]
    assert (result(both), unit) == (450.0, "K")
