"""envelope.motion-clearance against the sizes and places of wheels, rods and cylinder, by hand.

Rods of 2000 and 1500 mm from an axle at 0: the middle of the cylinder at 3500 mm. Faces 800 mm apart and covers of 60
mm: outer sides at 3500 − 460 = 3040 and at 3960 mm. The axis is 900 mm out and, by wheels of 1800 mm, 900 mm high. The
flanges stand 680 mm out, 220 mm from the axis: covers of 800 mm are √(400² − 220²) = 334.066 mm high to either side
there. Wheels of an axle at 2000 mm reach to 2000 + 900 + 28 = 2928 mm: 112 mm are left.
"""

from __future__ import annotations

import pytest

from speclint import Check, Grade
from speclint.testing import DesignFolder, changed
from tests.plugins.clearances.bench import write

RULE = "envelope.motion-clearance"
FINE, PART, HOLD = ("conforms", None), ("finding", Grade.NONCONFORMITY), ("finding", Grade.HOLD)
AXLE = 'kind = "driving-axle"\nid = "axle-{}"\nengine = "engine"\nat = "{} mm"\n'
COVER = (
    'kind = "cylinder-cover"\nid = "cover-{0}"\ncloses = "block"\nof_end = "{0}"\n'
    'thickness = "60 mm"\noutside_diameter = "800 mm"\n'
)
FILES = {
    "duty.toml": """
kind = "duty"
id = "duty"
[cases.running]
temperatures = { cylinder-block = "20 °C" }
[cases.drifting]
temperatures = { cylinder-block = "20 °C" }
""",
    "engine.toml": """
kind = "engine"
id = "engine"
stroke = "600 mm"
driving_wheel_diameter = "1800 mm"
connecting_rod_length = "2000 mm"
[cranks.left]
block = "block"
axis_from_centre = "900 mm"
[carrying.truck]
at = "5500 mm"
wheel_diameter = "1000 mm"
""",
    "block.toml": """
kind = "cylinder-block"
id = "block"
material = "known-steel"
duty = "duty"
[bores.main]
diameter = "500 mm"
[ends.front]
side = "front"
face_from_seat = "50 mm"
[ends.back]
side = "back"
face_from_seat = "850 mm"
[drive]
rod_length = "1500 mm"
""",
    "front.toml": COVER.format("front"),
    "back.toml": COVER.format("back"),
    "driven.toml": AXLE.format("driven", 0) + 'driven_by = ["left"]\n',
    "coupled.toml": AXLE.format("coupled", 2000)
    + '[turning.coupling-rod]\ncrank = "left"\nfrom_centre = "820 mm"\n',
    "envelope.toml": """
kind = "envelope"
id = "envelope"
around = "block"
[points.rim]
of = "cover-front"
along = "3000 mm"
[gaps.rod]
moving = "connecting rod"
size = "40 mm"
side_play = "4 mm"
wear = "3 mm"
growth_length = "600 mm"
[gaps.crosshead]
moving = "crosshead"
size = "60 mm"
side_play = "4 mm"
wear = "3 mm"
growth_length = "600 mm"
[gaps.wheel]
moving = "wheel"
size = "60 mm"
side_play = "4 mm"
wear = "3 mm"
growth_length = "600 mm"
""",
}
#: Crosshead, its pin of 100 mm in a bush of 10 mm, and what leads from them to the block.
MOTION = {
    "liner.toml": 'kind = "cylinder-liner"\nid = "liner"\nhoused_in = "block"\nin_bore = "main"\n',
    "piston.toml": 'kind = "piston"\nid = "piston"\nruns_in = "liner"\n',
    "rod.toml": 'kind = "piston-rod"\nid = "rod"\ncarries = "piston"\n',
    "crosshead.toml": 'kind = "crosshead"\nid = "crosshead"\non_rod = "rod"\n',
    "pin.toml": 'kind = "pin"\nid = "pin"\nmoved_by = "crosshead"\nplace = "crosshead pin"\n'
    'diameter = "100 mm"\n[wear]\nbush_wall = "10 mm"\n',
}


def check(
    workshop: DesignFolder, *changes: tuple[str, str, str], files: dict[str, str] | None = None
) -> Check:
    return write(workshop, {**FILES, **(files or {})}, *changes).only(RULE)


def judged(
    workshop: DesignFolder, *changes: tuple[str, str, str], files: dict[str, str] | None = None
) -> tuple[str, Grade | None]:
    found = check(workshop, *changes, files=files)
    return found.outcome, found.grade


def size(gap: str, old: str, new: str) -> tuple[str, str, str]:
    head = {"rod": "connecting rod"}.get(gap, gap)
    return "envelope.toml", f'moving = "{head}"\nsize = "{old}"', f'moving = "{head}"\nsize = "{new}"'


@pytest.mark.parametrize(("gap", "wanted"), [("111.9 mm", FINE), ("112.1 mm", PART)])
def test_a_gap_to_a_wheel_is_no_wider_than_the_axles_leave(
    workshop: DesignFolder, gap: str, wanted: tuple[str, Grade | None]
) -> None:
    """3040 − 2928 = 112 mm."""
    assert judged(workshop, size("wheel", "60 mm", gap)) == wanted


@pytest.mark.parametrize(("at", "wanted"), [("2094.9 mm", PART), ("2095.1 mm", HOLD), ("2400 mm", HOLD)])
def test_the_gap_that_the_axles_leave_is_counted(
    workshop: DesignFolder, at: str, wanted: tuple[str, Grade | None]
) -> None:
    """Stated 60 mm; 3040 − 2095 − 928 = 17 mm, less 4 and 3 are 10 mm. At 2400 mm the wheels are in the cover."""
    assert judged(workshop, ("coupled.toml", 'at = "2000 mm"', f'at = "{at}"')) == wanted


@pytest.mark.parametrize(("gap", "wanted"), [("65.6 mm", FINE), ("65.7 mm", PART)])
@pytest.mark.parametrize(
    "truck", ['at = "4550 mm"', 'at = "5550 mm"\nwheelbase = "2 m"', 'at = "3550 mm"\nwheelbase = "2 m"']
)
def test_a_low_wheel_comes_nearest_under_the_cover(
    workshop: DesignFolder, gap: str, wanted: tuple[str, Grade | None], truck: str
) -> None:
    """An axle at 4550 mm, 590 from the front cover: its middle is 400 mm lower, 400 − 334.066 = 65.934 below the cover
    in the plane of the flange: √(590² + 65.934²) − 500 − 28 = 65.673 mm. Alone, the last of a bogie, or the first: the
    last of that at 2550 mm is 490 mm from the back cover, and overlaps it.
    """
    stated = judged(workshop, ("engine.toml", 'at = "5500 mm"', truck), size("wheel", "60 mm", gap))
    assert stated == (HOLD if "3550" in truck else wanted)


@pytest.mark.parametrize(("out", "wanted"), [("1079 mm", HOLD), ("1081 mm", FINE), ("279 mm", FINE)])
def test_wheels_that_no_cover_stands_before_are_as_stated(
    workshop: DesignFolder, out: str, wanted: tuple[str, Grade | None]
) -> None:
    """A cover of 800 mm goes through the plane of 680 mm from 280 to 1080 mm; the wheels are at 2400 mm."""
    moved = ("coupled.toml", 'at = "2000 mm"', 'at = "2400 mm"')
    away = ("coupled.toml", 'from_centre = "820 mm"', 'from_centre = "50 mm"')
    assert judged(workshop, moved, away, ("engine.toml", '"900 mm"', f'"{out}"')) == wanted


@pytest.mark.parametrize(("gap", "wanted"), [("99.9 mm", FINE), ("100.1 mm", PART)])
@pytest.mark.parametrize("radius", ["", 'radius = "300 mm"\n'])
def test_a_coupling_rod_in_line_with_a_cover_ends_at_its_foremost_pin(
    workshop: DesignFolder, gap: str, wanted: tuple[str, Grade | None], radius: str
) -> None:
    """An axis 1100 mm out: no wheel is in the plane of its covers, rods at 820 mm are. 3040 − 2640 − 300 = 100 mm."""
    rod = f'[gaps.coupled]\nmoving = "coupling rod"\nsize = "{gap}"\nside_play = "4 mm"\nwear = "3 mm"\n'
    envelope = FILES["envelope.toml"] + rod + 'growth_length = "600 mm"\n'
    changes = (
        ("engine.toml", '"900 mm"', '"1100 mm"'),
        ("coupled.toml", 'at = "2000 mm"', 'at = "2640 mm"'),
        ("coupled.toml", 'crank = "left"\n', f'crank = "left"\n{radius}'),
    )
    assert judged(workshop, *changes, files={"envelope.toml": envelope}) == wanted


@pytest.mark.parametrize(("out", "wanted"), [("1219 mm", PART), ("1221 mm", FINE)])
def test_a_coupling_rod_beside_the_covers_is_as_stated(
    workshop: DesignFolder, out: str, wanted: tuple[str, Grade | None]
) -> None:
    """A cover of 800 mm on an axis 1220 mm out begins at 820 mm."""
    rod = '[gaps.coupled]\nmoving = "coupling rod"\nsize = "110 mm"\nside_play = "4 mm"\nwear = "3 mm"\n'
    envelope = FILES["envelope.toml"] + rod + 'growth_length = "600 mm"\n'
    changes = (
        ("engine.toml", '"900 mm"', f'"{out}"'),
        ("coupled.toml", 'at = "2000 mm"', 'at = "2640 mm"'),
    )
    assert judged(workshop, *changes, files={"envelope.toml": envelope}) == wanted


@pytest.mark.parametrize(("gap", "wanted"), [("29.9 mm", FINE), ("30.1 mm", PART)])
def test_the_eye_of_a_connecting_rod_is_round_its_pin_and_bush(
    workshop: DesignFolder, gap: str, wanted: tuple[str, Grade | None]
) -> None:
    """A piston rod of 850 mm: 850 − 300 − 400 − 60 = 90 mm from pin to cover, less 50 and 10. No wheel is near."""
    changes = (
        ("block.toml", '"1500 mm"', '"850 mm"'),
        ("coupled.toml", 'at = "2000 mm"', 'at = "1000 mm"'),
        ("envelope.toml", 'moving = "crosshead"', 'to = "crosshead"'),
        size("rod", "40 mm", gap),
    )
    assert judged(workshop, *changes, files=MOTION) == wanted


@pytest.mark.parametrize(
    ("file", "old", "new"),
    [
        ("engine.toml", 'block = "block"\n', ""),
        ("engine.toml", 'axis_from_centre = "900 mm"\n', ""),
        ("engine.toml", 'connecting_rod_length = "2000 mm"\n', ""),
        ("engine.toml", 'driving_wheel_diameter = "1800 mm"\n', ""),
        ("block.toml", 'rod_length = "1500 mm"\n', ""),
        ("block.toml", 'face_from_seat = "850 mm"\n', ""),
        ("block.toml", "[bores.main]", "[bores.other]\n[bores.main]"),
        ("back.toml", 'thickness = "60 mm"\n', ""),
        ("back.toml", 'of_end = "back"\n', ""),
        ("driven.toml", 'driven_by = ["left"]\n', ""),
        ("envelope.toml", 'along = "3000 mm"\n', ""),
        ("envelope.toml", 'along = "3000 mm"', 'along = "-3000 mm"'),
    ],
)
def test_what_cannot_be_worked_is_as_stated(workshop: DesignFolder, file: str, old: str, new: str) -> None:
    """Wheels at 2400 mm would be in the cover; the sheet says why nothing of it is known."""
    assert judged(workshop, ("coupled.toml", 'at = "2000 mm"', 'at = "2400 mm"'), (file, old, new)) == FINE


def test_of_several_gaps_to_wheels_the_least_is_that_of_the_nearest(workshop: DesignFolder) -> None:
    """112 mm are left to the nearest: a second gap of 200 mm is to another wheel."""
    text = FILES["envelope.toml"].split("[gaps.wheel]")[1]
    far = "[gaps.other-wheel]" + changed(text, ('size = "60 mm"', 'size = "200 mm"'))
    assert judged(workshop, files={"envelope.toml": FILES["envelope.toml"] + far}) == FINE
