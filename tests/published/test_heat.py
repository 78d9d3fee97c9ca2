"""Heat transfer against printed worked examples, ht, CoolProp and solutions from first principles."""

from __future__ import annotations

import math
from collections.abc import Callable
from itertools import pairwise

import pytest
from fluids.atmosphere import ATMOSPHERE_1976
from ht import (
    Nu_horizontal_cylinder_Churchill_Chu,
    Nu_vertical_plate_Churchill,
    turbulent_Dittus_Boelter,
    turbulent_Gnielinski,
    turbulent_Petukhov_Kirillov_Popov,
)

from speclint.handbook.heat import conduction as heat, convection, lagging
from speclint.handbook.heat.air import air_at, standard_air_pressure
from tests.published.proof import proves


@proves("heat.conduction", seen="Y. A. Cengel, Heat and Mass Transfer")
def test_cengel_steam_pipe() -> None:
    """Y. A. Cengel, Heat and Mass Transfer, example 2.15 (seen): 786 kW over 20 m."""
    loss = 20 * heat.cylinder_conduction(λ=20.0, d=0.12, D=0.16, T_1=423.15, T_2=333.15)
    assert loss == pytest.approx(786e3, rel=1e-3)


@proves("heat.conduction", seen="Rayner Joel, Basic Engineering Thermodynamics")
def test_joel_wall_of_three_layers() -> None:
    """Rayner Joel, Basic Engineering Thermodynamics, example 9.6, p. 271 (seen): 0.313 W/(m²·K)."""
    layers = [(0.025, 0.06), (0.075, 0.04), (0.110, 0.6)]
    R = sum(heat.plane_wall_resistance(t, λ) for t, λ in layers)
    assert heat.overall_coefficient(2.5, R, 3.1) == pytest.approx(0.313, rel=2e-3)


@proves("heat.conduction", seen="Rayner Joel, Basic Engineering Thermodynamics")
def test_joel_interface_of_two_layers() -> None:
    """The same, example 9.1, p. 256 (seen): 8.2 °C at the interface; 10 815 kJ/h through 50 m²."""
    first, second = heat.plane_wall_resistance(0.25, 0.69), heat.plane_wall_resistance(0.05, 0.93)
    flux = heat.heat_flux(1 / (first + second), 303.15, 278.15)
    assert flux * 50 * 3.6 == pytest.approx(10815, rel=1e-3)
    assert 303.15 - flux * first - 273.15 == pytest.approx(8.2, abs=0.05)


@proves("heat.conduction", derived="hand working")
def test_bridge_between_live_and_exhaust_steam() -> None:
    """By hand: 1/900 + 0.018/48 + 1/250 = 0.00548611; 182.278 W/(m²·K)."""
    R = heat.plane_wall_resistance(0.018, 48.0)
    assert heat.overall_coefficient(900.0, R, 250.0) == pytest.approx(182.278, rel=1e-5)


@proves("heat.conduction", derived="20 000 rings in series")
@pytest.mark.parametrize("d", [0.05, 0.1, 0.3])
@pytest.mark.parametrize("wall", [0.005, 0.05])
def test_round_wall_agrees_with_finite_differences(d: float, wall: float) -> None:
    """First principles: q' = −λ 2πr dT/dr, the radius cut into 20 000 rings whose resistances add."""
    D, λ, rings = d + 2 * wall, 50.0, 20_000
    step = wall / rings
    resistance = sum(step / (λ * 2 * math.pi * (d / 2 + (n + 0.5) * step)) for n in range(rings))
    assert heat.cylinder_conduction(λ, d, D, 600.0, 500.0) == pytest.approx(100.0 / resistance, rel=1e-6)
    total = 1 / (math.pi * d * 200.0) + resistance + 1 / (math.pi * D * 10.0)
    U = heat.cylinder_overall_coefficient(200.0, 10.0, d, D, λ)
    assert math.pi * D * U == pytest.approx(1 / total, rel=1e-6)


@proves("heat.convection", library="ht")
@pytest.mark.parametrize("Re", [1e4, 3e4, 1e5, 1.755e6])
@pytest.mark.parametrize("Pr", [0.7, 0.95, 1.1, 2.0])
def test_turbulent_convection_agrees_with_ht(Re: float, Pr: float) -> None:
    f = convection.petukhov_friction_factor(Re)
    gnielinski = convection.gnielinski_nusselt_number(Re, Pr, f)
    assert gnielinski == pytest.approx(turbulent_Gnielinski(Re=Re, Pr=Pr, fd=f), rel=1e-12)
    for n, heating in ((0.4, True), (0.3, False)):
        theirs = turbulent_Dittus_Boelter(Re=Re, Pr=Pr, heating=heating)
        assert convection.dittus_boelter_nusselt_number(Re, Pr, n) == pytest.approx(theirs, rel=1e-12)
    # An independent correlation: Petukhov, Kirillov and Popov, 6 %.
    if Re >= 3e4:
        other = turbulent_Petukhov_Kirillov_Popov(Re=Re, Pr=Pr, fd=f)
        assert gnielinski == pytest.approx(other, rel=0.08)


@proves("heat.convection", memory="Incropera, Fundamentals of Heat and Mass Transfer")
def test_the_two_correlations_agree_within_their_scatter() -> None:
    """Incropera (from memory): errors up to 25 % of the older equation, 10 % of the newer."""
    for Re in (1e4, 1e5, 1e6):
        newer = convection.gnielinski_nusselt_number(Re, 0.95, convection.petukhov_friction_factor(Re))
        assert convection.dittus_boelter_nusselt_number(Re, 0.95, 0.4) == pytest.approx(newer, rel=0.25)


@proves("heat.convection", library="ht")
@pytest.mark.parametrize("Ra", [1.0, 1e3, 1e6, 1.8e9, 1e12])
@pytest.mark.parametrize("Pr", [0.68, 0.7, 7.0])
def test_natural_convection_agrees_with_ht(Ra: float, Pr: float) -> None:
    pipe = Nu_horizontal_cylinder_Churchill_Chu(Pr=Pr, Gr=Ra / Pr)
    wall = Nu_vertical_plate_Churchill(Pr=Pr, Gr=Ra / Pr)
    assert convection.horizontal_cylinder_nusselt_number(Ra, Pr) == pytest.approx(pipe, rel=1e-9)
    assert convection.vertical_plate_nusselt_number(Ra, Pr) == pytest.approx(wall, rel=1e-9)


@proves(
    "heat.conduction",
    "heat.convection",
    "heat.lagging",
    seen="Incropera, Fundamentals of Heat and Mass Transfer",
)
def test_incropera_pipe_and_fire_screen() -> None:
    """Incropera, 6th ed., examples 9.4, p. 580, and 9.2, p. 572 (a public companion notebook seen).

    9.4: pipe of 0.1 m at 438 K in air of 296 K, 763 W/m, 441 of them radiated. 9.2: screen 0.71 m high and 1.02 m
    wide at 505 K: Ra 1.81e9, 1060 W by convection, 7.0 W/(m²·K).
    """
    Ra = convection.rayleigh_number(β=2.5e-3, ΔT=209.0, L=0.71, ν=26.4e-6, Pr=26.4 / 38.3, g=9.8)
    assert Ra == pytest.approx(1.81e9, rel=3e-3)
    Nu = convection.vertical_plate_nusselt_number(Ra, 0.69)
    loss = convection.film_coefficient(Nu, 33.8e-3, 0.71) * 0.71 * 1.02 * 209.0
    assert loss == pytest.approx(1060, rel=5e-3)
    film = lagging.natural_film_on_pipe(438.0, 296.0, 0.1)
    radiated = math.pi * 0.1 * heat.radiated_flux(0.85, 438.0, 296.0)
    assert radiated == pytest.approx(441, rel=2e-3)
    assert math.pi * 0.1 * heat.heat_flux(film, 438.0, 296.0) + radiated == pytest.approx(763, rel=2e-3)
    assert lagging.natural_film_on_wall(505.0, 296.0, 0.71) == pytest.approx(7.0, rel=0.01)


@proves("heat.convection", "heat.conduction", seen="Incropera, Fundamentals of Heat and Mass Transfer")
def test_incropera_gas_cooled_in_a_duct() -> None:
    """The same, example 8.6, p. 516 (companion seen): 1313 W from 0.05 kg/s, 304.3 W/m² and 50.7 °C at the outlet.

    103 to 77 °C in a duct of 0.15 m, Re 20 384, Pr 0.70, 0.030 W/(m·K); 6 W/(m²·K) outside, in air of 0 °C.
    """
    assert heat.temperature_rise(Q=-1313.0, m=0.05, c_p=1010.0) == pytest.approx(-26.0, rel=1e-3)
    Nu = convection.dittus_boelter_nusselt_number(20_384, 0.70, 0.3)
    U = heat.overall_coefficient(convection.film_coefficient(Nu, 0.030, 0.15), 0.0, 6.0)
    flux = heat.heat_flux(U, 77.0 + 273.15, 273.15)
    assert flux == pytest.approx(304.3, rel=1e-3)
    assert flux / 6.0 == pytest.approx(50.7, rel=1e-3)


@proves("heat.convection", library="ht, example in its documentation")
def test_gnielinski_as_documented() -> None:
    assert convection.gnielinski_nusselt_number(1e5, 1.2, 0.0185) == pytest.approx(254.6268, rel=1e-6)


@proves("heat.convection", "heat.lagging", memory="Y. A. Cengel, Heat and Mass Transfer")
def test_cengel_pipe_in_a_room() -> None:
    """Y. A. Cengel, Heat and Mass Transfer, example 9-1 (from memory): 5.869 W/(m²·K) at 70 °C, 80 mm, 20 °C."""
    Ra = convection.rayleigh_number(β=1 / 318, ΔT=50.0, L=0.08, ν=1.749e-5, Pr=0.7241, g=9.81)
    assert Ra == pytest.approx(1.869e6, rel=2e-3)
    Nu = convection.horizontal_cylinder_nusselt_number(Ra, 0.7241)
    assert Nu == pytest.approx(17.40, rel=1e-3)
    assert convection.film_coefficient(Nu, 0.02699, 0.08) == pytest.approx(5.869, rel=1e-3)
    assert lagging.natural_film_on_pipe(343.15, 293.15, 0.08) == pytest.approx(5.869, rel=0.015)


@proves("heat.air", library="CoolProp")
@pytest.mark.parametrize("T", [250.0, 275.0, 300.0, 333.0, 400.0, 475.0, 550.0, 600.0])
def test_air_agrees_with_coolprop(T: float) -> None:
    coolprop = pytest.importorskip("CoolProp.CoolProp")
    at = ("P", 101325.0, "T", T, "Air")
    air = air_at(T)
    ν = coolprop.PropsSI("V", *at) / coolprop.PropsSI("D", *at)
    assert air.kinematic_viscosity == pytest.approx(ν, rel=0.02)
    assert air.conductivity == pytest.approx(coolprop.PropsSI("L", *at), rel=0.025)
    assert air.prandtl_number == pytest.approx(coolprop.PropsSI("PRANDTL", *at), rel=0.03)
    β = coolprop.PropsSI("ISOBARIC_EXPANSION_COEFFICIENT", *at)
    assert air.expansion == pytest.approx(β, rel=0.01)


@proves("heat.air", library="fluids")
@pytest.mark.parametrize("h", [-400.0, 0.0, 1000.0, 3000.0, 5000.0])
def test_the_standard_atmosphere_agrees_with_fluids(h: float) -> None:
    """The library counts geometric heights, which are 0.04 m in 500 m more than those of the formula."""
    assert standard_air_pressure(h=h) == pytest.approx(ATMOSPHERE_1976(h).P, rel=1e-3)


def still_air_film(T_s: float, T_a: float, length: float, nusselt: Callable[..., float]) -> float:
    """Film coefficient from ht's correlation and CoolProp's air, for the solutions below."""
    coolprop = pytest.importorskip("CoolProp.CoolProp")
    T = (T_s + T_a) / 2
    at = ("P", 101325.0, "T", T, "Air")
    ν = coolprop.PropsSI("V", *at) / coolprop.PropsSI("D", *at)
    Gr = 9.80665 / T * (T_s - T_a) * length**3 / ν**2
    Nu: float = nusselt(Pr=coolprop.PropsSI("PRANDTL", *at), Gr=Gr)
    conductivity: float = coolprop.PropsSI("L", *at)
    return Nu * conductivity / length


@proves("heat.lagging", library=["ht", "CoolProp", "scipy"])
@pytest.mark.parametrize("T_i", [373.15, 573.15, 673.15])
@pytest.mark.parametrize(("d", "D"), [(0.15, 0.17), (0.15, 0.25), (0.6, 0.75)])
@pytest.mark.parametrize("ε", [0.1, 0.9])
def test_lagged_pipe_agrees_with_a_solution_by_other_libraries(
    T_i: float, d: float, D: float, ε: float
) -> None:
    """The same balance with ht's film, CoolProp's air and scipy's root."""
    from scipy.optimize import brentq

    T_a, λ = 293.15, 0.06

    def excess(T: float) -> float:
        film = still_air_film(T, T_a, D, Nu_horizontal_cylinder_Churchill_Chu)
        out = film * (T - T_a) + ε * 5.670374419e-8 * (T**4 - T_a**4)
        return 2 * λ * (T_i - T) / (D * math.log(D / d)) - out

    T_s = brentq(excess, T_a + 1e-6, T_i - 1e-6)
    assert lagging.lagged_pipe_surface_temperature(T_i, T_a, d, D, λ, ε) == pytest.approx(T_s, abs=0.6)
    loss = 2 * math.pi * λ * (T_i - T_s) / math.log(D / d)
    assert lagging.lagged_pipe_loss(T_i, T_a, d, D, λ, ε) == pytest.approx(loss, rel=0.01)


@proves("heat.lagging", library=["ht", "CoolProp", "scipy"])
@pytest.mark.parametrize("t", [0.01, 0.05])
def test_lagged_wall_agrees_with_a_solution_by_other_libraries(t: float) -> None:
    from scipy.optimize import brentq

    T_i, T_a, H, λ, ε = 573.15, 293.15, 0.8, 0.06, 0.3

    def excess(T: float) -> float:
        film = still_air_film(T, T_a, H, Nu_vertical_plate_Churchill)
        return λ * (T_i - T) / t - film * (T - T_a) - ε * 5.670374419e-8 * (T**4 - T_a**4)

    T_s = brentq(excess, T_a + 1e-6, T_i - 1e-6)
    assert lagging.lagged_wall_surface_temperature(T_i, T_a, t, H, λ, ε) == pytest.approx(T_s, abs=0.6)
    assert lagging.lagged_wall_loss(T_i, T_a, t, H, λ, ε) == pytest.approx(λ * (T_i - T_s) / t, rel=0.01)


AIR_AS_CENGEL = [
    # °C, W/(m·K), m²/s, Prandtl number
    (0.0, 0.02364, 1.338e-5, 0.7362),
    (20.0, 0.02514, 1.516e-5, 0.7309),
    (50.0, 0.02735, 1.798e-5, 0.7228),
    (100.0, 0.03095, 2.306e-5, 0.7111),
    (200.0, 0.03779, 3.455e-5, 0.6974),
    (300.0, 0.04418, 4.765e-5, 0.6935),
]


@proves("heat.air", memory="Y. A. Cengel, Heat and Mass Transfer, Table A-15")
@pytest.mark.parametrize(("celsius", "conductivity", "viscosity", "prandtl"), AIR_AS_CENGEL)
def test_air_as_another_table_has_it(
    celsius: float, conductivity: float, viscosity: float, prandtl: float
) -> None:
    """At one atmosphere; the tables differ by 3.3 % at most, most in the Prandtl number."""
    air = air_at(celsius + 273.15)
    assert air.conductivity == pytest.approx(conductivity, rel=0.032)
    assert air.kinematic_viscosity == pytest.approx(viscosity, rel=0.027)
    assert air.prandtl_number == pytest.approx(prandtl, rel=0.035)


@proves("heat.air", library="CoolProp")
def test_air_departs_smoothly_from_coolprop() -> None:
    """Two tables of one gas differ by a smooth drift: a kink of 1 % at one temperature is a slip of the pen."""
    coolprop = pytest.importorskip("CoolProp.CoolProp")
    places = [250.0 + 50 * n for n in range(8)]

    def departures(T: float) -> tuple[float, float, float]:
        at = ("P", 101325.0, "T", T, "Air")
        ν = coolprop.PropsSI("V", *at) / coolprop.PropsSI("D", *at)
        air = air_at(T)
        return (
            air.kinematic_viscosity / ν,
            air.conductivity / coolprop.PropsSI("L", *at),
            air.prandtl_number / coolprop.PropsSI("PRANDTL", *at),
        )

    for drift in zip(*map(departures, places), strict=True):
        assert all(abs(after - before) < 0.011 for before, after in pairwise(drift)), drift
