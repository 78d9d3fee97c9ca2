"""A flat cover in half section, where each line stands, worked by hand.

The cover of the tests of its rules: 760 mm in 2 × 500 units, so 1.31579 to the millimetre; 60 mm thick with a flange of
50, on 700 mm studs, the steam pressing within G = 621.745 mm, and 46.22 mm needed as those tests work.
"""

from __future__ import annotations

from xml.etree import ElementTree

import pytest

from speclint.checking import Processes, assess
from speclint.reports.pack.cover_drawing import cover_figures
from speclint.reports.pack.figures import Figure
from speclint.testing import DesignFolder
from tests.plugins.joints import hand
from tests.plugins.joints.bench import bench
from tests.reports.placed_marks import numbers

SCALE = 500 / 380
FOOT = 60 + 60 * SCALE
SPIGOT = ("cover", 'central_hole = "0 mm"', 'central_hole = "0 mm"\nspigot_diameter = "498 mm"')


def figures(workshop: DesignFolder, *changes: tuple[str, str, str]) -> list[Figure]:
    bench(workshop, *changes)
    rules = [one for one in workshop.loaded.rules if one.name == "cover.thickness"]
    return list(cover_figures(assess([workshop.root], workshop.loaded, rules, processes=Processes(0))))


def drawn(workshop: DesignFolder, *changes: tuple[str, str, str]) -> Figure:
    (figure,) = figures(workshop, *changes)
    return figure


def marks(figure: Figure, tag: str, ink: str) -> list[ElementTree.Element]:
    root = ElementTree.fromstring(figure.drawing)
    return [one for one in root.iter() if one.tag.endswith(f"}}{tag}") and one.get("class") == ink]


def boxes(figure: Figure, ink: str) -> list[list[float]]:
    return [numbers(one, "x", "y", "width", "height") for one in marks(figure, "rect", ink)]


def lines(figure: Figure, ink: str) -> list[list[float]]:
    return [numbers(one, "x1", "y1", "x2", "y2") for one in marks(figure, "line", ink)]


def says(figure: Figure) -> dict[str, list[float]]:
    root = ElementTree.fromstring(figure.drawing)
    return {one.text or "": numbers(one, "x", "y") for one in root.iter() if one.tag.endswith("}text")}


def near(places: list[list[float]]) -> list[object]:
    return [pytest.approx(one, abs=0.02) for one in places]


def test_plate_and_flange_stand_flush_outside(workshop: DesignFolder) -> None:
    figure = drawn(workshop, SPIGOT)
    assert boxes(figure, "metal") == near(
        [[90, 60, 249 * SCALE, 60 * SCALE], [90 + 249 * SCALE, 60, 131 * SCALE, 50 * SCALE]]
    )
    assert len(marks(figure, "path", "hatch")) == 2
    whole = drawn(workshop)
    assert boxes(whole, "metal") == near([[90, 60, 500, 60 * SCALE]]), (
        "of no spigot it is known, and all is plate"
    )


def test_a_hole_for_the_rod_is_left_free(workshop: DesignFolder) -> None:
    figure = drawn(workshop, SPIGOT, ("cover", 'central_hole = "0 mm"', 'central_hole = "100 mm"'))
    assert boxes(figure, "metal")[0] == pytest.approx(
        [90 + 50 * SCALE, 60, 199 * SCALE, 60 * SCALE], abs=0.02
    )
    needs = next(one for one in says(figure) if one.startswith("needs "))
    assert says(figure)[needs] == pytest.approx([90 + 50 * SCALE + 46, 52], abs=0.02)
    assert next(name for name, _ in figure.rows if name.startswith("diameter")) == "diameter, hole"


def test_a_stud_goes_through_the_flange_and_the_gasket_lies_beneath_it(workshop: DesignFolder) -> None:
    figure = drawn(workshop)
    x = 90 + 350 * SCALE
    assert boxes(figure, "bore") == near([[x - 13 * SCALE, 60, 26 * SCALE, 50 * SCALE]])
    foot = 60 + 50 * SCALE
    assert any(one == pytest.approx([x, 46, x, foot + 14], abs=0.02) for one in lines(figure, "axis"))
    assert lines(figure, "land") == near([[90 + 302 * SCALE, foot, 90 + 318 * SCALE, foot]])


def test_the_red_line_is_what_is_needed_out_to_where_the_steam_presses(workshop: DesignFolder) -> None:
    figure = drawn(workshop)
    needed, end = 60 + 46.22 * SCALE, 90 + hand.G / 2 * SCALE
    (red,) = lines(figure, "last")
    assert red == pytest.approx([90, needed, end, needed], abs=0.05)
    thin = lines(figure, "thin")
    for line in ([68, 60, 68, FOOT], [130, 60, 130, needed], [606, 60, 606, 60 + 50 * SCALE]):
        assert any(one == pytest.approx(line, abs=0.05) for one in thin), line
    assert lines(figure, "fine")[0] == [62, 60, 90, 60]
    axes = lines(figure, "axis")
    for line in ([end, 40, end, FOOT + 8], [90, 26, 90, FOOT + 3 * 24 + 20]):
        assert any(one == pytest.approx(line, abs=0.05) for one in axes), line
    said = says(figure)
    assert said["needs 46.2"] == [136, 52]
    assert said["50"] == [612, 74]
    assert said["60"] == pytest.approx([62, 60 + 30 * SCALE + 4], abs=0.02)


def test_diameters_stand_below_from_the_axis_the_least_nearest(workshop: DesignFolder) -> None:
    figure = drawn(workshop, SPIGOT)
    thin, fine, said = lines(figure, "thin"), lines(figure, "fine"), says(figure)
    rows = [
        (498.0, "Ø 498 spigot"),
        (hand.G, "Ø 621.7 pressure"),
        (700.0, "Ø 700 studs"),
        (760.0, "Ø 760 outside"),
    ]
    for number, (size, words) in enumerate(rows, 1):
        y, end = FOOT + 24 * number + 8, 90 + size / 2 * SCALE
        assert any(one == pytest.approx([90, y, end, y], abs=0.05) for one in thin), words
        assert any(one == pytest.approx([end, FOOT + 4, end, y + 4], abs=0.05) for one in fine), words
        assert said[words] == pytest.approx([98, y - 4], abs=0.05)
    root = ElementTree.fromstring(figure.drawing)
    paper = list(map(float, (root.get("viewBox") or "").split()))[2:]
    assert paper == pytest.approx([90 + 500 + 110, FOOT + 24 * 5 + 44], abs=0.02)
    bar = marks(figure, "rect", "solid")[0]
    assert numbers(bar, "x", "y", "width") == pytest.approx([90, paper[1] - 18, 10 * SCALE], abs=0.02)


def test_the_table_of_a_cover(workshop: DesignFolder) -> None:
    figure = drawn(workshop)
    assert figure.heading == "cover: half section, and the thickness that it needs"
    assert figure.rows == (
        ("thickness", "60 mm"),
        ("as its sheet has it", "60.00 mm, at least 46.22 mm"),
        ("flange", "50 mm"),
        ("diameter, pressure", "621.7 mm"),
        ("diameter, studs", "700.0 mm"),
        ("diameter, outside", "760.0 mm"),
    )


def test_a_cover_that_is_not_flat_or_not_judged_is_not_drawn(workshop: DesignFolder) -> None:
    assert not figures(workshop, ("cover", 'form = "flat"', 'form = "dished"'))
    bench(workshop)
    assert not list(cover_figures(assess([workshop.root], workshop.loaded, (), processes=Processes(0))))
