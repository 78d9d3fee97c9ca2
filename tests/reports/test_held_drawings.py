"""Every number on every drawing of the pack is that of a sheet or a spec, and stands where the axis has it."""

from __future__ import annotations

from collections.abc import Callable
from functools import cache
from xml.etree import ElementTree

import pytest

from speclint.checking import Check
from speclint.errors import replace
from speclint.quantities import System
from speclint.reports.pack.drawn_units import drawn_in, drawn_number
from speclint.reports.pack.figures import Figure
from speclint.reports.pack.paper import Paper
from speclint.reports.pack.printed import Held, Quantity, judged, shown, words
from tests.example import of_one_cylinder
from tests.reports.held_drawings import (
    METRIC,
    Holder,
    all_figures,
    cells_of,
    units_in,
    without_quotes,
)


def marks_of(figure: Figure) -> list[ElementTree.Element]:
    return list(ElementTree.fromstring(figure.drawing).iter())


def said_by(figure: Figure) -> list[str]:
    """All words of a figure: on the drawing, of its links, for a screen reader, in the table and round it."""
    tags = ("}text", "}title", "}desc")
    drawn = ["".join(one.itertext()) for one in marks_of(figure) if one.tag.endswith(tags)]
    return [*drawn, figure.heading, figure.says, *figure.columns, *cells_of(figure)]


def shapes_of(figure: Figure) -> list[dict[str, str]]:
    """What is drawn of parts and curves: no words, and neither the lines of axes nor the boxes of a scale bar."""
    tags = ("}rect", "}circle", "}polygon", "}polyline", "}path")
    shapes = [dict(one.items()) for one in marks_of(figure) if one.tag.endswith(tags)]
    return [one for one in shapes if one.get("class") not in ("solid", "blank", "arrow")]


def cut_off(figure: Figure) -> list[str]:
    """Words that may reach beyond the paper; turned ones are told by their length down it."""
    root = ElementTree.fromstring(figure.drawing)
    left, top, wide, tall = map(float, (root.get("viewBox") or "").split())
    found = []
    for one in (one for one in root.iter() if one.tag.endswith("}text")):
        says = "".join(one.itertext())
        turned, length = one.get("transform") is not None, 7.0 * len(says)
        at, low, room = (
            (float(one.get("y", "")), top, tall) if turned else (float(one.get("x", "")), left, wide)
        )
        start = at - {"start": 0.0, "middle": length / 2, "end": length}[one.get("text-anchor", "start")]
        if start < low - 2 or start + length > low + room + 2:
            found.append(says)
    return found


@cache
def holder() -> Holder:
    return Holder(of_one_cylinder())


@pytest.mark.parametrize("system", ["as written", "imperial"])
def test_every_number_and_every_place_is_that_of_a_sheet_or_a_spec(system: System) -> None:
    figures = all_figures(system).values()
    assert [one for figure in figures for one in holder().wrong(figure)] == []


def test_drawings_of_a_metric_design_are_the_same_as_written_and_in_metric() -> None:
    metric = {name: (one.drawing, said_by(one)) for name, one in all_figures("metric").items()}
    assert metric == {name: (one.drawing, said_by(one)) for name, one in all_figures().items()}


def test_inch_pound_drawings_name_no_metric_unit_but_in_what_specs_state() -> None:
    left = {
        (figure.name, text)
        for figure in all_figures("imperial").values()
        for text in said_by(figure)
        if units_in(without_quotes(text, figure)) & METRIC
    }
    assert left == set()


def test_inch_pound_drawings_to_scale_are_laid_out_as_the_metric_ones() -> None:
    """The same parts in the same places: only numbers, words and scale bars differ. Axes leave room for their words."""
    every = all_figures().items()
    to_scale = {name: one for name, one in every if one.held.scale is not None and not one.held.marks}
    assert len(to_scale) > 25
    for name, one in to_scale.items():
        other = all_figures("imperial")[name]
        assert shapes_of(one) == shapes_of(other), name
        assert one.held.scale == other.held.scale, name
        assert one.drawing != other.drawing, name


#: The metric units of the axes on which no quantity is placed that could show them to be false, by sort of figure.
_AXES = {
    ("chain", "x links"): "mm",
    ("efforts", "x70 20"): "km/h",
    ("efforts", "x70 340"): "km/h",
    ("efforts", "y70 20"): "kN",
    ("efforts", "y70 340"): "kg/kWh",
    ("following", "x70 406"): "°",
    ("indicator", "x70 26"): "",
    ("indicator", "y70 26"): "bar",
    ("moment", "x70 20"): "°",
    ("valves", "x70 208"): "°",
    ("valves", "y70 208"): "cm²",
    ("valves", "y70 24"): "mm",
}


def test_axes_of_curves_alone_stand_where_the_metric_ones_do() -> None:
    seen = set()
    for figure in all_figures("imperial").values():
        placed = {one.axis for one in figure.held.placed}
        for mark in (one for one in figure.held.marks if one.axis not in placed):
            key = figure.name.partition("-")[0], mark.axis
            seen.add(key)
            (low, at_low), *_, (high, at_high) = sorted(
                (one.value, one.at) for one in all_figures()[figure.name].held.marks if one.axis == mark.axis
            )
            metric = low + (mark.at - at_low) / (at_high - at_low) * (high - low)
            with drawn_in("imperial"):
                meant, *ends = (drawn_number(one, _AXES[key]) for one in (metric, low, high))
            assert mark.value == pytest.approx(meant, abs=1e-3 * (ends[1] - ends[0])), (
                key
            )  # a third of a unit of paper
    assert seen == set(_AXES)


def test_longer_words_are_cut_nowhere() -> None:
    """By the widest letter of usual faces, 7 units of a line of 13: no more words reach beyond a paper than metric."""
    metric, imperial = all_figures(), all_figures("imperial")
    found = {name: (cut_off(imperial[name]), cut_off(one)) for name, one in metric.items()}
    assert {name: cut for name, (cut, usual) in found.items() if len(cut) > len(usual)} == {}


@pytest.mark.parametrize(
    ("name", "tag", "ink"),
    [
        ("utilisations", "g", "point"),
        ("fit-liner-left", "rect", "hole"),
        ("fit-liner-left", "rect", "bad"),
        ("warmed-liner-left", "circle", "point"),
        ("asked-valve-exhaust-left-back", "line", "limit"),
        ("drawing-rod-left", "rect", "bad"),
        ("drawing-rod-left", "rect", "bar"),
        ("path-passage-pocket-left-front", "rect", "bar"),
        ("chain-chain-crosshead-left", "rect", "hot"),
        ("drawing-lagging-cover-back-left", "line", "limit"),
        ("endurance-spring-inlet-left-back", "circle", "point"),
        ("slow-speeds", "line", "grid"),
    ],
)
def test_a_shape_that_is_dropped_from_a_real_drawing_is_told(name: str, tag: str, ink: str) -> None:
    root = ElementTree.fromstring(all_figures()[name].drawing)
    parents = {child: parent for parent in root.iter() for child in parent}
    dropped = [
        one for one in root.iter() if one.tag.endswith(tag) and ink in (one.get("class") or "").split()
    ]
    assert dropped
    for one in dropped:
        parents[one].remove(one)
    assert wrong_of(replace(all_figures()[name], drawing=ElementTree.tostring(root, encoding="unicode")))


@pytest.mark.parametrize(
    "name", ["fit-liner-left", "slow-speeds", "drawing-rod-left", "path-passage-pocket-left-front"]
)
def test_bars_of_another_scale_than_their_axis_are_told(name: str) -> None:
    root = ElementTree.fromstring(all_figures()[name].drawing)
    for one in root.iter():
        if one.tag.endswith("}rect"):
            for key in ("x", "y", "width", "height"):
                one.set(key, str(float(one.get(key, "0")) * 1.05))
    assert wrong_of(replace(all_figures()[name], drawing=ElementTree.tostring(root, encoding="unicode")))


def test_a_section_of_another_scale_than_its_bar_is_told() -> None:
    figure = all_figures()["drawing-cover-back-left"]
    assert figure.held.scale
    assert wrong_of(replace(figure, held=replace(figure.held, scale=figure.held.scale * 1.02)))


def checked() -> Check:
    return next(one for one in of_one_cylinder().checks if one.rule.name == "liner.fit-hot" and judged(one))


def quantity() -> Quantity:
    held = judged(checked())
    assert held is not None
    return held[0]


def drawn(change: Callable[[Paper], None] = lambda _: None, text: str = "") -> Figure:
    """An axis of millimetres from 100 to 300 units with the found value as a line, and its number."""
    found = quantity()
    paper = Paper("held", "t", "a", 400.0, 100.0)
    for value in (-1.0, 0.0, 1.0):
        paper.mark("x", value, 200.0 + 100.0 * value, (200.0 + 100.0 * value, 90.0))
        paper.line((200.0 + 100.0 * value, 80.0), (200.0 + 100.0 * value, 85.0), "grid")
    at = 200.0 + 100.0 * found.in_unit("mm")
    paper.place(found, "mm", "x", at)
    paper.line((at, 0.0), (at, 80.0))
    paper.text((10.0, 10.0), text or words("{} mm left", shown(found, "mm", 3)))
    change(paper)
    return Figure.of(paper, "", "h", "s")


def wrong_of(figure: Figure) -> list[str]:
    return holder().wrong(figure)


def test_a_drawing_that_says_what_its_sheet_says_is_in_order() -> None:
    assert wrong_of(drawn()) == []


def test_a_number_that_is_no_quantity_is_told() -> None:
    assert any("no quantity" in one for one in wrong_of(drawn(text="0.175 mm left")))


def test_a_number_other_than_the_sheet_has_is_told() -> None:
    off = words("{} mm left", replace(shown(quantity(), "mm", 3), text="−0.170"))
    assert any("−0.170" in one for one in wrong_of(drawn(text=off)))


def test_a_unit_in_which_no_number_of_the_line_is_is_told() -> None:
    millimetres = shown(quantity(), "mm", 3)
    assert any("no number in MPa" in one for one in wrong_of(drawn(text=words("{} {MPa} left", millimetres))))
    with drawn_in("imperial"):
        off = words("{} mm left", shown(quantity(), "mm", 3))
    assert any("no number in mm" in one for one in wrong_of(drawn(text=off)))


def test_a_mark_of_millimetres_on_an_axis_of_inches_is_told() -> None:
    with drawn_in("imperial"):
        figure = drawn()
    assert any("stands at" in one for one in wrong_of(figure))


def test_a_quantity_that_the_sheet_has_otherwise_is_told() -> None:
    moved = replace(quantity(), value=quantity().value * 1.01)
    assert any("not" in one for one in wrong_of(drawn(text=words("{} mm", shown(moved, "mm", 6)))))


@pytest.mark.parametrize("by", [-1.0, 1.0])
def test_a_mark_that_stands_elsewhere_is_told(by: float) -> None:
    def moved(paper: Paper) -> None:
        paper.place(quantity(), "mm", "x", 200.0 + 100.0 * quantity().in_unit("mm") + by)

    assert any("stands at" in one for one in wrong_of(drawn(moved)))


def test_a_shape_that_is_left_out_is_told() -> None:
    def dropped(paper: Paper) -> None:
        paper.marks = [one for one in paper.marks if "edge" not in (one.class_ or ())]  # type: ignore[attr-defined]

    assert any("nothing is drawn" in one for one in wrong_of(drawn(dropped)))


def test_an_axis_whose_marks_are_uneven_is_told() -> None:
    def uneven(paper: Paper) -> None:
        paper.mark("x", 0.5, 240.0, (240.0, 90.0))

    assert any("stands elsewhere" in one for one in wrong_of(drawn(uneven)))


def test_a_dimension_that_is_not_to_scale_is_told() -> None:
    check = next(
        one for one in of_one_cylinder().checks if one.rule.name == "cover.thickness" and judged(one)
    )
    held = judged(check)
    assert held is not None

    def sized(paper: Paper, scale: float) -> None:
        paper.scale_bar((0.0, 50.0), 0.5, 100.0)
        paper.dimension((0.0, 20.0), (held[0].in_unit("mm") * scale, 20.0), held[0])

    assert wrong_of(drawn(lambda paper: sized(paper, 0.5))) == []
    assert any("mm long" in one for one in wrong_of(drawn(lambda paper: sized(paper, 0.6))))


def test_a_figure_made_without_a_paper_holds_nothing() -> None:
    assert Figure("n", "c", "h", "s", "<svg/>").held == Held()
