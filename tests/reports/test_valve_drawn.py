"""Valves and springs as drawn: the valve in its metal, and the loads of its springs as their sheets judge them."""

from __future__ import annotations

from xml.etree import ElementTree

import pytest

from speclint.reports.pack.curves import alike, courses_of
from speclint.reports.pack.figures import Figure
from speclint.reports.pack.printed import OnSheet, Worked
from speclint.reports.pack.spring_charts import spring_figures
from speclint.reports.pack.valve_drawing import valve_figures
from speclint.testing import DesignFolder
from tests.example import of_one_cylinder
from tests.plugins.valves.gear import train_files
from tests.reports.figure_marks import inked, number, scale_of, size_of, texts
from tests.reports.held_drawings import all_figures


def test_a_valve_with_its_wall_is_drawn_in_section_and_without_it_in_outline(workshop: DesignFolder) -> None:
    """Lift 20 mm, beats 110 mm apart, seats 150 and 140 mm: the heights of the dimensions give the scale."""
    (plain,) = valve_figures(workshop.write(train_files()).assess())
    assert "No spec states the wall" in plain.says
    assert not inked(plain, "polygon", "valve")
    stated = (("beats = 2", 'beats = 2\nwall = "6 mm"'),)
    (figure,) = valve_figures(workshop.write(train_files(valve=stated)).assess())
    (shell,) = inked(figure, "polygon", "valve")
    points = [tuple(map(float, pair.split(","))) for pair in (shell.get("points") or "").split()]
    tall = max(y for _, y in points) - min(y for _, y in points)
    scale = scale_of(figure, "50")
    assert tall == pytest.approx((110 + 6) * scale, abs=0.2)  # flat seats: the rim is the wall thick
    inside = min(x for x, _ in points)
    assert inside == pytest.approx(100 + (70 - 6) * scale, abs=0.2)  # the axis stands at 100
    assert "No spec" not in figure.says
    assert {"20 lift", "110"} <= set(texts(figure))


def value_at(figure: Figure, height: float) -> float:
    """What a height means by two figures of the axis of loads."""
    root = ElementTree.fromstring(figure.drawing)
    marks = {
        float((one.text or "").replace("−", "-")): float(one.get("y", "nan")) - 4
        for one in root.iter()
        if one.tag.endswith("}text") and one.get("text-anchor") == "end" and (one.text or "").isdecimal()
    }
    (low, at_low), (high, at_high) = min(marks.items()), max(marks.items())
    return low + (height - at_low) / (at_high - at_low) * (high - low)


def test_what_is_asked_of_a_spring_is_drawn_over_the_lift_as_its_sheet_judges_it() -> None:
    """Load there F = 843 N below the 895 N to be held, not the 810 N of the springs and the 862 N asked of them."""
    figure = all_figures()["load-valve-exhaust-left-back"]
    (found,) = (
        one for one in courses_of(of_one_cylinder().checks) if one.check.component == figure.component
    )
    worked = {step.symbol: step.value for step in found.check.steps if step.kind == "worked"}
    assert found.check.outcome == "finding"
    drawn_points = inked(figure, "circle", "bad")
    heights = sorted(value_at(figure, number(one, "cy")) for one in drawn_points)
    assert heights == pytest.approx(sorted([worked["F"], worked["F_n"]]), rel=5e-3)
    assert {"843 N", "895 N"} <= set(texts(figure))
    (curve,) = (one for one in inked(figure, "polyline", "asked"))
    highest = min(float(pair.split(",")[1]) for pair in (curve.get("points") or "").split())
    most = max(value for _, value in found.curves[1] if value is not None)
    assert value_at(figure, highest) == pytest.approx(most, rel=5e-3)
    assert size_of(figure, "judged") == "843.0 N ≥ 895.1 N: finding"
    assert size_of(figure, "worked for") == "drifting"


def test_every_fifteenth_place_of_a_scan_is_held_to_its_sheet_up_to_the_full_lift() -> None:
    """From the first place on; a load that is not asked for at a place is not drawn there."""
    figure = all_figures()["load-valve-exhaust-left-back"]
    (found,) = (
        one for one in courses_of(of_one_cylinder().checks) if one.check.component == figure.component
    )
    held: dict[str, list[int]] = {found.there.symbol: [], found.needed.symbol: []}
    for one in figure.held.placed:
        origin = one.quantity.origin
        load = origin.of.get("load") if isinstance(origin, Worked) else None
        if load is not None and isinstance(load.origin, OnSheet) and load.origin.place is not None:
            held[load.origin.symbol].append(load.origin.place)
    for series in (found.there, found.needed):
        stated = [place for place in range(found.top + 1) if series.values[place] is not None]
        assert held[series.symbol] == [place for place in stated if place % 15 == 0]
    assert held[found.there.symbol][0] == 0
    assert held[found.there.symbol][-1] > found.top - 15


def test_flanks_that_differ_are_drawn_apart(workshop: DesignFolder) -> None:
    (alike_figure,) = spring_figures(workshop.write(train_files()).assess())
    assert "as the valve shuts" not in alike_figure.says
    assert len(inked(alike_figure, "polyline", "asked")) == 1
    slower = (('fall_angle = "70 °"', 'fall_angle = "90 °"'),)
    (figure,) = spring_figures(workshop.write(train_files(cam=slower)).assess())
    assert "as the valve shuts" in figure.says
    lines = inked(figure, "polyline", "asked")
    assert [one.get("class") for one in lines] == ["asked", "asked shutting"]
    tops = [min(float(pair.split(",")[1]) for pair in (one.get("points") or "").split()) for one in lines]
    assert tops[0] < tops[1], "the slower flank asks for less"


def test_a_valve_that_no_check_scanned_says_so(workshop: DesignFolder) -> None:
    files = train_files()
    del files["cam.toml"]
    (figure,) = spring_figures(workshop.write(files).assess())
    assert "is not drawn" in figure.says
    assert not inked(figure, "polyline", "asked")


@pytest.mark.parametrize(
    ("closing", "same"),
    [
        ([(10.0, 5.0), (0.0, 1.04)], True),
        ([(10.0, 5.0), (0.0, 1.06)], False),
        ([(10.0, 5.0), (0.0, None)], False),
        ([(0.0, 1.0)], False),
    ],
)
def test_flanks_are_alike_within_a_hundredth(closing: list[tuple[float, float | None]], same: bool) -> None:
    assert alike([(0.0, 1.0), (10.0, 5.0)], closing) is same


def test_a_spring_stands_free_shut_open_and_solid() -> None:
    """215.2, 146 and 126 mm by the drawing; solid 13 coils of 7.94 mm: 103.2 mm."""
    figure = all_figures()["spring-spring-inlet-left-back"]
    assert {"215.2 mm", "146 mm", "126 mm", "103.2 mm", "1948 N", "2511 N"} <= set(texts(figure))
    coils = inked(figure, "polyline", "stated")
    assert len(coils) == 4
    heights = [
        max(places) - min(places)
        for one in coils
        for places in [[float(pair.split(",")[1]) for pair in (one.get("points") or "").split()]]
    ]
    assert heights == sorted(heights, reverse=True)
    scale = scale_of(figure, "50")
    assert heights[0] == pytest.approx((215.2 - 7.9) * scale, abs=0.1), "to the middles of the end wires"


def test_the_endurance_of_a_spring_is_drawn_as_its_sheet_has_it() -> None:
    """τ_H0 = 435.96 MPa, m = 0.7, τ_U = 659.95: endured 435.96 + 0.7 × 659.95 = 897.9 MPa; range used 857.4."""
    figure = all_figures()["endurance-spring-inlet-left-back"]
    assert {"660 MPa", "857 MPa", "898 MPa"} <= set(texts(figure))
    assert size_of(figure, "factor of the range").startswith("1.205")
    assert len(inked(figure, "polyline", "edge")) == 3
    assert len(inked(figure, "polyline", "dashed")) == 1
    assert len(inked(figure, "circle", "point")) == 2


def test_a_valve_stands_in_the_metal_round_it_with_its_cage_and_spindle() -> None:
    """Two seats of 22 mm of metal, guide of Ø 34 by 100 from 60 mm above the seat, cage end 92 − 52 = 40 above it."""
    figure = all_figures()["drawing-valve-exhaust-left-back"]
    scale = scale_of(figure, "20")
    boxes = [
        (number(one, "width") / scale, number(one, "height") / scale)
        for one in inked(figure, "rect", "metal")
    ]
    assert (
        sum(wide == pytest.approx(22, abs=0.1) and tall == pytest.approx(28, abs=0.1) for wide, tall in boxes)
        == 2
    )
    assert (
        sum(wide == pytest.approx(6, abs=0.1) and tall == pytest.approx(100, abs=0.1) for wide, tall in boxes)
        == 1
    )
    assert (
        sum(wide == pytest.approx(115, abs=0.1) and tall == pytest.approx(6, abs=0.1) for wide, tall in boxes)
        == 1
    )
    (spindle,) = inked(figure, "rect", "stud")
    assert number(spindle, "width") == pytest.approx(11 * scale, abs=0.05)
    assert {"from the cylinder", "to the exhaust"} <= set(texts(figure))
