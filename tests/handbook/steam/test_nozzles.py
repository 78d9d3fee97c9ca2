"""Nozzles: never above choked flow, continuous where the throat chokes, refused outside."""

from __future__ import annotations

import math

import pytest
from hypothesis import given, strategies as st

from speclint.errors import OutOfRange
from speclint.handbook.steam import dry_steam as steam, nozzles, states as steam_states, steam_nozzles

exponents = st.floats(min_value=1.05, max_value=1.67)
ratios = st.floats(min_value=0.0, max_value=1.0)
inlets = st.tuples(st.floats(1.5e5, 30e5), st.floats(0.0, 250.0)).map(
    lambda pair: (pair[0], steam.steam_enthalpy(pair[0], steam.saturation_temperature(pair[0]) + pair[1]))
)


@given(κ=exponents, r=ratios, p=st.floats(1e5, 30e5), ρ=st.floats(0.5, 20.0))
def test_flux_never_exceeds_choked_flux(κ: float, r: float, p: float, ρ: float) -> None:
    flux, choked = nozzles.nozzle_mass_flux(p, r * p, ρ, κ), nozzles.choked_mass_flux(p, ρ, κ)
    assert flux <= choked * (1 + 1e-12)
    if r <= nozzles.critical_pressure_ratio(κ):
        assert flux == pytest.approx(choked, rel=1e-12)


@given(κ=exponents, r=ratios, lower=st.floats(0.1, 0.99))
def test_flux_does_not_fall_as_back_pressure_falls(κ: float, r: float, lower: float) -> None:
    here = nozzles.nozzle_mass_flux(10e5, r * 10e5, 4.0, κ)
    assert nozzles.nozzle_mass_flux(10e5, lower * r * 10e5, 4.0, κ) >= here * (1 - 1e-12)


@given(κ=exponents)
def test_flux_is_continuous_at_the_critical_ratio(κ: float) -> None:
    r = nozzles.critical_pressure_ratio(κ)
    above, below = (nozzles.nozzle_mass_flux(1e6, (r + d) * 1e6, 4.0, κ) for d in (1e-6, -1e-6))
    assert above == pytest.approx(below, rel=1e-9)


@given(κ=exponents)
def test_speed_at_the_choked_throat_is_that_of_sound_there(κ: float) -> None:
    """At the throat T_t/T = 2/(κ + 1) and w² = κ p_t/ρ_t = κ (p/ρ)(T_t/T)."""
    v = nozzles.throat_speed(1e6, 4.0, nozzles.critical_pressure_ratio(κ), κ)
    assert v == pytest.approx((κ * 1e6 / 4.0 * 2 / (κ + 1)) ** 0.5, rel=1e-9)


@given(κ=exponents, r=st.floats(0.6, 0.999))
def test_flux_is_speed_times_density_in_the_throat(κ: float, r: float) -> None:
    r = max(r, nozzles.critical_pressure_ratio(κ))
    product = nozzles.throat_speed(1e6, 4.0, r, κ) * 4.0 * r ** (1 / κ)
    assert nozzles.nozzle_mass_flux(1e6, r * 1e6, 4.0, κ) == pytest.approx(product, rel=1e-9)


@given(p=st.floats(1.5e5, 100e5), A=st.floats(1e-5, 1e-2), times=st.floats(0.1, 10.0))
def test_napier_goes_with_area_and_falls_with_superheat(p: float, A: float, times: float) -> None:
    flow = nozzles.napier_flow(p, A)
    assert nozzles.napier_flow(p, times * A) == pytest.approx(times * flow)
    assert nozzles.napier_superheated_flow(p, A, 0.0) == flow
    assert nozzles.napier_superheated_flow(p, A, 100.0) == pytest.approx(flow / 1.117)


def test_an_exponent_just_above_one_answers() -> None:
    """κ = 1.01: (2/2.01)^101 = exp(−101 · 0.00498754) = 0.60427."""
    assert nozzles.critical_pressure_ratio(1.01) == pytest.approx(0.60427, rel=1e-5)


def test_expansibility_answers_at_its_limits() -> None:
    """β = 0.1, r = 0.75, κ = 1.25: 1 − 0.3510256 (1 − 0.75^0.8) = 1 − 0.3510256 · 0.205582 = 0.927835."""
    assert nozzles.orifice_expansibility(0.1, 0.75, 1.25) == pytest.approx(0.927835, rel=1e-6)
    assert nozzles.orifice_expansibility(0.75, 1.0, 1.25) == 1


@given(r=st.floats(0.1, 20.0), κ=exponents)
def test_compression_and_expansion_cancel(r: float, κ: float) -> None:
    there = nozzles.compressed_temperature(400.0, r, κ)
    assert nozzles.compressed_temperature(there, 1 / r, κ) == pytest.approx(400.0)


@pytest.mark.parametrize(
    ("ask", "given_", "words"),
    [
        (nozzles.critical_pressure_ratio, (1.0,), "isentropic exponent 1 must be above 1"),
        (nozzles.critical_pressure_ratio, (math.nan,), "isentropic exponent nan"),
        (nozzles.throat_speed, (1e6, 4.0, 1.01, 1.3), "pressure ratio 1.01 lies outside 0 to 1"),
        (nozzles.throat_speed, (1e6, 4.0, -0.1, 1.3), "pressure ratio -0.1"),
        (nozzles.throat_speed, (0.0, 4.0, 0.9, 1.3), "inlet pressure"),
        (nozzles.throat_speed, (1e6, 0.0, 0.9, 1.3), "inlet density"),
        (nozzles.nozzle_mass_flux, (1e6, 1.1e6, 4.0, 1.3), "pressure ratio 1.1"),
        (nozzles.nozzle_mass_flux, (1e6, math.nan, 4.0, 1.3), "pressure ratio nan"),
        (nozzles.choked_mass_flux, (1e6, 4.0, 0.9), "isentropic exponent 0.9"),
        (nozzles.nozzle_mass_flow, (0.0, 1.0, 1.0), "discharge coefficient 0 "),
        (nozzles.nozzle_mass_flow, (1.01, 1.0, 1.0), "discharge coefficient 1.01"),
        (nozzles.compressed_temperature, (300.0, 0.0, 1.3), "pressure ratio 0 "),
        (nozzles.orifice_expansibility, (0.09, 0.9, 1.3), "0.1 to 0.75"),
        (nozzles.orifice_expansibility, (0.76, 0.9, 1.3), "0.1 to 0.75"),
        (nozzles.orifice_expansibility, (0.5, 0.74, 1.3), "0.75 to 1"),
        (nozzles.orifice_expansibility, (0.5, 1.01, 1.3), "0.75 to 1"),
        (nozzles.orifice_mass_flow, (0.6, 1.0, 0.1, 0.1, 1.0, 1.0), "smaller than its pipe"),
        (nozzles.orifice_mass_flow, (0.6, 1.0, 0.05, 0.1, 1.0, -1.0), "must fall"),
        (nozzles.napier_flow, (1.49e5, 1.0), "pressure 1.49 bar absolute lies outside 1.5 to 100"),
        (nozzles.napier_flow, (100.1e5, 1.0), "1.5 to 100"),
        (nozzles.napier_superheated_flow, (10e5, 1.0, -0.1), "0 to 300 K"),
        (nozzles.napier_superheated_flow, (10e5, 1.0, 300.1), "0 to 300 K"),
    ],
)
def test_outside_is_refused(ask: object, given_: tuple[float, ...], words: str) -> None:
    assert callable(ask)
    with pytest.raises(OutOfRange, match=words):
        ask(*given_)


@given(inlet=inlets, r=st.floats(0.05, 1.0))
def test_steam_never_flows_faster_than_choked(inlet: tuple[float, float], r: float) -> None:
    p, h = inlet
    flux, choked = steam_nozzles.steam_nozzle_flux(p, h, r * p), steam_nozzles.choked_steam_flux(p, h)
    assert flux <= choked * (1 + 1e-9)


@given(inlet=inlets)
def test_choked_steam_is_the_greatest_of_a_fine_scan(inlet: tuple[float, float]) -> None:
    p, h = inlet
    s = steam_states.entropy_at_enthalpy(p, h)
    choked = steam_nozzles.choked_steam_flux(p, h)
    for hundredths in range(40, 100, 2):
        outlet = steam_states.state_at_entropy(p * hundredths / 100, s)
        assert outlet.density * (2 * (h - outlet.enthalpy)) ** 0.5 <= choked * (1 + 1e-9)


@given(p=st.floats(1.5e5, 30e5), warm=st.floats(100.0, 250.0))
def test_superheated_steam_chokes_at_the_speed_of_sound(p: float, warm: float) -> None:
    h = steam.steam_enthalpy(p, steam.saturation_temperature(p) + warm)
    throat = steam_nozzles.steam_critical_pressure_ratio(p, h) * p
    T = steam_states.temperature_at_entropy(throat, steam_states.entropy_at_enthalpy(p, h))
    v = steam_nozzles.expanded_speed(p, h, throat)
    assert v == pytest.approx(steam.steam_speed_of_sound(throat, T), rel=1e-3)


@given(p=st.floats(1.5e5, 30e5), warm=st.floats(100.0, 250.0))
def test_superheated_steam_keeps_near_the_constant_exponent(p: float, warm: float) -> None:
    T = steam.saturation_temperature(p) + warm
    κ = steam.steam_isentropic_exponent(p, T)
    ideal = nozzles.choked_mass_flux(p, steam.steam_density(p, T), κ)
    assert steam_nozzles.choked_steam_flux(p, steam.steam_enthalpy(p, T)) == pytest.approx(ideal, rel=0.01)


def test_no_fall_of_pressure_no_flow() -> None:
    h = steam.steam_enthalpy(10e5, 523.15)
    assert steam_nozzles.steam_nozzle_flux(10e5, h, 10e5) == pytest.approx(0.0, abs=1.0)
    assert steam_nozzles.expanded_speed(10e5, h, 10e5) == pytest.approx(0.0, abs=0.2)


@pytest.mark.parametrize("p_2", [-1.0, 10.01e5, math.nan])
def test_back_pressure_outside_is_refused(p_2: float) -> None:
    h = steam.steam_enthalpy(10e5, 523.15)
    words = f"back pressure {p_2 / 1e5:.4g} bar lies outside 0 to the inlet's 10 bar absolute"
    for ask in (steam_nozzles.steam_nozzle_flux, steam_nozzles.expanded_speed):
        with pytest.raises(OutOfRange, match=words):
            ask(10e5, h, p_2)


def test_wet_steam_is_taken_to_dryness_four_fifths_and_no_wetter() -> None:
    just = steam_states.saturated_state(10e5, 0.8001).enthalpy
    assert steam_nozzles.choked_steam_flux(10e5, just) > steam_nozzles.choked_steam_flux(10e5, 2777e3)
    wetter = steam_states.saturated_state(10e5, 0.7999).enthalpy
    with pytest.raises(OutOfRange, match=r"dryness 0\.7999"):
        steam_nozzles.choked_steam_flux(10e5, wetter)
