"""A steam path stays in one block: passages, valves and pipes."""

from __future__ import annotations

from pathlib import Path

import pytest

from speclint import Grade
from speclint.testing import DesignFolder

RULE = "path.of-one-block"
OTHER, FINE = ("finding", Grade.NONCONFORMITY), ("conforms", None)
FILES = {
    "one.toml": 'kind = "cylinder-block"',
    "two.toml": 'kind = "cylinder-block"',
    "supply.toml": 'kind = "steam-pipe"\nends_at.part = "one"',
    "chest.toml": 'kind = "steam-passage"\nin_block = "one"\nfollows = "supply"',
    "pocket.toml": 'kind = "steam-passage"\nin_block = "one"\nfollows = "chest"\nvalve = "valve"',
    "valve.toml": 'kind = "poppet-valve"\nupper_beat.seat = "upper"\nlower_beat.seat = "lower"',
    "upper.toml": 'kind = "valve-seat"\npressed_into = "one"',
    "lower.toml": 'kind = "valve-seat"\npressed_into = "one"',
    "exhaust.toml": 'kind = "steam-pipe"\nfollows = "chest"\nstarts_at.part = "one"',
}


@pytest.fixture
def design(tmp_path: Path) -> DesignFolder:
    return DesignFolder(tmp_path).write(FILES)


def outcome(design: DesignFolder, part: str) -> tuple[str, Grade | None]:
    found = design.only(RULE, part)
    return found.outcome, found.grade


@pytest.mark.parametrize("part", ["chest", "pocket", "exhaust"])
def test_all_in_one_block(design: DesignFolder, part: str) -> None:
    assert outcome(design, part) == FINE


@pytest.mark.parametrize(
    ("file", "old", "new", "part"),
    [
        ("supply.toml", '"one"', '"two"', "chest"),
        ("chest.toml", '"one"', '"two"', "chest"),
        ("chest.toml", '"one"', '"two"', "pocket"),
        ("chest.toml", '"one"', '"two"', "exhaust"),
        ("upper.toml", '"one"', '"two"', "pocket"),
        ("lower.toml", '"one"', '"two"', "pocket"),
        ("exhaust.toml", '"one"', '"two"', "exhaust"),
    ],
)
def test_one_step_in_another_block(design: DesignFolder, file: str, old: str, new: str, part: str) -> None:
    assert outcome(design.replace(file, old, new), part) == OTHER


@pytest.mark.parametrize(
    ("file", "old", "part"),
    [
        ("supply.toml", '\nends_at.part = "one"', "chest"),
        ("chest.toml", 'in_block = "one"\n', "chest"),
        ("exhaust.toml", '\nstarts_at.part = "one"', "exhaust"),
        ("exhaust.toml", 'follows = "chest"\n', "exhaust"),
    ],
)
def test_where_nothing_says_which_block(design: DesignFolder, file: str, old: str, part: str) -> None:
    assert outcome(design.replace(file, old, ""), part)[0] == "not applicable"
