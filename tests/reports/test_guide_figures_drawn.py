"""The drawings of the guide, read back from their SVG: what is drawn, where on its axes, and beside which words."""

from __future__ import annotations

import math
import xml.etree.ElementTree as ET
from collections.abc import Callable, Iterator
from itertools import pairwise
from typing import NamedTuple

import pytest

from speclint.reports.reference.guide_figures import grades, guide_figure, load_cases

_SVG = "{http://www.w3.org/2000/svg}"
_NEAR = 0.02  # units of the paper: places have two decimals
Point = tuple[float, float]


class Mark(NamedTuple):
    """A mark of a drawing: its sort, its ink, and the points by which it is drawn."""

    sort: str
    ink: str
    points: tuple[Point, ...]
    size: Point = (0.0, 0.0)
    words: str = ""
    anchor: str = "start"


def marks(name: str) -> list[Mark]:
    """All marks of a drawing, in their order."""
    return [mark for one in ET.fromstring(guide_figure(name)) for mark in _read(one)]


def _read(one: ET.Element) -> Iterator[Mark]:
    sort, ink = one.tag.removeprefix(_SVG), one.get("class", "")

    def of(*names: str) -> Point:
        x, y = (float(one.get(name, "nan")) for name in names)
        return x, y

    if sort == "line":
        yield Mark(sort, ink, (of("x1", "y1"), of("x2", "y2")))
    elif sort == "rect":
        yield Mark(sort, ink, (of("x", "y"),), of("width", "height"))
    elif sort == "circle":
        yield Mark(sort, ink, (of("cx", "cy"),), of("r", "r"))
    elif sort == "text":
        anchor = one.get("text-anchor", "start")
        yield Mark(sort, ink, (of("x", "y"),), words=one.text or "", anchor=anchor)
    elif sort in ("polygon", "polyline"):
        pairs = [pair.split(",") for pair in one.get("points", "").split()]
        yield Mark(sort, ink, tuple((float(x), float(y)) for x, y in pairs))


def inked(drawn: list[Mark], sort: str, ink: str) -> list[Mark]:
    return [one for one in drawn if (one.sort, one.ink) == (sort, ink)]


def said(drawn: list[Mark], words: str) -> Mark:
    """The one line of words that reads so."""
    (found,) = (one for one in drawn if one.words == words)
    return found


def near(*points: Point) -> object:
    return pytest.approx(tuple(value for point in points for value in point), abs=_NEAR)


def flat(*points: Point) -> tuple[float, ...]:
    return tuple(value for point in points for value in point)


def points_the_way(tip: Mark, line: Mark) -> None:
    """A tip at the end of its line, as wide to both sides of it, and open towards its start."""
    end, *feet = tip.points
    start, line_end = line.points
    assert math.dist(end, line_end) <= 1 + _NEAR
    long = math.dist(start, line_end)
    assert long <= math.dist(start, end) + _NEAR, "the line goes beyond its tip"
    along = ((line_end[0] - start[0]) / long, (line_end[1] - start[1]) / long)
    back, side = [], []
    for foot in feet:
        off = (foot[0] - end[0], foot[1] - end[1])
        back.append(off[0] * along[0] + off[1] * along[1])
        side.append(off[0] * along[1] - off[1] * along[0])
    assert -12 < back[0] < -6
    assert back[1] == pytest.approx(back[0], abs=_NEAR)
    assert 2 < abs(side[0]) < 5
    assert side[1] == pytest.approx(-side[0], abs=_NEAR)


@pytest.mark.parametrize(
    ("name", "title"),
    [
        ("tolerance-corners", "The box of two tolerances, and its worst corner"),
        ("load-cases", "One fit in five load cases"),
        ("grades", "What follows from the grade of a finding"),
    ],
)
def test_a_drawing_of_the_guide_has_its_title_under_its_name(name: str, title: str) -> None:
    found = ET.fromstring(guide_figure(name)).find(f"{_SVG}title")
    assert found is not None
    assert (found.text, found.get("id")) == (title, f"guide-{name}-title")


def test_the_box_of_the_tolerances_is_told_to_whoever_cannot_see_it() -> None:
    """By hand 0.922 in the middle; at 10 kN 132.57 and 127.32 MPa of 155, at 12 kN 159.09 and 152.79."""
    about = ET.fromstring(guide_figure("tolerance-corners")).findtext(f"{_SVG}desc")
    assert about == (
        "A rod of 9.8 to 10 mm under 10 to 12 kN, 155 MPa allowed. In the middle of both tolerances 0.92 of the limit "
        "is used. At the thinnest rod under the greatest load it is 1.03: this corner governs, and the check fails. "
        "The other corners use 0.86, 0.82, 0.99."
    )


# The box of two tolerances. The paper is 352 units for 9.72 to 10.08 mm from 52 on, and 294 for 9.4 to 12.6 kN up from
# 350: 977.78 units to a millimetre, 91.875 to a kilonewton.


def rod(diameter: float, load: float) -> Point:
    return 52 + (diameter - 9.72) * 352 / 0.36, 350 - (load - 9.4) * 294 / 3.2


def corners() -> list[Mark]:
    return marks("tolerance-corners")


def test_the_axes_of_the_rod_have_a_number_below_each_mark_across_and_left_of_each_up() -> None:
    """Marks at each 0.05 mm of 9.72 to 10.08 mm, and at each half of 9.4 to 12.6 kN."""
    drawn = corners()
    edges = [flat(*one.points) for one in inked(drawn, "line", "edge")]
    foot, left = 350.0, 52.0
    assert near((left, foot), (left, 56)) in edges
    assert near((left, foot), (404, foot)) in edges
    for diameter in ("9.75", "9.8", "9.85", "9.9", "9.95", "10", "10.05"):
        x, _ = rod(float(diameter), 9.4)
        (number,) = (one for one in drawn if one.words == diameter and one.anchor == "middle")
        assert number.points[0][0] == pytest.approx(x, abs=_NEAR)
        assert 10 < number.points[0][1] - foot < 25
        (end,) = [edge for edge in edges if edge[:2] == near((x, foot))]
        assert end[2] == pytest.approx(x, abs=_NEAR)
        assert 0 < end[3] - foot < number.points[0][1] - foot - 10
    for load in ("9.5", "10", "10.5", "11", "11.5", "12", "12.5"):
        _, y = rod(9.72, float(load))
        (number,) = (one for one in drawn if one.words == load and one.anchor == "end")
        (start,) = [edge for edge in edges if edge[2:] == near((left, y))]
        assert start[1] == pytest.approx(y, abs=_NEAR)
        assert number.points[0][0] < start[0] < left
        assert 0 < number.points[0][1] - y < 8  # the foot of the figures, so that their middle is at the mark


def test_the_titles_of_the_axes_of_the_rod_stand_at_their_ends() -> None:
    drawn = corners()
    across, up = said(drawn, "diameter, mm"), said(drawn, "load, kN")
    assert across.ink == up.ink == "quiet"
    assert across.anchor == "end"
    assert across.points[0][0] == 404
    assert 370 + 12 < across.points[0][1] < 395  # below the numbers, above the words on the margin
    assert up.points[0][0] < 43  # above the numbers, which end there
    assert 26 < up.points[0][1] < 56


def test_above_the_line_on_which_the_whole_limit_is_used_the_ground_is_shaded() -> None:
    """By hand, F = 155 π d²/4: at 9.72 mm 11.501 kN, at 9.9 mm 11.931 kN, at 10.08 mm 12.369 kN."""
    drawn = corners()
    (line,) = inked(drawn, "polyline", "asked")
    for at, (diameter, load) in ((0, (9.72, 11.5015)), (12, (9.9, 11.9315)), (24, (10.08, 12.3692))):
        assert line.points[at] == near(rod(diameter, load))
    assert [x for x, _ in line.points] == pytest.approx([52 + 352 / 24 * n for n in range(25)], abs=_NEAR)
    (ground,) = inked(drawn, "polygon", "removed")
    assert ground.points[:25] == line.points
    assert flat(*ground.points[25:]) == near((404, 56), (52, 56))
    words = said(drawn, "more than is allowed")
    (x, y), beneath = words.points[0], min(y for at, y in line.points if at < 200)
    assert x > 52
    assert 56 + 10 < y < beneath


def test_the_box_of_the_tolerances_has_its_edge() -> None:
    """9.8 to 10 mm are 195.56 units, 10 to 12 kN 183.75."""
    drawn = corners()
    for ink in ("band", "edge"):
        (box,) = inked(drawn, "rect", ink)
        assert box.points[0] == near(rod(9.8, 12))
        assert box.size == near((195.56, 183.75))


def test_only_the_corner_that_governs_is_marked_as_a_finding() -> None:
    """At each corner and in the middle a point, with what is used there beside it."""
    drawn = corners()
    used = {(9.8, 10): "0.86", (10, 10): "0.82", (10, 12): "0.99", (9.9, 11): "0.92 middle"}
    plain, (worst,) = inked(drawn, "circle", "point"), inked(drawn, "circle", "point hold")
    assert worst.points[0] == near(rod(9.8, 12))
    assert len(plain) == 4
    assert {one.size for one in plain} == {plain[0].size}
    assert worst.size > plain[0].size
    for place, words in used.items():
        at, (x, y) = rod(*place), said(drawn, words).points[0]
        assert any(one.points[0] == near(at) for one in plain)
        below = (4, 8) if place == (9.9, 11) else (16, 24)  # beside the middle one, below the others
        assert below[0] <= y - at[1] <= below[1], words
        beside = -at[0] + x if place[0] != 10 else at[0] - x
        assert 3 < beside < 12, words
    x, y = said(drawn, "1.03 governs").points[0]
    assert x == worst.points[0][0]
    assert worst.size[1] < worst.points[0][1] - y < 15


def test_the_arrows_go_from_the_middle_to_the_thinnest_rod_and_to_the_greatest_load() -> None:
    """One at a load within the upper half of the box, one at a diameter within its left half."""
    drawn = corners()
    across, up = inked(drawn, "line", "thin")
    (x_0, y_0), (x_1, y_1) = across.points
    assert y_0 == y_1
    assert rod(9.9, 12)[1] + 20 < y_0 < rod(9.9, 11)[1]
    assert x_0 == pytest.approx(rod(9.9, 11)[0], abs=_NEAR)
    assert rod(9.8, 12)[0] + 20 < x_1 < rod(9.85, 12)[0]
    (x_0, y_0), (x_1, y_1) = up.points
    assert x_0 == x_1
    assert rod(9.8, 11)[0] + 10 < x_0 < rod(9.85, 11)[0]
    assert y_0 == pytest.approx(rod(9.9, 11)[1], abs=_NEAR)
    assert across.points[0][1] + 5 < y_1 < rod(9.9, 11)[1] - 20
    tips = inked(drawn, "polygon", "arrow")
    for tip, line in zip(tips, (across, up), strict=True):
        points_the_way(tip, line)


def test_by_hand_how_fast_the_margin_falls_is_written_below() -> None:
    """13.26 and 3.30 MPa, as in the test of their working; below the title of the axis, line by line."""
    drawn = corners()
    lines = (
        "At the corner that governs, the margin falls by",
        "13.3 MPa for each kN more",
        "3.3 MPa for each 0.1 mm less",
    )
    heights = [said(drawn, "diameter, mm").points[0][1], *(said(drawn, one).points[0][1] for one in lines)]
    assert all(15 < low - high < 30 for high, low in pairwise(heights))
    assert said(drawn, lines[0]).ink == "quiet"
    assert said(drawn, lines[1]).points[0][0] == said(drawn, lines[2]).points[0][0]
    title = said(drawn, "Share of 155 MPa that a round rod uses")
    assert 10 < title.points[0][1] < 26


# The load cases


def place_of_numbers(drawn: list[Mark]) -> Callable[[float], float]:
    """Where a length stands, by the numbers of the axis."""
    numbers = {
        float(one.words.replace("−", "-")): one.points[0][0] for one in drawn if one.anchor == "middle"
    }
    low, high = min(numbers), max(numbers)
    slope = (numbers[high] - numbers[low]) / (high - low)
    assert slope > 0
    for number, x in numbers.items():
        assert x == pytest.approx(numbers[low] + (number - low) * slope, abs=2 * _NEAR)
    return lambda length: numbers[low] + (length - low) * slope


def test_each_load_case_has_a_bar_from_its_worst_corner_to_its_best() -> None:
    """In one row with its name and its temperatures; that which governs, cooling, is inked as bad."""
    drawn = marks("load-cases")
    place = place_of_numbers(drawn)
    bars = [one for one in drawn if one.sort == "rect"]
    assert [one.ink for one in bars] == ["bar", "bar", "bar", "bar", "bad"]
    assert bars[-1].points[0][0] == pytest.approx(place(-0.0398), abs=0.5)
    for bar, (case, (liner, block)) in zip(bars, load_cases.TEMPERATURES.items(), strict=True):
        left = load_cases.left_of(case)
        (x, y), (wide, high) = bar.points[0], bar.size
        assert x == pytest.approx(place(left.least), abs=0.1)
        assert x + wide == pytest.approx(place(left.most), abs=0.1)
        name = said(drawn, case)
        degrees = said(drawn, f"{liner[0]}–{liner[1]} °C in {block[0]}–{block[1]} °C")
        assert name.points[0][1] == degrees.points[0][1]
        assert 3 < y - name.points[0][1] < 12
        assert (degrees.ink, degrees.anchor, degrees.points[0][0]) == ("quiet", "end", 404)
        number = f"{left.least:.3f} mm".replace("-", "−") + (", governs" if case == "cooling" else "")
        at = said(drawn, number).points[0]
        assert 3 < at[0] - (x + wide) < 12
        assert y < at[1] < y + high
    assert min(bar.points[0][0] for bar in bars) == 16  # they fill the room left of their figures
    assert max(bar.points[0][0] + bar.size[0] for bar in bars) == pytest.approx(404 - 132, abs=_NEAR)
    tops = [bar.points[0][1] for bar in bars]
    assert all(low - high > 40 for high, low in pairwise(tops))


def test_the_best_corner_leaves_more_than_the_worst_by_what_the_drawings_allow_and_more() -> None:
    """Cold 0.24 to 0.33 mm: 0.09 mm by the limits of the drawings alone."""
    for case in load_cases.TEMPERATURES:
        left = load_cases.left_of(case)
        assert left.most - left.least > 0.09


def test_the_fit_of_the_load_cases_is_named_above_them() -> None:
    drawn = marks("load-cases")
    head = said(drawn, "Liner of 400 mm in its block: interference left")
    under = said(drawn, "cold 0.24 to 0.33 mm; below 0 the liner is loose")
    assert (head.ink, head.points[0], under.ink, under.points[0]) == ("", (16, 20), "quiet", (16, 40))


def test_at_nought_the_liner_is_loose() -> None:
    """The limit stands at 0, a line of the grid at each number, all from above the first row to below the last."""
    drawn = marks("load-cases")
    place = place_of_numbers(drawn)
    (limit,) = inked(drawn, "line", "limit")
    grid = inked(drawn, "line", "grid")
    bars = [one for one in drawn if one.sort == "rect"]
    numbers = sorted(one.points[0] for one in drawn if one.anchor == "middle")
    assert limit.points[0][0] == pytest.approx(place(0), abs=_NEAR)
    assert sorted(one.points[0][0] for one in grid) == [x for x, _ in numbers]
    for line in (limit, *grid):
        (x_0, y_0), (x_1, y_1) = line.points
        assert x_0 == x_1
        assert 40 < y_0 < said(drawn, "starting").points[0][1] - 10
        assert bars[-1].points[0][1] + bars[-1].size[1] < y_1 < numbers[0][1] - 10
        assert numbers[0][1] - y_1 < 20
    unit = said(drawn, "mm left")
    assert (unit.ink, unit.anchor, unit.points[0]) == ("quiet", "end", (404, numbers[0][1]))


def test_the_cases_that_the_rule_does_not_ask_for_stand_below_with_what_they_are_for() -> None:
    drawn = marks("load-cases")
    head = said(drawn, "This rule does not ask for:")
    last = head.points[0][1]
    for case, what in (
        ("cold", "how it is put together"),
        ("warming", "fits at their tightest"),
        ("test", "cold, under pressure"),
        ("water", "load on cover and studs"),
    ):
        name, about = said(drawn, case), said(drawn, what)
        assert name.points[0][1] == about.points[0][1] == last + 20
        assert (name.points[0][0], about.points[0][0]) == (28, 116)
        assert (head.ink, name.ink, about.ink) == ("quiet", "", "quiet")
        last += 20


# What follows from a grade


@pytest.mark.parametrize("number", range(len(grades.ROWS)))
def test_a_grade_is_drawn_from_its_finding_by_its_exit_code_to_the_gate(number: int) -> None:
    """Three boxes in a row whose middles are level; an arrow from each to the next; their words within them."""
    drawn, row = marks("grades"), grades.ROWS[number]
    boxes = [one for one in drawn if one.sort == "rect"]
    finding, code, gate = boxes[3 * number : 3 * number + 3]
    assert (finding.ink, code.ink, gate.ink) == ("metal", "edge", "asked" if row.withholds else "edge")
    middle = finding.points[0][1] + finding.size[1] / 2
    for box in (code, gate):
        assert box.points[0][1] + box.size[1] / 2 == pytest.approx(middle)
    lines, tips = inked(drawn, "line", "thin"), inked(drawn, "polygon", "arrow")
    for at, (start, end) in enumerate(((finding, code), (code, gate)), 2 * number):
        (x_0, y_0), (_, y_1) = lines[at].points
        assert y_0 == y_1 == pytest.approx(middle)
        assert x_0 == pytest.approx(start.points[0][0] + start.size[0])
        assert tips[at].points[0] == near((end.points[0][0], middle))
        points_the_way(tips[at], lines[at])
    words = [one for one in drawn if one.sort == "text"]
    of_finding = [one for one in words if is_within(one, finding)]
    assert [one.words for one in of_finding] == [row.name, *row.says]
    assert [one.ink for one in of_finding] == ["", *("quiet" for _ in row.says)]
    (exit_code,) = [one for one in words if is_within(one, code)]
    assert (exit_code.words, exit_code.anchor) == (str(row.code), "middle")
    assert 3 < exit_code.points[0][1] - middle < 7
    assert exit_code.points[0][0] == pytest.approx(code.points[0][0] + code.size[0] / 2)
    assert [one.words for one in words if is_within(one, gate)] == list(row.gate)


def is_within(one: Mark, box: Mark) -> bool:
    """Whether words start in a box, clear of its edges."""
    (x, y), (left, top) = one.points[0], box.points[0]
    return left + 5 < x < left + box.size[0] and top + 10 < y < top + box.size[1] - 3


def test_the_columns_of_the_grades_are_headed() -> None:
    drawn = marks("grades")
    boxes = [one for one in drawn if one.sort == "rect"][:3]
    for box, words in zip(boxes, ("the check finds", "exit code", "the gate"), strict=True):
        head = said(drawn, words).points[0]
        assert head == (box.points[0][0], 20)
    tops = [one.points[0][1] for one in inked(drawn, "rect", "metal")]
    assert all(low - high == boxes[0].size[1] + 12 for high, low in pairwise(tops))
    second = said(drawn, "of check")
    assert (second.ink, second.points[0]) == ("quiet", (boxes[1].points[0][0], 38))
