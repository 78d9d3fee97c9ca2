"""The connecting rod in the drive of a block against its mass, and its axle against rods and faces; from both sides."""

from __future__ import annotations

from pathlib import Path

import pytest

from speclint import Grade
from speclint.testing import DesignFolder
from tests.plugins.known_metals import METALS, WITH_METALS
from tests.plugins.motion.train import FORGING

SECTION, AXLE = "drive.section-by-mass", "drive.axle-by-rods"
HOLD, FINE, SILENT = ("finding", Grade.HOLD), ("conforms", None), ("not applicable", None)

#: Faces 700 mm forward of the fixed point and 100 mm behind it: their middle is 300 mm forward.
BLOCK = """
kind = "cylinder-block"
id = "block"
[bores.main]
[ends.front]
of_bore = "main"
side = "front"
face_at = "700 mm"
[ends.back]
of_bore = "main"
side = "back"
face_at = "-100 mm"
[drive]
rod_length = "1500 mm"
connecting_rod_area = "6000 mm²"
connecting_rod_material = "known-forging"
axle_from_fixed_point = "3200 mm"
"""
#: 94.2 kg of 7850 kg/m³ over 2000 mm are a bar of 94.2/(7850 × 2) = 6000 mm²; 2000 + 1500 − 300 = 3200 mm.
ENGINE = """
kind = "engine"
id = "engine"
connecting_rod_length = "2000 mm"
connecting_rod_mass = "94.2 kg"
[cranks.only]
block = "block"
bore = "main"
"""
FILES = {
    "block.toml": BLOCK,
    "engine.toml": ENGINE,
    "metals.toml": METALS + FORGING,
    "speclint.toml": WITH_METALS,
}
Ends = tuple[str, Grade | None]


@pytest.fixture
def design(tmp_path: Path) -> DesignFolder:
    return DesignFolder(tmp_path).write(FILES)


def outcome(design: DesignFolder, rule: str) -> Ends:
    check = design.only(rule, "block")
    return check.outcome, check.grade


@pytest.mark.parametrize(
    ("file", "old", "new", "ends"),
    [
        ("block.toml", "6000 mm²", "5999 mm²", FINE),
        ("block.toml", "6000 mm²", "6001 mm²", HOLD),
        ("block.toml", "6000 mm²", "60000 mm²", HOLD),
        ("engine.toml", "94.2 kg", "94.3 kg", FINE),
        ("engine.toml", "94.2 kg", "94.1 kg", HOLD),
        ("engine.toml", "94.2 kg", "94.3 kg ±0.5", HOLD),
        ("engine.toml", 'length = "2000 mm"', 'length = "2010 mm"', HOLD),
        ("engine.toml", "[cranks.only]", '[cranks.only]\nconnecting_rod_mass = "90 kg"', HOLD),
    ],
)
def test_the_section_is_that_of_the_mass(
    design: DesignFolder, file: str, old: str, new: str, ends: Ends
) -> None:
    design.replace(file, old, new)
    assert outcome(design, SECTION) == ends


@pytest.mark.parametrize(
    ("file", "old", "new", "ends"),
    [
        ("block.toml", "3200 mm", "3225 mm", FINE),
        ("block.toml", "3200 mm", "3225.1 mm", HOLD),
        ("block.toml", "3200 mm", "3175 mm", FINE),
        ("block.toml", "3200 mm", "3174.9 mm", HOLD),
        ("engine.toml", 'length = "2000 mm"', 'length = "2026 mm"', HOLD),
        ("block.toml", 'rod_length = "1500 mm"', 'rod_length = "1474 mm"', HOLD),
        ("block.toml", 'face_at = "700 mm"', 'face_at = "752 mm"', HOLD),
        ("block.toml", 'face_at = "700 mm"', 'face_at = "748 mm"', FINE),
        ("block.toml", "[bores.main]", "[bores.main]\n[bores.other]", SILENT),
    ],
)
def test_the_axle_is_where_the_rods_put_it(
    design: DesignFolder, file: str, old: str, new: str, ends: Ends
) -> None:
    """What the middle of the faces moves is half of what one face does: 52 mm of it are 26 mm."""
    design.replace(file, old, new)
    assert outcome(design, AXLE) == ends


def test_a_section_beyond_its_mass_is_told_with_what_it_is_worked_from(design: DesignFolder) -> None:
    design.replace("block.toml", "6000 mm²", "6001 mm²")
    assert "worked from connecting rod mass of engine 94.2 kg" in design.only(SECTION, "block").says


def test_a_metal_without_a_density_gives_no_section(design: DesignFolder) -> None:
    density = next(line for line in FORGING.splitlines(keepends=True) if line.startswith("density"))
    design.replace("metals.toml", FORGING, FORGING.replace(density, ""))
    assert outcome(design, SECTION) == SILENT


def test_an_axle_that_is_elsewhere_is_told_with_both_rods(design: DesignFolder) -> None:
    says = design.replace("block.toml", "3200 mm", "3226 mm").only(AXLE, "block").says
    for part in ("connecting rod length of engine 2000 mm", "rod length, drive 1500 mm"):
        assert part in says, says


#: The seat of a collar at the front, 720 mm forward of the fixed point: 20 and 820 mm behind it are 700 and −100 mm.
SEATED = """[bores.main]
seat_at = "720 mm"
[ends.front]
of_bore = "main"
side = "front"
face_from_seat = "20 mm"
[ends.back]
of_bore = "main"
side = "back"
face_from_seat = "820 mm"
"""
LINER = 'kind = "cylinder-liner"\nhoused_in = "block"\nin_bore = "main"\n[collar]\nend = "front"\n'


@pytest.mark.parametrize(("axle", "ends"), [("3225 mm", FINE), ("3226 mm", HOLD), ("3174 mm", HOLD)])
def test_faces_count_from_the_collars_seat(design: DesignFolder, axle: str, ends: Ends) -> None:
    before, _, rest = BLOCK.partition("[bores.main]")
    block = f"{before}{SEATED}[drive]{rest.partition('[drive]')[2]}".replace("3200 mm", axle)
    design.write({**FILES, "block.toml": block, "liner.toml": LINER})
    assert outcome(design, AXLE) == ends
