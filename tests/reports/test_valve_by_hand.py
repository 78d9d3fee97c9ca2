"""A valve on its seats and what stands round it, each part where its sizes put it, worked by hand.

A place counts out from the axis and up from the plane of the upper seat, in mm. The guide ends 140 mm up and 14 mm of
the spindle more are drawn; the lower seat ends 110 + 30 mm down, as its ring is taken for the higher of the two: 294 mm
in 560. Out the block reaches to 140 mm, which takes less than its room. The cones rise by 30°: 3.6 mm along them, a
little more than the ring of contact is wide, are 3.118 mm out and 1.8 mm up.
"""

from __future__ import annotations

import re

import pytest

from speclint.checking import Assessment, Processes, assess
from speclint.reports.pack.figures import Figure
from speclint.reports.pack.valve_drawing import valve_figures
from speclint.testing import DesignFolder, changed_files
from tests.reports.placed_marks import Placed, near, numbers

VALVE = """
kind = "poppet-valve"
id = "valve"
serves = "inlet"
lift = "20 mm"
beat_distance = "110 mm"
height = "120 mm"
wall = "6 mm"
clearance_open = "5 mm"
supply_acts = "beyond the beats"
[upper_beat]
seat = "upper"
seat_diameter = "150 mm"
seat_angle = "30 °"
contact_width = "3 mm"
[lower_beat]
seat = "lower"
seat_diameter = "140 mm"
seat_angle = "30 °"
contact_width = "3 mm"
"""
BLOCK = """
kind = "cylinder-block"
id = "block"
[seat_bores.upper]
diameter = "200 mm"
depth = "30 mm"
wall = "40 mm"
[seat_bores.lower]
diameter = "180 mm"
depth = "25 mm"
wall = "30 mm"
"""
UPPER = """
kind = "valve-seat"
id = "upper"
pressed_into = "block"
in_bore = "upper"
outside_diameter = "200.2 mm"
bore = "130 mm"
length = "30 mm"
seat_width = "4 mm"
"""
LOWER = """
kind = "valve-seat"
id = "lower"
pressed_into = "block"
in_bore = "lower"
outside_diameter = "180.2 mm"
bore = "120 mm"
length = "25 mm"
"""
CAGE = """
kind = "valve-cage"
id = "cage"
surrounds = "valve"
outside_diameter = "210 mm"
end_at = "160 mm"
"""
SPINDLE = """
kind = "valve-spindle"
id = "spindle"
moves = "valve"
diameter = "22 mm"
guide_from_seat = "40 mm"
guide_length = "100 mm"
guide_outside = "36 mm"
guide_bore = "22.1 mm"
"""
FILES = {
    "valve.toml": VALVE,
    "block.toml": BLOCK,
    "upper.toml": UPPER,
    "lower.toml": LOWER,
    "cage.toml": CAGE,
    "spindle.toml": SPINDLE,
}
SCALE = 560 / (154 + 140)
ZERO, FOOT = 60 + 154 * SCALE, 620.0


def made(workshop: DesignFolder, *changes: tuple[str, str, str]) -> Assessment:
    workshop.write(changed_files(FILES, *changes))
    found = assess([workshop.root], workshop.loaded, (), processes=Processes(0))
    assert not found.complaints
    return found


def drawn(workshop: DesignFolder, *changes: tuple[str, str, str]) -> Figure:
    (figure,) = valve_figures(made(workshop, *changes))
    return figure


def placed(figure: Figure, scale: float = SCALE, highest: float = 154) -> Placed:
    return Placed(figure, scale, (100, 60), (0, highest))


def test_the_block_the_cage_and_the_guide_stand_round_it(workshop: DesignFolder) -> None:
    """Cage: its end 160 mm from the lower seat, 50 from the upper, 6 mm of plate beyond, its wall as much."""
    view = placed(drawn(workshop))
    assert view.boxes("metal") == near(
        [(100, 140, -30, 0), (90, 120, -135, -110), (11, 105, 50, 56), (11, 18, 40, 140)]
    )
    assert view.boxes("ghost") == near([(99, 105, 0, 50)])
    assert view.boxes("stud") == near([(0, 11, -55, 154)]), "down to half between the beats"
    assert view.lines("erased") == near([(-4 / SCALE, 154, 11 + 4 / SCALE, 154)])


def test_the_seats_have_their_cones(workshop: DesignFolder) -> None:
    """The upper 4 mm wide by its own spec, so 3.464 mm out and 2 mm up; the lower 3 mm as usual: 2.598 and 1.5."""
    upper, lower = placed(drawn(workshop)).shapes("metal")
    assert upper == near([(78.464, 2), (100.1, 2), (100.1, -28), (65, -28), (65, 0), (75, 0)])
    assert lower == near(
        [(72.598, -108.5), (90.1, -108.5), (90.1, -133.5), (60, -133.5), (60, -110), (70, -110)]
    )


def test_the_shell_is_drawn_shut_and_lifted(workshop: DesignFolder) -> None:
    view = placed(drawn(workshop))
    outline = [
        (64, 7.8),
        (78.118, 7.8),
        (78.118, 1.8),
        (75, 0),
        (70, 0),
        (70, -102.2),
        (73.118, -102.2),
        (73.118, -108.2),
        (70, -110),
        (64, -110),
    ]
    (shut,), (lifted,) = view.shapes("ghost"), view.shapes("valve")
    assert shut == near(outline)
    assert lifted == near([(x, y + 20) for x, y in outline])


def test_the_shell_is_hatched_where_it_is_metal(workshop: DesignFolder) -> None:
    """Rim, tube and lower rim; its hatching begins and ends within its pitch, 6 units, of the edges."""
    view = placed(drawn(workshop))
    found = []
    for one in view.of("path", "hatch"):
        flat = [float(number) for number in re.findall(r"-?\d+(?:\.\d+)?", one.get("d") or "")]
        left, right, top, low = min(flat[::2]), max(flat[::2]), min(flat[1::2]), max(flat[1::2])
        found.append((*view.at(left, low), *view.at(right, top)))
    whole = [
        (65, -28, 100.1, 0),
        (60, -133.5, 90.1, -110),
        (64, 21.8, 78.118, 27.8),
        (64, -90, 70, 21.8),
        (70, -88.2, 73.118, -82.2),
    ]
    for place in whole:
        assert any(one == pytest.approx(place, abs=7 / SCALE) for one in found), place
    assert len(found) == len(whole) + len(view.boxes("metal"))


def test_without_a_wall_the_shell_is_an_outline(workshop: DesignFolder) -> None:
    """Its rims are 5 mm as drawn."""
    figure = drawn(workshop, ("valve.toml", 'wall = "6 mm"\n', ""))
    view = placed(figure)
    assert not view.shapes("valve")
    (lifted,), (shut,) = view.shapes("edge", "polyline"), view.shapes("ghost", "polyline")
    outline = [
        (78.118, 6.8),
        (78.118, 1.8),
        (75, 0),
        (70, 0),
        (70, -103.2),
        (73.118, -103.2),
        (73.118, -108.2),
        (70, -110),
    ]
    assert shut == near(outline)
    assert lifted[0] == pytest.approx((78.118, 26.8), abs=0.02)
    assert "drawn in outline only" in figure.says
    assert view.balloons()["1"][2:] == pytest.approx((70, -35), abs=0.02)


def test_numbers_point_at_the_parts(workshop: DesignFolder) -> None:
    found = placed(drawn(workshop)).balloons()
    assert [found[number] for number in "12345"] == near(
        [
            (-60, 0, 67, -35),
            (65 * SCALE - 40 - 82.55 * SCALE, 0, 82.55, -14),
            (60 * SCALE - 40 - 75.05 * SCALE, 0, 75.05, -121.75),
            (60, 0, 5.5, 154 - 14 / SCALE),
            (46, -14, 102, 53),
        ]
    )


def test_lift_and_distance_of_the_beats_are_measured_beside_the_axis(workshop: DesignFolder) -> None:
    """Words of 7 letters leave the dimensions 24 before the axis; their lines begin 8 before that."""
    view = placed(drawn(workshop))
    thin = [numbers(one, "x1", "y1", "x2", "y2") for one in view.of("line", "thin")]
    low = ZERO + 110 * SCALE
    wanted = [
        [68, ZERO - 20 * SCALE, 110, ZERO - 20 * SCALE],
        [68, ZERO, 110, ZERO],
        [76, ZERO - 20 * SCALE, 76, ZERO],
        [68, low, 110, low],
        [76, ZERO, 76, low],
        [110, ZERO, 100 + 63 * SCALE, ZERO],
        [110, low, 100 + 58 * SCALE, low],
        [100 + 75 * SCALE, FOOT + 2, 100 + 75 * SCALE, FOOT + 18],
        [100, FOOT + 14, 100 + 75 * SCALE, FOOT + 14],
        [100 + 70 * SCALE, FOOT + 2, 100 + 70 * SCALE, FOOT + 40],
        [100, FOOT + 36, 100 + 70 * SCALE, FOOT + 36],
    ]
    for line in wanted:
        assert any(one == pytest.approx(line, abs=0.02) for one in thin), line
    said = view.says()
    assert said["20 lift"] == pytest.approx((70, ZERO - 10 * SCALE + 4), abs=0.02)
    assert said["110"] == pytest.approx((70, ZERO + 55 * SCALE + 4), abs=0.02)
    # words of 16 letters, 129 wide, stand 14 beyond the axis where they end with the ring: 143 and 133 + 8
    assert said["Ø 150 upper ring"] == pytest.approx((114, FOOT + 10), abs=0.02)
    assert said["Ø 140 lower ring"] == pytest.approx((104, FOOT + 32), abs=0.02)
    assert view.lines("axis") == near([(0, 154 + 34 / SCALE, 0, -140 - 16 / SCALE)])
    assert view.size() == pytest.approx((640, FOOT + 66), abs=0.02)
    bar = view.of("rect", "solid")
    assert numbers(bar[0], "x", "y", "width") == pytest.approx([440, FOOT + 30, 10 * SCALE], abs=0.02)


@pytest.mark.parametrize(
    ("serves", "acts", "between", "beyond"),
    [
        ("inlet", "beyond the beats", "to the cylinder", "live steam"),
        ("inlet", "between the beats", "live steam", "to the cylinder"),
        ("exhaust", "beyond the beats", "to the exhaust", "from the cylinder"),
        ("exhaust", "between the beats", "from the cylinder", "to the exhaust"),
    ],
)
def test_the_steam_is_named_between_the_beats_and_beyond(
    workshop: DesignFolder, serves: str, acts: str, between: str, beyond: str
) -> None:
    changes = (("valve.toml", '"inlet"', f'"{serves}"'), ("valve.toml", '"beyond the beats"', f'"{acts}"'))
    said = placed(drawn(workshop, *changes)).says()
    out = 100 + 140 * SCALE + 12
    assert said[between] == pytest.approx((out, ZERO + 68.2 * SCALE), abs=0.02)
    assert said[beyond] == pytest.approx((out, ZERO - 23.1 * SCALE), abs=0.02)


def test_the_table_of_a_valve(workshop: DesignFolder) -> None:
    figure = drawn(workshop)
    assert figure.heading == "valve: on its seats and at full lift"
    assert figure.rows == (
        ("1", "valve", "lift 20 mm, wall 6 mm"),
        ("", "between the beats", "110 mm"),
        ("", "upper beat", "seat Ø 150 mm, 30 ° from its plane, contact 3 mm"),
        ("2", "upper", "bore 130 mm, outside 200.2 mm, 30 mm high"),
        ("", "lower beat", "seat Ø 140 mm, 30 ° from its plane, contact 3 mm"),
        ("3", "lower", "bore 120 mm, outside 180.2 mm, 25 mm high"),
        ("", "room beyond the valve at full lift", "5 mm"),
        ("", "bore of the block, upper", "Ø 200 mm, 30 mm deep, metal 40 mm"),
        ("", "bore of the block, lower", "Ø 180 mm, 25 mm deep, metal 30 mm"),
        ("4", "spindle", "Ø 22 mm in a guide of 22.1 mm, 100 mm long"),
        ("5", "cage", "Ø 210 mm outside, its end 160 mm from the seat"),
    )
    for said in ("Hatched wide, the least metal", "The guide is drawn on the side", "how thick the cage is"):
        assert said in figure.says


def test_what_no_spec_states_is_left_out(workshop: DesignFolder) -> None:
    """Without a guide the spindle ends with the valve, 120 mm up; the cage is then highest, 56 mm."""
    unguided = drawn(workshop, ("spindle.toml", 'guide_from_seat = "40 mm"\n', ""))
    scale = min(290 / 140, 560 / (56 + 140))
    view = placed(unguided, scale, 56)
    assert view.boxes("stud") == near([(0, 11, -55, 120)])
    assert len(view.boxes("metal")) == 3
    assert "The guide" not in unguided.says
    bare = drawn(workshop, ("cage.toml", 'end_at = "160 mm"\n', ""))
    assert not placed(bare).boxes("ghost")
    assert "cage" not in bare.says
    solid = 'guide_outside = "36 mm"\nguide_bore = "22.1 mm"', 'guide_outside = "22 mm"'
    narrow = drawn(workshop, ("spindle.toml", *solid))
    assert len(placed(narrow).boxes("metal")) == 3, "nothing is left of the guide"
    nothing = drawn(workshop, ("spindle.toml", 'diameter = "22 mm"\n', ""))
    assert not placed(nothing).boxes("stud")
    assert placed(nothing).boxes("metal")[2] == pytest.approx((0, 105, 50, 56), abs=0.02)
    wide = drawn(workshop, ("cage.toml", 'outside_diameter = "210 mm"\n', ""))
    assert len(placed(wide).boxes("metal")) == 3
    for key in ('diameter = "200 mm"', 'depth = "30 mm"'):
        cut = drawn(workshop, ("block.toml", f"{key}\n", ""))
        assert "Hatched wide" in cut.says
        assert len(Placed(cut, cut.held.scale or 0, (100, 60), (0, 154)).boxes("metal")) == 3, key
    free = [(f"{name}.toml", 'pressed_into = "block"\n', "") for name in ("upper", "lower")]
    alone = drawn(workshop, *free)
    assert "Hatched wide" not in alone.says
    assert "live steam" not in alone.drawing


def test_a_valve_without_its_main_sizes_is_not_drawn(workshop: DesignFolder) -> None:
    for line in ('lift = "20 mm"\n', 'beat_distance = "110 mm"\n', 'seat_diameter = "150 mm"\n'):
        assert not list(valve_figures(made(workshop, ("valve.toml", line, ""))))


def test_a_valve_alone_is_as_wide_as_a_tenth_more_than_its_rings(workshop: DesignFolder) -> None:
    """Without seats 20 mm stand for each: 150 × 1.1/2 = 82.5 mm out in 290; 27.8 mm up and 130 down take less."""
    workshop.write({"valve.toml": VALVE.replace('seat = "upper"\n', "").replace('seat = "lower"\n', "")})
    (figure,) = valve_figures(assess([workshop.root], workshop.loaded, (), processes=Processes(0)))
    assert figure.held.scale == pytest.approx(290 / 82.5)
    view = placed(figure, 290 / 82.5, 27.8)
    assert not view.of("polygon", "metal")
    assert view.size()[1] == pytest.approx(60 + (27.8 + 130) * 290 / 82.5 + 66, abs=0.02)
    flat = VALVE.replace('seat_angle = "30 °"\n', "").replace('contact_width = "3 mm"\n', "")
    workshop.write({"valve.toml": flat.replace('seat = "upper"\n', "").replace('seat = "lower"\n', "")})
    (figure,) = valve_figures(assess([workshop.root], workshop.loaded, (), processes=Processes(0)))
    (shell,) = placed(figure, 290 / 82.5, 20 + 6 + 2.5456).shapes("valve")
    assert shell[2] == pytest.approx((75 + 2.5456, 22.5456), abs=0.02), "45 degrees and 3 mm where not stated"
