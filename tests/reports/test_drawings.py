"""The drawings of the pack: each sort is made, in known inks, and laggings, pipes and rods show what sheets work."""

from __future__ import annotations

import itertools
from xml.etree import ElementTree

import pytest

from speclint.reports.pack.plot import Plot
from tests.reports.figure_marks import inked, number, texts
from tests.reports.held_drawings import all_figures


@pytest.mark.parametrize(
    "name",
    [
        "utilisations",
        "speeds",
        "drawing-liner-left",
        "chambers-block-left",
        "fit-liner-left",
        "fit-spindle-inlet-left-front",
        "fit-fit-bolts-left-back",
        "drawing-studs-front-left",
        "path-passage-pocket-left-front",
        "drawing-valve-inlet-left-front",
        "load-valve-inlet-left-front",
        "asked-valve-inlet-left-front",
        "chain-chain-front-pad-left",
    ],
)
def test_each_sort_of_drawing_is_made_and_is_well_formed(name: str) -> None:
    figure = all_figures()[name]
    root = ElementTree.fromstring(figure.drawing)
    assert root.get("role") in ("img", "group")
    assert figure.heading
    assert figure.says


def test_every_ink_is_known_to_the_style_sheet() -> None:
    from speclint.reports.pack.templating import file_text

    style = file_text("drawings.css")
    inks = set()
    for figure in all_figures().values():
        for mark in ElementTree.fromstring(figure.drawing).iter():
            inks.update((mark.get("class") or "").split())
    inks -= {"drawing", "word", "figure", "edge"}
    inks = {
        ink for ink in inks if not ink.startswith("own-")
    }  # the width of one drawing; the page adds its rule
    assert "metal" in inks
    for ink in inks:
        assert f".{ink} " in style or f".{ink}," in style or f".{ink}.hold" in style, ink


def test_a_line_of_a_plot_breaks_off_where_there_is_no_value() -> None:
    plot = Plot("plot", "t", "a", (0.0, 10.0), (0.0, 100.0), ("x", "y"))
    plot.line([(0.0, 1.0), (1.0, 2.0), (2.0, None), (3.0, 4.0), (4.0, 5.0)], "curve")
    markup = plot.paper.markup()
    assert markup.count("<polyline") == 2
    low, high = plot.place(0.0, 0.0), plot.place(10.0, 100.0)
    middle = plot.place(5.0, 50.0)
    assert middle == (pytest.approx((low[0] + high[0]) / 2), pytest.approx((low[1] + high[1]) / 2))


def test_lagging_is_drawn_with_the_temperatures_through_it() -> None:
    """Flat lagging: a straight line from 260 °C of the metal to the surface; beside the drain cock 82.8 °C, too hot."""
    figure = all_figures()["drawing-lagging-cover-back-left"]
    assert {"260 °C", "surface 82.8 °C", "at most 60 °C", "air 35 °C", "30 mm"} <= set(texts(figure))
    assert len(inked(figure, "circle", "bad")) == len(inked(figure, "line", "limit")) == 1
    assert len(inked(figure, "path", "hatch")) == 1
    (line,) = inked(figure, "polyline", "edge")
    points = [tuple(map(float, pair.split(","))) for pair in (line.get("points") or "").split()][1:18]
    slopes = {round((b[1] - a[1]) / (b[0] - a[0]), 2) for a, b in itertools.pairwise(points)}
    assert len(slopes) == 1
    (line,) = inked(all_figures()["drawing-lagging-pipe-live-left"], "polyline", "edge")
    points = [tuple(map(float, pair.split(","))) for pair in (line.get("points") or "").split()][1:18]
    assert points[8][1] > (points[0][1] + points[16][1]) / 2, "round: it falls faster at the metal"


def test_the_wall_of_a_pipe_is_drawn_at_each_critical_place() -> None:
    """5.6 mm less 12.5 % is 4.9 mm; less 15 % on the outside of a bend 4.165 mm; needed 2.89, 2.74, 3.16 mm."""
    figure = all_figures()["drawing-pipe-live-left"]
    assert [row[1] for row in figure.rows[2:]] == [
        "5.6 mm",
        "4.90 mm, needs 2.89 mm",
        "4.16 mm, needs 2.74 mm",
        "4.90 mm, needs 3.16 mm",
    ]
    assert len(inked(figure, "polygon", "metal")) == 2, "the two walls of a bend"
    assert len(inked(figure, "circle", "balloon")) == 3
    assert len(inked(figure, "line", "limit")) == 3


def test_a_rod_is_drawn_with_the_stress_at_each_section() -> None:
    """Thread at the piston 93.5 MPa, above the 80 that are allowed; plain 65.2 pulled; flange 68.2 and 73.8 pushed."""
    figure = all_figures()["drawing-rod-left"]
    assert {"93.5", "65.2", "68.2", "73.8"} <= set(texts(figure))
    assert len(inked(figure, "rect", "bad")) == len(inked(figure, "line", "limit")) == 1
    assert len(inked(figure, "rect", "bar")) == len(inked(figure, "rect", "hole")) == 2
    assert len(inked(figure, "rect", "metal")) == len(inked(figure, "path", "hatch")) == 2


def test_what_a_shoulder_of_a_rod_runs_up_to_stands_beyond_its_section() -> None:
    """Towards the end of the rod on which the section lies, and touching it: the piston to the left, the crosshead to
    the right."""
    figure = all_figures()["drawing-rod-left"]
    sections = sorted((number(one, "x"), number(one, "width")) for one in inked(figure, "rect", "metal"))
    plain, *larger = sorted(inked(figure, "rect", "stud"), key=lambda one: -number(one, "width"))
    middle = number(plain, "x") + number(plain, "width") / 2
    assert larger
    for one in larger:
        x, wide = number(one, "x"), number(one, "width")
        if x > middle:
            assert any(x == pytest.approx(at + long) for at, long in sections)
        else:
            assert any(x + wide == pytest.approx(at) for at, _ in sections)
