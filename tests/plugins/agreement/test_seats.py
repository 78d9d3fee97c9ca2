"""Seats, their bores and the valve on them: each agreement from both sides, and a wrong copy that eases no hold."""

from __future__ import annotations

from pathlib import Path

import pytest

from speclint import Grade
from speclint.testing import DesignFolder, changed, found, on_sheet
from tests.plugins.valves.gear import BLOCK, SEAT, gear_files

HOLD = ("finding", Grade.HOLD)
WRONG = ("finding", Grade.NONCONFORMITY)
FINE = ("conforms", None)
SILENT = ("not applicable", None)
#: Two seats of 150 and 140 mm, flat, 3 mm wide, 110 mm apart, for an inlet valve that lifts into its chest.
BORES = (
    '[seat_bores.upper]\nserves = "inlet"\nend = "front"\nbeat = "upper"\nat = "110 mm"\nopens_into = "chamber"\n',
    '[seat_bores.lower]\ndiameter = "200 mm"\ndepth = "30 mm"\nserves = "inlet"\nend = "front"\n'
    'beat = "lower"\nat = "0 mm"\nopens_into = "chamber"\n[drive]\n',
)
FACE = 'seat_diameter = "150 mm"\nseat_width = "3 mm"\nseat_angle = "0 °"\n'
ENDS = "".join(
    f'[ends.{end}]\nof_bore = "main"\nside = "{end}"\nrelief_set = "16 bar gauge"\n'
    for end in ("front", "back")
)
LOWER = (('id = "seat"', 'id = "lower"'), ('in_bore = "upper"', 'in_bore = "lower"'))


def seated() -> dict[str, str]:
    """A valve on two seats that state their faces, in a block that says where they are."""
    files = gear_files()
    files["block.toml"] = (
        changed(BLOCK, ("[seat_bores.upper]\n", BORES[0]), ("[drive]\n", BORES[1])) + ENDS + "[bores.main]\n"
    )
    seat = SEAT.replace('bore = "170 mm"', 'bore = "130 mm"')
    files["seat.toml"] = seat + FACE
    files["lower.toml"] = changed(seat, *LOWER) + FACE.replace("150 mm", "140 mm")
    upper, lower = files["valve.toml"].split("[lower_beat]")
    files["valve.toml"] = upper + "[lower_beat]" + lower.replace('seat = "seat"', 'seat = "lower"')
    return files


@pytest.fixture
def design(tmp_path: Path) -> DesignFolder:
    return DesignFolder(tmp_path).write(seated())


def outcome(design: DesignFolder, rule: str, component: str = "") -> tuple[str, Grade | None]:
    check = design.only(rule, component)
    return check.outcome, check.grade


@pytest.mark.parametrize(
    ("length", "ends"), [("30 mm", FINE), ("30.5 mm", FINE), ("30.51 mm", HOLD), ("10 mm", FINE)]
)
def test_a_seat_is_as_long_as_its_bore(
    design: DesignFolder, length: str, ends: tuple[str, Grade | None]
) -> None:
    design.replace("seat.toml", 'length = "30 mm"', f'length = "{length}"')
    assert outcome(design, "seat.as-long-as-bore", "seat") == ends


def test_a_shallow_bore_holds_no_long_seat(design: DesignFolder) -> None:
    """8 of 30 mm are in contact: the grip is 8/30 of what it was."""
    before = on_sheet(design.only("seat.push-out", "seat"), "F_h")
    design.replace(
        "block.toml",
        'diameter = "200 mm"\ndepth = "30 mm"\nwall',
        'diameter = "200 mm"\ndepth = "8 mm"\nwall',
    )
    after = on_sheet(design.only("seat.push-out", "seat"), "F_h")
    assert after == pytest.approx(before * 8 / 30)


@pytest.mark.parametrize(
    ("file", "old", "new", "ends"),
    [
        ("seat.toml", 'seat_diameter = "150 mm"', 'seat_diameter = "149.9 mm"', HOLD),
        ("seat.toml", 'seat_diameter = "150 mm"', 'seat_diameter = "150.1 mm"', HOLD),
        ("seat.toml", 'seat_width = "3 mm"', 'seat_width = "2.9 mm"', HOLD),
        ("seat.toml", 'seat_width = "3 mm"', 'seat_width = "3.1 mm"', FINE),
        ("valve.toml", 'seat_diameter = "150 mm"', 'seat_diameter = "150.5 mm"', HOLD),
        ("valve.toml", 'contact_width = "3 mm"', 'contact_width = "2.5 mm"', FINE),
        ("lower.toml", 'seat_diameter = "140 mm"', 'seat_diameter = "141 mm"', HOLD),
        ("seat.toml", 'seat_width = "3 mm"\n', "", FINE),
    ],
)
def test_a_beat_meets_its_seat(
    design: DesignFolder, file: str, old: str, new: str, ends: tuple[str, Grade | None]
) -> None:
    text = (design.root / file).read_text(encoding="utf-8")
    (design.root / file).write_text(text.replace(old, new, 1), encoding="utf-8")
    assert outcome(design, "valve.meets-seat") == ends


@pytest.mark.parametrize(
    ("sizes", "ends"),
    [
        ('outside_diameter = "156 mm"\n', FINE),
        ('outside_diameter = "155.9 mm"\n', HOLD),
        ('upper_beat.rim_diameter = "156.0 mm"\n', FINE),
        ('upper_beat.rim_diameter = "155.9 mm"\n', HOLD),
        ('lower_beat.rim_diameter = "146 mm"\n', FINE),
        ('lower_beat.rim_diameter = "145.9 mm"\n', HOLD),
    ],
)
def test_a_beat_does_not_reach_beyond_its_rim(
    design: DesignFolder, sizes: str, ends: tuple[str, Grade | None]
) -> None:
    """Flat faces 3 mm wide: 150 + 2 × 3 mm of the upper beat, 140 + 2 × 3 mm of the lower one."""
    key, _, size = sizes.strip().rpartition(" = ")
    table, _, name = key.rpartition(".")
    text = (design.root / "valve.toml").read_text(encoding="utf-8")
    at = f"[{table}]\n" if table else 'id = "valve"\n'
    assert at in text
    (design.root / "valve.toml").write_text(text.replace(at, f"{at}{name} = {size}\n", 1), encoding="utf-8")
    assert outcome(design, "valve.meets-seat") == ends


def test_the_edges_of_a_face_are_told_with_the_sizes_that_give_them(design: DesignFolder) -> None:
    """The inner edge is the diameter alone; the outer one, 2 × 3 mm beyond it, is given by width and angle too.

    A seat of 151 to 157 mm, whose inner edge is beyond the valve's 150 mm, and one of 149 to 155 mm.
    """
    face = ["seat_diameter", "contact_width", "seat_angle"], ["seat_diameter", "seat_width", "seat_angle"]
    for was, seat, edge, (here, there) in (
        ("150 mm", "151 mm", "inner edge", (face[0][:1], face[1][:1])),
        ("151 mm", "149 mm", "outer edge", face),
    ):
        design.replace("seat.toml", f'seat_diameter = "{was}"', f'seat_diameter = "{seat}"')
        told = design.only("valve.meets-seat").failing
        (places,) = [one.places for one in told if one.of == f"upper, {edge}"]
        assert [one.where.key.removeprefix("upper_beat.") for one in places] == [*here, *there]


@pytest.mark.parametrize("width", ["3 mm", "3 mm ±0.3"])
def test_a_worked_edge_is_told_with_the_width_that_gave_it(design: DesignFolder, width: str) -> None:
    """As drawn 140 + 2 × 3 = 146 mm, though the contact takes the least width afterwards."""
    file = design.root / "valve.toml"
    text = file.read_text(encoding="utf-8").replace('contact_width = "3 mm"', f'contact_width = "{width}"')
    file.write_text(text.replace("[lower_beat]", '[lower_beat]\nrim_diameter = "145.9 mm"'), encoding="utf-8")
    (edge,) = [one for one in design.only("valve.meets-seat").failing if one.of == "lower, rim"]
    assert "146 mm, worked from" in edge.says
    assert "contact width, lower beat 3 mm (" in edge.says


def test_an_edge_worked_from_the_least_width_is_told_with_that(design: DesignFolder) -> None:
    """A beat of 150 mm and 2.7 mm at the least ends at 155.4 mm, and a seat of 154 ±2 begins at 156 mm at the most."""
    file = design.root / "valve.toml"
    text = file.read_text(encoding="utf-8").replace('contact_width = "3 mm"', 'contact_width = "3 mm ±0.3"')
    file.write_text(text, encoding="utf-8")
    design.replace("seat.toml", 'seat_diameter = "150 mm"', 'seat_diameter = "154 mm ±2"')
    (contact,) = [one for one in design.only("valve.meets-seat").failing if one.of == "upper, contact"]
    assert "155.4 mm, worked from" in contact.says
    assert "contact width, upper beat 2.7 mm" in contact.says


def test_faces_that_may_miss_each_other_are_found(design: DesignFolder) -> None:
    """A beat of 150 to 156 mm and a seat of 150 ±7: at the least 143 to 149, at the most 157 to 163."""
    design.replace("seat.toml", 'seat_diameter = "150 mm"', 'seat_diameter = "150 mm ±7"')
    assert outcome(design, "valve.meets-seat") == HOLD


def test_steam_works_on_the_contact_that_both_have(design: DesignFolder) -> None:
    """The beat's face runs from 150 to 156 mm, the seat's from 150 to 152: no circle beyond 152 seals."""
    before = design.only("valve.spring-holds-shut")
    assert on_sheet(before, "d_cu") == pytest.approx(0.156)
    design.replace("seat.toml", 'seat_width = "3 mm"', 'seat_width = "1 mm"')
    after = design.only("valve.spring-holds-shut")
    assert on_sheet(after, "d_cu") == pytest.approx(0.152)
    assert found(after) == pytest.approx(found(before))


@pytest.mark.parametrize(("angle", "ends"), [("0.25 °", FINE), ("0.3 °", HOLD), ("45 °", HOLD)])
def test_a_beat_has_the_angle_of_its_seat(
    design: DesignFolder, angle: str, ends: tuple[str, Grade | None]
) -> None:
    design.replace("seat.toml", 'seat_angle = "0 °"', f'seat_angle = "{angle}"')
    assert outcome(design, "valve.angle-of-seat") == ends


@pytest.mark.parametrize(
    ("old", "new", "ends"),
    [
        ('bore = "130 mm"', 'bore = "150 mm"', FINE),
        ('bore = "130 mm"', 'bore = "150 mm +0.1/0"', HOLD),
        ('seat_width = "3 mm"', 'seat_width = "20 mm"', FINE),
        ('seat_diameter = "150 mm"', 'seat_diameter = "194.2 mm"', FINE),
        ('seat_diameter = "150 mm"', 'seat_diameter = "194.3 mm"', HOLD),
    ],
)
def test_the_face_lies_in_its_ring(
    design: DesignFolder, old: str, new: str, ends: tuple[str, Grade | None]
) -> None:
    """A flat face 3 mm wide from 194.2 mm ends at 200.2 mm, the outside of the ring; from 150 mm, 20 wide, at 190."""
    design.replace("seat.toml", old, new)
    assert outcome(design, "seat.face-in-ring", "seat") == ends


def test_the_chamber_is_that_of_the_valve(design: DesignFolder) -> None:
    assert outcome(design, "seat.chamber-by-valve", "block") == FINE
    before = found(design.only("seat.push-out", "seat"))
    design.replace("block.toml", 'chamber = "live steam"', 'chamber = "exhaust steam"')
    assert outcome(design, "seat.chamber-by-valve", "block") == HOLD
    assert found(design.only("seat.push-out", "seat")) == pytest.approx(before)
    design.replace("block.toml", 'chamber = "exhaust steam"\n', "")
    assert outcome(design, "seat.chamber-by-valve", "block") == SILENT
    assert found(design.only("seat.push-out", "seat")) == pytest.approx(before)


def test_without_a_valve_the_bore_tells_what_it_serves(design: DesignFolder) -> None:
    for name in ("valve", "spindle", "spring"):
        (design.root / f"{name}.toml").unlink()
    assert outcome(design, "seat.chamber-by-valve", "block") == FINE
    design.replace("block.toml", 'chamber = "live steam"', 'chamber = "exhaust steam"')
    assert outcome(design, "seat.chamber-by-valve", "block") == HOLD


@pytest.mark.parametrize(("at", "ends"), [("110.05 mm", FINE), ("110.06 mm", WRONG), ("-110 mm", WRONG)])
def test_the_seats_are_as_far_apart_as_the_beats(
    design: DesignFolder, at: str, ends: tuple[str, Grade | None]
) -> None:
    design.replace("block.toml", 'at = "110 mm"', f'at = "{at}"')
    assert outcome(design, "valve.seats-apart") == ends


def test_what_could_meet_the_piston_says_so(design: DesignFolder) -> None:
    """An inlet valve that lifts into its chest cannot; one that lifts into the cylinder states whether it does."""
    design.replace("valve.toml", "meets_piston = false\n", "")
    assert outcome(design, "valve.foul-clearance") == FINE
    for old in (
        'beat = "upper"\nat = "110 mm"\nopens_into = "chamber"',
        'beat = "lower"\nat = "0 mm"\nopens_into = "chamber"',
    ):
        design.replace("block.toml", old, old.replace('"chamber"', '"cylinder"'))
    silent = design.only("valve.foul-clearance")
    assert (silent.outcome, silent.grade) == ("not assessed", Grade.HOLD)
    assert "meets_piston" in silent.says
    design.replace("valve.toml", 'lift_stop = "21 mm"', 'lift_stop = "21 mm"\nmeets_piston = true')
    assert "clearance_piston" in design.only("valve.foul-clearance").says
    design.replace("valve.toml", "meets_piston = true", "meets_piston = false")
    assert outcome(design, "valve.foul-clearance") == FINE
