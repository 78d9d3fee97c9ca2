"""Estimates of metal temperatures by the parts beside: their bands, and what is missing for one."""

from __future__ import annotations

from pathlib import Path
from types import SimpleNamespace
from typing import Any

import pytest

from speclint.errors import NOWHERE, OutOfRange
from speclint.facts import estimated_temperature, estimates
from speclint.quantities import Measure
from speclint.rules import NotAssessed, NotCovered
from speclint.specs import Tie
from tests.facts.bench import Bench, bench

DUTY = """[cases.running]
live_temperature = "390 °C"
[cases.running.temperatures]
{kind} = "estimate"
{others}"""


def drawn(folder: Path, kind: str, others: str = 'cylinder-block = "200 °C"\n', **changed: str) -> Bench:
    """One part of each kind of which an estimate is known; ``changed`` are other texts by the ids of the parts."""
    files = {
        "duty duty": DUTY.format(kind=kind, others=others),
        "cylinder-block block": 'duty = "duty"\n[bores.main]\n[seat_bores.a]\n',
        "cylinder-liner liner": 'housed_in = "block"\nin_bore = "main"\n',
        "cylinder-cover cover": 'closes = "block"\n',
        "chamber-cover lid": 'closes = "block"\n',
        "bolted-joint studs": 'holds = "cover"\n',
        "valve-seat seat": 'pressed_into = "block"\nin_bore = "a"\n',
        "poppet-valve valve": 'upper_beat.seat = "seat"\nserves = "inlet"\n',
        "valve-spindle spindle": 'moves = "valve"\n',
        "piston alone": "",
    }
    return bench(folder, {one: changed.get(one.split()[1], text) for one, text in files.items()}, "block")


def estimate(on: Bench, part: str, kind: str) -> Measure | Tie:
    case = on["duty"].cases["running"]
    return estimated_temperature(case.temperatures[kind], on[part], on[part], case, on.sheet)


def band(found: Measure | Tie) -> tuple[float, float, float]:
    """Base, and by how much it is less and more than that."""
    assert isinstance(found, Tie)
    assert isinstance(found.base, Measure)
    by = found.difference
    assert by.nominal == pytest.approx((by.low + by.high) / 2)
    assert by.provenance == "assumed"
    return found.base.nominal - 273.15, by.low, by.high


VALVE = 'poppet-valve = "360 °C"\n'
BLOCK = 'cylinder-block = "200 °C"\n'


@pytest.mark.parametrize(
    ("part", "kind", "others", "found"),
    [
        ("liner", "cylinder-liner", BLOCK, (200, 0, 20)),
        ("cover", "cylinder-cover", BLOCK, (200, -30, -10)),
        ("studs", "bolted-joint", 'cylinder-cover = "180 °C"\n', (180, -40, -20)),
        ("valve", "poppet-valve", BLOCK, (390, -50, -20)),
        ("spindle", "valve-spindle", VALVE, (360, -100, -60)),
        ("seat", "valve-seat", BLOCK + VALVE, (200, 70, 90)),  # (360 − 200)/2 = 80, ± 10
    ],
)
def test_the_band_beside_another_part(
    tmp_path: Path, part: str, kind: str, others: str, found: tuple[float, float, float]
) -> None:
    assert band(estimate(drawn(tmp_path, kind, others), part, kind)) == pytest.approx(found)


def test_the_seat_of_an_exhaust_valve_follows_the_block(tmp_path: Path) -> None:
    valve = 'upper_beat.seat = "seat"\nserves = "exhaust"\n'
    on = drawn(tmp_path, "valve-seat", BLOCK + VALVE, valve=valve)
    assert band(estimate(on, "seat", "valve-seat")) == pytest.approx((200, 0, 20))


def test_a_seat_half_way_to_a_tied_temperature(tmp_path: Path) -> None:
    """The valve 100 K above the block: half of it, 50 K, ± 10."""
    on = drawn(tmp_path, "valve-seat", BLOCK + 'poppet-valve = "cylinder-block + 100 K"\n')
    assert band(estimate(on, "seat", "valve-seat")) == pytest.approx((200, 40, 60))


@pytest.mark.parametrize(
    ("part", "kind", "others", "changed", "says"),
    [
        ("liner", "cylinder-liner", "", {}, r"temperatures\.block is not stated"),
        ("cover", "cylinder-cover", 'cylinder-block = "estimate"\n', {}, "is not stated"),
        (
            "studs",
            "bolted-joint",
            BLOCK,
            {"studs": 'holds = "lid"\n'},
            "no estimate is known for the studs of lid",
        ),
        (
            "seat",
            "valve-seat",
            BLOCK,
            {"valve": "", "block": 'duty = "duty"\n[bores.main]\n[seat_bores.a]\nserves = "inlet"\n'},
            "no valve sits on seat",
        ),
        ("spindle", "valve-spindle", BLOCK, {"spindle": ""}, "moves is not stated"),
        ("lid", "chamber-cover", BLOCK, {}, "no estimate is known for chamber-cover"),
        ("alone", "piston", BLOCK, {}, "no cylinder block is joined to alone"),
        ("liner", "cylinder-liner", BLOCK, {"liner": ""}, "no cylinder block is joined to liner"),
    ],
)
def test_what_is_missing_is_told(
    tmp_path: Path, part: str, kind: str, others: str, changed: dict[str, str], says: str
) -> None:
    on = drawn(tmp_path, kind, others, **changed)
    with pytest.raises(NotAssessed, match=says):
        estimate(on, part, kind)


@pytest.mark.parametrize(
    ("part", "kind", "nominal", "low", "high"),
    [
        ("block", "cylinder-block", 510.0, 485.0, 535.0),
        ("alone", "piston", 555.0, 520.0, 590.0),
        ("valve", "poppet-valve", 335.0, 310.0, 360.0),
    ],
)
def test_the_band_about_the_steam_of_all_cylinders(
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
    part: str,
    kind: str,
    nominal: float,
    low: float,
    high: float,
) -> None:
    """Steam of 500 K in one and of 520 K in the other; its exhaust of 300 and 320 K: ± 15, + 20..70 and + 10..40 K."""
    cycles = [SimpleNamespace(mean_temperature=T, exhaust=T - 200) for T in (500.0, 520.0)]
    monkeypatch.setattr(estimates._Asked, "_cycles", lambda _: cycles)
    monkeypatch.setattr(estimates, "exhaust_temperature", lambda both: both.exhaust)
    on = drawn(tmp_path, kind, "", valve='upper_beat.seat = "seat"\nserves = "exhaust"\n')
    found = estimate(on, part, kind)
    assert isinstance(found, Measure)
    assert (found.nominal, found.low, found.high) == pytest.approx((nominal, low, high))
    assert (found.dimension, found.unit, found.text, found.provenance) == (
        "temperature",
        "°C",
        "estimate",
        "assumed",
    )
    assert found.note.startswith("an estimate, common practice: ")
    assert found.where == on["duty"].cases["running"].temperatures[kind].where


class AtWork:
    """A gear that runs in two notches, on the cold engine."""

    def __init__(self, gear: Any, case: Any, sheet: Any, *, cold: bool) -> None:
        del case, sheet
        self.gear, self.cold, self.running = gear, cold, ("35", "50")


def asked_of(monkeypatch: pytest.MonkeyPatch, notch: str, cycle: Any) -> list[Any]:
    """The cycles of two gears in a notch."""
    gears = [SimpleNamespace(id="left"), SimpleNamespace(id="right")]
    monkeypatch.setattr(estimates, "gears_beside", lambda *_: gears)
    monkeypatch.setattr(estimates, "GearAtWork", AtWork)
    monkeypatch.setattr(
        estimates, "cylinder_given", lambda at_work, its, *_: (at_work.gear.id, at_work.cold, its)
    )
    monkeypatch.setattr(estimates, "cycles_as_drawn", cycle)
    sheet = SimpleNamespace(read=lambda *_: notch, not_assessed=NotAssessed, not_covered=NotCovered)
    case = SimpleNamespace(notch=SimpleNamespace(where=NOWHERE))
    of: Any = SimpleNamespace(sheet=sheet, case=case, component=None)
    return list(estimates._Asked._cycles(of))


def test_the_cycles_are_those_of_every_cylinder_on_the_cold_engine(monkeypatch: pytest.MonkeyPatch) -> None:
    """Metal may be tied to what they give, so that they must not rest on metal."""
    found = asked_of(monkeypatch, "50", lambda given: given)
    assert found == [("left", True, "50"), ("right", True, "50")]


def test_a_notch_in_which_no_gear_runs_or_a_cycle_that_is_not_covered_gives_no_estimate(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    def refused(_: Any) -> Any:
        raise OutOfRange("not covered")

    with pytest.raises(NotAssessed, match="left does not run in notch 'mid'"):
        asked_of(monkeypatch, "mid", lambda given: given)
    with pytest.raises(NotCovered, match="not covered"):
        asked_of(monkeypatch, "35", refused)
