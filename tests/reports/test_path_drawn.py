"""The steam path as drawn: from pipe to nozzle, its openings and speeds to scale, and where it is over."""

from __future__ import annotations

import math
from xml.etree import ElementTree

import pytest

from speclint.errors import replace
from speclint.reports.pack.figures import Figure
from speclint.reports.pack.printed import OnSheet, Quantity
from speclint.reports.pack.stations import Station, paths_of
from tests.example import of_one_cylinder
from tests.reports.figure_marks import inked, number
from tests.reports.held_drawings import all_figures


def stations() -> tuple[Station, ...]:
    return dict(paths_of(of_one_cylinder()))["passage-pocket-left-front"]


def test_a_steam_path_follows_the_steam_from_pipe_to_nozzle() -> None:
    """Pipe Ø 168.3 − 2 × 5.6 = 157.1 mm: 19 384 mm²; nozzle Ø 176.5 mm; the port is the narrower of valve.

    Three cylinders exhaust through the nozzle; the path is that of one of them.
    """
    found = stations()
    assert [one.what for one in found] == [
        "pipe",
        "chest",
        "valve pocket",
        "inlet valve",
        "port",
        "cylinder",
        "port",
        "exhaust valve",
        "belt",
        "pipe",
        "nozzle",
    ]
    assert found[0].area.value * 1e6 == pytest.approx(math.pi / 4 * 157.1**2, rel=1e-6)
    assert found[1].area.value * 1e6 == pytest.approx(45000)
    assert found[4].area.value * 1e6 == pytest.approx(16000)
    assert found[-1].area.value * 1e6 == pytest.approx(math.pi / 4 * 176.5**2, rel=1e-6)
    assert [one.live for one in found].count(True) == 6
    assert found[0].speed is not None
    assert found[1].speed is not None
    assert found[1].speed.value / found[0].speed.value == pytest.approx(19384 / 45000, rel=1e-3), (
        "a wider place is slower"
    )
    assert [one.limit and one.limit.value for one in found[:3]] == [40.0] * 3
    assert found[3].speed is None
    assert found[4].limit is not None
    assert found[4].limit.value == 100.0
    assert all(one.mach and one.lost for one in found[:3])


def test_openings_and_speeds_of_a_path_are_to_scale() -> None:
    figure = all_figures()["path-passage-pocket-left-front"]
    openings = [number(one, "height") for one in inked(figure, "rect", "live")]
    areas = [one.area.value for one in stations() if one.live]
    assert len(openings) == len(areas) == 6
    for height, area in zip(openings, areas, strict=True):
        assert height / openings[0] == pytest.approx(math.sqrt(area / areas[0]), rel=2e-3)
    drawn = [*inked(figure, "rect", "bar"), *inked(figure, "rect", "bad")]
    bars = [number(one, "height") for one in sorted(drawn, key=lambda one: number(one, "x"))]
    speeds = [one.speed.value for one in stations() if one.speed is not None]
    assert len(bars) == len(speeds)
    for height, speed in zip(bars[:-1], speeds[:-1], strict=True):
        assert height / bars[0] == pytest.approx(speed / speeds[0], rel=2e-2)
    assert len(inked(figure, "polygon", "break")) == 1, (
        "the jet is faster than the sheet is high, and says so"
    )
    # three times 1.3668 kg/s through 0.95 × 0.024467 m²; at 1.005 bar and 2754 kJ/kg − v²/2 = 2706 kJ/kg steam
    # tables give some 114 °C and 0.571 kg/m³: 309 m/s
    jet = size_of_path(figure, "nozzle")[4].removesuffix(" m/s")
    assert float(jet) == pytest.approx(309.0, rel=0.01)


def size_of_path(figure: Figure, what: str) -> tuple[str, ...]:
    return next(row for row in figure.rows if row[1] == what)


@pytest.mark.parametrize(
    ("outcome", "speed", "over"),
    [("finding", 40.1, True), ("finding", 39.9, False), ("conforms", 40.1, False)],
)
def test_a_station_is_over_where_its_sheet_found_it(outcome: str, speed: float, over: bool) -> None:
    check = replace(of_one_cylinder().checks[0], outcome=outcome)  # type: ignore[arg-type]
    area, fast, limit = (
        Quantity(one, OnSheet(check.component, check.rule.name, "found")) for one in (0.02, speed, 40.0)
    )
    assert Station("pipe", "pipe", area, fast, limit, check).over is over


@pytest.mark.parametrize("end", ["front", "back"])
def test_steam_leaves_the_cylinder_by_the_exhaust_valve_of_the_end_that_it_came_in_by(end: str) -> None:
    found = dict(paths_of(of_one_cylinder()))[f"passage-pocket-left-{end}"]
    assert {one.component for one in found if one.what.endswith(" valve")} == {
        f"valve-inlet-left-{end}",
        f"valve-exhaust-left-{end}",
    }


def test_a_steam_path_names_and_numbers_each_place_over_it() -> None:
    """What a place is, its first word above the others, in the middle of its column, as its number is."""
    figure = all_figures()["path-passage-pocket-left-front"]
    root = ElementTree.fromstring(figure.drawing)
    at: dict[str | None, list[tuple[float, float]]] = {}
    for one in root.iter():
        if one.tag.endswith("}text"):
            at.setdefault(one.text, []).append((number(one, "x"), number(one, "y")))
    for row in figure.rows:
        ((x, top),) = [place for place in at[row[0]] if place[1] < 40]
        parts = row[1].split(" ", 1)
        heights = [y for part in parts for across, y in at[part] if across == x]
        assert len(heights) >= len(parts), row[1]
        assert top < heights[0]
        assert heights == sorted(heights)
