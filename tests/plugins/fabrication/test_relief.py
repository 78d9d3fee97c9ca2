"""block.stress-relief: temperature, time, order and the metal left."""

from __future__ import annotations

import pytest
from hypothesis import given, strategies as st

from speclint import OutOfRange
from speclint.testing import DesignFolder
from speclint_fabrication.formulae.relief import holding_time
from speclint_fabrication.formulae.tables import weldment_tolerance
from tests.plugins.fabrication.bench import bare, write

RULE = "block.stress-relief"


def test_a_block_relieved_before_it_is_bored_conforms(workshop: DesignFolder) -> None:
    """40 mm plates want 35 min; ISO 13920 class B over 400 to 1000 mm ± 3 mm (from memory), and 2 mm to come off."""
    check = write(workshop).only(RULE)
    assert check.outcome == "conforms"
    assert check.utilisation == pytest.approx(1.0)


@pytest.mark.parametrize(
    ("old", "new", "outcome"),
    [
        ('"570 °C"', '"550 °C"', "conforms"),
        ('"570 °C"', '"549 °C"', "finding"),
        ('"570 °C"', '"600 °C"', "conforms"),
        ('"570 °C"', '"601 °C"', "finding"),
        ('"35 min"', '"34 min"', "finding"),
        ('allowance = "5 mm"', 'allowance = "4.9 mm"', "finding"),
        ('dimension = "900 mm"', 'dimension = "1001 mm"', "finding"),
        ("before_finishing = true", "before_finishing = false", "finding"),
        ("before_finishing = true", "", "not assessed"),
        ('"570 °C"', "", "not assessed"),
        ('tolerance_class = "B"', "", "not assessed"),
    ],
)
def test_each_part_of_the_relief(workshop: DesignFolder, old: str, new: str, outcome: str) -> None:
    if not new and old == '"570 °C"':
        old = 'temperature = "570 °C"'
    assert write(workshop, (old, new)).only(RULE).outcome == outcome


@pytest.mark.parametrize("table", ["plates", "faces"])
def test_plates_and_faces_must_be_stated(workshop: DesignFolder, table: str) -> None:
    assert bare(workshop, table).only(RULE).outcome == "not assessed"


def test_the_table_of_tolerances_changes_above_its_bounds() -> None:
    """ISO 13920:1996, Table 1 (from memory)."""
    assert weldment_tolerance("A", 1.0).nominal == 0.002
    assert weldment_tolerance("A", 1.0001).nominal == 0.003
    assert weldment_tolerance("D", 3.0).nominal == 0.016
    with pytest.raises(OutOfRange):
        weldment_tolerance("A", 0.002)


@given(t=st.floats(1e-3, 0.3), by=st.floats(0, 0.1))
def test_thicker_plates_are_held_no_shorter(t: float, by: float) -> None:
    assert holding_time(t + by) >= holding_time(t) - 1e-9
