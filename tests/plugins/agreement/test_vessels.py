"""Parts of one vessel are designed for what the vessel is, from both sides."""

from __future__ import annotations

from pathlib import Path

import pytest

from speclint import Grade
from speclint.testing import DesignFolder

FILES = {
    "block.toml": 'kind = "cylinder-block"\ndesign_pressure = "17 bar gauge"\ndesign_temperature = "400 °C"\n',
    "cover.toml": 'kind = "cylinder-cover"\ncloses = "block"\ndesign_pressure = "17 bar gauge"\n',
    "box.toml": 'kind = "stuffing-box"\nin_cover = "cover"\ndesign_pressure = "17 bar gauge"\n',
    "gland.toml": 'kind = "gland"\nof = "box"\ndesign_pressure = "17 bar gauge"\n',
    "studs.toml": 'kind = "bolted-joint"\nholds = "gland"\ndesign_pressure = "17 bar gauge"\n',
    "weldment.toml": (
        'kind = "weldment"\nmakes = "block"\ndesign_pressure = "17 bar gauge"\ndesign_temperature = "400 °C"\n'
    ),
    "pipe.toml": 'kind = "steam-pipe"\ndesign_pressure = "17 bar gauge"\n',
    "flange.toml": 'kind = "pipe-flange"\nof = "pipe"\ndesign_pressure = "17 bar gauge"\n',
    "lens.toml": 'kind = "lens-joint"\nof = "pipe"\ndesign_pressure = "17 bar gauge"\n',
}
RULE = "release.one-vessel"


@pytest.fixture
def design(tmp_path: Path) -> DesignFolder:
    return DesignFolder(tmp_path).write(FILES)


@pytest.mark.parametrize("part", ["cover", "box", "gland", "studs", "weldment", "flange", "lens"])
@pytest.mark.parametrize(
    ("pressure", "outcome"), [("17 bar", "conforms"), ("18 bar", "conforms"), ("16.9 bar", "finding")]
)
def test_no_part_is_designed_for_less(design: DesignFolder, part: str, pressure: str, outcome: str) -> None:
    found = design.replace(f"{part}.toml", "17 bar", pressure).only(RULE, part)
    assert (found.outcome, found.grade) == (outcome, Grade.HOLD if outcome == "finding" else None)


#: The test pressure of each part, where the block and the pipe are tested at 30 bar.
TESTS = {
    "block.toml": "30",
    "pipe.toml": "30",
    "studs.toml": "30",
    "weldment.toml": "30",
    "cover.toml": "30",
    "flange.toml": "30",
}


def with_tests(design: DesignFolder, **instead: str) -> DesignFolder:
    """The design with test pressures in bar, some of them others."""
    stated = TESTS | {f"{name}.toml": value for name, value in instead.items()}
    return design.write(
        {
            file: f'test_pressure = "{value} bar gauge"\n{FILES[file]}'
            for file, value in stated.items()
            if value
        }
    )


@pytest.mark.parametrize("part", ["studs", "weldment"])
@pytest.mark.parametrize(
    ("pressure", "outcome"), [("30", "conforms"), ("31", "conforms"), ("29.9", "finding"), ("3", "finding")]
)
def test_weldment_and_studs_are_tested_as_hard_as_their_block(
    design: DesignFolder, part: str, pressure: str, outcome: str
) -> None:
    found = with_tests(design, **{part: pressure}).only(RULE, part)
    assert (found.outcome, found.grade) == (outcome, Grade.HOLD if outcome == "finding" else None)


@pytest.mark.parametrize("part", ["cover", "flange"])
def test_the_tests_of_other_parts_are_told_elsewhere(design: DesignFolder, part: str) -> None:
    """By the agreements of parts tested together, once."""
    assert with_tests(design, **{part: "3"}).only(RULE, part).outcome == "conforms"


def test_the_joint_of_a_pipe_is_told_with_its_pipe(design: DesignFolder) -> None:
    with_tests(design)
    stated = 'kind = "bolted-joint"\nid = "studs"\nholds = "flange"\ndesign_pressure = "17 bar gauge"\n'
    design.write({"studs.toml": stated + 'test_pressure = "3 bar gauge"\n'})
    assert design.only(RULE, "studs").outcome == "conforms"


@pytest.mark.parametrize("silent", ["weldment", "block"])
def test_a_test_that_is_not_stated_has_nothing_to_agree_with(design: DesignFolder, silent: str) -> None:
    """What else the weldment states agrees."""
    assert with_tests(design, **{silent: ""}).only(RULE, "weldment").outcome == "conforms"


@pytest.mark.parametrize("other", ["401 °C", "399 °C"])
def test_one_body_has_one_temperature(design: DesignFolder, other: str) -> None:
    assert design.replace("weldment.toml", "400 °C", other).only(RULE, "weldment").outcome == "finding"


def test_a_part_of_no_vessel_has_nothing_to_agree_with(design: DesignFolder) -> None:
    design.replace("gland.toml", 'of = "box"\n', "")
    assert design.only(RULE, "studs").outcome == "not applicable"
