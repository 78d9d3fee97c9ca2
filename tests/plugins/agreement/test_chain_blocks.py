"""The links of a chain are of one cylinder."""

from __future__ import annotations

import pytest

from speclint import Grade
from speclint.testing import DesignFolder

RULE = "chain.parts-of-one-block"
CHAIN = """
kind = "dimension-chain"
closes = { of = "tappet", dimension = "clearance" }
[chain.rod]
of = "one"
dimension = "drive.rod_length"
[chain.gland]
of = "gland"
dimension = "stands_out"
[chain.packing]
size = "2 mm"
"""
FILES = {
    "one.toml": 'kind = "cylinder-block"',
    "two.toml": 'kind = "cylinder-block"',
    "cover.toml": 'kind = "cylinder-cover"\ncloses = "one"',
    "box.toml": 'kind = "stuffing-box"\nin_cover = "cover"',
    "gland.toml": 'kind = "gland"\nof = "box"',
    "seat.toml": 'kind = "valve-seat"\npressed_into = "one"',
    "valve.toml": 'kind = "poppet-valve"\nupper_beat = { seat = "seat" }',
    "spindle.toml": 'kind = "valve-spindle"\nmoves = "valve"',
    "rocker.toml": 'kind = "rocker"\nworks = "spindle"',
    "tappet.toml": 'kind = "tappet"\nworks = "rocker"',
    "chain.toml": CHAIN,
}
OTHER, FINE, NOTHING = ("finding", Grade.QUERY), ("conforms", None), ("not applicable", None)


@pytest.mark.parametrize(
    ("file", "old", "new", "wanted"),
    [
        ("chain.toml", "", "", FINE),
        ("chain.toml", 'of = "one"', 'of = "two"', OTHER),
        ("cover.toml", '"one"', '"two"', OTHER),
        ("seat.toml", '"one"', '"two"', OTHER),
        ("cover.toml", '\ncloses = "one"', "", FINE),  # the gap and the rod are of one block
        ("valve.toml", '\nupper_beat = { seat = "seat" }', "", FINE),
        ("chain.toml", CHAIN[: CHAIN.index("[chain.packing]")], 'kind = "dimension-chain"\n', NOTHING),
    ],
)
def test_a_chain_adds_up_the_sizes_of_one_cylinder(
    workshop: DesignFolder, file: str, old: str, new: str, wanted: tuple[str, Grade | None]
) -> None:
    found = workshop.write({**FILES, file: FILES[file].replace(old, new, 1)}).only(RULE)
    assert (found.outcome, found.grade) == wanted


@pytest.mark.parametrize(
    ("grows_with", "wanted"),
    [
        ("gland", FINE),
        ("other-gland", OTHER),  # as left in a chain copied from the other cylinder
        ("two", OTHER),
        ("lonely", FINE),  # names no cover
    ],
)
def test_a_link_grows_with_a_part_of_the_same_cylinder(
    workshop: DesignFolder, grows_with: str, wanted: tuple[str, Grade | None]
) -> None:
    files = {
        **FILES,
        "other-cover.toml": 'kind = "cylinder-cover"\ncloses = "two"',
        "other-gland.toml": 'kind = "gland"\nof = "other-cover"',
        "lonely.toml": 'kind = "gland"',
        "chain.toml": CHAIN.replace(
            'dimension = "stands_out"', f'dimension = "stands_out"\ngrows_with = "{grows_with}"'
        ),
    }
    found = workshop.write(files).only(RULE)
    assert (found.outcome, found.grade) == wanted


def test_a_part_that_leads_to_no_block_says_nothing(workshop: DesignFolder) -> None:
    files = {**FILES, "gland.toml": 'kind = "gland"\nof = "pipe"', "pipe.toml": 'kind = "steam-pipe"'}
    found = workshop.write(files).only(RULE)
    assert (found.outcome, found.grade) == FINE


GEAR = {
    "inlet.toml": 'kind = "poppet-valve"',
    "exhaust.toml": 'kind = "poppet-valve"\nlower_beat = { seat = "ring" }',
    "ring.toml": 'kind = "valve-seat"',
    "spare.toml": 'kind = "valve-seat"',
    "spindle.toml": 'kind = "valve-spindle"\nmoves = "inlet"',
    "rocker.toml": 'kind = "rocker"\nworks = "spindle"',
    "tappet.toml": 'kind = "tappet"\nworks = "rocker"\ncarried_in = "front"',
    "other.toml": 'kind = "valve-spindle"\nmoves = "exhaust"',
    "direct.toml": 'kind = "tappet"\nworks = "other"\ncarried_in = "front"',
    "spring.toml": 'kind = "compression-spring"\ncloses = "exhaust"',
    "cage.toml": 'kind = "valve-cage"\nsurrounds = "exhaust"',
    "cam.toml": 'kind = "cam"\nlifts = "direct"',
    "front.toml": 'kind = "cam-box"',
    "back.toml": 'kind = "cam-box"',
    "far-tappet.toml": 'kind = "tappet"\ncarried_in = "back"',
    "far-cam.toml": 'kind = "cam"\nlifts = "far-tappet"\nturns_on = "far-camshaft"',
    "near-cam.toml": 'kind = "cam"\nlifts = "tappet"\nturns_on = "camshaft"',
    "loose-cam.toml": 'kind = "cam"\nturns_on = "bare"',
    "far-rocker.toml": 'kind = "rocker"\ncarried_in = "back"\non_shaft = "far-pivot"',
    "near-rocker.toml": 'kind = "rocker"\ncarried_in = "front"\non_shaft = "pivot"',
    **{
        f"{name}.toml": 'kind = "shaft"'
        for name in ("camshaft", "far-camshaft", "pivot", "far-pivot", "bare")
    },
}
OF_TAPPET = """
kind = "dimension-chain"
closes = {{ of = "{gap}", dimension = "clearance" }}
[chain.box]
of = "{box}"
dimension = "datum_length"
[chain.part]
of = "{part}"
dimension = "length"
"""


@pytest.mark.parametrize(
    ("gap", "box", "part", "wanted"),
    [
        ("tappet", "front", "spindle", FINE),
        ("tappet", "front", "rocker", FINE),
        ("tappet", "front", "inlet", FINE),
        ("direct", "front", "spindle", OTHER),  # the gap is that of the exhaust tappet
        ("tappet", "front", "other", OTHER),
        ("tappet", "front", "spring", OTHER),
        ("tappet", "front", "cage", OTHER),
        ("tappet", "front", "cam", OTHER),
        ("direct", "front", "cam", FINE),
        ("tappet", "front", "ring", OTHER),
        ("direct", "front", "ring", FINE),
        ("tappet", "front", "spare", FINE),  # no valve closes on it
        ("direct", "front", "exhaust", FINE),
        ("direct", "back", "exhaust", OTHER),  # the box that carries another tappet
        ("direct", "front", "back", OTHER),
        ("tappet", "front", "camshaft", FINE),
        ("tappet", "front", "far-camshaft", OTHER),  # whose cam lifts a tappet of the other box
        ("tappet", "front", "pivot", FINE),
        ("tappet", "front", "far-pivot", OTHER),
        ("tappet", "front", "bare", FINE),  # its cam lifts nothing that is drawn
    ],
)
def test_a_chain_adds_up_the_sizes_of_one_valve(
    workshop: DesignFolder, gap: str, box: str, part: str, wanted: tuple[str, Grade | None]
) -> None:
    chain = OF_TAPPET.format(gap=gap, box=box, part=part)
    found = workshop.write({**GEAR, "chain.toml": chain}).only(RULE, "chain")
    assert (found.outcome, found.grade) == wanted


@pytest.mark.parametrize(
    ("grows_with", "wanted"),
    [("spindle", FINE), ("other", OTHER), ("front", FINE), ("back", OTHER), ("far-camshaft", OTHER)],
)
def test_a_link_grows_with_a_part_of_the_same_valve(
    workshop: DesignFolder, grows_with: str, wanted: tuple[str, Grade | None]
) -> None:
    chain = OF_TAPPET.format(gap="tappet", box="front", part="spindle") + f'grows_with = "{grows_with}"\n'
    found = workshop.write({**GEAR, "chain.toml": chain}).only(RULE, "chain")
    assert (found.outcome, found.grade) == wanted


@pytest.mark.parametrize("file", ["rocker.toml", "spindle.toml", "other.toml"])
def test_a_gear_that_leads_to_no_valve_is_held_against_none(workshop: DesignFolder, file: str) -> None:
    kind = GEAR[file].partition("\n")[0]
    chain = OF_TAPPET.format(gap="tappet", box="front", part="other")
    found = workshop.write({**GEAR, file: kind, "chain.toml": chain}).only(RULE, "chain")
    assert (found.outcome, found.grade) == FINE  # the box of its tappet is all that is left
