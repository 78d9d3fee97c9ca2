"""Bolt load of a gasket: agreement of the inch and metric forms, bounds, scaling."""

from __future__ import annotations

import math

import pytest
from hypothesis import given, strategies as st
from scipy.integrate import dblquad

from speclint.errors import OutOfRange
from speclint.handbook.bolted_joints import gaskets as g

widths = st.floats(0.5e-3, 0.05)
diameters = st.floats(0.05, 1.5)
pressures = st.floats(0, 5e6)


@given(widths)
def test_inch_and_metric_widths_agree_within_one_per_cent(b_0: float) -> None:
    assert g.effective_seating_width(b_0) == pytest.approx(g.effective_seating_width_metric(b_0), rel=0.01)


@given(widths)
def test_effective_width_is_never_more_than_the_basic(b_0: float) -> None:
    assert g.effective_seating_width(b_0) <= b_0 * (1 + 1e-12)


def test_effective_width_runs_through_a_quarter_inch_without_a_step() -> None:
    """0.5 √0.25 = 0.25 in."""
    below, above = 6.3499e-3, 6.3501e-3
    assert g.effective_seating_width(below) == below
    assert g.effective_seating_width(above) < above
    assert g.effective_seating_width(above) == pytest.approx(6.35e-3, rel=1e-4)


def test_a_solid_ring_in_its_groove_seats_on_an_eighth_of_its_width() -> None:
    """ASME VIII-1, Table 2-5.2, sketch 6 (memory): w/8, of a ring 12 mm wide 1.5 mm."""
    assert g.basic_seating_width_of_ring_joint(0.012) == pytest.approx(0.0015)


def test_metric_width_changes_at_six_point_three() -> None:
    """2.52 √6.3 = 6.3252 mm just above; the basic width itself just below."""
    assert g.effective_seating_width_metric(6.2999e-3) == 6.2999e-3
    assert g.effective_seating_width_metric(6.3001e-3) == pytest.approx(6.3252e-3, rel=1e-4)


@given(diameters, st.floats(2e-3, 0.04))
def test_reaction_diameter_lies_on_the_gasket(D_i: float, N: float) -> None:
    found = g.gasket_reaction_diameter(D_i + 2 * N, D_i)
    assert D_i < found < D_i + 2 * N
    assert found >= D_i + N - 1e-12


def test_reaction_diameter_of_a_narrow_gasket_is_its_mean() -> None:
    """12.7 mm of contact is the last narrow one.

    At 12.8 mm b = 0.5 √(6.4/25.4) in = 6.375 mm and G = 325.6 - 12.75 mm.
    """
    assert g.gasket_reaction_diameter(0.3254, 0.3) == pytest.approx(0.3127)
    assert g.gasket_reaction_diameter(0.3256, 0.3) == pytest.approx(0.31285, rel=1e-6)


def test_a_gasket_has_width() -> None:
    assert g.contact_width(0.31, 0.30) == pytest.approx(0.005)
    with pytest.raises(
        OutOfRange, match=r"outside of the gasket, 300 mm, is not larger than its inside, 300 mm"
    ):
        g.contact_width(0.30, 0.30)


def test_operating_load_as_an_integral_over_the_faces() -> None:
    """Pressure over the circle G, and m p over a ring 2 b wide about G, summed in polar coordinates."""
    G, b, m, p = 0.435, 7.8e-3, 3.0, 2.8e6
    lifted, _ = dblquad(lambda r, _angle: p * r, 0, 2 * math.pi, 0, G / 2)
    held, _ = dblquad(lambda r, _angle: m * p * r, 0, 2 * math.pi, G / 2 - b, G / 2 + b)
    assert g.operating_bolt_load(G, b, m, p) == pytest.approx(lifted + held)


def test_seating_load_as_an_integral_over_the_face() -> None:
    G, b, y = 0.435, 7.8e-3, 69e6
    load, _ = dblquad(lambda r, _angle: y * r, 0, 2 * math.pi, G / 2 - b / 2, G / 2 + b / 2)
    assert g.seating_bolt_load(G, b, y) == pytest.approx(load)


@given(diameters, st.floats(1e-3, 0.02), st.floats(0, 7), pressures)
def test_operating_load_is_at_least_the_end_force(G: float, b: float, m: float, p: float) -> None:
    assert g.operating_bolt_load(G, b, m, p) >= g.hydrostatic_end_force(G, p)
    assert g.operating_bolt_load(G, b, m, 2 * p) == pytest.approx(2 * g.operating_bolt_load(G, b, m, p))


def test_a_self_energising_ring_needs_the_end_force_alone() -> None:
    assert g.operating_bolt_load(0.4, 3e-3, 0.0, 2e6) == g.hydrostatic_end_force(0.4, 2e6)
    assert g.seating_bolt_load(0.4, 3e-3, 0.0) == 0


@given(st.floats(1e4, 1e7), st.floats(5e7, 2e8), st.floats(1e4, 1e7), st.floats(5e7, 2e8))
def test_required_area_bears_both_loads(W1: float, S_b: float, W2: float, S_a: float) -> None:
    area = g.required_bolt_area(W1, S_b, W2, S_a)
    assert area * S_b >= W1 * (1 - 1e-12)
    assert area * S_a >= W2 * (1 - 1e-12)
    assert area * S_b == pytest.approx(W1) or area * S_a == pytest.approx(W2)


def test_design_load_lies_between_needed_and_possible() -> None:
    """By hand: (4000 + 6000) mm² × 170 MPa/2 = 850 kN, between 680 and 1020 kN."""
    assert g.flange_design_bolt_load(4000e-6, 6000e-6, 170e6) == pytest.approx(850e3)


def test_least_width_loads_the_gasket_to_twice_its_seating_stress() -> None:
    width = g.least_width_against_crushing(4000e-6, 170e6, 69e6, 0.435)
    assert 4000e-6 * 170e6 / (math.pi * 0.435 * width) == pytest.approx(2 * 69e6)
    with pytest.raises(OutOfRange, match="without seating stress"):
        g.least_width_against_crushing(4000e-6, 170e6, 0.0, 0.435)
