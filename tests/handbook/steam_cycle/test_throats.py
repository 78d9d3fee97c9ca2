"""The quick form of flow: the same equation as the handbook's nozzle, at rest nothing, choked no more."""

from __future__ import annotations

import pytest
from hypothesis import given, strategies as st

from speclint.handbook.steam import (
    saturated_state,
    saturation_temperature,
    state_at_enthalpy,
    steam_enthalpy,
    steam_nozzle_flux,
    temperature_and_exponent,
)
from speclint.handbook.steam.nozzles import critical_pressure_ratio, nozzle_mass_flux
from speclint.handbook.steam_cycle.throats import Reservoir, critical_ratio, throat_flux

pressures = st.floats(min_value=0.2e5, max_value=30e5)
exponents = st.floats(min_value=1.1, max_value=1.33)
ratios = st.floats(min_value=0.0, max_value=1.0)


@given(p=pressures, κ=exponents, r=ratios)
def test_it_is_the_nozzle_of_the_handbook(p: float, κ: float, r: float) -> None:
    expected = nozzle_mass_flux(p, p * r, 4.0, κ)
    assert throat_flux(p, 4.0, κ, p * r) == pytest.approx(expected, rel=1e-9, abs=1e-3)
    assert critical_ratio(κ) == pytest.approx(critical_pressure_ratio(κ))


@given(p=pressures, κ=exponents, r=ratios)
def test_a_reservoir_gives_the_same(p: float, κ: float, r: float) -> None:
    assert Reservoir(p, 4.0, κ, 3e6).flux(p * r) == pytest.approx(
        throat_flux(p, 4.0, κ, p * r), rel=1e-9, abs=1e-3
    )


RATIOS = (0.98, 0.9, 0.75, 0.6, 0.3)


def against_the_tables(p: float, h: float) -> list[float]:
    """The quick form over the nozzle of IAPWS-IF97, less 1, at each of the ratios of pressure."""
    _, κ = temperature_and_exponent(p, h)
    ρ = state_at_enthalpy(p, h).density
    return [throat_flux(p, ρ, κ, r * p) / steam_nozzle_flux(p, h, r * p) - 1 for r in RATIOS]


@pytest.mark.parametrize("p", [2e5, 5e5, 16e5])
def test_the_quick_form_is_as_near_as_it_says(p: float) -> None:
    boiling = saturation_temperature(p)
    for superheat in (60.0, 200.0):
        dry = against_the_tables(p, steam_enthalpy(p, boiling + superheat))
        assert max(map(abs, dry)) < 1.5e-3
    for x in (0.85, 0.95):
        wet = against_the_tables(p, saturated_state(p, x).enthalpy)
        assert max(map(abs, wet)) < 2.5e-3
    crossing = against_the_tables(p, steam_enthalpy(p, boiling + 3))
    assert 0.03 < max(crossing) < 0.05
    assert min(crossing) > -1e-3


def test_nothing_flows_between_equal_pressures() -> None:
    assert throat_flux(5e5, 2.0, 1.3, 5e5) == 0
    assert throat_flux(5e5, 2.0, 1.3, 5.05e5) == 0
    assert Reservoir(5e5, 2.0, 1.3, 3e6).flux(5.05e5) == 0
    assert Reservoir(5e5, 2.0, 1.3, 3e6).flux(5e5) == 0
