"""What parts made of rings weigh, by hand: of iron of 7200 kg/m³."""

from __future__ import annotations

import math
from pathlib import Path

import pytest

from speclint.facts import goes_up, mass_of_part, mass_weighed, part_weighed
from speclint.facts.weights import parts_named
from tests.facts.bench import Bench, bench

IRON, RHO = 'material = "known-iron"\n', 7200.0


def ring(D: float, d: float, length: float) -> float:
    return math.pi / 4 * (D**2 - d**2) * length * RHO


LINER = 'outside_diameter = "560 mm"\nbore = "500 mm"\nlength = "900 mm"\n'
COLLAR = '[collar]\ndiameter = "600 mm"\nthickness = "30 mm"\n'
COVER = (
    'form = "flat"\nbore = "500 mm"\noutside_diameter = "700 mm"\nthickness = "60 mm"\nflange_thickness = "50 mm"\n'
    'central_hole = "100 mm"\n'
)
_COVER = ring(0.7, 0.5, 0.05) + ring(0.5, 0.1, 0.06)


@pytest.mark.parametrize(
    ("kind", "text", "mass"),
    [
        ("cylinder-liner", IRON + LINER + COLLAR, ring(0.56, 0.5, 0.9) + ring(0.6, 0.5, 0.03)),
        ("cylinder-liner", IRON + LINER, ring(0.56, 0.5, 0.9)),
        ("cylinder-liner", IRON + LINER.replace('bore = "500 mm"\n', "") + COLLAR, None),
        ("cylinder-liner", LINER + COLLAR, None),
        ("cylinder-cover", IRON + COVER, _COVER),
        ("chamber-cover", IRON + COVER, _COVER),
        ("cylinder-cover", IRON + COVER.replace('"flat"', '"dished"'), None),
        ("cylinder-cover", IRON + COVER.replace('form = "flat"\n', ""), None),
        ("cylinder-cover", IRON + COVER.replace('central_hole = "100 mm"\n', ""), ring(0.7, 0.5, 0.05)),
        (
            "valve-seat",
            IRON + 'outside_diameter = "200 mm"\nbore = "150 mm"\nlength = "30 mm"\n',
            ring(0.2, 0.15, 0.03),
        ),
        (
            "pipe-flange",
            IRON + 'outside_diameter = "300 mm"\nbore = "150 mm"\nthickness = "30 mm"\n',
            ring(0.3, 0.15, 0.03),
        ),
        (
            "lens-joint",
            IRON + 'outside_diameter = "200 mm"\nbore = "150 mm"\nthickness = "30 mm"\n',
            ring(0.2, 0.15, 0.03),
        ),
        (
            "steam-pipe",
            IRON + 'outside_diameter = "150 mm"\nwall = "5 mm"\nlength = "2 m"\n',
            ring(0.15, 0.14, 2),
        ),
        ("steam-pipe", IRON + 'outside_diameter = "150 mm"\nwall = "5 mm"\n', None),
        ("steam-pipe", 'outside_diameter = "150 mm"\nwall = "5 mm"\nlength = "2 m"\n', None),
        ("piston", IRON + 'mass = "90 kg"\n', 90.0),
        ("piston", IRON + 'diameter = "500 mm"\nlength = "150 mm"\n', None),
        ("weldment", 'mass = "1600 kg"\n', 1600.0),
        ("shaft", IRON + 'diameter = "60 mm"\n', None),
    ],
)
def test_the_mass_of_a_part(tmp_path: Path, kind: str, text: str, mass: float | None) -> None:
    on = bench(tmp_path, {f"{kind} part": text}, "part", metals=True)
    found = mass_of_part(on["part"], on.sheet, on.sheet.take)
    assert (None if found is None else found.value) == (None if mass is None else pytest.approx(mass))


@pytest.mark.parametrize(
    ("face", "names", "outside"),
    [
        ("800 mm", 'of_end = "back"\n', 0.72),  # 0.9 of the face, which the cover closes
        ("770 mm", 'of_end = "back"\n', 0.7),  # 693 mm, less than the 700 mm of the cover
        ("800 mm", 'end = "back"\n', 0.72),
        ("800 mm", 'end = "front"\n', 0.7),
        ("800 mm", "", 0.7),
    ],
)
def test_a_cover_is_no_smaller_than_its_face_lets_it_be(
    tmp_path: Path, face: str, names: str, outside: float
) -> None:
    block = '[bores.main]\ndiameter = "500 mm"\n[ends.back]\nside = "back"\nof_bore = "main"\n'
    block += f'face_diameter = "{face}"\n'
    cover = IRON + COVER + 'closes = "block"\n' + names
    files = {"cylinder-block block": block, "cylinder-cover part": cover}
    on = bench(tmp_path, files, "part", metals=True, readable=False)
    found = mass_of_part(on["part"], on.sheet, on.sheet.take)
    assert found is not None
    assert found.value == pytest.approx(ring(outside, 0.5, 0.05) + ring(0.5, 0.1, 0.06))


@pytest.mark.parametrize(
    ("ring_text", "mass"),
    [
        ('runs_in = "liner"\nthickness = "16 mm"\nwidth = "10 mm"\n', ring(0.5, 0.468, 0.01)),
        ('thickness = "16 mm"\nwidth = "10 mm"\n', None),
        ('runs_in = "liner"\nwidth = "10 mm"\n', None),
    ],
)
def test_a_piston_ring_is_weighed_in_its_bore(tmp_path: Path, ring_text: str, mass: float | None) -> None:
    files = {"cylinder-liner liner": 'bore = "500 mm"\n', "piston-ring ring": IRON + ring_text}
    on = bench(tmp_path, files, "ring", metals=True)
    found = mass_of_part(on["ring"], on.sheet, on.sheet.take)
    assert (None if found is None else found.value) == (None if mass is None else pytest.approx(mass))


def planned(folder: Path, weight: str, piston: str = 'mass = "90 kg"\n') -> Bench:
    plan = f'[weights.one]\n{weight}[weights.other]\nmass = "5 kg"\n'
    return bench(folder, {"piston piston": piston, "lifting-plan plan": plan}, "plan")


@pytest.mark.parametrize(
    ("weight", "piston", "mass"),
    [
        ('of = "piston"\n', 'mass = "90 kg"\n', 90.0),
        ('of = "piston"\nmass = "80 kg"\n', 'mass = "90 kg"\n', 90.0),
        ('of = "piston"\nmass = "95 kg"\n', 'mass = "90 kg"\n', 95.0),
        ('of = "piston"\nmass = "80 kg"\n', "", 80.0),
        ('mass = "80 kg"\n', 'mass = "90 kg"\n', 80.0),
    ],
)
def test_a_piece_of_a_load_weighs_what_its_part_does(
    tmp_path: Path, weight: str, piston: str, mass: float
) -> None:
    on = planned(tmp_path, weight, piston)
    one = on["plan"].weights["one"]
    assert mass_weighed("one", one, on.sheet) == mass
    found = part_weighed(one, on.sheet, on.sheet.take)
    assert (found is not None) == ("of" in weight and bool(piston))
    assert parts_named(on["plan"], on.sheet) == ({"piston"} if "of" in weight else set())


@pytest.mark.parametrize(
    ("said", "up"), [("", True), ("in_place = true\n", True), ("in_place = false\n", False)]
)
def test_a_piece_goes_up_unless_it_is_put_in_afterwards(tmp_path: Path, said: str, up: bool) -> None:
    on = planned(tmp_path, 'mass = "80 kg"\n' + said)
    assert goes_up(on["plan"].weights["one"], on.sheet) is up
