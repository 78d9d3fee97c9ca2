"""Which passages of a block belong to one stream of exhaust, by what follows what."""

from __future__ import annotations

from pathlib import Path

from speclint_steamways.inputs.streams import streams_of
from tests.facts.bench import bench

_PASSAGE = 'in_block = "block"\nplace = "chest"\ncarries = "exhaust steam"\n'
PARTS = {
    "cylinder-block block": "",
    "steam-passage one": _PASSAGE,
    "steam-passage two": _PASSAGE,
    "steam-passage dead": _PASSAGE,
    "steam-pipe of-one": 'follows = "one"\n',
    "steam-pipe of-two": 'follows = "two"\n',
}


def streams(folder: Path, parts: dict[str, str]) -> list[list[str]]:
    on = bench(folder, parts, "block")
    return [[passage.id for passage in stream.passages] for stream in streams_of(on["block"], on.sheet)]


def test_a_passage_that_leads_nowhere_counts_with_each_stream_and_is_none(tmp_path: Path) -> None:
    assert streams(tmp_path, PARTS) == [["dead", "one"], ["dead", "two"]]


def test_with_one_way_out_all_passages_are_one_stream(tmp_path: Path) -> None:
    less = {name: text for name, text in PARTS.items() if "two" not in name}
    assert streams(tmp_path, less) == [["dead", "one"]]


def test_steam_that_comes_back_by_a_pipe_is_a_stream_of_its_own(tmp_path: Path) -> None:
    """Outside the block it meets other walls: what follows the pipe is not the stream before it."""
    again = {
        "steam-passage again": f'{_PASSAGE}follows = "of-one"\n',
        "blast-nozzle nozzle": 'follows = "again"\n',
    }
    found = streams(tmp_path, PARTS | again)
    assert sorted(found) == [["dead", "again"], ["dead", "one"], ["dead", "two"]]


def test_passages_one_behind_the_other_are_one_stream(tmp_path: Path) -> None:
    """Its pipe leaves from the second of them."""
    behind = {
        "steam-passage behind": f'{_PASSAGE}follows = "one"\n',
        "steam-pipe of-one": 'follows = "behind"\n',
    }
    found = streams(tmp_path, PARTS | behind)
    assert sorted(map(sorted, found)) == [["behind", "dead", "one"], ["dead", "two"]]
