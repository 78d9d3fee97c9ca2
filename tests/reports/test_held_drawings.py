"""Every number on every drawing of the pack is that of a sheet or a spec, and stands where the axis has it."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

import pytest

from speclint.checking import Check
from speclint.reports.pack.figures import Figure
from speclint.reports.pack.paper import Paper
from speclint.reports.pack.printed import Held, Quantity, judged, shown, words
from tests.example import of_one_cylinder
from tests.reports.held_drawings import Holder


def test_every_number_and_every_place_is_that_of_a_sheet_or_a_spec() -> None:
    holder, wrong = Holder(of_one_cylinder()), []
    for _, maker in of_one_cylinder().loaded.drawings:
        wrong += [one for figure in maker.make(of_one_cylinder()) for one in holder.wrong(figure)]
    assert wrong == []


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
    at = 200.0 + 100.0 * found.in_unit("mm")
    paper.place(found, "mm", "x", at)
    paper.line((at, 0.0), (at, 80.0))
    paper.text((10.0, 10.0), text or words("{} mm left", shown(found, "mm", 3)))
    change(paper)
    return Figure.of(paper, "", "h", "s")


def wrong_of(figure: Figure) -> list[str]:
    return Holder(of_one_cylinder()).wrong(figure)


def test_a_drawing_that_says_what_its_sheet_says_is_in_order() -> None:
    assert wrong_of(drawn()) == []


def test_a_number_that_is_no_quantity_is_told() -> None:
    assert any("no quantity" in one for one in wrong_of(drawn(text="0.175 mm left")))


def test_a_number_other_than_the_sheet_has_is_told() -> None:
    off = words("{} mm left", replace(shown(quantity(), "mm", 3), text="−0.170"))
    assert any("−0.170" in one for one in wrong_of(drawn(text=off)))


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
        paper.marks = [one for one in paper.marks if type(one).__name__ != "Line"]

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
