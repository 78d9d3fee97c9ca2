"""What holds a seat, or the pieces of a valve, is drawn; the cage leaves the room that is stated."""

from __future__ import annotations

from pathlib import Path

import pytest

from speclint import Grade
from speclint.testing import DesignFolder, changed, found
from tests.plugins.liners.bench import bench, in_liner
from tests.plugins.valves.gear import CAGE, RING, gear_files

HOLD = ("finding", Grade.HOLD)
FINE = ("conforms", None)
SILENT = ("not applicable", None)
RULE = "retention.has-a-part"


def caged() -> dict[str, str]:
    """A valve that lifts 20 mm and stands 120 mm above its seat, its cage ending 145 mm above it."""
    stated = (('"none"', '"cage"\ncage_opening = "12 mm"'),)
    return {**gear_files(stated), "cage.toml": CAGE.replace("150 mm", "145 mm")}


@pytest.fixture
def design(tmp_path: Path) -> DesignFolder:
    return DesignFolder(tmp_path).write(caged())


def outcome(design: DesignFolder, rule: str, component: str) -> tuple[str, Grade | None]:
    check = design.only(rule, component)
    return check.outcome, check.grade


def test_a_cage_stands_behind_the_word(design: DesignFolder) -> None:
    assert outcome(design, RULE, "valve") == FINE
    design.replace("valve.toml", '"cage"', '"perforated plate"')
    assert outcome(design, RULE, "valve") == HOLD  # its end stands beyond the open valve
    design.replace("cage.toml", 'end_at = "145 mm"\n', "")
    assert outcome(design, RULE, "valve") == FINE
    design.replace("valve.toml", '"perforated plate"', '"none"')
    assert outcome(design, RULE, "valve") == HOLD
    (design.root / "cage.toml").unlink()
    assert outcome(design, RULE, "valve") == SILENT
    design.replace("valve.toml", 'retained = "none"', 'retained = "cage"')
    assert outcome(design, RULE, "valve") == SILENT  # a draft: listed as still to be drawn
    assert "a cage is still to be drawn" in design.only(RULE, "valve").says
    design.replace("valve.toml", '"cage"', '"collar larger than the port"')
    assert "still to be drawn" not in design.only(RULE, "valve").says
    design.replace("valve.toml", '"collar larger than the port"', '"cage"')
    design.replace("speclint.toml", "draft", "for-review")
    assert outcome(design, RULE, "valve") == HOLD
    design.replace("valve.toml", '"cage"', '"collar larger than the port"')
    assert outcome(design, RULE, "valve") == SILENT


@pytest.mark.parametrize("said", ["screwed ring", "locking screws", "rolled-over lip", "shoulder and cage"])
def test_a_ring_stands_behind_the_word(design: DesignFolder, said: str) -> None:
    (design.root / "cage.toml").unlink()
    design.replace("seat.toml", '"none"', f'"{said}"')
    assert outcome(design, RULE, "seat") == HOLD
    (design.root / "ring.toml").write_text(RING, encoding="utf-8")
    assert outcome(design, RULE, "seat") == FINE
    design.replace("seat.toml", f'"{said}"', '"none"')
    assert outcome(design, RULE, "seat") == HOLD
    design.replace("seat.toml", 'retention = "none"\n', "")
    assert outcome(design, RULE, "seat") == SILENT


def test_the_cage_of_its_valve_holds_a_seat(design: DesignFolder) -> None:
    design.replace("seat.toml", '"none"', '"shoulder and cage"')
    assert outcome(design, RULE, "seat") == FINE
    design.replace("cage.toml", "held_by", 'fastened_by = "cover over it"\nheld_by')
    assert outcome(design, RULE, "seat") == FINE
    design.replace("cage.toml", '"cover over it"', '"nothing"')
    assert outcome(design, RULE, "seat") == HOLD


@pytest.mark.parametrize(("opening", "ends"), [("12.1 mm", FINE), ("12.2 mm", HOLD), ("11.8 mm", HOLD)])
def test_the_opening_is_that_of_the_cage(
    design: DesignFolder, opening: str, ends: tuple[str, Grade | None]
) -> None:
    design.replace("cage.toml", 'opening = "12 mm"', f'opening = "{opening}"')
    assert outcome(design, "valve.opening-of-cage", "valve") == ends


@pytest.mark.parametrize(
    ("file", "old", "new", "ends"),
    [
        ("valve.toml", 'clearance_open = "5 mm"', 'clearance_open = "5.1 mm"', FINE),
        ("valve.toml", 'clearance_open = "5 mm"', 'clearance_open = "5.2 mm"', HOLD),
        ("valve.toml", 'lift = "20 mm"', 'lift = "21 mm"', HOLD),
        ("valve.toml", 'height = "120 mm"', 'height = "119 mm"', HOLD),
        ("cage.toml", 'end_at = "145 mm"', 'end_at = "144 mm"', HOLD),
        ("valve.toml", 'clearance_open = "5 mm"\n', "", SILENT),
    ],
)
def test_the_room_is_what_the_lift_leaves(
    design: DesignFolder, file: str, old: str, new: str, ends: tuple[str, Grade | None]
) -> None:
    design.replace(file, old, new)
    assert outcome(design, "valve.room-by-lift", "valve") == ends


def test_a_stated_room_hides_no_greater_lift(design: DesignFolder) -> None:
    """145 − 120 − 23 = 2 mm, less 0.5 of overtravel: below the 2 mm wanted, though 5 mm stay written."""
    assert outcome(design, "valve.foul-clearance", "valve") == FINE
    design.replace("valve.toml", 'lift = "20 mm"', 'lift = "23 mm"')
    check = design.only("valve.foul-clearance", "valve")
    assert (check.outcome, check.grade) == ("finding", Grade.NONCONFORMITY)
    assert found(check) == pytest.approx(0.0015)


COVER = 'kind = "cylinder-cover"\nid = "cover"\nmaterial = "plate-P355GH"\ncloses = "block"\nend = "front"\n'
STUDS = 'kind = "bolted-joint"\nid = "studs"\nmaterial = "plate-P355GH"\nholds = "cover"\n'


def test_a_cover_and_its_studs_stand_behind_the_clamped_collar(tmp_path: Path) -> None:
    files = bench(in_liner('retained_by = "nothing"', 'retained_by = "collar clamped by cover"'))
    design = DesignFolder(tmp_path).write(files)
    assert outcome(design, RULE, "liner") == HOLD
    (tmp_path / "cover.toml").write_text(COVER, encoding="utf-8")
    assert outcome(design, RULE, "liner") == HOLD
    gland = STUDS.replace('holds = "cover"', 'holds = "gland"\nscrewed_into = "cover"')
    (tmp_path / "gland.toml").write_text('kind = "gland"\nid = "gland"\n', encoding="utf-8")
    (tmp_path / "studs.toml").write_text(gland, encoding="utf-8")
    assert (
        outcome(design, RULE, "liner") == HOLD
    )  # the studs of a gland are screwed into the cover, and hold it not
    (tmp_path / "studs.toml").write_text(STUDS, encoding="utf-8")
    assert outcome(design, RULE, "liner") == FINE
    design.replace("cover.toml", 'end = "front"', 'end = "back"')
    assert outcome(design, RULE, "liner") == HOLD
    design.replace("cover.toml", 'end = "back"', 'of_end = "front"')
    assert outcome(design, RULE, "liner") == FINE
    design.replace("liner.toml", '"collar clamped by cover"', '"dowel"')
    assert outcome(design, RULE, "liner") == SILENT


BOXED = {
    "valve.toml": 'kind = "poppet-valve"\nid = "valve"\nretained = "cage"\nbox_diameter = "210 mm"\n',
    "cage.toml": 'kind = "valve-cage"\nid = "cage"\nsurrounds = "valve"\noutside_diameter = "222 mm"\n',
}


@pytest.mark.parametrize(
    ("file", "old", "new", "ends"),
    [
        ("cage.toml", "222 mm", "214 mm", FINE),  # a wall of 2 mm
        ("cage.toml", "222 mm", "213.9 mm", ("finding", Grade.NONCONFORMITY)),
        ("cage.toml", "222 mm", "214 mm ±0.1", ("finding", Grade.NONCONFORMITY)),
        ("valve.toml", "210 mm", "218 mm", FINE),
        ("valve.toml", "210 mm", "218.1 mm", ("finding", Grade.NONCONFORMITY)),
        # bars of 60 mm²: 10 mm wide they are 6 mm deep, 9.9 mm wide 6.06 mm, and 40 mm wide 1.5 mm
        ("cage.toml", '"222 mm"', '"222 mm"\nbar_area = "60 mm²"\nbar = "10 mm"', FINE),
        (
            "cage.toml",
            '"222 mm"',
            '"222 mm"\nbar_area = "60 mm²"\nbar = "9.9 mm"',
            ("finding", Grade.NONCONFORMITY),
        ),
        ("cage.toml", '"222 mm"', '"222 mm"\nbar = "9.9 mm"', FINE),
        ("cage.toml", '"222 mm"', '"222 mm"\nbar_area = "200 mm²"', FINE),
        ("cage.toml", '"222 mm"', '"214 mm"\nbar_area = "60 mm²"\nbar = "40 mm"', FINE),
        (
            "cage.toml",
            '"222 mm"',
            '"213.9 mm"\nbar_area = "60 mm²"\nbar = "40 mm"',
            ("finding", Grade.NONCONFORMITY),
        ),
    ],
)
def test_the_box_round_a_valve_is_within_its_cage(
    workshop: DesignFolder, file: str, old: str, new: str, ends: tuple[str, Grade | None]
) -> None:
    made = workshop.write({**BOXED, file: changed(BOXED[file], (old, new))})
    assert outcome(made, "valve.box-of-its-cage", "valve") == ends


@pytest.mark.parametrize("retained", ["perforated plate", "collar larger than the port", "none"])
def test_a_box_beside_a_plate_may_be_wider(workshop: DesignFolder, retained: str) -> None:
    narrow = changed(BOXED["cage.toml"], ("222 mm", "200 mm"))
    valve = changed(BOXED["valve.toml"], ('"cage"', f'"{retained}"'))
    made = workshop.write({"cage.toml": narrow, "valve.toml": valve})
    assert outcome(made, "valve.box-of-its-cage", "valve") == SILENT
