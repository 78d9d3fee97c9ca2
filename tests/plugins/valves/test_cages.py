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


@pytest.mark.parametrize(
    ("cage", "bar", "outcome"),
    [
        ("400 °C", "19.2", "conforms"),
        ("400 °C", "19.0", "finding"),
        ("150 °C", "13.8", "conforms"),
        ("150 °C", "13.6", "finding"),
    ],
)
def test_a_cage_has_the_strength_of_its_own_temperature(
    workshop: DesignFolder, cage: str, bar: str, outcome: str
) -> None:
    """1.4021 yields at 355 MPa at 400 °C, at 495 MPa at 150 °C: 36.32 kN at 0.67 of it want 8 × 19.09 and 13.69 mm²."""
    made = caged(bar, "2000", "cover over it")
    made["cage.toml"] = made["cage.toml"].replace("known-steel", "stainless-1.4021")
    made["duty.toml"] = made["duty.toml"].replace("poppet-valve =", f'valve-cage = "{cage}"\npoppet-valve =')
    assert workshop.write(made).only(RULE).outcome == outcome


def test_a_cage_of_which_nobody_counted_the_bars(workshop: DesignFolder) -> None:
    made = caged("60", "2000")
    made["cage.toml"] = made["cage.toml"].replace("bars = 8\n", "")
    expect_not_assessed(workshop.write(made).only(RULE), "bars")


@pytest.mark.parametrize(
    ("holder", "outcome"),
    [
        ("block", "conforms"),
        ("valve", "finding"),
        ("spindle", "finding"),
        ("tappet", "finding"),
        ("piston", "finding"),
        ("crosshead", "finding"),
    ],
)
def test_no_part_that_moves_holds_a_cage(workshop: DesignFolder, holder: str, outcome: str) -> None:
    made = caged("40", "600")
    made |= {f"{one}.toml": f'kind = "{one}"\nid = "{one}"\n' for one in ("piston", "crosshead")}
    made["cage.toml"] = made["cage.toml"].replace('held_by = "block"', f'held_by = "{holder}"')
    check = workshop.write(made).only(RULE)
    assert check.outcome == outcome
    if outcome == "finding":
        assert f"held by {holder}, which moves" in check.says


def test_a_cage_of_which_no_holder_is_told_is_judged_by_its_bars(workshop: DesignFolder) -> None:
    """Who holds it is asked by valve.cannot-fall-in."""
    made = caged("40", "600")
    made["cage.toml"] = made["cage.toml"].replace('held_by = "block"\n', "")
    assert workshop.write(made).only(RULE).outcome == "conforms"
