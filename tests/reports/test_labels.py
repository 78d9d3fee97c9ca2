"""Words beside points: where each stands, by hand, and what makes it stand elsewhere.

A letter takes 7.2 units and a line 12; the first place tried is 9 to the right of the point, then below to the right,
and so on round by 45°, then farther off at 18, 30 and 44.
"""

from __future__ import annotations

import math
from xml.etree import ElementTree

import pytest

from speclint.errors import NOWHERE
from speclint.reports.pack.labels import Labels
from speclint.reports.pack.paper import Paper
from speclint.reports.pack.plot import Plot
from speclint.reports.pack.printed import InSpec, Quantity, shown, words

WIDE = 4 * 7.2
#: Where the middle of four letters and their line stand from the point, 9 off: right, below right, below, and so on.
SLANT = 9 * math.sqrt(0.5)
ROUND = [
    (9 + WIDE / 2, 4.0),
    (SLANT + WIDE / 2, SLANT + 10),
    (0.0, 9 + 10),
    (-SLANT - WIDE / 2, SLANT + 10),
    (-9 - WIDE / 2, 4.0),
    (-SLANT - WIDE / 2, -SLANT - 2),
    (0.0, -9 - 2),
    (SLANT + WIDE / 2, -SLANT - 2),
]
FIELD = (0.0, 0.0, 400.0, 400.0)


def paper() -> Paper:
    return Paper("a", "a", "a", 400.0, 400.0)


def placed(on: Paper) -> list[tuple[float, float]]:
    """Where the words of a paper stand from the point (200, 200), rounded to a tenth as they are."""
    found = []
    for one in on.marks:
        x, y = getattr(one, "x", None), getattr(one, "y", None)
        assert x is not None
        assert y is not None
        found.append((float(x) - 200, float(y) - 200))
    return found


def test_the_first_words_stand_to_the_right_and_the_next_round_the_point() -> None:
    """Below to the right they are clear of the first; below they would touch the second."""
    on = paper()
    labels = Labels(on, FIELD)
    for _ in range(3):
        labels.put((200.0, 200.0), "abcd")
    assert placed(on) == [pytest.approx(ROUND[place], abs=0.06) for place in (0, 1, 3)]


def test_words_keep_clear_of_a_line_to_their_right() -> None:
    """A line upright 20 beyond the point: whatever stands to the right crosses it, below does not."""
    on = paper()
    labels = Labels(on, FIELD)
    labels.avoid([(220.0, 100.0), (220.0, 300.0)])
    labels.put((200.0, 200.0), "abcd")
    assert placed(on) == [pytest.approx(ROUND[2], abs=0.06)]


def test_a_line_is_kept_clear_of_between_its_points_too() -> None:
    """Its ends are far off; every 5 units of it count."""
    on = paper()
    labels = Labels(on, FIELD)
    labels.avoid([(0.0, 200.0), (400.0, 200.0)])
    labels.put((200.0, 200.0), "abcd")
    (found,) = placed(on)
    assert found == pytest.approx(ROUND[1], abs=0.06)


@pytest.mark.parametrize(("points", "far"), [(8, 44), (9, 9)])
def test_words_lie_on_a_line_rather_than_on_words_up_to_a_measure(points: int, far: int) -> None:
    """In a field of one line the second words fit clear of the first 44 off only: 0.2 × 44 and 4 for each point.

    8 points of a line there cost 40.8, 9 of them 44.8; to lie on the first words costs 40 and 0.2 × 9.
    """
    on = paper()
    labels = Labels(on, (205.0, 190.0, 400.0, 210.0))
    labels.put((200.0, 200.0), "abcd")
    for number in range(points):
        labels.avoid([(246.0 + 3 * number, 200.0)])
    labels.put((200.0, 200.0), "abcd")
    assert placed(on) == [pytest.approx(ROUND[0], abs=0.06), pytest.approx((far + WIDE / 2, 4), abs=0.06)]


def test_words_keep_to_the_field() -> None:
    """To the right there is no room, nor below: they stand above to the left or to the left."""
    on = paper()
    labels = Labels(on, (0.0, 0.0, 215.0, 208.0))
    labels.put((200.0, 200.0), "abcd")
    assert placed(on) == [pytest.approx(ROUND[4], abs=0.06)]
    on = paper()
    labels = Labels(on, (195.0, 150.0, 400.0, 195.0))
    labels.put((200.0, 200.0), "abcd")
    assert placed(on) == [pytest.approx(ROUND[7], abs=0.06)]


@pytest.mark.parametrize(
    ("within", "place"),
    [
        ((200 + 9, 0, 400, 400), 0),  # begins with the words
        ((0, 200 - 6, 200 + 9 + WIDE, 206), 0),  # ends with them, above and below as well
        (
            (0, 0, 200 + 9 + WIDE - 0.5, 400),
            1,
        ),  # a little less: to the right there is no room, below it there is
    ],
)
def test_the_field_is_met_to_its_edge(within: tuple[float, float, float, float], place: int) -> None:
    on = paper()
    Labels(on, within).put((200.0, 200.0), "abcd")
    assert placed(on) == [pytest.approx(ROUND[place], abs=0.06)]


def test_words_wider_than_the_field_stand_to_the_right_all_the_same() -> None:
    on = paper()
    Labels(on, (190.0, 190.0, 210.0, 210.0)).put((200.0, 200.0), "abcd")
    assert placed(on) == [pytest.approx(ROUND[0], abs=0.06)]


# A plot


def plot() -> Plot:
    """From 0 to 100 mm across 760 − 24 units, from −10 to 30 N up 200; numbers of three letters leave 44 + 24.18."""
    return Plot("a", "a", "a", (0.0, 100.0), (-10.0, 30.0), ("way, {mm}", "load, {N}"), tall=200.0)


LEFT = 44 + 3 * 13 * 0.62


def test_a_pair_of_values_stands_between_the_axes() -> None:
    one = plot()
    assert one.place(0.0, -10.0) == pytest.approx((LEFT, 222))
    assert one.place(100.0, 30.0) == pytest.approx((736, 22))
    assert one.place(25.0, 0.0) == pytest.approx((LEFT + (736 - LEFT) / 4, 172))
    assert one.on([(25.0, 0.0), (50.0, None)]) == [pytest.approx((LEFT + (736 - LEFT) / 4, 172))]
    assert (one.paper.width, one.paper.height) == (760, 222 + 52)


def test_the_axes_have_their_marks_and_a_line_at_nothing() -> None:
    one = plot()
    marks = one.paper.held().marks
    across, up = [mark for mark in marks if mark.axis == "x"], [mark for mark in marks if mark.axis == "y"]
    assert [mark.value for mark in across] == [0, 20, 40, 60, 80, 100]
    assert [mark.value for mark in up] == [-10, -5, 0, 5, 10, 15, 20, 25, 30]
    assert [mark.at for mark in across] == pytest.approx([LEFT + (736 - LEFT) * n / 5 for n in range(6)])
    assert [mark.at for mark in up] == pytest.approx([222 - 25 * n for n in range(9)])


def test_lines_of_a_plot_break_off_and_points_stand_on_them() -> None:
    one = plot()
    one.line([(0.0, 0.0), (50.0, 10.0), (60.0, None), (75.0, 20.0), (100.0, 30.0)], "edge")
    one.band([(0.0, 0.0), (100.0, 0.0)], [(0.0, 10.0), (100.0, 20.0)])
    one.point(50.0, 10.0, "point")
    one.level(10.0, "limit")
    root = ElementTree.fromstring(one.paper.markup())
    middle = (LEFT + 736) / 2
    paths = [points(mark) for mark in root.iter() if mark.tag.endswith("}polyline")]
    assert paths == [
        [pytest.approx((LEFT, 172), abs=0.01), pytest.approx((middle, 122), abs=0.01)],
        [pytest.approx((LEFT + (736 - LEFT) * 0.75, 72), abs=0.01), pytest.approx((736, 22), abs=0.01)],
    ]
    (band,) = [points(mark) for mark in root.iter() if mark.tag.endswith("}polygon")]
    assert band == [pytest.approx(one, abs=0.01) for one in ((LEFT, 172), (736, 172), (736, 72), (LEFT, 122))]
    (circle,) = [mark for mark in root.iter() if mark.tag.endswith("}circle")]
    assert [float(circle.get(name, "")) for name in ("cx", "cy", "r")] == pytest.approx(
        [middle, 122, 4.5], abs=0.01
    )
    (level,) = [mark for mark in root.iter() if mark.get("class") == "limit"]
    ends = [float(level.get(name, "")) for name in ("x1", "y1", "x2", "y2")]
    assert ends == pytest.approx([LEFT, 122, 736, 122], abs=0.01)


def test_the_titles_stand_in_the_middle_of_their_axes() -> None:
    root = ElementTree.fromstring(plot().paper.markup())
    words = {
        one.text: (float(one.get("x", "")), float(one.get("y", ""))) for one in root.iter() if one.get("x")
    }
    assert words["way, mm"] == pytest.approx(((LEFT + 736) / 2, 262), abs=0.01)
    assert words["load, N"] == pytest.approx((16, 122), abs=0.01)
    assert words["100"] == pytest.approx((736, 242), abs=0.01)
    assert words["30"] == pytest.approx((LEFT - 8, 26), abs=0.01)
    lines = [mark for mark in root.iter() if mark.tag.endswith("}line")]
    heavy = [
        [float(one.get(name, "")) for name in ("x1", "y1", "x2", "y2")]
        for one in lines
        if one.get("class") == "edge"
    ]
    for line in ([LEFT, 172, 736, 172], [LEFT, 22, LEFT, 222], [LEFT, 222, 736, 222], [736, 222, 736, 227]):
        assert any(one == pytest.approx(line, abs=0.01) for one in heavy), line
    assert sum(one.get("class") == "grid" for one in lines) == 8


def test_a_noted_point_is_held_to_both_axes_or_stands_at_nothing() -> None:
    """25.4 mm and 10 N: 0.254 of the way across, and half of the way up."""
    one = plot()
    way, load = (Quantity(one, InSpec(NOWHERE, "nominal")) for one in (0.0254, 10.0))
    one.noted(way, "mm", load, "N", words("{} {mm}", shown(way, "mm")), "point")
    one.noted(way, "mm", None, "N", words("none"), "point bad")
    x = LEFT + 0.254 * (736 - LEFT)
    held = one.paper.held().placed
    assert [(one.axis, one.at) for one in held] == [
        ("x", pytest.approx(x)),
        ("y", pytest.approx(122)),
        ("x", pytest.approx(x)),
    ]
    root = ElementTree.fromstring(one.paper.markup())
    said = {
        one.text: (float(one.get("x", "")), float(one.get("y", ""))) for one in root.iter() if one.get("x")
    }
    assert said["25.4 mm"] == pytest.approx((x + 8, 114), abs=0.01)
    assert said["none"] == pytest.approx((x + 8, 164), abs=0.01)


def points(mark: ElementTree.Element) -> list[tuple[float, float]]:
    flat = [float(one) for one in mark.get("points", "").replace(",", " ").split()]
    return list(zip(flat[::2], flat[1::2], strict=True))
