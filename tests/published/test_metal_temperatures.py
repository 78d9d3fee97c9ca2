"""Temperature of metal against printed examples and the equations of conduction solved otherwise."""

from __future__ import annotations

import cmath
import math

import pytest

from speclint.handbook.heat import (
    annand_nusselt_number,
    face_temperature,
    film_coefficient,
    stem_temperature,
    surface_swing,
    warmed_temperature,
    washed_temperature,
)
from tests.published.proof import proves

METAL = "heat.metal"


@proves(METAL, seen="Rayner Joel, Basic Engineering Thermodynamics")
def test_joels_interface() -> None:
    """Example 9.1, p. 256: 0.25 m of 0.69 and 0.05 m of 0.93 W/(m·K), faces at 30 and 5 °C: 8.2 °C between.

    The first layer stands for a film of 0.69/0.25 = 2.76 W/(m²·K), the second for the wall.
    """
    found = face_temperature(T_1=303.15, T_2=278.15, h_1=2.76, R=0.05 / 0.93, h_2=1e12)
    assert found - 273.15 == pytest.approx(8.2, abs=0.05)


@proves(METAL, memory="F. P. Incropera, Fundamentals of Heat and Mass Transfer")
def test_incroperas_thermocouple() -> None:
    """Example 5.1: 0.706 mm, 8500 kg/m³, 400 J/(kg·K), 400 W/(m²·K): from 25 to 199 °C in gas of 200 °C in 5.2 s."""
    radius = 0.706e-3 / 2
    mass, area = 8500 * 4 / 3 * math.pi * radius**3, 4 * math.pi * radius**2
    found = warmed_temperature(T_0=298.15, T_f=473.15, h=400.0, A=area, t=5.2, m=mass, c=400.0)
    assert found - 273.15 == pytest.approx(199.0, abs=0.05)


@proves(METAL, derived="equation of the stem integrated by scipy")
@pytest.mark.parametrize("h", [5.0, 60.0, 400.0])
def test_a_stem_by_its_differential_equation(h: float) -> None:
    """T″ = 4 h (T − T_f)/(λ d), T = T_b at the hot end and T′ = 0 at the other."""
    from scipy.integrate import solve_bvp

    T_b, T_f, λ, d, L = 620.0, 430.0, 42.0, 0.022, 0.25
    places = [L * n / 60 for n in range(61)]
    solved = solve_bvp(
        lambda _, y: [y[1], 4 * h / (λ * d) * (y[0] - T_f)],
        lambda start, end: [start[0] - T_b, end[1]],
        places,
        [[T_b] * 61, [0.0] * 61],
        tol=1e-8,
    )
    for x in (0.0, 0.08, 0.25):
        assert stem_temperature(T_b, T_f, h, λ, d, L, x) == pytest.approx(float(solved.sol(x)[0]), abs=0.01)


@proves(METAL, derived="periodic conduction into a thick wall, exact, by complex numbers")
@pytest.mark.parametrize(("h", "n"), [(100.0, 0.5), (600.0, 2.0), (1000.0, 5.0)])
def test_the_swing_of_a_surface(h: float, n: float) -> None:
    """The surface swings by ΔT/(1 + λ √(i ω/a)/h); the form for small films lies above it by less than 8 %."""
    λ, a, ΔT = 50.0, 1.4e-5, 100.0
    exact = abs(ΔT / (1 + λ * cmath.sqrt(2j * math.pi * n / a) / h))
    assert exact < surface_swing(h, ΔT, λ, n, a) < 1.08 * exact


@proves(METAL, memory="W. J. D. Annand, Proc. Instn Mech. Engrs 177")
def test_annands_coefficient_of_a_large_engine() -> None:
    """By hand: 500 mm at 4 m/s, steam of 3 kg/m³, 2e-5 Pa·s and 0.04 W/(m·K): Re 3e5, 191 to 437 W/(m²·K).

    Common practice has 200 to 1000 for dry steam in a locomotive.
    """
    Re = 3.0 * 4.0 * 0.5 / 2e-5
    found = [film_coefficient(annand_nusselt_number(Re, b), 0.04, 0.5) for b in (0.35, 0.8)]
    assert found == pytest.approx([191.4, 437.4], rel=2e-3)


@proves(METAL, derived="heat that comes and goes")
@pytest.mark.parametrize(("h_1", "h_2"), [(300.0, 100.0), (50.0, 900.0)])
def test_a_washed_part_gives_what_it_takes(h_1: float, h_2: float) -> None:
    T = washed_temperature(h_1, 0.03, 650.0, h_2, 0.05, 420.0)
    assert h_1 * 0.03 * (650.0 - T) == pytest.approx(h_2 * 0.05 * (T - 420.0))
