"""Lagging in section: where each line stands, worked by hand from the temperatures of its sheet.

Metal from 90 to 136, lagging to 436, air to 586; temperatures stand on 244 and 8 % more than the hottest, 324 °C of the
metal's 300, take 220 units. The surface is that of the tests of the rule, which leave it to its sheet within half a
kelvin of 54 °C.
"""

from __future__ import annotations

import math
from xml.etree import ElementTree

import pytest

from speclint.checking import Check, Processes, assess
from speclint.reports.pack.figures import Figure
from speclint.reports.pack.lagging_drawing import lagging_figures
from speclint.testing import DesignFolder, on_sheet
from tests.plugins.steamways.test_laggings import FLAT, TOUCH, files
from tests.plugins.steamways.test_paths import limited
from tests.reports.placed_marks import numbers


def drawn(workshop: DesignFolder, limit: str, *changes: tuple[str, str]) -> tuple[Figure, Check]:
    workshop.write({**files(*changes), "speclint.toml": limited(TOUCH, touch=limit)})
    rules = [one for one in workshop.loaded.rules if one.name == TOUCH]
    found = assess([workshop.root], workshop.loaded, rules, processes=Processes(0))
    (check,) = (one for one in found.checks if one.component == "lagging")
    (figure,) = lagging_figures(found)
    return figure, check


def marks(figure: Figure, tag: str, ink: str) -> list[ElementTree.Element]:
    root = ElementTree.fromstring(figure.drawing)
    return [one for one in root.iter() if one.tag.endswith(f"}}{tag}") and one.get("class") == ink]


def lines(figure: Figure, ink: str) -> list[list[float]]:
    return [numbers(one, "x1", "y1", "x2", "y2") for one in marks(figure, "line", ink)]


def says(figure: Figure) -> dict[str, list[float]]:
    root = ElementTree.fromstring(figure.drawing)
    return {one.text or "": numbers(one, "x", "y") for one in root.iter() if one.tag.endswith("}text")}


def height(celsius: float) -> float:
    return 244 - celsius / 324 * 220


def curve(figure: Figure) -> list[tuple[float, float]]:
    (path,) = marks(figure, "polyline", "edge")
    flat = [float(one) for one in path.get("points", "").replace(",", " ").split()]
    return list(zip(flat[::2], flat[1::2], strict=True))


def test_metal_lagging_and_air_stand_side_by_side(workshop: DesignFolder) -> None:
    figure, _ = drawn(workshop, "60 °C")
    (metal,), (lagging,) = marks(figure, "rect", "metal"), marks(figure, "rect", "spent")
    assert numbers(metal, "x", "y", "width", "height") == [90, 24, 46, 220]
    assert numbers(lagging, "x", "y", "width", "height") == [136, 24, 300, 220]
    assert lines(figure, "land") == [[436, 24, 436, 244]]
    thin = lines(figure, "thin")
    for line in ([136, 247, 136, 270], [436, 247, 436, 270], [136, 266, 436, 266]):
        assert line in thin
    said = says(figure)
    assert said["50 mm"] == [286, 261]
    assert said["lagging"] == [286, 284]
    assert said["air"] == [511, 284]
    assert said["pipe"] == [113, 284]
    assert said["temperature, °C"] == [26, 134]
    root = ElementTree.fromstring(figure.drawing)
    assert list(map(float, (root.get("viewBox") or "").split()))[2:] == [676, 318]


def test_the_temperature_falls_as_the_rings_of_round_lagging_grow(workshop: DesignFolder) -> None:
    """On 75 mm radius 50 mm thick: at half of it ln(100/75)/ln(125/75) = 0.5632 of the fall are made."""
    figure, check = drawn(workshop, "60 °C")
    surface, air = on_sheet(check, "T_s") - 273.15, on_sheet(check, "T_a") - 273.15
    points = curve(figure)
    assert len(points) == 20
    assert points[0] == pytest.approx((90, height(300)), abs=0.02)
    assert points[1] == pytest.approx((136, height(300)), abs=0.02)
    share = math.log(100 / 75) / math.log(125 / 75)
    assert points[9] == pytest.approx((286, height(300 - share * (300 - surface))), abs=0.02)
    assert points[17] == pytest.approx((436, height(surface)), abs=0.02)
    assert points[18] == pytest.approx((481, height(air)), abs=0.02)
    assert points[19] == pytest.approx((586, height(air)), abs=0.02)
    (surface_point,) = marks(figure, "circle", "point")
    assert numbers(surface_point, "cx", "cy", "r") == pytest.approx([436, height(surface), 4.5], abs=0.02)


def test_through_flat_lagging_it_falls_evenly(workshop: DesignFolder) -> None:
    figure, check = drawn(workshop, "62 °C", *FLAT)
    surface = on_sheet(check, "T_s") - 273.15
    assert curve(figure)[9] == pytest.approx((286, height((300 + surface) / 2)), abs=0.02)


def test_the_limit_and_the_surface_are_named_one_above_the_other(workshop: DesignFolder) -> None:
    """Their marks are closer than 17 units, so that the words are pushed apart; the hotter stands above."""
    figure, check = drawn(workshop, "60 °C")
    surface, air = on_sheet(check, "T_s") - 273.15, on_sheet(check, "T_a") - 273.15
    assert lines(figure, "limit") == [pytest.approx([426, height(60), 586, height(60)], abs=0.02)]
    room = 17 - (height(surface) - height(60))
    assert 0 < room < 17
    said = says(figure)
    assert said["at most 60 °C"] == pytest.approx([490, height(60) - 6 - room / 2], abs=0.02)
    assert said[f"surface {surface:.1f} °C"] == pytest.approx([490, height(surface) + 14], abs=0.02)
    assert said["300 °C"] == pytest.approx([144, height(300) - 5], abs=0.02)
    assert said[f"air {air:.0f} °C"] == pytest.approx([592, height(air) + 4], abs=0.02)
    assert said["200"] == pytest.approx([81, height(200) + 4], abs=0.02)
    assert [85, pytest.approx(height(200), abs=0.02), 90, pytest.approx(height(200), abs=0.02)] in lines(
        figure, "thin"
    )
    placed = [one.at for one in figure.held.placed]
    assert placed == pytest.approx([height(300), height(surface), height(air), height(60)], abs=0.02)


def test_a_surface_above_its_limit_is_named_above_it(workshop: DesignFolder) -> None:
    figure, check = drawn(workshop, "40 °C")
    surface = on_sheet(check, "T_s") - 273.15
    said = says(figure)
    room = max(0.0, 17 - (height(40) - height(surface)))
    assert said[f"surface {surface:.1f} °C"] == pytest.approx([490, height(surface) - 6 - room / 2], abs=0.02)
    assert said["at most 40 °C"] == pytest.approx([490, height(40) + 14], abs=0.02)
    assert len(marks(figure, "circle", "point bad")) == 1


def test_the_table_of_a_lagging(workshop: DesignFolder) -> None:
    figure, check = drawn(workshop, "60 °C")
    surface = on_sheet(check, "T_s") - 273.15
    assert figure.heading == "lagging: section, and the temperature through it"
    assert figure.rows == (
        ("thickness", "50 mm"),
        ("conductivity", "0.06 W/(m·K)"),
        ("emissivity of the sheet", "0.3"),
        ("reach", "in reach"),
        ("metal", "300 °C"),
        ("surface", f"{surface:.1f} °C, at most 60 °C"),
        ("air", "20 °C"),
    )
    assert "From the sheet of lagging.touch, running" in figure.says


def test_a_lagging_that_is_not_judged_is_not_drawn(workshop: DesignFolder) -> None:
    workshop.write(files(("in reach", "out of reach")))
    rules = [one for one in workshop.loaded.rules if one.name == TOUCH]
    assert not list(lagging_figures(assess([workshop.root], workshop.loaded, rules, processes=Processes(0))))
    assert not list(lagging_figures(assess([workshop.root], workshop.loaded, (), processes=Processes(0))))
