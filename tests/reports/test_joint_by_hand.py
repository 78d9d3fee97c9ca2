"""A circle of studs seen from outside, where each line stands, worked by hand.

Six studs of M24 on 600 mm hold a cover of 700 mm, which takes 390 units: 0.557143 to the millimetre. A spanner for M24
needs less than the 100 mm that are left outside the circle. The middle of the view is at 235.
"""

from __future__ import annotations

import math
from xml.etree import ElementTree

import pytest

from speclint.checking import Processes, assess
from speclint.handbook.bolted_joints import spanner_pitch
from speclint.reports.pack.figures import Figure
from speclint.reports.pack.joint_drawing import between, chord, joint_figures
from speclint.testing import DesignFolder, changed_files
from tests.reports.placed_marks import numbers

COVER = """
kind = "cylinder-cover"
id = "cover"
outside_diameter = "700 mm"
"""
STUDS = """
kind = "bolted-joint"
id = "studs"
holds = "cover"
thread = "M24"
count = 6
circle = "600 mm"
hole = "26 mm"
[gasket]
outside = "560 mm"
inside = "520 mm"
[nut]
face = "33.2 mm"
"""
SCALE = 390 / 700


def drawn(workshop: DesignFolder, *changes: tuple[str, str, str]) -> Figure:
    (figure,) = figures(workshop, *changes)
    return figure


def figures(workshop: DesignFolder, *changes: tuple[str, str, str]) -> list[Figure]:
    workshop.write(changed_files({"cover.toml": COVER, "studs.toml": STUDS}, *changes))
    found = assess([workshop.root], workshop.loaded, (), processes=Processes(0))
    assert not found.complaints
    return list(joint_figures(found))


def marks(figure: Figure, tag: str, ink: str) -> list[ElementTree.Element]:
    root = ElementTree.fromstring(figure.drawing)
    return [one for one in root.iter() if one.tag.endswith(f"}}{tag}") and one.get("class") == ink]


def circles(figure: Figure, ink: str) -> list[list[float]]:
    return [numbers(one, "cx", "cy", "r") for one in marks(figure, "circle", ink)]


def lines(figure: Figure, ink: str) -> list[list[float]]:
    return [numbers(one, "x1", "y1", "x2", "y2") for one in marks(figure, "line", ink)]


def says(figure: Figure) -> dict[str, list[float]]:
    root = ElementTree.fromstring(figure.drawing)
    return {one.text or "": numbers(one, "x", "y") for one in root.iter() if one.tag.endswith("}text")}


def near(places: list[list[float]]) -> list[object]:
    return [pytest.approx(one, abs=0.02) for one in places]


def places() -> list[tuple[float, float]]:
    """Six studs from the top on."""
    turns = [math.radians(60 * number - 90) for number in range(6)]
    return [(235 + 300 * SCALE * math.cos(turn), 235 + 300 * SCALE * math.sin(turn)) for turn in turns]


def test_each_stud_has_its_hole_its_nut_and_the_room_of_a_spanner(workshop: DesignFolder) -> None:
    figure = drawn(workshop)
    pitch = spanner_pitch(0.024) * 1e3
    assert circles(figure, "ghost") == near([[x, y, pitch / 2 * SCALE] for x, y in places()])
    assert circles(figure, "nut") == near([[x, y, 16.6 * SCALE] for x, y in places()])
    assert circles(figure, "edge")[-6:] == near([[x, y, 13 * SCALE] for x, y in places()])
    assert circles(figure, "axis") == near([[235, 235, 300 * SCALE]])
    assert lines(figure, "axis") == [[26, 235, 444, 235], [235, 26, 235, 444]]


def test_the_ring_of_the_gasket_lies_between_its_two_edges(workshop: DesignFolder) -> None:
    figure = drawn(workshop)
    assert circles(figure, "edge")[:3] == near(
        [[235, 235, 350 * SCALE], [235, 235, 280 * SCALE], [235, 235, 260 * SCALE]]
    )
    (ring,) = marks(figure, "polygon", "gasket")
    flat = [float(one) for one in ring.get("points", "").replace(",", " ").split()]
    points = list(zip(flat[::2], flat[1::2], strict=True))
    far = [math.dist(one, (235, 235)) for one in points]
    assert far == pytest.approx([280 * SCALE] * 121 + [260 * SCALE] * 121, abs=0.02)
    assert points[0] == pytest.approx((235 + 280 * SCALE, 235), abs=0.02)
    assert points[30] == pytest.approx((235, 235 + 280 * SCALE), abs=0.02)
    assert points[121] == pytest.approx((235 + 260 * SCALE, 235), abs=0.02)
    assert points[151] == pytest.approx((235, 235 - 260 * SCALE), abs=0.02), "it returns the other way"


def test_a_ring_of_which_the_inside_is_not_stated_is_not_drawn(workshop: DesignFolder) -> None:
    figure = drawn(workshop, ("studs.toml", 'inside = "520 mm"\n', ""))
    assert not marks(figure, "polygon", "gasket")
    assert ("gasket, outside and inside", "560 mm and not stated") in figure.rows
    ground = drawn(workshop, ("studs.toml", "[gasket]\n", "[ground_face]\n"))
    assert len(marks(ground, "polygon", "gasket")) == 1
    assert ("gasket, outside and inside", "560 mm and 520 mm") in ground.rows


def test_diameters_stand_below_the_least_nearest(workshop: DesignFolder) -> None:
    figure = drawn(workshop)
    rows = [
        (520, 476, "inside"),
        (560, 502, "outside of the ring"),
        (600, 528, "studs"),
        (700, 554, "outside"),
    ]
    fine = [
        [235 + side * size / 2 * SCALE, 235, 235 + side * size / 2 * SCALE, y + 4]
        for size, y, _ in rows
        for side in (-1, 1)
    ]
    assert lines(figure, "fine") == near(fine)
    thin = lines(figure, "thin")
    said = says(figure)
    for size, y, name in rows:
        span = [235 - size / 2 * SCALE, y, 235 + size / 2 * SCALE, y]
        assert any(one == pytest.approx(span, abs=0.02) for one in thin)
        assert said[f"Ø {size} {name}"] == [235, y - 4]
    root = ElementTree.fromstring(figure.drawing)
    assert list(map(float, (root.get("viewBox") or "").split()))[2:] == [470, 470 + 4 * 26 + 44]
    bar = marks(figure, "rect", "solid")[0]
    assert numbers(bar, "x", "y", "width") == pytest.approx([20, 598, 40 * SCALE], abs=0.02), "200 of 215 mm"


def test_the_distance_of_two_studs_is_measured_from_the_first(workshop: DesignFolder) -> None:
    """Of a sixth of the circle it is the radius: 300 mm; words stand 223 out, half of the way to the second."""
    figure = drawn(workshop)
    first, second = places()[:2]
    thin = lines(figure, "thin")
    assert any(one == pytest.approx([*first, *second], abs=0.02) for one in thin)
    at = (235 + 223 * 0.5, 235 - 223 * math.cos(math.radians(30)))
    foot = ((first[0] + second[0]) / 2, (first[1] + second[1]) / 2)
    assert any(one == pytest.approx([*foot, *at], abs=0.02) for one in thin)
    assert says(figure)["300.0 apart"] == pytest.approx([at[0] + 4, at[1] + 4], abs=0.02)
    many = drawn(workshop, ("studs.toml", "count = 6", "count = 40"))
    (apart,) = (name for name in says(many) if name.endswith(" apart"))
    assert apart == "47.1 apart"
    assert says(many)[apart][1] == pytest.approx(18, abs=0.02), "no nearer than 14 to the edge of the paper"


def test_the_chord_and_the_room_between_two_nuts() -> None:
    assert chord(0.6, 6) == pytest.approx(0.3)
    assert between(0.6, 6, 0.0332) == pytest.approx(0.2668)


def test_the_table_of_a_joint(workshop: DesignFolder) -> None:
    figure = drawn(workshop)
    assert figure.heading == "studs: stud circle, gasket and room between the nuts"
    assert figure.rows == (
        ("stud circle", "600 mm"),
        ("studs", "6 of M24"),
        ("from stud to stud, straight", "300.0 mm"),
        ("free between the faces of two nuts", "266.8 mm"),
        ("nut face", "33.2 mm"),
        ("least pitch for a spanner", figure.rows[5][1]),
        ("clearance hole", "26 mm"),
        ("gasket, outside and inside", "560 mm and 520 mm"),
        ("outside of the part held", "700 mm"),
    )
    assert figure.rows[5][1].endswith(" mm")
    holes = drawn(workshop, ("studs.toml", 'face = "33.2 mm"\n', 'engagement = "24 mm"\n'))
    assert holes.rows[3][1] == "274.0 mm", "between the holes"
    bare = drawn(
        workshop,
        ("studs.toml", 'face = "33.2 mm"\n', 'engagement = "24 mm"\n'),
        ("studs.toml", 'hole = "26 mm"\n', ""),
    )
    assert bare.rows[3][1] == "nut face not stated"


def test_without_a_known_thread_there_is_no_room_for_a_spanner(workshop: DesignFolder) -> None:
    figure = drawn(workshop, ("studs.toml", 'thread = "M24"\n', ""))
    assert not circles(figure, "ghost")
    assert ("studs", "6 of thread not stated") in figure.rows
    assert ("least pitch for a spanner", "thread not known") in figure.rows


def test_without_a_cover_the_circle_and_a_spanner_take_the_room(workshop: DesignFolder) -> None:
    figure = drawn(workshop, ("studs.toml", 'holds = "cover"\n', ""))
    assert figure.held.scale == pytest.approx(390 / (600 + spanner_pitch(0.024) * 1e3))
    assert ("outside of the part held", "not drawn") in figure.rows
    assert len(circles(figure, "edge")) == 2 + 6
    nuts = drawn(workshop, ("studs.toml", 'holds = "cover"\nthread = "M24"\n', ""))
    assert nuts.held.scale == pytest.approx(390 / 633.2)


@pytest.mark.parametrize(("count", "there"), [(2, 0), (3, 1), (200, 1), (201, 0)])
def test_from_three_studs_to_two_hundred_are_drawn(workshop: DesignFolder, count: int, there: int) -> None:
    assert len(figures(workshop, ("studs.toml", "count = 6", f"count = {count}"))) == there


def test_without_a_circle_or_a_number_nothing_is_drawn(workshop: DesignFolder) -> None:
    assert not figures(workshop, ("studs.toml", 'circle = "600 mm"\n', ""))
    assert not figures(workshop, ("studs.toml", "count = 6\n", ""))
