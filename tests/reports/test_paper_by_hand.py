"""What is drawn on a paper, mark by mark: lines, dimensions, balloons, hatching, bars of scale, rows of bars.

A letter is 13 high and takes 0.62 × 13 = 8.06 across; an arrow is 7 long.
"""

from __future__ import annotations

from xml.etree import ElementTree

import pytest

from speclint.errors import NOWHERE
from speclint.reports.pack.bars import Bar, chart
from speclint.reports.pack.paper import (
    Paper,
    axis_marks,
    hatching,
    marked,
    niced,
    rounded,
    shortened,
    ticks,
    title_at,
    wide,
)
from speclint.reports.pack.printed import AxisMark, InSpec, Quantity, shown, words
from tests.reports.placed_marks import numbers

LETTER = 8.06


def paper() -> Paper:
    return Paper("a name", "a title", "about it", 400.0, 300.0)


def of(value: float) -> Quantity:
    return Quantity(value, InSpec(NOWHERE, "nominal"))


def drawn(on: Paper) -> ElementTree.Element:
    return ElementTree.fromstring(on.markup())


def marks(on: Paper, tag: str, ink: str | None = None) -> list[ElementTree.Element]:
    found = [one for one in drawn(on).iter() if one.tag.endswith(f"}}{tag}")]
    return [one for one in found if ink is None or one.get("class") == ink]


def lines(on: Paper, ink: str) -> list[list[float]]:
    return [numbers(one, "x1", "y1", "x2", "y2") for one in marks(on, "line", ink)]


def boxes(on: Paper, ink: str) -> list[list[float]]:
    return [numbers(one, "x", "y", "width", "height") for one in marks(on, "rect", ink)]


def points(one: ElementTree.Element) -> list[tuple[float, float]]:
    flat = [float(number) for number in one.get("points", "").replace(",", " ").split()]
    return list(zip(flat[::2], flat[1::2], strict=True))


def texts(on: Paper) -> list[tuple[object, ...]]:
    """Each text with its place, its anchor and its ink."""
    return [
        (one.text, *numbers(one, "x", "y"), one.get("text-anchor"), one.get("class"))
        for one in marks(on, "text")
    ]


def test_lines_boxes_and_circles_stand_where_they_are_put_to_a_hundredth() -> None:
    on = paper()
    on.line((1.234, 2.0), (3.0, 4.567), "thin")
    on.box((1.0, 2.346), 10.0, 20.006, "metal")
    on.circle((5.5, 6.0), 7.126, "live")
    on.shape([(0.0, 1.0), (2.0, 3.0)], "valve")
    on.path([(4.0, 5.0), (6.0, 7.0)], "curve")
    assert lines(on, "thin") == [[1.23, 2, 3, 4.57]]
    assert boxes(on, "metal") == [[1, 2.35, 10, 20.01]]
    assert [numbers(one, "cx", "cy", "r") for one in marks(on, "circle", "live")] == [[5.5, 6, 7.13]]
    assert [points(one) for one in marks(on, "polygon", "valve")] == [[(0, 1), (2, 3)]]
    assert [points(one) for one in marks(on, "polyline", "curve")] == [[(4, 5), (6, 7)]]
    assert rounded([(1.0, 2.349)]) == [(1, 2.35)]
    assert 'x1="1.23" y1="2" x2="3"' in on.markup(), "a whole number has no decimals"


def test_a_paper_says_what_it_is() -> None:
    root = drawn(paper())
    assert (root.get("role"), root.get("viewBox"), root.get("class")) == (
        "img",
        "0 0 400 300",
        "drawing own-400",
    )
    title, about = root[0], root[1]
    assert (title.text, about.text) == ("a title", "about it")
    assert root.get("aria-labelledby") == f"{title.get('id')} {about.get('id')}"


def test_words_have_their_ink_anchor_and_turn_where_these_are_not_the_usual() -> None:
    on = paper()
    on.text((1.0, 2.0), "as all", "figure")
    on.text((1.0, 2.0), "as all", "word", "end")
    on.text((3.0, 4.0), "turned & quiet", "quiet", "middle", turn=-90)
    assert texts(on) == [
        ("as all", 1, 2, None, None),
        ("as all", 1, 2, "end", None),
        ("turned & quiet", 3, 4, "middle", "quiet"),
    ]
    turns = [one.get("transform") for one in marks(on, "text")]
    assert turns[:2] == [None, None]
    assert [float(one) for one in (turns[2] or "")[len("rotate(") : -1].replace(",", " ").split()] == [
        -90,
        3,
        4,
    ]


def test_what_a_test_can_hold_a_drawing_against_is_kept() -> None:
    on = paper()
    length = of(0.02)
    said = words("{} {mm}", shown(length, "mm"))
    on.text((0.0, 0.0), "no number known")
    on.text((0.0, 0.0), said)
    on.count((5.0, 6.0), 3)
    on.named("notch 4", "notch 5")
    on.mark("x", 1500.0, 33.0, (34.0, 35.0), "end")
    on.place(length, "mm", "y", 12.0, -1)
    held = on.held()
    assert held.printed == (said,)
    assert held.counted == ("3", "notch 4", "notch 5")
    assert held.marks == (AxisMark("x", 1500.0, 33.0),)
    ((placed,), scale) = held.placed, held.scale
    assert (placed.quantity, placed.unit, placed.axis, placed.at, placed.sign) == (
        length,
        "mm",
        "y",
        12.0,
        -1,
    )
    assert scale is None
    assert texts(on)[2:] == [("3", 5, 6, "middle", None), ("1500", 34, 35, "end", None)]


def test_a_link_names_what_it_leads_to() -> None:
    on, other = paper(), paper()
    other.box((0.0, 0.0), 1.0, 1.0, "bar")
    on.linked("sheet.a", "to <it>", other.marks)
    root = drawn(on)
    (link,) = [one for one in root.iter() if one.tag.endswith("}a")]
    assert link.get("href") == "#sheet.a"
    assert [one.tag.rpartition("}")[2] for one in link] == ["title", "rect"]
    assert link[0].text == "to <it>"
    assert root.get("role") == "group"


def test_a_dimension_across_has_its_figure_between_where_there_is_room() -> None:
    """20 below: extension lines from 3 below the part to 4 beyond; arrows inwards; two letters and two arrows take
    30.12, so that 30.12 are too little and a little more is enough."""
    on = paper()
    on.across((100.0, 50.0), (200.0, 50.0), "ab", 20.0, of(0.1))
    assert lines(on, "thin") == [[100, 53, 100, 74], [200, 53, 200, 74], [100, 70, 200, 70]]
    assert texts(on) == [("ab", 150, 66, "middle", None)]
    first, last = (points(one) for one in marks(on, "polygon", "arrow"))
    assert first == [(100, 70), (107, 71.75), (107, 68.25)]
    assert last == [(200, 70), (193, 71.75), (193, 68.25)]
    (placed,) = on.held().placed
    assert (placed.axis, placed.unit, placed.at) == ("", "mm", 100.0)
    on = paper()
    on.across((200.0, 50.0), (100.0, 50.0), "ab", -20.0)
    assert lines(on, "thin") == [[200, 47, 200, 26], [100, 47, 100, 26], [200, 30, 100, 30]]
    assert texts(on) == [("ab", 150, 26, "middle", None)]
    assert not on.held().placed


@pytest.mark.parametrize(
    ("more", "x", "anchor"), [(0.0, 2 * LETTER + 14 + 11, None), (0.1, LETTER + 7.05, "middle")]
)
def test_a_figure_that_has_no_room_stands_behind(more: float, x: float, anchor: str | None) -> None:
    """Eleven behind the end that is farther to the right."""
    length = wide("ab") + 14 + more
    for start, end in ((0.0, length), (length, 0.0)):
        on = paper()
        on.across((start, 50.0), (end, 50.0), "ab", 20.0)
        assert texts(on) == [("ab", pytest.approx(x, abs=0.006), 66, anchor, None)]


def test_an_upright_dimension_has_its_figure_to_the_left() -> None:
    on = paper()
    on.upright((100.0, 40.0), (100.0, 140.0), "ab", of(0.1))
    assert texts(on) == [("ab", 94, 94, "end", None)]
    assert lines(on, "thin") == [[100, 40, 100, 140]]
    first, last = (points(one) for one in marks(on, "polygon", "arrow"))
    assert first == [(100, 40), (98.25, 47), (101.75, 47)]
    assert last == [(100, 140), (98.25, 133), (101.75, 133)]
    assert [one.at for one in on.held().placed] == [100.0]


@pytest.mark.parametrize(("length", "tip"), [(17.5, -7.0), (17.6, 7.0)])
def test_arrows_point_inwards_where_there_is_no_room_between(length: float, tip: float) -> None:
    """Two and a half arrows are too little."""
    on = paper()
    on.dimension((100.0, 50.0), (100.0 + length, 50.0))
    first, last = (points(one) for one in marks(on, "polygon", "arrow"))
    assert first[1:] == [(100 + tip, 51.75), (100 + tip, 48.25)]
    assert last[1][0] == pytest.approx(100 + length - tip)


def test_a_dimension_at_a_slant_has_its_arrows_along_it() -> None:
    """Three to four: 7 along are 4.2 and 5.6, a quarter of that to each side 1.4 and 1.05."""
    on = paper()
    on.dimension((0.0, 0.0), (60.0, 80.0))
    first, last = (points(one) for one in marks(on, "polygon", "arrow"))
    assert first == [(0, 0), (2.8, 6.65), (5.6, 4.55)]
    assert last == [(60, 80), (54.4, 75.45), (57.2, 73.35)]
    on = paper()
    on.dimension((5.0, 5.0), (5.0, 5.0))
    assert [points(one) for one in marks(on, "polygon", "arrow")] == [[(5, 5)] * 3] * 2


def test_a_balloon_has_a_line_from_its_edge_to_what_it_is_about() -> None:
    """Ten from the middle along three to four."""
    on = paper()
    on.balloon((100.0, 100.0), (130.0, 140.0), 7)
    assert lines(on, "thin") == [[106, 108, 130, 140]]
    assert [numbers(one, "cx", "cy", "r") for one in marks(on, "circle", "balloon")] == [[100, 100, 10]]
    assert texts(on) == [("7", 100, 104.5, "middle", None)]
    assert on.held().counted == ("7",)
    on = paper()
    on.balloon((100.0, 100.0), (100.0, 100.0), 7)
    assert lines(on, "thin") == [[100, 100, 100, 100]]


def test_a_bar_of_scale_has_five_parts_of_a_round_length() -> None:
    """Of 130 mm 100 are round: 200 units at 2 to the millimetre, 40 each. The first bar tells the scale."""
    on = paper()
    on.scale_bar((10.0, 20.0), 2.0, 130.0)
    boxes = [(*numbers(one, "x", "y", "width", "height"), one.get("class")) for one in marks(on, "rect")]
    inks = ("solid", "blank", "solid", "blank", "solid")
    assert boxes == [(10 + 40 * n, 20, 40, 5, ink) for n, ink in enumerate(inks)]
    assert texts(on) == [("100 mm", 218, 27, None, None)]
    assert on.held().counted == ("100",)
    on.scale_bar((10.0, 40.0), 20.0, 10.0)
    assert on.held().scale == 2.0


# Hatching


def strokes(on: Paper) -> list[tuple[tuple[float, float], tuple[float, float]]]:
    (path,) = marks(on, "path", "hatch")
    flat = [
        float(one)
        for one in (path.get("d") or "").replace("M", " ").replace("L", " ").replace(",", " ").split()
    ]
    ends = list(zip(flat[::2], flat[1::2], strict=True))
    return list(zip(ends[::2], ends[1::2], strict=True))


def test_what_is_too_small_for_a_line_has_none() -> None:
    on = paper()
    hatching(on, (100.0, 50.0), 5.0, 5.0, pitch=10, rising=False)
    assert not marks(on, "path")
    hatching(on, (100.0, 50.0), 5.0, 5.1, pitch=10, rising=False)
    assert len(strokes(on)) == 1


# Numbers of axes


def test_the_room_of_words_and_where_they_are_cut() -> None:
    assert wide("abc") == pytest.approx(3 * LETTER)
    assert wide("abc", 10.0) == pytest.approx(18.6)
    assert shortened("abcd", 4 * LETTER + 0.01) == "abcd"
    assert shortened("abcde", 4 * LETTER + 0.01) == "abc…"
    assert shortened("abcde", 1.0) == "…"


@pytest.mark.parametrize(
    ("low", "high", "wanted", "found"),
    [
        (0.0, 10.0, 5, [0, 2, 4, 6, 8, 10]),
        (0.0, 9.9, 5, [0, 1, 2, 3, 4, 5, 6, 7, 8, 9]),
        (-7.0, 7.0, 5, [-6, -4, -2, 0, 2, 4, 6]),
        (3.0, 13.0, 2, [5, 10]),
        (0.1, 0.3, 2, [0.1, 0.2, 0.3]),
    ],
)
def test_marks_are_round_and_within_the_ends(
    low: float, high: float, wanted: int, found: list[float]
) -> None:
    assert ticks(low, high, wanted) == pytest.approx(found)
    assert axis_marks(low, high, "mm", wanted) == [pytest.approx((one, one)) for one in found]


def test_a_number_of_a_mark_has_a_minus_and_no_dust() -> None:
    assert marked(-0.5) == "−0.5"
    assert marked(0.1 + 0.2) == "0.3"
    assert niced(1.0) == 1.0
    assert niced(9.99) == 5.0
    assert niced(1.99999) == 2.0, "a hair below is the round length itself"


def test_a_title_stands_left_of_the_widest_number_of_its_axis() -> None:
    """Numbers end at 63; four letters take 32.24, and words reach 3.9 below their line. Never nearer than 11.05."""
    assert title_at(24.0, 63.0, (0.0, 1000.0)) == 24.0
    assert title_at(30.0, 63.0, (1000.0, 0.0)) == pytest.approx(63 - 4 * LETTER - 3.9)
    assert title_at(24.0, 40.0, (1000.0,)) == pytest.approx(11.05)
    assert title_at(24.0, 63.0, ()) == 24.0


# Rows of bars


def test_rows_of_bars_stand_on_one_axis() -> None:
    """Labels take 280 and 16; words of two letters 16.12 and 14, and 16: 557.88 are left of 900 for −10 to 30."""
    unit = (900 - 280 - 2 * LETTER - 14 - 32) / 40
    zero = 296 + 10 * unit
    rows = [
        Bar("first", 0.0, 30.0, "ab"),
        Bar("second", 5.0, -10.0, "c", "bad", marks=((20.0, "limit"),), of=((of(0.01), "mm", -1),)),
    ]
    on = chart("a", "a", "a", rows, "length, {mm}")
    assert (on.width, on.height) == (900, 16 + 60 + 44)
    assert boxes(on, "bar") == [pytest.approx([zero, 23, 30 * unit, 16], abs=0.02)]
    assert boxes(on, "bad") == [pytest.approx([296, 53, 15 * unit, 16], abs=0.02)]
    assert lines(on, "limit") == [pytest.approx([zero + 20 * unit, 49, zero + 20 * unit, 73], abs=0.02)]
    assert lines(on, "edge") == [pytest.approx([zero, 16, zero, 82], abs=0.02)]
    axis = [296 + n * 5 * unit for n in range(9)]
    assert lines(on, "grid") == [pytest.approx([x, 16, x, 82], abs=0.02) for x in axis]
    said = {one[0]: one[1:] for one in texts(on)}
    assert said["first"] == (280, pytest.approx(31 + 13 / 3, abs=0.02), "end", None)
    assert said["ab"][:2] == pytest.approx((zero + 30 * unit + 8, 31 + 13 / 3), abs=0.02)
    assert said["c"][:2] == pytest.approx((zero + 20 * unit + 8, 61 + 13 / 3), abs=0.02), (
        "behind the last mark"
    )
    assert said["length, mm"][:3] == (pytest.approx(296 + 20 * unit, abs=0.02), 114, "middle")
    assert said["−10"][:2] == pytest.approx((296, 98), abs=0.02)
    (placed,) = on.held().placed
    assert (placed.axis, placed.at, placed.sign) == ("x", pytest.approx(296), -1)


def test_words_of_a_bar_below_zero_stand_behind_the_line_at_zero() -> None:
    """Nothing is wider than 14 and no number is above zero: the axis goes from −20 to 0."""
    on = chart("a", "a", "a", [Bar("a", -20.0, -10.0)], "{mm}", labels=100.0, above=30.0)
    room = 900 - 100 - 14 - 32
    assert on.height == 16 + 30 + 30 + 44
    assert boxes(on, "bar") == [pytest.approx([116, 53, room / 2, 16], abs=0.02)]
    (zero,) = lines(on, "edge")
    assert zero == pytest.approx([116 + room, 46, 116 + room, 82], abs=0.02)
    on = chart("a", "a", "a", [Bar("a", -20.0, -10.0, "c")], "{mm}", labels=100.0)
    (said,) = (one for one in texts(on) if one[0] == "c")
    assert said[1] == pytest.approx(116 + room - LETTER + 8, abs=0.02)


def test_an_axis_of_nothing_goes_to_one() -> None:
    on = chart("a", "a", "a", [Bar("a", 0.0, 0.0)], "{mm}")
    assert [mark.value for mark in on.held().marks] == pytest.approx([0, 0.2, 0.4, 0.6, 0.8, 1])
    assert chart("a", "a", "a", [], "{mm}").height == 16 + 44


@pytest.mark.parametrize(("labels", "marks_drawn"), [(434.0, 4), (433.0, 8)])
def test_a_narrow_axis_has_fewer_figures(labels: float, marks_drawn: int) -> None:
    """0 to 1.5 by 0.2, or by 0.5 where no more than 420 are left of 900 beside the labels and 46."""
    on = chart("a", "a", "a", [Bar("a", 0.0, 1.5)], "{mm}", labels=labels)
    assert len(on.held().marks) == marks_drawn


@pytest.mark.parametrize(
    ("start", "end", "left"), [(10.0, 10.001, -1.5), (10.0, 10.0, -1.5), (10.001, 10.0, 0.0)]
)
def test_a_bar_is_never_thinner_than_can_be_seen(start: float, end: float, left: float) -> None:
    """1.5 wide: its end stays where the value is, and what is added lies behind it."""
    whole = Bar("whole", 0.0, 100.0, ink="other")
    on = chart("a", "a", "a", [whole, Bar("a", start, end)], "{mm}")
    room = 900 - 280 - 14 - 32
    assert boxes(on, "bar") == [pytest.approx([296 + room * end / 100 + left, 53, 1.5, 16], abs=0.01)]


def test_a_bar_that_leads_to_its_sheet_is_a_link() -> None:
    on = chart("a", "a", "a", [Bar("a", 0.0, 1.0, "so", target="sheet.a")], "{mm}")
    (link,) = marks(on, "a")
    assert link.get("href") == "#sheet.a"
    assert link[0].text == "a: so"
    assert len(boxes(on, "bar")) == 1


def test_a_long_label_is_cut_to_its_room() -> None:
    """6 less than the 100 that labels have hold 11 letters."""
    on = chart("a", "a", "a", [Bar("a label that is long", 0.0, 1.0)], "{mm}", labels=100.0)
    assert "a label th…" in [one[0] for one in texts(on)]
