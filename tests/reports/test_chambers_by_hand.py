"""The scheme of a block beside its bores: where seats, passages and walls stand, worked by hand.

The largest is a wall 400 mm long, which takes 120 units: 0.3 to the millimetre. Things stand 26 apart from 24 on, in
the middle of a shelf that is as high as its highest, 44 below the top of the shelf.
"""

from __future__ import annotations

import math
from xml.etree import ElementTree

import pytest

from speclint.checking import Processes, assess
from speclint.reports.pack.chambers_drawing import chamber_figures
from speclint.reports.pack.figures import Figure
from speclint.testing import DesignFolder, changed_files
from tests.reports.placed_marks import numbers

BLOCK = """
kind = "cylinder-block"
id = "block"
[seat_bores.upper]
diameter = "200 mm"
depth = "30 mm"
wall = "40 mm"
serves = "inlet"
[seat_bores.lower]
diameter = "180 mm"
chamber = "exhaust steam"
[divisions.chest]
thickness = "20 mm"
span = "200 mm"
length = "400 mm"
one_side = "live steam"
other_side = "exhaust steam"
"""
#: A round opening of 150 mm.
PASSAGE = f"""
kind = "steam-passage"
id = "passage"
in_block = "block"
place = "chest"
carries = "live steam"
area = "{math.pi * 75**2:.6f} mm²"
length = "500 mm"
"""
FILES = {"block.toml": BLOCK, "passage.toml": PASSAGE}
SCALE = 0.3
#: The middle of the shelf, and of each thing: 280 mm wide, 180, 150, and the wall of 20 with 46 to either side of it.
MIDDLE = 44 + 60
PLACES = (24 + 42, 24 + 84 + 26 + 27, 24 + 84 + 26 + 54 + 26 + 22.5, 24 + 84 + 26 + 54 + 26 + 45 + 26 + 16.8)


def drawn(workshop: DesignFolder, *changes: tuple[str, str, str]) -> Figure:
    (figure,) = figures(workshop, FILES, *changes)
    return figure


def figures(workshop: DesignFolder, files: dict[str, str], *changes: tuple[str, str, str]) -> list[Figure]:
    workshop.write(changed_files(files, *changes))
    found = assess([workshop.root], workshop.loaded, (), processes=Processes(0))
    assert not found.complaints
    return list(chamber_figures(found))


def marks(figure: Figure, tag: str, ink: str) -> list[ElementTree.Element]:
    root = ElementTree.fromstring(figure.drawing)
    return [one for one in root.iter() if one.tag.endswith(f"}}{tag}") and one.get("class") == ink]


def circles(figure: Figure, ink: str) -> list[list[float]]:
    return [numbers(one, "cx", "cy", "r") for one in marks(figure, "circle", ink)]


def boxes(figure: Figure, ink: str) -> list[list[float]]:
    return [numbers(one, "x", "y", "width", "height") for one in marks(figure, "rect", ink)]


def near(places: list[list[float]]) -> list[object]:
    return [pytest.approx(one, abs=0.02) for one in places]


def test_seats_and_passages_are_round_openings_side_by_side(workshop: DesignFolder) -> None:
    figure = drawn(workshop)
    assert circles(figure, "metal") == near([[PLACES[0], MIDDLE, 42]])
    assert circles(figure, "live") == near([[PLACES[0], MIDDLE, 30], [PLACES[2], MIDDLE, 22.5]])
    assert circles(figure, "spent") == near([[PLACES[1], MIDDLE, 27]])
    inner = (30, 27, 22.5)
    assert circles(figure, "bore") == near([[x, MIDDLE, r] for x, r in zip(PLACES, inner, strict=False)])
    crosses = [
        line
        for x, r in zip(PLACES, inner, strict=False)
        for line in ([x - 8 - r, MIDDLE, x + r + 8, MIDDLE], [x, MIDDLE - 8 - r, x, MIDDLE + r + 8])
    ]
    found = [numbers(one, "x1", "y1", "x2", "y2") for one in marks(figure, "line", "axis")]
    assert found == near(crosses)
    assert [one.at for one in figure.held.placed] == pytest.approx([60, 54, 45, 6], abs=0.001)


def test_a_wall_stands_between_what_it_parts(workshop: DesignFolder) -> None:
    figure = drawn(workshop)
    x, top = PLACES[3], MIDDLE - 60
    assert boxes(figure, "metal") == near([[x - 3, top, 6, 120]])
    assert boxes(figure, "live") == near([[x - 3 - 13.8, top, 13.8, 120]])
    assert boxes(figure, "spent") == near([[x + 3, top, 13.8, 120]])
    air = drawn(workshop, ("block.toml", 'other_side = "exhaust steam"\n', ""))
    assert boxes(air, "ghost") == near([[x + 3, top, 13.8, 120]])


def test_each_has_its_number_above_it(workshop: DesignFolder) -> None:
    figure = drawn(workshop)
    rings = circles(figure, "balloon")
    assert rings == near([[x, 22, 10] for x in PLACES])
    assert figure.rows == (
        ("1", "seat bore upper", "Ø 200 mm, 30 mm deep, metal 40 mm, live steam"),
        ("2", "seat bore lower", "Ø 180 mm, not stated deep, metal not stated, exhaust steam"),
        ("3", "passage", f"chest, {math.pi * 75**2:.6f} mm², 500 mm long, live steam"),
        ("4", "wall chest", "20 mm thick, 200 mm by 400 mm, between live steam and exhaust steam"),
    )
    root = ElementTree.fromstring(figure.drawing)
    assert list(map(float, (root.get("viewBox") or "").split()))[2:] == [900, 120 + 52 + 44]
    bar = marks(figure, "rect", "solid")[0]
    assert numbers(bar, "x", "y", "width") == pytest.approx([24, 192, 40 * SCALE], abs=0.02), "200 of 333 mm"


def test_small_things_have_room_for_their_number_and_no_scale_is_more_than_a_half(
    workshop: DesignFolder,
) -> None:
    """A seat of 30 mm is 15 wide in a room of 20."""
    small = (
        BLOCK[: BLOCK.index("[seat_bores.lower]")].replace("200 mm", "30 mm").replace('wall = "40 mm"\n', "")
    )
    (figure,) = figures(workshop, {"block.toml": small, "passage.toml": PASSAGE})
    assert figure.held.scale == pytest.approx(0.5)
    assert circles(figure, "live")[0] == pytest.approx([34, 44 + 37.5, 7.5], abs=0.02)
    assert circles(figure, "live")[1][0] == pytest.approx(24 + 20 + 26 + 37.5, abs=0.02)


def test_what_has_no_room_stands_on_the_next_shelf(workshop: DesignFolder) -> None:
    """Seven seats of 400 mm, 120 and 26 wide each: six reach to 24 + 876 = 900, the edge; the seventh has no room."""
    seats = "".join(f'[seat_bores.s{number}]\ndiameter = "400 mm"\n' for number in range(7))
    (figure,) = figures(workshop, {"block.toml": f'kind = "cylinder-block"\nid = "block"\n{seats}'})
    places = [one[:2] for one in circles(figure, "bore")]
    assert places[5] == pytest.approx([24 + 5 * 146 + 60, 104], abs=0.02)
    assert places[6] == pytest.approx([84, 172 + 104], abs=0.02)
    root = ElementTree.fromstring(figure.drawing)
    assert float((root.get("viewBox") or "").split()[3]) == pytest.approx(2 * 172 + 44)
    assert circles(figure, "balloon")[6] == pytest.approx([84, 172 + 22, 10], abs=0.02)
    assert figure.rows[6][0] == "7"


def test_what_is_not_stated_is_not_drawn(workshop: DesignFolder) -> None:
    assert len(drawn(workshop, ("block.toml", 'diameter = "180 mm"\n', "")).rows) == 3
    assert len(drawn(workshop, ("passage.toml", f'area = "{math.pi * 75**2:.6f} mm²"\n', "")).rows) == 3
    assert len(drawn(workshop, ("passage.toml", 'in_block = "block"\n', "")).rows) == 3
    assert len(drawn(workshop, ("block.toml", 'thickness = "20 mm"\n', "")).rows) == 3
    short = drawn(workshop, ("block.toml", 'length = "400 mm"\n', ""))
    assert short.rows[3][2] == "20 mm thick, 200 mm by not stated, between live steam and exhaust steam"
    assert boxes(short, "metal")[0][3] == pytest.approx(200 * (short.held.scale or 0), abs=0.02)
    bare = drawn(
        workshop,
        ("block.toml", 'chamber = "exhaust steam"\n', ""),
        ("passage.toml", 'length = "500 mm"\n', ""),
    )
    assert bare.rows[1][2].endswith(", steam not stated")
    assert bare.rows[2][2] == f"chest, {math.pi * 75**2:.6f} mm², live steam"
    assert not figures(
        workshop, {"block.toml": 'kind = "cylinder-block"\nid = "block"\n', "passage.toml": 'kind = "duty"\n'}
    )
