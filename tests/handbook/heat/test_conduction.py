"""Heat: limits from both sides, balances that close, and what more lagging must do."""

from __future__ import annotations

import math

import pytest
from hypothesis import given, strategies as st

from speclint.errors import OutOfRange
from speclint.handbook.heat import conduction as heat, convection, lagging
from speclint.handbook.heat.air import air_at

films = st.floats(min_value=1.0, max_value=5000.0)


@given(h_1=films, h_2=films, R=st.floats(0.0, 10.0))
def test_a_wall_conducts_less_than_its_poorer_film_and_either_way_alike(
    h_1: float, h_2: float, R: float
) -> None:
    U = heat.overall_coefficient(h_1, R, h_2)
    assert min(h_1, h_2) > U
    assert heat.overall_coefficient(h_2, R, h_1) == pytest.approx(U)


@given(d=st.floats(0.1, 1.0), t=st.floats(1e-6, 1e-5))
def test_a_thin_round_wall_is_a_flat_one(d: float, t: float) -> None:
    flat = math.pi * d * 50.0 * 100.0 / t
    assert heat.cylinder_conduction(50.0, d, d + 2 * t, 500.0, 400.0) == pytest.approx(flat, rel=1e-3)
    flat_U = heat.overall_coefficient(200.0, heat.plane_wall_resistance(t, 50.0), 10.0)
    assert heat.cylinder_overall_coefficient(200.0, 10.0, d, d + 2 * t, 50.0) == pytest.approx(
        flat_U, rel=1e-3
    )


@given(T_1=st.floats(250.0, 900.0), T_2=st.floats(250.0, 900.0))
def test_heat_goes_from_hot_to_cold(T_1: float, T_2: float) -> None:
    for q in (
        heat.heat_flux(10.0, T_1, T_2),
        heat.cylinder_conduction(50.0, 0.1, 0.2, T_1, T_2),
        heat.radiated_flux(0.9, T_1, T_2),
    ):
        assert (q > 0) == (T_1 > T_2)


@given(Re=st.floats(1e4, 5e6), Pr=st.floats(0.6, 2.0), times=st.floats(1.01, 1.5))
def test_faster_flow_carries_more_heat(Re: float, Pr: float, times: float) -> None:
    def nusselt(at: float) -> float:
        return convection.gnielinski_nusselt_number(at, Pr, convection.petukhov_friction_factor(at))

    slower = Re / times if Re / times >= 1e4 else Re
    faster = min(slower * times, 5e6)
    assert nusselt(faster) >= nusselt(slower)
    assert convection.dittus_boelter_nusselt_number(faster, Pr, 0.4) >= (
        convection.dittus_boelter_nusselt_number(slower, Pr, 0.4)
    )


@given(T_s=st.floats(300.0, 700.0), more=st.floats(1.0, 100.0), D=st.floats(0.02, 1.0))
def test_a_hotter_surface_gives_off_more(T_s: float, more: float, D: float) -> None:
    T_a = 290.0
    for film in (lagging.natural_film_on_pipe, lagging.natural_film_on_wall):
        cooler, hotter = film(T_s, T_a, D) * (T_s - T_a), film(T_s + more, T_a, D) * (T_s + more - T_a)
        assert hotter > cooler


@given(
    T_i=st.floats(300.0, 750.0),
    d=st.floats(0.05, 1.0),
    t=st.floats(0.005, 0.1),
    λ=st.floats(0.02, 0.2),
    ε=st.floats(0.0, 1.0),
)
def test_what_the_lagging_conducts_its_surface_gives_off(
    T_i: float, d: float, t: float, λ: float, ε: float
) -> None:
    T_a, D = 290.0, d + 2 * t
    T_s = lagging.lagged_pipe_surface_temperature(T_i, T_a, d, D, λ, ε)
    assert T_a <= T_s <= T_i
    off = lagging.natural_film_on_pipe(T_s, T_a, D) * (T_s - T_a) + heat.radiated_flux(ε, T_s, T_a)
    assert lagging.lagged_pipe_loss(T_i, T_a, d, D, λ, ε) == pytest.approx(math.pi * D * off, rel=1e-6)


@given(t=st.floats(0.01, 0.1), more=st.floats(0.002, 0.05), λ=st.floats(0.02, 0.1))
def test_thicker_lagging_is_cooler_outside_and_loses_less(t: float, more: float, λ: float) -> None:
    thin, thick = ((573.15, 293.15, 0.3, 0.3 + 2 * each, λ, 0.5) for each in (t, t + more))
    assert lagging.lagged_pipe_surface_temperature(*thick) < lagging.lagged_pipe_surface_temperature(*thin)
    assert lagging.lagged_pipe_loss(*thick) < lagging.lagged_pipe_loss(*thin)
    thin, thick = ((573.15, 293.15, each, 0.8, λ, 0.5) for each in (t, t + more))
    assert lagging.lagged_wall_surface_temperature(*thick) < lagging.lagged_wall_surface_temperature(*thin)
    assert lagging.lagged_wall_loss(*thick) < lagging.lagged_wall_loss(*thin)


@given(ε=st.floats(0.0, 0.9))
def test_a_brighter_surface_is_hotter(ε: float) -> None:
    """The polished sheet burns the hand though it saves heat."""
    bright, dull = ((573.15, 293.15, 0.3, 0.4, 0.06, each) for each in (ε, ε + 0.1))
    assert lagging.lagged_pipe_surface_temperature(*bright) > lagging.lagged_pipe_surface_temperature(*dull)
    assert lagging.lagged_pipe_loss(*bright) < lagging.lagged_pipe_loss(*dull)


def test_no_heat_flows_without_a_difference() -> None:
    assert lagging.lagged_pipe_loss(293.15, 293.15, 0.1, 0.2, 0.05, 0.9) == pytest.approx(0.0, abs=1e-9)
    assert lagging.lagged_wall_loss(293.15, 293.15, 0.05, 0.8, 0.05, 0.9) == pytest.approx(0.0, abs=1e-9)


@pytest.mark.parametrize("T", [250.0, 600.0])
def test_air_answers_at_its_limits(T: float) -> None:
    assert air_at(T).conductivity > 0


def test_turbulent_flow_answers_at_its_limits() -> None:
    """Petukhov by hand: (0.79 ln 3000 − 1.64)⁻² = 4.6850⁻², (0.79 ln 5e6 − 1.64)⁻² = 10.5457⁻².

    Gnielinski at Pr = 0.5 with f = 0.02, Re = 1e4: 0.0025·9000·0.5/(1 + 12.7·0.05·(0.629961 − 1)) = 14.7054.
    """
    assert convection.petukhov_friction_factor(3000.0) == pytest.approx(1 / 4.6850**2, rel=1e-4)
    assert convection.petukhov_friction_factor(5e6) == pytest.approx(1 / 10.5457**2, rel=1e-4)
    assert convection.gnielinski_nusselt_number(1e4, 0.5, 0.02) == pytest.approx(14.7054, rel=1e-4)
    assert convection.gnielinski_nusselt_number(1e4, 2000.0, 0.02) > 0


def test_air_half_way_between_two_tabled_temperatures() -> None:
    """325 K: ν (15.89 + 20.92)/2 = 18.405 mm²/s, λ 28.15 mW/(m·K), Pr 0.7035."""
    air = air_at(325.0)
    assert air.kinematic_viscosity == pytest.approx(18.405e-6)
    assert air.conductivity == pytest.approx(28.15e-3)
    assert air.prandtl_number == pytest.approx(0.7035)


@pytest.mark.parametrize(
    ("ask", "given_", "words"),
    [
        (air_at, (249.9,), "film temperature 249.9 K lies outside 250 to 600 K"),
        (air_at, (600.1,), "film temperature 600.1 K"),
        (air_at, (math.nan,), "film temperature nan"),
        (heat.plane_wall_resistance, (-0.001, 1.0), "thickness"),
        (heat.plane_wall_resistance, (0.01, 0.0), "conductivity"),
        (heat.overall_coefficient, (0.0, 1.0, 1.0), "film coefficient"),
        (heat.overall_coefficient, (1.0, 1.0, 0.0), "film coefficient"),
        (heat.cylinder_conduction, (1.0, 0.2, 0.2, 1.0, 0.0), "outside diameter"),
        (heat.cylinder_conduction, (1.0, 0.0, 0.2, 1.0, 0.0), "outside diameter"),
        (heat.cylinder_conduction, (0.0, 0.1, 0.2, 1.0, 0.0), "conductivity"),
        (heat.cylinder_overall_coefficient, (0.0, 1.0, 0.1, 0.2, 1.0), "film coefficient"),
        (heat.cylinder_overall_coefficient, (1.0, 0.0, 0.1, 0.2, 1.0), "film coefficient"),
        (heat.radiated_flux, (1.01, 500.0, 300.0), "emissivity 1.01"),
        (heat.radiated_flux, (-0.01, 500.0, 300.0), "emissivity -0.01"),
        (heat.temperature_rise, (1.0, 0.0, 2000.0), "mass flow"),
        (heat.temperature_rise, (1.0, 1.0, 0.0), "specific heat"),
        (convection.dittus_boelter_nusselt_number, (9999.0, 1.0, 0.4), "below 1e4"),
        (convection.dittus_boelter_nusselt_number, (1e5, 0.59, 0.4), "0.6 to 160"),
        (convection.dittus_boelter_nusselt_number, (1e5, 161.0, 0.4), "0.6 to 160"),
        (convection.dittus_boelter_nusselt_number, (1e5, 1.0, 0.35), "neither"),
        (convection.petukhov_friction_factor, (2999.0,), "3000 to 5e6"),
        (convection.petukhov_friction_factor, (5.01e6,), "3000 to 5e6"),
        (convection.gnielinski_nusselt_number, (2999.0, 1.0, 0.02), "3000 to 5e6"),
        (convection.gnielinski_nusselt_number, (5.01e6, 1.0, 0.02), "3000 to 5e6"),
        (convection.gnielinski_nusselt_number, (1e5, 0.49, 0.02), "0.5 to 2000"),
        (convection.gnielinski_nusselt_number, (1e5, 2001.0, 0.02), "0.5 to 2000"),
        (convection.gnielinski_nusselt_number, (1e5, 1.0, 0.0), "friction factor"),
        (convection.film_coefficient, (10.0, 0.05, 0.0), "length"),
        (convection.rayleigh_number, (0.003, -1.0, 0.1, 1e-5, 0.7), "colder"),
        (convection.rayleigh_number, (0.003, 1.0, 0.1, 0.0, 0.7), "viscosity"),
        (convection.horizontal_cylinder_nusselt_number, (1.01e12, 0.7), "1e12"),
        (convection.horizontal_cylinder_nusselt_number, (-1.0, 0.7), "1e12"),
        (convection.vertical_plate_nusselt_number, (1e6, 0.0), "Prandtl"),
        (lagging.natural_film_on_pipe, (290.0, 291.0, 0.1), "colder than the air"),
        (lagging.lagged_pipe_surface_temperature, (290.0, 291.0, 0.1, 0.2, 0.05, 0.9), "metal of 290 K"),
        (lagging.lagged_wall_surface_temperature, (500.0, 291.0, 0.0, 0.2, 0.05, 0.9), "thickness"),
        (lagging.lagged_pipe_loss, (500.0, 291.0, 0.1, 0.2, 0.05, 1.1), "emissivity"),
    ],
)
def test_outside_is_refused(ask: object, given_: tuple[float, ...], words: str) -> None:
    assert callable(ask)
    with pytest.raises(OutOfRange, match=words):
        ask(*given_)
