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


def test_a_part_that_leads_to_no_block_says_nothing(workshop: DesignFolder) -> None:
    files = {**FILES, "gland.toml": 'kind = "gland"\nof = "pipe"', "pipe.toml": 'kind = "steam-pipe"'}
    found = workshop.write(files).only(RULE)
    assert (found.outcome, found.grade) == FINE
