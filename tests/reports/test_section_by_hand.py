"""A cylinder in section, each part of it where its sizes put it, worked by hand, and what is read of it before.

A place counts from the collar's seat, which is 35 mm before the inner face of the front cover, and out from the axis.
The front is outermost at the end of a stud, 102 mm before the seat; at the back 40 mm beyond the block are left, to 942
mm. The bosses of the studs reach to 357 mm from the axis; the face of the frame is 350 mm below it, and 30 mm are left.
"""

from __future__ import annotations

import pytest

from speclint.reports.pack.cylinder_drawing import liner_figures
from speclint.reports.pack.cylinder_sizes import Cylinder, Opening, cylinders_of
from speclint.reports.pack.figures import Figure
from speclint.testing import DesignFolder
from tests.reports.placed_marks import Placed, near, numbers
from tests.reports.small_cylinder import PADS, cylinder

SCALE = 700 / (942 + 102)
AXIS = 40 + 357 * SCALE
FOOT = AXIS + 380 * SCALE
DRIVE = ("block.toml", "[drive]\n", f"{PADS}[drive]\n")
RELIEVED = (
    "block.toml",
    "[ports.front]\n",
    '[bores.main.relieved.middle]\nstarts = "200 mm"\nends = "300 mm"\n[ports.front]\n',
)
STOP = ("liner.toml", 'free_end_stop = "cover"', 'free_end_stop = "shoulder"')


def section(workshop: DesignFolder, *changes: tuple[str, str, str]) -> tuple[Figure, Placed]:
    (figure,) = liner_figures(cylinder(workshop, *changes))
    return figure, Placed(figure, SCALE, (40, 40), (-102, 357))


def sizes(workshop: DesignFolder, *changes: tuple[str, str, str]) -> Cylinder:
    (found,) = cylinders_of(cylinder(workshop, *changes))
    return found


def both(*places: tuple[float, float, float, float]) -> list[object]:
    """Above the axis and below it."""
    return near(list(places)) + near([(start, end, -high, -low) for start, end, low, high in places])


def test_the_block_is_broken_by_the_port_above_and_whole_below(workshop: DesignFolder) -> None:
    _, drawn = section(workshop)
    first, second, whole = drawn.shapes("metal")
    recess = [(-25, 320), (-25, 300), (0, 300), (0, 280)]
    assert first == near([*recess, (40, 280), (40, 320)])
    assert second == near([(80, 320), (80, 280), (902, 280), (902, 320)])
    below = [*recess, (902, 280), (902, 320)]
    assert whole == near([(x, -y) for x, y in below])


def test_the_block_runs_on_beyond_a_shoulder_and_is_broken_off(workshop: DesignFolder) -> None:
    """26 mm beyond it; the shoulder reaches in to the bore of the covers, 250 mm, and its flange is not placed."""
    figure, drawn = section(workshop, STOP)
    recess = [(-25, 320), (-25, 300), (0, 300), (0, 280)]
    shoulder = [(902, 280), (902, 250), (928, 250), (928, 320)]
    assert drawn.shapes("metal")[1] == near([(80, 320), (80, 280), *shoulder])
    assert drawn.shapes("metal")[2] == near([(x, -y) for x, y in (*recess, *shoulder)])
    assert drawn.lines("erased") == near([(928, 250, 928, 320), (928, -250, 928, -320)])
    above, below = drawn.shapes("thin", "polyline")
    off = 5 / SCALE
    broken = [(928, 250), (928, 278), (928 - off, 282.2), (928 + off, 287.8), (928, 292), (928, 320)]
    assert above == near(broken)
    assert below == near([(x, -y) for x, y in broken])
    assert "only its plate inside the bore is drawn" in figure.says
    assert ("5", "cover-back", "30 mm thick, flange 36 mm, Ø 700 mm; flange not placed") in figure.rows
    assert len(drawn.boxes("ghost")) == 4, "those of the front cover and its studs"


def test_the_liner_stands_in_it_with_collar_lands_and_last_bore(workshop: DesignFolder) -> None:
    _, drawn = section(workshop, RELIEVED)
    assert drawn.boxes("metal")[:3] == near(
        [(-25.1, 0, 250, 299.5), (0, 40, 250, 280.15), (80, 900, 250, 280.15)]
    )
    assert drawn.boxes("metal")[3:5] == near([(-25.1, 0, -299.5, -250), (0, 900, -280.15, -250)])
    lands = [(5, 280.15, 35, 280.15), (120, 280.15, 890, 280.15)]
    assert drawn.lines("land")[:4] == near([*lands, *((a, -b, c, -d) for a, b, c, d in lands)])
    assert drawn.lines("last")[:2] == near([(-25.1, 254.5, 900, 254.5), (-25.1, -254.5, 900, -254.5)])
    assert drawn.lines("gap") == near([(200, 282, 300, 282), (200, -282, 300, -282)])
    assert not drawn.lines("edge"), "covers shut both ends"
    end = 942 + 16 / SCALE
    assert drawn.lines("axis")[-1] == pytest.approx((-102 - 16 / SCALE, 0, end, 0), abs=0.02)


def test_an_end_without_a_cover_is_open(workshop: DesignFolder) -> None:
    """Without the front cover with its studs the recess is outermost, without the back one the block."""
    (figure,) = liner_figures(cylinder(workshop, ("cover-back.toml", 'thickness = "30 mm"\n', "")))
    drawn = Placed(figure, SCALE, (40, 40), (-102, 357))
    assert drawn.lines("edge") == near([(900, 0, 900, 250), (900, 0, 900, -250)])
    (figure,) = liner_figures(cylinder(workshop, ("cover-front.toml", 'thickness = "54 mm"\n', "")))
    scale = 700 / (942 + 25.1)
    drawn = Placed(figure, scale, (40, 40), (-25.1, 350))
    assert drawn.lines("edge") == near([(-25.1, 0, -25.1, 250), (-25.1, 0, -25.1, -250)])


def test_covers_stand_on_their_faces_with_what_joins_them(workshop: DesignFolder) -> None:
    """The front plate from 35 mm out, its flange on the bottom of the recess; the back one on the end of the block."""
    _, drawn = section(workshop)
    plates = [(-19, 35, -250, 250), (860, 890, -250, 250)]
    front, back = (-70, -25, 250, 350), (902, 938, 250, 350)
    below = [(a, b, -d, -c) for a, b, c, d in (front, back)]
    assert drawn.boxes("metal")[5:11] == near([plates[0], front, below[0], plates[1], back, below[1]])
    ghosts = drawn.boxes("ghost")
    assert ghosts[:4] == both((-25, -19, 205, 250)) + both((890, 902, 214, 250))
    assert drawn.lines("land")[4:] == near([(-25, 305, -25, 318), (-25, -305, -25, -318)])


def test_a_cover_with_a_hole_is_in_two_halves(workshop: DesignFolder) -> None:
    hole = ("cover-back.toml", 'of_end = "back"\n', 'of_end = "back"\ncentral_hole = "90 mm"\n')
    _, drawn = section(workshop, hole)
    assert drawn.boxes("metal")[8:10] == near([(860, 890, 45, 250), (860, 890, -250, -45)])


def test_a_cover_whose_plate_meets_its_flange_needs_nothing_between(workshop: DesignFolder) -> None:
    """40 mm thick the plate ends 5 mm before the seat, as far as from the flange; 60 mm thick it is as far as that."""
    thick = ("cover-front.toml", 'thickness = "54 mm"', 'thickness = "60 mm"')
    _, drawn = section(workshop, thick)
    assert not [one for one in drawn.boxes("ghost") if one[3] == pytest.approx(250, abs=0.1) and one[0] < 0]
    back = ("cover-back.toml", 'thickness = "30 mm"', 'thickness = "42 mm"')
    _, drawn = section(workshop, back)
    assert not [one for one in drawn.boxes("ghost") if one[3] == pytest.approx(250, abs=0.1) and one[0] > 0]


def test_studs_stand_in_their_bosses_with_hole_and_nut(workshop: DesignFolder) -> None:
    _, drawn = section(workshop)
    assert drawn.boxes("ghost")[4:] == both((-25, 30, 293, 357))
    assert drawn.boxes("bore") == both((-70, -25, 312, 338))
    shank, nut = both((-102, 30, 313, 337)), both((-90, -70, 308.4, 341.6))
    assert drawn.boxes("stud") == [shank[0], nut[0], shank[1], nut[1]]
    assert drawn.lines("axis")[:2] == near([(-110, 325, 38, 325), (-110, -325, 38, -325)])
    _, drawn = section(workshop, ("studs.toml", 'face = "33.2 mm"\n', ""))
    assert drawn.boxes("stud") == shank, "of the nut the width is not stated"


def test_the_frame_lies_below_with_its_pads(workshop: DesignFolder) -> None:
    """The seat at 735 mm from the fixed point: pads about 135 and 735 mm, 180 and 220 mm wide, 30 mm deep."""
    figure, drawn = section(workshop, DRIVE)
    pads = [one for one in drawn.boxes("metal") if one[3] == pytest.approx(-320, abs=0.05)]
    assert pads == near([(45, 225, -350, -320), (625, 845, -350, -320)])
    assert drawn.lines("edge") == near([(40, -350, 850, -350)])
    line = AXIS + 350 * SCALE
    said = drawn.says()
    assert said["pad front, slides"] == pytest.approx((40 + (45 + 102) * SCALE + 26, line + 18), abs=0.02)
    assert said["pad back, locates"] == pytest.approx((40 + (625 + 102) * SCALE + 26, line + 18), abs=0.02)
    assert said["face of the frame"] == pytest.approx(
        (40 + (855 + 102) * SCALE - 5 * SCALE + 6, line + 4), abs=0.02
    )
    assert (445, 0, 445, -350) in [tuple(map(round, one)) for one in drawn.lines("thin")]
    x = 40 + (445 + 102) * SCALE
    assert said["350"] == pytest.approx((x - 7, (AXIS + line) / 2), abs=0.02)
    assert "below it that towards the frame" in figure.says
    assert figure.rows[-3:] == (
        ("", "axis from the frame", "350 mm"),
        ("", "pad front", "180 mm along the frame, 30 mm high; slides"),
        ("", "pad back", "220 mm along the frame; locates"),
    )


def test_diameters_stand_across_the_axis_and_the_length_below(workshop: DesignFolder) -> None:
    """At 0.3, 0.5 and 0.7 of the length; the length 16 below the foot, its bar of 200 mm 44 below."""
    _, drawn = section(workshop)
    thin = [tuple(round(number, 1) for number in one) for one in drawn.lines("thin")]
    for place in ((270, 250, 270, -250), (450, 254.5, 450, -254.5), (630, 280.1, 630, -280.1)):
        assert any(one == pytest.approx(place, abs=0.1) for one in thin), place
    said = drawn.says()
    for share, words in ((270, "Ø 500 new"), (450, "Ø 509 last"), (630, "Ø 560.3 outside")):
        assert said[words] == pytest.approx((40 + (share + 102) * SCALE - 7, AXIS - 8), abs=0.02)
    (length,) = (
        one
        for one in drawn.of("line", "thin")
        if numbers(one, "y1") == pytest.approx([FOOT + 16], abs=0.02)
        and numbers(one, "y1") == numbers(one, "y2")
    )
    assert numbers(length, "x1", "x2") == pytest.approx([40 + 102 * SCALE, 40 + 1002 * SCALE], abs=0.02)
    bar = [
        one for one in drawn.of("rect", "solid") if numbers(one, "y") == pytest.approx([FOOT + 44], abs=0.02)
    ]
    assert [numbers(one, "width")[0] for one in bar] == pytest.approx([40 * SCALE] * 3, abs=0.02)
    assert numbers(bar[0], "x") == [40]
    assert drawn.size() == pytest.approx((40 + 700 + 90, FOOT + 74 + 226), abs=0.02)


def test_numbers_point_at_the_parts(workshop: DesignFolder) -> None:
    _, drawn = section(workshop)
    ends = {name: one[2:] for name, one in drawn.balloons().items()}
    assert ends == {
        "1": pytest.approx((198, 265.08), abs=0.02),
        "2": pytest.approx((360, 300), abs=0.02),
        "3": pytest.approx((8, 166.67), abs=0.02),
        "4": pytest.approx((30, 325), abs=0.02),
        "5": pytest.approx((875, 166.67), abs=0.02),
    }
    off = {name: (one[0] / SCALE, -one[1] / SCALE) for name, one in drawn.balloons().items()}
    assert off == {
        "1": pytest.approx((0, 180 - 265.08), abs=0.03),
        "2": pytest.approx((0, 70), abs=0.03),
        "3": pytest.approx((90, 0), abs=0.03),
        "4": pytest.approx((90, 0), abs=0.03),
        "5": pytest.approx((60, 0), abs=0.03),
    }


def test_the_walls_stand_beside_each_other_below(workshop: DesignFolder) -> None:
    """Block and liner when new, 40 + 30.15 mm, in 150: 2.1383 to the millimetre; 25.65 mm are left at the last bore."""
    _, drawn = section(workshop)
    top, each = FOOT + 74 + 34, 150 / 70.15
    walls = [numbers(one, "x", "y", "width", "height") for one in drawn.of("rect", "metal")[-4:]]
    assert walls == [
        pytest.approx([x, y, 120, high * each], abs=0.02)
        for x, y, high in (
            (150, top, 40),
            (150, top + 40 * each, 30.15),
            (440, top, 40),
            (440, top + 40 * each, 25.65),
        )
    ]
    (gone,) = drawn.of("rect", "removed")
    left = top + (40 + 25.65) * each
    assert numbers(gone, "x", "y", "width", "height") == pytest.approx([440, left, 120, 4.5 * each], abs=0.02)
    line = drawn.of("line", "last")[-1]
    assert numbers(line, "x1", "y1", "x2", "y2") == pytest.approx([434, left, 566, left], abs=0.02)
    said = drawn.says()
    assert said["wall at the new bore"] == pytest.approx((210, FOOT + 74 + 18), abs=0.02)
    assert said["wall at the last bore"] == pytest.approx((500, FOOT + 74 + 18), abs=0.02)
    assert said["4.5 bored out"] == pytest.approx((572, top + 150), abs=0.02)
    assert said["30.15"][1] == pytest.approx(top + (40 + 15.075) * each + 4, abs=0.02)
    places = [tuple(numbers(one, "x", "y")) for one in drawn.texts() if one.text in ("block", "liner")]
    assert places == [
        pytest.approx(one, abs=0.02)
        for one in (
            (282, top + 20 * each + 4),
            (282, top + 55.075 * each + 4),
            (572, top + 20 * each + 4),
            (572, top + (40 + 12.825) * each + 4),
        )
    ]
    upright = [numbers(one, "x1", "y1", "x2", "y2") for one in drawn.of("line", "thin")]
    for x, start, end in ((128, 0, 40), (128, 40, 70.15), (418, 0, 40), (418, 40, 65.65)):
        for y in (top + start * each, top + end * each):
            assert any(one == pytest.approx([x + 19, y, x - 6, y], abs=0.02) for one in upright)
        span = [x, top + start * each, x, top + end * each]
        assert any(one == pytest.approx(span, abs=0.02) for one in upright)
    assert said["20 mm"][1] == pytest.approx(top + 150 - 8 + 7, abs=0.02)


def test_without_a_last_bore_the_second_wall_is_the_first(workshop: DesignFolder) -> None:
    figure, drawn = section(workshop, ("liner.toml", 'last_bore = "509 mm"\n', ""))
    assert not drawn.of("rect", "removed")
    assert len(drawn.of("rect", "metal")[-4:]) == 4
    assert ("", "wall at the last bore", "not stated") in figure.rows
    assert drawn.lines("last") == near([(-25.1, 250, 900, 250), (-25.1, -250, 900, -250)])


def test_the_table_of_a_section(workshop: DesignFolder) -> None:
    figure, _ = section(workshop)
    assert figure.heading == "liner in block: section, and the wall at new and last bore"
    assert figure.rows[:11] == (
        ("1", "liner", "900 mm long from the collar's seat"),
        ("", "new bore", "500 mm"),
        ("", "last bore", "509 mm"),
        ("", "outside diameter", "560.3 mm"),
        ("", "wall when new", "30.15 mm"),
        ("", "wall at the last bore", "25.65 mm"),
        ("", "collar", "Ø 599 mm, 25.1 mm thick"),
        ("", "port front", "60 mm from the seat, 40 mm by 300 mm"),
        ("2", "block", "least wall 40 mm"),
        ("3", "cover-front", "54 mm thick, flange 45 mm, Ø 700 mm"),
        ("4", "studs", "some of M24 on Ø 650 mm"),
    )
    assert figure.rows[11][:2] == ("5", "cover-back")
    counted, _ = section(workshop, ("studs.toml", 'thread = "M24"\n', 'thread = "M24"\ncount = 24\n'))
    assert counted.rows[10] == ("4", "studs", "24 of M24 on Ø 650 mm")
    assert "below it that towards the frame" in figure.says
    bare, _ = section_without_frame(workshop)
    assert "below it that through the side" in bare.says


def section_without_frame(workshop: DesignFolder) -> tuple[Figure, Cylinder]:
    changes = ("block.toml", 'axis_from_frame = "350 mm"\n', "")
    (figure,) = liner_figures(cylinder(workshop, changes))
    return figure, sizes(workshop, changes)


# What is read of it


def test_what_the_specs_state_of_a_cylinder(workshop: DesignFolder) -> None:
    found = sizes(workshop, DRIVE, RELIEVED)
    assert (found.bore, found.outside, found.last, found.length) == pytest.approx((500, 560.3, 509, 900))
    assert (found.collar, found.collar_thick) == pytest.approx((599, 25.1))
    assert (found.block_bore, found.block_length, found.wall) == pytest.approx((560, 902, 40))
    assert (found.recess, found.recess_deep, found.frame) == pytest.approx((600, 25, 350))
    assert found.openings == (Opening(40, 80, above=True, below=False),)
    assert list(found.lands) == [pytest.approx((5, 35)), pytest.approx((120, 890))]
    assert list(found.relieved) == [pytest.approx((200, 300))]
    assert [(one.name, one.start, one.end, one.locates) for one in found.pads] == [
        ("front", pytest.approx(45), pytest.approx(225), False),
        ("back", pytest.approx(625), pytest.approx(845), True),
    ]
    assert not found.shoulder
    assert sizes(workshop, STOP).shoulder
    front, back = found.covers
    assert (front.spec.id, back.spec.id) == ("cover-front", "cover-back")
    assert (front.inner, front.joint, front.out) == pytest.approx((35, -25, -1))
    assert (back.inner, back.joint, back.out) == pytest.approx((860, 902, 1))
    assert (front.bore, front.thick, front.flange, front.outside, front.hole) == pytest.approx(
        (500, 54, 45, 700, 0)
    )
    assert back.studs is None
    studs = front.studs
    assert studs is not None
    found_sizes = studs.circle, studs.size, studs.hole, studs.depth, studs.nut, studs.nut_high, studs.edge
    assert found_sizes == pytest.approx((650, 24, 26, 55, 33.2, 20, 32))


def test_what_is_not_stated_is_taken_from_what_it_fits(workshop: DesignFolder) -> None:
    bare = [
        ("block.toml", line, "")
        for line in (
            'diameter = "560 mm"\n',
            'length = "902 mm"\n',
            'recess_diameter = "600 mm"\n',
            'recess_depth = "25 mm"\n',
            'wall = "40 mm"\n',
            'axis_from_frame = "350 mm"\n',
        )
    ]
    found = sizes(workshop, *bare, ("liner.toml", 'last_bore = "509 mm"\n', ""))
    assert (found.block_bore, found.block_length, found.recess, found.last) == pytest.approx(
        (560.3, 900, 599, 500)
    )
    assert (found.recess_deep, found.wall, found.frame) == (0, None, None)
    front, back = found.covers
    assert (front.joint, back.joint) == (None, pytest.approx(900)), "of no recess the bottom is not known"
    collar = ("liner.toml", 'diameter = "599 mm"\nthickness = "25.1 mm"\n', "")
    found = sizes(workshop, collar)
    assert (found.collar, found.collar_thick) == (pytest.approx(560.3), 0)
    assert sizes(
        workshop, ("block.toml", 'recess_diameter = "600 mm"\n', ""), collar
    ).recess == pytest.approx(560.3)


def test_of_a_joint_what_it_does_not_state_is_the_least(workshop: DesignFolder) -> None:
    lines = ('hole = "26 mm"\n', 'edge_distance = "32 mm"\n', 'engagement = "20 mm"\nface = "33.2 mm"\n')
    found = sizes(workshop, *(("studs.toml", line, "") for line in lines)).covers[0].studs
    assert found is not None
    assert (found.hole, found.edge, found.nut, found.nut_high) == (pytest.approx(24), None, 0, 0)
    engaged = sizes(workshop, ("studs.toml", 'depth = "55 mm"', 'engagement = "36 mm"')).covers[0].studs
    assert engaged is not None
    assert engaged.depth == pytest.approx(36)
    for line in ('circle = "650 mm"\n', 'holds = "cover-front"\n', 'thread = "M24"\n'):
        assert sizes(workshop, ("studs.toml", line, "")).covers[0].studs is None


def test_pads_are_placed_from_the_seat_or_from_a_face(workshop: DesignFolder) -> None:
    """The seat stated at 740 mm, 5 mm more than by the face of the front; a collar at the back turns the way round."""
    stated = ("block.toml", 'cold_set = "0.8 mm"\n', 'cold_set = "0.8 mm"\nseat_at = "740 mm"\n')
    assert sizes(workshop, DRIVE, stated).pads[0].start == pytest.approx(50)
    unknown = [("block.toml", line, "") for line in ('face_at = "700 mm"\n', 'face_at = "-100 mm"\n')]
    assert sizes(workshop, DRIVE, *unknown).pads == ()
    back_only = sizes(workshop, DRIVE, unknown[0])
    assert back_only.pads[0].start == pytest.approx(-100 + 860 - 600 - 90)
    turned = sizes(workshop, DRIVE, ("liner.toml", 'end = "front"', 'end = "back"'))
    assert turned.pads[1].start == pytest.approx(-((700 - 35) - 0) - 110)
    wide = ("block.toml", 'width = "180 mm"\n', "")
    assert [one.name for one in sizes(workshop, DRIVE, wide).pads] == ["back"]


@pytest.mark.parametrize(("away", "pads"), [("330 mm", 2), ("320 mm", 0), ("310 mm", 0)])
def test_pads_are_drawn_where_the_face_of_the_frame_lies_beyond_the_block(
    workshop: DesignFolder, away: str, pads: int
) -> None:
    """The block reaches to 280 + 40 = 320 mm from the axis; the words for the pads stand there all the same."""
    frame = ("block.toml", 'axis_from_frame = "350 mm"', f'axis_from_frame = "{away}"')
    (figure,) = liner_figures(cylinder(workshop, DRIVE, frame))
    (bare,) = liner_figures(cylinder(workshop, frame))
    metal = [one.drawing.count('class="metal"') for one in (figure, bare)]
    assert metal[0] - metal[1] == pads
    assert "pad front, slides" in figure.drawing
