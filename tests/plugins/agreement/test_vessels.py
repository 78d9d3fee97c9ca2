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


@pytest.mark.parametrize("other", ["401 °C", "399 °C"])
def test_one_body_has_one_temperature(design: DesignFolder, other: str) -> None:
    assert design.replace("weldment.toml", "400 °C", other).only(RULE, "weldment").outcome == "finding"


def test_a_part_of_no_vessel_has_nothing_to_agree_with(design: DesignFolder) -> None:
    design.replace("gland.toml", 'of = "box"\n', "")
    assert design.only(RULE, "studs").outcome == "not applicable"
