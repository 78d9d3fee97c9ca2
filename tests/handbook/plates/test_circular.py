"""Circular plates against a numerical solution of their equilibrium, and their invariants."""

from __future__ import annotations

from typing import Any

import pytest
from hypothesis import given, strategies as st

from speclint.errors import OutOfRange
from speclint.handbook.plates.circular import (
    clamped_plate_centre_stress,
    clamped_plate_deflection,
    clamped_plate_edge_moment,
    clamped_plate_stress,
    edge_moment_deflection,
    edge_moment_stress,
    plate_rigidity,
    supported_plate_deflection,
    supported_plate_stress,
    supported_plate_stress_within,
)
from tests.handbook.plate_equilibrium import round_plate

E, NU = 200e9, 0.3
D, T, P = 0.4, 0.02, 2e6
# what unit load, radius and rigidity mean for this plate
MOMENT, LIFT = P * (D / 2) ** 2, P * (D / 2) ** 4 / plate_rigidity(E, T, NU)
SMALL = 0.01

diameters = st.floats(0.05, 1.0)
thinnesses = st.floats(0.005, 0.25)
pressures = st.floats(1e4, 2e7)
factors = st.floats(0.2, 5.0)


def test_clamped_plate_is_that_of_equilibrium() -> None:
    bent = round_plate(SMALL, NU, "clamped", "guided")
    assert clamped_plate_stress(P, D, T) == pytest.approx(6 * bent.moment * MOMENT / T**2, rel=3e-3)
    assert clamped_plate_edge_moment(P, D) == pytest.approx(-bent.outer_moment * MOMENT, rel=3e-3)
    assert clamped_plate_deflection(P, D, T, E, NU) == pytest.approx(bent.deflection * LIFT, rel=3e-3)
    centre = clamped_plate_centre_stress(P, D, T, NU)
    # round a small level middle the radial moment is twice over (1 + ν) that of the whole plate
    assert centre == pytest.approx(6 * bent.inner_moment * (1 + NU) / 2 * MOMENT / T**2, rel=3e-3)


def test_supported_plate_is_that_of_equilibrium() -> None:
    bent = round_plate(SMALL, NU, "supported", "guided")
    whole = bent.inner_moment * (1 + NU) / 2 * MOMENT
    assert supported_plate_stress(P, D, T, NU) == pytest.approx(6 * whole / T**2, rel=3e-3)
    assert supported_plate_deflection(P, D, T, E, NU) == pytest.approx(bent.deflection * LIFT, rel=3e-3)


@pytest.mark.parametrize("share", [0.5, 0.75, 0.9])
def test_pressure_within_the_studs_is_that_of_equilibrium(share: float) -> None:
    bent = round_plate(SMALL, NU, "supported", "guided", loaded_to=share)
    whole = bent.inner_moment * (1 + NU) / 2 * MOMENT
    assert supported_plate_stress_within(P, share * D, D, T, NU) == pytest.approx(6 * whole / T**2, rel=5e-3)


def test_edge_moment_is_that_of_equilibrium() -> None:
    bent = round_plate(SMALL, NU, "supported", "guided", rim_moment=1.0, load=0.0)
    m = 5e3
    lift = m * (D / 2) ** 2 / plate_rigidity(E, T, NU)
    assert edge_moment_stress(m, T) == pytest.approx(6 * bent.outer_moment * m / T**2)
    assert edge_moment_deflection(m, D, T, E, NU) == pytest.approx(bent.deflection * lift, rel=3e-3)


@given(p=pressures, D=diameters, thin=thinnesses)
def test_a_clamped_plate_is_a_supported_one_bent_back_by_its_edge(p: float, D: float, thin: float) -> None:
    t = thin * D
    back = clamped_plate_edge_moment(p, D)
    centre = supported_plate_stress(p, D, t, NU) - edge_moment_stress(back, t)
    lift = supported_plate_deflection(p, D, t, E, NU) - edge_moment_deflection(back, D, t, E, NU)
    assert clamped_plate_centre_stress(p, D, t, NU) == pytest.approx(centre)
    assert clamped_plate_deflection(p, D, t, E, NU) == pytest.approx(lift)
    assert clamped_plate_stress(p, D, t) == pytest.approx(edge_moment_stress(back, t))


@given(p=pressures, D=diameters, thin=thinnesses, factor=factors)
def test_plates_scale(p: float, D: float, thin: float, factor: float) -> None:
    t = thin * D
    for stress in (clamped_plate_stress(p, D, t), clamped_plate_stress(p, factor * D, factor * t)):
        assert stress == pytest.approx(clamped_plate_stress(factor * p, D, t) / factor)
    lift = supported_plate_deflection(p, D, t, E, NU)
    assert supported_plate_deflection(p, factor * D, factor * t, E, NU) == pytest.approx(factor * lift)


@given(p=pressures, D=diameters, thin=thinnesses, nu=st.floats(0.0, 0.49))
def test_clamping_an_edge_helps(p: float, D: float, thin: float, nu: float) -> None:
    t = thin * D
    assert (
        clamped_plate_centre_stress(p, D, t, nu)
        < clamped_plate_stress(p, D, t)
        < supported_plate_stress(p, D, t, nu)
    )
    assert clamped_plate_deflection(p, D, t, E, nu) < supported_plate_deflection(p, D, t, E, nu)


@given(share=st.floats(0.1, 0.99))
def test_drawing_the_support_in_to_the_pressure_helps(share: float) -> None:
    G = share * D
    wide = supported_plate_stress_within(P, G, D, T, NU)
    assert wide > supported_plate_stress_within(P, G, 0.5 * (G + D), T, NU)
    assert wide < supported_plate_stress(P, D, T, NU)


def test_pressure_within_the_studs_by_hand() -> None:
    """3 · 2 · 0.09/(32 · 0.0004) = 42.1875 MPa times 5.2 ln(4/3) + 4 − 0.7 · 0.5625 = 5.102197: 215.2489 MPa."""
    assert supported_plate_stress_within(2e6, 0.3, 0.4, 0.02, 0.3) == pytest.approx(215.2489e6, rel=1e-6)


def test_rigidity_by_hand() -> None:
    # 100 GPa, 12 mm, ν 0: 100e9 × 1.728e-6/12 = 14 400 N·m
    assert plate_rigidity(100e9, 0.012, 0.0) == pytest.approx(14400)
    for nu in (1.0, -1.0):
        with pytest.raises(OutOfRange, match="Poisson's ratio"):
            plate_rigidity(E, T, nu)


@pytest.mark.parametrize(
    "formula",
    [
        lambda D, t: clamped_plate_stress(P, D, t),
        lambda D, t: clamped_plate_centre_stress(P, D, t, NU),
        lambda D, t: clamped_plate_deflection(P, D, t, E, NU),
        lambda D, t: supported_plate_stress(P, D, t, NU),
        lambda D, t: supported_plate_deflection(P, D, t, E, NU),
        lambda D, t: supported_plate_stress_within(P, D, D, t, NU),
        lambda D, t: edge_moment_deflection(1.0, D, t, E, NU),
    ],
)
def test_a_block_is_no_plate(formula: Any) -> None:
    assert formula(0.4, 0.1) > 0
    for t in (0.1001, 0.0, -0.01):
        with pytest.raises(OutOfRange, match="a quarter of the diameter"):
            formula(0.4, t)


def test_pressure_wider_than_the_support_is_refused() -> None:
    assert supported_plate_stress_within(P, D, D, T, NU) > 0
    for G in (0.401, 0.0):
        with pytest.raises(OutOfRange, match="circle under pressure"):
            supported_plate_stress_within(P, G, D, T, NU)
    with pytest.raises(OutOfRange, match="thickness 0 mm is not above 0"):
        edge_moment_stress(1.0, 0.0)
