"""The block and the weldment that makes it, from both sides."""

from __future__ import annotations

from pathlib import Path

import pytest

from speclint import Grade
from speclint.testing import DesignFolder

BLOCK = """
kind = "cylinder-block"
id = "block"
material = "plate-P355GH"
[bores.main]
diameter = "560 mm"
wall = "38 mm"
plate = "barrel"
[seat_bores.upper]
wall = "22 mm"
plate = "boss"
[openings]
inlet = { plate = "chest", flat_wall = "side" }
[divisions.chest]
thickness = "25 mm"
plate = "chest"
"""
WELDMENT = """
kind = "weldment"
id = "weldment"
makes = "block"
[plates.barrel]
material = "plate-P355GH"
thickness = "40 mm +1/-0.5"
corrosion_allowance = "1.5 mm"
[plates.boss]
material = "plate-P355GH"
thickness = "22 mm"
[plates.chest]
material = "plate-P355GH"
thickness = "25 mm +1/-0.5"
[walls.side]
plate = "chest"
one_side = "live steam"
other_side = "atmosphere"
[walls.apron]
plate = "chest"
one_side = "atmosphere"
other_side = "atmosphere"
[openings.row]
plate = "chest"
flat_wall = "apron"
[joints.corner]
on_pressure = true
wall = "side"
[joints.apron]
on_pressure = false
wall = "apron"
"""
HOLD, FINE = ("finding", Grade.HOLD), ("conforms", None)


@pytest.fixture
def design(tmp_path: Path) -> DesignFolder:
    return DesignFolder(tmp_path).write({"block.toml": BLOCK, "weldment.toml": WELDMENT})


@pytest.mark.parametrize(
    ("rule", "file", "old", "new", "ends"),
    [
        ("block.wall-of-plate", "block.toml", '"38 mm"', '"38 mm"', FINE),  # 39.5 less 1.5 mm
        ("block.wall-of-plate", "block.toml", '"38 mm"', '"38.1 mm"', HOLD),
        ("block.wall-of-plate", "block.toml", '"22 mm"', '"22.1 mm"', HOLD),
        ("block.wall-of-plate", "weldment.toml", '"1.5 mm"', '"1.6 mm"', HOLD),
        ("block.division-of-plate", "block.toml", '"25 mm"', '"25.1 mm"', FINE),
        ("block.division-of-plate", "block.toml", '"25 mm"', '"25.2 mm"', HOLD),
        ("block.metal-of-plates", "block.toml", '"plate-P355GH"', '"plate-P355GH"', FINE),
        ("block.metal-of-plates", "block.toml", '"plate-P355GH"', '"plate-P265GH"', HOLD),
        ("opening.plate-of-wall", "block.toml", 'plate = "chest", ', 'plate = "chest", ', FINE),
        ("opening.plate-of-wall", "block.toml", 'plate = "chest", ', 'plate = "boss", ', HOLD),
        ("opening.plate-of-wall", "block.toml", 'plate = "chest", ', "", FINE),
        ("opening.plate-of-wall", "weldment.toml", 'plate = "chest"\nflat', 'plate = "boss"\nflat', HOLD),
        ("weld.pressure-by-wall", "weldment.toml", "on_pressure = true", "on_pressure = true", FINE),
        ("weld.pressure-by-wall", "weldment.toml", "on_pressure = true", "on_pressure = false", HOLD),
    ],
)
def test_walls_and_metal(
    design: DesignFolder, rule: str, file: str, old: str, new: str, ends: tuple[str, Grade | None]
) -> None:
    found = design.replace(file, old, new).only(rule)
    assert (found.outcome, found.grade) == ends


_SHELL = '[plates.end]\nserves_as = "shell"\n'
_LIVE, _EXHAUST = 'carries = "live steam"', 'carries = "exhaust steam"'


def in_shells(first: str, second: str, shells: str = _SHELL, bore: str = "barrel") -> dict[str, str]:
    """A block with two openings, in a weldment with a round shell "end" beside its plates."""
    openings = f"[openings]\nin = {{ {first} }}\nout = {{ {second} }}\n"
    start, end = BLOCK.index("[openings]"), BLOCK.index("[divisions")
    block = BLOCK[:start].replace('plate = "barrel"', f'plate = "{bore}"') + openings + BLOCK[end:]
    return {"block.toml": block, "weldment.toml": WELDMENT + shells}


@pytest.mark.parametrize(
    ("files", "ends"),
    [
        (in_shells(f'plate = "end", {_LIVE}', f'plate = "end", {_LIVE}'), FINE),
        (in_shells(f'plate = "end", {_LIVE}', f'plate = "end", {_EXHAUST}'), HOLD),
        (in_shells(f'plate = "end", {_LIVE}', 'plate = "end"'), FINE),
        (in_shells(f'plate = "end", {_LIVE}', f'plate = "boss", {_EXHAUST}'), FINE),
        (in_shells(f'plate = "end", {_LIVE}', f'plate = "end", {_EXHAUST}', _SHELL, "end"), FINE),
        (
            in_shells(
                f'plate = "end", {_LIVE}',
                f'plate = "end", {_EXHAUST}',
                _SHELL.replace('"shell"', '"flange"'),
            ),
            FINE,
        ),
        (in_shells(f'flat_wall = "side", {_LIVE}', f'plate = "end", {_EXHAUST}'), FINE),
        (in_shells(f'flat_wall = "side", {_EXHAUST}', f'plate = "end", {_EXHAUST}'), HOLD),
        (in_shells(f'flat_wall = "apron", {_EXHAUST}', f'plate = "end", {_EXHAUST}'), FINE),
    ],
)
def test_an_opening_has_the_steam_of_its_wall_and_of_its_shell(
    tmp_path: Path, files: dict[str, str], ends: tuple[str, Grade | None]
) -> None:
    """Live steam is on one side of the wall "side", and air on both of "apron"; a barrel has both steams along it."""
    found = DesignFolder(tmp_path).write(files).only("opening.plate-of-wall")
    assert (found.outcome, found.grade) == ends


def test_a_block_that_names_no_plate_has_none_to_agree_with(design: DesignFolder) -> None:
    for plate in ("barrel", "boss", "chest"):
        design.replace("block.toml", f'plate = "{plate}"\n', "")
    for rule in ("block.wall-of-plate", "block.division-of-plate", "block.metal-of-plates"):
        assert design.only(rule).outcome == "not applicable"


@pytest.mark.parametrize(("metal", "ends"), [("plate-P355GH", FINE), ("structural-S355", HOLD)])
def test_a_seat_bore_in_a_flat_wall_is_of_the_metal_of_its_plate(
    design: DesignFolder, metal: str, ends: tuple[str, Grade | None]
) -> None:
    """It names the wall in which it is cut, and no plate."""
    design.replace("block.toml", 'plate = "boss"', 'flat_wall = "side"')
    old = '[plates.chest]\nmaterial = "plate-P355GH"'
    design.replace("weldment.toml", old, old.replace("plate-P355GH", metal))
    found = design.only("block.metal-of-plates")
    assert (found.outcome, found.grade) == ends


@pytest.mark.parametrize(
    ("joint", "holds", "ends"),
    [("corner", "true", FINE), ("corner", "false", HOLD), ("apron", "false", FINE)],
)
def test_a_wall_that_names_its_passage_need_not_say_what_is_in_it(
    design: DesignFolder, joint: str, holds: str, ends: tuple[str, Grade | None]
) -> None:
    chest = 'kind = "steam-passage"\nin_block = "block"\nplace = "chest"\ncarries = "live steam"\n'
    design.write({"block.toml": BLOCK, "weldment.toml": WELDMENT, "chest.toml": chest})
    design.replace("weldment.toml", 'one_side = "live steam"', 'one_passage = "chest"')
    held = {"corner": "true", "apron": "false"}[joint]
    old = f"[joints.{joint}]\non_pressure = {held}"
    design.replace("weldment.toml", old, f"[joints.{joint}]\non_pressure = {holds}")
    found = design.only("weld.pressure-by-wall")
    assert (found.outcome, found.grade) == ends


@pytest.mark.parametrize(
    ("side", "other", "meets", "ends"),
    [
        ("live steam", "atmosphere", "true", FINE),
        ("live steam", "atmosphere", "false", HOLD),
        ("atmosphere", "live steam", "false", HOLD),
        ("exhaust steam", "atmosphere", "false", HOLD),
        ("cylinder", "atmosphere", "false", HOLD),
        ("cylinder", "live steam", "true", FINE),
        ("atmosphere", "atmosphere", "false", ("not applicable", None)),
    ],
)
def test_a_plate_meets_the_steam_beside_its_wall(
    design: DesignFolder, side: str, other: str, meets: str, ends: tuple[str, Grade | None]
) -> None:
    old = 'one_side = "live steam"\nother_side = "atmosphere"'
    design.replace("weldment.toml", old, f'one_side = "{side}"\nother_side = "{other}"')
    design.replace("weldment.toml", "[plates.chest]", f"[plates.chest]\nmeets_steam = {meets}")
    found = design.only("plate.steam-by-wall")
    assert (found.outcome, found.grade) == ends


@pytest.mark.parametrize(("place", "carries"), [("port", ""), ("chest", 'carries = "live steam"\n')])
def test_a_plate_meets_the_steam_of_the_passage_that_its_wall_names(
    design: DesignFolder, place: str, carries: str
) -> None:
    """And of no side beside it that is stated."""
    passage = f'kind = "steam-passage"\nid = "way"\nin_block = "block"\nplace = "{place}"\n{carries}'
    design.write({"block.toml": BLOCK, "weldment.toml": WELDMENT, "way.toml": passage})
    design.replace("weldment.toml", 'one_side = "live steam"', 'one_passage = "way"')
    design.replace("weldment.toml", "[plates.chest]", "[plates.chest]\nmeets_steam = false")
    found = design.only("plate.steam-by-wall")
    assert (found.outcome, found.grade) == HOLD
    design.replace("weldment.toml", "meets_steam = false", "meets_steam = true")
    assert design.only("plate.steam-by-wall").outcome == "conforms"


def test_the_steam_beside_one_wall_says_nothing_of_another_plate(design: DesignFolder) -> None:
    design.replace("weldment.toml", "[plates.chest]", "[plates.chest]\nmeets_steam = true")
    design.replace("weldment.toml", "[plates.boss]", "[plates.boss]\nmeets_steam = false")
    assert design.only("plate.steam-by-wall").outcome == "conforms"
    design.replace("weldment.toml", '[walls.side]\nplate = "chest"', '[walls.side]\nplate = "boss"')
    assert design.only("plate.steam-by-wall").outcome == "finding"
