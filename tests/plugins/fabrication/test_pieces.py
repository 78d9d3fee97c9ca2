"""Pieces that are welded into a block, such as a cast port: whether each is a part of its own."""

from __future__ import annotations

import pytest

from speclint import Grade
from speclint.testing import DesignFolder
from tests.plugins.fabrication import bench
from tests.plugins.fabrication.openings import (
    APART,
    BARREL,
    DRUM,
    FLAT,
    IN_WALL,
    INLET,
    PIECE,
    PORTS,
    REPLACED,
    ROW,
    with_inlet,
)
from tests.plugins.known_metals import WITH_METALS

CASTING = """
kind = "casting"
id = "casting-port"
title = "Live port, cast"
material = "cast-steel-GP240GH"
becomes = "passage-port"
inspection_document = "3.1"
pressure_part = true
first_datum = "seat"
first_machining = "edges planed from the seat face, 0.2 mm"
weld_preparation = "single V, 60 degrees, 2 mm face"
[faces.seat]
dimension = "120 mm"
allowance = "5 mm"
"""

PASSAGE = """
kind = "steam-passage"
id = "passage-port"
in_block = "block"
place = "chest"
carries = "live steam"
"""

BRANCH = INLET.replace('material = "known-plate"\n', 'branch = "passage-port"\n')


def _cast(workshop: DesignFolder, *changes: tuple[str, str], notes: str = "", wall: str = "") -> DesignFolder:
    text = CASTING
    for old, new in changes:
        assert old in text, old
        text = text.replace(old, new)
    weldment = bench.WELDMENT.replace('one_side = "live steam"', f'{wall}one_side = "live steam"') + DRUM
    files = {
        **bench.FILES,
        "block.toml": bench.BLOCK + BRANCH + notes,
        "weldment.toml": weldment,
        "casting.toml": text,
        "passage.toml": PASSAGE,
    }
    return workshop.write(files, settings=WITH_METALS)


def test_a_cast_port_is_a_part(workshop: DesignFolder) -> None:
    folder = _cast(workshop)
    check = folder.only(PIECE)
    assert check.outcome == "conforms", check.says
    assert folder.only(REPLACED).outcome == "conforms"
    assert with_inlet(workshop, opening="").only(PIECE).outcome == "not applicable"


@pytest.mark.parametrize(
    ("change", "outcome"),
    [
        (('inspection_document = "3.1"', 'inspection_document = "2.1"'), "finding"),
        (("pressure_part = true\n", ""), "finding"),
        (("pressure_part = true", "pressure_part = false"), "finding"),
        (('material = "cast-steel-GP240GH"', 'material = "known-iron"'), "not assessed"),
        (('inspection_document = "3.1"\n', ""), "not assessed"),
        (('first_datum = "seat"\n', ""), "not assessed"),
        (('allowance = "5 mm"\n', ""), "not assessed"),
        (('weld_preparation = "single V, 60 degrees, 2 mm face"\n', ""), "not assessed"),
        (('becomes = "passage-port"\n', ""), "not assessed"),
    ],
)
def test_a_port_that_is_not_a_part(workshop: DesignFolder, change: tuple[str, str], outcome: str) -> None:
    check = _cast(workshop, change).only(PIECE)
    assert (check.outcome, check.grade) == (outcome, Grade.HOLD)


@pytest.mark.parametrize(("carbon", "outcome"), [("0.249", "conforms"), ("0.251", "finding")])
def test_steel_that_is_welded_in_has_little_carbon(workshop: DesignFolder, carbon: str, outcome: str) -> None:
    """At most 0.25 %, by the upper end of its range."""
    made = _cast(workshop, ('material = "cast-steel-GP240GH"', 'material = "known-cast"'))
    metal = bench.PLATE.replace("known-plate", "known-cast").replace("C = [0, 0.2]", f"C = [0, {carbon}]")
    made.write({"metals.toml": bench.FILES["metals.toml"] + metal}, settings=WITH_METALS)
    assert made.only(PIECE).outcome == outcome


def test_what_is_welded_in_names_a_part(workshop: DesignFolder) -> None:
    check = with_inlet(workshop).only(PIECE)
    assert (check.outcome, check.grade) == ("finding", Grade.HOLD)
    exhaust = with_inlet(workshop, ('carries = "live steam"', 'carries = "exhaust steam"')).only(PIECE)
    assert exhaust.grade is Grade.NONCONFORMITY


@pytest.mark.parametrize(
    ("said", "outcome"), [("set in", "finding"), ("set on", "finding"), ("drilled", "not applicable")]
)
def test_what_is_set_in_or_on_is_welded(workshop: DesignFolder, said: str, outcome: str) -> None:
    assert with_inlet(workshop, ('set = "set in"', f'set = "{said}"')).only(PIECE).outcome == outcome


def test_no_pressure_part_where_a_wall_of_the_block_holds_it(workshop: DesignFolder) -> None:
    """A reason alone does not do, and a wall alone does not."""
    lining = ("pressure_part = true", "pressure_part = false")
    notes = '\n[notes]\ncasting-port = "a lining, with the chest wall round it"\n'
    wall = 'one_passage = "passage-port"\n'
    assert _cast(workshop, lining, notes=notes).only(PIECE).outcome == "finding"
    assert _cast(workshop, lining, wall=wall).only(PIECE).outcome == "finding"
    assert _cast(workshop, lining, notes=notes, wall=wall).only(PIECE).outcome == "conforms"


def test_the_reason_that_is_given_or_not_is_told(workshop: DesignFolder) -> None:
    lining = ("pressure_part = true", "pressure_part = false")
    notes = '\n[notes]\ncasting-port = "a lining, with the chest wall round it"\n'
    bare = (
        "casting-port takes live steam and is no pressure part: no reason is given, and no wall of the block"
    )
    assert bare in _cast(workshop, lining).only(PIECE).says
    given = "is no pressure part: a lining, with the chest wall round it, and no wall of the block is named for it"
    assert given in _cast(workshop, lining, notes=notes).only(PIECE).says


@pytest.mark.parametrize(
    ("carries", "grade"), [("live steam", Grade.HOLD), ("exhaust steam", Grade.NONCONFORMITY)]
)
def test_the_passage_that_is_welded_in_says_what_steam_it_carries(
    workshop: DesignFolder, carries: str, grade: Grade
) -> None:
    """The opening says live steam either way; the passage is asked first."""
    made = _cast(workshop, ('inspection_document = "3.1"', 'inspection_document = "2.1"'))
    made.write({"passage.toml": PASSAGE.replace('"live steam"', f'"{carries}"')}, settings=WITH_METALS)
    check = made.only(PIECE)
    assert (check.outcome, check.grade) == ("finding", grade)


def everything(workshop: DesignFolder) -> DesignFolder:
    """A block with a cast port, a row of holes, ports round its barrel and an opening in a flat wall."""
    bored = bench.BLOCK.replace("[ends.back]", '[ends.back]\nof_bore = "main"')
    in_wall = IN_WALL.replace("openings.inlet", "openings.hand-hole").replace('"300 mm"', '"47 mm"')
    files = {
        **bench.FILES,
        "block.toml": bored + BRANCH + 'to_next = "700 mm"\n' + in_wall + PORTS,
        "weldment.toml": bench.WELDMENT + DRUM + BARREL.replace('"9 mm"', '"38.5 mm"') + ROW,
        "casting.toml": CASTING,
        "passage.toml": PASSAGE,
    }
    return workshop.write(files, settings=WITH_METALS)


def test_each_opening_is_judged_by_its_own_rule(workshop: DesignFolder) -> None:
    folder = everything(workshop)
    for rule in (REPLACED, FLAT, APART, PIECE):
        check = folder.only(rule)
        assert check.outcome == "conforms", (rule, check.says)
