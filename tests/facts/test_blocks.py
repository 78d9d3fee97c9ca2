"""The block to which the links of each kind of part lead."""

from __future__ import annotations

from pathlib import Path

import pytest

from speclint.facts import block_of, ways_to_blocks
from speclint.rules import NotAssessed
from tests.facts.bench import bench

PARTS = {
    "cylinder-block block": "[bores.main]\n",
    "cylinder-block other": "[bores.main]\n",
    "access-plan access": 'serves = "block"\n',
    "bolted-joint studs": 'screwed_into = "block"\n',
    "bolted-joint bolts": 'holds = "cover"\n',
    "bracket bracket": 'on = "block"\n',
    "cam cam": 'lifts = "tappet"\n',
    "cam-box cambox": 'mounted_on = "block"\n',
    "casting casting": 'becomes = "block"\n',
    "chamber-cover lid": 'closes = "block"\n',
    "chamber-cover above": 'over = "valve"\n',
    "compression-spring spring": 'closes = "valve"\n',
    "compression-spring inner": 'nested_in = "spring"\n',
    "crosshead crosshead": 'on_rod = "rod"\n',
    "cylinder-cover cover": 'closes = "block"\n',
    "cylinder-liner liner": 'housed_in = "block"\n',
    "dimension-chain chain": 'chain.bore.of = "block"\nchain.piston.of = "piston"\ncloses.of = "rod"\n',
    "envelope envelope": 'around = "block"\n',
    "frame-fastening fastening": 'holds = "block"\n',
    "gland gland": 'of = "box"\n',
    "lagging lagging": 'covers = "cover"\n',
    "locating-face face": 'locks = "block"\n',
    "partition partition": 'live_side = "passage"\n',
    "partition cold-side": 'exhaust_side = "passage"\n',
    "pin pin": 'moved_by = "crosshead"\n',
    "piston piston": 'runs_in = "liner"\n',
    "piston-ring ring": 'runs_in = "liner"\n',
    "piston-ring unlined": 'bears_on = "block"\n',
    "piston-rod rod": 'carries = "piston"\n',
    "poppet-valve valve": 'upper_beat.seat = "seat"\n',
    "poppet-valve below": 'lower_beat.seat = "seat"\n',
    "retaining-ring keeper": 'retains = "liner"\n',
    "rocker rocker": 'works = "spindle"\n',
    "rocker carried": 'carried_in = "cambox"\n',
    "saddle saddle": 'on = "block"\n',
    "slide-bar bar": 'guides = "crosshead"\n',
    "steam-passage passage": 'in_block = "block"\n',
    "stuffing-box box": 'in_cover = "cover"\n',
    "stuffing-box sealing": 'seals = "rod"\n',
    "tappet tappet": 'works = "rocker"\n',
    "tappet held": 'carried_in = "cambox"\n',
    "valve-cage cage": 'held_by = "block"\n',
    "valve-cage around": 'surrounds = "valve"\n',
    "valve-gear gear": 'in_block = "block"\n',
    "valve-seat seat": 'pressed_into = "block"\n',
    "valve-spindle spindle": 'moves = "valve"\n',
    "weldment weldment": 'makes = "block"\n',
    "steam-pipe pipe": 'starts_at.part = "block"\n',
    "lens-joint lens": 'of = "pipe"\n',
    "shaft shaft": "",
    "piston loose": "",
}
#: A pipe may join two blocks, so that it belongs to none; and a shaft and a piston that name nothing.
NONE = ("pipe", "lens", "shaft", "loose")


@pytest.mark.parametrize("part", [name.split()[1] for name in PARTS if "other" not in name])
def test_each_part_leads_to_its_block(tmp_path: Path, part: str) -> None:
    on = bench(tmp_path, PARTS, "block")
    found = block_of(on[part], on.sheet)
    assert (None if found is None else found.id) == (None if part in NONE else "block")


def test_a_lens_joint_on_a_block_is_of_it(tmp_path: Path) -> None:
    on = bench(tmp_path, PARTS | {"lens-joint lens": 'of = "block"\n'}, "block")
    found = block_of(on["lens"], on.sheet)
    assert found is on["block"]


def test_the_first_key_that_leads_to_a_block_counts(tmp_path: Path) -> None:
    on = bench(
        tmp_path,
        PARTS | {"stuffing-box box": 'in_cover = "cover"\nseals = "rod"\n', "piston piston": ""},
        "block",
    )
    found = block_of(on["box"], on.sheet)
    assert found is on["block"]
    assert block_of(on["rod"], on.sheet) is None
    assert on.silent == ["piston runs_in"]


def test_a_key_that_leads_to_no_block_leaves_it_to_the_next(tmp_path: Path) -> None:
    on = bench(tmp_path, PARTS | {"bolted-joint bolts": 'screwed_into = "shaft"\nholds = "cover"\n'}, "block")
    assert block_of(on["bolts"], on.sheet) is on["block"]


@pytest.mark.parametrize("link", ["chain.bore.of", "chain.piston.of", "closes.of"])
def test_a_chain_from_block_to_block_is_of_neither(tmp_path: Path, link: str) -> None:
    links = {"chain.bore.of": "block", "chain.piston.of": "piston", "closes.of": "rod"} | {link: "other"}
    text = "".join(f'{key} = "{part}"\n' for key, part in links.items())
    on = bench(tmp_path, PARTS | {"dimension-chain chain": text}, "block")
    assert block_of(on["chain"], on.sheet) is None


def test_what_moves_beside_a_part_may_be_of_another_block(tmp_path: Path) -> None:
    more = {
        "crosshead far": 'on_rod = "far-rod"\n',
        "piston-rod far-rod": 'carries = "far-piston"\n',
        "piston far-piston": 'runs_in = "far-liner"\n',
        "cylinder-liner far-liner": 'housed_in = "other"\n',
        "envelope envelope": 'around = "block"\ngaps.beside.to = "far"\ngaps.beside.chain = "chain"\n',
    }
    on = bench(tmp_path, PARTS | more, "block")
    ways = [(way.link.where.key, way.block.id) for way in ways_to_blocks(on["envelope"], on.sheet)]
    assert ways == [("around", "block"), ("gaps.beside.chain", "block")]


def test_springs_nested_in_one_another_are_not_followed_for_ever(tmp_path: Path) -> None:
    files = {"compression-spring one": 'nested_in = "two"\n', "compression-spring two": 'nested_in = "one"\n'}
    on = bench(tmp_path, files, "one", readable=False)
    with pytest.raises(NotAssessed):
        block_of(on["one"], on.sheet)


def test_every_link_that_leads_to_a_block_is_a_way(tmp_path: Path) -> None:
    more = {
        "cylinder-cover far": 'closes = "other"\n',
        "bolted-joint studs": 'duty = "duty"\nholds = "far"\nscrewed_into = "block"\nbolted_to = "pipe"\n',
        "duty duty": "",
    }
    on = bench(tmp_path, PARTS | more, "block")
    ways = [(way.link.where.key, way.block.id, way.itself) for way in ways_to_blocks(on["studs"], on.sheet)]
    assert ways == [("holds", "other", False), ("screwed_into", "block", True)]


def test_a_path_of_steam_may_go_on_into_another_block(tmp_path: Path) -> None:
    more = {
        "steam-passage next": 'in_block = "other"\nfollows = "passage"\n',
        "steam-pipe pipe": 'starts_at.part = "block"\njoined_to = "cover"\nfollows = "passage"\n',
    }
    on = bench(tmp_path, PARTS | more, "block")
    assert [way.block.id for way in ways_to_blocks(on["next"], on.sheet)] == ["other"]
    assert [way.link.where.key for way in ways_to_blocks(on["pipe"], on.sheet)] == ["starts_at.part"]
