"""One heating of the block for all that is shrunk into it, from both sides."""

from __future__ import annotations

import pytest

from speclint import Grade
from speclint.testing import DesignFolder

RULE = "block.heated-once"
FINE, LESS = ("conforms", None), ("finding", Grade.NONCONFORMITY)
FILES = {
    "block.toml": 'kind = "cylinder-block"\nid = "block"\nheated_to = "160 °C"\n',
    "weldment.toml": 'kind = "weldment"\nid = "weldment"\nmakes = "block"\ntreatment.temperature = "580 °C"\n',
    "liner.toml": 'kind = "cylinder-liner"\nid = "liner"\nhoused_in = "block"\nblock_heated_to = "160 °C"\n',
    "seat.toml": 'kind = "valve-seat"\nid = "seat"\npressed_into = "block"\nblock_heated_to = "160 °C"\n',
}


@pytest.mark.parametrize(
    ("file", "old", "new", "wanted"),
    [
        ("liner.toml", "160 °C", "155 °C", FINE),
        ("liner.toml", "160 °C", "154 °C", LESS),
        ("seat.toml", "160 °C", "165 °C", FINE),
        ("seat.toml", "160 °C", "166 °C", LESS),
        ("block.toml", "160 °C", "166 °C", LESS),
        ("block.toml", 'heated_to = "160 °C"\n', "", FINE),
        ("weldment.toml", "580 °C", "160 °C", FINE),
        ("weldment.toml", "580 °C", "159 °C", LESS),
    ],
)
def test_the_block_is_heated_once(
    workshop: DesignFolder, file: str, old: str, new: str, wanted: tuple[str, Grade | None]
) -> None:
    found = workshop.write(FILES).replace(file, old, new).only(RULE)
    assert (found.outcome, found.grade) == wanted


@pytest.mark.parametrize(("temperature", "wanted"), [("165 °C", FINE), ("166 °C", LESS), ("250 °C", LESS)])
def test_the_step_heats_to_what_the_drawing_says(
    workshop: DesignFolder, temperature: str, wanted: tuple[str, Grade | None]
) -> None:
    step = f'making.steps = ["heat block"]\nmaking.details."heat block".temperature = "{temperature}"\n'
    found = workshop.write({**FILES, "block.toml": FILES["block.toml"] + step}).only(RULE)
    assert (found.outcome, found.grade) == wanted


def test_where_the_block_states_none_its_parts_agree_among_themselves(workshop: DesignFolder) -> None:
    workshop.write(FILES).replace("block.toml", 'heated_to = "160 °C"\n', "")
    workshop.replace("seat.toml", "160 °C", "130 °C")
    assert workshop.only(RULE).outcome == "finding"


def test_nothing_is_heated(workshop: DesignFolder) -> None:
    assert (
        workshop.write({"block.toml": FILES["block.toml"].split("heated")[0]}).only(RULE).outcome
        == "not applicable"
    )


@pytest.mark.parametrize(
    ("time", "wanted"), [("60 min", FINE), ("61 min", FINE), ("62 min", LESS), ("58 min", LESS)]
)
def test_a_weldment_is_warmed_in_the_time_of_its_duty(
    workshop: DesignFolder, time: str, wanted: tuple[str, Grade | None]
) -> None:
    files = {
        "duty.toml": 'kind = "duty"\nid = "duty"\nwarming.time = "1 h"\n',
        "weldment.toml": f'kind = "weldment"\nid = "weldment"\nduty = "duty"\nwarming_time = "{time}"\n',
    }
    found = workshop.write(files).only("duty.one-warming")
    assert (found.outcome, found.grade) == wanted


#: Steam let into a block in air of 5 to 20 °C, which has stood in −15 °C: 130 − 5 = 125 K to the hottest of its chest.
WARMED = {
    "duty.toml": 'kind = "duty"\nid = "duty"\n[cases.warming]\nambient_temperature = "5..20 °C"\n'
    'coldest_ambient = "-15 °C"\n[cases.warming.temperatures]\ncylinder-block = "60..90 °C"\n'
    'chest = "100..130 °C"\n',
    "block.toml": 'kind = "cylinder-block"\nid = "block"\nduty = "duty"\n',
    "chest.toml": 'kind = "steam-passage"\nid = "chest"\nin_block = "block"\n',
    "weldment.toml": 'kind = "weldment"\nid = "weldment"\nmakes = "block"\nleast_temperature = "-15 °C"\n'
    'warming_rise = "125 K"\n',
}


@pytest.mark.parametrize(
    ("file", "old", "new", "wanted"),
    [
        ("weldment.toml", "125 K", "124 K", LESS),
        ("weldment.toml", "125 K", "20 K", LESS),
        ("weldment.toml", "125 K", "126 K ±1", FINE),
        ("weldment.toml", "125 K", "125 K ±1", LESS),
        ("duty.toml", "130 °C", "131 °C", LESS),
        ("duty.toml", "5..20 °C", "4..20 °C", LESS),
        ("duty.toml", "5..20 °C", "30 °C", FINE),
        ("duty.toml", "60..90 °C", "60..130 °C", FINE),
        ("duty.toml", "60..90 °C", "60..131 °C", LESS),
        ("duty.toml", 'chest = "100..130 °C"\n', "", FINE),
        ("weldment.toml", "-15 °C", "15 °C", FINE),
    ],
)
def test_a_weldment_is_reckoned_for_the_rise_of_its_duty(
    workshop: DesignFolder, file: str, old: str, new: str, wanted: tuple[str, Grade | None]
) -> None:
    """From the coldest of the day's air to the hottest of block and passages; the cold of winter is the shock's."""
    found = workshop.write(WARMED).replace(file, old, new).only("duty.warming-rise", "weldment")
    assert (found.outcome, found.grade) == wanted


def test_without_a_passage_the_block_alone_gives_the_rise(workshop: DesignFolder) -> None:
    """90 − 5 = 85 K."""
    files = {**WARMED, "duty.toml": WARMED["duty.toml"].replace('chest = "100..130 °C"\n', "")}
    workshop.write(files).replace("weldment.toml", "125 K", "84 K")
    assert workshop.only("duty.warming-rise", "weldment").outcome == "finding"
    workshop.replace("weldment.toml", "84 K", "85 K")
    assert workshop.only("duty.warming-rise", "weldment").outcome == "conforms"


@pytest.mark.parametrize(
    ("file", "old", "new", "wanted"),
    [
        ("weldment.toml", "-15 °C", "-14 °C", LESS),
        ("weldment.toml", "-15 °C", "15 °C", LESS),
        ("weldment.toml", "-15 °C", "-16 °C", FINE),
        ("weldment.toml", "-15 °C", "-15 °C ±1", LESS),
        ("duty.toml", "-15 °C", "-16 °C", LESS),
        ("duty.toml", "-15 °C", "-14 °C", FINE),
        ("weldment.toml", "125 K", "20 K", FINE),
    ],
)
def test_a_weldment_is_reckoned_for_the_coldest_air(
    workshop: DesignFolder, file: str, old: str, new: str, wanted: tuple[str, Grade | None]
) -> None:
    found = workshop.write(WARMED).replace(file, old, new).only("duty.coldest-air", "weldment")
    assert (found.outcome, found.grade) == wanted


COLD = {
    "block.toml": 'kind = "cylinder-block"\nid = "block"\nduty = "duty"\n',
    "duty.toml": """
kind = "duty"
id = "duty"
[cases.cold]
ambient_temperature = "20 °C"
temperatures.cylinder-liner = "20 °C"
temperatures.pads = "15..25 °C"
temperatures.valve-seat = "cylinder-liner"
""",
}


@pytest.mark.parametrize(
    ("old", "new", "wanted"),
    [
        ('liner = "20 °C"', 'liner = "10.1 °C"', FINE),
        ('liner = "20 °C"', 'liner = "9.9 °C"', LESS),
        ('liner = "20 °C"', 'liner = "29.9 °C"', FINE),
        ('liner = "20 °C"', 'liner = "30.1 °C"', LESS),
        ('liner = "20 °C"', 'liner = "-20 °C"', LESS),
        ('"15..25 °C"', '"9.9..25 °C"', LESS),
        ('"15..25 °C"', '"15..30.1 °C"', LESS),
        ('ambient_temperature = "20 °C"', 'ambient_temperature = "9.9 °C"', LESS),
        ('ambient_temperature = "20 °C"\n', "", ("not assessed", None)),
    ],
)
def test_the_cold_engine_is_as_cold_as_the_air(
    workshop: DesignFolder, old: str, new: str, wanted: tuple[str, Grade | None]
) -> None:
    """Within 10 K of the air of the shop: from 10 to 30 °C."""
    found = workshop.write(COLD).replace("duty.toml", old, new).only("duty.cold-as-the-air", "block")
    assert (found.outcome, found.grade) == wanted
