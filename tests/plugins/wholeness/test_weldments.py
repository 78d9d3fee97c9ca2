"""Weldments: welds of each wall, use of each plate, cavities, the walls of divisions and partitions, in words."""

from __future__ import annotations

import pytest

from speclint.testing import DesignFolder
from tests.plugins.wholeness.engine import told

NO_PLACE = "not applicable: it has no such place"
#: What a weldment states: whether cavities were looked for, its plates, its walls and its joints.
SOUGHT, PLATES = "cavities_sought = true\n", "[plates.side]\n[plates.rib]\n"
WALL, SEAM = '[walls.side]\nplate = "side"\n', '[joints.seam]\nwall = "side"\nplate = "rib"\n'
UNUSED = "plate {} wants a wall or welded joint: none is there"


@pytest.mark.parametrize(
    ("lines", "says"),
    [
        (SOUGHT + PLATES + WALL + SEAM, ""),
        (
            SOUGHT + PLATES + WALL + SEAM + '[joints.second]\nwall = "side"',
            "",
        ),  # a wall may have several welds
        (
            SOUGHT + PLATES + WALL + SEAM + '[walls.second]\nplate = "side"',
            "wall second wants a welded joint: none is there",
        ),
        (
            SOUGHT + PLATES + WALL + '[joints.seam]\nplate = "rib"',
            "wall side wants a welded joint: none is there",
        ),
        (SOUGHT + PLATES + WALL + '[joints.seam]\nwall = "side"', UNUSED.format("rib")),
        (SOUGHT + PLATES + "[walls.side]\n" + SEAM, UNUSED.format("side")),
        (SOUGHT + PLATES + WALL + SEAM.replace("rib", "side"), UNUSED.format("rib")),
        (SOUGHT + PLATES + WALL.replace('"side"', '"rib"') + SEAM, UNUSED.format("side")),
        (PLATES + WALL + SEAM, "part wants a search for closed cavities: none is there"),
        (
            SOUGHT.replace("true", "false") + PLATES + WALL + SEAM,
            "part wants a search for closed cavities: none is there",
        ),
        (
            SOUGHT + '[walls.side]\n[joints.seam]\nwall = "side"',
            "part wants a statement of its plates: none is there",
        ),
        (
            SOUGHT + '[plates.rib]\n[joints.seam]\nplate = "rib"',
            "part wants a statement of its walls: none is there",
        ),
        (SOUGHT + "[plates.side]\n" + WALL, "part wants a statement of its joints: none is there"),
    ],
)
def test_walls_are_welded_and_plates_used(workshop: DesignFolder, lines: str, says: str) -> None:
    assert told(workshop, {"part": f'kind = "weldment"\n{lines}'}, "weldment.walls-joined", "part") == says


LIVE_TO_AIR = 'one_side = "live steam"\nother_side = "atmosphere"\n'
AIR_TO_LIVE = 'one_side = "atmosphere"\nother_side = "live steam"\n'
BELT = f"[divisions.belt]\n{LIVE_TO_AIR}"
#: Two walls of one plate, between live steam and the atmosphere and between exhaust steam and the atmosphere.
WELDMENT = (
    'kind = "weldment"\nmakes = "block"\n[plates.side]\n[plates.rib]\n'
    f'[walls.live]\nplate = "side"\n{LIVE_TO_AIR}'
    '[walls.exhaust]\nplate = "side"\none_side = "exhaust steam"\nother_side = "atmosphere"\n'
)
UNDRAWN = "division belt wants a wall of the weldment: none is there"


@pytest.mark.parametrize(
    ("divisions", "weldments", "says"),
    [
        (f'{BELT}wall = "live"', {"weldment": WELDMENT}, ""),
        (BELT, {"weldment": WELDMENT}, UNDRAWN),
        # by its plate it is the only wall between the same two fluids, whichever of them is named first
        (f'{BELT}plate = "side"', {"weldment": WELDMENT}, ""),
        (f'[divisions.belt]\n{AIR_TO_LIVE}plate = "side"', {"weldment": WELDMENT}, ""),
        (f'{BELT.replace("live steam", "cylinder")}plate = "side"', {"weldment": WELDMENT}, UNDRAWN),
        (
            f'{BELT}plate = "side"',
            {"weldment": WELDMENT + f'[walls.third]\nplate = "side"\n{AIR_TO_LIVE}'},
            UNDRAWN,
        ),
        (f'{BELT}plate = "rib"', {"weldment": WELDMENT}, UNDRAWN),
        (BELT, {"weldment": WELDMENT.replace('[walls.live]\nplate = "side"\n', "[walls.live]\n")}, UNDRAWN),
        (f'{BELT}ring_diameter = "600 mm"', {"weldment": WELDMENT}, NO_PLACE),
        (
            f'{BELT}wall = "live"\n[divisions.chest]\nwall = "live"',
            {"weldment": WELDMENT},
            "wall live of weldment is filled twice (division): division belt, division chest",
        ),
        (
            f'{BELT}wall = "live"\n[divisions.chest]\n{AIR_TO_LIVE}plate = "side"',
            {"weldment": WELDMENT},
            "wall live of weldment is filled twice (division): division belt, division chest",
        ),
        (f'{BELT}wall = "live"\nother_wall = "exhaust"', {"weldment": WELDMENT}, ""),
        (
            f'{BELT}wall = "live"\nother_wall = "live"',
            {"weldment": WELDMENT},
            "wall live of weldment is filled twice (division): division belt, division belt",
        ),
        (
            f'{BELT}wall = "live"\n[divisions.chest]\nwall = "exhaust"\nother_wall = "live"',
            {"weldment": WELDMENT},
            "wall live of weldment is filled twice (division): division belt, division chest",
        ),
        # whose walls they are nobody knows
        (BELT, {}, NO_PLACE),
        (BELT, {"weldment": WELDMENT, "second": WELDMENT}, NO_PLACE),
    ],
)
def test_a_division_is_one_wall(
    workshop: DesignFolder, divisions: str, weldments: dict[str, str], says: str
) -> None:
    parts = {"block": f'kind = "cylinder-block"\n{divisions}', **weldments}
    assert told(workshop, parts, "division.of-one-wall", "block") == says


def test_an_other_wall_is_told_in_a_draft_whose_first_wall_is_not_yet_named(workshop: DesignFolder) -> None:
    block = f'kind = "cylinder-block"\n{BELT}other_wall = "live"\n[divisions.chest]\nwall = "live"'
    said = told(workshop, {"block": block, "weldment": WELDMENT}, "division.of-one-wall", "block", "draft")
    assert said == "wall live of weldment is filled twice (division): division belt, division chest"


FACING = '[divisions.{}]\none_side = "live steam"\nother_side = "exhaust steam"\n'
PASSAGE = 'kind = "steam-passage"\nin_block = "block"\ncarries = "{}"'
WALLED = {
    "block": 'kind = "cylinder-block"\n' + FACING.format("belt"),
    "other": 'kind = "cylinder-block"',
    "chest": PASSAGE.format("live steam"),
    "belt": PASSAGE.format("exhaust steam"),
    "valve": 'kind = "poppet-valve"',
    "wall": 'kind = "partition"\nlive_side = "chest"\nexhaust_side = "belt"',
}
AT_VALVE = 'kind = "steam-passage"\nin_block = "block"\nvalve = "valve"'
WALL_GONE = "division belt wants a partition: none is there"


@pytest.mark.parametrize(
    ("parts", "says"),
    [
        ({}, ""),
        ({"wall": ""}, WALL_GONE),
        ({"block": WALLED["block"].replace("live", "exhaust"), "wall": ""}, NO_PLACE),
        ({"block": 'kind = "cylinder-block"\n[divisions.belt]\n' + AIR_TO_LIVE, "wall": ""}, NO_PLACE),
        (
            {
                "block": 'kind = "cylinder-block"\n[divisions.belt]\none_side = "exhaust steam"\n'
                'other_side = "live steam"',
                "wall": "",
            },
            WALL_GONE,
        ),
        (
            {"block": WALLED["block"] + FACING.format("chest")},
            "division belt, division chest wants a partition: 1 of 2 are there",
        ),
        ({"block": WALLED["block"] + FACING.format("chest"), "second": WALLED["wall"]}, ""),
        ({"second": WALLED["wall"]}, ""),
        # each side by what the passage there carries
        ({"chest": PASSAGE.format("exhaust steam")}, WALL_GONE),
        ({"belt": PASSAGE.format("live steam")}, WALL_GONE),
        ({"chest": PASSAGE.partition("\ncarries")[0]}, ""),
        ({"belt": PASSAGE.partition("\ncarries")[0]}, ""),
        # or by its valve, which goes before
        ({"chest": AT_VALVE, "valve": 'kind = "poppet-valve"\nserves = "inlet"'}, ""),
        ({"chest": AT_VALVE, "valve": 'kind = "poppet-valve"\nserves = "exhaust"'}, WALL_GONE),
        ({"belt": AT_VALVE, "valve": 'kind = "poppet-valve"\nserves = "exhaust"'}, ""),
        ({"belt": AT_VALVE, "valve": 'kind = "poppet-valve"\nserves = "inlet"'}, WALL_GONE),
        (
            {
                "belt": f'{AT_VALVE}\ncarries = "exhaust steam"',
                "valve": 'kind = "poppet-valve"\nserves = "inlet"',
            },
            WALL_GONE,
        ),
        (
            {"belt": f'{AT_VALVE}\ncarries = "live steam"'},
            WALL_GONE,
        ),  # of a valve that does not say what it serves
        ({"belt": f'{AT_VALVE}\ncarries = "exhaust steam"'}, ""),
        # a passage of another block, of none, and a side that is not stated
        ({"belt": WALLED["belt"].replace('"block"', '"other"')}, WALL_GONE),
        ({"chest": WALLED["chest"].replace('"block"', '"other"')}, WALL_GONE),
        ({"belt": WALLED["belt"].replace('in_block = "block"\n', "")}, ""),
        ({"chest": WALLED["chest"].replace('in_block = "block"\n', "")}, ""),
        ({"wall": 'kind = "partition"\nlive_side = "chest"'}, ""),
        ({"wall": 'kind = "partition"\nexhaust_side = "belt"'}, ""),
        ({"wall": 'kind = "partition"\nlive_side = "belt"'}, WALL_GONE),
        ({"wall": 'kind = "partition"\nexhaust_side = "chest"'}, WALL_GONE),
    ],
)
def test_a_partition_stands_between_live_and_exhaust_steam(
    workshop: DesignFolder, parts: dict[str, str], says: str
) -> None:
    assert told(workshop, {**WALLED, **parts}, "wall.partition-drawn", "block") == says
