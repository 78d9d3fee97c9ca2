"""Lengths of springs: geometry of the helix, stability of an elastic column with shear, table entries."""

from __future__ import annotations

import math

import pytest
from hypothesis import given, strategies as st

from speclint.errors import NotKnown, OutOfRange
from speclint.handbook.springs.lengths import (
    buckling_deflection,
    clearance_multiplier,
    clearance_sum_cold_coiled,
    clearance_sum_hot_coiled,
    coil_pitch,
    dead_coils,
    outside_growth_at_solid,
    seating_coefficient,
    solid_coils,
    solid_length,
)

G, E = 81.5e9, 206e9


@pytest.mark.parametrize(
    ("process", "ends", "added", "dead"),
    [
        ("cold", "ground", 0, 2),
        ("cold", "closed", 1.5, 2),
        ("hot", "ground", -0.3, 1.5),
        ("hot", "closed", 1.1, 1.5),
    ],
)
def test_end_finishes_are_those_of_the_standard(process: str, ends: str, added: float, dead: float) -> None:
    assert solid_coils(process, ends).nominal == added
    assert dead_coils(process, ends).nominal == dead
    assert "as reproduced" in solid_coils(process, ends).source.place


def test_unknown_finishes_are_not_guessed() -> None:
    with pytest.raises(NotKnown, match="no ends cold coiled, open; known: cold coiled, ground"):
        solid_coils("cold", "open")
    with pytest.raises(NotKnown, match="no process 'warm'"):
        clearance_multiplier("warm", dynamic=False)
    with pytest.raises(NotKnown, match="seating"):
        seating_coefficient("standing on its head")


def test_alternating_load_wants_more_room() -> None:
    assert clearance_multiplier("cold", dynamic=False).nominal == 1
    assert clearance_multiplier("cold", dynamic=True).nominal == 1.5
    assert clearance_multiplier("hot", dynamic=False).nominal == 1
    assert clearance_multiplier("hot", dynamic=True).nominal == 2


def test_seating_coefficients_are_the_lengths_of_euler_s_columns() -> None:
    # half, 0.699 (tan x = x), whole, whole (a column held both ends and free to sway), twice
    ways = {
        "both ends held and guided in line": 0.5,
        "one end held and the other hinged in line": math.pi / 4.4934,
        "both ends hinged in line": 1.0,
        "both ends held but one free sideways": 1.0,
        "one end held and the other free": 2.0,
    }
    for way, length in ways.items():
        assert seating_coefficient(way).nominal == pytest.approx(length, rel=2e-3)


def test_solid_length_by_hand() -> None:
    # (8 + 1.5) × 5 = 47.5 mm; (8 − 0.3) × 20 = 154 mm
    assert solid_length(8, 1.5, 5e-3) == pytest.approx(47.5e-3)
    assert solid_length(8, -0.3, 20e-3) == pytest.approx(154e-3)
    assert solid_length(0.5, 0.0, 20e-3) == pytest.approx(10e-3)
    with pytest.raises(OutOfRange, match="leave no solid length"):
        solid_length(0.3, -0.3, 20e-3)


@given(n=st.floats(2, 20), d=st.floats(1e-3, 20e-3), w=st.floats(3, 16), factor=st.floats(0.2, 5))
def test_clearances_scale_with_the_spring_and_its_coils(n: float, d: float, w: float, factor: float) -> None:
    for clearance in (clearance_sum_cold_coiled, clearance_sum_hot_coiled):
        plain = clearance(1, n, w * d, d)
        assert clearance(1, n, factor * w * d, factor * d) == pytest.approx(factor * plain)
        assert clearance(1.5, n, w * d, d) == pytest.approx(1.5 * plain)
        assert clearance(1, factor * n, w * d, d) == pytest.approx(factor * plain)


def test_clearances_by_hand() -> None:
    # 10 coils of 5 mm wire, D = 40 mm: 10 (0.0015 × 1600/5 + 0.5) = 9.8 mm; 10 × 0.02 × 45 = 9 mm
    assert clearance_sum_cold_coiled(1, 10, 0.040, 0.005) == pytest.approx(9.8e-3)
    assert clearance_sum_hot_coiled(1, 10, 0.040, 0.005) == pytest.approx(9.0e-3)


def test_outside_growth_by_hand() -> None:
    # pitch 10 mm, 5 mm wire, D = 40 mm: 0.1 (100 − 40 − 5)/40 = 0.1375 mm
    assert outside_growth_at_solid(0.010, 0.005, 0.040) == pytest.approx(0.1375e-3)


@given(d=st.floats(1e-3, 20e-3), w=st.floats(4, 12), gap=st.floats(0.05, 2.0))
def test_outside_growth_is_no_less_than_the_helix_alone_would_grow(d: float, w: float, gap: float) -> None:
    # The wire keeps its length: √((πD)² + m²) per coil. Ends free to turn let the coil unwind further.
    D, m = w * d, (1 + gap) * d
    helix_at_solid = math.sqrt((math.pi * D) ** 2 + m**2 - d**2) / math.pi
    growth = outside_growth_at_solid(m, d, D)
    assert helix_at_solid - D <= growth <= 3 * (helix_at_solid - D)


@given(d=st.floats(1e-3, 20e-3))
def test_a_coil_already_solid_does_not_grow(d: float) -> None:
    assert outside_growth_at_solid(d, d, 6 * d) == pytest.approx(0.0, abs=1e-12)
    with pytest.raises(OutOfRange, match="is less than the wire"):
        outside_growth_at_solid(0.999 * d, d, 6 * d)


def test_pitch_counts_the_wire_and_the_gap() -> None:
    # 10 coils, 30 mm of gap, 6 mm wire: 9 mm; unground ends add 1.5 × 6/10
    assert coil_pitch(0.030, 10, 0, 0.006) == pytest.approx(0.009)
    assert coil_pitch(0.030, 10, 1.5, 0.006) == pytest.approx(0.0099)
    assert coil_pitch(0.003, 0.5, 0, 0.006) == pytest.approx(0.012)
    with pytest.raises(OutOfRange, match="not above 0"):
        coil_pitch(0.030, 0, 0, 0.006)


@given(slenderness=st.floats(2.7, 30))
def test_at_the_buckling_deflection_haringx_s_column_is_critical(slenderness: float) -> None:
    """A spring column of length L has, per unit length, bending, shear and axial stiffness.

    With n coils over L: axial R L, bending β L with β = E d⁴/(32 n D (1 + E/(2 G))), shear of the
    sideways force E d⁴/(8 n D³) L. Haringx: P (1 + P/S) = π² B/(ν L)², at the squeezed length L = L_0 − s.
    """
    D, d, n = 0.05, 0.005, 10.0
    L_0 = slenderness * D
    s = buckling_deflection(L_0, D, 1.0, G, E)
    P = G * d**4 / (8 * D**3 * n) * s
    L = L_0 - s
    B = E * d**4 * L / (32 * n * D * (1 + E / (2 * G)))
    S = E * d**4 * L / (8 * n * D**3)
    load = P * (1 + P / S)
    assert load == pytest.approx(math.pi**2 * B / L**2, rel=1e-6)


@given(slenderness=st.floats(2.8, 30), longer=st.floats(1.01, 2))
def test_a_more_slender_spring_buckles_at_a_smaller_share_of_its_length(
    slenderness: float, longer: float
) -> None:
    stout = buckling_deflection(slenderness * 0.05, 0.05, 1.0, G, E) / (slenderness * 0.05)
    slender = buckling_deflection(longer * slenderness * 0.05, 0.05, 1.0, G, E) / (
        longer * slenderness * 0.05
    )
    assert slender < stout
    assert buckling_deflection(slenderness * 0.05, 0.05, 0.5, G, E) > stout * slenderness * 0.05


def test_a_stout_spring_cannot_buckle() -> None:
    # limit for steel: ν L_0/D = π √((1 − G/E)/(0.5 + G/E)) = π √(0.60437/0.89563) = 2.5807
    limit = 2.5807 * 0.05
    assert buckling_deflection(0.999 * limit, 0.05, 1.0, G, E) == 0.999 * limit
    assert buckling_deflection(1.001 * limit, 0.05, 1.0, G, E) < 0.83 * limit


def test_moduli_out_of_order_are_refused() -> None:
    with pytest.raises(OutOfRange, match="modulus of rigidity"):
        buckling_deflection(0.2, 0.05, 1.0, 206e9, 206e9)
    with pytest.raises(OutOfRange, match="must be above 0"):
        buckling_deflection(0.2, 0.05, 0.0, G, E)


@pytest.mark.parametrize("d", [0.0, 0.05])
def test_a_coil_closer_than_its_wire_is_refused(d: float) -> None:
    for clearance in (clearance_sum_cold_coiled, clearance_sum_hot_coiled):
        with pytest.raises(OutOfRange, match="mean coil diameter"):
            clearance(1, 5, 0.05, d)
    with pytest.raises(OutOfRange, match="mean coil diameter"):
        outside_growth_at_solid(0.06, d, 0.05)
