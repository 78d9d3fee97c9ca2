"""What piston, rod and crosshead say of the drive of a block."""

from __future__ import annotations

from pathlib import Path

import pytest

from speclint.facts import (
    cold_clearance,
    ends_held,
    greatest_cold_clearance,
    hole_through,
    length_in_compression,
    mass_moved,
    mass_of_parts,
    other_end,
    pins_of,
    rod_diameter,
    rod_steel,
    room_for_strokes,
)
from speclint.facts.connecting_rods import small_end_in
from speclint.rules import NotAssessed
from tests.facts.bench import Bench, bench

BLOCK = """[bores.main]
[ends.front]
of_bore = "main"
side = "front"
face_from_seat = "25 mm"
clearance = "9 mm"
[ends.back]
of_bore = "main"
side = "back"
face_from_seat = "851 mm"
clearance = "12 mm"
[drive]
stroke = "660 mm"
rod_diameter = "80 mm"
rod_material = "known-iron"
reciprocating_mass = "250 kg"
rod_length = "1450 mm"
"""
LINER = 'housed_in = "block"\nin_bore = "main"\n'
PISTON = 'runs_in = "liner"\nlength = "140 mm"\nmass = "112 kg"\n'
ROD = """carries = "piston"
diameter = "90 mm"
material = "known-steel"
mass = "84 kg"
ends = "both fixed"
free_length = "1400 mm"
"""
HEAD = 'on_rod = "rod"\nmass = "70 kg"\nsmall_end_mass = "34 kg"\n'


def drawn(folder: Path, **changed: str | None) -> Bench:
    """A train of 112, 84, 70 and 34 kg; what is changed to None is left out."""
    files: dict[str, str | None] = {
        "cylinder-block block": BLOCK,
        "cylinder-liner liner": LINER,
        "piston piston": PISTON,
        "piston-rod rod": ROD,
        "crosshead head": HEAD,
        "engine engine": None,
        "pin pin": None,
        "piston second": None,
        "piston-rod thin": None,
    }
    texts = {name: changed.get(name.split()[1], text) for name, text in files.items()}
    return bench(
        folder, {name: text for name, text in texts.items() if text is not None}, "block", metals=True
    )


def total(on: Bench) -> tuple[float, float | None] | None:
    found = mass_of_parts(on["block"], "main", on.sheet, on.sheet.take)
    return None if found is None else (found[0], found[1].value)


ENGINE = (
    'connecting_rod_mass = "90 kg"\nconnecting_rod_length = "1800 mm"\nconnecting_rod_centre = "600 mm"\n'
    '[cranks.one]\nblock = "block"\n'
)
BOSSES = 'material = "known-steel"\nboss_diameter = "350 mm"\nboss_width = "62 mm"\n'
BARE_HEAD = HEAD.replace('small_end_mass = "34 kg"\n', "")


@pytest.mark.parametrize(
    ("changed", "mass", "whole", "moved"),
    [
        ({}, 300.0, True, 300.0),
        ({"head": BARE_HEAD}, 266.0, False, 266.0),
        ({"head": BARE_HEAD, "engine": ENGINE}, 296.0, True, 296.0),  # 90 × 600/1800 = 30 kg of the rod
        ({"engine": ENGINE}, 300.0, True, 300.0),  # the crosshead's own word goes before
        ({"piston": PISTON.replace('mass = "112 kg"\n', "")}, 188.0, False, 250.0),
        ({"head": None}, 196.0, False, 250.0),
        ({"rod": None, "head": None}, None, False, 250.0),
    ],
)
def test_the_reciprocating_mass_is_that_of_the_parts(
    tmp_path: Path, changed: dict[str, str | None], mass: float | None, whole: bool, moved: float
) -> None:
    on = drawn(tmp_path, **changed)
    assert total(on) == (
        None if mass is None else (pytest.approx(mass), pytest.approx(mass) if whole else None)
    )
    assert mass_moved(on["block"], on.sheet) == pytest.approx(moved)


@pytest.mark.parametrize(
    ("changed", "moved"),
    [
        (
            {"engine": ENGINE.replace('"600 mm"', '"720 mm"')},
            302.0,
        ),  # 90 × 720/1800 = 36 kg, where 34 are stated
        # 7850 × π/4 × 0.13² × 1.4 = 145.87 kg, of which 0.9 are 131.28 kg: 47.28 more than stated
        ({"rod": ROD.replace('"90 mm"', '"130 mm"')}, 347.28),
        ({"rod": ROD.replace('"90 mm"', '"100 mm"')}, 300.0),  # 77.68 kg of the 84 stated
        # 7850 × π/4 × 0.35² × 2 × 0.062 = 93.653 kg, of which 0.9 are 84.287 kg: 14.287 more than stated
        ({"head": BOSSES + HEAD}, 314.287),
        ({"head": BOSSES.replace("350", "310") + HEAD}, 300.0),  # 66.12 kg of the 70 stated
    ],
)
def test_no_part_of_it_weighs_less_than_its_sizes_let_it(
    tmp_path: Path, changed: dict[str, str | None], moved: float
) -> None:
    on = drawn(tmp_path, **changed)
    assert mass_moved(on["block"], on.sheet) == pytest.approx(moved, rel=1e-4)
    assert total(on) == (pytest.approx(300.0), pytest.approx(300.0))


@pytest.mark.parametrize(
    ("engine", "share"),
    [
        (ENGINE, 30.0),
        (ENGINE + 'connecting_rod_mass = "60 kg"\n', 20.0),  # the crank's own rod
        (ENGINE + 'connecting_rod_length = "1200 mm"\n', 45.0),
        (ENGINE + 'connecting_rod_centre = "900 mm"\n', 45.0),
        (ENGINE.replace('connecting_rod_mass = "90 kg"\n', ""), None),
        (ENGINE.replace('connecting_rod_length = "1800 mm"\n', ""), None),
        (ENGINE.replace('connecting_rod_centre = "600 mm"\n', ""), None),
        (None, None),
    ],
)
def test_the_share_of_the_connecting_rod(tmp_path: Path, engine: str | None, share: float | None) -> None:
    on = drawn(tmp_path, engine=engine)
    found = small_end_in(on["block"], "main", on.sheet, on.sheet.take)
    assert (None if found is None else found.value) == pytest.approx(share)


def test_a_bore_that_no_crank_turns_has_no_share(tmp_path: Path) -> None:
    on = drawn(tmp_path, engine=ENGINE)
    assert small_end_in(on["block"], "other", on.sheet, on.sheet.take) is None


@pytest.mark.parametrize(
    ("changed", "diameter", "steel"),
    [
        ({}, 0.090, "known-steel"),
        ({"thin": 'carries = "piston"\ndiameter = "85 mm"\nmaterial = "known-iron"\n'}, 0.085, "known-steel"),
        ({"rod": None, "head": None}, 0.080, "known-iron"),
    ],
)
def test_the_thinnest_rod_that_is_drawn_counts(
    tmp_path: Path, changed: dict[str, str | None], diameter: float, steel: str
) -> None:
    on = drawn(tmp_path, **changed)
    assert rod_diameter(on["block"], on.sheet) == pytest.approx(diameter)
    assert on.sheet.read("steel", rod_steel(on["block"], on.sheet)) == steel


def clearances(on: Bench, end: str) -> tuple[float, float]:
    at = on["block"].ends[end]
    return cold_clearance(on["block"], at, on.sheet), greatest_cold_clearance(on["block"], at, on.sheet)


FRONT = 'clearance = "9 mm"\n'


@pytest.mark.parametrize(
    ("changed", "least", "greatest"),
    [
        ({}, 0.009, 0.014),  # 851 − 25 − 660 − 140 = 26 mm, less the 12 of the other end
        ({"block": BLOCK.replace(FRONT, 'clearance = "15 mm"\n')}, 0.014, 0.015),
        ({"block": BLOCK.replace(FRONT, "")}, 0.014, 0.014),
        ({"block": BLOCK.replace('clearance = "12 mm"\n', "")}, 0.009, 0.009),
        ({"block": BLOCK.replace('face_from_seat = "851 mm"\n', "")}, 0.009, 0.009),
        ({"piston": PISTON.replace('length = "140 mm"\n', "")}, 0.009, 0.009),
        ({"second": PISTON}, 0.009, 0.009),
        ({"block": BLOCK.replace('side = "back"\n', "")}, 0.009, 0.009),
        ({"block": BLOCK.replace('stroke = "660 mm"\n', "")}, 0.009, 0.009),
    ],
)
def test_the_clearance_at_an_end_is_as_stated_and_as_the_faces_leave(
    tmp_path: Path, changed: dict[str, str | None], least: float, greatest: float
) -> None:
    on = drawn(tmp_path, **changed)
    assert clearances(on, "front") == pytest.approx((least, greatest))


def test_the_room_for_the_stroke_counts_either_way(tmp_path: Path) -> None:
    block = BLOCK.replace('"25 mm"', '"851.0 mm"').replace('"851 mm"', '"25 mm"')
    on = drawn(tmp_path, block=block)
    found = room_for_strokes(on["block"], "main", on.sheet, on.sheet.take)
    assert found is not None
    assert found.value == pytest.approx(0.026)


def test_the_other_end_is_that_of_the_same_bore(tmp_path: Path) -> None:
    on = drawn(tmp_path)
    front, back = (on["block"].ends[side] for side in ("front", "back"))
    assert (other_end(on["block"], front, on.sheet), other_end(on["block"], back, on.sheet, "main")) == (
        back,
        front,
    )
    (tmp_path / "a").mkdir()
    alone = drawn(tmp_path / "a", block='[bores.main]\n[ends.front]\nof_bore = "main"\nclearance = "9 mm"\n')
    assert other_end(alone["block"], alone["block"].ends["front"], alone.sheet) is None
    assert clearances(alone, "front") == pytest.approx((0.009, 0.009))


@pytest.mark.parametrize(
    ("changed", "length"),
    [
        ({}, 1.4),  # 1450 − 140/2 = 1380 mm beyond the piston
        ({"rod": ROD.replace('"1400 mm"', '"1300 mm"')}, 1.38),
        ({"rod": ROD.replace('free_length = "1400 mm"\n', "")}, 1.38),
        ({"piston": PISTON.replace('length = "140 mm"\n', "")}, 1.4),
        ({"block": BLOCK.replace('rod_length = "1450 mm"\n', "")}, 1.4),
    ],
)
def test_the_length_that_can_bow_is_the_greater(
    tmp_path: Path, changed: dict[str, str | None], length: float
) -> None:
    on = drawn(tmp_path, **changed)
    assert length_in_compression(on["rod"], on["piston"], on["block"], on.sheet) == pytest.approx(length)


def test_without_the_lengths_beyond_the_piston_it_must_be_stated(tmp_path: Path) -> None:
    on = drawn(
        tmp_path,
        rod=ROD.replace('free_length = "1400 mm"\n', ""),
        block=BLOCK.replace('rod_length = "1450 mm"\n', ""),
    )
    with pytest.raises(NotAssessed, match="free_length is not stated"):
        length_in_compression(on["rod"], on["piston"], on["block"], on.sheet)


PIN = 'moved_by = "head"\n'


@pytest.mark.parametrize(
    ("pin", "ends", "held"),
    [
        (PIN + 'place = "crosshead pin"\n', "both fixed", "one fixed and one pinned"),
        (PIN + 'place = "crosshead pin"\n', "both pinned", "both pinned"),
        (PIN + 'place = "crank pin"\n', "both fixed", "both fixed"),
        (PIN, "both fixed", "both fixed"),
        (None, "both fixed", "both fixed"),
    ],
)
def test_a_rod_on_a_pin_is_fixed_at_one_end_at_the_most(
    tmp_path: Path, pin: str | None, ends: str, held: str
) -> None:
    on = drawn(tmp_path, pin=pin, rod=ROD.replace("both fixed", ends))
    assert ends_held(on["rod"], on.sheet) == held
    assert len(pins_of(on["rod"], on.sheet)) == ("crosshead" in (pin or ""))


BOX = 'in_cover = "cover"\n'


@pytest.mark.parametrize(
    ("box", "hole"),
    [
        ("", 0.1),
        (BOX + 'seals = "rod"\n', 0.120),
        (BOX + 'seals = "rod"\noutside_diameter = "110 mm"\n', 0.110),
        (BOX + 'outside_diameter = "90 mm"\n', 0.100),
        (BOX, 0.1),
    ],
)
def test_a_hole_takes_the_box_or_the_rod_that_goes_through_it(tmp_path: Path, box: str, hole: float) -> None:
    files = {
        "cylinder-cover cover": 'central_hole = "100 mm"\n',
        "chamber-cover lid": 'central_hole = "20 mm"\n',
        "piston-rod rod": 'diameter = "120 mm"\n',
    }
    files |= {"stuffing-box box": box} if box else {}
    on = bench(tmp_path, files, "cover")
    assert hole_through(on["cover"], on.sheet) == pytest.approx(hole)
    assert hole_through(on["lid"], on.sheet) == pytest.approx(0.020)
