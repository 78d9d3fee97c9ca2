"""Which divisions a block must have beside its bores: of blocks drawn by their bores alone."""

from __future__ import annotations

from pathlib import Path

import pytest

from speclint_liners.inputs.neighbours import missing_divisions
from tests.facts.bench import bench

TWO = '[bores.a]\naxis_from_frame = "{}"\n[bores.b]\naxis_from_frame = "600 mm"\n'
BESIDE = '[divisions.one]\nbore = "a"\n[divisions.two]\nbore = "b"\n'


@pytest.mark.parametrize(
    ("block", "missing"),
    [
        ("[bores.a]\n", ["one beside bore a"]),
        ('[bores.a]\n[divisions.one]\nbore = "a"\n', []),  # of one bore nobody asks how far out it lies
        (TWO.format("350 mm") + BESIDE, ["one between bores a and b"]),
        (TWO.format("850 mm") + BESIDE, ["one between bores b and a"]),
        (TWO.format("350 mm") + '[divisions.one]\nbore = "b"\nother_bore = "a"\n', []),
        (
            TWO.format("350 mm") + '[divisions.one]\nbore = "b"\n',
            ["one beside bore a", "one between bores a and b"],
        ),
    ],
)
def test_a_division_beside_each_bore_and_between_two(tmp_path: Path, block: str, missing: list[str]) -> None:
    on = bench(tmp_path, {"cylinder-block block": block}, "block")
    assert missing_divisions(on["block"], on.sheet) == missing


SIDES = 'one_side = "live steam"\nother_side = "exhaust steam"\n'
LIVE, EXHAUST = '[seat_bores.i]\nserves = "inlet"\n', '[seat_bores.o]\nserves = "exhaust"\n'
BETWEEN = ["one between live steam and exhaust steam"]


@pytest.mark.parametrize(
    ("seats", "sides", "missing"),
    [
        (LIVE + EXHAUST, "", BETWEEN),
        (LIVE + EXHAUST, f"[divisions.two]\n{SIDES}", []),
        (LIVE + EXHAUST, '[divisions.two]\none_side = "live steam"\nother_side = "cylinder"\n', BETWEEN),
        (LIVE, "", []),
        (LIVE + "[seat_bores.unknown]\n", "", []),  # what lies beyond it is for the rules of seats to ask
    ],
)
def test_a_division_between_live_and_exhaust_steam_where_there_are_both(
    tmp_path: Path, seats: str, sides: str, missing: list[str]
) -> None:
    """Beside one between the bore and the open air, which divides neither from the other."""
    beside = '[bores.a]\n[divisions.one]\nbore = "a"\none_side = "cylinder"\nother_side = "atmosphere"\n'
    on = bench(tmp_path, {"cylinder-block block": beside + sides + seats}, "block")
    assert missing_divisions(on["block"], on.sheet) == missing


def test_of_three_bores_each_lies_next_to_its_neighbours_alone(tmp_path: Path) -> None:
    three = TWO.format("350 mm") + '[bores.c]\naxis_from_frame = "850 mm"\n'
    between = '[divisions.one]\nbore = "a"\nother_bore = "b"\n[divisions.two]\nbore = "b"\nother_bore = "c"\n'
    on = bench(tmp_path, {"cylinder-block block": three + between}, "block")
    assert missing_divisions(on["block"], on.sheet) == []
