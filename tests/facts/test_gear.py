"""The gear of a valve: the parts between it and its cam, the lift that they give and the clearance that they leave."""

from __future__ import annotations

from pathlib import Path

import pytest

from speclint.facts import (
    boxes_of,
    clearance_by_lengths,
    furthest_lift,
    gear_of,
    greatest_lift,
    least_lift,
    spindles_into,
    tappet_clearances,
    tracks_of,
)
from speclint.rules import NotAssessed
from tests.facts.bench import Bench, bench

SPINDLE = 'moves = "valve"\nheated_length = "330 mm"\n'
ROCKER = 'works = "spindle"\nvalve_arm = "120 mm"\ntappet_arm = "80 mm"\n'
TAPPET = 'works = "rocker"\ncarried_in = "box"\nclearance = "0.5 mm"\n'
CAM = 'lifts = "tappet"\nramp_height = "1 mm"\nlift = "20 mm"\n'
TABLE = 'lifts = "tappet"\ntable = ["0 mm", "9 mm", "23 mm", "8 mm", "0 mm"]\n'
BOX = 'block_length = "150 mm"\ndatum_length = "180.6 mm"\n'
LIFT = 'lift = "30 mm"\novertravel = "1 mm"\n'


def drawn(folder: Path, **changed: str | None) -> Bench:
    """A valve worked by a rocker of 120 to 80 mm; what is changed to None is left out."""
    files: dict[str, str | None] = {
        "poppet-valve valve": LIFT,
        "valve-spindle spindle": SPINDLE,
        "rocker rocker": ROCKER,
        "tappet tappet": TAPPET,
        "cam cam": CAM,
        "cam-box box": BOX,
        "valve-spindle second": None,
        "rocker another": None,
        "tappet beside": None,
        "cam track": None,
        "cam-box other": None,
    }
    texts = {name: changed.get(name.split()[1], text) for name, text in files.items()}
    return bench(folder, {name: text for name, text in texts.items() if text is not None}, "valve")


def greatest(on: Bench) -> float | None:
    found = greatest_lift(on["valve"], on.sheet, on.sheet.take)
    return None if found is None else found.value


def least(on: Bench) -> float | None:
    found = least_lift(on["valve"], on.sheet, on.sheet.take)
    return None if found is None else found.value


@pytest.mark.parametrize(
    ("changed", "most", "cold"),
    [
        ({}, 0.0315, 0.03075),  # 1.5 × 21, and × 20.5 mm
        ({"rocker": None, "tappet": TAPPET.replace('"rocker"', '"spindle"')}, 0.021, 0.0205),
        ({"cam": TABLE}, 0.0345, 0.03375),  # 1.5 × 23, and × 22.5 mm
        ({"tappet": TAPPET.replace('clearance = "0.5 mm"\n', "")}, 0.0315, None),
        ({"rocker": ROCKER.replace('valve_arm = "120 mm"\n', "")}, None, None),
        ({"rocker": ROCKER.replace('tappet_arm = "80 mm"\n', "")}, None, None),
        ({"cam": CAM.replace('lift = "20 mm"\n', "")}, None, None),
        ({"cam": CAM.replace('ramp_height = "1 mm"\n', "")}, None, None),
    ],
)
def test_the_lift_is_that_of_cam_and_arms(
    tmp_path: Path, changed: dict[str, str | None], most: float | None, cold: float | None
) -> None:
    on = drawn(tmp_path, **changed)
    assert greatest(on) == pytest.approx(most)
    assert least(on) == pytest.approx(cold)


@pytest.mark.parametrize(
    "changed",
    [
        {"spindle": None, "rocker": None, "tappet": None, "cam": None},
        {"second": 'moves = "valve"\n'},
        {"another": 'works = "spindle"\n'},
        {"tappet": None, "cam": None},
        {"beside": 'works = "rocker"\n'},
        {"cam": None},
        {"track": CAM},
        {"track": CAM + 'track = "one"\n'},
        {"cam": CAM + 'track = "one"\n', "track": CAM + 'track = "one"\n'},
    ],
)
def test_a_gear_with_a_part_missing_or_drawn_twice_is_none(
    tmp_path: Path, changed: dict[str, str | None]
) -> None:
    on = drawn(tmp_path, **changed)
    assert gear_of(on["valve"], on.sheet) is None
    assert greatest(on) is None
    assert least(on) is None


@pytest.mark.parametrize(
    ("cam", "track", "highest"),
    [
        (CAM, CAM.replace("20 mm", "22 mm"), "track"),
        (CAM, CAM.replace("20 mm", "18 mm"), "cam"),
        (TABLE, CAM.replace("20 mm", "22 mm"), "cam"),
        (TABLE, CAM.replace("20 mm", "24 mm"), "track"),
        (CAM.replace('lift = "20 mm"\n', ""), CAM, "track"),
    ],
)
def test_of_several_tracks_the_highest_counts(tmp_path: Path, cam: str, track: str, highest: str) -> None:
    on = drawn(tmp_path, cam=cam + 'track = "one"\n', track=track + 'track = "two"\n')
    gear = gear_of(on["valve"], on.sheet)
    assert gear is not None
    assert gear.cam.id == highest
    assert {one.id for one in tracks_of(on["tappet"], on.sheet)} == {"cam", "track"}


def test_of_one_cam_nothing_is_taken_to_choose_it(tmp_path: Path) -> None:
    """A concession on its gear then does not rest on a lift that nobody compared."""
    on = drawn(tmp_path)
    assert gear_of(on["valve"], on.sheet) is not None
    assert on.sheet.record.steps == []


def test_a_lift_points_at_what_it_is_of(tmp_path: Path) -> None:
    on = drawn(tmp_path)
    most = greatest_lift(on["valve"], on.sheet, on.sheet.take)
    cold = least_lift(on["valve"], on.sheet, on.sheet.take)
    assert most is not None
    assert cold is not None
    of_cam_and_arms = ["lift", "ramp_height", "valve_arm", "tappet_arm"]
    assert [place.key for place in most.places] == of_cam_and_arms
    assert [place.key for place in cold.places] == [*of_cam_and_arms, "clearance"]
    (tmp_path / "table").mkdir()
    by_table = drawn(tmp_path / "table", cam=TABLE)
    highest = greatest_lift(by_table["valve"], by_table.sheet, by_table.sheet.take)
    assert highest is not None
    assert highest.places[0] == by_table["cam"].table[2].where


@pytest.mark.parametrize(
    ("changed", "lift"),
    [
        ({}, 0.0315),
        ({"cam": None}, 0.031),  # 30 + 1 mm as stated
        ({"cam": None, "valve": 'lift = "30 mm"\n'}, None),
        ({"cam": None, "valve": 'overtravel = "1 mm"\n'}, None),
    ],
)
def test_without_a_gear_the_furthest_lift_is_as_stated(
    tmp_path: Path, changed: dict[str, str | None], lift: float | None
) -> None:
    on = drawn(tmp_path, **changed)
    assert furthest_lift(on["valve"], on.sheet) == pytest.approx(lift)


def by_lengths(on: Bench) -> float | None:
    rocker = on["rocker"] if "rocker" in on.design.specs else None
    found = clearance_by_lengths(on["tappet"], on["spindle"], rocker, on.sheet, on.sheet.take)
    return None if found is None else found.value


@pytest.mark.parametrize(
    ("changed", "left"),
    [
        ({}, 0.4e-3),  # (150 + 180.6 − 330)/1.5 = 0.4 mm
        ({"spindle": SPINDLE + 'cap_ground_off = "0.3 mm"\n'}, 0.6e-3),  # 0.9/1.5
        ({"rocker": None, "tappet": TAPPET.replace('"rocker"', '"spindle"')}, 0.6e-3),
        ({"tappet": TAPPET.replace('carried_in = "box"\n', "")}, None),
        ({"rocker": ROCKER.replace('valve_arm = "120 mm"\n', "")}, None),
        ({"spindle": 'moves = "valve"\n'}, None),
        ({"box": 'block_length = "150 mm"\n'}, None),
        ({"box": 'datum_length = "180.6 mm"\n'}, None),
    ],
)
def test_the_lengths_leave_a_clearance(
    tmp_path: Path, changed: dict[str, str | None], left: float | None
) -> None:
    assert by_lengths(drawn(tmp_path, **changed)) == pytest.approx(left)


@pytest.mark.parametrize(
    ("changed", "cold"),
    [
        ({}, (0.4e-3, 0.4e-3)),
        ({"tappet": TAPPET + 'clearance_setting = "0.05 mm"\n'}, (0.5e-3, 0.5e-3)),
        ({"spindle": SPINDLE + 'cap_ground_off = "0.3 mm"\n'}, (0.5e-3, 0.6e-3)),
        ({"spindle": SPINDLE + 'cap_ground_off = "0.05 mm"\n'}, (0.65e-3 / 1.5, 0.5e-3)),
        ({"spindle": SPINDLE + 'cap_ground_off = "0.16 mm"\n'}, (0.5e-3, 0.5e-3)),
        ({"box": 'block_length = "150 mm"\n'}, (0.5e-3, 0.5e-3)),
        ({"rocker": None, "tappet": TAPPET.replace('"rocker"', '"spindle"')}, (0.6e-3, 0.6e-3)),
    ],
)
def test_a_clearance_is_as_a_screw_sets_it_as_lengths_leave_it_or_between_both_where_a_cap_is_ground(
    tmp_path: Path, changed: dict[str, str | None], cold: tuple[float, float]
) -> None:
    """(150 + 180.6 − 330 + a)/1.5: 0.6 mm with a = 0.3 mm; 0.507 mm with 0.16 mm, which agrees with 0.5 mm."""
    on = drawn(tmp_path, **changed)
    assert tappet_clearances(on["tappet"], on.sheet) == pytest.approx(cold)


def test_neither_set_nor_drawn_it_must_be_stated(tmp_path: Path) -> None:
    on = drawn(tmp_path, tappet='works = "rocker"\n')
    with pytest.raises(NotAssessed, match="clearance is not stated"):
        tappet_clearances(on["tappet"], on.sheet)


def test_the_boxes_of_a_gear_carry_tappet_and_rocker(tmp_path: Path) -> None:
    on = drawn(tmp_path, other="", rocker=ROCKER + 'carried_in = "other"\n')
    gear = gear_of(on["valve"], on.sheet)
    assert gear is not None
    assert [box.id for box in boxes_of(gear, on.sheet)] == ["box", "other"]
    (tmp_path / "a").mkdir()
    alone = drawn(tmp_path / "a", rocker=None, tappet=TAPPET.replace('"rocker"', '"spindle"'))
    gear = gear_of(alone["valve"], alone.sheet)
    assert gear is not None
    assert [box.id for box in boxes_of(gear, alone.sheet)] == ["box"]
    assert [one.id for one in spindles_into(alone["box"], alone.sheet)] == ["spindle"]


def test_spindles_enter_the_box_of_their_rocker_and_tappet(tmp_path: Path) -> None:
    on = drawn(tmp_path, rocker=ROCKER + 'carried_in = "box"\n')
    assert [one.id for one in spindles_into(on["box"], on.sheet)] == ["spindle", "spindle"]
