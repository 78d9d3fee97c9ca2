"""The volume of ports, and the wear of bearings: each agreement from both sides, by numbers written here."""

from __future__ import annotations

from pathlib import Path

import pytest

from speclint import Grade
from speclint.testing import DesignFolder
from tests.plugins.agreement.test_cylinders import DRAWN, PIN
from tests.plugins.liners.bench import bench

FINE = ("conforms", None)
PORT = """
kind = "steam-passage"
id = "{name}"
in_block = "block"
place = "port"
of_end = "front"
area = "20000 mm²"
length = "{length}"
"""


def outcome(design: DesignFolder, rule: str) -> tuple[str, Grade | None]:
    check = design.only(rule, "block")
    return check.outcome, check.grade


@pytest.mark.parametrize(
    ("length", "ends"),
    [
        ("450 mm", FINE),
        ("451 mm", ("finding", Grade.OBSERVATION)),
        ("300 mm", FINE),
        ("299 mm", ("finding", Grade.OBSERVATION)),
    ],
)
def test_a_volume_is_that_of_its_ports(tmp_path: Path, length: str, ends: tuple[str, Grade | None]) -> None:
    """9000 cm³ are stated: 200 cm² by 450 mm, and by 300 mm half as much again."""
    design = DesignFolder(tmp_path).write({**bench(), "port.toml": PORT.format(name="port", length=length)})
    design.replace("block.toml", "[ports.front]\n", '[ports.front]\nof_end = "front"\n')
    assert outcome(design, "cylinder.volume-of-passages") == ends


def test_a_port_that_is_not_drawn_leaves_the_volume_open(tmp_path: Path) -> None:
    """Where the block has a port that no passage is drawn for, the stated volume has only to hold the other."""
    design = DesignFolder(tmp_path).write({**bench(), "port.toml": PORT.format(name="port", length="100 mm")})
    assert outcome(design, "cylinder.volume-of-passages") == FINE
    (design.root / "other.toml").write_text(PORT.format(name="other", length="351 mm"), encoding="utf-8")
    assert outcome(design, "cylinder.volume-of-passages") == ("finding", Grade.OBSERVATION)


@pytest.mark.parametrize(
    ("axlebox", "pin", "ends"),
    [
        ("0.6 mm", "0.4 mm", FINE),
        ("0.6 mm", "0.41 mm", ("finding", Grade.HOLD)),
        ("", "1 mm", ("not assessed", Grade.HOLD)),
        ("", "1.01 mm", ("finding", Grade.HOLD)),
        ("1 mm", "", ("not assessed", Grade.HOLD)),
        ("1.01 mm", "", ("finding", Grade.HOLD)),
        ("", "", ("not applicable", None)),
    ],
)
def test_wear_adds_up(tmp_path: Path, axlebox: str, pin: str, ends: tuple[str, Grade | None]) -> None:
    """The drive states 1 mm either way; a bearing that states none has some wear all the same."""
    drawn = {**DRAWN, "pin.toml": PIN + (f'wear.along = "{pin}"\n' if pin else "")}
    design = DesignFolder(tmp_path).write({**bench(), **drawn})
    if axlebox:
        design.replace("block.toml", "[drive]\n", f'[drive]\naxlebox_wear = "{axlebox}"\n')
    assert outcome(design, "drive.wear-adds-up") == ends


@pytest.mark.parametrize(("wear", "said"), [("0 mm", "a length of 0 is not possible here"), ("20 µm", "")])
def test_an_axlebox_wears_by_something(tmp_path: Path, wear: str, said: str) -> None:
    """No wear at all made room that is not there, as wear left out does; 20 µm is the least that is read."""
    design = DesignFolder(tmp_path).write(bench())
    design.replace("block.toml", "[drive]\n", f'[drive]\naxlebox_wear = "{wear}"\n')
    told = [one.message for one in design.assess().complaints]
    assert told == ([said] if said else [])


def shares(folder: Path, stated: str, length: str) -> list[float]:
    """The clearance volumes of both ends of the bench, as shares of what the piston sweeps."""
    drawn = {"port.toml": PORT.format(name="port", length=length)} if length else {}
    design = DesignFolder(folder).write({**bench(), **drawn})
    design.replace("block.toml", "[ports.front]\n", '[ports.front]\nof_end = "front"\n')
    volume = 'passage_volume = "9000 cm³"\n'
    text = (folder / "block.toml").read_text(encoding="utf-8")
    assert text.index("[ends.front]") < text.index(volume) < text.index("[ends.back]")
    new = f'passage_volume = "{stated}"\n' if stated else ""
    (folder / "block.toml").write_text(text.replace(volume, new, 1), encoding="utf-8")
    judged = design.only("cylinder.clearance-volume", "block").judgement
    assert judged is not None
    return [margin for one in judged.every for margin in one.margins]


@pytest.mark.parametrize(
    ("stated", "length", "used"),
    [
        ("9000 cm³", "400 mm", "9000 cm³"),  # between its ports, 8000 cm³, and half as much again
        ("9000 cm³", "500 mm", "10000 cm³"),  # less than its ports
        ("9000 cm³", "200 mm", "6000 cm³"),  # more than its ports and pockets: 1.5 × 200 cm² × 200 mm
        ("", "400 mm", "8000 cm³"),
    ],
)
def test_a_volume_that_its_ports_contradict_is_theirs(
    tmp_path: Path, stated: str, length: str, used: str
) -> None:
    """The one port of the front end has 200 cm²; without it drawn, the volume is as stated."""
    assert shares(tmp_path / "drawn", stated, length) == pytest.approx(
        shares(tmp_path / "as-stated", used, "")
    )
