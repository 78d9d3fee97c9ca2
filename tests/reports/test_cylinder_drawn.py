"""Cylinders as drawn: liner, walls, pads, covers and chambers to scale, by hand from what the specs state."""

from __future__ import annotations

import math

import pytest

from speclint.errors import replace
from speclint.reports.pack.chambers_drawing import chamber_figures
from speclint.reports.pack.cylinder_drawing import liner_figures
from speclint.reports.pack.cylinder_sizes import cylinders_of
from speclint.reports.pack.figures import Figure
from speclint.testing import DesignFolder
from tests.example import of_one_cylinder
from tests.reports.figure_marks import inked, number, scale_of, size_of, size_of_row, texts
from tests.reports.held_drawings import all_figures


def test_a_liner_is_drawn_to_scale() -> None:
    """By the scale bar: length 900 mm, bore 500 mm, last bore 509 mm, each mark apart by so much."""
    figure = all_figures()["drawing-liner-left"]
    assert size_of(figure, "wall when new") == "39.00 mm"  # (578 − 500)/2
    assert size_of(figure, "wall at the last bore") == "34.50 mm"  # (578 − 509)/2
    scale = scale_of(figure, "200")
    last = [one for one in inked(figure, "line", "last") if number(one, "x2") - number(one, "x1") > 300]
    heights = sorted({number(one, "y1") for one in last})
    assert heights[-1] - heights[0] == pytest.approx(509 * scale, abs=0.05)
    longest = max(last, key=lambda one: number(one, "x2") - number(one, "x1"))
    assert number(longest, "x2") - number(longest, "x1") == pytest.approx((900 + 25.1) * scale, abs=0.1)
    assert {"Ø 500 new", "Ø 509 last", "Ø 578 outside", "900"} <= set(texts(figure))


def test_the_walls_at_new_and_last_bore_stand_side_by_side_to_one_scale() -> None:
    """Block 40 mm in both; liner 39 mm new, 34.5 mm and 4.5 mm bored out at the last bore."""
    figure = all_figures()["drawing-liner-left"]
    foot = max(number(one, "y") for one in inked(figure, "rect", "removed"))
    walls = [one for one in inked(figure, "rect", "metal") if number(one, "width") == 120.0]
    assert len(walls) == 4
    block, new, again, last = (number(one, "height") for one in walls)
    (removed,) = (number(one, "height") for one in inked(figure, "rect", "removed"))
    assert block == again
    assert block / 40 == pytest.approx(new / 39, rel=1e-3)
    assert last / 34.5 == pytest.approx(removed / 4.5, rel=5e-3)
    assert foot > 0


def test_pads_and_covers_stand_where_the_specs_put_them() -> None:
    """Collar's seat at 676 + 35 = −150 + 861 = 711 mm from the fixed point: back pad 711 ± 110, front 91 ± 90.

    The front cover's plate runs from 35 mm outwards by 50 mm, its flange from the recess's depth of 25 mm.
    """
    (cylinder,) = (one for one in cylinders_of(of_one_cylinder()) if one.liner.id == "liner-left")
    assert {pad.name: (pad.start, pad.end, pad.locates) for pad in cylinder.pads} == {
        "back": (pytest.approx(601.0), pytest.approx(821.0), True),
        "front": (pytest.approx(1.0), pytest.approx(181.0), False),
    }
    front, back = cylinder.covers
    assert (front.spec.id, front.out, front.inner, front.joint) == ("cover-front-left", -1, 35.0, -25.0)
    assert (back.spec.id, back.out, back.inner, back.joint) == ("cover-back-left", 1, 861.0, None)
    assert front.studs is not None
    assert (front.studs.circle, front.studs.size, front.studs.depth) == (740.0, 24.0, 55.0)
    figure = all_figures()["drawing-liner-left"]
    assert "flange not placed" in size_of(figure, "cover-back-left")
    assert "Where no spec states the face" in figure.says
    assert size_of(figure, "studs-front-left") == "24 of M24 on Ø 740 mm"


def test_a_cover_of_which_no_studs_are_stated_is_drawn_without_them_and_without_a_gasket() -> None:
    """Studs of M24 stand on a circle of 740 mm, one drawn above the axis and one below; the cover keeps its plate."""
    whole = of_one_cylinder()
    assert whole.design is not None
    specs = {name: spec for name, spec in whole.design.specs.items() if name != "studs-front-left"}
    bare = replace(whole, design=replace(whole.design, specs=specs))
    (figure,) = [one for one in liner_figures(bare) if one.name == "drawing-liner-left"]
    with_studs = all_figures()["drawing-liner-left"]
    assert len(inked(with_studs, "line", "land")) == len(inked(figure, "line", "land")) + 2  # above and below
    scale = with_studs.held.scale
    assert scale is not None

    def shanks(one: Figure) -> list[float]:
        high = 24 * scale
        drawn = [
            box for box in inked(one, "rect", "stud") if number(box, "height") == pytest.approx(high, abs=0.1)
        ]
        return [number(box, "y") + high / 2 for box in drawn]

    above, below = sorted(shanks(with_studs))
    assert below - above == pytest.approx(740 * scale, abs=0.2)
    assert shanks(figure) == []
    named = [row[-2] for row in figure.rows]
    assert "cover-front-left" in named
    assert "studs-front-left" not in named


LINER = """
kind = "cylinder-liner"
id = "liner"
bore = "500 mm"
outside_diameter = "578 mm"
length = "900 mm"
[ports.side]
from_collar = "100 mm"
height = "40 mm"
angle = "90 °"
width = "200 mm"
[ports.top]
from_collar = "400 mm"
height = "60 mm"
angle = "350 °"
width = "120 mm"
"""


def test_a_port_is_cut_where_the_plane_of_the_section_meets_it(workshop: DesignFolder) -> None:
    """200 mm of arc on 578 mm is ±19.8° about 90°: below only. ±11.9° about 350° reaches the top at 10° off."""
    assessment = workshop.write({"liner.toml": LINER}).assess()
    (cylinder,) = cylinders_of(assessment)
    assert [(one.start, one.end, one.above, one.below) for one in cylinder.openings] == [
        (80.0, 120.0, False, True),
        (370.0, 430.0, True, False),
    ]
    (figure,) = liner_figures(assessment)
    assert not inked(figure, "polygon", "metal"), "no block is stated, and none is drawn"
    assert len(inked(figure, "rect", "metal")) == 2 + 2 + 2  # two stretches each half, two walls enlarged
    assert size_of(figure, "last bore") == "not stated"
    narrow = LINER.replace('"120 mm"', '"90 mm"')  # ±8.9° no longer reaches the top
    (cylinder,) = cylinders_of(workshop.write({"liner.toml": narrow}).assess())
    assert [one.above for one in cylinder.openings] == [False, False]


def test_a_liner_without_its_main_sizes_is_not_drawn(workshop: DesignFolder) -> None:
    bare = LINER.replace('length = "900 mm"\n', "")
    assert not list(liner_figures(workshop.write({"liner.toml": bare}).assess()))


def test_chambers_of_a_block_are_drawn_to_one_scale() -> None:
    """Chest 45 000 mm²: Ø 239.4 mm as a round opening; the first seat bore Ø 170 mm in 170 + 2 × 22 = 214 mm."""
    figure = all_figures()["chambers-block-left"]
    scale = scale_of(figure, "200")
    radii = [number(one, "r") for one in inked(figure, "circle", "live")]
    assert any(radius == pytest.approx(math.sqrt(45000 / math.pi) * scale, abs=0.02) for radius in radii)
    assert any(radius == pytest.approx(85 * scale, abs=0.02) for radius in radii)
    rings = [number(one, "r") for one in inked(figure, "circle", "metal")]
    assert len(rings) == 8
    assert rings[0] == pytest.approx(107 * scale, abs=0.02)
    assert len(inked(figure, "circle", "spent")) == 4 + 1  # four seat bores and the belt
    assert "since no spec places them" in figure.says
    assert not list(chamber_figures(replace(of_one_cylinder(), design=None)))


def test_a_stud_circle_has_its_diameters_and_the_way_from_stud_to_stud() -> None:
    """24 studs on Ø 690: 690 sin 7.5° = 90.06 mm; ring 636 and 600, cover 750; nut face 33.2: 56.9 mm free."""
    figure = all_figures()["drawing-studs-back-left"]
    assert {"Ø 600 inside", "Ø 636 outside of the ring", "Ø 690 studs", "Ø 750 outside", "90.1 apart"} <= set(
        texts(figure)
    )
    assert size_of_row(figure, "free between the faces of two nuts") == ("56.9 mm",)
    assert len(inked(figure, "circle", "nut")) == len(inked(figure, "circle", "ghost")) == 24
    assert len(inked(figure, "polygon", "gasket")) == 1


def test_a_cover_is_drawn_with_the_thickness_that_it_needs() -> None:
    """Back cover: 76 mm of plate where 73.5 are needed, flange 45, hole 150, studs on 690, pressure to Ø 620.9."""
    figure = all_figures()["drawing-cover-back-left"]
    scale = scale_of(figure, "50")
    plate, flange = inked(figure, "rect", "metal")
    assert number(plate, "height") == pytest.approx(76 * scale, abs=0.05)
    assert number(plate, "width") == pytest.approx((499.8 - 150) / 2 * scale, abs=0.1)
    assert number(flange, "height") == pytest.approx(45 * scale, abs=0.05)
    (needed,) = inked(figure, "line", "last")
    assert number(needed, "y1") - number(plate, "y") == pytest.approx(73.523 * scale, abs=0.05)
    assert len(inked(figure, "path", "hatch")) == 2
    assert len(inked(figure, "line", "land")) == len(inked(figure, "rect", "bore")) == 1
    assert {"needs 73.5", "Ø 150 hole", "Ø 620.9 pressure", "Ø 690 studs"} <= set(texts(figure))


def test_an_end_of_a_cylinder_is_drawn_put_together() -> None:
    """Cover 54 mm thick, piston 8 mm from it with three grooves of 16 by 15.5 mm, flange 45 under a nut of M24."""
    figure = all_figures()["end-cover-front-left"]
    scale = scale_of(figure, "20")
    boxes = [
        (number(one, "width") / scale, number(one, "height") / scale)
        for one in inked(figure, "rect", "metal")
    ]
    assert any(wide == pytest.approx(54, abs=0.1) for wide, _ in boxes)  # the plate
    assert any(wide == pytest.approx(45, abs=0.1) for wide, _ in boxes)  # the flange
    assert any(wide == pytest.approx(150, abs=0.1) for wide, _ in boxes)  # the piston
    grooves = [
        one
        for one in inked(figure, "rect", "bore")
        if number(one, "width") == pytest.approx(16 * scale, abs=0.1)
    ]
    assert len(grooves) == 3
    assert len(inked(figure, "line", "land")) == 1, "the gasket"
    assert {"8 clearance", "54"} <= set(texts(figure))
    assert len(inked(figure, "path", "hatch")) == len(inked(figure, "rect", "metal"))
    assert len(boxes) == 9, (
        "cover and flange, piston, collar, recess, and liner and block before and after the port"
    )
