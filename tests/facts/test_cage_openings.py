"""The openings between the bars of a cage, by hand."""

from __future__ import annotations

from pathlib import Path

import pytest

from speclint.facts import opening_by_bars, opening_of_cage, straight_opening
from speclint.rules import NotAssessed
from tests.facts.bench import bench
from tests.ranges import End, expect_end

_BARS = {"D": 0.2, "n": 2.0, "w": 0.0}
_NO_CIRCLE = "the circle has no size, or a bar less than none"
VALVE = 'outside_diameter = "200 mm"\n'
CAGE = 'surrounds = "valve"\nopening = "{}"\n'


@pytest.mark.parametrize(
    "end",
    [
        End(straight_opening, _BARS, {"n": 1.99}, "fewer than two bars stand round no circle"),
        End(straight_opening, {**_BARS, "D": 1e-6}, {"D": 0.0}, _NO_CIRCLE),
        End(straight_opening, _BARS, {"w": -1e-6}, _NO_CIRCLE),
    ],
    ids=str,
)
def test_bars_stand_round_a_circle(end: End) -> None:
    expect_end(end)


@pytest.mark.parametrize(
    ("w", "opening"),
    [
        (0.1, -0.0),  # a bar of half the circle's diameter takes arcsin 1/2 = 30°, of six half a pitch each
        (0.2, -0.1732051),  # 200 sin(30° − 90°) = −173.21 mm
        (0.3, -0.1732051),  # wider than the circle: as wide as that
    ],
)
def test_a_bar_counts_as_no_wider_than_its_circle(w: float, opening: float) -> None:
    assert straight_opening(D=0.2, n=6.0, w=w) == pytest.approx(opening, abs=1e-7)


@pytest.mark.parametrize(
    ("stated", "bars", "opening"),
    [
        ("12 mm", "", 0.012),
        ("12 mm", 'bars = 12\nbar = "30 mm"\n', 0.0222),  # 200 sin(15° − arcsin 0.15) = 22.200 mm
        ("25 mm", 'bars = 12\nbar = "30 mm"\n', 0.025),
    ],
)
def test_the_wider_opening_counts(tmp_path: Path, stated: str, bars: str, opening: float) -> None:
    on = bench(tmp_path, {"poppet-valve valve": VALVE, "valve-cage cage": CAGE.format(stated) + bars}, "cage")
    assert opening_of_cage(on["cage"], on.sheet) == pytest.approx(opening, abs=1e-6)
    assert (opening_by_bars(on["cage"], on.sheet) is None) == (not bars)


def test_bars_that_are_counted_are_asked_how_wide_they_are(tmp_path: Path) -> None:
    files = {"poppet-valve valve": VALVE, "valve-cage cage": CAGE.format("12 mm") + "bars = 12\n"}
    on = bench(tmp_path, files, "cage")
    with pytest.raises(NotAssessed, match="bar is not stated"):
        opening_of_cage(on["cage"], on.sheet)
