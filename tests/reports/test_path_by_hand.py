"""The steam path as a drawing: where its openings and its bars stand, worked by hand.

Places stand 72 apart from 112 on. The widest opening takes 150 units about a line at 159; bars stand on a line at 454
and have 150 for the fastest. Round openings of 100, 50 and 25 mm: 1.5 units to the millimetre.
"""

from __future__ import annotations

import math
from xml.etree import ElementTree

import pytest

from speclint.checking import Assessment
from speclint.errors import NOWHERE, replace
from speclint.reports.pack import path_drawing
from speclint.reports.pack.figures import Figure
from speclint.reports.pack.path_drawing import path_figures, round_of
from speclint.reports.pack.printed import InSpec, Quantity
from speclint.reports.pack.stations import Station
from speclint.testing import DesignFolder
from tests import tubes
from tests.reports.placed_marks import numbers
from tests.tubes import FILES


def of(value: float) -> Quantity:
    return Quantity(value, InSpec(NOWHERE, "nominal"))


def opening(millimetres: float) -> Quantity:
    return of(math.pi * (millimetres / 2000) ** 2)


PIPE = Station("pipe", "pipe", opening(100), of(40.0), of(50.0), live=True, mach=of(0.0712), lost=of(250.0))
VALVE = Station("inlet valve", "valve", opening(50), of(60.0), of(50.0), live=True)
NOZZLE = Station("nozzle", "nozzle", opening(25))


@pytest.fixture
def tube(workshop: DesignFolder) -> Assessment:
    workshop.loaded = tubes.tubes()
    return workshop.write(FILES).assess()


def drawn(monkeypatch: pytest.MonkeyPatch, of: Assessment, *stations: Station) -> Figure:
    monkeypatch.setattr(path_drawing, "paths_of", lambda _: [("front", stations), ("none", ())])
    (figure,) = path_figures(of)
    return figure


def marks(figure: Figure, tag: str, ink: str) -> list[ElementTree.Element]:
    root = ElementTree.fromstring(figure.drawing)
    return [one for one in root.iter() if one.tag.endswith(f"}}{tag}") and one.get("class") == ink]


def boxes(figure: Figure, ink: str) -> list[list[float]]:
    return [numbers(one, "x", "y", "width", "height") for one in marks(figure, "rect", ink)]


def lines(figure: Figure, ink: str) -> list[list[float]]:
    return [numbers(one, "x1", "y1", "x2", "y2") for one in marks(figure, "line", ink)]


def says(figure: Figure) -> list[tuple[str | float, ...]]:
    root = ElementTree.fromstring(figure.drawing)
    return [(one.text or "", *numbers(one, "x", "y")) for one in root.iter() if one.tag.endswith("}text")]


def near(places: list[list[float]]) -> list[object]:
    return [pytest.approx(one, abs=0.02) for one in places]


def test_openings_stand_side_by_side_about_one_line(
    tube: Assessment, monkeypatch: pytest.MonkeyPatch
) -> None:
    figure = drawn(monkeypatch, tube, PIPE, VALVE, NOZZLE)
    assert boxes(figure, "live") == near([[112, 84, 72, 150], [184, 159 - 37.5, 72, 75]])
    assert boxes(figure, "spent") == near([[256, 159 - 18.75, 72, 37.5]])
    assert lines(figure, "axis") == near([[96, 159, 350, 159]])
    (arrow,) = marks(figure, "polygon", "arrow")
    assert arrow.get("points", "").replace(",", " ").split() == ["354", "159", "342", "154", "342", "164"]
    assert [one.at for one in figure.held.placed if one.axis == ""] == pytest.approx([150, 75, 37.5])
    said = says(figure)
    for words in (("area, mm²", 12, 256), ("7854", 148, 256), ("1963", 220, 256), ("491", 292, 256)):
        assert words in said
    bar = marks(figure, "rect", "solid")[0]
    assert numbers(bar, "x", "y", "width") == pytest.approx([12, 214, 20 / 5 * 1.5], abs=0.02), "20 of 40 mm"
    root = ElementTree.fromstring(figure.drawing)
    assert list(map(float, (root.get("viewBox") or "").split()))[2:] == [460, 84 + 150 + 70 + 150 + 76]
    many = drawn(monkeypatch, tube, *[PIPE] * 6)
    root = ElementTree.fromstring(many.drawing)
    assert float((root.get("viewBox") or "").split()[2]) == 112 + 6 * 72 + 30


def test_each_place_has_its_number_and_its_words_above_it(
    tube: Assessment, monkeypatch: pytest.MonkeyPatch
) -> None:
    figure = drawn(monkeypatch, tube, PIPE, VALVE)
    rings = [numbers(one, "cx", "cy") for one in marks(figure, "circle", "balloon")]
    assert rings == [[148, 22], [220, 22]]
    said = says(figure)
    for words in (("pipe", 148, 48), ("inlet", 220, 48), ("valve", 220, 62)):
        assert words in said


def test_speeds_stand_as_bars_with_the_greatest_allowed(
    tube: Assessment, monkeypatch: pytest.MonkeyPatch
) -> None:
    """60 m/s, 1.2 times the limit, are the whole height: 2.5 units for each."""
    figure = drawn(monkeypatch, tube, PIPE, VALVE, NOZZLE)
    assert boxes(figure, "bar") == near([[131, 354, 34, 100], [203, 304, 34, 150]])
    assert not marks(figure, "polygon", "break")
    assert lines(figure, "limit") == near([[123, 329, 173, 329], [195, 329, 245, 329]])
    assert lines(figure, "edge") == near([[112, 454, 328, 454]])
    assert lines(figure, "grid") == near([[112, 454 - 25 * n, 328, 454 - 25 * n] for n in range(7)])
    said = says(figure)
    for words in (
        ("40.0", 148, 476),
        ("60.0", 220, 476),
        ("50", 148, 496),
        ("speed, m/s", 12, 476),
        ("at most, m/s", 12, 496),
        ("speed, m/s", 22, 379),
        ("60", 104, 308),
    ):
        assert words in said, words
    assert [(one.axis, one.at) for one in figure.held.placed if one.axis] == [
        ("y", pytest.approx(354)),
        ("y", pytest.approx(329)),
        ("y", pytest.approx(304)),
        ("y", pytest.approx(329)),
    ]
    assert figure.says.endswith("Where there is no bar the sheets give no speed.")
    assert not drawn(monkeypatch, tube, PIPE).says.endswith("no speed.")


def test_a_bar_far_beyond_the_limit_is_broken_off(tube: Assessment, monkeypatch: pytest.MonkeyPatch) -> None:
    """61 m/s is more than 1.2 times 50: the height stays that of 60, and the bar is broken 22 below its top."""
    fast = Station("nozzle", "nozzle", opening(25), of(61.0))
    figure = drawn(monkeypatch, tube, PIPE, fast)
    assert boxes(figure, "bar") == near([[131, 354, 34, 100], [203, 304, 34, 150]])
    (broken,) = marks(figure, "polygon", "break")
    corners = [float(one) for one in broken.get("points", "").replace(",", " ").split()]
    assert corners == pytest.approx([200, 329, 240, 319, 240, 325, 200, 335], abs=0.02)
    assert len([one for one in figure.held.placed if one.axis]) == 2, "what is cut stands nowhere on the axis"


def test_without_a_limit_the_fastest_has_the_height(
    tube: Assessment, monkeypatch: pytest.MonkeyPatch
) -> None:
    """And where nothing moves the axis goes to 1 m/s; a limit above all speeds has the height itself."""
    fast = Station("nozzle", "nozzle", opening(25), of(300.0))
    assert boxes(drawn(monkeypatch, tube, fast), "bar") == near([[131, 304, 34, 150]])
    assert len(lines(drawn(monkeypatch, tube, NOZZLE), "grid")) == 6, "0 to 1 by 0.2"
    slow = Station("pipe", "pipe", opening(25), of(10.0), of(40.0))
    assert boxes(drawn(monkeypatch, tube, slow), "bar") == near([[131, 454 - 37.5, 34, 37.5]])
    assert lines(drawn(monkeypatch, tube, slow), "limit") == near([[123, 304, 173, 304]])


def test_a_bar_leads_to_its_sheet_and_one_over_its_limit_is_told_apart(
    tube: Assessment, monkeypatch: pytest.MonkeyPatch
) -> None:
    check = next(one for one in tube.checks if one.rule.name == "tube.stress")
    found = replace(check, outcome="finding")
    figure = drawn(monkeypatch, tube, replace(VALVE, check=check), replace(VALVE, check=found))
    assert len(boxes(figure, "bar")) == len(boxes(figure, "bad")) == 1
    assert figure.drawing.count('href="#sheet.tube.tube.stress"') == 2
    assert replace(VALVE, check=found).over
    assert not replace(VALVE, check=check).over
    assert not replace(VALVE, check=found, speed=of(50.0)).over, "at the limit it is not over it"
    assert not replace(VALVE, check=found, speed=None).over
    assert not replace(VALVE, check=found, limit=None).over


def test_the_table_of_a_path(tube: Assessment, monkeypatch: pytest.MonkeyPatch) -> None:
    figure = drawn(monkeypatch, tube, PIPE, NOZZLE)
    assert figure.heading == "Steam path by way of front: areas and speeds"
    assert figure.rows == (
        ("1", "pipe", "pipe", "7854 mm²", "40.0 m/s", "50 m/s", "0.071", "2.50 mbar"),
        (
            "2",
            "nozzle",
            "nozzle",
            "491 mm²",
            "not calculated",
            "no limit",
            "not calculated",
            "not calculated",
        ),
    )


def test_the_round_opening_of_an_area() -> None:
    assert round_of(math.pi) == pytest.approx(2)
