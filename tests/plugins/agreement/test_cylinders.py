"""Block, liner, piston and rod of one cylinder: each agreement from both sides, by sizes written here."""

from __future__ import annotations

from pathlib import Path

import pytest

from speclint import Grade
from speclint.testing import DesignFolder, on_sheet
from tests.plugins.liners.bench import bench

#: Faces at 35 and 860 mm from the collar's seat leave 825 mm: 660 of stroke, 149 of piston, 8 + 8 of clearance.
PISTON = """
kind = "piston"
id = "piston"
material = "plate-P355GH"
runs_in = "liner"
length = "149 mm"
mass = "112 kg"
"""
ROD = """
kind = "piston-rod"
id = "rod"
material = "plate-P355GH"
carries = "piston"
diameter = "90 mm"
free_length = "1450 mm"
ends = "one fixed and one pinned"
mass = "84 kg"
"""
CROSSHEAD = """
kind = "crosshead"
id = "crosshead"
material = "plate-P355GH"
on_rod = "rod"
mass = "70 kg"
small_end_mass = "34 kg"
"""
PIN = """
kind = "pin"
id = "pin"
material = "plate-P355GH"
moved_by = "crosshead"
place = "crosshead pin"
"""
#: The piston stays as cold as the frame, so that only what a test changes moves the clearances.
DRAWN = {
    "piston.toml": PISTON,
    "rod.toml": ROD,
    "crosshead.toml": CROSSHEAD,
    "pin.toml": PIN,
    "duty.toml": bench()["duty.toml"].replace('frame = "20 °C"', 'frame = "20 °C"\npiston = "20 °C"'),
}


@pytest.fixture
def design(tmp_path: Path) -> DesignFolder:
    """The bench of the liners, with what works in it."""
    return DesignFolder(tmp_path).write({**bench(), **DRAWN})


def outcome(design: DesignFolder, rule: str, component: str = "") -> tuple[str, Grade | None]:
    found = design.only(rule, component)
    return found.outcome, found.grade


HOLD = ("finding", Grade.HOLD)
SILENT = ("not applicable", None)
FINE = ("conforms", None)


@pytest.mark.parametrize(
    ("file", "old", "new", "ends"),
    [
        ("piston.toml", "149 mm", "149.1 mm", FINE),
        ("piston.toml", "149 mm", "149.11 mm", HOLD),
        ("piston.toml", "149 mm", "139 mm", HOLD),
        ("block.toml", 'stroke = "660 mm"', 'stroke = "700 mm"', HOLD),
        ("block.toml", 'face_from_seat = "860 mm"', 'face_from_seat = "880 mm"', HOLD),
    ],
)
def test_the_stroke_fits(
    design: DesignFolder, file: str, old: str, new: str, ends: tuple[str, Grade | None]
) -> None:
    design.replace(file, old, new)
    assert outcome(design, "cylinder.stroke-fits") == ends


def test_the_clearance_of_the_front_is_told(design: DesignFolder) -> None:
    """825 − 660 − 139 = 26 mm for both ends: 18 mm at the front where the back has its 8."""
    (told,) = design.replace("piston.toml", "149 mm", "139 mm").only("cylinder.stroke-fits").failing
    assert told.places[0].where.key == "ends.front.clearance"
    assert told.places[0].aim == pytest.approx(0.018)


def test_a_longer_stroke_is_seen_by_the_end_clearance(design: DesignFolder) -> None:
    """700 for 660 mm leaves 825 − 700 − 149 = −24 mm for both ends: −32 mm at one where the other has its 8."""
    design.replace("block.toml", 'stroke = "660 mm"', 'stroke = "700 mm"')
    found = design.only("cylinder.end-clearance")
    assert (found.outcome, found.grade) == HOLD
    assert on_sheet(found, "c_w") == pytest.approx(-0.032, abs=1e-9)


def test_a_clearance_left_out_is_worked(design: DesignFolder) -> None:
    text = (design.root / "block.toml").read_text(encoding="utf-8")
    front, back = text.split("[ends.back]")
    front = front.replace('clearance = "8 mm"\n', "")
    (design.root / "block.toml").write_text(f"{front}[ends.back]{back}", encoding="utf-8")
    assert design.only("cylinder.stroke-fits").outcome == "not applicable"
    assert on_sheet(design.only("cylinder.clearance-volume"), "c_w") == pytest.approx(0.008, abs=1e-9)


@pytest.mark.parametrize(
    ("at", "ends"), [("-125 mm", FINE), ("-125.1 mm", FINE), ("-125.2 mm", HOLD), ("-100 mm", HOLD)]
)
def test_the_faces_lie_equally_far_apart(
    design: DesignFolder, at: str, ends: tuple[str, Grade | None]
) -> None:
    """From the seat 860 − 35 = 825 mm; from the fixed point 700 mm forward and 125 mm behind it."""
    design.replace("block.toml", 'face_at = "-100 mm"', f'face_at = "{at}"')
    assert outcome(design, "cylinder.faces-agree") == ends


@pytest.mark.parametrize(
    ("seat", "ends"),
    [("735 mm", FINE), ("735.1 mm", FINE), ("734.9 mm", FINE), ("735.2 mm", HOLD), ("734.8 mm", HOLD)],
)
def test_the_faces_lie_where_the_seat_puts_them(
    design: DesignFolder, seat: str, ends: tuple[str, Grade | None]
) -> None:
    """The collar is at the front: 735 − 35 = 700 mm forward of the fixed point, 735 − 860 = −125 mm behind it."""
    design.replace("block.toml", 'face_at = "-100 mm"', 'face_at = "-125 mm"')
    design.replace("block.toml", "[bores.main]\n", f'[bores.main]\nseat_at = "{seat}"\n')
    assert outcome(design, "cylinder.faces-agree") == ends


def test_faces_that_the_seat_puts_are_not_compared_a_second_time(design: DesignFolder) -> None:
    """Each is 0.1 mm from where the seat puts it, to opposite sides: within a tenth each, 0.2 mm apart together.

    700 + 0.1 mm forward and −125 − 0.1 mm behind: 825.2 mm between them, where the seat has 825.
    """
    design.replace("block.toml", 'face_at = "700 mm"', 'face_at = "700.1 mm"')
    design.replace("block.toml", 'face_at = "-100 mm"', 'face_at = "-125.1 mm"')
    assert outcome(design, "cylinder.faces-agree") == HOLD
    design.replace("block.toml", "[bores.main]\n", '[bores.main]\nseat_at = "735 mm"\n')
    assert outcome(design, "cylinder.faces-agree") == FINE


def test_a_wrong_face_eases_no_clearance(design: DesignFolder) -> None:
    """At 700 mm the block grows forward, which takes from the front clearance; at −2000 mm it would give to it."""
    design.replace("block.toml", "[bores.main]\n", '[bores.main]\nseat_at = "735 mm"\n')
    before = design.only("cylinder.end-clearance")
    assert on_sheet(before, "x") in (pytest.approx(0.700), pytest.approx(-0.125))
    design.replace("block.toml", 'face_at = "700 mm"', 'face_at = "-2000 mm"')
    assert design.only("cylinder.end-clearance").utilisation == before.utilisation
    design.replace("block.toml", 'face_at = "-2000 mm"\n', "")
    assert design.only("cylinder.end-clearance").utilisation == before.utilisation


@pytest.mark.parametrize(("at", "ends"), [("725 mm", FINE), ("725.2 mm", HOLD)])
def test_from_a_collar_at_the_back_faces_count_forward(
    design: DesignFolder, at: str, ends: tuple[str, Grade | None]
) -> None:
    """The seat at −135 mm: −135 + 860 = 725 mm to the front cover, −135 + 35 = −100 mm to the back one."""
    design.replace("liner.toml", 'end = "front"', 'end = "back"')
    design.replace("block.toml", 'face_from_seat = "35 mm"', 'face_from_seat = "860.0 mm"')
    design.replace("block.toml", 'face_from_seat = "860 mm"', 'face_from_seat = "35 mm"')
    design.replace("block.toml", "[bores.main]\n", '[bores.main]\nseat_at = "-135 mm"\n')
    design.replace("block.toml", 'face_at = "700 mm"', f'face_at = "{at}"')
    assert outcome(design, "cylinder.faces-agree") == ends


@pytest.mark.parametrize("length", ["902 mm", "960 mm", ""])
def test_a_long_bore_eases_no_room_at_the_cover(design: DesignFolder, length: str) -> None:
    """900 mm of liner and 860 mm to the cover: 40 mm too long, whatever length the bore states."""
    design.replace("liner.toml", '"shoulder"', '"cover"')
    design.replace("block.toml", 'length = "902 mm"\n', f'length = "{length}"\n' if length else "")
    found = design.only("liner.end-room")
    assert (found.outcome, found.grade) == HOLD
    assert on_sheet(found, "c") == pytest.approx(-0.040)


@pytest.mark.parametrize(("length", "ends"), [("860 mm", FINE), ("860.2 mm", HOLD), ("902 mm", HOLD)])
def test_the_cover_is_the_stop(design: DesignFolder, length: str, ends: tuple[str, Grade | None]) -> None:
    """The collar is at the front, so that the back cover stops the liner: 860 mm from the seat."""
    text = (design.root / "liner.toml").read_text(encoding="utf-8")
    assert 'free_end_stop = "cover"' in text or 'free_end_stop = "shoulder"' in text
    (design.root / "liner.toml").write_text(text.replace('"shoulder"', '"cover"'), encoding="utf-8")
    design.replace("block.toml", 'length = "902 mm"', f'length = "{length}"')
    assert outcome(design, "liner.stop-is-the-cover") == ends


def bored(design: DesignFolder, last: str, step: str, pistons: str) -> tuple[str, Grade | None]:
    liner = f"""
kind = "cylinder-liner"
id = "liner"
material = "grey-iron-250"
housed_in = "block"
in_bore = "main"
bore = "500 mm"
last_bore = "{last}"
reboring_step = "{step}"
pistons_for = {pistons}
"""
    (design.root / "liner.toml").write_text(liner, encoding="utf-8")
    return outcome(design, "liner.last-bore-in-order")


@pytest.mark.parametrize(
    ("last", "step", "pistons", "ends"),
    [
        ("509 mm", "3 mm", '["503 mm", "509 mm"]', FINE),
        ("500 mm", "3 mm", "[]", HOLD),
        ("508 mm", "3 mm", "[]", HOLD),
        ("509 mm", "3 mm", '["509.1 mm"]', HOLD),
        ("512 mm", "3 mm", '["512 mm"]', FINE),
    ],
)
def test_the_last_bore(
    design: DesignFolder, last: str, step: str, pistons: str, ends: tuple[str, Grade | None]
) -> None:
    """500 mm and whole steps of 3 mm, at least one; no piston beyond it."""
    assert bored(design, last, step, pistons) == ends


@pytest.mark.parametrize(
    ("old", "new", "ends"),
    [
        ('rod_diameter = "90 mm"', 'rod_diameter = "90.01 mm"', FINE),
        ('rod_diameter = "90 mm"', 'rod_diameter = "200 mm"', HOLD),
        ('\nrod_material = "plate-P355GH"', '\nrod_material = "plate-P265GH"', HOLD),
    ],
)
def test_one_rod(design: DesignFolder, old: str, new: str, ends: tuple[str, Grade | None]) -> None:
    design.replace("block.toml", old, new)
    assert outcome(design, "drive.of-the-rod") == ends


def test_the_clearance_rests_on_the_rod_that_is_drawn(design: DesignFolder) -> None:
    before = design.only("cylinder.end-clearance").utilisation
    design.replace("block.toml", 'rod_diameter = "90 mm"', 'rod_diameter = "200 mm"')
    assert design.only("cylinder.end-clearance").utilisation == before


@pytest.mark.parametrize(
    ("mass", "ends"),
    [("306 kg", FINE), ("306.1 kg", HOLD), ("294 kg", FINE), ("293.9 kg", HOLD), ("30 kg", HOLD)],
)
def test_the_masses_add_up(design: DesignFolder, mass: str, ends: tuple[str, Grade | None]) -> None:
    """112 + 84 + 70 + 34 = 300 kg, and 6 kg either way."""
    design.replace("block.toml", 'reciprocating_mass = "300 kg"', f'reciprocating_mass = "{mass}"')
    assert outcome(design, "drive.mass-adds-up") == ends


@pytest.mark.parametrize(("mass", "ends"), [("266 kg", FINE), ("265.9 kg", HOLD), ("500 kg", FINE)])
def test_where_a_part_does_not_state_its_mass_the_others_are_the_least(
    design: DesignFolder, mass: str, ends: tuple[str, Grade | None]
) -> None:
    """Without the small end 112 + 84 + 70 = 266 kg."""
    design.replace("crosshead.toml", 'small_end_mass = "34 kg"\n', "")
    design.replace("block.toml", 'reciprocating_mass = "300 kg"', f'reciprocating_mass = "{mass}"')
    assert outcome(design, "drive.mass-adds-up") == ends


ROD_OF_ENGINE = """
kind = "engine"
id = "engine"
connecting_rod_length = "1900 mm"
connecting_rod_mass = "100 kg"
connecting_rod_centre = "570 mm"
[cranks.one]
block = "block"
"""


@pytest.mark.parametrize(("mass", "ends"), [("290.1 kg", FINE), ("289.9 kg", HOLD), ("302.1 kg", HOLD)])
def test_a_small_end_that_no_crosshead_states_is_that_of_the_rod(
    design: DesignFolder, mass: str, ends: tuple[str, Grade | None]
) -> None:
    """100 kg × 570/1900 = 30 kg; 112 + 84 + 70 + 30 = 296 kg, and 6 kg either way."""
    design.write({"engine.toml": ROD_OF_ENGINE})
    design.replace("crosshead.toml", 'small_end_mass = "34 kg"\n', "")
    design.replace("block.toml", 'reciprocating_mass = "300 kg"', f'reciprocating_mass = "{mass}"')
    assert outcome(design, "drive.mass-adds-up") == ends
    assert on_sheet(design.only("cylinder.end-clearance"), "m_k") == pytest.approx(296.0)


def test_a_mass_too_small_eases_no_clearance(design: DesignFolder) -> None:
    before = design.only("cylinder.end-clearance").utilisation
    design.replace("block.toml", 'reciprocating_mass = "300 kg"', 'reciprocating_mass = "30 kg"')
    assert design.only("cylinder.end-clearance").utilisation == before


@pytest.mark.parametrize(("length", "ends"), [("1425.5 mm", FINE), ("1425.4 mm", HOLD), ("700 mm", HOLD)])
def test_the_rod_is_as_long_as_it_is(
    design: DesignFolder, length: str, ends: tuple[str, Grade | None]
) -> None:
    """1500 mm from crosshead to the middle of a piston of 149 mm: 1425.5 mm beyond its face."""
    design.replace("rod.toml", 'free_length = "1450 mm"', f'free_length = "{length}"')
    assert outcome(design, "rod.length-agrees") == ends


def test_buckling_takes_the_length_that_is_drawn(design: DesignFolder) -> None:
    before = on_sheet(design.only("rod.buckling"), "L_w")
    assert before == pytest.approx(1.4255)
    design.replace("rod.toml", 'free_length = "1450 mm"', 'free_length = "700 mm"')
    short = design.only("rod.buckling").utilisation
    design.replace("rod.toml", 'free_length = "700 mm"\n', "")
    assert short == design.only("rod.buckling").utilisation


@pytest.mark.parametrize(("said", "ends"), [("one fixed and one pinned", FINE), ("both fixed", HOLD)])
def test_a_pin_fixes_no_end(design: DesignFolder, said: str, ends: tuple[str, Grade | None]) -> None:
    before = design.only("rod.buckling").utilisation
    design.replace("rod.toml", '"one fixed and one pinned"', f'"{said}"')
    assert outcome(design, "rod.ends-as-drawn") == ends
    assert design.only("rod.buckling").utilisation == before


@pytest.mark.parametrize(
    ("said", "ends"), [("both pinned", FINE), ("both fixed and free to move sideways", HOLD)]
)
def test_neither_word_for_both_ends_fixed_goes_with_a_pin(
    design: DesignFolder, said: str, ends: tuple[str, Grade | None]
) -> None:
    design.replace("rod.toml", '"one fixed and one pinned"', f'"{said}"')
    assert outcome(design, "rod.ends-as-drawn") == ends


def test_a_part_that_is_not_drawn_leaves_nothing_to_compare(tmp_path: Path) -> None:
    design = DesignFolder(tmp_path).write(bench())
    for rule in ("cylinder.stroke-fits", "drive.of-the-rod", "drive.mass-adds-up"):
        assert design.only(rule).outcome == "not applicable"


#: A block 760 mm wide and 830 mm high over faces of 760 and 740 mm, 860 − 35 = 825 mm apart.
SIZED = (
    'kind = "cylinder-block"\nid = "block"\nentering_width = "760 mm"\nentering_height = "830 mm"\n[bores.main]\n'
    '[ends.front]\nof_bore = "main"\nside = "front"\nface_from_seat = "35 mm"\nface_diameter = "760 mm"\n'
    '[ends.back]\nof_bore = "main"\nside = "back"\nface_from_seat = "860 mm"\nface_diameter = "740 mm"\n'
)


@pytest.mark.parametrize(
    ("old", "new", "ends"),
    [
        ("", "", FINE),
        ('width = "760 mm"', 'width = "759 mm"', ("finding", Grade.NONCONFORMITY)),
        ('height = "830 mm"', 'height = "759 mm"', ("finding", Grade.NONCONFORMITY)),
        ('face_diameter = "740 mm"', 'face_diameter = "761 mm"', ("finding", Grade.NONCONFORMITY)),
        # narrow and high: the faces stand across, 720 mm apart
        ('face_from_seat = "860 mm"', 'face_from_seat = "790 mm"', FINE),
        ('face_diameter = "760 mm"', 'face_diameter = "900 mm"', ("finding", Grade.NONCONFORMITY)),
        ('entering_width = "760 mm"\n', "", FINE),
    ],
)
def test_a_block_is_as_large_as_its_faces(
    tmp_path: Path, old: str, new: str, ends: tuple[str, Grade | None]
) -> None:
    """With faces of 900 mm the 825 mm between them are the least that the width must have."""
    sized = DesignFolder(tmp_path).write({"block.toml": SIZED.replace(old, new) if old else SIZED})
    assert outcome(sized, "block.size-by-its-faces") == ends


@pytest.mark.parametrize(("width", "ends"), [("740 mm", FINE), ("739 mm", ("finding", Grade.NONCONFORMITY))])
def test_the_face_that_is_stated_counts_where_the_other_is_not(
    tmp_path: Path, width: str, ends: tuple[str, Grade | None]
) -> None:
    """The wider of both faces is no less than the one of 740 mm."""
    text = SIZED.replace('face_diameter = "760 mm"\n', "")
    sized = DesignFolder(tmp_path).write(
        {"block.toml": text.replace('width = "760 mm"', f'width = "{width}"')}
    )
    assert outcome(sized, "block.size-by-its-faces") == ends


@pytest.mark.parametrize(("width", "ends"), [("755 mm", FINE), ("754 mm", ("finding", Grade.NONCONFORMITY))])
def test_faces_counted_from_the_fixed_point_are_as_far_apart(
    tmp_path: Path, width: str, ends: tuple[str, Grade | None]
) -> None:
    """600 mm before the fixed point and 155 mm behind it: 755 mm, less than the face of 760 mm."""
    text = SIZED.replace('face_from_seat = "35 mm"', 'face_at = "600 mm"')
    text = text.replace('face_from_seat = "860 mm"', 'face_at = "-155 mm"')
    sized = DesignFolder(tmp_path).write(
        {"block.toml": text.replace('width = "760 mm"', f'width = "{width}"')}
    )
    assert outcome(sized, "block.size-by-its-faces") == ends


def test_a_face_counted_from_elsewhere_than_the_other_leaves_nothing_to_compare(tmp_path: Path) -> None:
    text = SIZED.replace('face_from_seat = "860 mm"', 'face_at = "-155 mm"')
    assert outcome(DesignFolder(tmp_path).write({"block.toml": text}), "block.size-by-its-faces") == SILENT


def test_faces_that_stand_across_are_as_far_apart_as_the_block_is_wide(tmp_path: Path) -> None:
    """Faces of 900 mm, 755 mm apart: 755 mm of width suffice."""
    text = SIZED.replace('"760 mm"\n[ends.back]', '"900 mm"\n[ends.back]').replace('"860 mm"', '"790 mm"')
    sized = DesignFolder(tmp_path).write({"block.toml": text})
    assert outcome(sized, "block.size-by-its-faces") == FINE
    sized.replace("block.toml", '"790 mm"', '"796 mm"')
    assert outcome(sized, "block.size-by-its-faces") == ("finding", Grade.NONCONFORMITY)


#: Faces 600 mm before the fixed point and 155 mm behind it; an opening of 160 mm.
OPENED = (
    'kind = "cylinder-block"\nid = "block"\n[bores.main]\ndiameter = "560 mm"\n'
    '[ends.front]\nof_bore = "main"\nside = "front"\nface_at = "600 mm"\n'
    '[ends.back]\nof_bore = "main"\nside = "back"\nface_at = "-155 mm"\n'
    '[openings.chest]\nat = "{}"\nbore = "160 mm"\n'
)


@pytest.mark.parametrize(
    ("at", "ends"),
    [
        ("260 mm", FINE),
        ("569 mm", FINE),
        ("571 mm", ("finding", Grade.NONCONFORMITY)),
        ("-124 mm", FINE),
        ("-126 mm", ("finding", Grade.NONCONFORMITY)),
    ],
)
def test_an_opening_lies_between_the_faces(tmp_path: Path, at: str, ends: tuple[str, Grade | None]) -> None:
    """Its edges 80 mm from its middle: 600 + 50 − 80 = 570 mm, and −155 − 50 + 80 = −125 mm."""
    made = DesignFolder(tmp_path).write({"block.toml": OPENED.format(at)})
    assert outcome(made, "block.size-by-its-faces") == ends


@pytest.mark.parametrize(("at", "ends"), [("649 mm", FINE), ("651 mm", ("finding", Grade.NONCONFORMITY))])
def test_an_opening_that_states_no_way_lies_there_with_its_middle(
    tmp_path: Path, at: str, ends: tuple[str, Grade | None]
) -> None:
    text = OPENED.format(at).replace('bore = "160 mm"\n', "")
    assert outcome(DesignFolder(tmp_path).write({"block.toml": text}), "block.size-by-its-faces") == ends


@pytest.mark.parametrize("gone", ['face_at = "-155 mm"\n', 'at = "900 mm"\n', "more"])
def test_an_opening_without_faces_or_of_one_of_several_bores_is_not_compared(
    tmp_path: Path, gone: str
) -> None:
    text = OPENED.format("900 mm")
    text = text + '[bores.low]\ndiameter = "700 mm"\n' if gone == "more" else text.replace(gone, "", 1)
    assert outcome(DesignFolder(tmp_path).write({"block.toml": text}), "block.size-by-its-faces") == SILENT
