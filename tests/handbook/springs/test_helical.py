"""Springs: rate from the torsion of the wire, surge from the wave equation, and invariants."""

from __future__ import annotations

import math
from typing import Any

import numpy as np
import pytest
from hypothesis import given, strategies as st

from speclint.errors import OutOfRange
from speclint.handbook.springs.helical import (
    bergstraesser_factor,
    coil_mass,
    corrected_shear_stress,
    direct_shear_factor,
    natural_frequency,
    natural_frequency_from_mass,
    natural_frequency_of_the_standard,
    shear_stress,
    spring_index,
    spring_load,
    spring_rate,
    wahl_factor,
    working_coils,
)

G, RHO = 81.5e9, 7850.0
wires = st.floats(0.5e-3, 20e-3)
indices = st.floats(3.0, 16.0)
coils = st.floats(2.0, 20.0)
factors = st.floats(0.2, 5.0)


@given(d=wires, w=indices, n=coils)
def test_the_rate_is_the_twist_of_the_straightened_wire(d: float, w: float, n: float) -> None:
    # Each turn of wire, π D long, twists by T L/(G J) under T = F D/2 and lets the load down by D/2 of it.
    D, F = w * d, 1.0
    polar_moment = math.pi * d**4 / 32
    sink = (F * D / 2) * (math.pi * D * n) / (G * polar_moment) * D / 2
    assert spring_rate(G, d, D, n) == pytest.approx(F / sink)
    assert working_coils(G, d, D, F, sink) == pytest.approx(n)
    assert spring_load(spring_rate(G, d, D, n), sink) == pytest.approx(F)


@given(d=wires, w=indices, n=coils)
def test_stress_and_deflection_agree_as_the_standard_states(d: float, w: float, n: float) -> None:
    # τ = G d s/(π n D²), the standard's second form
    D, s = w * d, 0.1 * n * d
    F = spring_load(spring_rate(G, d, D, n), s)
    assert shear_stress(F, D, d) == pytest.approx(G * d * s / (math.pi * n * D**2))


@given(d=wires, w=indices, n=coils, factor=factors)
def test_a_spring_scales_as_a_model_does(d: float, w: float, n: float, factor: float) -> None:
    small, large = spring_rate(G, d, w * d, n), spring_rate(G, factor * d, factor * w * d, n)
    assert large == pytest.approx(factor * small)
    slow = natural_frequency(factor * d, factor * w * d, n, G, RHO)
    assert slow == pytest.approx(natural_frequency(d, w * d, n, G, RHO) / factor)


@pytest.mark.parametrize("n", [4.0, 8.0])
def test_surge_is_the_lowest_tone_of_a_chain_of_masses_between_fixed_ends(n: float) -> None:
    d, D, links = 0.008, 0.048, 400
    stiffness = spring_rate(G, d, D, n) * links
    mass = coil_mass(RHO, d, D, n) / links
    chain = 2 * np.eye(links - 1) - np.eye(links - 1, k=1) - np.eye(links - 1, k=-1)
    lowest = math.sqrt(np.linalg.eigvalsh(chain)[0] * stiffness / mass) / (2 * math.pi)
    assert natural_frequency(d, D, n, G, RHO) == pytest.approx(lowest, rel=1e-4)


@given(d=wires, w=indices, n=coils)
def test_the_three_forms_of_surge_agree(d: float, w: float, n: float) -> None:
    D = w * d
    surge = natural_frequency(d, D, n, G, RHO)
    from_mass = natural_frequency_from_mass(spring_rate(G, d, D, n), coil_mass(RHO, d, D, n))
    assert from_mass == pytest.approx(surge)
    assert natural_frequency_of_the_standard(d, D, n, G, RHO) == pytest.approx(surge, rel=1e-3)


@given(w=indices, more=st.floats(1.01, 2.0))
def test_correction_dies_away_as_the_coil_opens(w: float, more: float) -> None:
    for factor in (bergstraesser_factor, wahl_factor, direct_shear_factor):
        assert 1 < factor(more * w) < factor(w)


@given(w=indices)
def test_the_two_full_corrections_differ_by_less_than_two_per_cent(w: float) -> None:
    assert bergstraesser_factor(w) <= wahl_factor(w) <= 1.02 * bergstraesser_factor(w)
    assert direct_shear_factor(w) < bergstraesser_factor(w)


def test_corrected_stress_is_the_factor_times_the_uncorrected() -> None:
    # 8 × 48 × 900/(π × 512) = 214.859 MPa; × 26/21 = 266.016 MPa
    assert corrected_shear_stress(26 / 21, 900, 0.048, 0.008) == pytest.approx(266.016e6, rel=1e-5)


def test_index_is_mean_diameter_over_wire() -> None:
    assert spring_index(0.050, 0.010) == pytest.approx(5.0)


@pytest.mark.parametrize(
    "formula",
    [
        lambda d, D: spring_index(D, d),
        lambda d, D: spring_rate(G, d, D, 5),
        lambda d, D: working_coils(G, d, D, 1.0, 1.0),
        lambda d, D: shear_stress(1.0, D, d),
        lambda d, D: coil_mass(RHO, d, D, 5),
        lambda d, D: natural_frequency(d, D, 5, G, RHO),
        lambda d, D: natural_frequency_of_the_standard(d, D, 5, G, RHO),
    ],
)
def test_a_coil_closer_than_its_wire_is_refused(formula: Any) -> None:
    assert formula(0.01, 0.0101) > 0
    for d, D in ((0.01, 0.01), (0.0, 0.01), (-0.01, 0.01)):
        with pytest.raises(OutOfRange, match="not between 0 and the mean coil diameter"):
            formula(d, D)


@pytest.mark.parametrize("factor", [bergstraesser_factor, wahl_factor, direct_shear_factor])
def test_an_index_below_two_is_refused(factor: Any) -> None:
    assert factor(2.0) > 1.2
    with pytest.raises(OutOfRange, match="below 2"):
        factor(1.999)


def test_no_coils_no_load_no_mass_are_refused() -> None:
    for formula in (natural_frequency, natural_frequency_of_the_standard):
        assert formula(0.01, 0.05, 0.1, G, RHO) > 0
        with pytest.raises(OutOfRange, match="not above 0"):
            formula(0.01, 0.05, 0.0, G, RHO)
    assert spring_rate(G, 0.01, 0.05, 0.5) > 0
    with pytest.raises(OutOfRange, match="not above 0"):
        spring_rate(G, 0.01, 0.05, 0.0)
    with pytest.raises(OutOfRange, match="load 0 N is not above 0"):
        working_coils(G, 0.01, 0.05, 0.0, 0.01)
    with pytest.raises(OutOfRange, match="mass 0 kg is not above 0"):
        natural_frequency_from_mass(1.0, 0.0)
