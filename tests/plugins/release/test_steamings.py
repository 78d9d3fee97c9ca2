"""What was measured in steam, beside what the duty assumes: from both sides of each limit, and what cannot be told."""

from __future__ import annotations

import pytest

from speclint import Grade
from speclint.checking import Check
from speclint.repository import open_repository
from speclint.testing import DesignFolder, changed, expect_not_assessed
from tests.made.test_judging import DRAWN, MADE
from tests.plugins.liners.bench import bench, in_duty, in_liner

STEAMED = (
    MADE.replace('"560.3 mm"', '"560.310 mm"')
    + """
[steamings.first]
case = "running"
value = "VALUE"
uncertainty = "2 K"
date = "2026-06-20"
"""
)
#: The liner may be from 190 °C to 210 °C while the engine is running.
BAND = in_duty(
    '\n[cases.running.temperatures]\ncylinder-block = "200 °C"\ncylinder-liner = "200 °C"',
    '\n[cases.running.temperatures]\ncylinder-block = "200 °C"\ncylinder-liner = "190..210 °C"',
)
TIED = in_duty(BAND[1], BAND[2].replace("190..210 °C", "cylinder-block - 10 K ±20"))


def steamed(
    workshop: DesignFolder, value: str, *more: tuple[str, str], band: tuple[str, str, str] = BAND
) -> Check:
    made = changed(STEAMED, ("VALUE", value), *more)
    return workshop.write({**bench(DRAWN, band), "liner-7.toml": made}).only("made.in-steam")


@pytest.mark.parametrize(
    ("value", "grade"),
    [
        ("208 °C", None),
        ("208.1 °C", Grade.QUERY),
        ("212 °C", Grade.QUERY),
        ("212.1 °C", Grade.NONCONFORMITY),
        ("192 °C", None),
        ("191.9 °C", Grade.QUERY),
        ("187.9 °C", Grade.NONCONFORMITY),
    ],
)
def test_a_temperature_from_both_sides_of_each_limit(
    workshop: DesignFolder, value: str, grade: Grade | None
) -> None:
    """190..210 °C with U = 2 K: proved in from 192 to 208, proved out below 188 and above 212."""
    assert steamed(workshop, value).grade == grade


def test_what_the_duty_does_not_state_has_nothing_to_be_held_against(workshop: DesignFolder) -> None:
    """A duty whose running case has the temperature of the block alone."""
    alone = in_duty(BAND[1], '\n[cases.running.temperatures]\ncylinder-block = "200 °C"')
    found = steamed(workshop, "200 °C", band=alone)
    expect_not_assessed(found, "the duty states no")


def test_a_temperature_tied_to_another_may_be_all_that_the_tie_allows(workshop: DesignFolder) -> None:
    """200 − 10 ± 20 °C is from 170 to 210 °C."""
    assert steamed(workshop, "172 °C", band=TIED).outcome == "conforms"
    assert steamed(workshop, "167.9 °C", band=TIED).grade == Grade.NONCONFORMITY


def test_a_pressure_is_held_against_that_of_the_case(workshop: DesignFolder) -> None:
    """16 bar is assumed as it stands, without limits: 16.3 ± 0.1 bar is proved to be more."""
    pressure = ('value = "16.3', 'quantity = "live_pressure"\nvalue = "16.3'), ('"2 K"', '"0.1 bar"')
    found = steamed(workshop, "16.3 bar gauge", *pressure)
    assert found.grade == Grade.NONCONFORMITY
    assert "live_pressure running is outside the duty" in found.actual


def test_a_part_that_sees_no_duty_is_held_against_none(workshop: DesignFolder) -> None:
    drawn = bench(DRAWN, in_liner('housed_in = "block"\n', ""))
    made = changed(STEAMED, ("VALUE", "200 °C"))
    found = workshop.write({**drawn, "liner-7.toml": made}).only("made.in-steam")
    expect_not_assessed(found, "it was measured in steam, and sees no duty")


def test_what_was_not_measured_in_steam_and_a_case_that_the_duty_has_not(workshop: DesignFolder) -> None:
    none = workshop.write({**bench(DRAWN), "liner-7.toml": MADE}).only("made.in-steam")
    assert none.outcome == "not applicable"
    case = 'kind = "duty"\nid = "duty"\n'
    without = {**bench(DRAWN), "duty.toml": case, "liner-7.toml": changed(STEAMED, ("VALUE", "200 °C"))}
    assert workshop.write(without).only("made.in-steam").outcome == "not assessed"


@pytest.mark.parametrize(
    ("change", "said"),
    [
        (('case = "running"\n', ""), "names its load case"),
        (('uncertainty = "2 K"\ndate', "date"), "no uncertainty is recorded for what was measured in steam"),
        (('value = "VALUE"\n', ""), "nothing was measured"),
        (("VALUE", "200 mm"), "200 mm"),
        (('value = "VALUE"', 'quantity = "live_presure"\nvalue = "16 bar gauge"'), "live_pressure"),
        (("2026-06-20", "20.6.2026"), "not a date"),
    ],
)
def test_a_record_that_is_not_whole_is_told(
    workshop: DesignFolder, change: tuple[str, str], said: str
) -> None:
    made = changed(STEAMED, change).replace("VALUE", "200 °C")
    workshop.write({**bench(DRAWN), "liner-7.toml": made})
    found = open_repository([workshop.root], workshop.loaded.kinds)
    assert any(said in str(one) for one in found.complaints)
