"""What each notch does over the speed: two notches whose curves, crosses and words are placed by hand.

The field of the efforts stands at (70, 20), 660 wide and 280 tall: 58 km/h across, which is 1.16 of 50, and 134.4 kN
up, which is 1.12 of 120. That of the steam at (70, 340) is 160 tall: 12.75 kg/kWh up, 1.25 of 10.2.
"""

from __future__ import annotations

import math
from collections.abc import Callable
from types import SimpleNamespace
from typing import Any

import pytest

from speclint import OutOfRange
from speclint.handbook.steam_cycle import SpeedPoint
from speclint.reports import OnSheet, Quantity
from speclint_events.figures import notch_efforts as made
from speclint_events.figures.fields import Field
from speclint_events.figures.notch_efforts import Engine, Notch
from tests.plugins.events.marks import Noted, circles, curves, lines, said, said_in_order

A = Notch("a", ((10.0, 100.0, 1.0, 8.0), (30.0, 80.0, 3.0, 10.0), (50.0, 60.0, 3.5, 10.2)))
B = Notch("b", ((10.0, 60.0, 0.5, 10.0), (30.0, 50.0, 1.5, 8.0), (50.0, 55.0, 2.5, 9.0)))
WHEEL = 10 / (3.6 * math.pi)  # m: 10 km/h at a turn a second
ADHESION, BOILER = "events.adhesion", "events.boiler-feeds"
SHEETS = {(ADHESION, "F_a"): 120e3, (ADHESION, "F"): 110e3, (ADHESION, "n"): 0.5, (BOILER, "m_b"): 2.0}
Pair = tuple[float, float]


def gear(sheets: dict[tuple[str, str], float], **more: Any) -> Any:
    """A gear that runs in notch a at three turns a second, 30 km/h, with these numbers on its sheets."""

    def quantity(rule: str, symbol: str) -> Quantity | None:
        value = sheets.get((rule, symbol))
        return None if value is None else Quantity(value, OnSheet("gear", rule, symbol))

    known: dict[str, Any] = {"name": "gear", "of": "gear", "notch": "a", "given": SimpleNamespace(speed=3.0)}
    return SimpleNamespace(
        **known | more, quantity=quantity, on_sheet=lambda rule, symbol: sheets.get((rule, symbol))
    )


@pytest.fixture
def noted(monkeypatch: pytest.MonkeyPatch) -> Noted:
    found = Noted()
    monkeypatch.setattr(Field, "labels", lambda _: found)
    return found


def drawing(sheets: dict[tuple[str, str], float], adhesion: float | None, boiler: float | None) -> str:
    return made._figure(gear(sheets), Engine(3.0, WHEEL, adhesion, boiler), [A, B]).drawing


def on_efforts(*places: Pair) -> list[Any]:
    return [pytest.approx((70 + v / 58 * 660, 300 - F / 134.4 * 280), abs=0.06) for v, F in places]


def on_rates(*places: Pair) -> list[Any]:
    return [pytest.approx((70 + v / 58 * 660, 500 - rate / 12.75 * 160), abs=0.06) for v, rate in places]


def efforts(drawn: str) -> list[tuple[str, list[Pair]]]:
    """The lines of the upper field."""
    return [(ink, line) for ink, line in curves(drawn) if line[0][1] <= 300]


def test_each_curve_is_dashed_from_where_the_boiler_makes_no_more() -> None:
    """2 kg/s are passed half of the way from 10 to 30 km/h in notch a, from 30 to 50 in b; a line joins the two."""
    a, b = (20.0, 90.0), (40.0, 52.5)
    drawn = drawing(SHEETS, 120e3, 2.0)
    assert efforts(drawn) == [
        ("edge", on_efforts((10, 100), a)),
        ("edge dashed", on_efforts(a, (30, 80), (50, 60))),
        ("edge", on_efforts((10, 60), (30, 50), b)),
        ("edge dashed", on_efforts(b, (50, 55))),
        ("axis", on_efforts(a, b)),
    ]
    assert curves(drawn)[5:] == [
        ("edge", on_rates((10, 8), (30, 10), (50, 10.2))),
        ("edge", on_rates((10, 10), (30, 8), (50, 9))),
    ]


@pytest.mark.parametrize(
    ("boiler", "of_a", "of_b"),
    [(None, "edge", "edge"), (5.0, "edge", "edge"), (0.4, "edge dashed", "edge dashed")],
)
def test_a_curve_that_the_boiler_does_not_part_is_whole(boiler: float | None, of_a: str, of_b: str) -> None:
    assert efforts(drawing({}, None, boiler)) == [
        (of_a, [pytest.approx(at, abs=0.06) for at in _alone((10, 100), (30, 80), (50, 60))]),
        (of_b, [pytest.approx(at, abs=0.06) for at in _alone((10, 60), (30, 50), (50, 55))]),
    ]


def _alone(*places: Pair) -> list[Pair]:
    """Without the adhesion the greatest effort is 100 kN, and the axis ends at 112 kN."""
    return [(70 + v / 58 * 660, 300 - F / 112 * 280) for v, F in places]


def test_one_limit_of_the_boiler_is_joined_to_nothing() -> None:
    """3.25 kg/s are passed half of the way from 30 to 50 km/h in notch a alone."""
    drawn = efforts(drawing({}, None, 3.25))
    assert [ink for ink, _ in drawn] == ["edge", "edge dashed", "edge"]
    assert drawn[1][1][0] == pytest.approx(_alone((40, 70))[0], abs=0.06)


def test_a_curve_may_be_dashed_from_one_of_its_points_on() -> None:
    """3 kg/s are taken in notch a at 30 km/h."""
    drawn = efforts(drawing({}, None, 3.0))
    assert [(ink, [pytest.approx(at, abs=0.06) for at in line]) for ink, line in drawn[:2]] == [
        ("edge", _alone((10, 100), (30, 80))),
        ("edge dashed", _alone((30, 80), (50, 60))),
    ]


def test_a_curve_that_never_comes_to_what_the_boiler_makes_is_as_it_begins() -> None:
    falling = Notch("a", ((10.0, 100.0, 2.5, 8.0), (30.0, 80.0, 1.5, 10.0)))
    drawn = made._figure(gear({}), Engine(3.0, WHEEL, None, 2.0), [falling]).drawing
    assert curves(drawn)[0][0] == "edge dashed"


def test_what_a_notch_takes_all_along_may_be_what_the_boiler_makes() -> None:
    steady = Notch("a", ((10.0, 100.0, 2.0, 8.0), (30.0, 80.0, 2.0, 10.0)))
    drawn = made._figure(gear({}), Engine(3.0, WHEEL, None, 2.0), [steady]).drawing
    assert [ink for ink, _ in curves(drawn)] == ["edge", "edge"]


def test_the_limit_of_the_boiler_may_be_a_point_of_its_own() -> None:
    """What is taken at the fastest is not passed: how much is taken beyond is not known."""
    assert A.limit(1.0) == (10.0, 100.0)
    assert A.limit(3.0) == (30.0, 80.0)
    assert A.limit(3.5) is None
    assert A.limit(None) is None


def test_the_points_that_were_worked_are_marked_and_the_running_one_is_larger() -> None:
    every = circles(drawing(SHEETS, 120e3, 2.0))
    assert {ink for ink, _ in every} == {"solid"}
    small = [(x, y) for _, (x, y, radius) in every if radius == 2.2]
    assert small == [
        *on_efforts((10, 100), (30, 80), (50, 60), (10, 60), (30, 50), (50, 55)),
        *on_rates((10, 8), (30, 10), (50, 10.2), (10, 10), (30, 8), (50, 9)),
    ]
    assert [(x, y) for _, (x, y, radius) in every if radius == 4.5] == on_efforts((30, 80))
    assert len(every) == 13


def test_start_and_limits_of_the_boiler_are_crosses() -> None:
    """Starting at half a turn a second, 5 km/h."""
    strokes = lines(drawing(SHEETS, 120e3, 2.0), "edge")
    middles = [((x_1 + x_2) / 2, (y_1 + y_2) / 2) for x_1, y_1, x_2, y_2 in strokes[::2]]
    assert middles == on_efforts((5, 110), (20, 90), (40, 52.5))
    assert len(strokes) == 6


def test_words_keep_clear_of_every_curve_and_stand_once(noted: Noted) -> None:
    drawing(SHEETS, 120e3, 2.0)
    assert noted.avoided == [
        on_efforts((0, 120), (58, 120)),
        on_efforts((10, 100), (30, 80), (50, 60)),
        on_efforts((10, 60), (30, 50), (50, 55)),
        on_efforts((20, 90), (40, 52.5)),
    ]
    assert [says for _, says in noted.put_at] == [
        "starting, 110.0 kN",
        "boiler, 2.00 kg/s",
        "running, 80.0 kN",
    ]
    assert [at for at, _ in noted.put_at] == on_efforts((5, 110), (20, 90), (30, 80))


def test_what_no_sheet_has_is_not_drawn(noted: Noted) -> None:
    found = made._figure(gear({}), Engine(3.0, WHEEL, None, None), [A, B])
    assert lines(found.drawing, "axis") == lines(found.drawing, "edge") == []
    assert [says for _, says in noted.put_at] == ["running, 80.0 kN"]
    assert len(noted.avoided) == 2
    assert len(found.rows) == 6


def test_a_start_of_which_one_number_is_missing_is_not_drawn() -> None:
    engine = Engine(3.0, WHEEL, None, None)
    for one in ((ADHESION, "n"), (ADHESION, "F")):
        assert list(made._starting(gear({one: SHEETS[one]}), engine)) == []
    assert list(made._starting(gear(SHEETS), engine)) == [((5.0, 110.0), "starting, 110.0 kN")]


def test_the_adhesion_is_named_above_the_right_end_of_its_line() -> None:
    """120 kN of 134.4 on 280 units are 250 above the foot at 300."""
    drawn = drawing(SHEETS, 120e3, 2.0)
    assert lines(drawn, "axis") == [(70, 50, 730, 50)]
    assert said(drawn)["adhesion, 120.0 kN"] == (730, 44, "end")


def test_each_notch_is_named_at_the_ends_of_its_lines() -> None:
    """8 beyond and 4 beneath 50 km/h, at 638.966; notch b ends at 185.417 and 387.06, a at 175 and 372.

    Above, a would stand 10 over b: it is raised to 14. Beneath they are 15 apart.
    """
    found = made._figure(gear(SHEETS), Engine(3.0, WHEEL, 120e3, 2.0), [A, B])
    stand = _all_said(found.drawing, "notch ")
    assert stand == [
        ("notch b", pytest.approx((647.0, 189.4), abs=0.06)),
        ("notch a", pytest.approx((647.0, 175.4), abs=0.06)),
        ("notch b", pytest.approx((647.0, 391.1), abs=0.06)),
        ("notch a", pytest.approx((647.0, 376.0), abs=0.06)),
    ]
    assert {"notch a", "notch b"} <= set(found.held.counted)


def _all_said(drawn: str, first: str) -> list[tuple[str, Pair]]:
    return [(text, (x, y)) for text, x, y, _ in said_in_order(drawn) if text.startswith(first)]


def test_the_axes_are_named_with_their_units() -> None:
    """The upper field has no title across; those up stand in the middle of their fields, at 160 and 420."""
    stand = said(drawing(SHEETS, 120e3, 2.0))
    assert stand["tractive effort, kN"][1] == 160
    assert stand["steam, kg/kWh"][1] == 420
    assert stand["speed of the engine, km/h"] == (400, 536, "middle")


def test_the_table_has_every_point_and_what_limits_them() -> None:
    found = made._figure(gear(SHEETS), Engine(3.0, WHEEL, 120e3, 2.0), [A, B])
    assert [tuple(map(str, row)) for row in found.rows] == [
        ("a", "10.0 km/h", "100.0 kN", "1.00 kg/s", "8.00 kg/kWh"),
        ("a", "30.0 km/h", "80.0 kN", "3.00 kg/s", "10.00 kg/kWh"),
        ("a", "50.0 km/h", "60.0 kN", "3.50 kg/s", "10.20 kg/kWh"),
        ("b", "10.0 km/h", "60.0 kN", "0.50 kg/s", "10.00 kg/kWh"),
        ("b", "30.0 km/h", "50.0 kN", "1.50 kg/s", "8.00 kg/kWh"),
        ("b", "50.0 km/h", "55.0 kN", "2.50 kg/s", "9.00 kg/kWh"),
        ("adhesion, events.adhesion", "", "120.0 kN", "", ""),
        ("boiler, events.boiler-feeds", "", "", "2.000 kg/s", ""),
        ("starting, events.adhesion", "", "110.0 kN", "", ""),
    ]


def test_a_point_is_found_again_in_si_units() -> None:
    """10 km/h are 2.7778 m/s."""
    assert [made.of_notch("b", 0, which, [A, B]) for which in range(4)] == pytest.approx(
        [10 / 3.6, 60e3, 0.5, 10.0]
    )


# What is worked


@pytest.mark.parametrize(
    ("count", "shares"),
    [
        (3, [0.3, 1.0, 1.35]),  # 0.3, 0.825, 1.35
        (4, [0.3, 0.65, 1.0, 1.35]),
        (6, [0.3, 0.51, 0.72, 1.0, 1.14, 1.35]),  # 0.93 gives way
    ],
)
def test_the_speeds_are_even_but_for_that_of_the_load_case(count: int, shares: list[float]) -> None:
    assert made._shares(count) == pytest.approx(shares)
    assert 1.0 in made._shares(count)


def known_at_2(power: float) -> Any:
    """Cycles at two turns a second: 20 kN on a wheel of 1 m, 0.5 kg/s."""
    return SimpleNamespace(
        power=power,
        front=SimpleNamespace(running="running"),
        tractive_effort=lambda D: 20e3 / D,
        steam_flow=0.5,
        per_kilowatt_hour=9.0,
    )


GIVEN: Any = SimpleNamespace(
    speed=2.0, front=SimpleNamespace(at=lambda _: "front"), back=SimpleNamespace(at=lambda _: "back")
)


def worked_at(speeds: dict[float, SpeedPoint]) -> Callable[..., tuple[SpeedPoint, ...]]:
    def over_speed(front: str, back: str, running: str, wheel: float, wanted: list[float]) -> Any:
        assert (front, back, running, wheel) == ("front", "back", "running", 2.0)
        return tuple(speeds[one] for one in wanted)

    return over_speed


def test_each_point_is_that_of_all_cylinders(monkeypatch: pytest.MonkeyPatch) -> None:
    """Three cylinders on wheels of 2 m: 6.283 m a turn, 22.619 km/h at a turn a second.

    At its own two turns the cycle is known: 10 kN and 0.5 kg/s of each. What does no work has no steam for it.
    """
    points = {
        1.0: SpeedPoint(1.0, 1.0, 12e3, 0.2, 8.0),
        3.0: SpeedPoint(3.0, None, None, None, None),
        4.0: SpeedPoint(4.0, -1.0, -1e3, 0.9, None),
    }
    monkeypatch.setattr(made, "cycles_as_drawn", lambda _: known_at_2(100.0))
    monkeypatch.setattr(made, "over_speed", worked_at(points))
    found = list(made._points(GIVEN, Engine(3.0, 2.0, None, None), [1.0, 2.0, 3.0, 4.0]))
    assert found == [
        pytest.approx((22.6195, 36.0, 0.6, 8.0), rel=1e-5),
        pytest.approx((45.2389, 30.0, 1.5, 9.0), rel=1e-5),
    ]


def test_an_engine_that_does_no_work_at_its_speed_has_no_point_there(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(made, "cycles_as_drawn", lambda _: known_at_2(0.0))
    monkeypatch.setattr(made, "over_speed", worked_at({2.0: SpeedPoint(2.0, 0.0, 0.0, 0.5, None)}))
    assert list(made._points(GIVEN, Engine(3.0, 2.0, None, None), [2.0])) == []


def test_a_notch_whose_cycle_cannot_be_worked_has_no_point(monkeypatch: pytest.MonkeyPatch) -> None:
    def beyond(_: object) -> None:
        raise OutOfRange("beyond the steam tables")

    monkeypatch.setattr(made, "cycles_as_drawn", beyond)
    assert list(made._points(GIVEN, Engine(3.0, 2.0, None, None), [2.0])) == []


def test_a_notch_of_one_point_is_no_line(monkeypatch: pytest.MonkeyPatch) -> None:
    """The notches give here the points that are worked of them."""
    notches = {"a": A.points, "b": B.points[:1], "c": B.points[:2], "back": A.points}
    directions = {"a": "forward", "b": "forward", "c": "forward", "back": "backward"}
    monkeypatch.setattr(made, "_points", lambda points, _engine, _speeds: points)
    found = made._worked(gear({}, notches=notches, directions=directions), Engine(3.0, 2.0, None, None))
    assert found == [A, Notch("c", B.points[:2])]


@pytest.mark.parametrize(("stated", "whole"), [("zD", True), ("z", False), ("D", False), ("", False)])
def test_an_engine_is_drawn_by_its_cylinders_and_its_wheel(stated: str, whole: bool) -> None:
    sheets = {(ADHESION, one): 3.0 for one in stated} | {(ADHESION, "F_a"): 120e3, (BOILER, "m_b"): 2.0}
    assert made._engine(gear(sheets)) == (Engine(3.0, 3.0, 120e3, 2.0) if whole else None)


def test_a_gear_that_cannot_be_drawn_hides_none(monkeypatch: pytest.MonkeyPatch) -> None:
    wheels = {(ADHESION, "z"): 3.0, (ADHESION, "D"): 1.675}
    gears = [
        gear({}, found=[A]),
        gear(wheels, found=[]),
        gear(wheels, found=[A]),
    ]
    monkeypatch.setattr(made, "gears_drawn", lambda _: iter(gears))
    monkeypatch.setattr(made, "_worked", lambda drawn, _engine: drawn.found)
    assessment: Any = None
    assert len(list(made.notch_efforts(assessment))) == 1
