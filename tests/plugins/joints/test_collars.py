"""liner.clamp-of-cover: the clamping force of a collar, and the studs of the cover that gives it.

By hand: 384 N·m/(0.16 × 24 mm) = 100 kN in each of 20 studs; a torque wrench scatters by 25 to 30 %, so 70 kN at
the least and 1400 kN together. The gasket, 636 and 604 mm: b_0 = 16/2 = 8 mm, over 6.35 mm, so b = 2.52 √8 mm =
7.1276 mm and G = 636 − 2 × 7.1276 = 621.745 mm.
"""

from __future__ import annotations

import math
from pathlib import Path

import pytest

from speclint import Grade
from speclint.testing import DesignFolder, on_sheet
from tests.plugins.agreement.test_joints import lined
from tests.plugins.joints.bench import bench

CLAMP = "liner.clamp-of-cover"
WRONG = ("finding", Grade.NONCONFORMITY)
FINE = ("conforms", None)
SILENT = ("not applicable", None)
Ends = tuple[str, Grade | None]


@pytest.fixture
def workshop(tmp_path: Path) -> DesignFolder:
    """The bench's cover on a liner whose collar it clamps."""
    design = lined(bench(DesignFolder(tmp_path)), last="509 mm")
    collar = 'end = "front"\ndiameter = "589 mm"\nclamp_diameter = "580 mm"\nclamp_force = "200 kN"\n'
    design.replace("liner.toml", 'end = "front"\n', collar)
    return design.replace("liner.toml", "[collar]", 'outside_diameter = "560 mm"\n[collar]')


def outcome(design: DesignFolder) -> Ends:
    check = design.only(CLAMP)
    return check.outcome, check.grade


def test_the_studs_leave_a_load_for_the_collar(workshop: DesignFolder) -> None:
    check = workshop.only(CLAMP)
    y = on_sheet(check, "y")
    left = on_sheet(check, "F_all") - math.pi * 7.1276e-3 * 0.621745 * y
    assert on_sheet(check, "F_c") == pytest.approx(left, rel=1e-4)
    workshop.replace("liner.toml", '"200 kN"', '"1390 kN"')
    assert outcome(workshop) == WRONG


@pytest.mark.parametrize(
    ("ring", "ends"), [("560 mm", FINE), ("559.9 mm", WRONG), ("589 mm", FINE), ("589.1 mm", WRONG)]
)
def test_the_cover_presses_on_the_collar(workshop: DesignFolder, ring: str, ends: Ends) -> None:
    workshop.replace("liner.toml", 'clamp_diameter = "580 mm"', f'clamp_diameter = "{ring}"')
    assert outcome(workshop) == ends


def test_the_studs_of_a_ground_face_press_the_collar_with_all_they_have(workshop: DesignFolder) -> None:
    workshop.replace("studs.toml", 'seal = "gasket"', 'seal = "ground face"')
    workshop.replace("liner.toml", '"200 kN"', '"1399 kN"')
    assert outcome(workshop) == FINE
    workshop.replace("liner.toml", '"1399 kN"', '"1401 kN"')
    assert outcome(workshop) == WRONG


def test_a_collar_at_the_other_end_is_not_clamped_by_this_cover(workshop: DesignFolder) -> None:
    workshop.replace("liner.toml", 'end = "front"', 'end = "back"')
    workshop.replace("liner.toml", 'clamp_force = "200 kN"', 'clamp_force = "20000 kN"')
    assert outcome(workshop) == FINE


def test_a_liner_that_states_no_clamping_is_worked_from_nothing(workshop: DesignFolder) -> None:
    workshop.replace("liner.toml", 'clamp_diameter = "580 mm"\nclamp_force = "200 kN"\n', "")
    assert outcome(workshop) == SILENT


@pytest.mark.parametrize("line", ['outside_diameter = "560 mm"\n', 'diameter = "589 mm"\n'])
def test_a_diameter_that_is_not_stated_is_compared_with_nothing(workshop: DesignFolder, line: str) -> None:
    assert outcome(workshop.replace("liner.toml", line, "")) == FINE


def test_a_ring_without_its_force_is_judged_by_its_place(workshop: DesignFolder) -> None:
    workshop.replace("liner.toml", 'clamp_force = "200 kN"\n', "")
    assert outcome(workshop) == FINE
    workshop.replace("studs.toml", 'torque = "384 N·m"\n', "")  # nothing is asked of the studs
    assert outcome(workshop) == FINE
    workshop.replace("liner.toml", 'clamp_diameter = "580 mm"', 'clamp_diameter = "559 mm"')
    assert outcome(workshop) == WRONG


def second(design: DesignFolder, cover: str = 'like = "cover"\n', ring: str = "580 mm") -> DesignFolder:
    """A second cylinder with its liner, pressed on a ring by a cover that is said to be like the first."""
    text = {
        name: (design.root / f"{name}.toml").read_text(encoding="utf-8")
        for name in ("block", "liner", "cover")
    }
    block = text["block"].replace('id = "block"', 'id = "other-block"')
    liner = text["liner"].replace('id = "liner"', 'id = "other-liner"').replace('"block"', '"other-block"')
    lid = f'kind = "cylinder-cover"\nid = "other-cover"\n{cover}closes = "other-block"\nof_end = "front"\n'
    made = {"other-block": block, "other-liner": liner.replace("580 mm", ring), "other-cover": lid}
    for name, spec in made.items():
        (design.root / f"{name}.toml").write_text(spec, encoding="utf-8")
    return design


@pytest.mark.parametrize(
    ("ring", "ends"), [("580.49 mm", FINE), ("580.51 mm", WRONG), ("579.51 mm", FINE), ("579.49 mm", WRONG)]
)
def test_covers_made_alike_press_on_one_ring(workshop: DesignFolder, ring: str, ends: Ends) -> None:
    """580 mm, to 0.5 mm."""
    check = second(workshop, ring=ring).only(CLAMP, "liner")
    assert (check.outcome, check.grade) == ends


def test_covers_that_are_not_alike_may_press_on_other_rings(workshop: DesignFolder) -> None:
    check = second(workshop, cover="", ring="570 mm").only(CLAMP, "liner")
    assert (check.outcome, check.grade) == FINE


def test_a_liner_alike_without_its_ring_is_compared_with_nothing(workshop: DesignFolder) -> None:
    second(workshop).replace("other-liner.toml", 'clamp_diameter = "580 mm"\n', "")
    check = workshop.only(CLAMP, "liner")
    assert (check.outcome, check.grade) == FINE
