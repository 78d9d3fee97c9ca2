"""lubrication.points and pairing.lubricant."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from speclint import Grade
from speclint_pairings.formulae import flash_margin
from tests.families.pairings.bench import files
from tests.workshop import Workshop

POINTS, FLASH = "lubrication.points", "pairing.lubricant"
OILED = """feed = "mechanical lubricator, feed 1"
check_valve = true
check_valve_pressure = "20 bar gauge"
drained = true
flash_point = "340 °C"
"""


def liner(*changes: tuple[str, str]) -> dict[str, str]:
    text = OILED
    for old, new in changes:
        assert text.count(old) == 1
        text = text.replace(old, new)
    found = files()
    found["liner.toml"] += text
    return found


def test_a_liner_with_feed_valve_and_drain_conforms(workshop: Workshop) -> None:
    """16 bar of 20."""
    check = workshop.write(liner()).only(POINTS, "liner")
    assert (check.outcome, check.utilisation) == ("conforms", pytest.approx(0.8))


@pytest.mark.parametrize(("pressure", "outcome"), [("16.0", "conforms"), ("15.9", "finding")])
def test_the_check_valve_against_the_chest(workshop: Workshop, pressure: str, outcome: str) -> None:
    check = workshop.write(liner(("20 bar", f"{pressure} bar"))).only(POINTS, "liner")
    assert check.outcome == outcome
    assert check.grade is (Grade.NONCONFORMITY if outcome == "finding" else None)


@pytest.mark.parametrize(
    ("old", "new", "says"),
    [
        ('feed = "mechanical lubricator, feed 1"', "", "without feed"),
        ("check_valve = true", "check_valve = false", "without check_valve"),
        ("drained = true", "drained = false", "without drained"),
    ],
)
def test_what_is_lacking_is_named(workshop: Workshop, old: str, new: str, says: str) -> None:
    check = workshop.write(liner((old, new))).only(POINTS, "liner")
    assert (check.outcome, check.says) == ("finding", says)


@pytest.mark.parametrize(
    "line", ["check_valve = true", 'check_valve_pressure = "20 bar gauge"', "drained = true"]
)
def test_points_are_not_assessed_without(workshop: Workshop, line: str) -> None:
    check = workshop.write(liner((line, ""))).only(POINTS, "liner")
    assert check.outcome == "not assessed"
    assert line.split()[0] in check.says


def test_a_block_needs_oil_of_its_own_only_where_rings_bear_on_it(workshop: Workshop) -> None:
    assert workshop.write(files()).only(POINTS, "block").outcome == "not applicable"
    bare = files(ring=(('runs_in = "liner"', 'bears_on = "block"'),))
    assert workshop.write(bare).only(POINTS, "block").outcome == "not assessed"


@pytest.mark.parametrize(("flash", "outcome"), [("320 °C", "conforms"), ("319 °C", "finding")])
def test_flash_point_from_both_sides(workshop: Workshop, flash: str, outcome: str) -> None:
    """The wall's 290 °C in running and 30 K."""
    check = workshop.write(liner(("340 °C", flash))).only(FLASH, "liner")
    assert check.outcome == outcome
    assert check.grade is (Grade.OBSERVATION if outcome == "finding" else None)


def test_flash_point_is_not_assessed_without(workshop: Workshop) -> None:
    check = workshop.write(liner(('flash_point = "340 °C"', ""))).only(FLASH, "liner")
    assert check.outcome == "not assessed"
    assert "flash_point" in check.says


def test_flash_point_of_a_block_without_bare_rings(workshop: Workshop) -> None:
    assert workshop.write(files()).only(FLASH, "block").outcome == "not applicable"


@given(T=st.floats(300, 700), more=st.floats(0, 200))
def test_a_hotter_wall_leaves_less(T: float, more: float) -> None:
    assert flash_margin(T_f=600.0, T=T + more) <= flash_margin(T_f=600.0, T=T)
