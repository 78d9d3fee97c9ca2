"""Where the field of a chart has its marks, on paper that counts down from the top.

The field stands 200 wide and 100 tall at (100, 50), so its foot is at 150; 0 to 10 across, 0 to 1 up.
"""

from __future__ import annotations

from types import SimpleNamespace
from typing import Any
from xml.etree import ElementTree

import pytest

from speclint.reports import Paper, axis_marks, title_at
from speclint.reports.pack.drawn_units import drawn_in
from speclint_events.figures import fields
from speclint_events.figures.fields import Field, top_of
from speclint_events.figures.notch_efforts import Engine
from speclint_events.figures.valve_chart import (
    _dead_centres,
    _round_angles,
    clearance_hot,
    greatest_area,
    greatest_lift,
)


def field(across: tuple[float, float] = (0.0, 10.0)) -> Field:
    paper = Paper("a", "a", "a", 400.0, 300.0)
    return Field(paper, (100.0, 50.0), (200.0, 100.0), across, (0.0, 1.0))


def lines(of: Field) -> list[tuple[float, ...]]:
    """Both ends of each line, in the order drawn."""
    root = ElementTree.fromstring(of.paper.markup())
    return [
        tuple(float(one.get(name, "")) for name in ("x1", "y1", "x2", "y2"))
        for one in root.iter()
        if one.tag.endswith("line") and not one.tag.endswith("polyline")
    ]


def places(of: Field) -> dict[str, tuple[float, float]]:
    """Where each text stands."""
    root = ElementTree.fromstring(of.paper.markup())
    return {
        one.text or "": (float(one.get("x", "")), float(one.get("y", "")))
        for one in root.iter()
        if one.tag.endswith("text")
    }


def test_a_pair_of_values_stands_above_the_foot_and_right_of_the_left_axis() -> None:
    """2.5 of 10 across is 100 + 50; 0.2 of 1 up is 150 − 20."""
    assert field().place(2.5, 0.2) == (150.0, 130.0)
    assert field((-10.0, 10.0)).place(5.0, 1.0) == (250.0, 50.0)


def test_an_axis_up_may_begin_below_nothing() -> None:
    """0.5 of −1 to 1 is three quarters of 100 above the foot at 150."""
    one = Field(Paper("a", "a", "a", 400.0, 300.0), (100.0, 50.0), (200.0, 100.0), (0.0, 10.0), (-1.0, 1.0))
    assert one.place(2.5, 0.5) == (150.0, 75.0)


@pytest.mark.parametrize(("tall", "wanted"), [(240.0, 4), (100.0, 2), (40.0, 2)])
def test_an_axis_up_has_a_mark_about_every_60_units(tall: float, wanted: int) -> None:
    """And no fewer than are asked for with two."""
    one = Field(Paper("a", "a", "a", 400.0, 300.0), (100.0, 50.0), (200.0, tall), (0.0, 10.0), (0.0, 1.0))
    one.frame("", "share", marks=(5.0,))
    heights = [(mark.value, mark.at) for mark in one.paper.held().marks if mark.axis == "y100 50"]
    assert heights == [
        (number, pytest.approx(50 + tall - value * tall, abs=0.06))
        for number, value in axis_marks(0.0, 1.0, "", wanted)
    ]


def test_marks_across_are_noted_with_their_places() -> None:
    one = field()
    one.frame("", "share", marks=(2.5, 5.0))
    across = [(mark.value, mark.at) for mark in one.paper.held().marks if mark.axis == "x100 50"]
    assert across == [(2.5, 150), (5, 200)]


@pytest.mark.parametrize(("title", "unit"), [("", "km/h"), ("speed, {km/h}", "")])
def test_marks_across_are_round_numbers_of_the_unit_that_is_drawn(title: str, unit: str) -> None:
    """50 mph are 80.4672 km/h, of 100 on 200 units."""
    one = field((0.0, 100.0))
    with drawn_in("imperial"):
        one.frame(title, "share", unit=unit)
    assert places(one)["50"][0] == pytest.approx(100 + 2 * 80.4672, abs=0.06)


def test_the_title_up_stands_left_of_its_numbers() -> None:
    """46 left of the axis, and farther where numbers as wide as 20000 end 7 left of it: at 18.8 of 70."""
    narrow = field()
    narrow.frame("", "share", marks=(5.0,))
    assert places(narrow)["share"][0] == 54
    wide = Field(Paper("a", "a", "a", 400.0, 300.0), (70.0, 50.0), (200.0, 100.0), (0.0, 10.0), (0.0, 2e4))
    wide.frame("", "load", marks=(5.0,))
    assert places(wide)["load"][0] == pytest.approx(title_at(24.0, 63.0, (0.0, 20000.0)), abs=0.1)


def test_words_keep_to_their_field_and_12_above_it(monkeypatch: pytest.MonkeyPatch) -> None:
    """The field from (100, 50) to (300, 150), 2 less at its foot, and 5 more to the right."""
    monkeypatch.setattr(fields, "Labels", lambda _paper, within: within)
    assert field().labels(5.0) == (100, 38, 305, 148)


def test_the_top_of_an_axis_leaves_room_above_the_greatest() -> None:
    assert top_of([2.0, 10.0, 4.0]) == pytest.approx(11.2)
    assert top_of([10.0], 1.25) == pytest.approx(12.5)


def test_the_ticks_point_inwards_and_the_numbers_stand_outside() -> None:
    """Ticks are 5 long; numbers stand 17 beneath the foot, and 7 left of the left axis."""
    one = field()
    one.frame("", "share", marks=(5.0,))
    assert "" not in places(one), "an axis across without a title"
    assert lines(one)[:2] == [(100, 50, 100, 150), (100, 150, 300, 150)]
    assert lines(one)[-1] == (200, 150, 200, 145)
    assert (100, 50, 105, 50) in lines(one)
    assert places(one)["5"] == (200, 167)
    assert places(one)["1"] == (93, 54)


def test_the_title_across_stands_in_the_middle_beneath_the_numbers() -> None:
    one = field()
    one.frame("angle", "share", marks=(5.0,))
    assert places(one)["angle"] == (200, 186)
    assert places(one)["share"][1] == 100


def test_lines_and_words_at_values() -> None:
    one = field()
    assert one.level(0.2) == (300, 130)
    assert one.upright(2.5) == (150, 50)
    one.says((2.5, 0.2), "here", (3.0, -6.0))
    assert lines(one) == [(100, 130, 300, 130), (150, 150, 150, 50)]
    assert places(one)["here"] == (153, 124)


def test_a_cross_has_two_strokes_that_slope_either_way() -> None:
    """4 to each side of (150, 130)."""
    one = field()
    one.cross(2.5, 0.2)
    assert lines(one) == [(146, 126, 154, 134), (146, 134, 154, 126)]


def test_the_marks_of_crank_angles_are_every_30_degrees_within_the_ends() -> None:
    assert _round_angles((-50.0, 100.0)) == [-30, 0, 30, 60, 90]
    assert _round_angles((-60.0, 60.0)) == [-60, -30, 0, 30, 60]
    assert _round_angles((31.0, 119.0)) == [60, 90]


@pytest.mark.parametrize("words", [True, False])
def test_both_dead_centres_are_drawn_and_named_where_asked(words: bool) -> None:
    """Over 0° to 200° on 200 units: at 100 and 280."""
    one = field((0.0, 200.0))
    _dead_centres(one, words=words)
    assert lines(one) == [(100, 150, 100, 50), (280, 150, 280, 50)]
    named = {"dead centre": (100, 42), "far dead centre": (280, 42)}
    assert places(one) == (named if words else {})


def test_the_speed_of_an_engine_is_that_of_its_rims() -> None:
    """π × 1.5 m × 2 rev/s = 9.42478 m/s, which is 33.9292 km/h."""
    assert Engine(3, 1.5, None, None).speed(2.0) == pytest.approx(33.9292, abs=1e-4)


def test_each_valve_has_its_own_lift_clearance_and_area() -> None:
    """The areas rise and fall by straight lines, to 2 and 5 cm² halfway between a valve's own two events."""

    def valve(lift: float, clearance: float, most: float, first: float, last: float) -> Any:
        half = (last - first) / 2
        train = SimpleNamespace(greatest_lift=lift, clearance=clearance)
        return SimpleNamespace(train=train, area=lambda at: most * (1 - abs(at - first - half) / half))

    events = SimpleNamespace(admission=-0.2, cut_off=1.0, release=2.5, compression=5.5)
    end = SimpleNamespace(
        inlet=valve(0.010, 0.0005, 2e-4, -0.2, 1.0),
        exhaust=valve(0.024, 0.0006, 5e-4, 2.5, 5.5),
        events=events,
    )
    drawn: Any = SimpleNamespace(notch="20", end=lambda _notch, _side: end)
    for name, lift, clearance, area in (("inlet", 0.010, 0.0005, 2e-4), ("exhaust", 0.024, 0.0006, 5e-4)):
        assert greatest_lift("front", name, drawn) == lift
        assert clearance_hot("front", name, drawn) == clearance
        assert greatest_area("front", name, drawn) == pytest.approx(area)
