"""What the part that a joint holds says of the joint."""

from __future__ import annotations

import math
from pathlib import Path

import pytest

from speclint.facts import (
    circle_of_studs,
    edge_of_hole,
    edges_left,
    grip_bolted_to,
    grip_drawn,
    grip_held,
    metal_tapped,
    metal_under_hole,
    openings,
    pressure_by_part_held,
    pressure_held,
    pressure_reach,
)
from speclint.handbook.members import contact
from speclint.rules import NotAssessed
from tests.facts.bench import Bench, bench

BLOCK = """material = "known-steel"
[bores.main]
diameter = "570 mm"
last_bore = "580 mm"
recess_diameter = "600 mm"
[ends.front]
of_bore = "main"
side = "front"
face_diameter = "760 mm"
"""
LINER = 'housed_in = "block"\nin_bore = "main"\nbore = "500 mm"\n'
COVER = 'closes = "block"\nof_end = "front"\n'
STUDS = 'holds = "cover"\nscrewed_into = "block"\ncircle = "680 mm"\n'
WELDMENT = 'makes = "block"\n[plates.flange]\nmaterial = "known-iron"\nthickness = "60 mm"\n'


def drawn(folder: Path, studs: str = "", **changed: str) -> Bench:
    """Studs of 680 mm that hold a cover on a block; parts whose text is empty are left out."""
    files = {
        "cylinder-block block": BLOCK,
        "cylinder-liner liner": LINER,
        "cylinder-cover cover": COVER,
        "bolted-joint studs": STUDS + studs,
        "weldment weldment": "",
    }
    texts = {name: changed.get(name.split()[1], text) for name, text in files.items()}
    return bench(folder, {name: text for name, text in texts.items() if text}, "studs", metals=True)


def inside(on: Bench) -> float | None:
    found = edges_left(on["studs"], on.sheet, on.sheet.take).get("inside")
    return None if found is None else found.value


@pytest.mark.parametrize(
    ("block", "liner", "edge"),
    [
        (BLOCK, LINER + 'collar.end = "front"\n', 0.040),  # (680 − 600)/2
        (BLOCK, LINER + 'collar.end = "back"\n', 0.055),  # (680 − 570)/2
        (BLOCK, LINER, None),  # at which end the collar is, is not said
        (BLOCK.replace('side = "front"\n', ""), LINER + 'collar.end = "front"\n', None),
        (BLOCK, "", 0.050),  # (680 − 580)/2: rebored
        (BLOCK.replace('last_bore = "580 mm"\n', ""), "", 0.055),
        (BLOCK.replace('recess_diameter = "600 mm"\n', ""), LINER + 'collar.end = "front"\n', None),
    ],
)
def test_the_edge_inside_is_that_of_recess_or_bore(
    tmp_path: Path, block: str, liner: str, edge: float | None
) -> None:
    assert inside(drawn(tmp_path, block=block, liner=liner)) == pytest.approx(edge)


def test_an_end_that_names_no_bore_has_no_opening(tmp_path: Path) -> None:
    block = BLOCK.replace('of_bore = "main"\n', "")
    assert inside(drawn(tmp_path, block=block, liner="")) is None


@pytest.mark.parametrize(("into", "edge"), [("cover", 0.020), ("flange", None)])
def test_the_studs_of_a_gland_stand_round_the_hole_of_the_cover(
    tmp_path: Path, into: str, edge: float | None
) -> None:
    """(190 − 150)/2 = 20 mm; in another part than a cover nothing is drawn."""
    files = {
        "gland gland": 'of = "cover"\n',
        "cylinder-cover cover": 'central_hole = "150 mm"\n',
        "pipe-flange flange": 'bore = "150 mm"\n',
        "bolted-joint studs": f'holds = "gland"\nscrewed_into = "{into}"\ncircle = "190 mm"\n',
    }
    assert inside(bench(tmp_path, files, "studs")) == pytest.approx(edge)


@pytest.mark.parametrize(
    ("bore", "opening", "edge"),
    [("230 mm", "230 mm", 0.0375), ("200 mm", "230 mm", 0.0375), ("240 mm", "230 mm", 0.0325)],
)
def test_under_the_cover_of_a_chamber_the_wider_opening_counts(
    tmp_path: Path, bore: str, opening: str, edge: float
) -> None:
    """(305 − 230)/2 = 37.5 mm, (305 − 240)/2 = 32.5 mm."""
    files = {
        "cylinder-block block": f'[seat_bores.upper]\nopening = "{opening}"\n',
        "chamber-cover lid": f'closes = "block"\nseat_bore = "upper"\nbore = "{bore}"\n',
        "bolted-joint studs": 'holds = "lid"\nscrewed_into = "block"\ncircle = "305 mm"\n',
    }
    assert inside(bench(tmp_path, files, "studs")) == pytest.approx(edge)


def test_the_edge_outside_is_that_of_the_face(tmp_path: Path) -> None:
    """(760 − 680)/2 = 40 mm."""
    on = drawn(tmp_path, liner="")
    assert edges_left(on["studs"], on.sheet, on.sheet.take)["outside"].value == pytest.approx(0.040)


def test_without_a_circle_no_edge_is_drawn(tmp_path: Path) -> None:
    files = {
        "cylinder-block block": BLOCK,
        "cylinder-cover cover": COVER,
        "bolted-joint studs": STUDS.replace('circle = "680 mm"\n', ""),
    }
    on = bench(tmp_path, files, "studs")
    assert edges_left(on["studs"], on.sheet, on.sheet.take) == {}


def test_without_ends_of_the_block_no_edge_is_drawn(tmp_path: Path) -> None:
    block = BLOCK.partition("[ends")[0]
    on = drawn(tmp_path, block=block, cover='closes = "block"\n', liner="")
    assert edges_left(on["studs"], on.sheet, on.sheet.take) == {}


@pytest.mark.parametrize(
    ("edge", "block", "least"),
    [
        ("", BLOCK, 0.040),  # of 50 mm inside and 40 outside
        ('edge_distance = "45 mm"\n', BLOCK, 0.040),
        ('edge_distance = "35 mm"\n', BLOCK, 0.035),
        ('edge_distance = "45 mm"\n', BLOCK.replace('face_diameter = "760 mm"\n', ""), 0.045),
    ],
)
def test_the_nearest_edge_counts(tmp_path: Path, edge: str, block: str, least: float) -> None:
    on = drawn(tmp_path, edge, block=block, liner="")
    assert edge_of_hole(on["studs"], on.sheet) == pytest.approx(least)


def test_with_one_edge_drawn_the_distance_must_be_stated(tmp_path: Path) -> None:
    on = drawn(tmp_path, block=BLOCK.replace('face_diameter = "760 mm"\n', ""), liner="")
    with pytest.raises(NotAssessed, match="edge_distance is not stated"):
        edge_of_hole(on["studs"], on.sheet)


@pytest.mark.parametrize(("circle", "found"), [("", 0.680), ("690 mm", 0.690), ("670 mm", 0.680)])
def test_the_greater_circle_of_joint_and_cover_counts(tmp_path: Path, circle: str, found: float) -> None:
    on = drawn(tmp_path, cover=COVER + (f'circle = "{circle}"\n' if circle else ""))
    assert circle_of_studs(on["studs"], on.sheet) == pytest.approx(found)


@pytest.mark.parametrize(
    ("studs", "weldment", "metal", "thickness"),
    [
        ('tapped.plate = "flange"\n', WELDMENT, "known-iron", "60 mm"),
        ("", WELDMENT, "known-steel", ""),
        (
            'tapped.plate = "flange"\n',
            WELDMENT.replace('material = "known-iron"\n', ""),
            "known-steel",
            "60 mm",
        ),
        ('tapped.plate = "flange"\n', WELDMENT.replace('thickness = "60 mm"\n', ""), "known-iron", ""),
    ],
)
def test_a_tapped_hole_stands_in_the_plate_that_it_names(
    tmp_path: Path, studs: str, weldment: str, metal: str, thickness: str
) -> None:
    on = drawn(tmp_path, studs, weldment=weldment)
    assert metal_tapped(on["studs"], on.sheet).name == metal
    assert getattr(metal_under_hole(on["studs"], on.sheet), "text", "") == thickness


def test_a_plate_of_a_block_that_no_weldment_makes_is_not_assessed(tmp_path: Path) -> None:
    on = drawn(tmp_path, 'tapped.plate = "flange"\n')
    with pytest.raises(NotAssessed, match="no weldment is stated that makes block"):
        metal_tapped(on["studs"], on.sheet)


@pytest.mark.parametrize(
    ("into", "thickness"), [('screwed_into = "cover"\n', "70 mm"), ("", ""), ('screwed_into = "liner"\n', "")]
)
def test_a_hole_in_a_cover_stands_in_its_plate(tmp_path: Path, into: str, thickness: str) -> None:
    files = {
        "cylinder-block block": BLOCK,
        "cylinder-liner liner": LINER,
        "cylinder-cover cover": COVER + 'thickness = "70 mm"\n',
        "bolted-joint studs": 'holds = "gland"\n' + into,
        "gland gland": 'of = "cover"\n',
    }
    on = bench(tmp_path, files, "studs", metals=True)
    assert getattr(metal_under_hole(on["studs"], on.sheet), "text", "") == thickness


@pytest.mark.parametrize(
    ("holds", "pressure"),
    [
        ("cover", "cylinder"),
        ("box", "cylinder"),
        ("gland", "cylinder"),
        ("flange", "exhaust"),
        ("lens", "exhaust"),
        ("pipe", "exhaust"),
        ("liner", None),
        ("", None),
    ],
)
def test_the_pressure_of_a_joint_is_that_behind_the_part_held(
    tmp_path: Path, holds: str, pressure: str | None
) -> None:
    files = {
        "cylinder-block block": BLOCK,
        "cylinder-liner liner": LINER,
        "cylinder-cover cover": COVER,
        "stuffing-box box": 'in_cover = "cover"\n',
        "gland gland": 'of = "box"\n',
        "steam-pipe pipe": 'carries = "exhaust steam"\n',
        "pipe-flange flange": 'of = "pipe"\n',
        "lens-joint lens": 'of = "pipe"\n',
        "bolted-joint studs": (f'holds = "{holds}"\n' if holds else "") + 'pressure = "live"\n',
    }
    on = bench(tmp_path, files, "studs", metals=True)
    found = pressure_by_part_held(on["studs"], on.sheet)
    assert (None if found is None else found.value) == pressure
    assert pressure_held(on["studs"], on.sheet) == (pressure or "live")


LENS = """of = "pipe"
flange_thickness = "45 mm"
thickness = "30 mm"
seat_mouth = "110 mm"
contact_diameter = "100 mm"
seat = "cone"
seat_angle = "20 °"
"""


def gripped(folder: Path, holds: str, joint: str = "", lens: str = LENS) -> Bench:
    files = {
        "cylinder-block block": "[bores.main]\n",
        "cylinder-cover cover": 'closes = "block"\nflange_thickness = "50 mm"\n',
        "cylinder-cover bare": 'closes = "block"\n',
        "chamber-cover lid": 'closes = "block"\nflange_thickness = "30 mm"\n',
        "gland gland": 'flange_thickness = "25 mm"\n',
        "steam-pipe pipe": "",
        "pipe-flange flange": 'of = "pipe"\nthickness = "28 mm"\n',
        "lens-joint lens": lens,
        "bolted-joint studs": f'holds = "{holds}"\ngrip = "40 mm"\nfar_grip = "35 mm"\n{joint}',
    }
    return bench(folder, files, "studs")


@pytest.mark.parametrize(
    ("holds", "grip"),
    [("cover", 0.050), ("bare", 0.040), ("lid", 0.030), ("gland", 0.025), ("flange", 0.028), ("pipe", 0.040)],
)
def test_the_grip_is_the_flange_that_is_held(tmp_path: Path, holds: str, grip: float) -> None:
    on = gripped(tmp_path, holds, f'bolted_to = "{holds}"\n')
    assert grip_held(on["studs"], on.sheet) == pytest.approx(grip)
    assert grip_bolted_to(on["studs"], on.sheet) == pytest.approx(0.035 if grip == 0.040 else grip)


def test_a_lens_ring_holds_its_flanges_apart(tmp_path: Path) -> None:
    """A gap on either side of the ring: what the handbook gives for the cone, and the flange before it."""
    circle = {"t": 0.030, "D_m": 0.110, "D": 0.100}
    half = contact.half_gap_at_ring(**circle, phi=math.radians(20))
    on = gripped(tmp_path, "lens")
    assert grip_held(on["studs"], on.sheet) == pytest.approx(0.045 + half)
    drawn_too = grip_drawn(on["studs"], on["lens"].flange_thickness, on.sheet)
    assert getattr(drawn_too, "value", None) == pytest.approx(0.045 + half)
    (tmp_path / "a").mkdir()
    hollow = LENS.replace('seat = "cone"\nseat_angle = "20 °"\n', 'seat = "sphere"\nseat_radius = "120 mm"\n')
    of_sphere = gripped(tmp_path / "a", "lens", lens=hollow)
    other = contact.half_gap_at_hollow(**circle, R=0.120)
    assert other != pytest.approx(half)
    assert grip_held(of_sphere["studs"], of_sphere.sheet) == pytest.approx(0.045 + other)


def test_a_flange_without_a_ring_is_gripped_as_it_is(tmp_path: Path) -> None:
    on = gripped(tmp_path, "cover")
    assert grip_drawn(on["studs"], on["cover"].flange_thickness, on.sheet) is on["cover"].flange_thickness


@pytest.mark.parametrize(
    ("seal", "holds", "reach"),
    [
        ("lens ring", "lens", "100 mm"),
        ("lens ring", "cover", "95 mm"),
        ("ground face", "cover", "90 mm"),
    ],
)
def test_steam_reaches_to_the_seal(tmp_path: Path, seal: str, holds: str, reach: str) -> None:
    more = f'seal = "{seal}"\npressure_circle = "95 mm"\nground_face.outside = "90 mm"\n'
    on = gripped(tmp_path, holds, more)
    assert getattr(pressure_reach(on["studs"], on.sheet), "text", "") == reach


@pytest.mark.parametrize(
    ("liner", "cover", "sizes"),
    [
        (LINER + 'last_bore = "510 mm"\ncollar.end = "front"\n', COVER, ["500 mm", "510 mm", "600 mm"]),
        (LINER + 'last_bore = "510 mm"\ncollar.end = "back"\n', COVER, ["500 mm", "510 mm"]),
        (LINER + 'last_bore = "510 mm"\n', COVER, ["500 mm", "510 mm"]),
        ("", COVER, ["570 mm"]),
        ("", 'closes = "block"\nbore = "490 mm"\n', ["490 mm"]),
    ],
)
def test_the_openings_under_a_cover(tmp_path: Path, liner: str, cover: str, sizes: list[str]) -> None:
    block = BLOCK if "of_end" in cover else BLOCK.partition("[ends")[0]
    on = drawn(tmp_path, liner=liner, cover=cover, block=block)
    assert [one.text for one in openings(on["studs"], on.sheet)] == sizes


LID = 'closes = "block"\nbore = "200 mm"\n'
SEAT_BORE = '[seat_bores.s]\nopening = "190 mm"\n'


@pytest.mark.parametrize(
    ("holds", "lid", "block", "sizes"),
    [
        ("lid", LID + 'seat_bore = "s"\n', SEAT_BORE, ["200 mm", "190 mm"]),
        ("lid", LID, SEAT_BORE, ["200 mm"]),
        ("lid", LID.replace('bore = "200 mm"\n', 'seat_bore = "s"\n'), SEAT_BORE, ["190 mm"]),
        ("lid", LID + 'seat_bore = "s"\n', "[seat_bores.s]\n", ["200 mm"]),
        ("flange", LID, '[openings.o]\nbore = "140 mm"\nface = "300 mm"\n', ["150 mm", "140 mm"]),
        ("flange", LID, '[openings.o]\nface = "300 mm"\n', ["150 mm"]),
        ("pipe", LID, '[openings.o]\nbore = "140 mm"\n', []),
    ],
)
def test_the_openings_under_a_flange_and_a_lid(
    tmp_path: Path, holds: str, lid: str, block: str, sizes: list[str]
) -> None:
    pipe = 'starts_at.part = "block"\nstarts_at.opening = "o"\n' if "openings" in block else ""
    files = {
        "cylinder-block block": block,
        "chamber-cover lid": lid,
        "steam-pipe pipe": pipe,
        "pipe-flange flange": 'of = "pipe"\nbore = "150 mm"\n',
        "bolted-joint studs": f'holds = "{holds}"\nscrewed_into = "block"\ncircle = "240 mm"\n',
    }
    on = bench(tmp_path, files, "studs")
    assert [one.text for one in openings(on["studs"], on.sheet)] == sizes
    if holds == "flange":
        left = edges_left(on["studs"], on.sheet, on.sheet.take)
        assert left["outside"].value == pytest.approx(0.030)  # (300 − 240)/2
        assert ("inside" in left) == ("bore" in block)
