"""making.iron-relieved-hot: the temperature of a stress relief from both sides."""

from __future__ import annotations

import pytest

from speclint import Grade
from speclint.testing import DesignFolder, expect_not_applicable, expect_not_assessed
from tests.plugins.making.bench import write

HOT = "making.iron-relieved-hot"
TABLE = '[making.details."rough machine"]'


def relieved(workshop: DesignFolder, temperature: str, *changes: tuple[str, str, str]) -> DesignFolder:
    step = f'[making.details."stress relieve"]\n{temperature}\n{TABLE}'
    return write(workshop, ("liner", TABLE, step), *changes)


@pytest.mark.parametrize(
    ("temperature", "outcome"),
    [
        ("510 °C ±10", "conforms"),
        ("509 °C ±10", "finding"),
        ("590 °C ±10", "conforms"),
        ("591 °C ±10", "finding"),
        ("150 °C", "finding"),
    ],
)
def test_iron_is_relieved_between_500_and_600(workshop: DesignFolder, temperature: str, outcome: str) -> None:
    check = relieved(workshop, f'temperature = "{temperature}"').only(HOT, "liner")
    assert (check.outcome, check.grade) == (outcome, Grade.NONCONFORMITY if outcome == "finding" else None)


def test_a_second_relief_is_judged_too(workshop: DesignFolder) -> None:
    words = ("casting", 'steps = ["cast", "weld repair", "stress relieve"]', SECOND)
    iron = ("casting", 'becomes = "piston"', 'becomes = "piston"\nmaterial = "known-iron"')
    assert write(workshop, words, iron).only(HOT, "casting").outcome == "finding"


SECOND = 'steps = ["cast", "weld repair", "stress relieve"]\n[making.details."stress relieve"]\ntemperature = "160 °C"'


@pytest.mark.parametrize(("temperature", "outcome"), [("500 °C", "conforms"), ("499 °C", "finding")])
def test_a_cast_block_is_judged_by_its_own_list(
    workshop: DesignFolder, temperature: str, outcome: str
) -> None:
    iron = ("block", 'material = "known-steel"', 'material = "known-iron"')
    relief = (
        "block",
        "[seat_bores.upper]",
        f'[making.details."stress relieve"]\ntemperature = "{temperature}"\n[seat_bores.upper]',
    )
    assert write(workshop, iron, relief).only(HOT, "block").outcome == outcome
    assert write(workshop, relief).only(HOT, "block").outcome == "not applicable"


def test_what_is_not_stated_or_not_of_iron_is_not_judged(workshop: DesignFolder) -> None:
    says = "no step of stress relief states its temperature"
    expect_not_applicable(write(workshop).only(HOT, "liner"), says)
    expect_not_applicable(relieved(workshop, 'needs = ["cast"]').only(HOT, "liner"), says)
    steel = ("liner", "known-iron", "known-steel")
    expect_not_applicable(
        relieved(workshop, 'temperature = "150 °C"', steel).only(HOT, "liner"), "not of grey iron"
    )
    bare = ("liner", 'material = "known-iron"\n', "")
    expect_not_assessed(relieved(workshop, 'temperature = "150 °C"', bare).only(HOT, "liner"), "material")
