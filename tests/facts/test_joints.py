"""What the part that a joint holds says of the joint."""

from __future__ import annotations

from pathlib import Path

import pytest

from speclint.facts import (
    circle_of_studs,
    edge_of_hole,
    edges_left,
    metal_tapped,
    metal_under_hole,
    pressure_by_part_held,
    pressure_held,
)
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
