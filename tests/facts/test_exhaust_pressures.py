"""The pressure behind the exhaust valves: as stated, and in running no less than the nozzle needs."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest

from speclint.facts import exhaust_pressures as module
from speclint.facts.exhaust_pressures import greatest_exhaust_pressure
from speclint.rules import NotAssessed
from tests.facts.bench import Bench, bench

DUTY = """[cases.running]
exhaust_pressure = "0.35 bar gauge"
steam_flow = "1.7 kg/s"
[cases.starting]
exhaust_pressure = "0.3 bar gauge"
steam_flow = "0.3 kg/s"
"""
ENGINE = 'nozzle = "nozzle"\n[cranks.left]\nblock = "block"\n'
BELT = 'in_block = "block"\n'


def drawn(folder: Path, duty: str = DUTY, engine: str = ENGINE) -> Bench:
    files = {
        "cylinder-block block": "",
        "steam-passage belt": BELT,
        "blast-nozzle nozzle": "",
        "duty duty": duty,
    }
    if engine:
        files["engine engine"] = engine
    return bench(folder, files, "belt")


def pressed(
    monkeypatch: pytest.MonkeyPatch, on: Bench, *needed: float, part: str = "belt", case: str = "running"
) -> Any:
    """The pressure where the nozzle needs some pressures, in bar above the 1.01325 bar of the site."""
    asked: list[str] = []

    def back(nozzle: Any, its_case: Any, *_: object) -> list[float]:
        asked.append(f"{nozzle.id} in {its_case.name}")
        return [101325.0 + 1e5 * one for one in needed]

    monkeypatch.setattr(module, "back_pressures", back)
    found = greatest_exhaust_pressure(on[part], on["duty"].cases[case], on.sheet)
    return round(found / 1e5, 6), asked


def test_in_running_it_is_no_less_than_the_nozzle_needs(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The most of all its ways, each above the pressure of the site."""
    on = drawn(tmp_path)
    assert pressed(monkeypatch, on, 0.3, 0.5, 0.4) == (0.5, ["nozzle in running"])
    (tmp_path / "a").mkdir()
    assert pressed(monkeypatch, drawn(tmp_path / "a"), 0.3, part="block") == (0.35, ["nozzle in running"])
    (tmp_path / "b").mkdir()
    assert pressed(monkeypatch, drawn(tmp_path / "b")) == (0.35, ["nozzle in running"])


@pytest.mark.parametrize(
    ("duty", "engine", "case", "expected"),
    [
        (DUTY, ENGINE, "starting", 0.3),
        (DUTY.replace('steam_flow = "1.7 kg/s"\n', ""), ENGINE, "running", 0.35),
        (DUTY, ENGINE.replace('nozzle = "nozzle"\n', ""), "running", 0.35),
        (DUTY, "", "running", 0.35),
    ],
)
def test_otherwise_it_is_as_stated(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, duty: str, engine: str, case: str, expected: float
) -> None:
    on = drawn(tmp_path, duty, engine)
    assert pressed(monkeypatch, on, 0.9, case=case) == (expected, [])


def test_where_the_ways_are_not_drawn_whole_it_is_as_stated(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def wanting(*_: object) -> object:
        raise NotAssessed("no way leads to the nozzle")

    on = drawn(tmp_path)
    monkeypatch.setattr(module, "back_pressures", wanting)
    found = greatest_exhaust_pressure(on["belt"], on["duty"].cases["running"], on.sheet)
    assert found == pytest.approx(0.35e5)


def test_what_is_stated_nowhere_is_asked_for(tmp_path: Path) -> None:
    on = drawn(tmp_path, DUTY.replace('exhaust_pressure = "0.35 bar gauge"\n', ""))
    with pytest.raises(NotAssessed, match="exhaust_pressure is not stated"):
        greatest_exhaust_pressure(on["belt"], on["duty"].cases["running"], on.sheet)
