"""Bolts, their holes and the metal that they stand in: each agreement from both sides."""

from __future__ import annotations

import pytest

from speclint import Grade
from speclint.testing import DesignFolder
from tests.plugins.joints.bench import bench

HOLD, FINE, SILENT = ("finding", Grade.HOLD), ("conforms", None), ("not applicable", None)
WELDMENT = """
kind = "weldment"
id = "weldment"
makes = "block"
[plates.flange]
material = "test-block"
thickness = "{}"
"""


def outcome(design: DesignFolder, rule: str) -> tuple[str, Grade | None]:
    check = design.only(rule, "studs")
    return check.outcome, check.grade


@pytest.mark.parametrize(
    ("old", "new", "ends"),
    [
        ('hole = "26 mm"', 'hole = "25 mm"', FINE),
        ('hole = "26 mm"', 'hole = "24.9 mm"', HOLD),
        ('hole = "26 mm"', 'hole = "28 mm"', FINE),
        ('hole = "26 mm"', 'hole = "28.1 mm"', HOLD),
        ('face = "36 mm"', 'face = "26 mm"', FINE),
        ('face = "36 mm"', 'face = "25.9 mm"', HOLD),
        ('face = "36 mm"', 'face = "36.1 mm"', HOLD),
        ('across_flats = "36 mm"\nface = "36 mm"\n', 'face = "36 mm"\n', FINE),
        ('across_flats = "36 mm"\nface = "36 mm"\n', 'across_flats = "26 mm"\n', FINE),
        ('across_flats = "36 mm"\nface = "36 mm"\n', 'across_flats = "25.9 mm"\n', HOLD),
    ],
)
def test_a_bolt_passes_its_hole(
    workshop: DesignFolder, old: str, new: str, ends: tuple[str, Grade | None]
) -> None:
    """M24 by ISO 273: 25 mm fine, 28 mm coarse; the hole of the bench is 26 mm, its nut 36 mm across flats."""
    assert outcome(bench(workshop, ("studs", old, new)), "joint.bolt-passes") == ends


def test_a_joint_that_states_no_hole_is_not_assessed(workshop: DesignFolder) -> None:
    design = bench(workshop, ("studs", 'hole = "26 mm"\n', ""))
    assert design.only("joint.bolt-passes", "studs").outcome == "not assessed"


@pytest.mark.parametrize(("hole", "ends"), [("22.23 mm", FINE), ("22.22 mm", HOLD), ("30 mm", FINE)])
def test_a_thread_in_inches_has_no_series(
    workshop: DesignFolder, hole: str, ends: tuple[str, Grade | None]
) -> None:
    """7/8 in is 22.225 mm."""
    design = bench(workshop, ("studs", 'hole = "26 mm"', f'hole = "{hole}"'))
    design.replace("studs.toml", 'thread = "M24"\nthread_made', 'thread = "7/8 BSF"\nthread_made')
    design.replace("studs.toml", 'shank = "24 mm"', 'shank = "20 mm"')
    assert outcome(design, "joint.bolt-passes") == ends


@pytest.mark.parametrize(("plate", "ends"), [("87.2 mm", FINE), ("87.1 mm", HOLD), ("60 mm", HOLD)])
def test_a_blind_hole_leaves_metal_below_it(
    workshop: DesignFolder, plate: str, ends: tuple[str, Grade | None]
) -> None:
    """56 mm deep, a point of 0.3 × 24 and 24 mm below it: 87.2 mm."""
    design = bench(workshop, ("studs", "[tapped]\n", '[tapped]\nplate = "flange"\n'))
    (design.root / "weldment.toml").write_text(WELDMENT.format(plate), encoding="utf-8")
    assert outcome(design, "joint.hole-in-plate") == ends
    design.replace("studs.toml", 'opens_into = "nothing"', 'opens_into = "air"')
    assert outcome(design, "joint.hole-in-plate") == FINE


@pytest.mark.parametrize(("set_in", "ends"), [("56 mm", FINE), ("56.1 mm", HOLD)])
def test_a_thread_begins_above_the_bottom(
    workshop: DesignFolder, set_in: str, ends: tuple[str, Grade | None]
) -> None:
    design = bench(workshop, ("studs", 'set_in = "8.8 mm"', f'set_in = "{set_in}"'))
    assert outcome(design, "joint.hole-in-plate") == ends


@pytest.mark.parametrize(
    ("states", "ends"),
    [
        ("", SILENT),
        ('circle = "700 mm"\nholes = 20\n', FINE),
        ('circle = "700.2 mm"\n', FINE),
        ('circle = "700.3 mm"\n', HOLD),
        ("holes = 24\n", HOLD),
    ],
)
def test_a_cover_has_the_holes_of_its_joint(
    workshop: DesignFolder, states: str, ends: tuple[str, Grade | None]
) -> None:
    design = bench(workshop, ("cover", 'form = "flat"\n', f'form = "flat"\n{states}'))
    assert outcome(design, "joint.one-circle") == ends
