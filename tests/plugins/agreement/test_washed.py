"""Metal that steam washes, against the coolest and the hottest steam beside it; from both sides."""

from __future__ import annotations

from pathlib import Path

import pytest

from speclint import Grade
from speclint.testing import DesignFolder

RULE = "duty.metal-between-steams"
HOLD, FINE, SILENT = ("finding", Grade.HOLD), ("conforms", None), ("not applicable", None)
#: Exhaust steam of 135 °C at its coolest, less 40 K: 95 °C. Live steam 380 less 120 K: 260 °C; 400 and 5 K: 405 °C.
DUTY = """
kind = "duty"
id = "duty"
[cases.starting]
live_temperature = "300 °C"
exhaust_temperature = "130 °C"
temperatures.partition = "20 °C"
[cases.running]
live_temperature = "390 °C ±10"
exhaust_temperature = "140 °C ±5"
[cases.running.temperatures]
partition = "250..280 °C"
cylinder-block = "250..270 °C"
cylinder-liner = "255..285 °C"
steam-passage = "340..375 °C"
port = "340..376 °C"
belt = "150..175 °C"
"""
PASSAGE = 'kind = "steam-passage"\nin_block = "block"\n'
FILES = {
    "duty.toml": DUTY,
    "block.toml": 'kind = "cylinder-block"\nid = "block"\nduty = "duty"\n',
    "liner.toml": 'kind = "cylinder-liner"\nid = "liner"\nhoused_in = "block"\n',
    "chest.toml": f'{PASSAGE}place = "chest"\ncarries = "live steam"\n',
    "port.toml": f'{PASSAGE}place = "port"\ncarries = "live steam"\n',
    "belt.toml": f'{PASSAGE}place = "belt"\ncarries = "exhaust steam"\n',
    "way.toml": f'{PASSAGE}place = "breathing way"\n',
    "partition.toml": 'kind = "partition"\nid = "partition"\nlive_side = "chest"\nexhaust_side = "belt"\n',
}


@pytest.fixture
def design(tmp_path: Path) -> DesignFolder:
    return DesignFolder(tmp_path).write(FILES)


@pytest.mark.parametrize(
    ("part", "named", "old", "coolest", "hottest"),
    [
        ("partition", "partition", "250..280", "95", "405"),
        ("liner", "cylinder-liner", "255..285", "95", "405"),
        ("port", "port", "340..376", "95", "405"),
        ("belt", "belt", "150..175", "95", "405"),
        ("chest", "steam-passage", "340..375", "260", "405"),
    ],
)
def test_between_its_steams(
    design: DesignFolder, part: str, named: str, old: str, coolest: str, hottest: str
) -> None:
    less, more = float(coolest) - 0.1, float(hottest) + 0.1
    wanted = {f"{coolest}..{hottest}": FINE, f"{less}..{hottest}": HOLD, f"{coolest}..{more}": HOLD}
    for now, ends in wanted.items():
        design.write({"duty.toml": DUTY.replace(f'{named} = "{old}', f'{named} = "{now}')})
        check = design.only(RULE, part)
        assert (check.outcome, check.grade) == ends, now


@pytest.mark.parametrize(
    ("metal", "ends"), [("95..120", FINE), ("94.9..120", HOLD), ("250..405.1", FINE), ("250..500", FINE)]
)
def test_a_block_too_hot_is_told_by_another_rule(
    design: DesignFolder, metal: str, ends: tuple[str, Grade | None]
) -> None:
    check = design.replace("duty.toml", "250..270", metal).only(RULE, "block")
    assert (check.outcome, check.grade) == ends


def test_a_passage_of_air_has_no_steam_beside_it(design: DesignFolder) -> None:
    design.replace("duty.toml", 'belt = "150', 'way = "20..60 °C"\nbelt = "150')
    check = design.only(RULE, "way")
    assert (check.outcome, check.grade) == SILENT


def test_a_passage_that_does_not_say_what_it_carries_is_asked(design: DesignFolder) -> None:
    assert (
        design.replace("belt.toml", 'carries = "exhaust steam"\n', "").only(RULE, "belt").outcome
        == "not assessed"
    )
