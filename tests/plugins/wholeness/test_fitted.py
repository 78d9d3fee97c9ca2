"""Chains and fits that parts call for by their sizes, of their own or of a part on their drawing."""

from __future__ import annotations

import pytest

from speclint.testing import DesignFolder
from tests.plugins.wholeness.engine import told

RULE = "part.its-chain-or-fit"
BLOCK = 'kind = "cylinder-block"\n[pads.front]\nwidth = "180 mm"\n[seat_bores.upper]\ndiameter = "170 mm H7"'
FACE = 'kind = "locating-face"\nlocks = "block"\npad = "front"\nslot = "186 mm"'
ROOM = 'kind = "dimension-chain"\ncloses = { of = "face", dimension = "room" }'
LINKS = (
    'kind = "dimension-chain"\n[chain.slot]\nof = "face"\ndimension = "slot"\n[chain.pad]\nof = "block"\n'
    'dimension = "pads.front.width"'
)
BOLTS = 'kind = "frame-fastening"\nholds = "block"\npad = "front"\nfitted_diameter = "36 mm m6"'
REAMED = 'kind = "fit"\nshaft = { of = "bolts", dimension = "fitted_diameter" }'
TAPPET = 'kind = "tappet"\nclearance = "0.85 mm"'
CLEARANCE = 'kind = "dimension-chain"\ncloses = { of = "tappet", dimension = "clearance" }'
#: A part, what it wants, and what fills that.
WANTED = {
    "face": (FACE, "pad in face wants a dimension chain: none is there", ROOM),
    "bolts": (BOLTS, "fitted bolts of bolts wants a fit: none is there", REAMED),
    "tappet": (TAPPET, "clearance of tappet wants a dimension chain: none is there", CLEARANCE),
}


@pytest.mark.parametrize("name", WANTED)
def test_what_a_part_calls_for_is_there_or_told(workshop: DesignFolder, name: str) -> None:
    part, says, fills = WANTED[name]
    assert told(workshop, {"block": BLOCK, name: part}, RULE, name) == says
    assert told(workshop, {"block": BLOCK, name: part, "found": fills}, RULE, name) == ""


@pytest.mark.parametrize("name", WANTED)
def test_that_of_a_part_on_its_drawing_is_enough(workshop: DesignFolder, name: str) -> None:
    part, says, fills = WANTED[name]
    parts = {"block": BLOCK, "found": fills, name: f'{part}\ndrawing = "D-1"'}
    assert told(workshop, {**parts, "alike": f'{part}\ndrawing = "D-1"'}, RULE, "alike") == ""
    elsewhere = told(workshop, {**parts, "alike": f'{part}\ndrawing = "D-2"'}, RULE, "alike")
    assert elsewhere == says.replace(f" {name} wants", " alike wants")


def test_a_chain_over_cut_out_and_pad_is_that_of_the_cut_out(workshop: DesignFolder) -> None:
    parts = {"block": BLOCK, "face": FACE, "found": LINKS}
    assert told(workshop, parts, RULE, "face") == ""
    none = WANTED["face"][1]
    for gone in ("pads.front.width", "slot"):
        other = LINKS.replace(f'dimension = "{gone}"', 'dimension = "at"')
        assert told(workshop, {**parts, "found": other}, RULE, "face") == none


@pytest.mark.parametrize(
    ("name", "change"),
    [
        ("face", ('slot = "186 mm"', "")),
        ("bolts", ('fitted_diameter = "36 mm m6"', "")),
        ("tappet", ('clearance = "0.85 mm"', "")),
        ("tappet", ("clearance =", 'clearance_setting = "0.05 mm"\nclearance =')),
    ],
)
def test_nothing_is_asked_without_the_size_or_where_a_screw_sets_it(
    workshop: DesignFolder, name: str, change: tuple[str, str]
) -> None:
    part = WANTED[name][0].replace(*change)
    assert told(workshop, {"block": BLOCK, name: part}, RULE, name).startswith("not applicable")


def test_a_chain_of_another_size_of_the_tappet_does_not_count(workshop: DesignFolder) -> None:
    other = CLEARANCE.replace('"clearance"', '"overhang"')
    assert told(workshop, {"tappet": TAPPET, "found": other}, RULE, "tappet") == WANTED["tappet"][1]


@pytest.mark.parametrize(
    ("name", "change", "counts"),
    [
        ("bolts", ('"36 mm m6"', '"36 mm +0.025/+0.009"'), True),  # ISO 286-2: m6 at 36 mm is +9 to +25 µm
        ("bolts", ('"36 mm m6"', '"36 mm h6"'), False),  # they fit loosely, and nothing else tells of bolts
        ("bolts", ('m6"', 'm6"\nitem = "2"'), False),
        ("face", ('slot = "186 mm"', 'slot = "186.5 mm"'), False),
        ("face", ('slot = "186 mm"', 'slot = "18.6 cm"'), True),
        ("face", ('pad = "front"', 'pad = "back"'), False),  # a narrower pad
        ("tappet", ('"0.85 mm"', '"0.6 mm"'), False),
    ],
)
def test_that_of_another_size_or_item_does_not_count(
    workshop: DesignFolder, name: str, change: tuple[str, str], counts: bool
) -> None:
    part, says, fills = WANTED[name]
    block = BLOCK.replace("[pads.front]", '[pads.back]\nwidth = "179 mm"\n[pads.front]')
    drawn = 'drawing = "D-1"'
    parts = {"block": block, "found": fills, name: f'item = "1"\n{part}\n{drawn}'}
    assert change[0] in part
    other = f"{part.replace(*change)}\n{drawn}"
    found = told(workshop, {**parts, "alike": other}, RULE, "alike")
    assert found == ("" if counts else says.replace(f" {name} wants", " alike wants"))
