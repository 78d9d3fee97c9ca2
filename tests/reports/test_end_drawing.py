"""An end of a cylinder put together: each part where its sizes put it, worked by hand for either end.

A place counts from the inner face of the cover into the bore, and out from the axis, in mm. On the front, where the
collar is, a place behind the collar's seat lies 35 mm nearer to the cover; on the back one counts from 860 mm back.
"""

from __future__ import annotations

import pytest

from speclint.reports.pack.end_drawing import end_figures
from speclint.reports.pack.figures import Figure
from speclint.testing import DesignFolder
from tests.reports.placed_marks import Placed, near, numbers
from tests.reports.small_cylinder import cylinder

#: Front: the end of a stud is outermost, 25 + 45 + 20 + 12 mm before the seat, 137 before the face, and 12 mm more are
#: drawn, to 215 mm into the bore: 364 mm in 640. Back: 42 + 36 mm and 12 more, 305 mm in 640, but 217 mm in 430.
FRONT, BACK = 640 / (137 + 12 + 215), 430 / (372 - 155)


def view(workshop: DesignFolder, end: str, *changes: tuple[str, str, str]) -> Placed:
    front, back = end_figures(cylinder(workshop, *changes))
    return placed(front, FRONT, -149) if end == "front" else placed(back, BACK, -90)


def placed(figure: Figure, scale: float, first: float) -> Placed:
    """Out from the axis counts from 372 mm, 22 mm beyond the covers, at 60 from the top of the paper."""
    return Placed(figure, scale, (70, 60), (first, 372))


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
    found = view(workshop, "front").balloons()
    corner = 70 - 34 - (70 + (149 - 27) * FRONT)
    assert [found[number] for number in "12345"] == near(
        [
            (44, -10.4, 184.9, 265.08),
            (44, -24, 184.9, 300),
            (corner, 24, -27, 228),
            (-30, -34, -115, 325),
            (40, 16, 38, 193.5),
        ]
    )
    assert view(workshop, "back").balloons().keys() == {"1", "2", "3", "5"}


def test_clearance_and_thickness_are_measured_below(workshop: DesignFolder) -> None:
    """Arrows at the heights of 28 and 52 below the foot, from the face of the cover into the bore and out of it."""
    drawn = view(workshop, "front")
    foot = 60 + (372 - 155) * FRONT
    thin = [numbers(one, "x1", "y1", "x2", "y2") for one in drawn.of("line", "thin")]
    spans = [(drawn.at(x1, y1)[0], drawn.at(x2, y2)[0], y1 - foot, 0) for x1, y1, x2, y2 in thin if y1 == y2]
    assert spans == near([(0, 8, 28, 0), (-54, 0, 52, 0)])
    assert {"8 clearance", "54", "20 mm"} <= drawn.says().keys()


def test_the_paper_ends_beyond_the_drawing_and_its_scale(workshop: DesignFolder) -> None:
    """80 units are 45 mm, the round length below it 20."""
    drawn = view(workshop, "front")
    foot = 60 + (372 - 155) * FRONT
    assert drawn.size() == pytest.approx((70 + 640 + 60, foot + 110), abs=0.01)
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
    drawn = placed(front, 640 / (117 + 12 + 215), -129)
    assert drawn.boxes("stud") == near([(-117, -5, 313, 337)])
    front, _ = end_figures(cylinder(workshop, ("studs.toml", 'edge_distance = "32 mm"\n', "")))
    assert placed(front, FRONT, -149).boxes("ghost") == near([(-60, -54, 205, 250)]), "no boss"
    front, _ = end_figures(cylinder(workshop, ("studs.toml", 'inside = "610 mm"\n', "")))
    assert not placed(front, FRONT, -149).lines("land"), "no gasket"
    for line in ('diameter = "497 mm"\n', 'length = "150 mm"\n'):
        front, _ = end_figures(cylinder(workshop, ("piston.toml", line, "")))
        drawn = placed(front, FRONT, -149)
        assert len(drawn.boxes("metal")) == 8, "no piston"
        assert drawn.boxes("bore") == near([(-105, -60, 312, 338)]), "and no groove"
    front, _ = end_figures(cylinder(workshop, ("piston.toml", 'depth = "15.5 mm"\n', "")))
    assert len(placed(front, FRONT, -149).boxes("bore")) == 1
    front, _ = end_figures(cylinder(workshop, ("piston.toml", 'at = "40 mm"', 'at = "195 mm"')))
    assert len(placed(front, FRONT, -149).boxes("bore")) == 1, "a groove beyond what is drawn: 8 + 195 + 16"
    front, _ = end_figures(cylinder(workshop, ("block.toml", 'wall = "40 mm"\n', "")))
    metal = placed(front, FRONT, -149).boxes("metal")
    assert len(metal) == 6, "no block"
    front, _ = end_figures(cylinder(workshop, ("cover-front.toml", *SPIGOT)))
    assert ("", "spigot", "Ø 498 mm in the opening") in front.rows
    front, _ = end_figures(
        cylinder(workshop, ("cover-front.toml", SPIGOT[0], f'{SPIGOT[1]}central_hole = "330 mm"\n'))
    )
    assert placed(front, FRONT, -149).boxes("metal")[6] == pytest.approx((-54, 0, 165, 250), abs=0.02)


def test_each_end_has_its_own_clearance(workshop: DesignFolder) -> None:
    """By the place of its cover's inner face, 35 and 860 mm from the collar's seat."""
    own = (
        "block.toml",
        'face_from_seat = "860 mm"\nclearance = "8 mm"',
        'face_from_seat = "860 mm"\nclearance = "9 mm"',
    )
    front, back = end_figures(cylinder(workshop, own))
    assert front.rows[-1] == ("", "clearance at the dead centre, cold", "8 mm")
    assert back.rows[-1] == ("", "clearance at the dead centre, cold", "9 mm")
    assert placed(front, FRONT, -149).boxes("metal")[-1] == pytest.approx((8, 158, 155, 248.5), abs=0.02)
    assert placed(back, BACK, -90).boxes("metal")[-1] == pytest.approx((9, 159, 155, 248.5), abs=0.02)


def test_without_a_piston_there_is_neither_its_rim_nor_its_number(workshop: DesignFolder) -> None:
    """The clearance is then told, and not measured."""
    front, _ = end_figures(cylinder(workshop, ("piston.toml", 'runs_in = "liner"\n', "")))
    drawn = placed(front, FRONT, -149)
    assert len(drawn.boxes("metal")) == 8
    assert drawn.balloons().keys() == {"1", "2", "3", "4"}
    assert "8 clearance" not in drawn.says()
    assert [number for number, *_ in front.rows] == ["1", "2", "3", "", "4", "", ""]
    assert front.rows[-1] == ("", "clearance at the dead centre, cold", "8 mm")


def test_a_cover_whose_joint_is_not_placed_is_drawn_by_its_plate_alone(workshop: DesignFolder) -> None:
    """Of no recess the bottom is not known: 54 mm of plate and 12 more are outermost, the block's wall and 22 highest.

    281 mm in 640; the studs stand in the table alone, without a number.
    """
    front, _ = end_figures(cylinder(workshop, ("block.toml", 'recess_depth = "25 mm"\n', "")))
    drawn = Placed(front, 640 / (54 + 12 + 215), (70, 60), (-66, 342))
    assert drawn.boxes("metal") == near(
        [
            (-35, 5, 280, 320),
            (45, 215, 280, 320),
            (-60.1, -35, 250, 299.5),
            (-35, 5, 250, 280.15),
            (45, 215, 250, 280.15),
            (-54, 0, 155, 250),
            (8, 158, 155, 248.5),
        ]
    )
    assert not [*drawn.boxes("stud"), *drawn.boxes("ghost"), *drawn.lines("land"), *drawn.lines("axis")]
    assert drawn.balloons().keys() == {"1", "2", "3", "5"}
    assert [(number, what) for number, what, _ in front.rows][4] == ("", "studs")
