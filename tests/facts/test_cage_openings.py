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
VALVE = 'outside_diameter = "160 mm"\nretained = "cage"\nbox_diameter = "200 mm"\n'
CAGE = 'surrounds = "valve"\nopening = "{}"\n'
BARS = 'bars = 12\nbar = "30 mm"\n'


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


@pytest.mark.parametrize(
    ("valve", "cage", "widest"),
    [
        # 220 sin(15° − arcsin 0.13636) = 220 sin(15° − 7.8374°) = 27.431 mm round the outside of the cage
        ('retained = "cage"\n', 'outside_diameter = "220 mm"\n', 0.027431),
        # held by another catch, the bore that it states is not that of the cage
        ('retained = "none"\nbox_diameter = "200 mm"\n', 'outside_diameter = "220 mm"\n', 0.027431),
    ],
)
def test_without_a_bore_the_bars_may_stand_at_the_outside(
    tmp_path: Path, valve: str, cage: str, widest: float
) -> None:
    """The least that they can leave is that round the valve: 160 sin(15° − 10.807°) = 11.699 mm."""
    files = {
        "poppet-valve valve": 'outside_diameter = "160 mm"\n' + valve,
        "valve-cage cage": CAGE.format("12 mm") + BARS + cage,
    }
    on = bench(tmp_path, files, "cage")
    assert opening_of_cage(on["cage"], on.sheet) == pytest.approx(widest, abs=1e-6)
    least = opening_by_bars(on["cage"], on.sheet)
    assert least is not None
    assert least.value == pytest.approx(0.011699, abs=1e-6)


def test_without_either_the_outside_of_the_cage_is_asked(tmp_path: Path) -> None:
    files = {
        "poppet-valve valve": 'outside_diameter = "160 mm"\n',
        "valve-cage cage": CAGE.format("12 mm") + BARS,
    }
    on = bench(tmp_path, files, "cage")
    with pytest.raises(NotAssessed, match="outside_diameter is not stated"):
        opening_of_cage(on["cage"], on.sheet)
