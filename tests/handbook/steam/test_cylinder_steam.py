"""Steam in a cylinder: the way back to the pressure, the saturation line, and refusals."""

from __future__ import annotations

import pytest
from hypothesis import given, strategies as st

from speclint.errors import OutOfRange
from speclint.handbook.steam import (
    pressure_of_energy,
    saturated_state,
    state_at_enthalpy,
    temperature_and_exponent,
)

pressures = st.floats(min_value=0.2e5, max_value=40e5)


@given(
    p=pressures, h=st.floats(min_value=2.2e6, max_value=3.6e6), near=st.floats(min_value=0.7, max_value=1.4)
)
def test_energy_and_volume_lead_back_to_the_pressure(p: float, h: float, near: float) -> None:
    state = state_at_enthalpy(p, h)
    u = h - p * state.specific_volume
    assert pressure_of_energy(u, state.specific_volume, near * p) == pytest.approx(p, rel=2e-4)


@given(p=pressures, away=st.floats(min_value=-50.0, max_value=50.0))
def test_at_the_saturation_line_the_answer_is_that_of_steam(p: float, away: float) -> None:
    """Within 50 J/kg of dry saturated, where the library may answer for water: 1.035 + 0.1 or steam's own."""
    state = saturated_state(p, 1.0)
    T, κ = temperature_and_exponent(p, state.enthalpy + away)
    assert pytest.approx(state.temperature, abs=0.06) == T
    assert 1.13 < κ < 1.36


@given(p=pressures, x=st.floats(min_value=0.5, max_value=0.999))
def test_wet_steam_has_the_boiling_point_and_zeuners_exponent(p: float, x: float) -> None:
    state = saturated_state(p, x)
    T, κ = temperature_and_exponent(p, state.enthalpy)
    assert pytest.approx(state.temperature, abs=0.01) == T
    assert pytest.approx(1.035 + 0.1 * x, abs=1e-4) == κ


def test_what_is_refused() -> None:
    for u, v in ((-5e6, 0.1), (9e6, 0.1), (2.6e6, 1e-5)):
        with pytest.raises(OutOfRange, match=f"steam of {u / 1e3:.6g} kJ/kg in {v:.4g} m³/kg lies outside"):
            pressure_of_energy(u, v, near=5e5)
    with pytest.raises(OutOfRange, match="steam of 4171 kJ/kg at 5 bar absolute lies outside the range"):
        temperature_and_exponent(5e5, 4171e3)  # 805 °C: 12.1 kJ/kg above the 4158.9 of 800 °C
    assert temperature_and_exponent(5e5, 4147e3)[0] == pytest.approx(795 + 273.15, abs=0.5)
    with pytest.raises(OutOfRange, match="range of IAPWS-IF97"):
        temperature_and_exponent(5e5, -1e5)
