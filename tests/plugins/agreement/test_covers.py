"""A cover and its end, its box and gland, and the test of all of them, from both sides."""

from __future__ import annotations

from pathlib import Path

import pytest

from speclint import Grade
from speclint.testing import DesignFolder

BLOCK = """
kind = "cylinder-block"
id = "block"
duty = "duty"
test_pressure = "29 bar gauge"
[bores.main]
diameter = "560 mm"
[ends.front]
of_bore = "main"
side = "front"
[ends.back]
of_bore = "main"
side = "back"
"""
DUTY = 'kind = "duty"\nid = "duty"\n[cases.test]\ncylinder_pressure = "29 bar gauge"\n'
LINER = 'kind = "cylinder-liner"\nid = "liner"\nhoused_in = "block"\nin_bore = "main"\nbore = "500 mm"\n'
COVER = """
kind = "cylinder-cover"
id = "cover"
closes = "block"
of_end = "back"
bore = "500 mm"
end = "back"
central_hole = "150 mm"
test_pressure = "29 bar gauge"
"""
ROD = 'kind = "piston-rod"\nid = "rod"\ndiameter = "90 mm"\n'
BOX = """
kind = "stuffing-box"
id = "box"
in_cover = "cover"
seals = "rod"
outside_diameter = "149 mm"
bore = "130 mm"
packing = "braided graphite"
"""
GLAND = """
kind = "gland"
id = "gland"
of = "cover"
rod = "90 mm"
box = "130 mm"
packing = "soft"
"""
FILES = {
    "block.toml": BLOCK,
    "duty.toml": DUTY,
    "liner.toml": LINER,
    "cover.toml": COVER,
    "rod.toml": ROD,
    "box.toml": BOX,
    "gland.toml": GLAND,
}
HOLD, WRONG, FINE = ("finding", Grade.HOLD), ("finding", Grade.NONCONFORMITY), ("conforms", None)
Ends = tuple[str, Grade | None]


@pytest.fixture
def design(tmp_path: Path) -> DesignFolder:
    return DesignFolder(tmp_path).write(FILES)


def outcome(design: DesignFolder, rule: str) -> Ends:
    found = design.only(rule)
    return found.outcome, found.grade


@pytest.mark.parametrize(
    ("file", "old", "new", "ends"),
    [
        ("cover.toml", 'bore = "500 mm"', 'bore = "500.5 mm"', FINE),
        ("cover.toml", 'bore = "500 mm"', 'bore = "500.6 mm"', HOLD),
        ("liner.toml", 'bore = "500 mm"', 'bore = "520 mm"', HOLD),
        ("cover.toml", '\nend = "back"', '\nend = "front"', HOLD),
    ],
)
def test_a_cover_of_its_end(design: DesignFolder, file: str, old: str, new: str, ends: Ends) -> None:
    assert outcome(design.replace(file, old, new), "cover.of-its-end") == ends


def test_a_cover_finds_its_end_by_its_side(design: DesignFolder) -> None:
    design.replace("cover.toml", 'of_end = "back"\n', "")
    assert outcome(design, "cover.of-its-end") == FINE
    assert outcome(design.replace("liner.toml", "500 mm", "520 mm"), "cover.of-its-end") == HOLD


def test_a_cover_that_could_close_either_of_two_must_say(design: DesignFolder) -> None:
    design.replace("cover.toml", 'of_end = "back"\n', "")
    design.replace("block.toml", 'side = "front"', 'side = "back"')
    found = design.only("cover.of-its-end")
    assert found.outcome == "not assessed"
    assert found.says == "2 ends of block are at the back: of_end is to name the one that the cover closes"


@pytest.mark.parametrize(("bore", "ends"), [("560 mm", FINE), ("500 mm", HOLD)])
def test_a_cover_of_a_bore_without_a_liner_states_the_bore_of_the_block(
    design: DesignFolder, bore: str, ends: Ends
) -> None:
    (design.root / "liner.toml").unlink()
    design.replace("block.toml", 'diameter = "560 mm"\n', 'diameter = "560 mm"\nlined = false\n')
    design.replace("cover.toml", 'bore = "500 mm"', f'bore = "{bore}"')
    assert outcome(design, "cover.of-its-end") == ends


@pytest.mark.parametrize("lined", ["", "lined = true\n"])
def test_where_the_liner_is_not_drawn_the_bore_of_the_block_is_not_that_of_the_cover(
    design: DesignFolder, lined: str
) -> None:
    """The liner to come is bored to 500 mm in a bore of 560 mm."""
    (design.root / "liner.toml").unlink()
    design.replace("block.toml", 'diameter = "560 mm"\n', f'diameter = "560 mm"\n{lined}')
    assert outcome(design, "cover.of-its-end") == FINE


CHAMBER = '[seat_bores.upper]\nopening = "230 mm"\nbeat = "upper"\n'
LID = 'kind = "chamber-cover"\nid = "lid"\ncloses = "block"\n'


@pytest.mark.parametrize(
    ("bore", "ends"), [("230.5 mm", FINE), ("230.6 mm", HOLD), ("229.5 mm", FINE), ("229.4 mm", HOLD)]
)
def test_the_cover_of_a_chamber_states_the_opening_that_it_closes(
    design: DesignFolder, bore: str, ends: Ends
) -> None:
    """Its opening is 230 mm, and 0.5 mm either way are allowed."""
    lid = f'{LID}seat_bore = "upper"\nbore = "{bore}"\n'
    (design.root / "lid.toml").write_text(lid, encoding="utf-8")
    (design.root / "block.toml").write_text(BLOCK + CHAMBER, encoding="utf-8")
    found = design.only("cover.of-its-end", "lid")
    assert (found.outcome, found.grade) == ends


def test_a_lid_that_names_no_seat_bore_is_held_against_none(design: DesignFolder) -> None:
    (design.root / "lid.toml").write_text(f'{LID}bore = "200 mm"\n', encoding="utf-8")
    (design.root / "block.toml").write_text(BLOCK + CHAMBER, encoding="utf-8")
    assert design.only("cover.of-its-end", "lid").outcome == "not applicable"


@pytest.mark.parametrize(("hole", "ends"), [("149 mm", FINE), ("148.9 mm", HOLD), ("0 mm", HOLD)])
def test_the_hole_takes_the_box(design: DesignFolder, hole: str, ends: Ends) -> None:
    design.replace("cover.toml", 'central_hole = "150 mm"', f'central_hole = "{hole}"')
    assert outcome(design, "cover.hole-for-box") == ends


@pytest.mark.parametrize(("hole", "ends"), [("90 mm", FINE), ("89.9 mm", HOLD)])
def test_where_the_box_states_no_outside_the_rod_must_pass(
    design: DesignFolder, hole: str, ends: Ends
) -> None:
    design.replace("box.toml", 'outside_diameter = "149 mm"\n', "")
    design.replace("cover.toml", 'central_hole = "150 mm"', f'central_hole = "{hole}"')
    assert outcome(design, "cover.hole-for-box") == ends


@pytest.mark.parametrize("of", ["cover", "box"])
@pytest.mark.parametrize(
    ("file", "old", "new", "ends"),
    [
        ("rod.toml", '"90 mm"', '"90 mm"', FINE),
        ("rod.toml", '"90 mm"', '"90.02 mm"', WRONG),
        ("box.toml", '"130 mm"', '"130.02 mm"', WRONG),
        ("box.toml", '"braided graphite"', '"carbon segments"', WRONG),
    ],
)
def test_a_gland_of_its_box(design: DesignFolder, of: str, file: str, old: str, new: str, ends: Ends) -> None:
    design.replace("gland.toml", 'of = "cover"', f'of = "{of}"').replace(file, old, new)
    assert outcome(design, "gland.of-the-rod") == ends


@pytest.mark.parametrize(
    ("file", "old", "new", "ends"),
    [
        ("block.toml", "29 bar gauge", "29.01 bar gauge", FINE),
        ("block.toml", "29 bar gauge", "40 bar gauge", HOLD),
        ("duty.toml", "29 bar gauge", "28 bar gauge", HOLD),
        ("cover.toml", "29 bar gauge", "28 bar gauge", HOLD),
    ],
)
def test_one_test_for_all(design: DesignFolder, file: str, old: str, new: str, ends: Ends) -> None:
    assert outcome(design.replace(file, old, new), "cylinder.tested-together") == ends


def test_a_gland_of_another_test_is_told(design: DesignFolder) -> None:
    text = GLAND + 'test_pressure = "20 bar gauge"\n'
    (design.root / "gland.toml").write_text(text, encoding="utf-8")
    assert "gland.toml" in design.only("cylinder.tested-together").says


@pytest.mark.parametrize(("pressure", "ends"), [("29 bar gauge", FINE), ("28 bar gauge", HOLD)])
def test_the_cover_of_a_chamber_is_tested_with_its_block(
    design: DesignFolder, pressure: str, ends: Ends
) -> None:
    lid = f'kind = "chamber-cover"\ncloses = "block"\ntest_pressure = "{pressure}"\n'
    (design.root / "lid.toml").write_text(lid, encoding="utf-8")
    assert outcome(design, "cylinder.tested-together") == ends


@pytest.mark.parametrize(("pressure", "ends"), [("29 bar gauge", FINE), ("16 bar gauge", HOLD)])
def test_chests_and_cylinders_are_tested_at_one_pressure(
    design: DesignFolder, pressure: str, ends: Ends
) -> None:
    text = (design.root / "duty.toml").read_text(encoding="utf-8")
    text = text.replace("cylinder_pressure", f'live_pressure = "{pressure}"\ncylinder_pressure', 1)
    (design.root / "duty.toml").write_text(text, encoding="utf-8")
    assert outcome(design, "cylinder.tested-together") == ends


RECESSED = BLOCK.replace('diameter = "560 mm"\n', 'diameter = "560 mm"\nrecess_diameter = "634 mm"\n')


@pytest.mark.parametrize(
    ("spigot", "said", "collar", "ends"),
    [
        ("499.5 mm", "bore of the liner", "front", FINE),
        ("500 mm", "bore of the liner", "front", FINE),  # just as wide as the bore
        ("500 mm", "bore of the block", "front", WRONG),
        ("499.5 mm", "bore of the block", "front", WRONG),
        ("499.5 mm", "recess of the collar", "back", WRONG),
        ("559 mm", "bore of the block", "front", FINE),
        ("632 mm", "recess of the collar", "back", FINE),
        ("632 mm", "bore of the block", "back", WRONG),
        ("0 mm", "bore of the block", "back", ("not applicable", None)),
    ],
)
def test_a_spigot_is_said_to_enter_what_it_fits(
    design: DesignFolder, spigot: str, said: str, collar: str, ends: Ends
) -> None:
    """The liner is bored to 500 mm and the block to 560 mm; the recess of 634 mm is at the end of the collar."""
    design.write({"block.toml": RECESSED, "liner.toml": LINER + f'[collar]\nend = "{collar}"\n'})
    (design.root / "cover.toml").write_text(
        f'{COVER}spigot_diameter = "{spigot}"\nspigot_enters = "{said}"\n', encoding="utf-8"
    )
    assert outcome(design, "cover.spigot-of-its-opening") == ends


def test_a_recess_at_the_other_end_is_no_opening_of_this_one(design: DesignFolder) -> None:
    """Nothing at the back takes a spigot of 632 mm, of which cover.enters tells."""
    design.write({"block.toml": RECESSED, "liner.toml": LINER + '[collar]\nend = "front"\n'})
    (design.root / "cover.toml").write_text(
        f'{COVER}spigot_diameter = "632 mm"\nspigot_enters = "recess of the collar"\n', encoding="utf-8"
    )
    assert outcome(design, "cover.spigot-of-its-opening") == ("not applicable", None)


@pytest.mark.parametrize(
    ("outside", "ends"),
    [
        ("720 mm", FINE),
        ("719 mm", WRONG),
        ("880 mm", FINE),
        ("881 mm", WRONG),
        ("1200 mm", WRONG),
    ],
)
def test_a_cover_is_about_as_large_as_its_face(design: DesignFolder, outside: str, ends: Ends) -> None:
    """0.9 and 1.1 of a face of 800 mm: 720 and 880 mm; the front end has a face of 600 mm, which is not its own."""
    block = BLOCK.replace("[ends.back]", '[ends.back]\nface_diameter = "800 mm"')
    block = block.replace("[ends.front]", '[ends.front]\nface_diameter = "600 mm"')
    design.write({"block.toml": block, "cover.toml": f'{COVER}outside_diameter = "{outside}"\n'})
    assert outcome(design, "cover.of-its-face") == ends


def test_a_cover_of_an_end_without_a_face_is_not_held_against_one(design: DesignFolder) -> None:
    design.write({"cover.toml": f'{COVER}outside_diameter = "800 mm"\n'})
    assert outcome(design, "cover.of-its-face") == ("not applicable", None)
    design.write({"block.toml": BLOCK.partition("[ends")[0]})
    assert outcome(design, "cover.of-its-face") == ("not applicable", None)
