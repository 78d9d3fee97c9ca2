"""Rectangular panels: Timoshenko's tables against Navier's series and Ritz's energy method."""

from __future__ import annotations

import pytest
from hypothesis import given, strategies as st

from speclint.errors import NotKnown, OutOfRange
from speclint.handbook import tables
from speclint.handbook.plates.panels import (
    RECTANGLES,
    panel_deflection,
    panel_deflection_factor,
    panel_stress,
    panel_stress_factor,
    panel_thickness,
)
from tests.handbook.plate_equilibrium import clamped_rectangle, supported_rectangle

ROWS = [(row["edges"], float(row["short_over_long"])) for row in tables.rows(RECTANGLES)]
BETWEEN = [
    (edges, k) for edges in ("supported", "clamped") for k in (0.1, 0.22, 0.29, 0.4, 0.51, 0.645, 0.8, 0.95)
]


@pytest.mark.parametrize(("edges", "k"), [row for row in ROWS if row[1] > 0])
def test_each_row_is_that_of_a_numerical_solution(edges: str, k: float) -> None:
    deflection, moment = supported_rectangle(k, 0.3) if edges == "supported" else clamped_rectangle(k)
    assert panel_deflection_factor(edges, k, 1.0).nominal == pytest.approx(deflection, rel=6e-3)
    assert panel_stress_factor(edges, k, 1.0).nominal == pytest.approx(6 * moment, rel=4e-3)


@pytest.mark.parametrize("edges", ["supported", "clamped"])
def test_an_endless_panel_is_a_strip_of_beam(edges: str) -> None:
    # beam: 5/384 and 1/8 supported, 1/384 and 1/12 clamped
    deflection, moment = (5 / 384, 1 / 8) if edges == "supported" else (1 / 384, 1 / 12)
    assert panel_deflection_factor(edges, 1e-9, 1.0).nominal == pytest.approx(deflection, rel=3e-3)
    assert panel_stress_factor(edges, 1e-9, 1.0).nominal == pytest.approx(6 * moment, rel=1e-3)


@pytest.mark.parametrize(("edges", "k"), BETWEEN)
def test_between_rows_stress_is_within_one_and_a_half_and_deflection_within_two_and_a_half_per_cent(
    edges: str, k: float
) -> None:
    deflection, moment = supported_rectangle(k, 0.3) if edges == "supported" else clamped_rectangle(k)
    assert panel_deflection_factor(edges, k, 1.0).nominal == pytest.approx(deflection, rel=0.025)
    assert panel_stress_factor(edges, k, 1.0).nominal == pytest.approx(6 * moment, rel=0.015)


@given(k=st.floats(0.01, 0.98), squarer=st.floats(0.005, 0.02))
def test_a_squarer_panel_is_stiffer_and_clamping_helps(k: float, squarer: float) -> None:
    for edges in ("supported", "clamped"):
        for factor in (panel_stress_factor, panel_deflection_factor):
            assert factor(edges, k + squarer, 1.0).nominal <= factor(edges, k, 1.0).nominal
    assert (
        panel_stress_factor("supported", 1.0, 1.0).nominal < panel_stress_factor("supported", k, 1.0).nominal
    )
    assert (
        panel_deflection_factor("clamped", k, 1.0).nominal
        < panel_deflection_factor("supported", k, 1.0).nominal
    )


@given(k=st.floats(0.05, 5.0), p=st.floats(1e4, 1e7), a=st.floats(0.02, 1), S=st.floats(20e6, 200e6))
def test_at_the_least_thickness_the_stress_is_the_allowable(k: float, p: float, a: float, S: float) -> None:
    t = panel_thickness(k, p, a, S)
    if 4 * t <= a:
        assert panel_stress(k, p, a, t) == pytest.approx(S)


@given(p=st.floats(1e4, 1e7), thin=st.floats(0.01, 0.25), factor=st.floats(0.2, 5))
def test_panels_scale(p: float, thin: float, factor: float) -> None:
    stress, lift = (
        panel_stress(0.5, p, 0.2, thin * 0.2),
        panel_deflection(0.0026, p, 0.2, thin * 0.2, 100e9, 0.26),
    )
    assert panel_stress(0.5, p, factor * 0.2, factor * thin * 0.2) == pytest.approx(stress)
    assert panel_stress(0.5, factor * p, 0.2, thin * 0.2) == pytest.approx(factor * stress)
    grown = panel_deflection(0.0026, p, factor * 0.2, factor * thin * 0.2, 100e9, 0.26)
    assert grown == pytest.approx(factor * lift)


@pytest.mark.parametrize("t", [0.05, 0.06, 0.5])
def test_a_plate_thicker_than_a_quarter_of_its_side_counts_as_one_of_a_quarter(t: float) -> None:
    """0.5 · 1 MPa · 4² = 8 MPa; one of 49 mm is stressed a little more."""
    assert panel_stress(0.5, 1e6, 0.2, t) == pytest.approx(8e6)
    assert panel_stress(0.5, 1e6, 0.2, 0.049) > 8e6


def test_limits_are_refused() -> None:
    assert panel_stress_factor("clamped", 1.0, 1.0).nominal > 0
    for a in (1.001, 0.0):
        with pytest.raises(OutOfRange, match="short side"):
            panel_stress_factor("clamped", a, 1.0)
    with pytest.raises(NotKnown, match="no edges 'glued' of a panel; known: supported, clamped"):
        panel_deflection_factor("glued", 1.0, 1.0)
    assert panel_stress(0.5, 1e6, 0.2, 0.05) > 0
    with pytest.raises(OutOfRange, match="must be above 0"):
        panel_stress(0.5, 1e6, 0.2, 0.0)
    with pytest.raises(OutOfRange, match="a quarter of the short side"):
        panel_deflection(0.0026, 1e6, 0.2, 0.0501, 200e9, 0.3)
    with pytest.raises(OutOfRange, match="a quarter of the short side"):
        panel_deflection(0.0026, 1e6, 0.2, 0.0, 200e9, 0.3)
    assert panel_thickness(0.5, 0.0, 0.2, 1e6) == 0
    with pytest.raises(OutOfRange, match="is negative or stress"):
        panel_thickness(0.5, -1.0, 0.2, 1e6)
    with pytest.raises(OutOfRange, match="is negative or stress"):
        panel_thickness(0.5, 1e6, 0.2, 0.0)


def test_panels_by_hand() -> None:
    # 0.4 × 2 MPa × (300/15)² = 320 MPa; back again 300 √(0.4 × 2/320) = 15 mm
    assert panel_stress(0.4, 2e6, 0.300, 0.015) == pytest.approx(320e6)
    assert panel_thickness(0.4, 2e6, 0.300, 320e6) == pytest.approx(0.015)
    # K = 100e9 × 3.375e-6/12 = 28 125 N·m at ν = 0; 0.002 × 2e6 × 0.0081/28 125 = 1.152 mm
    assert panel_deflection(0.002, 2e6, 0.300, 0.015, 100e9, 0.0) == pytest.approx(1.152e-3)
