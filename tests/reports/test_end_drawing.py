"""An end of a cylinder put together: each part where its sizes put it, worked by hand for either end.

A place counts from the inner face of the cover into the bore, and out from the axis, in mm. On the front, where the
collar is, a place behind the collar's seat lies 35 mm nearer to the cover; on the back one counts from 860 mm back.
"""

from __future__ import annotations

from xml.etree import ElementTree

import pytest

from speclint.reports.pack.end_drawing import end_figures
from speclint.reports.pack.figures import Figure
from speclint.testing import DesignFolder
from tests.reports.small_cylinder import cylinder

#: A part in section: from where to where along the axis, and from what to what radius.
Place = tuple[float, float, float, float]

#: Front: the end of a stud is outermost, 25 + 45 + 20 + 12 mm before the seat, 137 before the face, and 12 mm more are
#: drawn, to 215 mm into the bore: 364 mm in 640. Back: 42 + 36 mm and 12 more, 305 mm in 640, but 217 mm in 430.
FRONT, BACK = 640 / (137 + 12 + 215), 430 / (372 - 155)


class View:
    """A figure whose marks are told in mm again."""

    def __init__(self, figure: Figure, scale: float, first: float) -> None:
        self.root = ElementTree.fromstring(figure.drawing)
        self.scale, self.first = scale, first
        assert figure.held.scale == pytest.approx(scale)

    def of(self, tag: str, ink: str) -> list[ElementTree.Element]:
        return [one for one in self.root.iter() if one.tag.endswith(f"}}{tag}") and one.get("class") == ink]

    def at(self, x: float, y: float) -> tuple[float, float]:
        """Out from the axis counts from 372 mm, 22 mm beyond the covers, at 60 from the top of the paper."""
        return (x - 70) / self.scale + self.first, 372 - (y - 60) / self.scale

    def boxes(self, ink: str) -> list[Place]:
        found = []
        for one in self.of("rect", ink):
            x, y, wide, high = (float(one.get(name, "nan")) for name in ("x", "y", "width", "height"))
            (start, top), (end, low) = self.at(x, y), self.at(x + wide, y + high)
            found.append((start, end, low, top))
        return found

    def lines(self, ink: str) -> list[Place]:
        found = []
        for one in self.of("line", ink):
            x1, y1, x2, y2 = (float(one.get(name, "nan")) for name in ("x1", "y1", "x2", "y2"))
            found.append((*self.at(x1, y1), *self.at(x2, y2)))
        return found

    def balloons(self) -> dict[str, tuple[tuple[float, float], tuple[float, float]]]:
        """By its number where a ring stands on the paper, and where in mm the end of its line is."""
        rings = [(float(one.get("cx", "")), float(one.get("cy", ""))) for one in self.of("circle", "balloon")]
        ends = [
            (x2, y2)
            for x1, y1, x2, y2 in (
                [float(one.get(name, "nan")) for name in ("x1", "y1", "x2", "y2")]
                for one in self.of("line", "thin")
            )
            if any(abs(((x1 - x) ** 2 + (y1 - y) ** 2) ** 0.5 - 10) < 0.02 for x, y in rings)
        ]
        numbers = [
            one.text or ""
            for one in self.root.iter()
            if one.tag.endswith("}text") and (one.text or "") in "12345"
        ]
        assert len(rings) == len(ends) == len(numbers)
        return {
            number: ((ring[0] - end[0], ring[1] - end[1]), self.at(*end))
            for number, ring, end in zip(numbers, rings, ends, strict=True)
        }


def view(workshop: DesignFolder, end: str, *changes: tuple[str, str, str]) -> View:
    front, back = end_figures(cylinder(workshop, *changes))
    return View(front, FRONT, -149) if end == "front" else View(back, BACK, -90)


def near(places: list[Place]) -> list[object]:
    return [pytest.approx(one, abs=0.02) for one in places]


def test_the_front_end_is_drawn_as_its_sizes_have_it(workshop: DesignFolder) -> None:
    drawn = view(workshop, "front")
    assert drawn.boxes("metal") == near(
        [
            (-35, 5, 280, 320),  # the block up to the port, which is from 40 to 80 behind the seat
            (45, 215, 280, 320),
            (-60, -35, 300, 320),  # round the recess, 25 deep
            (-60.1, -35, 250, 299.5),  # the collar
            (-35, 5, 250, 280.15),  # the liner
            (45, 215, 250, 280.15),
            (-54, 0, 155, 250),  # the plate of the cover, down to 95 mm below the bore
            (-105, -60, 250, 350),  # its flange
            (8, 158, 155, 248.5),  # the piston
        ]
    )
    assert drawn.lines("land") == near([(-60, 305, -60, 318)]), "the gasket"
    assert drawn.boxes("ghost") == near([(-60, -54, 205, 250), (-60, -5, 293, 357)]), "what joins, and a boss"
    assert drawn.boxes("bore") == near([(-105, -60, 312, 338), (48, 64, 233, 248.5)]), "a hole and a groove"
    assert drawn.boxes("stud") == near([(-137, -5, 313, 337), (-125, -105, 308.4, 341.6)])
    assert drawn.lines("axis") == near([(-143, 325, 1, 325)])
    assert drawn.lines("fine") == near([(-149 - 10 / FRONT, 155, 215 + 10 / FRONT, 155)])


def test_the_back_end_is_drawn_as_its_sizes_have_it(workshop: DesignFolder) -> None:
    drawn = view(workshop, "back")
    assert drawn.boxes("metal") == near(
        [
            (-42, 215, 280, 320),  # the block, to its end 902 mm from the seat
            (-40, 215, 250, 280.15),  # the liner, to its own at 900
            (-30, 0, 155, 250),
            (-78, -42, 250, 350),
            (8, 158, 155, 248.5),
        ]
    )
    assert drawn.boxes("ghost") == near([(-42, -30, 214, 250)])
    assert drawn.boxes("bore") == near([(102, 118, 233, 248.5)]), (
        "the groove, 150 − 40 − 16 from the back face"
    )
    assert not drawn.boxes("stud")
    assert not drawn.lines("land")


def test_the_numbers_point_at_their_parts(workshop: DesignFolder) -> None:
    """At 0.86 × 215 = 184.9 mm into the bore for liner and block; the ring stands off by so much on the paper."""
    front = view(workshop, "front").balloons()
    off, at = zip(*(front[number] for number in "12345"), strict=True)
    assert list(at) == near(
        [(184.9, 265.08), (184.9, 300), (-27, 228), (-115, 325), (38, 193.5)]  # type: ignore[list-item]
    )
    corner = 70 - 34 - (70 + (149 - 27) * FRONT)
    assert list(off) == near(
        [(44, -10.4), (44, -24), (corner, 24), (-30, -34), (40, 16)]  # type: ignore[list-item]
    )
    assert view(workshop, "back").balloons().keys() == {"1", "2", "3", "5"}


def test_clearance_and_thickness_are_measured_below(workshop: DesignFolder) -> None:
    """Arrows at the heights of 28 and 52 below the foot, from the face of the cover into the bore and out of it."""
    drawn = view(workshop, "front")
    foot = 60 + (372 - 155) * FRONT
    spans = [
        (drawn.at(x1, y1)[0], drawn.at(x2, y2)[0], y1 - foot)
        for x1, y1, x2, y2 in (
            [float(one.get(name, "nan")) for name in ("x1", "y1", "x2", "y2")]
            for one in drawn.of("line", "thin")
        )
        if y1 == y2
    ]
    assert spans == near([(0, 8, 28), (-54, 0, 52)])  # type: ignore[list-item]
    words = [one.text for one in drawn.root.iter() if one.tag.endswith("}text")]
    assert {"8 clearance", "54", "20 mm"} <= set(words)


def test_the_paper_ends_beyond_the_drawing_and_its_scale(workshop: DesignFolder) -> None:
    """80 units are 45 mm, the round length below it 20."""
    drawn = view(workshop, "front")
    foot = 60 + (372 - 155) * FRONT
    _, _, wide, high = map(float, (drawn.root.get("viewBox") or "").split())
    assert wide == pytest.approx(70 + 640 + 60, abs=0.01)
    assert high == pytest.approx(foot + 110, abs=0.01)
    bar = drawn.of("rect", "solid") + drawn.of("rect", "blank")
    assert [float(one.get("y", "")) for one in bar] == pytest.approx([foot + 84] * 5, abs=0.01)
    assert [float(one.get("width", "")) for one in bar] == pytest.approx([20 * FRONT / 5] * 5, abs=0.01)
    assert min(float(one.get("x", "")) for one in bar) == 70


def test_the_table_names_each_part_by_its_number(workshop: DesignFolder) -> None:
    front, back = end_figures(cylinder(workshop))
    assert front.heading == "cover-front on liner: the end of the cylinder put together"
    assert front.rows == (
        ("1", "liner", "bore 500 mm, outside 560.3 mm"),
        ("2", "block", "bored 560 mm"),
        ("3", "cover-front", "54 mm thick, flange 45 mm"),
        ("", "port front", "60 mm from the collar's seat, 40 mm high"),
        ("4", "studs", "M24 on Ø 650 mm"),
        ("", "gasket", "636 mm outside, 1.2 mm thick"),
        ("5", "piston", "Ø 497 mm, 150 mm long"),
        ("", "clearance at the dead centre, cold", "8 mm"),
    )
    assert [number for number, *_ in back.rows] == ["1", "2", "3", "", "5", ""]


SPIGOT = 'outside_diameter = "700 mm"\n', 'outside_diameter = "700 mm"\nspigot_diameter = "498 mm"\n'


def test_what_no_spec_states_is_left_out(workshop: DesignFolder) -> None:
    """Without a nut the stud ends 12 mm beyond the flange: 117 mm before the face, and 12 more."""
    front, _ = end_figures(
        cylinder(workshop, ("studs.toml", '[nut]\nengagement = "20 mm"\nface = "33.2 mm"\n', ""))
    )
    drawn = View(front, 640 / (117 + 12 + 215), -129)
    assert drawn.boxes("stud") == near([(-117, -5, 313, 337)])
    front, _ = end_figures(cylinder(workshop, ("studs.toml", 'edge_distance = "32 mm"\n', "")))
    assert View(front, FRONT, -149).boxes("ghost") == near([(-60, -54, 205, 250)]), "no boss"
    front, _ = end_figures(cylinder(workshop, ("studs.toml", 'inside = "610 mm"\n', "")))
    assert not View(front, FRONT, -149).lines("land"), "no gasket"
    for line in ('diameter = "497 mm"\n', 'length = "150 mm"\n'):
        front, _ = end_figures(cylinder(workshop, ("piston.toml", line, "")))
        drawn = View(front, FRONT, -149)
        assert len(drawn.boxes("metal")) == 8, "no piston"
        assert drawn.boxes("bore") == near([(-105, -60, 312, 338)]), "and no groove"
    front, _ = end_figures(cylinder(workshop, ("piston.toml", 'depth = "15.5 mm"\n', "")))
    assert len(View(front, FRONT, -149).boxes("bore")) == 1
    front, _ = end_figures(cylinder(workshop, ("piston.toml", 'at = "40 mm"', 'at = "195 mm"')))
    assert len(View(front, FRONT, -149).boxes("bore")) == 1, "a groove beyond what is drawn: 8 + 195 + 16"
    front, _ = end_figures(cylinder(workshop, ("block.toml", 'wall = "40 mm"\n', "")))
    metal = View(front, FRONT, -149).boxes("metal")
    assert len(metal) == 6, "no block"
    front, _ = end_figures(cylinder(workshop, ("cover-front.toml", *SPIGOT)))
    assert ("", "spigot", "Ø 498 mm in the opening") in front.rows
    front, _ = end_figures(
        cylinder(workshop, ("cover-front.toml", SPIGOT[0], f'{SPIGOT[1]}central_hole = "330 mm"\n'))
    )
    assert View(front, FRONT, -149).boxes("metal")[6] == pytest.approx((-54, 0, 165, 250), abs=0.02)
