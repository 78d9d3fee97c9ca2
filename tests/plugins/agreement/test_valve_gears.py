"""A valve gear against the cams, valves, cranks and load cases beside it."""

from __future__ import annotations

import math
from pathlib import Path

import pytest

from speclint.testing import DesignFolder, expect_conforms, expect_finding, expect_not_applicable
from tests.plugins.events.gear import checked, files, written

CAMS, CYLINDERS, NOTCHES = "gear.cams-of-its-valves", "gear.cylinders-of-engine", "gear.notches-of-duty"
FEET = "gear.feet-by-place"
#: The foot of the inlet is at -9.5°, that of the exhaust at 140°: 149.5° lie between them on a shaft.
INLET, EXHAUST, BACK = "cam-inlet-front-65", "cam-exhaust-front", "cam-exhaust-back"


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


@pytest.mark.parametrize(
    ("old", "new"),
    [
        ('of_bore = "main"\nside = "front"\n', 'of_bore = "main"\n'),
        ('inlet-front-upper]\nend = "front"\n', "inlet-front-upper]\n"),
        ('inlet-front-upper]\nend = "front"\n', 'inlet-front-upper]\nend = "rear"\n'),  # the block has none
    ],
)
def test_an_end_that_is_not_known_leaves_the_rest_to_be_compared(
    folder: DesignFolder, old: str, new: str
) -> None:
    made = files(("block.toml", old, new))
    assert written(folder.root, made).only(CAMS, readable=False).outcome == "conforms"
    made["valve-inlet-front.toml"] = made["valve-inlet-front.toml"].replace('"inlet"', '"exhaust"')
    assert written(folder.root, made).only(CAMS, readable=False).outcome == "finding"


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


def placed(**phases: str) -> tuple[tuple[str, str, str], ...]:
    """Cams on one shaft, each with its place on it."""
    names = {"inlet": INLET, "exhaust": EXHAUST, "back": BACK}
    return tuple(
        (f"{names[one]}.toml", 'kind = "cam"\n', f'kind = "cam"\nturns_on = "shaft"\nphase = "{phase} °"\n')
        for one, phase in phases.items()
    )


@pytest.mark.parametrize(
    ("phases", "outcome"),
    [
        ({"inlet": "20", "exhaust": "169.5"}, "conforms"),
        ({"inlet": "20", "exhaust": "169.99"}, "conforms"),
        ({"inlet": "20", "exhaust": "170.01"}, "finding"),
        ({"inlet": "20", "exhaust": "168.99"}, "finding"),
        ({"inlet": "300", "exhaust": "89.5"}, "conforms"),  # a turn on
        (
            {"inlet": "20", "back": "349.5"},
            "conforms",
        ),  # half a turn on, where the other end has its dead centre
        ({"inlet": "20", "back": "169.5"}, "finding"),
        ({"inlet": "20"}, "not applicable"),
    ],
)
def test_cams_on_one_shaft_lift_as_far_apart_as_they_stand(
    folder: DesignFolder, phases: dict[str, str], outcome: str
) -> None:
    made = files(*placed(**phases)) | {"shaft.toml": 'kind = "shaft"\n'}
    assert written(folder.root, made).only(FEET).outcome == outcome


def test_the_later_named_cam_is_held_against_the_first(folder: DesignFolder) -> None:
    """−9.5 + 170.01 − 20 = 140.51°: the exhaust, which opens at 140°, is told to begin there, and not the inlet."""
    made = files(*placed(inlet="20", exhaust="170.01")) | {"shaft.toml": 'kind = "shaft"\n'}
    check = written(folder.root, made).only(FEET)
    (told,) = check.failing
    assert told.of.endswith("exhaust front")
    assert told.places[0].where.key.endswith("exhaust_front.foot")
    assert told.places[0].aim == pytest.approx(math.radians(140.51))


def test_cams_on_two_shafts_and_a_notch_that_runs_backward_are_left_out(folder: DesignFolder) -> None:
    wrong = files(*placed(inlet="20", exhaust="100")) | {"shaft.toml": 'kind = "shaft"\n'}
    other = {**wrong, "other.toml": 'kind = "shaft"\n'}
    other[f"{EXHAUST}.toml"] = other[f"{EXHAUST}.toml"].replace('"shaft"', '"other"')
    assert written(folder.root, other).only(FEET).outcome == "not applicable"
    back = {**wrong, "gear.toml": wrong["gear.toml"].replace('"forward"', '"backward"')}
    assert written(folder.root, back).only(FEET).outcome == "not applicable"
