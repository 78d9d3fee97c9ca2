"""Press fits against two rings solved numerically together, and their invariants."""

from __future__ import annotations

from typing import Any

import pytest
from hypothesis import given, strategies as st

from speclint.errors import OutOfRange
from speclint.handbook.fits.press_fits import (
    axial_grip,
    bore_closing,
    contact_pressure,
    inner_hoop_stress,
    interference_after_smoothing,
    interference_for_pressure,
    outer_growth,
    outer_hoop_stress,
    outer_tresca_stress,
    pressing_interference,
    size_of_stress,
    torque_grip,
)
from tests.handbook.ring_equilibrium import Ring, ring_in_ring

IRON_IN_STEEL = {"E_in": 100e9, "nu_in": 0.26, "E_out": 200e9, "nu_out": 0.3}
STEEL = {"E_in": 200e9, "nu_in": 0.3, "E_out": 200e9, "nu_out": 0.3}

interferences = st.floats(1e-6, 1e-3)
bores = st.floats(0.0, 0.9)
outsides = st.floats(1.05, 5.0)
factors = st.floats(0.1, 10.0)


@pytest.mark.parametrize(("d_in", "D", "D_out"), [(0.50, 0.55, 0.62), (0.02, 0.05, 0.10), (0.18, 0.22, 1.0)])
def test_pressure_stress_and_sizes_are_those_of_two_rings_solved_numerically(
    d_in: float, D: float, D_out: float
) -> None:
    delta = 1e-3 * D
    solved = ring_in_ring(
        Ring(d_in / 2, D / 2, 100e9, 0.26), Ring(D / 2, D_out / 2, 200e9, 0.3), 0.0, -delta / 2
    )
    p = contact_pressure(delta, d_in, D, D_out, **IRON_IN_STEEL)
    assert p == pytest.approx(-solved.radial(1, D / 2), rel=1e-4)
    assert outer_hoop_stress(p, D, D_out) == pytest.approx(solved.hoop(1, D / 2), rel=1e-4)
    assert inner_hoop_stress(p, d_in, D) == pytest.approx(solved.hoop(0, d_in / 2), rel=1e-4)
    assert bore_closing(p, d_in, D, 100e9) == pytest.approx(-2 * solved.u(0, d_in / 2), rel=1e-4)
    assert outer_growth(p, D, D_out, 200e9) == pytest.approx(2 * solved.u(1, D_out / 2), rel=1e-4)
    tresca = solved.hoop(1, D / 2) - solved.radial(1, D / 2)
    assert outer_tresca_stress(p, D, D_out) == pytest.approx(tresca, rel=1e-4)


@given(delta=interferences, bore=bores, outside=outsides, factor=factors)
def test_pressure_follows_interference_and_inverse_size(
    delta: float, bore: float, outside: float, factor: float
) -> None:
    p = contact_pressure(delta, 0.2 * bore, 0.2, 0.2 * outside, **IRON_IN_STEEL)
    scaled = contact_pressure(
        factor * delta, 0.2 * bore * factor, 0.2 * factor, 0.2 * outside * factor, **IRON_IN_STEEL
    )
    assert contact_pressure(factor * delta, 0.2 * bore, 0.2, 0.2 * outside, **IRON_IN_STEEL) == pytest.approx(
        factor * p
    )
    assert scaled == pytest.approx(p, rel=1e-6)


@given(delta=interferences, bore=bores, outside=outsides)
def test_interference_and_pressure_are_inverse(delta: float, bore: float, outside: float) -> None:
    rings = (0.2 * bore, 0.2, 0.2 * outside)
    p = contact_pressure(delta, *rings, **IRON_IN_STEEL)
    assert interference_for_pressure(p, *rings, **IRON_IN_STEEL) == pytest.approx(delta)


@given(bore=bores, outside=outsides, more=st.floats(0.001, 0.09))
def test_more_metal_on_either_side_grips_harder(bore: float, outside: float, more: float) -> None:
    p = contact_pressure(1e-4, 0.2 * (bore + more), 0.2, 0.2 * outside, **IRON_IN_STEEL)
    assert contact_pressure(1e-4, 0.2 * bore, 0.2, 0.2 * outside, **IRON_IN_STEEL) > p
    assert contact_pressure(1e-4, 0.2 * (bore + more), 0.2, 0.2 * outside + more, **IRON_IN_STEEL) > p


@given(outside=outsides)
def test_a_solid_shaft_of_the_hub_s_metal_follows_the_short_formula(outside: float) -> None:
    # same E, ν: p = E δ/(2 D) (1 − D²/D_out²); ν drops out
    short = 200e9 * 1e-4 / (2 * 0.2) * (1 - 1 / outside**2)
    assert contact_pressure(1e-4, 0.0, 0.2, 0.2 * outside, **STEEL) == pytest.approx(short)
    nearly = contact_pressure(1e-4, 1e-6, 0.2, 0.2 * outside, **STEEL)
    assert nearly == pytest.approx(short, rel=1e-6)


@given(delta=interferences, bore=st.floats(0.1, 0.9), outside=outsides)
def test_the_parts_share_the_interference(delta: float, bore: float, outside: float) -> None:
    d_in, D, D_out = 0.2 * bore, 0.2, 0.2 * outside
    p = contact_pressure(delta, d_in, D, D_out, **IRON_IN_STEEL)
    hub_opens = D / 200e9 * (outer_hoop_stress(p, D, D_out) + 0.3 * p)
    hoop_at_joint = -p * (D**2 + d_in**2) / (D**2 - d_in**2)
    inner_closes = -D / 100e9 * (hoop_at_joint + 0.26 * p)
    assert hub_opens + inner_closes == pytest.approx(delta)


def test_roughness_takes_eight_tenths_of_its_depth() -> None:
    # 60 − 0.8 (4 + 6) = 52 µm
    assert interference_after_smoothing(60e-6, 4e-6, 6e-6) == pytest.approx(52e-6)
    assert interference_after_smoothing(60e-6, 0.0, 0.0) == 60e-6
    assert interference_after_smoothing(5e-6, 4e-6, 6e-6) < 0


@given(
    mu=st.floats(0.02, 0.3),
    p=st.floats(1e5, 1e8),
    D=st.floats(0.02, 1.0),
    L=st.floats(0.02, 1.0),
    factor=factors,
)
def test_grip_grows_with_friction_pressure_and_length(
    mu: float, p: float, D: float, L: float, factor: float
) -> None:
    grip = axial_grip(mu, p, D, L)
    for more in (
        (factor * mu, p, D, L),
        (mu, factor * p, D, L),
        (mu, p, D, factor * L),
        (mu, p, factor * D, L),
    ):
        assert axial_grip(*more) == pytest.approx(factor * grip)
    assert torque_grip(mu, p, factor * D, L) == pytest.approx(factor**2 * torque_grip(mu, p, D, L))


def test_grip_by_hand() -> None:
    # π × 100 mm × 50 mm = 15 708 mm², at 10 MPa and 0.1: 15 708 N, and 785.4 N·m at 50 mm radius
    assert axial_grip(0.1, 10e6, 0.1, 0.05) == pytest.approx(15708, rel=1e-4)
    assert torque_grip(0.1, 10e6, 0.1, 0.05) == pytest.approx(785.4, rel=1e-4)


def test_a_loose_pair_has_no_contact_pressure() -> None:
    assert contact_pressure(0.0, 0.1, 0.2, 0.3, **STEEL) == 0
    with pytest.raises(OutOfRange, match="the parts are loose"):
        contact_pressure(-1e-9, 0.1, 0.2, 0.3, **STEEL)


@pytest.mark.parametrize(("d_in", "D", "D_out"), [(0.2, 0.2, 0.3), (0.1, 0.3, 0.3), (-0.01, 0.2, 0.3)])
def test_parts_out_of_order_are_refused(d_in: float, D: float, D_out: float) -> None:
    with pytest.raises(OutOfRange, match="three rising diameters"):
        contact_pressure(1e-4, d_in, D, D_out, **STEEL)
    with pytest.raises(OutOfRange, match="three rising diameters"):
        interference_for_pressure(1e6, d_in, D, D_out, **STEEL)


@pytest.mark.parametrize("formula", [inner_hoop_stress, outer_hoop_stress, outer_tresca_stress])
def test_a_part_without_a_wall_is_refused(formula: Any) -> None:
    with pytest.raises(OutOfRange, match="not between 0 and the outside"):
        formula(1e6, 0.2, 0.2)
    assert abs(formula(1e6, 0.2, 0.2001)) > 1e8


@given(delta=st.floats(-1e-3, 1e-3))
def test_only_an_interference_presses(delta: float) -> None:
    assert pressing_interference(delta) == max(delta, 0.0)
    assert f"{pressing_interference(-abs(delta)):.1f}" == "0.0"  # never written as less than nothing


@given(p=st.floats(1e5, 1e8))
def test_the_size_of_a_stress_has_no_sign(p: float) -> None:
    assert (
        size_of_stress(inner_hoop_stress(p, 0.1, 0.2)) == size_of_stress(-inner_hoop_stress(p, 0.1, 0.2)) > 0
    )
