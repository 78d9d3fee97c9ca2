"""States from enthalpy and entropy: there and back, over the saturation line, and refusals."""

from __future__ import annotations

import math

import pytest
from hypothesis import given, strategies as st

from speclint.errors import OutOfRange
from speclint.handbook.steam import dry_steam as steam
from speclint.handbook.steam.states import (
    density_at_enthalpy,
    density_at_entropy,
    dryness_at_enthalpy,
    dryness_at_entropy,
    enthalpy_at_entropy,
    entropy_at_enthalpy,
    saturated_state,
    state_at_enthalpy,
    state_at_entropy,
    state_at_temperature,
    temperature_at_enthalpy,
    temperature_at_entropy,
)

pressures = st.floats(min_value=1e4, max_value=40e5)
FORMULAE_H = [temperature_at_enthalpy, density_at_enthalpy, entropy_at_enthalpy, dryness_at_enthalpy]
FORMULAE_S = [temperature_at_entropy, density_at_entropy, enthalpy_at_entropy, dryness_at_entropy]


@given(p=pressures, T=st.floats(min_value=274.0, max_value=1070.0))
def test_there_and_back(p: float, T: float) -> None:
    state = state_at_temperature(p, T)
    for back in (state_at_enthalpy(p, state.enthalpy), state_at_entropy(p, state.entropy)):
        assert back.temperature == pytest.approx(T, abs=1e-4)
        assert back.density == pytest.approx(state.density, rel=1e-5)
        assert back.dryness == state.dryness


@pytest.mark.parametrize("p", [17e6, 20e6, 22e6, 23e6, 25e6, 90e6])
@pytest.mark.parametrize("T", [300.0, 600.0, 620.0, 660.0, 700.0, 1000.0])
def test_there_and_back_at_pressures_beyond_a_boiler(p: float, T: float) -> None:
    state = state_at_temperature(p, T)
    assert state_at_enthalpy(p, state.enthalpy).temperature == pytest.approx(T, abs=0.05)
    assert state_at_entropy(p, state.entropy).temperature == pytest.approx(T, abs=0.05)


@given(p=pressures, x=st.floats(min_value=0.0, max_value=1.0))
def test_there_and_back_in_the_wet_region(p: float, x: float) -> None:
    wet = saturated_state(p, x)
    assert dryness_at_enthalpy(p, wet.enthalpy) == pytest.approx(x, abs=1e-9)
    assert dryness_at_entropy(p, wet.entropy) == pytest.approx(x, abs=1e-9)
    assert temperature_at_enthalpy(p, wet.enthalpy) == pytest.approx(wet.temperature, abs=1e-4)


@given(p=pressures, x=st.floats(min_value=0.01, max_value=0.99))
def test_a_wet_state_lies_between_water_and_dry_steam_in_proportion(p: float, x: float) -> None:
    water, wet, dry = (saturated_state(p, each) for each in (0.0, x, 1.0))
    assert wet.wet
    assert not water.wet
    assert not dry.wet
    for name in ("specific_volume", "enthalpy", "entropy"):
        low, between, high = (getattr(state, name) for state in (water, wet, dry))
        assert between == pytest.approx(low + x * (high - low), rel=1e-9)


@given(p=pressures)
def test_continuous_over_the_saturation_line(p: float) -> None:
    """A joule per kilogram on either side of dry saturated steam and of boiling water."""
    for x in (0.0, 1.0):
        edge = saturated_state(p, x)
        for step in (-1.0, 1.0):
            beside = state_at_enthalpy(p, edge.enthalpy + step)
            assert beside.temperature == pytest.approx(edge.temperature, abs=2e-3)
            assert beside.entropy == pytest.approx(edge.entropy, abs=0.01)
            assert 0 <= beside.dryness <= 1


@given(p=pressures)
def test_steam_just_dry_is_accepted_as_dry_by_the_formulae_of_pressure_and_temperature(p: float) -> None:
    just_dry = state_at_enthalpy(p, saturated_state(p, 1.0).enthalpy + 1.0)
    assert just_dry.dryness == 1
    assert steam.steam_density(p, just_dry.temperature) == pytest.approx(just_dry.density, rel=1e-9)


@given(p=pressures, T=st.floats(min_value=600.0, max_value=1000.0), ratio=st.floats(0.07, 0.99))
def test_an_ideal_expansion_gives_work_and_a_throttle_raises_entropy(
    p: float, T: float, ratio: float
) -> None:
    before = state_at_temperature(p, T)
    assert enthalpy_at_entropy(ratio * p, before.entropy) < before.enthalpy
    assert entropy_at_enthalpy(ratio * p, before.enthalpy) > before.entropy


def test_every_formula_reads_the_same_state() -> None:
    state = state_at_enthalpy(10e5, 2500e3)
    read = [ask(10e5, 2500e3) for ask in FORMULAE_H]
    assert read == [state.temperature, state.density, state.entropy, state.dryness]
    state = state_at_entropy(10e5, 6e3)
    read = [ask(10e5, 6e3) for ask in FORMULAE_S]
    assert read == [state.temperature, state.density, state.enthalpy, state.dryness]


@pytest.mark.parametrize("ask", FORMULAE_H)
@pytest.mark.parametrize(
    ("p", "h"),
    [
        (15e5, -1e3),
        (15e5, 4.2e6),
        (15e5, math.nan),
        (15e5, math.inf),
        (math.nan, 3e6),
        (-1e5, 3e6),
        (101e6, 3e6),
    ],
)
def test_enthalpy_outside_is_refused(ask: object, p: float, h: float) -> None:
    assert callable(ask)
    with pytest.raises(OutOfRange, match="lies outside"):
        ask(p, h)


@pytest.mark.parametrize("ask", FORMULAE_S)
@pytest.mark.parametrize("s", [-10.0, 9e3, math.nan, -math.inf])
def test_entropy_outside_is_refused(ask: object, s: float) -> None:
    assert callable(ask)
    with pytest.raises(OutOfRange, match=r"entropy .* lies outside"):
        ask(15e5, s)


@pytest.mark.parametrize("x", [-0.001, 1.001, math.nan])
def test_dryness_outside_is_refused(x: float) -> None:
    with pytest.raises(OutOfRange, match="dryness"):
        saturated_state(10e5, x)


def test_the_refusal_of_an_enthalpy_gives_the_range_at_that_pressure() -> None:
    """iapws 1.5.5: 1.484 kJ/kg at 0 °C and 4152.3 kJ/kg at 800 °C, both at 15 bar."""
    with pytest.raises(OutOfRange, match=r"^enthalpy 5000 lies outside 1\.484\d* to 415\d\.\d* .*at 15 bar"):
        state_at_enthalpy(15e5, 5e6)
