"""block.flat-wall: panels and ribs worked by hand.

Clamped, 190 × 380 mm: k = 6 × 0.0829 = 0.4974 (Timoshenko, Table 35); 19 mm left of 20. σ = 0.4974 × 100 p = 49.74 p.
"""

from __future__ import annotations

import pytest
from hypothesis import given, strategies as st

from speclint import Grade
from speclint.testing import DesignFolder, limit, on_sheet
from speclint_fabrication.formulae.walls import bending_allowed_at_weld, rib_section_modulus, wasted_thickness
from tests.plugins.fabrication.bench import bare, write

RULE = "block.flat-wall"
STARTING = 'safety_valve_pressure = "16.6 bar gauge"'
NO_RIBS = ("ribbed = true", "ribbed = false")


def test_the_rib_governs_by_hand(workshop: DesignFolder) -> None:
    """Strip 190 × 19 on a rib 100 × 12 mm: y = (3610 × 109.5 + 1200 × 50)/4810 = 94.656 mm, I = 4.2970e6 mm⁴.

    Z = 45 396 mm³; M = 1.66 × 190 × 390²/8 = 5.9966e6 N·mm: 132.10 MPa of 133.33.
    """
    check = write(workshop).only(RULE)
    assert check.outcome == "conforms"
    assert on_sheet(check, "Z") == pytest.approx(45.396e-6, rel=1e-4)
    assert on_sheet(check, "σ_r of chest") == pytest.approx(132.10e6, rel=1e-4)
    assert limit(check) == pytest.approx(200e6 / 1.5)


@pytest.mark.parametrize(("span", "outcome"), [("391 mm", "conforms"), ("392 mm", "finding")])
def test_a_rib_has_its_span(workshop: DesignFolder, span: str, outcome: str) -> None:
    """132.10 × (392/390)² = 133.46 MPa."""
    check = write(workshop, ('"390 mm"', f'"{span}"')).only(RULE)
    assert check.outcome == outcome
    assert check.grade is (Grade.HOLD if outcome == "finding" else None)


def test_clamped_ribs_carry_half_as_much_again(workshop: DesignFolder) -> None:
    check = write(workshop, ('ends = "supported"', 'ends = "clamped"')).only(RULE)
    assert on_sheet(check, "σ_r of chest") == pytest.approx(132.10e6 * 8 / 12, rel=1e-4)


@pytest.mark.parametrize(("pressure", "outcome"), [("34.17 bar", "conforms"), ("34.18 bar", "finding")])
def test_a_panel_carries_its_pressure_by_the_weld_at_its_edge(
    workshop: DesignFolder, pressure: str, outcome: str
) -> None:
    """The edge is welded with a joint factor of 0.85: 49.74 p = 0.85 × 1.5 × 133.33 MPa at p = 34.178 bar."""
    higher = (STARTING, f'safety_valve_pressure = "{pressure} gauge"')
    check = write(workshop, NO_RIBS, duty=higher).only(RULE)
    assert check.outcome == outcome
    assert limit(check) == pytest.approx(170e6)


#: Another wall than the chest's, so that no weld makes up the chest.
OTHER_WALL = ('wall = "chest"', 'wall = "barrel"')


@pytest.mark.parametrize(("pressure", "outcome"), [("40.2 bar", "conforms"), ("40.3 bar", "finding")])
def test_a_panel_that_no_weld_makes_up_carries_all_of_it(
    workshop: DesignFolder, pressure: str, outcome: str
) -> None:
    """49.74 p = 1.5 × 133.33 MPa at p = 40.21 bar."""
    higher = (STARTING, f'safety_valve_pressure = "{pressure} gauge"')
    check = write(workshop, NO_RIBS, OTHER_WALL, duty=higher).only(RULE)
    assert check.outcome == outcome
    assert limit(check) == pytest.approx(200e6)


def test_the_poorest_weld_of_a_wall_counts(workshop: DesignFolder) -> None:
    """Both welds name the chest: 0.7 and 0.85. 49.74 × 1.66 = 82.57 of 0.7 × 200 = 140 MPa."""
    poorer = ('joint_factor = "1"', 'joint_factor = "0.7"')
    check = write(workshop, NO_RIBS, poorer, ('wall = "barrel"', 'wall = "chest"')).only(RULE)
    assert limit(check) == pytest.approx(140e6)
    assert check.utilisation == pytest.approx(82.57 / 140, rel=1e-4)


def test_a_rib_is_no_weld(workshop: DesignFolder) -> None:
    """The rib governs, by the tension of its own plate, whatever the factor at the edge."""
    assert limit(write(workshop).only(RULE)) == pytest.approx(200e6 / 1.5)


@pytest.mark.parametrize("factor", ['joint_factor = "1.1"', 'joint_factor = "0"'])
def test_a_factor_that_no_weld_has_is_a_query(workshop: DesignFolder, factor: str) -> None:
    check = write(workshop, NO_RIBS, ('joint_factor = "0.85"', factor)).only(RULE)
    assert (check.outcome, check.grade) == ("finding", Grade.QUERY)


@given(z=st.floats(0.01, 1.0), S=st.floats(1e6, 1e9))
def test_a_weld_never_raises_what_is_allowed(z: float, S: float) -> None:
    assert bending_allowed_at_weld(z, S) <= S


def test_a_supported_edge_is_worse_than_a_clamped_one(workshop: DesignFolder) -> None:
    """Supported, 1:2: 6 × 0.1017 = 0.6102 (Timoshenko, Table 8)."""
    edges = ('edges = "clamped"\none_side = "live steam"', 'edges = "supported"\none_side = "live steam"')
    check = write(workshop, NO_RIBS, edges).only(RULE)
    assert on_sheet(check, "k of chest") == pytest.approx(0.6102)


def test_the_test_pressure_is_judged_cold(workshop: DesignFolder) -> None:
    """49 bar: 49.74 × 4.9 = 243.7 of 0.85 × 240 = 204 MPa cold, where 16.6 bar hot has 82.57 of 170."""
    hard = (
        '[cases.test]\ncylinder_pressure = "18 bar gauge"\nlive_pressure = "18',
        '[cases.test]\ncylinder_pressure = "18 bar gauge"\nlive_pressure = "49',
    )
    check = write(workshop, NO_RIBS, duty=hard).only(RULE)
    assert (check.outcome, check.case) == ("finding", "test")


@pytest.mark.parametrize(
    "missing",
    [
        'edges = "clamped"\none_side = "live steam"',
        "ribbed = true",
        'depth = "100 mm"',
        'makes = "block"',
        'short = "190 mm"',
        'joint_factor = "0.85"',
    ],
)
def test_what_is_needed_must_be_stated(workshop: DesignFolder, missing: str) -> None:
    check = write(workshop, (missing, "")).only(RULE)
    assert (check.outcome, check.grade) == ("not assessed", Grade.HOLD)


def test_a_weldment_without_walls_is_not_assessed(workshop: DesignFolder) -> None:
    assert bare(workshop, "walls").only(RULE).outcome == "not assessed"


def test_an_allowance_may_not_eat_the_wall(workshop: DesignFolder) -> None:
    eaten = (
        'thickness = "20 mm"\nmeets_steam = true\ncorrosion_allowance = "1 mm"',
        'thickness = "20 mm"\nmeets_steam = true\ncorrosion_allowance = "20 mm"',
    )
    check = write(workshop, eaten).only(RULE)
    assert (check.outcome, check.grade) == ("finding", Grade.QUERY)


@given(depth=st.floats(0.03, 0.2), by=st.floats(1.01, 2.0))
def test_a_deeper_rib_is_stiffer(depth: float, by: float) -> None:
    assert rib_section_modulus(0.2, 0.02, by * depth, 0.012) > rib_section_modulus(0.2, 0.02, depth, 0.012)
    assert wasted_thickness(depth, depth / 2) == pytest.approx(depth / 2)
