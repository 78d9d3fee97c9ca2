"""Walls between two spaces of a block, as the weldment that makes it draws them."""

from __future__ import annotations

from pathlib import Path

import pytest

from speclint.facts import (
    build_of,
    gap_between,
    hollow_of,
    panels_of_division,
    panels_of_partition,
    partitions_in,
    sides_of_division,
    weldment_of,
)
from speclint.facts.dividing_walls import Panel, beyond_hollow, wall_named
from speclint.quantities import Measure
from speclint.rules import NotAssessed
from tests.facts.bench import Bench, bench

WELDMENT = """makes = "block"
[plates.p]
thickness = "20 mm"
material = "known-steel"
[cavities.c]
width = "30 mm"
[walls.a]
plate = "p"
short = "300 mm"
long = "400 mm"
edges = "clamped"
one_side = "live steam"
other_side = "atmosphere"
[walls.b]
plate = "p"
one_side = "atmosphere"
other_side = "exhaust steam"
"""
PARTITION = 'live_side = "chest"\nexhaust_side = "belt"\n'


def sizes(panel: Panel) -> tuple[str, ...]:
    """Thickness, short and long side as they are written."""
    return tuple(one.text for one in (panel.thickness, panel.short, panel.long) if isinstance(one, Measure))


def drawn(
    folder: Path, division: str = "", partition: str = "", weldment: str = WELDMENT, **more: str
) -> Bench:
    files = {
        "cylinder-block block": "[divisions.d]\n" + division,
        "steam-passage chest": 'in_block = "block"\nplace = "chest"\ncarries = "live steam"\n',
        "steam-passage belt": 'in_block = "block"\nplace = "belt"\ncarries = "exhaust steam"\n',
        "steam-passage port": 'in_block = "block"\nplace = "port"\ncarries = "live steam"\n',
        "steam-passage drifting": 'in_block = "block"\nplace = "breathing way"\n',
        "steam-passage bare": 'in_block = "block"\ncarries = "live steam"\n',
        "partition partition": PARTITION + partition,
    }
    files |= {"weldment weldment": weldment} if weldment else {}
    files |= {f"partition {name}": text for name, text in more.items()}
    return bench(folder, files, "block", metals=True)


def test_the_weldment_of_a_block_is_that_which_makes_it(tmp_path: Path) -> None:
    on = drawn(tmp_path)
    assert weldment_of(on["block"], on.sheet) is on["weldment"]
    (tmp_path / "a").mkdir()
    bare = drawn(tmp_path / "a", weldment="")
    assert weldment_of(bare["block"], bare.sheet) is None


def test_a_wall_that_is_named_is_one_of_the_weldment(tmp_path: Path) -> None:
    on = drawn(tmp_path, 'wall = "a"\n')
    division = on["block"].divisions["d"]
    assert wall_named(division.wall, on["block"], on.sheet) == (on["weldment"], on["weldment"].walls["a"])
    assert wall_named(division.other_wall, on["block"], on.sheet) is None


def test_a_wall_or_a_hollow_without_a_weldment_is_not_assessed(tmp_path: Path) -> None:
    on = drawn(tmp_path, 'wall = "a"\n', 'cavity = "c"\n', weldment="")
    with pytest.raises(NotAssessed, match="no weldment is stated that makes block"):
        wall_named(on["block"].divisions["d"].wall, on["block"], on.sheet)
    with pytest.raises(NotAssessed, match="no weldment is stated that makes block"):
        hollow_of(on["partition"], on.sheet)


@pytest.mark.parametrize(
    ("division", "sides"),
    [
        ('one_side = "cylinder"\nother_side = "atmosphere"\n', ("cylinder", "atmosphere")),
        ('wall = "a"\n', ("live steam", "atmosphere")),
        ('wall = "a"\nother_wall = "b"\n', ("live steam", "exhaust steam")),
    ],
)
def test_the_sides_of_a_division_are_those_of_its_walls(
    tmp_path: Path, division: str, sides: tuple[str, str]
) -> None:
    on = drawn(tmp_path, division)
    assert sides_of_division(on["block"].divisions["d"], on["block"], on.sheet) == sides


@pytest.mark.parametrize(
    ("passage", "fluid"),
    [
        ("chest", "live steam"),
        ("belt", "exhaust steam"),
        ("port", "cylinder"),
        ("drifting", "cylinder"),
        ("bare", "live steam"),
    ],
)
def test_the_fluid_on_a_side_is_that_of_the_passage_there(tmp_path: Path, passage: str, fluid: str) -> None:
    """Whatever the wall says of that side itself: the other one has the air of the hollow."""
    text = WELDMENT.replace(
        'one_side = "live steam"', f'one_side = "exhaust steam"\none_passage = "{passage}"'
    )
    on = drawn(tmp_path, weldment=text)
    assert beyond_hollow(on["weldment"].walls["a"], on.sheet) == fluid


@pytest.mark.parametrize(("passage", "fluid"), [("belt", "exhaust steam"), ("port", "cylinder")])
def test_so_is_that_on_the_other_side(tmp_path: Path, passage: str, fluid: str) -> None:
    text = WELDMENT.replace(
        'other_side = "exhaust steam"', f'other_side = "live steam"\nother_passage = "{passage}"'
    )
    on = drawn(tmp_path, weldment=text)
    assert beyond_hollow(on["weldment"].walls["b"], on.sheet) == fluid


def test_a_division_is_the_wall_that_it_names_or_as_it_states(tmp_path: Path) -> None:
    on = drawn(tmp_path, 'wall = "a"\nthickness = "9 mm"\nspan = "100 mm"\n')
    (panel,) = panels_of_division(on["block"].divisions["d"], on["block"], on.sheet)
    assert sizes(panel) == ("20 mm", "300 mm", "400 mm")
    assert panel.plate is on["weldment"].plates["p"]
    assert panel.sides == ("live steam", "atmosphere")


SIDES = 'one_side = "{}"\nother_side = "{}"\n'
OWN = 'thickness = "9 mm"\nspan = "100 mm"\nlength = "200 mm"\n'


@pytest.mark.parametrize(("plate", "thickness"), [("", "9 mm"), ('plate = "p"\n', "20 mm")])
def test_a_division_without_a_wall_is_cut_from_its_plate(tmp_path: Path, plate: str, thickness: str) -> None:
    on = drawn(tmp_path, SIDES.format("cylinder", "live steam") + OWN + plate)
    (panel,) = panels_of_division(on["block"].divisions["d"], on["block"], on.sheet)
    assert sizes(panel) == (thickness, "100 mm", "200 mm")
    assert (panel.plate is not None) == bool(plate)
    assert panel.edges is None
    assert panel.sides == ("cylinder", "live steam")


@pytest.mark.parametrize("sides", [("live steam", "atmosphere"), ("atmosphere", "live steam")])
def test_a_division_between_the_fluids_of_a_wall_is_to_name_it(
    tmp_path: Path, sides: tuple[str, str]
) -> None:
    on = drawn(tmp_path, SIDES.format(*sides) + OWN)
    with pytest.raises(NotAssessed, match=r"divisions\.d\.wall is to name the flat wall of weldment"):
        panels_of_division(on["block"].divisions["d"], on["block"], on.sheet)


def test_a_curved_division_is_none_of_the_flat_walls(tmp_path: Path) -> None:
    on = drawn(tmp_path, SIDES.format("live steam", "atmosphere") + OWN + 'ring_diameter = "500 mm"\n')
    assert len(panels_of_division(on["block"].divisions["d"], on["block"], on.sheet)) == 1


def test_a_partition_has_the_walls_that_it_names(tmp_path: Path) -> None:
    on = drawn(tmp_path, partition='wall = "a"\nother_wall = "b"\n')
    first, second = panels_of_partition(on["partition"], on.sheet)
    assert first.sides == ("live steam", "atmosphere")
    assert second.sides == ("atmosphere", "exhaust steam")
    assert build_of(on["partition"], on.sheet) == "two walls"


@pytest.mark.parametrize(
    ("metal", "weldment", "refused"),
    [
        ("known-steel", WELDMENT, True),
        ("known-iron", WELDMENT, False),
        ("known-steel", WELDMENT.partition("[walls.a]")[0], False),
        ("known-steel", "", False),
    ],
)
def test_a_partition_of_plate_is_to_name_its_wall(
    tmp_path: Path, metal: str, weldment: str, refused: bool
) -> None:
    """A cast wall is no plate of the weldment, and where no flat wall is listed there is none to be named."""
    text = f'material = "{metal}"\nthickness = "9 mm"\nshort_side = "100 mm"\nlong_side = "200 mm"\n'
    on = drawn(tmp_path, partition=text, weldment=weldment)
    if refused:
        with pytest.raises(NotAssessed, match="wall is to name the flat wall of weldment"):
            panels_of_partition(on["partition"], on.sheet)
        return
    (panel,) = panels_of_partition(on["partition"], on.sheet)
    assert sizes(panel) == ("9 mm", "100 mm", "200 mm")
    assert panel.sides == ("live steam", "exhaust steam")


@pytest.mark.parametrize(
    ("partition", "build"),
    [
        ('build = "two walls"\n', "two walls"),
        ('build = "two walls"\nwall = "a"\n', "single wall"),
        ('build = "single wall"\nwall = "a"\nother_wall = "b"\n', "two walls"),
    ],
)
def test_a_partition_is_built_as_the_walls_that_it_names(tmp_path: Path, partition: str, build: str) -> None:
    on = drawn(tmp_path, partition=partition)
    assert build_of(on["partition"], on.sheet) == build


@pytest.mark.parametrize(
    ("partition", "weldment", "gap"),
    [
        ('gap = "25 mm"\n', WELDMENT, "25 mm"),
        ('gap = "25 mm"\ncavity = "c"\n', WELDMENT, "30 mm"),
        ('gap = "25 mm"\ncavity = "c"\n', WELDMENT.replace('width = "30 mm"\n', ""), "25 mm"),
    ],
)
def test_the_gap_between_two_walls_is_the_width_of_the_hollow(
    tmp_path: Path, partition: str, weldment: str, gap: str
) -> None:
    on = drawn(tmp_path, partition=partition, weldment=weldment)
    assert getattr(gap_between(on["partition"], on.sheet), "text", "") == gap


def test_a_partition_that_two_passages_share_counts_once(tmp_path: Path) -> None:
    on = drawn(tmp_path, second='live_side = "port"\n')
    assert [one.id for one in partitions_in(on["block"], on.sheet)] == ["partition", "second"]
