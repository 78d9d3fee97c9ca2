"""Fits and chains of dimensions as drawn: cold and hot, and from the least gap to the greatest."""

from __future__ import annotations

from collections.abc import Iterator

import pytest

from speclint.reports.pack.figures import Figure
from speclint.reports.pack.fit_charts import fit_figures
from speclint.testing import DesignFolder
from tests.example import of_one_cylinder
from tests.reports.figure_marks import inked, number, size_of, size_of_row
from tests.reports.held_drawings import all_figures


def fits() -> Iterator[Figure]:
    yield from fit_figures(of_one_cylinder())


def test_every_fit_is_drawn_cold_and_hot_whatever_its_kind() -> None:
    """Ø 36 H7 (0 to +25) with m6 (+9 to +25): clearance 25 − 9 = 16 to interference 25 µm."""
    found = {figure.component: figure for figure in fits() if figure.name.startswith("fit-")}
    bolts = found["fit-bolts-left-back"]
    assert size_of(bolts, "between them, cold") == "clearance 16 to interference 25 µm"
    assert "transition" in bolts.heading
    guide = found["spindle-inlet-left-front"]
    assert size_of(guide, "between them, cold").startswith("clearance")
    assert size_of(found["fit-saddle-cambox-left-front"], "between them, cold").startswith("clearance 600 to")
    for name in (
        "seat-inlet-left-front-upper",
        "fit-seat-inlet-left-front-upper",
        guide.component,
    ):
        assert [row for row in found[name].rows if row[0].startswith("on the sheet, ")], name
    hot = [row for row in found["liner-left"].rows if row[0].startswith("on the sheet, ")]
    assert len(hot) == 1, "a wall that is worked from the same sizes is no fit"


def test_a_hot_clearance_lies_to_the_left_of_nothing_and_an_interference_to_the_right() -> None:
    found = {figure.component: figure for figure in fits() if figure.name.startswith("fit-")}
    for name, says in (
        ("spindle-inlet-left-front", "clearance"),
        ("seat-inlet-left-front-upper", "interference"),
    ):
        figure = found[name]
        (row,) = (one for one in figure.rows if one[0].startswith("on the sheet, "))
        assert row[1].startswith(says)
        (zero,) = (number(one, "x1") for one in inked(figure, "line", "edge"))
        between, bar = inked(figure, "rect", "hot")  # of the zones, and of the sheet
        for one in (between, bar):
            middle = number(one, "x") + number(one, "width") / 2
            assert (middle < zero) is (says == "clearance")


def test_a_saddle_is_as_much_wider_hot_as_its_sheet_has_it() -> None:
    """Saddle 701 ± 0.2 mm at 60 °C by 10.47e-6: at its least 700.8 (1 + 40 α) = 701.0934; barrel 700 ± 0.2 mm at
    270 °C by 13.42e-6: at its greatest 700.2 (1 + 250 α) = 702.5492: 1.456 mm of interference, whatever gap is judged.
    """
    figure = {one.component: one for one in fits()}["fit-saddle-cambox-left-front"]
    assert size_of(figure, "on the sheet, fit.curved-seat") == "interference 1456 µm"
    assert size_of(figure, "between them, running") == "interference 656 to 1456 µm"
    assert size_of(figure, "hole at 60 °C") == "+93 to +493 µm"  # 0.0934 mm of growth


def test_a_fit_hot_has_the_zone_of_each_part_at_its_temperature() -> None:
    """Block Ø 578.07 by 12.76e-6 × 140 K: 1033 µm; liner by 10.87e-6 × 100 K: 628 µm over its +310 to +354."""
    figure = {one.component: one for one in fits() if one.name.startswith("fit-")}["liner-left"]
    assert size_of(figure, "hole at 160 °C") == "+1033 to +1103 µm"
    assert size_of(figure, "shaft at 120 °C") == "+938 to +982 µm"
    assert len(inked(figure, "rect", "hole")) == len(inked(figure, "rect", "shaft")) == 2


def test_the_interference_over_the_temperature_ends_where_the_sheet_has_it() -> None:
    """230 µm cold and −175 µm at 160 °C: nothing left at 20 + 140 × 229.9/(229.9 + 174.6) = 99.6 °C."""
    figure = all_figures()["warmed-liner-left"]
    assert size_of(figure, "none is left with the outer part at") == "100 °C"
    assert len(inked(figure, "circle", "point")) == 3
    assert len(inked(figure, "line", "limit")) == len(inked(figure, "polygon", "band")) == 1
    assert "none is left with the outer part at" not in [
        row[0] for row in all_figures()["warmed-seat-inlet-left-back-lower"].rows
    ]


def test_a_fit_that_no_check_works_hot_says_so(workshop: DesignFolder) -> None:
    spindle = 'kind = "valve-spindle"\nid = "spindle"\nguide_bore = "22.08 mm"\ndiameter = "22 mm"\n'
    (figure,) = fit_figures(workshop.write({"spindle.toml": spindle}).assess())
    assert "No check of this part calculates the fit hot" in figure.says


def test_the_gap_of_a_chain_has_a_scale_of_its_own() -> None:
    """Cut-out 220 +0.02/0 less pad 220 +0.045/+0.032: −0.045 to −0.012 mm. Links to 220 mm, gap to some 0.06 mm.

    Hot, the sheet judges the gap at the least or the greatest; the mark of a finding is red.
    """
    figure = all_figures()["chain-chain-back-pad-left"]
    assert size_of_row(figure, "gap, cold") == ("−0.045 to −0.012 mm", "0.033 mm")
    places = {mark.axis: [] for mark in figure.held.marks}  # type: dict[str, list[tuple[float, float]]]
    for mark in figure.held.marks:
        places[mark.axis].append((mark.value, mark.at))
    scales = {
        axis: (max(marks)[1] - min(marks)[1]) / (max(marks)[0] - min(marks)[0])
        for axis, marks in places.items()
    }
    assert scales["x gap"] > 1000 * scales["x links"]
    assert len(inked(figure, "rect", "metal")) == len(inked(figure, "path", "hatch")) == 1
    assert len(inked(figure, "rect", "bad")) == 1, "hot, as its sheet finds it"
    (hot,) = (
        one
        for one in of_one_cylinder().checks
        if one.order == ("chain-back-pad-left", "chain.worst-case-hot")
    )
    assert hot.outcome == "finding"
    assert len(inked(figure, "line", "limit")) == 3  # least and greatest cold, greatest hot


def test_what_moves_a_gap_stands_end_to_end_from_its_least_to_its_greatest() -> None:
    """0.020 mm of the cut-out and 0.013 mm of the pad are the whole 0.033 mm."""
    figure = all_figures()["chain-chain-back-pad-left"]
    (band,) = inked(figure, "rect", "metal")
    by = [
        one
        for one in (*inked(figure, "rect", "shaft"), *inked(figure, "rect", "hole"))
        if number(one, "height") == 10
    ]
    start, end = number(band, "x"), number(band, "x") + number(band, "width")
    assert min(number(one, "x") for one in by) == pytest.approx(start, abs=0.02)
    assert sum(number(one, "width") for one in by) == pytest.approx(end - start, abs=0.05)
