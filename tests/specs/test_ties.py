"""A temperature that a duty ties to another is read, followed, and refused with what to write where it cannot be."""

from __future__ import annotations

from pathlib import Path

import pytest

from speclint.quantities import Measure
from speclint.specs import Component, Duty, Tie
from speclint.testing import DesignFolder

DUTY = """
kind = "duty"
[cases.running]
live_temperature = "380 °C"
[cases.running.temperatures]
cylinder-block = "250..270 °C"
{line}
"""


def read(tmp_path: Path, line: str) -> tuple[Duty | None, list[str]]:
    shop = DesignFolder(tmp_path).write({"duty.toml": DUTY.format(line=line)})
    found = shop.assess()
    assert found.design is not None
    duty = found.design.specs.get("duty")
    assert duty is None or isinstance(duty, Duty)
    return duty, [str(one) for one in found.complaints]


@pytest.mark.parametrize(
    ("written", "low", "high"),
    [
        ("cylinder-block + 20..30 K", 20.0, 30.0),
        ("cylinder-block - 20..30 K", -30.0, -20.0),
        ("cylinder-block − 10 K", -10.0, -10.0),
        ("cylinder-block", 0.0, 0.0),
        ("live_temperature - 40 K ±5", -45.0, -35.0),
        ("  cylinder-block   +  20 K  ", 20.0, 20.0),
    ],
)
def test_a_tie_is_another_temperature_and_a_difference(
    tmp_path: Path, written: str, low: float, high: float
) -> None:
    duty, complaints = read(tmp_path, f'valve-seat = "{written}"')
    assert complaints == []
    assert duty is not None
    found = duty.cases["running"].temperature_named("valve-seat")
    assert isinstance(found, Tie)
    assert isinstance(found.base, Measure)
    assert (found.difference.low, found.difference.high) == pytest.approx((low, high))
    assert found.difference.nominal == pytest.approx((low + high) / 2)
    assert found.difference.text == written
    assert found.where.key == "cases.running.temperatures.valve-seat"


def test_a_tie_to_a_tie_is_followed(tmp_path: Path) -> None:
    lines = 'valve-seat = "cylinder-block + 20 K"\npoppet-valve = "valve-seat + 5 K"'
    duty, complaints = read(tmp_path, lines)
    assert complaints == []
    assert duty is not None
    found = duty.cases["running"].temperature_named("poppet-valve")
    assert isinstance(found, Tie)
    assert isinstance(found.base, Tie)
    assert isinstance(found.base.base, Measure)
    assert found.base.base.low == pytest.approx(523.15)


@pytest.mark.parametrize(
    ("line", "said"),
    [
        (
            'valve-seat = "cylinder-blok + 20 K"',
            'the load case states no temperature of "cylinder-blok"; read "cylinder-blok + 20 K"; '
            'write "live_temperature", "cylinder-block"',
        ),
        ('valve-seat = "cylinder-block + 20 mm"', "the difference of a tie cannot be read"),
        ('valve-seat = "cylinder-block + 2,5 K"', "a comma is not a decimal point"),
        ('valve-seat = "valve-seat + 20 K"', "ties run in a loop: valve-seat → valve-seat"),
        (
            'valve-seat = "poppet-valve + 5 K"\npoppet-valve = "valve-seat - 5 K"',
            "ties run in a loop: valve-seat → poppet-valve → valve-seat",
        ),
        ('valve-seat = "ambient_temperature + 5 K"', 'states no temperature of "ambient_temperature"'),
        ('valve-seat = "hot"', 'states no temperature of "hot"'),
        (
            'valve-seat = "estimat"',
            'write "live_temperature", "cylinder-block", or "estimate", which has it worked',
        ),
        ("valve-seat = 300", "a temperature is written as text with its unit"),
    ],
)
def test_a_tie_that_cannot_hold_is_one_line_with_its_place(tmp_path: Path, line: str, said: str) -> None:
    duty, complaints = read(tmp_path, line)
    assert duty is None
    (complaint,) = complaints
    assert complaint.startswith("duty.toml:7 cases.running.temperatures.valve-seat: ")
    assert said in complaint


def test_a_part_is_found_by_its_id_before_its_kind(tmp_path: Path) -> None:
    duty, _ = read(tmp_path, 'valve-seat = "cylinder-block + 20 K"\nseat-left = "400 °C"')
    assert duty is not None
    part = Component(id="seat-left")
    found = duty.cases["running"].temperature_of(part)
    assert isinstance(found, Measure)
    assert found.nominal == pytest.approx(673.15)
