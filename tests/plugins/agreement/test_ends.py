"""A valve, its seats and its gear at one end of one cylinder: each agreement from both sides."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from speclint import Grade
from speclint.testing import DesignFolder, changed
from tests.plugins.valves.gear import BLOCK, SEAT, train_files

HOLD = ("finding", Grade.HOLD)
WRONG = ("finding", Grade.NONCONFORMITY)
FINE = ("conforms", None)
SILENT = ("not applicable", None)
PLACED = 'serves = "inlet"\nend = "front"\nopens_into = "chamber"\n'
ENDS = """
[bores.main]
diameter = "560 mm"
[bores.inner]
diameter = "560 mm"
[ends.front]
of_bore = "main"
side = "front"
[ends.back]
of_bore = "main"
side = "back"
"""
ROCKER = """
kind = "rocker"
id = "rocker"
material = "known-steel"
works = "spindle"
carried_in = "box"
valve_arm = "50 mm"
tappet_arm = "50 mm"
"""
SHAFT = 'kind = "shaft"\nid = "shaft"\nmaterial = "known-steel"\ndiameter = "60 mm"\n'


def of_one_end() -> dict[str, str]:
    """An inlet valve of the front end, its tappet, rocker and cam in the box of that end."""
    files = train_files(
        tappet=(('works = "spindle"', 'works = "rocker"'),),
        cam=(('base_radius = "60 mm"', 'base_radius = "60 mm"\nturns_on = "shaft"\nbore = "60 mm H7"'),),
    )
    files |= {"rocker.toml": ROCKER, "shaft.toml": SHAFT}
    lower = f'[seat_bores.lower]\ndiameter = "200 mm"\nbeat = "lower"\n{PLACED}[drive]\n'
    upper = f'[seat_bores.upper]\nbeat = "upper"\n{PLACED}'
    files["block.toml"] = changed(BLOCK, ("[seat_bores.upper]\n", upper), ("[drive]\n", lower)) + ENDS
    files["lower.toml"] = changed(SEAT, ('id = "seat"', 'id = "lower"'), ('"upper"', '"lower"'))
    first, second = files["valve.toml"].split("[lower_beat]")
    files["valve.toml"] = first + "[lower_beat]" + second.replace('"seat"', '"lower"')
    files["box.toml"] = files["box.toml"].replace("tappets = 1", 'of_end = "front"\ntappets = 1')
    return files


@pytest.fixture
def design(tmp_path: Path) -> DesignFolder:
    return DesignFolder(tmp_path).write(of_one_end())


def outcome(design: DesignFolder, rule: str, component: str = "") -> tuple[str, Grade | None]:
    check = design.only(rule, component)
    return check.outcome, check.grade


@pytest.mark.parametrize(
    ("file", "old", "new", "ends"),
    [
        ("valve.toml", 'serves = "inlet"', 'serves = "inlet"', FINE),
        ("valve.toml", 'serves = "inlet"', 'serves = "exhaust"', HOLD),
        ("valve.toml", 'cylinder_bore = "main"', 'cylinder_bore = "inner"', HOLD),
        ("valve.toml", 'cylinder_bore = "main"\n', "", FINE),
        ("valve.toml", 'seat = "lower"', 'seat = "seat"', HOLD),
        (
            "block.toml",
            f'beat = "lower"\n{PLACED}',
            f'beat = "lower"\n{PLACED.replace("front", "back")}',
            HOLD,
        ),
        (
            "block.toml",
            f'beat = "lower"\n{PLACED}',
            f'beat = "lower"\n{PLACED.replace("chamber", "cylinder")}',
            HOLD,
        ),
        ("box.toml", 'of_end = "front"', 'of_end = "back"', HOLD),
        ("box.toml", 'of_end = "front"\n', "", FINE),
    ],
)
def test_a_valve_is_of_one_end(
    design: DesignFolder, file: str, old: str, new: str, ends: tuple[str, Grade | None]
) -> None:
    design.replace(file, old, new)
    assert outcome(design, "valve.of-one-end") == ends


def test_without_a_place_of_its_seats_a_valve_has_no_end(design: DesignFolder) -> None:
    text = (design.root / "block.toml").read_text(encoding="utf-8")
    for line in (PLACED, 'beat = "upper"\n', 'beat = "lower"\n'):
        text = text.replace(line, "")
    (design.root / "block.toml").write_text(text, encoding="utf-8")
    (design.root / "valve.toml").write_text(
        (design.root / "valve.toml").read_text(encoding="utf-8").replace('"lower"', '"seat"'),
        encoding="utf-8",
    )
    assert (
        outcome(design, "valve.of-one-end") == FINE
    )  # both seats are in one block, which is all that is known


def test_rocker_and_tappet_are_in_one_box(design: DesignFolder) -> None:
    assert outcome(design, "gear.one-box") == FINE
    box = (design.root / "box.toml").read_text(encoding="utf-8")
    (design.root / "other.toml").write_text(box.replace('id = "box"', 'id = "other"'), encoding="utf-8")
    design.replace("rocker.toml", 'carried_in = "box"', 'carried_in = "other"')
    assert outcome(design, "gear.one-box") == HOLD


@pytest.mark.parametrize(("tappets", "ends"), [(1, FINE), (2, WRONG), (0, WRONG)])
def test_a_box_has_the_tappets_of_its_end(
    design: DesignFolder, tappets: int, ends: tuple[str, Grade | None]
) -> None:
    design.replace("box.toml", "tappets = 1", f"tappets = {tappets}")
    assert outcome(design, "cambox.valves-of-its-end") == ends


@pytest.mark.parametrize(
    ("opens_into", "acts", "ends"),
    [
        ("chamber", "beyond the beats", FINE),
        ("chamber", "between the beats", HOLD),
        ("cylinder", "between the beats", FINE),
        ("cylinder", "beyond the beats", HOLD),
    ],
)
def test_the_supply_acts_where_the_valve_lifts(
    design: DesignFolder, opens_into: str, acts: str, ends: tuple[str, Grade | None]
) -> None:
    """Live steam fills the chest of an inlet valve: beyond the beats of one that lifts into it."""
    text = (design.root / "block.toml").read_text(encoding="utf-8")
    (design.root / "block.toml").write_text(text.replace('"chamber"', f'"{opens_into}"'), encoding="utf-8")
    design.replace("valve.toml", '"beyond the beats"', f'"{acts}"')
    assert outcome(design, "valve.supply-by-place") == ends


def test_an_exhaust_valve_is_supplied_by_the_cylinder(design: DesignFolder) -> None:
    design.replace("valve.toml", 'serves = "inlet"', 'serves = "exhaust"')
    assert outcome(design, "valve.supply-by-place") == HOLD


def test_a_valve_that_lifts_into_its_chest_meets_no_piston(design: DesignFolder) -> None:
    assert outcome(design, "valve.room-to-piston") == FINE
    design.replace("valve.toml", "meets_piston = false", "meets_piston = true")
    assert outcome(design, "valve.room-to-piston") == HOLD


@pytest.mark.parametrize(
    ("file", "old", "new", "ends"),
    [
        ("spindle.toml", 'leaves = "supply"', 'leaves = "supply"', FINE),
        ("spindle.toml", 'leaves = "supply"', 'leaves = "delivery"', HOLD),
        ("valve.toml", '"beyond the beats"', '"between the beats"', FINE),
        ("spindle.toml", 'seal_diameter = "20 mm"', 'seal_diameter = "22 mm"', FINE),
        ("spindle.toml", 'seal_diameter = "20 mm"', 'seal_diameter = "22.1 mm"', HOLD),
    ],
)
def test_a_spindle_of_two_beats_leaves_beyond_them(
    design: DesignFolder, file: str, old: str, new: str, ends: tuple[str, Grade | None]
) -> None:
    """Where the supply acts is worked: what the valve states of it only valve.supply-by-place tells."""
    design.replace(file, old, new)
    assert outcome(design, "spindle.steam-by-place") == ends


def test_a_seat_that_opens_into_no_space_leaves_the_stated_side_of_the_supply(design: DesignFolder) -> None:
    text = (design.root / "block.toml").read_text(encoding="utf-8")
    unsaid = re.sub(r"opens_into = .*\n", "", text)
    assert unsaid != text
    (design.root / "block.toml").write_text(unsaid, encoding="utf-8")
    assert outcome(design, "spindle.steam-by-place") == FINE
    design.replace("valve.toml", '"beyond the beats"', '"between the beats"')
    assert outcome(design, "spindle.steam-by-place") == HOLD


@pytest.mark.parametrize(("pushed", "leaves"), [("open", "supply"), ("shut", "delivery")])
def test_a_spindle_of_one_beat_leaves_above_or_under_the_head(
    design: DesignFolder, pushed: str, leaves: str
) -> None:
    """The supply is above the head: steam pushes a spindle outwards, which opens the valve on that side only."""
    design.replace("valve.toml", "beats = 2", "beats = 1")
    design.replace("spindle.toml", 'pushed = "shut"', f'pushed = "{pushed}"')
    design.replace("spindle.toml", 'leaves = "supply"', f'leaves = "{leaves}"')
    assert outcome(design, "spindle.steam-by-place") == FINE
    other = "delivery" if leaves == "supply" else "supply"
    design.replace("spindle.toml", f'leaves = "{leaves}"', f'leaves = "{other}"')
    assert outcome(design, "spindle.steam-by-place") == HOLD


@pytest.mark.parametrize(("bore", "ends"), [("60 mm", FINE), ("60.1 mm", WRONG), ("55 mm", WRONG)])
def test_a_cam_is_bored_for_its_shaft(
    design: DesignFolder, bore: str, ends: tuple[str, Grade | None]
) -> None:
    design.replace("cam.toml", '"60 mm H7"', f'"{bore}"')
    assert outcome(design, "cam.bore-of-shaft") == ends
