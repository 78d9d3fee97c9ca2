"""A valve gear against the cams, valves, cranks and load cases beside it."""

from __future__ import annotations

from pathlib import Path

import pytest

from speclint.testing import DesignFolder, expect_conforms, expect_finding, expect_not_applicable
from tests.plugins.events.gear import checked

CAMS, CYLINDERS, NOTCHES = "gear.cams-of-its-valves", "gear.cylinders-of-engine", "gear.notches-of-duty"


@pytest.fixture
def folder(tmp_path: Path) -> DesignFolder:
    return DesignFolder(tmp_path)


def test_cams_of_its_own_valves(folder: DesignFolder) -> None:
    expect_conforms(checked(folder, CAMS))


@pytest.mark.parametrize(
    ("named", "says"), [("cam-inlet-back-35", '"back"'), ("cam-exhaust-front", '"exhaust"')]
)
def test_a_cam_of_another_valve(folder: DesignFolder, named: str, says: str) -> None:
    old = '[notches.35.inlet_front]\ncam = "cam-inlet-front-35"'
    change = "gear.toml", old, f'[notches.35.inlet_front]\ncam = "{named}"'
    check = checked(folder, CAMS, change)
    expect_finding(check, says=says)
    assert "notches 35 inlet front" in check.says


def test_as_many_cylinders_as_cranks(folder: DesignFolder) -> None:
    expect_conforms(checked(folder, CYLINDERS))
    expect_finding(checked(folder, CYLINDERS, ("gear.toml", "cylinders = 3", "cylinders = 2")))


def test_the_notch_of_a_load_case(folder: DesignFolder) -> None:
    expect_conforms(checked(folder, NOTCHES))
    wrong = ("duty.toml", 'notch = "35"', 'notch = "40"')
    expect_finding(checked(folder, NOTCHES, wrong), says="40")
    mid = ("duty.toml", 'notch = "35"', 'notch = "mid"')
    expect_finding(checked(folder, NOTCHES, mid), says="mid")
    none = ("duty.toml", 'notch = "35"\n', ""), ("duty.toml", 'notch = "65"\n', "")
    expect_not_applicable(checked(folder, NOTCHES, *none))
