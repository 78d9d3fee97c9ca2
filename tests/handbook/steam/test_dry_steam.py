"""The guard around the steam tables: what is refused, and in what words."""

from __future__ import annotations

import math
from collections.abc import Callable

import pytest
from hypothesis import given, strategies as st

from speclint.errors import OutOfRange
from speclint.handbook.steam import dry_steam as steam, if97

PROPERTIES = [
    steam.steam_density,
    steam.steam_specific_volume,
    steam.steam_enthalpy,
    steam.steam_entropy,
    steam.steam_heat_capacity,
    steam.steam_isentropic_exponent,
    steam.steam_speed_of_sound,
    steam.steam_viscosity,
    steam.steam_conductivity,
    steam.steam_prandtl_number,
]
pressures = st.floats(min_value=1e4, max_value=40e5)
superheats = st.floats(min_value=0.0, max_value=300.0)


@pytest.mark.parametrize("ask", PROPERTIES)
@pytest.mark.parametrize(
    ("p", "T"),
    [
        (math.nan, 600.0),
        (math.inf, 600.0),
        (-math.inf, 600.0),
        (-1e5, 600.0),
        (0.0, 600.0),
        (611.21, 600.0),
        (100.1e6, 900.0),
        (15e5, math.nan),
        (15e5, math.inf),
        (15e5, -math.inf),
        (15e5, 273.14),
        (15e5, 2273.16),
        (51e6, 1073.16),
        (15e5, 400.0),
        (25e6, 640.0),
    ],
)
def test_a_state_outside_is_refused(ask: Callable[[float, float], float], p: float, T: float) -> None:
    with pytest.raises(OutOfRange):
        ask(p, T)


@pytest.mark.parametrize("ask", PROPERTIES)
def test_dry_saturated_steam_is_taken_at_the_boiling_point_itself(
    ask: Callable[[float, float], float],
) -> None:
    boiling = steam.saturation_temperature(15e5)
    at_boiling = ask(15e5, boiling)
    assert at_boiling == pytest.approx(ask(15e5, boiling + 1e-4), rel=1e-5)
    assert ask(15e5, boiling - 0.9e-6) == at_boiling


@pytest.mark.parametrize("ask", PROPERTIES)
def test_water_just_below_the_boiling_point_is_refused(ask: Callable[[float, float], float]) -> None:
    boiling = steam.saturation_temperature(15e5)
    with pytest.raises(OutOfRange, match=r"at 15 bar absolute steam is dry from 198\.295 °C; 198\.2"):
        ask(15e5, boiling - 0.002)


@pytest.mark.parametrize(
    ("p", "T", "words"),
    [
        (120e6, 900.0, "pressure 1200 bar absolute lies outside 0.00611213 to 1000 bar absolute"),
        (math.nan, 900.0, "pressure nan bar absolute lies outside"),
        (15e5, math.nan, "temperature nan °C lies outside 0 to 2000 °C"),
        (101e6, 900.0, "pressure 1010 bar absolute lies outside"),
        (50.5e6, 1100.0, "at 826.85 °C pressure 505 bar absolute lies above 500 bar"),
        (15e5, 2300.0, "temperature 2026.85 °C lies outside 0 to 2000 °C"),
        (60e6, 1100.0, "at 826.85 °C pressure 600 bar absolute lies above 500 bar"),
        (25e6, 640.0, "above the critical pressure steam is dry from 373.946 °C; 366.85 °C is water"),
    ],
)
def test_the_refusal_names_quantity_value_and_range(p: float, T: float, words: str) -> None:
    with pytest.raises(OutOfRange, match="^" + words):
        steam.steam_density(p, T)


@pytest.mark.parametrize(("p", "T"), [(100e6, 1073.15), (50e6, 1073.16), (50e6, 2273.15), (611.213, 2273.15)])
def test_the_corners_of_the_range_answer(p: float, T: float) -> None:
    assert steam.steam_density(p, T) > 0
    with pytest.raises(OutOfRange):
        steam.steam_density(p * (1.0001 if p > 1e5 else 0.9999), T)


def test_limits_of_conductivity_from_both_sides() -> None:
    assert steam.steam_conductivity(4e6, 700.0) > 0
    with pytest.raises(OutOfRange, match="above 40 bar"):
        steam.steam_conductivity(4.001e6, 700.0)
    with pytest.raises(OutOfRange, match="end of the thermal conductivity"):
        steam.steam_conductivity(1e6, 1173.2)


def test_limits_of_viscosity_from_both_sides() -> None:
    assert steam.steam_viscosity(1e6, 1173.15) > 0
    with pytest.raises(OutOfRange, match="end of the viscosity"):
        steam.steam_viscosity(1e6, 1173.2)


@pytest.mark.parametrize("p", [math.nan, 0.0, 611.2, 22.0641e6])
def test_no_boiling_point_outside_the_saturation_line(p: float) -> None:
    with pytest.raises(OutOfRange, match="where water boils"):
        steam.saturation_temperature(p)


@pytest.mark.parametrize("T", [math.nan, 273.14, 647.1])
def test_no_boiling_pressure_outside_the_saturation_line(T: float) -> None:
    with pytest.raises(OutOfRange, match="where water boils"):
        steam.saturation_pressure(T)


def test_the_ends_of_the_saturation_line_answer() -> None:
    assert steam.saturation_temperature(if97.LEAST_PRESSURE) == pytest.approx(273.15, abs=1e-3)
    assert steam.saturation_temperature(if97.CRITICAL_PRESSURE) == pytest.approx(647.096, abs=1e-3)
    assert steam.saturation_pressure(if97.LEAST_TEMPERATURE) == pytest.approx(611.213, abs=1e-3)
    assert steam.saturation_pressure(if97.CRITICAL_TEMPERATURE) == pytest.approx(22.064e6, rel=1e-6)


@pytest.mark.parametrize("code", [-1000.0, -2100.0, -2201.0, -9999.0, math.nan, math.inf])
def test_an_error_code_of_the_library_never_passes(monkeypatch: pytest.MonkeyPatch, code: float) -> None:
    import seuif97

    monkeypatch.setattr(seuif97, "pt", lambda *_: code)
    with pytest.raises(OutOfRange, match="outside the regions of IAPWS-IF97"):
        steam.steam_density(15e5, 600.0)


def test_superheat_refuses_water_and_is_never_negative() -> None:
    boiling = steam.saturation_temperature(15e5)
    assert steam.superheat(15e5, boiling - 0.9e-6) == 0
    assert steam.superheat(15e5, boiling + 80) == pytest.approx(80)
    with pytest.raises(OutOfRange, match="is water"):
        steam.superheat(15e5, boiling - 0.002)
    with pytest.raises(OutOfRange, match="temperature inf"):
        steam.superheat(15e5, math.inf)


@given(T=st.floats(min_value=273.16, max_value=647.0))
def test_boiling_point_and_pressure_are_inverse(T: float) -> None:
    assert steam.saturation_temperature(steam.saturation_pressure(T)) == pytest.approx(T, abs=1e-5)


@given(p=pressures, warm=superheats, more=st.floats(min_value=0.1, max_value=100.0))
def test_hotter_steam_is_lighter_and_holds_more_heat(p: float, warm: float, more: float) -> None:
    T = steam.saturation_temperature(p) + warm
    assert steam.steam_density(p, T + more) < steam.steam_density(p, T)
    assert steam.steam_enthalpy(p, T + more) > steam.steam_enthalpy(p, T)
    assert steam.steam_entropy(p, T + more) > steam.steam_entropy(p, T)


@given(p=pressures, warm=st.floats(min_value=1.0, max_value=300.0))
def test_properties_obey_the_laws_of_thermodynamics(p: float, warm: float) -> None:
    """T ds = dh along an isobar, c_p = dh/dT and w² = κ p v: by central differences of 10 mK."""
    T = steam.saturation_temperature(p) + warm
    dh = steam.steam_enthalpy(p, T + 0.01) - steam.steam_enthalpy(p, T - 0.01)
    ds = steam.steam_entropy(p, T + 0.01) - steam.steam_entropy(p, T - 0.01)
    assert dh / 0.02 == pytest.approx(steam.steam_heat_capacity(p, T), rel=1e-4)
    assert dh == pytest.approx(T * ds, rel=1e-4)
    w2 = steam.steam_isentropic_exponent(p, T) * p * steam.steam_specific_volume(p, T)
    assert w2**0.5 == pytest.approx(steam.steam_speed_of_sound(p, T), rel=1e-9)
