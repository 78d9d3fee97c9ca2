"""envelope.points-of-parts: heights of covers, cam boxes and drain cocks against the axis of their cylinder, by hand.

Wheels of 1800 mm: the axis 900 mm above the rail. A cover of 800 mm reaches from 900 − 400 − 100 = 400 to 1400 mm with
the slack of 100 mm; a cock under a barrel of 500 and 50 mm is at 900 − 300 + 100 = 700 mm at the most. Rods of 2000 and
1500 mm that rise by 2°: 3500 × 0.0348995 = 122.148 mm higher.
"""

from __future__ import annotations

import pytest

from speclint import Grade
from speclint.testing import DesignFolder, changed, expect_not_assessed

RULE = "envelope.points-of-parts"
FINE, HOLD = ("conforms", None), ("finding", Grade.HOLD)
FILES = {
    "engine.toml": """
kind = "engine"
id = "engine"
driving_wheel_diameter = "1800 mm"
connecting_rod_length = "2000 mm"
[cranks.left]
block = "block"
""",
    "block.toml": """
kind = "cylinder-block"
id = "block"
[bores.main]
diameter = "500 mm"
wall = "50 mm"
axis_from_frame = "350 mm"
[ends.front]
side = "front"
[drive]
rod_length = "1500 mm"
""",
    "cover.toml": 'kind = "cylinder-cover"\nid = "cover"\ncloses = "block"\nend = "front"\n'
    'outside_diameter = "800 mm"\n',
    "envelope.toml": """
kind = "envelope"
id = "envelope"
around = "block"
frame_from_centre = "530 mm"
cylinders = "outside"
[points.rim]
of = "cover"
height = "900 mm"
from_centre = "1280 mm"
[points.cock]
cock_of = "front"
height = "400 mm"
from_centre = "1000 mm"
""",
}


def judged(workshop: DesignFolder, *changes: tuple[str, str, str]) -> tuple[str, Grade | None]:
    files = dict(FILES)
    for file, old, new in changes:
        files[file] = changed(files[file], (old, new))
    check = workshop.write(files).only(RULE)
    return check.outcome, check.grade


@pytest.mark.parametrize(
    ("old", "new", "wanted"),
    [
        ('height = "400 mm"', 'height = "699 mm"', FINE),
        ('height = "400 mm"', 'height = "701 mm"', HOLD),
        ('height = "900 mm"', 'height = "401 mm"', FINE),
        ('height = "900 mm"', 'height = "399 mm"', HOLD),
        ('height = "900 mm"', 'height = "1399 mm"', FINE),
        ('height = "900 mm"', 'height = "1401 mm"', HOLD),
        ('height = "400 mm"\n', "", FINE),
    ],
)
def test_heights_from_both_sides(
    workshop: DesignFolder, old: str, new: str, wanted: tuple[str, Grade | None]
) -> None:
    assert judged(workshop, ("envelope.toml", old, new)) == wanted


BOX = {
    "box.toml": 'kind = "cam-box"\nid = "box"\nmounted_on = "block"\nof_end = "front"\nstands_out = "420 mm"\n'
    'stands_up = "700 mm"\n',
    "envelope.toml": FILES["envelope.toml"]
    + '[points.foot]\nof = "box"\nheight = "1300 mm"\nfrom_centre = "1250 mm"\n'
    + '[points.top]\nof = "box"\nheight = "1600 mm"\nfrom_centre = "1300 mm"\n',
}


@pytest.mark.parametrize(
    ("height", "wanted"),
    [("1501 mm", FINE), ("1499 mm", HOLD), ("1699 mm", FINE), ("1701 mm", HOLD), ("160 mm", HOLD)],
)
def test_the_highest_point_of_a_box_is_its_top(
    workshop: DesignFolder, height: str, wanted: tuple[str, Grade | None]
) -> None:
    """900 + 700 = 1600 mm, and 100 mm either way; the point of its foot is lower, and no fault."""
    files = {**FILES, **BOX}
    files["envelope.toml"] = changed(files["envelope.toml"], ('height = "1600 mm"', f'height = "{height}"'))
    check = workshop.write(files).only(RULE)
    assert (check.outcome, check.grade) == wanted


def test_a_box_that_does_not_say_how_high_it_stands_is_told(workshop: DesignFolder) -> None:
    files = {**FILES, **BOX}
    files["box.toml"] = changed(files["box.toml"], ('stands_up = "700 mm"\n', ""))
    expect_not_assessed(workshop.write(files).only(RULE), "stands_up")


def test_a_box_whose_points_state_no_height_has_none_to_compare(workshop: DesignFolder) -> None:
    files = {**FILES, **BOX}
    bare = ('height = "1300 mm"\n', ""), ('height = "1600 mm"\n', "")
    files["envelope.toml"] = changed(files["envelope.toml"], *bare)
    check = workshop.write(files).only(RULE)
    assert (check.outcome, check.grade) == FINE


@pytest.mark.parametrize(("cock", "wanted"), [("822 mm", FINE), ("823 mm", HOLD)])
def test_an_inclined_cylinder_stands_higher(
    workshop: DesignFolder, cock: str, wanted: tuple[str, Grade | None]
) -> None:
    """700 + 122.148 mm."""
    inclined = ("engine.toml", 'block = "block"', 'block = "block"\ninclined = "2 °"')
    assert judged(workshop, inclined, ("envelope.toml", '"400 mm"', f'"{cock}"')) == wanted


@pytest.mark.parametrize(("cock", "wanted"), [("699 mm", FINE), ("701 mm", HOLD)])
def test_a_barrel_is_as_thick_as_its_plate(
    workshop: DesignFolder, cock: str, wanted: tuple[str, Grade | None]
) -> None:
    """900 − 250 − 50 + 100 = 700 mm, by a plate of 50 mm where no wall is stated."""
    plate = {"weldment.toml": 'kind = "weldment"\nid = "weldment"\nmakes = "block"\n'}
    plate["weldment.toml"] += '[plates.barrel]\nthickness = "50 mm"\n'
    files = {**FILES, **plate}
    files["block.toml"] = changed(files["block.toml"], ('wall = "50 mm"', 'plate = "barrel"'))
    files["envelope.toml"] = changed(files["envelope.toml"], ('"400 mm"', f'"{cock}"'))
    check = workshop.write(files).only(RULE)
    assert (check.outcome, check.grade) == wanted


@pytest.mark.parametrize(
    ("file", "old", "new"),
    [
        ("engine.toml", 'driving_wheel_diameter = "1800 mm"\n', ""),
        (
            "engine.toml",
            'driving_wheel_diameter = "1800 mm"',
            'driving_wheel_diameter = "1800 mm"\ngear_ratio = "2"',
        ),
        ("engine.toml", 'block = "block"\n', ""),
        ("block.toml", 'wall = "50 mm"\n', ""),
        ("block.toml", 'diameter = "500 mm"\n', ""),
    ],
)
def test_where_the_axis_or_the_barrel_is_not_known_no_height_is_compared(
    workshop: DesignFolder, file: str, old: str, new: str
) -> None:
    """A cock at 1200 mm beside a cover whose point is right."""
    assert judged(workshop, (file, old, new), ("envelope.toml", '"400 mm"', '"1200 mm"')) == FINE


@pytest.mark.parametrize("rod", ['connecting_rod_length = "2000 mm"\n', 'rod_length = "1500 mm"\n'])
def test_an_inclined_cylinder_without_rods_has_no_height(workshop: DesignFolder, rod: str) -> None:
    file = "engine.toml" if rod.startswith("connecting") else "block.toml"
    inclined = ("engine.toml", 'block = "block"', 'block = "block"\ninclined = "2 °"')
    assert judged(workshop, inclined, (file, rod, ""), ("envelope.toml", '"400 mm"', '"1200 mm"')) == FINE
