"""Names among the temperatures of a duty: told where nothing asks for them, and not where anything may."""

from __future__ import annotations

import pytest

from speclint.checking import stray_temperatures
from speclint.testing import SETTINGS, DesignFolder

DUTY = """
kind = "duty"
[cases.running]
live_temperature = "390 °C"
[cases.running.temperatures]
cylinder-block = "250 °C"
{} = "{}"
"""
PARTS = {"block.toml": 'kind = "cylinder-block"\nduty = "duty"\n'}
REVIEW = SETTINGS.replace('"draft"', '"for-review"')
FACE = {"face.toml": 'kind = "locating-face"\npad_temperature = "{}"\n'}
SAID = "no part and no kind has this name, and nothing asks for a temperature of it"


def told(workshop: DesignFolder, name: str, value: str = "90 °C", settings: str = REVIEW) -> list[str]:
    found = workshop.write({"duty.toml": DUTY.format(name, value), **PARTS}, settings=settings).assess()
    assert found.complaints == ()
    return [f"{one.where.line} {one.read} {one.write}" for one in stray_temperatures(found)]


def test_a_name_that_nothing_asks_for_is_told_with_the_nearest(workshop: DesignFolder) -> None:
    assert told(workshop, "smokebox") == ['7 "smokebox" ']
    (line,) = told(workshop, "cylinder-liners-all")
    assert line.startswith('7 "cylinder-liners-all" "cylinder-liner"')
    (one,) = stray_temperatures(workshop.assess())
    assert one.message == SAID


@pytest.mark.parametrize("name", ["block", "valve-seat", "connecting-rod"])
def test_a_part_a_kind_and_the_connecting_rod_are_no_strange_names(workshop: DesignFolder, name: str) -> None:
    """Of the kind valve-seat no part is drawn so far."""
    assert told(workshop, name) == []


def test_a_name_that_another_is_tied_to_is_asked_for(workshop: DesignFolder) -> None:
    assert told(workshop, "smokebox", '200 °C"\nvalve-seat = "smokebox - 20 K') == []


def test_a_place_that_a_spec_names_as_a_word_is_asked_for(workshop: DesignFolder) -> None:
    workshop.write({"face.toml": FACE["face.toml"].format("pads")}, settings=REVIEW)
    assert told(workshop, "pads") == []
    assert told(workshop, "pad")[0].startswith('7 "pad"')


def test_in_a_draft_only_what_is_nearly_a_name_is_told(workshop: DesignFolder) -> None:
    """A part of that name may still be drawn."""
    assert told(workshop, "smokebox", settings=SETTINGS) == []
    (line,) = told(workshop, "valve-seats", settings=SETTINGS)
    assert line.startswith('7 "valve-seats" "valve-seat"')


def test_of_a_part_of_the_repository_nothing_is_told(workshop: DesignFolder) -> None:
    told(workshop, "smokebox")
    assert stray_temperatures(workshop.assess("block.toml")) == ()
    assert len(stray_temperatures(workshop.assess("."))) == 1


def test_a_name_is_told_once_for_the_duty_that_states_it(workshop: DesignFolder) -> None:
    """The second case states it too, and another duty takes both over."""
    again = DUTY.format("smokebox", "90 °C") + '[cases.cold.temperatures]\nsmokebox = "20 °C"\n'
    other = 'kind = "duty"\nlike = "duty"\n'
    workshop.write({"duty.toml": again, "other.toml": other, **PARTS}, settings=REVIEW)
    assert [one.where.line for one in stray_temperatures(workshop.assess())] == [7]
