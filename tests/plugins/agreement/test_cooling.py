"""duty.pipe-cools-first: a pipe that cools against its block and against the cold engine, from both sides."""

from __future__ import annotations

from pathlib import Path

import pytest

from speclint import Grade
from speclint.testing import DesignFolder, expect_conforms, expect_finding, expect_not_applicable

RULE = "duty.pipe-cools-first"
DUTY = """
kind = "duty"
id = "duty"
[cases.cold.temperatures]
steam-pipe = "20 °C"
[cases.cooling.temperatures]
steam-pipe = "90..120 °C"
cylinder-block = "140..160 °C"
"""
FILES = {
    "duty.toml": DUTY,
    "block.toml": 'kind = "cylinder-block"\nid = "block"\nduty = "duty"\n[openings.chest]\ndiameter = "157 mm"\n',
    "pipe.toml": 'kind = "steam-pipe"\nid = "pipe"\nduty = "duty"\n[ends_at]\npart = "block"\nopening = "chest"\n',
}


@pytest.fixture
def design(tmp_path: Path) -> DesignFolder:
    return DesignFolder(tmp_path).write(FILES)


@pytest.mark.parametrize(
    ("range_of_pipe", "says"),
    [
        ("90..164.9 °C", ""),
        ("90..165.1 °C", "more than 165 °C"),
        ("90..310 °C", "more than 165 °C"),
        ("15.1..120 °C", ""),
        ("14.9..120 °C", "less than 15 °C"),
        ("-90..120 °C", "less than 15 °C"),
    ],
)
def test_a_pipe_cools_before_its_block_and_no_further_than_the_engine(
    design: DesignFolder, range_of_pipe: str, says: str
) -> None:
    """A block of at most 160 °C and a cold engine of 20 °C, each with 5 K."""
    check = design.replace("duty.toml", "90..120 °C", range_of_pipe).only(RULE, "pipe")
    if says:
        expect_finding(check, grade=Grade.NONCONFORMITY, says=says)
    else:
        expect_conforms(check)


@pytest.mark.parametrize("end", ["starts_at", "ends_at"])
def test_the_block_has_the_heat_of_its_own_duty_where_that_of_the_pipe_is_silent(
    design: DesignFolder, end: str
) -> None:
    """A duty of the pipe alone that says nothing of the block: 160 °C of the engine's stands."""
    own = 'kind = "duty"\nid = "own"\n[cases.cooling.temperatures]\nsteam-pipe = "90..170 °C"\n'
    design.write({"own.toml": own})
    design.replace("pipe.toml", 'duty = "duty"', 'duty = "own"').replace("pipe.toml", "ends_at", end)
    expect_finding(design.only(RULE, "pipe"), grade=Grade.NONCONFORMITY, says="more than 165 °C")


def test_nothing_is_asked_of_what_the_duty_does_not_state(design: DesignFolder) -> None:
    """That no temperature is stated is told by pipe.flexibility."""
    design.replace(
        "duty.toml",
        '[cases.cooling.temperatures]\nsteam-pipe = "90..120 °C"\n',
        "[cases.cooling.temperatures]\n",
    )
    expect_not_applicable(design.only(RULE, "pipe"), "")
