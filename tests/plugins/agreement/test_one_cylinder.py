"""One cylinder from cover to rod, the axis where the rods run, and one life."""

from __future__ import annotations

from pathlib import Path

import pytest

from speclint import Grade
from speclint.testing import DesignFolder, on_sheet
from tests.plugins.known_metals import METALS, WITH_METALS

FILES = {
    "block.toml": """
kind = "cylinder-block"
id = "block"
duty = "duty"
[bores.left]
axis_from_frame = "350 mm"
[bores.right]
[ends.left-back]
of_bore = "left"
side = "back"
[ends.right-back]
of_bore = "right"
side = "back"
[ends.left-front]
of_bore = "left"
side = "front"
""",
    "other.toml": 'kind = "cylinder-block"\nid = "other"\n[bores.left]\n[ends.left-back]\nside = "back"\n',
    "engine.toml": """
kind = "engine"
id = "engine"
[cranks.left]
block = "block"
bore = "left"
axis_from_centre = "950 mm"
frame_from_centre = "600 mm"
""",
    "liner.toml": 'kind = "cylinder-liner"\nid = "liner"\nhoused_in = "block"\nin_bore = "left"\n',
    "piston.toml": 'kind = "piston"\nid = "piston"\nruns_in = "liner"\n',
    "rod.toml": 'kind = "piston-rod"\nid = "rod"\ncarries = "piston"\n',
    "cover.toml": 'kind = "cylinder-cover"\nid = "cover"\ncloses = "block"\nof_end = "left-back"\n',
    "box.toml": 'kind = "stuffing-box"\nid = "box"\nseals = "rod"\nin_cover = "cover"\n',
    "duty.toml": """
kind = "duty"
id = "duty"
like = "base"
[cases.running]
""",
    "base.toml": """
kind = "duty"
id = "base"
[life]
distance = "2000000 km"
starts = 12000
""",
    "weldment.toml": """
kind = "weldment"
id = "weldment"
makes = "block"
life_distance = "2000000 km"
starts = 12000
""",
    "pipe.toml": 'kind = "steam-pipe"\nid = "pipe"\njoined_to = "block"\ncycles = 12000\n',
}
HOLD, WRONG, FINE = ("finding", Grade.HOLD), ("finding", Grade.NONCONFORMITY), ("conforms", None)


@pytest.fixture
def design(tmp_path: Path) -> DesignFolder:
    return DesignFolder(tmp_path).write(FILES)


def outcome(design: DesignFolder, rule: str, component: str) -> tuple[str, Grade | None]:
    check = design.only(rule, component)
    return check.outcome, check.grade


@pytest.mark.parametrize(
    ("file", "old", "new", "ends"),
    [
        ("cover.toml", "left-back", "left-back", FINE),
        ("cover.toml", "left-back", "right-back", HOLD),
        ("liner.toml", 'in_bore = "left"', 'in_bore = "right"', HOLD),
        ("liner.toml", '"block"', '"other"', HOLD),
        ("cover.toml", "left-back", "left-front", HOLD),
    ],
)
def test_one_cylinder(
    design: DesignFolder, file: str, old: str, new: str, ends: tuple[str, Grade | None]
) -> None:
    assert outcome(design.replace(file, old, new), "motion.one-cylinder", "box") == ends


def test_a_tail_rod_leaves_at_the_front(design: DesignFolder) -> None:
    design.replace("cover.toml", "left-back", "left-front")
    design.replace("rod.toml", 'carries = "piston"', 'carries = "piston"\ntail_rod = true')
    assert outcome(design, "motion.one-cylinder", "box") == FINE


@pytest.mark.parametrize(
    ("file", "old", "new", "ends"),
    [
        ("block.toml", "350 mm", "350.01 mm", FINE),
        ("block.toml", "350 mm", "350.02 mm", WRONG),
        ("engine.toml", "950 mm", "949.98 mm", WRONG),
        ("engine.toml", "600 mm", "600.02 mm", WRONG),
        ("engine.toml", "950 mm", "250 mm", FINE),  # inside the frame: 600 − 250
    ],
)
def test_the_axis_runs_where_the_motion_does(
    design: DesignFolder, file: str, old: str, new: str, ends: tuple[str, Grade | None]
) -> None:
    """950 − 600 = 350 mm."""
    assert outcome(design.replace(file, old, new), "block.axis-of-motion", "block") == ends


@pytest.mark.parametrize(
    ("component", "old", "new", "ends"),
    [
        ("weldment", "starts = 12000", "starts = 12000", FINE),
        ("weldment", "starts = 12000", "starts = 6000", HOLD),
        ("weldment", "2000000 km", "2000001 km", FINE),
        ("weldment", "2000000 km", "2000002 km", HOLD),
        ("pipe", "12000", "12000", FINE),
        ("pipe", "12000", "6000", HOLD),
    ],
)
def test_one_life(
    design: DesignFolder, component: str, old: str, new: str, ends: tuple[str, Grade | None]
) -> None:
    """The life is that of the duty which the block's own is like; distances may differ by 1 km."""
    assert outcome(design.replace(f"{component}.toml", old, new), "duty.one-life", component) == ends


def test_a_duty_without_a_life_leaves_it_to_the_part(design: DesignFolder) -> None:
    design.replace("base.toml", '[life]\ndistance = "2000000 km"\nstarts = 12000\n', "")
    assert design.only("duty.one-life", "pipe").outcome == "not applicable"


@pytest.mark.parametrize("stated", [900, 900000])
def test_a_pipe_is_judged_by_the_fires_of_its_duty(design: DesignFolder, stated: int) -> None:
    """f = 6/N^0.2 (ASME B31.1, 102.3.2): 6/12 000^0.2 = 6/6.5440 = 0.9169, whatever the pipe states."""
    pipe = FILES["pipe.toml"].replace("12000", str(stated)) + (
        'material = "known-steel"\noutside_diameter = "168.3 mm"\nwall = "5.6 mm"\nanchor_distance = "2 m"\n'
        'length = "2 m"\nbends = 0\nanchor_movement = "0 mm"\ntakes_up_by = "bends"\n'
    )
    duty = FILES["duty.toml"] + '[cases.running.temperatures]\nsteam-pipe = "320 °C"\n'
    design.write({"pipe.toml": pipe, "duty.toml": duty, "metals.toml": METALS}, settings=WITH_METALS)
    check = design.only("pipe.flexibility", "pipe")
    assert on_sheet(check, "f") == pytest.approx(0.9169, abs=1e-4)
