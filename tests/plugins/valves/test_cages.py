"""A cage under a broken valve of 170 mm, by hand: 1.6 MPa × 22 698 mm² = 36.32 kN; proof stress 240 MPa cold."""

from __future__ import annotations

import pytest

from speclint import Grade
from speclint.testing import DesignFolder, expect_not_assessed, found, on_sheet
from tests.plugins.valves.gear import train_files

RULE = "cage.holds-a-broken-valve"


def caged(bar: str, fastening: str, by: str = "welds") -> dict[str, str]:
    made = train_files(valve=(('lift = "20 mm"', 'lift = "20 mm"\noutside_diameter = "170 mm"'),))
    made["cage.toml"] = (
        'kind = "valve-cage"\nid = "cage"\nmaterial = "known-steel"\nsurrounds = "valve"\nheld_by = "block"\n'
        f'bars = 8\nbar_area = "{bar} mm²"\nfastened_by = "{by}"\nfastening_area = "{fastening} mm²"\n'
    )
    return made


@pytest.mark.parametrize(
    ("bar", "fastening", "by", "outcome"),
    [
        ("28.3", "600", "welds", "conforms"),
        ("28.2", "600", "welds", "finding"),
        ("40", "379", "welds", "conforms"),
        ("40", "378", "welds", "finding"),
        ("40", "378", "cover over it", "conforms"),
        ("40", "600", "nothing", "finding"),
    ],
)
def test_a_cage_from_both_sides(
    workshop: DesignFolder, bar: str, fastening: str, by: str, outcome: str
) -> None:
    """36.32 kN at 160.8 MPa are 225.9 mm², 28.23 for each of eight; at 96 MPa 378.3 mm²."""
    check = workshop.write(caged(bar, fastening, by)).only(RULE)
    assert check.outcome == outcome
    assert check.grade is (Grade.NONCONFORMITY if outcome == "finding" else None)
    if by != "nothing":
        assert on_sheet(check, "F") / 1e3 == pytest.approx(36.32, abs=0.01)


def test_the_bars_by_hand(workshop: DesignFolder) -> None:
    assert found(workshop.write(caged("60", "2000")).only(RULE)) / 1e6 == pytest.approx(75.66, abs=0.01)


def test_a_cage_of_which_nobody_counted_the_bars(workshop: DesignFolder) -> None:
    made = caged("60", "2000")
    made["cage.toml"] = made["cage.toml"].replace("bars = 8\n", "")
    expect_not_assessed(workshop.write(made).only(RULE), "bars")
