"""made.fitted-as-asked: the temperatures of a part as it went in, each limit from both sides."""

from __future__ import annotations

import pytest

from speclint import Grade
from speclint.testing import DesignFolder, changed, expect_not_applicable

FITTED = "made.fitted-as-asked"
FILES = {
    "block.toml": 'kind = "cylinder-block"\nid = "block"\nheated_to = "180 °C ±5"\n[bores.main]\n',
    "liner.toml": 'kind = "cylinder-liner"\nid = "liner"\nhoused_in = "block"\nin_bore = "main"\n',
    "seat.toml": 'kind = "valve-seat"\nid = "seat"\npressed_into = "block"\nchilled_to = "-78 °C"\n',
    "ring.toml": 'kind = "piston-ring"\nid = "ring"\n',
}
MADE = """
kind = "made-part"
id = "made"
of = "seat"
[entries.pressed]
temperature = "181 °C ±2"
cold_temperature = "-76 °C ±1"
"""
FINE, WRONG = ("conforms", None), ("finding", Grade.NONCONFORMITY)


def made(workshop: DesignFolder, *changes: tuple[str, str], of: str = "seat") -> DesignFolder:
    return workshop.write({**FILES, "made.toml": changed(MADE.replace('"seat"', f'"{of}"'), *changes)})


@pytest.mark.parametrize(
    ("temperature", "ends"),
    [
        ("167 °C ±2", FINE),
        ("166.9 °C ±2", WRONG),
        ("193 °C ±2", FINE),
        ("193.1 °C ±2", WRONG),
        ("400 °C", WRONG),
    ],
)
@pytest.mark.parametrize("of", ["block", "liner", "seat"])
def test_the_block_was_as_hot_as_asked(
    workshop: DesignFolder, temperature: str, ends: tuple[str, Grade | None], of: str
) -> None:
    """180 °C ±5 with 10 K to either side: from 165 to 195 °C, the uncertainty of 2 K within it."""
    check = made(workshop, ('"181 °C ±2"', f'"{temperature}"'), of=of).only(FITTED, "made")
    assert (check.outcome, check.grade) == ends


@pytest.mark.parametrize(
    ("temperature", "ends"), [("-69 °C ±1", FINE), ("-68.9 °C ±1", WRONG), ("-100 °C", FINE)]
)
def test_the_ring_was_as_cold_as_asked(
    workshop: DesignFolder, temperature: str, ends: tuple[str, Grade | None]
) -> None:
    """-78 °C and 10 K: no warmer than -68 °C."""
    check = made(workshop, ('"-76 °C ±1"', f'"{temperature}"')).only(FITTED, "made")
    assert (check.outcome, check.grade) == ends


@pytest.mark.parametrize(("temperature", "ends"), [("210 °C", FINE), ("211 °C", WRONG), ("180 °C", WRONG)])
def test_what_the_part_asks_stands_before_the_block(
    workshop: DesignFolder, temperature: str, ends: tuple[str, Grade | None]
) -> None:
    """The liner asks for 200 °C: from 190 to 210 °C."""
    made(workshop, ('"181 °C ±2"', f'"{temperature}"'), of="liner")
    workshop.write({"liner.toml": FILES["liner.toml"] + 'block_heated_to = "200 °C"\n'})
    check = workshop.only(FITTED, "made")
    assert (check.outcome, check.grade) == ends


@pytest.mark.parametrize(
    ("of", "how", "cold"),
    [
        ("liner", 'entered = "pressed"', True),
        ("liner", 'entered = "chilled"', True),
        ("liner", 'entered = "chilled and heated block"', False),
        ("seat", 'entering = "pressed cold"', True),
        ("seat", 'entering = "ring chilled"', True),
        ("seat", 'entering = "block heated and ring chilled"', False),
    ],
)
def test_a_block_that_stays_cold_is_asked_for_no_heat(
    workshop: DesignFolder, of: str, how: str, cold: bool
) -> None:
    """At 18 °C, where 180 °C are asked of the block for the others that go into it hot."""
    made(workshop, ('"181 °C ±2"', '"18 °C"'), ('cold_temperature = "-76 °C ±1"\n', ""), of=of)
    check = workshop.write({f"{of}.toml": f"{FILES[f'{of}.toml']}{how}\n"}).only(FITTED, "made")
    assert check.outcome == ("not applicable" if cold else "finding")


def test_what_is_not_on_record_or_not_asked_is_not_judged(workshop: DesignFolder) -> None:
    says = "no temperature on record stands beside one that is asked for"
    bare = ('temperature = "181 °C ±2"\n', ""), ('cold_temperature = "-76 °C ±1"\n', "")
    expect_not_applicable(made(workshop, *bare).only(FITTED, "made"), says)
    expect_not_applicable(made(workshop, of="ring").only(FITTED, "made"), says)
    made(workshop, of="liner").write({"liner.toml": 'kind = "cylinder-liner"\nid = "liner"\n'})
    expect_not_applicable(workshop.only(FITTED, "made"), says)
    made(workshop, of="block").write({"block.toml": 'kind = "cylinder-block"\nid = "block"\n'})
    expect_not_applicable(workshop.only(FITTED, "made"), says)
