"""block.weld-record and block.closed-cavities."""

from __future__ import annotations

import pytest

from speclint import Grade
from speclint.testing import DesignFolder
from tests.plugins.fabrication.bench import BLOCK, bare, write
from tests.plugins.known_metals import WITH_METALS

RECORD, CLOSED = "block.weld-record", "block.closed-cavities"
BUTT = 'shape = "butt"\nweld = "full penetration"'


def test_welds_on_record_conform(workshop: DesignFolder) -> None:
    assert write(workshop).only(RECORD).outcome == "conforms"


@pytest.mark.parametrize(
    ("old", "new", "says"),
    [
        (BUTT, BUTT.replace("full", "partial"), "partial penetration weld under pressure"),
        (
            'welder = "W 4"\nquality = "B"\nexamined = "100 %"',
            'welder = "W 4"\nquality = "C"\nexamined = "100 %"',
            "level C",
        ),
        ('examined = "100 %"', 'examined = "99 %"', "requires 100%"),
        ('examined = "10 %"', 'examined = "9.9 %"', "requires 10%"),
        ('joint_factor = "0.85"', 'joint_factor = "0.86"', "requires 100%"),
        ('joint_factor = "1"', 'joint_factor = "1.1"', "joint factor of 1.1"),
        (BUTT, BUTT.replace("butt", "lap"), "a lap joint under pressure, which no weld goes through"),
    ],
)
def test_a_weld_that_counts_for_more_than_its_record_is_a_hold(
    workshop: DesignFolder, old: str, new: str, says: str
) -> None:
    check = write(workshop, (old, new)).only(RECORD)
    assert (check.outcome, check.grade) == ("finding", Grade.HOLD)
    assert says in check.says


def test_a_steel_that_is_not_known_to_weld_is_a_hold(workshop: DesignFolder) -> None:
    poor = (
        'material = "known-plate"\nthickness = "40 mm"',
        'material = "forging-42CrMo4"\nthickness = "40 mm"',
    )
    check = write(workshop, poor).only(RECORD)
    assert (check.outcome, check.grade) == ("finding", Grade.HOLD)
    assert "in no group" in check.says


@pytest.mark.parametrize("element", ["C = [0, 0.2], ", "Mn = [0.6, 1.2], "])
def test_a_steel_whose_carbon_or_manganese_is_not_known_is_in_no_group(
    workshop: DesignFolder, element: str
) -> None:
    """Every steel has both: one that the data do not name is not known, and no impurity."""
    write(workshop)
    metals = (workshop.root / "metals.toml").read_text(encoding="utf-8")
    assert element in metals
    check = workshop.write({"metals.toml": metals.replace(element, "")}, settings=WITH_METALS).only(RECORD)
    assert (check.outcome, check.grade) == ("not assessed", Grade.HOLD)


def test_a_fault_is_told_before_a_steel_that_is_not_known(workshop: DesignFolder) -> None:
    poor = (
        'material = "known-plate"\nthickness = "40 mm"',
        'material = "forging-42CrMo4"\nthickness = "40 mm"',
    )
    check = write(workshop, poor, ('examined = "100 %"', 'examined = "99 %"')).only(RECORD)
    assert (check.outcome, check.grade) == ("finding", Grade.HOLD)


def test_a_weld_of_a_wall_in_steam_holds_pressure_whatever_is_said(workshop: DesignFolder) -> None:
    denied = ("on_pressure = true\nsequence = true", "on_pressure = false\nsequence = true")
    check = write(workshop, denied, ('examined = "10 %"', 'examined = "0 %"')).only(RECORD)
    assert (check.outcome, check.grade) == ("finding", Grade.HOLD)


def test_a_weld_of_a_round_plate_in_steam_is_not_said_to_hold_no_pressure(workshop: DesignFolder) -> None:
    """The plate says that it meets no steam, and live steam comes in through it."""
    end = """
[plates.end]
material = "known-plate"
thickness = "30 mm"
meets_steam = false
corrosion_allowance = "1 mm"
z_quality = "none"
rolled_thickness = "30 mm"
serves_as = "shell"
[joints.end-seam]
plate = "end"
shape = "butt"
weld = "fillet"
on_pressure = false
[joints.barrel-seam]"""
    opening = '[openings.chest]\nplate = "{}"\ncarries = "live steam"\n'
    for plate, outcome in (("end", "not assessed"), ("chest", "conforms")):
        beside = {"block.toml": BLOCK + opening.format(plate)}
        check = write(workshop, ("[joints.barrel-seam]", end), beside=beside).only(RECORD)
        assert check.outcome == outcome


def test_seventy_per_cent_asks_for_no_film(workshop: DesignFolder) -> None:
    poor = ('examined = "10 %"\njoint_factor = "0.85"', 'examined = "0 %"\njoint_factor = "0.7"')
    assert write(workshop, poor).only(RECORD).outcome == "conforms"


@pytest.mark.parametrize(
    "missing",
    [
        'procedure = "WPQR 17"\n',
        'welder = "W 4"\n',
        'quality = "B"\n',
        'examined = "100 %"\n',
        'joint_factor = "1"\n',
    ],
)
def test_a_record_that_is_missing_is_a_hold(workshop: DesignFolder, missing: str) -> None:
    record = 'procedure = "WPQR 17"\nwelder = "W 4"\nquality = "B"\nexamined = "100 %"\njoint_factor = "1"\n'
    check = write(workshop, (record, record.replace(missing, ""))).only(RECORD)
    assert (check.outcome, check.grade) == ("not assessed", Grade.HOLD)


def test_no_joints_no_record(workshop: DesignFolder) -> None:
    assert bare(workshop, "joints").only(RECORD).outcome == "not assessed"


@pytest.mark.parametrize(
    ("old", "new", "outcome"),
    [
        ("cavities_sought = true", "cavities_sought = true", "conforms"),
        ("cavities_sought = true", "cavities_sought = false", "finding"),
        ("cavities_sought = true", "", "not assessed"),
        ("vented_for_treatment = true", "vented_for_treatment = false", "finding"),
        ("vented_in_service = true", "vented_in_service = false", "finding"),
        ("vented_in_service = true", "", "not assessed"),
    ],
)
def test_hollows_are_sought_and_vented(workshop: DesignFolder, old: str, new: str, outcome: str) -> None:
    check = write(workshop, (old, new)).only(CLOSED)
    assert (check.outcome, check.grade) == (outcome, None if outcome == "conforms" else Grade.HOLD)


FOUND_NONE = (
    "[cavities.under-chest]\nvented_for_treatment = true\nvented_in_service = true\n",
    "",
)
REPORT = ("cavities_sought = true", 'cavities_sought = true\ncavities_record = "CN-R-12"')
WAYS = """
kind = "steam-passage"
id = "{name}"
material = "known-plate"
in_block = "block"
"""
DOUBLE = """
kind = "partition"
id = "double"
material = "known-plate"
live_side = "chest"
exhaust_side = "belt"
build = "{build}"
"""


@pytest.mark.parametrize(
    ("changes", "outcome"), [((FOUND_NONE, REPORT), "conforms"), ((FOUND_NONE,), "not assessed")]
)
def test_a_search_that_found_no_cavity_has_its_report(
    workshop: DesignFolder, changes: tuple[tuple[str, str], ...], outcome: str
) -> None:
    check = write(workshop, *changes).only(CLOSED)
    assert (check.outcome, check.grade) == (outcome, None if outcome == "conforms" else Grade.HOLD)


@pytest.mark.parametrize(("build", "outcome"), [("single wall", "conforms"), ("two walls", "not assessed")])
def test_two_walls_with_a_gap_are_a_cavity(workshop: DesignFolder, build: str, outcome: str) -> None:
    beside = {f"{name}.toml": WAYS.format(name=name) for name in ("chest", "belt")}
    beside["double.toml"] = DOUBLE.format(build=build)
    check = write(workshop, FOUND_NONE, REPORT, beside=beside).only(CLOSED)
    assert check.outcome == outcome


def test_a_weld_that_says_it_holds_no_pressure_needs_its_wall(workshop: DesignFolder) -> None:
    """Examined 0 %, and conforming before: its plate meets steam."""
    denied = ('on_pressure = true\nwall = "barrel"', "on_pressure = false")
    check = write(workshop, denied, ('examined = "100 %"', 'examined = "0 %"')).only(RECORD)
    assert (check.outcome, check.grade) == ("not assessed", Grade.HOLD)
