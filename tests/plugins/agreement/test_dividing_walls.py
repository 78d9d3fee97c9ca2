"""Walls between two spaces, drawn once: each agreement from both sides, and that no wrong copy eases a hold."""

from __future__ import annotations

from pathlib import Path

import pytest

from speclint import Grade
from speclint.testing import DesignFolder
from tests.plugins.known_metals import WITH_METALS
from tests.plugins.liners.bench import bench
from tests.plugins.steamways.test_partitions import files as ways_with_wall

HOLD, FINE = ("finding", Grade.HOLD), ("conforms", None)

BLOCK = """
kind = "cylinder-block"
id = "block"
material = "plate-P355GH"
[seat_bores.upper]
plate = "boss"
[pads.front]
plate = "boss"
[divisions.single]
wall = "between"
thickness = "25 mm"
plate = "chest"
span = "180 mm"
length = "420 mm"
one_side = "exhaust steam"
other_side = "live steam"
[divisions.double]
wall = "chest"
other_wall = "belt"
thickness = "16 mm"
span = "180 mm"
length = "420 mm"
one_side = "live steam"
other_side = "exhaust steam"
"""
WELDMENT = """
kind = "weldment"
id = "weldment"
makes = "block"
[plates.chest]
material = "plate-P355GH"
thickness = "25 mm"
[plates.thin]
material = "plate-P355GH"
thickness = "16 mm"
[plates.belt]
material = "plate-P355GH"
thickness = "18 mm"
[plates.boss]
material = "plate-P355GH"
thickness = "60 mm"
[walls.between]
plate = "chest"
short = "180 mm"
long = "420 mm"
edges = "clamped"
one_side = "live steam"
other_side = "exhaust steam"
[walls.chest]
plate = "thin"
short = "180 mm"
long = "420 mm"
edges = "clamped"
one_passage = "chest"
one_side = "live steam"
other_side = "atmosphere"
[walls.belt]
plate = "belt"
short = "180 mm"
long = "420 mm"
edges = "clamped"
one_side = "atmosphere"
other_passage = "belt"
other_side = "exhaust steam"
[walls.port]
plate = "belt"
one_passage = "port"
one_side = "cylinder"
other_side = "atmosphere"
[cavities.between]
width = "12 mm"
vented_for_treatment = true
vented_in_service = true
"""
PARTITION = """
kind = "partition"
id = "partition"
material = "plate-P355GH"
live_side = "chest"
exhaust_side = "belt"
wall = "chest"
other_wall = "belt"
cavity = "between"
build = "two walls"
thickness = "16 mm"
gap = "12 mm"
short_side = "180 mm"
long_side = "420 mm"
edges = "clamped"
"""
PASSAGE = """
kind = "steam-passage"
id = "{name}"
in_block = "block"
place = "{place}"
carries = "{steam}"
"""
PLACES = {
    "chest": ("chest", "live steam"),
    "belt": ("belt", "exhaust steam"),
    "port": ("port", "live steam"),
    "pocket": ("valve pocket", "live steam"),
}


def walled() -> dict[str, str]:
    ways = {
        f"{name}.toml": PASSAGE.format(name=name, place=place, steam=steam)
        for name, (place, steam) in PLACES.items()
    }
    return {"block.toml": BLOCK, "weldment.toml": WELDMENT, "partition.toml": PARTITION, **ways}


@pytest.fixture
def design(tmp_path: Path) -> DesignFolder:
    return DesignFolder(tmp_path).write(walled())


SINGLE, DOUBLE = 'wall = "between"\nthickness = "25 mm"', 'other_wall = "belt"\nthickness = "16 mm"'


@pytest.mark.parametrize(
    ("old", "new", "ends"),
    [
        (SINGLE, SINGLE, FINE),
        (SINGLE, SINGLE.replace("25", "25.1"), FINE),
        (SINGLE, SINGLE.replace("25", "25.2"), HOLD),
        (SINGLE, SINGLE.replace("between", "chest"), HOLD),
        ('plate = "chest"\nspan = "180 mm"', 'plate = "chest"\nspan = "179.8 mm"', HOLD),
        ('plate = "chest"\nspan', 'plate = "thin"\nspan', HOLD),
        ('"420 mm"\none_side = "exhaust steam"', '"419 mm"\none_side = "exhaust steam"', HOLD),
        ('one_side = "exhaust steam"', 'one_side = "atmosphere"', HOLD),
        ('other_side = "live steam"', 'other_side = "cylinder"', HOLD),
        (DOUBLE, DOUBLE.replace("16", "18"), HOLD),
        ('other_wall = "belt"', 'other_wall = "chest"', HOLD),
    ],
)
def test_a_division_is_the_walls_that_it_names(
    design: DesignFolder, old: str, new: str, ends: tuple[str, Grade | None]
) -> None:
    """One plate of 25 mm, and two of 16 and 18 mm, the thinner of which the division states."""
    found = design.replace("block.toml", old, new).only("wall.drawn-once", "block")
    assert (found.outcome, found.grade) == ends


@pytest.mark.parametrize(
    ("one", "other", "ends"),
    [
        ("", "live steam", FINE),
        ("", "exhaust steam", FINE),
        ("", "atmosphere", HOLD),
        ("live steam", "", FINE),
        ("exhaust steam", "", FINE),
        ("atmosphere", "", HOLD),
        ("live steam", "exhaust steam", FINE),
        ("live steam", "live steam", HOLD),
        ("exhaust steam", "exhaust steam", HOLD),
    ],
)
def test_a_wall_has_both_of_its_fluids_in_either_order(
    design: DesignFolder, one: str, other: str, ends: tuple[str, Grade | None]
) -> None:
    """Live steam on the one side and exhaust steam on the other, from whichever side the division is looked at."""
    stated = "".join(
        f'{side} = "{fluid}"\n' for side, fluid in (("one_side", one), ("other_side", other)) if fluid
    )
    design.replace("block.toml", 'one_side = "exhaust steam"\nother_side = "live steam"\n', stated)
    found = design.only("wall.drawn-once", "block")
    assert (found.outcome, found.grade) == ends


@pytest.mark.parametrize(("one", "ends"), [("chest", FINE), ("pocket", HOLD)])
def test_a_partition_and_its_wall_name_one_passage(
    design: DesignFolder, one: str, ends: tuple[str, Grade | None]
) -> None:
    """Chest and pocket both hold live steam: only their names tell that the wall is not that of the partition."""
    design.replace("weldment.toml", 'one_passage = "chest"', f'one_passage = "{one}"')
    found = design.only("wall.drawn-once", "partition")
    assert (found.outcome, found.grade) == ends
    if ends == HOLD:
        assert found.says.startswith('live side "chest" (partition.toml:')
        assert 'walls chest of weldment "pocket" (weldment.toml:' in found.says


@pytest.mark.parametrize(
    ("file", "old", "new", "ends"),
    [
        ("partition.toml", '"16 mm"', '"16.1 mm"', FINE),
        ("partition.toml", '"16 mm"', '"25 mm"', HOLD),
        ("partition.toml", '"12 mm"', '"12.2 mm"', HOLD),
        ("weldment.toml", '"12 mm"', '"11.8 mm"', HOLD),
        ("partition.toml", '"two walls"', '"single wall"', HOLD),
        ("partition.toml", 'other_wall = "belt"\n', "", HOLD),
        ("partition.toml", '"180 mm"', '"150 mm"', HOLD),
        ("partition.toml", '"420 mm"', '"400 mm"', HOLD),
        ("partition.toml", '"clamped"', '"supported"', HOLD),
        ("partition.toml", '"plate-P355GH"', '"plate-P265GH"', HOLD),
        ("partition.toml", 'live_side = "chest"', 'live_side = "belt"', HOLD),
        ("partition.toml", 'exhaust_side = "belt"', 'exhaust_side = "port"', HOLD),
        ("partition.toml", 'live_side = "chest"', 'live_side = "pocket"', HOLD),
        ("partition.toml", '\nwall = "chest"', '\nwall = "port"', HOLD),
    ],
)
def test_a_partition_is_the_walls_that_it_names(
    design: DesignFolder, file: str, old: str, new: str, ends: tuple[str, Grade | None]
) -> None:
    if 'wall = "port"' in new:
        design.replace(
            "weldment.toml",
            "[walls.port]\n",
            '[walls.port]\nshort = "180 mm"\nlong = "420 mm"\nedges = "clamped"\n',
        )
    found = design.replace(file, old, new).only("wall.drawn-once", "partition")
    assert (found.outcome, found.grade) == ends


def test_a_partition_of_plate_in_a_weldment_is_to_name_its_wall(design: DesignFolder) -> None:
    """One of iron is a casting of its own, and no wall of the weldment: of it the steam on both sides is compared."""
    for key in ('\nwall = "chest"', '\nother_wall = "belt"'):
        design.replace("partition.toml", key, "")
    found = design.only("wall.drawn-once", "partition")
    assert found.outcome == "not assessed"
    assert "is to name the flat wall of weldment" in found.says
    design.replace("partition.toml", '"plate-P355GH"', '"grey-iron-250"')
    assert design.only("wall.drawn-once", "partition").outcome == "conforms"
    design.replace("partition.toml", 'live_side = "chest"', 'live_side = "belt"')
    assert design.only("wall.drawn-once", "partition").outcome == "finding"


@pytest.mark.parametrize(
    ("old", "new", "ends"),
    [
        ('one_passage = "chest"\n', 'one_passage = "chest"\n', FINE),
        (
            'one_passage = "chest"\none_side = "live steam"',
            'one_passage = "chest"\none_side = "atmosphere"',
            HOLD,
        ),
        ('other_side = "exhaust steam"\n[walls.port]', 'other_side = "atmosphere"\n[walls.port]', HOLD),
        ('one_side = "cylinder"', 'one_side = "live steam"', HOLD),
    ],
)
def test_a_side_is_what_its_passage_holds(
    design: DesignFolder, old: str, new: str, ends: tuple[str, Grade | None]
) -> None:
    """A port holds what is in the cylinder."""
    found = design.replace("weldment.toml", old, new).only("wall.sides-by-passage")
    assert (found.outcome, found.grade) == ends


@pytest.mark.parametrize(
    ("serves", "one", "other", "ends"),
    [
        ("inlet", "live steam", "cylinder", FINE),
        ("inlet", "cylinder", "live steam", FINE),
        ("exhaust", "exhaust steam", "cylinder", FINE),
        ("inlet", "live steam", "exhaust steam", HOLD),
        ("inlet", "live steam", "atmosphere", HOLD),
        ("inlet", "atmosphere", "cylinder", HOLD),
        ("exhaust", "live steam", "cylinder", HOLD),
    ],
)
def test_a_wall_with_seats_stands_between_steam_and_cylinder(
    workshop: DesignFolder, serves: str, one: str, other: str, ends: tuple[str, Grade | None]
) -> None:
    block = f'''
kind = "cylinder-block"
id = "block"
[seat_bores.lower]
flat_wall = "seats"
serves = "{serves}"
'''
    weldment = f'''
kind = "weldment"
id = "weldment"
makes = "block"
[walls.seats]
one_side = "{one}"
other_side = "{other}"
'''
    found = workshop.write({"block.toml": block, "weldment.toml": weldment}).only("wall.sides-by-passage")
    assert (found.outcome, found.grade) == ends


@pytest.mark.parametrize(("carries", "ends"), [("live steam", FINE), ("exhaust steam", HOLD)])
def test_a_wall_with_seats_that_names_its_passage_is_held_by_what_that_carries(
    workshop: DesignFolder, carries: str, ends: tuple[str, Grade | None]
) -> None:
    """A wall that names the passage before its seats need not say what is on that side."""
    files = {
        "block.toml": 'kind = "cylinder-block"\n[seat_bores.lower]\nflat_wall = "seats"\nserves = "inlet"\n',
        "pocket.toml": f'kind = "steam-passage"\nin_block = "block"\nplace = "passage"\ncarries = "{carries}"\n',
        "weldment.toml": (
            'kind = "weldment"\nmakes = "block"\n[walls.seats]\none_passage = "pocket"\nother_side = "cylinder"\n'
        ),
    }
    found = workshop.write(files).only("wall.sides-by-passage")
    assert (found.outcome, found.grade) == ends


@pytest.mark.parametrize(("metal", "ends"), [("plate-P355GH", FINE), ("plate-P265GH", HOLD)])
def test_seat_bores_and_pads_are_of_the_metal_of_their_plates(
    design: DesignFolder, metal: str, ends: tuple[str, Grade | None]
) -> None:
    design.replace(
        "weldment.toml", '[plates.boss]\nmaterial = "plate-P355GH"', f'[plates.boss]\nmaterial = "{metal}"'
    )
    found = design.only("block.metal-of-plates")
    assert (found.outcome, found.grade) == ends


PLATES = """
kind = "weldment"
id = "weldment"
makes = "block"
[plates.chest]
material = "{metal}"
thickness = "20 mm"
corrosion_allowance = "1 mm"
[walls.between]
plate = "chest"
short = "{short}"
long = "{long}"
edges = "{edges}"
one_side = "live steam"
other_side = "exhaust steam"
"""


def test_no_copy_eases_the_walls_between_bores(tmp_path: Path) -> None:
    """One division of 20 mm, 200 by 600 mm: as its weldment draws it, whatever the block's spec says of it."""
    welded = PLATES.format(metal="plate-P355GH", short="200 mm", long="600 mm", edges="clamped")
    design = DesignFolder(tmp_path).write({**bench(), "weldment.toml": welded})
    unnamed = design.only("cylinder.between-bores")
    assert (unnamed.outcome, unnamed.grade) == ("not assessed", Grade.HOLD)
    assert "is to name the flat wall of weldment" in unnamed.says
    design.replace("block.toml", "[divisions.chest]\n", '[divisions.chest]\nwall = "between"\n')
    drawn = design.only("cylinder.between-bores").utilisation
    assert drawn is not None
    for old, new in (
        ('thickness = "20 mm"\nas_made = "20 mm"', 'thickness = "90 mm"\nas_made = "90 mm"'),
        ('span = "200 mm"', 'span = "50 mm"'),
        ('other_side = "exhaust steam"', 'other_side = "live steam"'),
    ):
        design.replace("block.toml", old, new)
        assert design.only("cylinder.between-bores").utilisation == drawn
    supported = PLATES.format(metal="plate-P355GH", short="200 mm", long="600 mm", edges="supported")
    worse = design.write({**bench(), "weldment.toml": supported})
    worse.replace("block.toml", "[divisions.chest]\n", '[divisions.chest]\nwall = "between"\n')
    assert (worse.only("cylinder.between-bores").utilisation or 0) > drawn


@pytest.mark.parametrize(
    ("old", "new"),
    [
        ('thickness = "20 mm"', 'thickness = "90 mm"'),
        ('short_side = "180 mm"', 'short_side = "60 mm"'),
        ('edges = "clamped"', 'edges = "supported"'),
        ('build = "single wall"', 'build = "two walls"'),
    ],
)
def test_no_copy_eases_a_partition(workshop: DesignFolder, old: str, new: str) -> None:
    """One wall of 20 mm, 180 by 360 mm, clamped, in the weldment."""
    welded = PLATES.format(metal="wall-steel", short="180 mm", long="360 mm", edges="clamped")
    named = ('exhaust_side = "belt"\n', 'exhaust_side = "belt"\nwall = "between"\n')
    workshop.write({**ways_with_wall(named), "weldment.toml": welded}, settings=WITH_METALS)
    drawn = workshop.only("partition.stress")
    assert drawn.utilisation is not None
    workshop.replace("wall.toml", old, new)
    copied = workshop.only("partition.stress")
    assert (copied.outcome, copied.utilisation) == (drawn.outcome, drawn.utilisation)


def test_both_walls_of_a_partition_stand_against_an_empty_gap(workshop: DesignFolder) -> None:
    """20 mm less 1 of corrosion beside steam of 16.6 bar: 0.4974 × 1.66 × 180²/19² = 74.10 MPa; the hollow is open.

    The exhaust side is tested at 1 bar, by which its wall is bent the less.
    """
    welded = PLATES.format(metal="wall-steel", short="180 mm", long="360 mm", edges="clamped")
    welded = welded.replace('other_side = "exhaust steam"', 'other_side = "atmosphere"') + (
        '[walls.belt]\nplate = "chest"\nshort = "180 mm"\nlong = "360 mm"\nedges = "clamped"\n'
        'one_side = "exhaust steam"\nother_side = "atmosphere"\n[cavities.between]\nwidth = "8 mm"\n'
    )
    named = (
        'exhaust_side = "belt"\n',
        'exhaust_side = "belt"\nwall = "between"\nother_wall = "belt"\ncavity = "between"\n',
    )
    workshop.write({**ways_with_wall(named), "weldment.toml": welded}, settings=WITH_METALS)
    workshop.replace("duty.toml", "[cases.test]", '[cases.test]\nexhaust_pressure = "1 bar gauge"')
    found = workshop.only("partition.stress")
    assert found.outcome == "conforms"
    bent = [float(step.value) for step in found.steps if step.symbol == "σ_p"]
    assert max(bent) / 1e6 == pytest.approx(0.4974 * 1.66 * 180**2 / 19**2, rel=1e-4)


@pytest.mark.parametrize(
    ("named", "outcome"),
    [('cavity = "between"\n', "conforms"), ("", "not assessed"), ('cavity = "other"\n', "not assessed")],
)
def test_the_hollow_of_two_walls_is_listed(design: DesignFolder, named: str, outcome: str) -> None:
    design.replace("partition.toml", 'cavity = "between"\n', named)
    design.replace("weldment.toml", 'makes = "block"\n', 'makes = "block"\ncavities_sought = true\n')
    readable = "other" not in named  # else it is told when the design is read
    assert design.only("block.closed-cavities", readable=readable).outcome == outcome
    design.replace("partition.toml", 'other_wall = "belt"\n', "")
    assert design.only("block.closed-cavities", readable=readable).outcome == outcome
