"""The circle of the crank: what is open where, each letter at its event, the arrow; placed by hand.

The engine of the worked cases in its notch of 20 %: feet at −10.5° and 140°, 0.5 mm of a ramp of 1.1 mm over 10° used
up after 4.545°: the inlet is open from −5.9545° to 52.9545°, the exhaust from 144.5455° to 317.4545°, alike at both
ends.
"""

from __future__ import annotations

import math
import re
from types import SimpleNamespace
from typing import Any

import pytest

from speclint.handbook.valve_events import End
from speclint.reports import Paper
from speclint_events.figures import event_circle as made
from speclint_events.figures.event_circle import Circle
from tests.plugins.events.marks import circles, curves, lines, said_in_order, shapes
from tests.plugins.events.test_figures import drawn

EVENTS = {"A": -5.9545, "C": 52.9545, "R": 144.5455, "K": 317.4545}
OF_INLET = "AC"
Pair = tuple[float, float]


def forward(angle: float, radius: float, way: float = 1.0) -> Any:
    """Where a crank angle stands on the circle about (210, 205): from the left, and downwards."""
    φ = math.radians(angle)
    return pytest.approx((210 - way * radius * math.cos(φ), 205 + way * radius * math.sin(φ)), abs=0.12)


def circle(*, backward: bool = False) -> Circle:
    return Circle(Paper("a", "a", "a", 400.0, 400.0), (200.0, 200.0), backward)


def test_the_circles_and_the_line_of_stroke_stand_about_both_centres() -> None:
    figure = drawn("circle-gear").drawing
    for x in (210, 630):
        found = sorted((radius, ink) for ink, (at, _, radius) in circles(figure) if at == x)
        assert found == [(84, "thin"), (96, "fine"), (105, "fine"), (122, "fine"), (131, "fine")]
    assert {y for _, (_, y, _) in circles(figure)} == {205}
    assert lines(figure, "axis") == [(58, 205, 362, 205), (478, 205, 782, 205)]


def test_each_letter_stands_at_its_event() -> None:
    """At 66 within the circle for the front, at 150 without for the back, which is half a turn on; 4 lower."""
    found = said_in_order(drawn("circle-gear").drawing)
    letters = [one for one in found if one[1] < 400 and re.fullmatch(r"[ACRK] [0-9.]+ %", one[0])]
    assert len(letters) == 8
    for text, x, y, anchor in letters:
        radius, way = (66, 1.0) if anchor == "middle" else (150, -1.0)
        assert (x, y - 4) == forward(EVENTS[text[0]], radius, way), text


def test_each_event_is_marked_across_the_ring_of_its_valve() -> None:
    """6 to either side of it: inlets at 96 and 122, exhausts at 105 and 131."""
    wanted = [
        (forward(angle, ring - 6, way), forward(angle, ring + 6, way))
        for way, rings in ((1.0, (96, 105)), (-1.0, (122, 131)))
        for letter, angle in EVENTS.items()
        for ring in (rings[letter not in OF_INLET],)
    ]
    assert [((a, b), (c, d)) for a, b, c, d in lines(drawn("circle-gear").drawing, "thin")][:8] == wanted


def test_both_notches_are_named_beneath_their_circles() -> None:
    figure = drawn("circle-gear")
    named = [one for one in said_in_order(figure.drawing) if one[0].startswith("notch ")]
    assert named == [("notch 20, forward", 210, 392, "middle"), ("notch b, backward", 630, 392, "middle")]
    assert figure.held.counted == ("20", "notch 20, forward", "b", "notch b, backward")


@pytest.mark.parametrize("backward", [False, True])
def test_the_arrow_points_the_way_in_which_the_crank_turns(backward: bool) -> None:
    """From 200° to 320°, 30 from the centre, in steps of no more than 4°; its head from 0.05 before to 0.2 after."""
    one = circle(backward=backward)
    made._arrow(one)
    ((ink, arc),) = curves(one.paper.markup())
    assert ink == "thin"
    assert len(arc) in (31, 32)  # 120° in steps of 4°, or of a little less

    def at(angle: float, radius: float) -> Any:
        up = math.sin(angle) * (-1 if backward else 1)
        return pytest.approx((200 - radius * math.cos(angle), 200 + radius * up), abs=0.11)

    assert (arc[0], arc[-1]) == (at(math.radians(200), 30), at(math.radians(320), 30))
    last = math.radians(320)
    assert shapes(one.paper.markup()) == [
        ("arrow", [at(last + 0.2, 30), at(last - 0.05, 27), at(last - 0.05, 33)])
    ]


@pytest.mark.parametrize(("degrees", "parts"), [(1, 2), (90, 23), (170, 43)])
def test_an_arc_has_a_point_every_4_degrees_and_one_in_its_middle(degrees: int, parts: int) -> None:
    """22.5 and 42.5 steps of 4°, rounded up."""
    one = circle()
    one.arc(0.0, math.radians(degrees), 100.0, "stated")
    ((_, points),) = curves(one.paper.markup())
    assert len(points) == parts + 1


def test_the_angles_of_the_back_count_from_its_own_dead_centre() -> None:
    assert circle().at(math.radians(30), 100.0, End.BACK) == (286.6, 150.0)
    assert circle().at(math.radians(30), 100.0) == (113.4, 250.0)
    assert circle(backward=True).at(math.radians(30), 100.0) == (113.4, 150.0)


@pytest.mark.parametrize("up", [-1, 1])
def test_a_bowed_arc_goes_from_its_start_to_its_end(up: int) -> None:
    """100 tall about 50, bowed by 8: a quarter, a half and three quarters off the middle 7.5, 6 and 3.5 are left."""
    found = made._between((10.0, 50.0 - 50 * up), (18.0, 50.0), (10.0, 50.0 + 50 * up))
    assert found == [
        (10 + bow, 50 + up * off)
        for bow, off in ((3.5, -37.5), (6, -25), (7.5, -12.5), (8, 0), (7.5, 12.5), (6, 25), (3.5, 37.5))
    ]


# The notches that are drawn


def notches(**cut_offs: float) -> Any:
    """A gear that runs in the notch own; the others run backward but for those called more."""
    return SimpleNamespace(
        notch="own",
        notches=cut_offs,
        given=cut_offs["own"],
        directions={name: "forward" if name in ("own", "more") else "backward" for name in cut_offs},
    )


def test_the_notch_beside_is_that_of_the_other_direction_that_cuts_off_nearest(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    """From 0.2: 0.3 is nearer than 0.05 and 0.6; 0.21 runs the same way."""
    monkeypatch.setattr(made, "_cut_off", lambda given: given)
    assert made._other(notches(long=0.6, near=0.3, short=0.05, more=0.21, own=0.2)) == ["near"]
    assert made._other(notches(own=0.2, more=0.21)) == []


def test_the_cut_off_of_a_notch_is_the_mean_of_its_ends(monkeypatch: pytest.MonkeyPatch) -> None:
    def end(share: float) -> Any:
        hot = SimpleNamespace(events=share, crank=None, end=None)
        return SimpleNamespace(at=lambda _: hot)

    monkeypatch.setattr(made, "positions_of", lambda share, _crank, _end: SimpleNamespace(cut_off=share))
    given: Any = SimpleNamespace(front=end(0.3), back=end(0.5))
    assert made._cut_off(given) == pytest.approx(0.4)
