"""water.drain-stays-open: drains that name another block of the engine, what lies in it, or a pipe of live steam."""

from __future__ import annotations

import pytest

from speclint.testing import DesignFolder, expect_conforms, expect_finding
from tests.plugins.steamways.wet import files

RULE = "water.drain-stays-open"
#: An engine of two blocks; the other has a belt of exhaust steam and a blast pipe, this one a pipe of live steam.
OTHERS = {
    "engine.toml": 'kind = "engine"\nid = "engine"\n[cranks.left]\nblock = "block"\n[cranks.right]\nblock = "other"\n',
    "other.toml": 'kind = "cylinder-block"\nid = "other"\n',
    "belt.toml": 'kind = "steam-passage"\nid = "belt"\nin_block = "other"\ncarries = "exhaust steam"\n',
    "blast.toml": 'kind = "steam-pipe"\nid = "blast"\ncarries = "exhaust steam"\n[starts_at]\npart = "other"\n',
    "main.toml": 'kind = "steam-pipe"\nid = "main"\ncarries = "live steam"\n[ends_at]\npart = "block"\n',
}


@pytest.mark.parametrize(
    ("into", "says"),
    [
        ("belt", "cock leads into belt, of other"),
        ("Belt ", "cock leads into belt, of other"),
        ("other", "cock leads into other, of other"),
        ("blast", "cock leads into blast, of other"),
        ("main", "cock leads into main, where live steam stands"),
        ("cock pipe front", ""),
        ("cock pipe of other", "cock leads into cock pipe of other, of other"),
        ("superheater header", "cock leads into superheater header, where live steam stands"),
        ("Live-steam pipe", "cock leads into live steam pipe, where live steam stands"),
        ("the boiler", "cock leads into the boiler, where live steam stands"),
        ("open air", ""),
        ("belt pipe", ""),
        ("ash pan beside the boiler", ""),
    ],
)
def test_a_cylinder_cock_leads_to_no_other_block(workshop: DesignFolder, into: str, says: str) -> None:
    made = files("block", ("cock pipe front", into))
    check = workshop.write({**made, **OTHERS}).only(RULE, "block")
    if says:
        expect_finding(check, says=says)
    else:
        expect_conforms(check)


@pytest.mark.parametrize(("into", "told"), [("belt", True), ("main", False), ("chest cock", False)])
def test_a_live_chest_drains_into_no_other_block(workshop: DesignFolder, into: str, told: bool) -> None:
    """Back into the pipe that feeds it, it may."""
    check = workshop.write({**files("chest", ("open air", into)), **OTHERS}).only(RULE, "chest")
    if told:
        expect_finding(check, says="low leads into belt, of other")
    else:
        expect_conforms(check)


def test_a_pipe_that_two_blocks_share_is_of_no_other(workshop: DesignFolder) -> None:
    made = {**files("block", ("cock pipe front", "blast")), **OTHERS}
    made["blast.toml"] = OTHERS["blast.toml"] + '[ends_at]\npart = "block"\n'
    expect_conforms(workshop.write(made).only(RULE, "block"))


@pytest.mark.parametrize(
    ("into", "joins"),
    [
        ("cock pipe", True),
        ("Cock-pipe", True),
        ("cock pipe 2", False),
        ("open air", False),
        ("to the open air", False),
        ("atmosphere", False),
        ("ins Freie", False),
    ],
)
def test_what_joins_two_ends_whatever_it_is_written_like(
    workshop: DesignFolder, into: str, joins: bool
) -> None:
    """Both ends lead into one pipe, or each into the open air, which joins nothing."""
    front = "cock pipe" if joins or into == "cock pipe 2" else into
    made = files("block", ("cock pipe front", front), ("cock pipe back", into))
    check = workshop.write(made).only(RULE, "block")
    if joins:
        expect_finding(check, says="cock pipe joins back and front")
    else:
        expect_conforms(check)
