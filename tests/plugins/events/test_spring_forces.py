"""The motion of a valve and the load of its springs over the cam: thirteen places of a scan, 10° apart, drawn by hand.

The fields are 660 wide from 70 on, for 120°: 55 units for each 10°. That of the lift stands from 20 to 110, of the
velocity from 132 to 232, of the acceleration from 254 to 384, of the loads from 406 to 646.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from types import SimpleNamespace
from typing import Any

import pytest

from speclint.reports import OnSheet, Paper, Quantity
from speclint_events.figures import spring_forces as made
from speclint_events.figures.fields import Field
from speclint_events.figures.spring_forces import _Scan
from tests.plugins.events.marks import Noted, circles, curves, lines, said

ANGLES = [10.0 * n for n in range(13)]
THERE = (900, 900, 999, 1000, 1000, 1000, 1000, 1000, 1000, 1000, 950, 900, None)
NEEDED = (None, None, 200, 400, 600, 800, 1000, 1100, 600, 400, None, None, 100)
LIFTS = (0, 1, 3, 6, 8, 9, 10, 9, 8, 6, 3, 1, 0)  # mm
SPEEDS = (None, 1, 2, 2, 4, 2, 0, -1, -2, -3, -2, -1, None)
STRENGTHS = (5, 20, 10, 5, 0, -5, -8, -5, -20, 0, 5, 10, 15)
Pair = tuple[float, float]


def of(value: float, symbol: str = "x") -> Quantity:
    return Quantity(value, OnSheet("valve", made._RULE, symbol))


def each(values: Sequence[float | None], unit: float = 1.0) -> list[Quantity | None]:
    return [None if one is None else of(one * unit) for one in values]


def scan(there: float = 980.0, needed: float = 850.0, asked: Sequence[float | None] = NEEDED) -> Any:
    """What a sheet recorded, and what it judges at 50°."""
    courses = SimpleNamespace(
        curves=([(0.0, up) for up in THERE], [(0.0, up) for up in asked]),
        names=("load there", "load needed"),
        judged=(of(there), of(needed)),
        held=lambda place: [of(700.0 + place)],
    )
    series = {"h": each(LIFTS, 1e-3), "a": each(STRENGTHS)}
    check = SimpleNamespace(component="valve", case="running", outcome="conforms")
    return SimpleNamespace(
        angles=ANGLES, courses=courses, check=check, each=series.__getitem__, velocities=lambda: each(SPEEDS)
    )


@pytest.fixture
def noted(monkeypatch: pytest.MonkeyPatch) -> Noted:
    found = Noted()
    monkeypatch.setattr(Field, "labels", lambda _: found)
    return found


@pytest.fixture(autouse=True)
def sheet(monkeypatch: pytest.MonkeyPatch) -> dict[str, float]:
    """The numbers of the sheet: the cam at 50°, where the valve has risen by 9 mm."""
    numbers = {"φ": math.radians(50), "h": 9e-3, "a": -5.0}
    monkeypatch.setattr(
        made, "on_sheet", lambda _, symbol: of(numbers[symbol], symbol) if symbol in numbers else None
    )
    return numbers


def field(low: float, high: float) -> Field:
    """120 units wide for 120°, and 100 tall."""
    return Field(Paper("a", "a", "a", 400.0, 300.0), (100.0, 50.0), (120.0, 100.0), (0.0, 120.0), (low, high))


def at(one: Field, *places: Pair) -> list[Any]:
    low, high = one.up
    return [
        pytest.approx((100 + angle, 150 - (up - low) / (high - low) * 100), abs=0.06) for angle, up in places
    ]


# The motion


def test_a_curve_of_the_motion_has_every_third_place_and_both_extremes(noted: Noted) -> None:
    """Of the acceleration 0, 30, 60, 90 and 120°, the greatest at 10° and the least at 80°, each named."""
    one = field(-40.0, 40.0)
    made._motion(one, scan(), "acceleration, {m/s²}", "m/s²", each(STRENGTHS))
    line = at(one, (0, 5), (10, 20), (30, 5), (60, -8), (80, -20), (90, 0), (120, 15))
    assert curves(one.paper.markup()) == [("edge", line)]
    assert noted.avoided == [line]
    assert noted.put_at == [(at(one, (80, -20))[0], "−20 m/s²"), (at(one, (10, 20))[0], "20 m/s²")]
    held = [(placed.quantity.value, placed.unit, placed.at) for placed in one.paper.held().placed]
    assert held == [(5, "m/s²", 93.8), (15, "m/s²", 81.2), (-20, "m/s²", 125), (20, "m/s²", 75)]


def test_a_motion_that_goes_one_way_has_its_greatest_named_alone(noted: Noted) -> None:
    """A lift begins and ends at nothing."""
    one = field(0.0, 20.0)
    made._motion(one, scan(), "lift, {mm}", "mm", each(LIFTS, 1e-3))
    assert noted.put_at == [(at(one, (60, 10))[0], "10 mm")]


def test_a_place_that_has_no_velocity_is_left_out(noted: Noted) -> None:
    """The first and the last: the thirds are 10, 40, 70 and 100°, the extremes 40 and 90°."""
    one = field(-5.0, 5.0)
    made._motion(one, scan(), "velocity, {m/s}", "m/s", each(SPEEDS))
    line = at(one, (10, 1), (40, 4), (70, -1), (90, -3), (100, -2))
    assert noted.avoided == [line]
    markup = one.paper.markup()
    assert lines(markup, "fine") == [(100, 100, 220, 100)]
    assert "velocity, m/s" in said(markup)
    assert "50" not in said(markup)


@pytest.mark.parametrize(
    ("values", "ends"),
    [
        ([1.0, 3.0], (0.0, 3.75)),
        ([0.0, 3.0], (0.0, 3.75)),
        ([-2.0, 6.0], (-4.0, 8.0)),
        ([-4.0, -2.0], (-5.0, 1.0)),
    ],
)
def test_an_axis_has_room_of_a_quarter_where_it_goes(values: list[float], ends: Pair) -> None:
    assert made._ends(values, 0.25) == ends


# The loads


def test_what_there_is_beyond_what_must_be_held_is_hatched(noted: Noted) -> None:
    """At every third place, 30° and 90°: nothing is asked at 0°, nothing left at 60°, nothing known at 120°."""
    one = field(0.0, 2000.0)
    made._loaded(one, scan())
    assert lines(one.paper.markup(), "hatch") == [(130, 100, 130, 130), (190, 100, 190, 130)]
    assert noted.avoided[:2] == [at(one, (30, 1000), (30, 400)), at(one, (90, 1000), (90, 400))]


def test_the_line_of_what_must_be_held_breaks_off(noted: Noted) -> None:
    one = field(0.0, 2000.0)
    made._loaded(one, scan())
    there = at(one, *((angle, up) for angle, up in zip(ANGLES, THERE, strict=True) if up is not None))
    wanted = at(one, *((angle, up) for angle, up in zip(ANGLES[2:10], NEEDED[2:10], strict=True) if up))
    assert curves(one.paper.markup()) == [
        ("edge", there),
        ("edge dashed", wanted),
        ("edge dashed", at(one, (120, 100))),
    ]
    assert noted.avoided[2:] == [there, wanted, at(one, (120, 100)), at(one, (50, 980), (50, 850))]


def test_both_loads_are_named(noted: Noted) -> None:
    """That there in the middle of its top, from 20° on within a thousandth; that needed at 0.3 of its greatest."""
    one = field(0.0, 2000.0)
    made._loaded(one, scan())
    assert noted.put_at[1:] == [
        (at(one, (55, 1000))[0], "load there"),
        (at(one, (70, 330))[0], "load needed"),
    ]
    stand = said(one.paper.markup())
    assert stand["angle of the cam from the foot of its lift, °"][1] == 186
    assert stand["load, N"][1] == 100
    assert lines(one.paper.markup(), "fine") == [(100, 150, 220, 150)]


def test_a_load_that_is_nowhere_needed_is_not_named(noted: Noted) -> None:
    made._loaded(field(0.0, 2000.0), scan(asked=[None] * 13))
    assert [says for _, says in noted.put_at] == ["130 N left", "load there"]


def test_every_twelfth_load_is_noted_with_its_place() -> None:
    """At 0 and 120°, then the two that are judged at 50°."""
    one = field(0.0, 2000.0)
    made._loaded(one, scan())
    held = [(placed.quantity.value, placed.unit, placed.at) for placed in one.paper.held().placed]
    assert held == [(700, "N", 115), (712, "N", 114.4), (980, "N", 101), (850, "N", 107.5)]


@pytest.mark.parametrize(
    ("there", "says", "ink"),
    [(980.0, "130 N left", "solid"), (850.0, "0 N left", "solid"), (800.0, "50 N short", "point hold")],
)
def test_how_far_the_two_loads_are_apart(noted: Noted, there: float, says: str, ink: str) -> None:
    one = field(0.0, 2000.0)
    made._margin(one, scan(there), noted)  # type: ignore[arg-type]
    ends = at(one, (50, there), (50, 850))
    markup = one.paper.markup()
    assert [(found, (x, y)) for found, (x, y, _) in circles(markup)] == [(ink, ends[0]), (ink, ends[1])]
    assert {radius for _, (_, _, radius) in circles(markup)} == {3.5}
    assert noted.avoided == [ends]
    assert noted.put_at == [(at(one, (50, (there + 850) / 2))[0], says)]
    ((x_1, y_1, x_2, y_2),) = lines(markup, "thin")
    assert [(x_1, y_1), (x_2, y_2)] == ends


@pytest.mark.parametrize("missing", ["φ", "judged"])
def test_a_margin_of_which_one_number_is_missing_is_not_drawn(
    noted: Noted, sheet: dict[str, float], missing: str
) -> None:
    one, of_scan = field(0.0, 2000.0), scan()
    if missing == "judged":
        of_scan.courses.judged = None
    else:
        del sheet[missing]
    made._margin(one, of_scan, noted)  # type: ignore[arg-type]
    assert noted.put_at == []
    assert circles(one.paper.markup()) == []


@pytest.mark.parametrize(
    ("ups", "runs"),
    [
        ((None, 1, 2, None, None, 3, None), [[(1, 1), (2, 2)], [(5, 3)]]),
        ((1, None), [[(0, 1)]]),
        ((None, None), []),
    ],
)
def test_a_line_breaks_off_where_there_is_no_value(
    ups: tuple[float | None, ...], runs: list[list[Pair]]
) -> None:
    assert list(made._runs([(float(n), up) for n, up in enumerate(ups)])) == runs


# The whole figure


def test_the_four_fields_stand_one_below_the_other() -> None:
    """The lift to 12.5 mm, the loads to 1.12 of 1100 N."""
    figure = made._figure(scan())
    stand = said(figure.drawing)
    assert [stand[title][1] for title in ("lift, mm", "velocity, m/s", "acceleration, m/s²", "load, N")] == [
        65,
        182,
        319,
        526,
    ]
    (lift, _, _, load) = (line for ink, line in curves(figure.drawing) if ink == "edge")
    assert lift[0] == pytest.approx((70, 110))
    assert (400, pytest.approx(110 - 10 / 12.5 * 90, abs=0.06)) in lift
    assert load[3] == pytest.approx((70 + 30 / 120 * 660, 646 - 1000 / 1232 * 240), abs=0.06)
    assert 'id="following-valve-title"' in figure.drawing


def test_the_table_has_what_the_sheet_judges(sheet: dict[str, float]) -> None:
    rows = [
        ("cam angle of the least margin", "50.0 °"),
        ("lift of the valve there", "9.00 mm"),
        ("acceleration there", "−5.0 m/s²"),
        ("load there, there", "980 N"),
        ("load needed, there", "850 N"),
        ("judged", "conforms"),
    ]
    assert [tuple(map(str, row)) for row in made._figure(scan()).rows] == rows
    del sheet["a"]
    assert [tuple(map(str, row)) for row in made._figure(scan()).rows] == [*rows[:2], *rows[3:]]


# What was recorded


def recorded(*values: Sequence[float | None]) -> Any:
    """A check whose steps have these as the first series of a scan; the last has none."""
    steps = [SimpleNamespace(series=[SimpleNamespace(values=one)]) for one in values]
    return SimpleNamespace(steps=[*steps, SimpleNamespace(series=())])


def test_the_angles_are_those_of_the_last_scan() -> None:
    check = recorded([0.0, 1.0], [0.0, None, math.pi / 2])
    courses: Any = None
    assert _Scan(courses, check).angles == pytest.approx([0.0, 0.0, 90.0])


def velocities(
    monkeypatch: pytest.MonkeyPatch, lifts: Sequence[float | None], angles: Sequence[float | None]
) -> list[float | None]:
    series = {"h": each(lifts), "φ": each(angles)}
    monkeypatch.setattr(_Scan, "each", lambda _, symbol: series[symbol])
    nothing: Any = None
    return [None if one is None else one.value for one in _Scan(nothing, nothing).velocities()]


def test_a_velocity_is_that_between_the_places_on_either_side(
    monkeypatch: pytest.MonkeyPatch, sheet: dict[str, float]
) -> None:
    """4 mm over 0.2 rad at 20 rad/s are 0.4 m/s; 8 mm over 0.4 rad are the same."""
    sheet["ω_o"] = 20.0
    lifts, angles = (0.0, 0.001, 0.004, 0.009, 0.010), (0.0, 0.1, 0.2, 0.5, 0.6)
    found = velocities(monkeypatch, lifts, angles)
    assert found == [None, pytest.approx(0.4), pytest.approx(0.4), pytest.approx(0.3), None]


@pytest.mark.parametrize(
    ("lifts", "angles"),
    [
        ((None, 0.001, 0.004, 0.009), (0.0, 0.1, 0.2, 0.5)),
        ((0.0, 0.001, None, 0.009), (0.0, 0.1, 0.2, 0.5)),
        ((0.0, 0.001, 0.004, 0.009), (None, 0.1, 0.2, 0.5)),
    ],
)
def test_beside_a_place_that_is_not_known_there_is_no_velocity(
    monkeypatch: pytest.MonkeyPatch,
    sheet: dict[str, float],
    lifts: Sequence[float | None],
    angles: Sequence[float | None],
) -> None:
    sheet["ω_o"] = 20.0
    assert velocities(monkeypatch, lifts, angles) == [None, None, pytest.approx(0.4), None]


def test_without_the_speed_of_the_cam_there_is_no_velocity(monkeypatch: pytest.MonkeyPatch) -> None:
    assert velocities(monkeypatch, (0.0, 0.001, 0.004), (0.0, 0.1, 0.2)) == [None] * 3


def test_the_valve_with_the_least_to_spare_is_drawn(monkeypatch: pytest.MonkeyPatch) -> None:
    def judged_check(used: float | None, rule: str = made._RULE) -> Any:
        return SimpleNamespace(rule=SimpleNamespace(name=rule), utilisation=used)

    def courses(checks: Sequence[Any]) -> list[Any]:
        return [
            SimpleNamespace(check=one, judged=None if one.utilisation == 3.0 else "both") for one in checks
        ]

    monkeypatch.setattr(made, "courses_of", courses)
    monkeypatch.setattr(made, "_figure", lambda found: found.check.utilisation)
    checks = [judged_check(one) for one in (0.5, None, 0.9, 3.0)]
    assessment: Any = SimpleNamespace(checks=[judged_check(2.0, "another.rule"), *checks])
    assert list(made.spring_forces(assessment)) == [0.9]
    assessment.checks = checks[3:]
    assert list(made.spring_forces(assessment)) == []
