"""Lagging in still air: how hot its surface gets, and how much heat is lost.

Heat conducted through the lagging leaves its surface by natural convection and by radiation to surroundings
at the temperature of the air; the surface takes the temperature at which the two are equal. The metal side
is taken at the metal's temperature. Wind cools the surface and raises the loss; a burn is judged in still
air. The examples below were solved apart with ht 1.2.0 and CoolProp's air (tests/published/test_heat.py).

>>> round(lagged_pipe_surface_temperature(T_i=573.15, T_a=293.15, d=0.15, D=0.25, λ=0.06, ε=0.3) - 273.15)
54
"""

from __future__ import annotations

import math
from collections.abc import Callable

from speclint.equations import (
    Kelvins,
    Metres,
    Ratio,
    WattsPerMetre,
    WattsPerMetreKelvin,
    WattsPerSquareMetre,
    WattsPerSquareMetreKelvin,
    formula,
    require,
)
from speclint.handbook.heat import conduction as heat, convection
from speclint.handbook.heat.air import INCROPERA, INCROPERA_EXAMPLE, air_at

_CITES = [convection.CHURCHILL_CHU, INCROPERA_EXAMPLE, INCROPERA.at("table A.4, air"), heat.CODATA]
_UNITS = "properties of air in SI, from a table"
#: Halvings of the bracket: 1000 K / 2^50 is round-off.
_HALVINGS = 50


@formula(
    "h_p = λ_air(T)/D (0.60 + 0.387 Ra^(1/6)/(1 + (0.559/Pr)^(9/16))^(8/27))², Ra = 9.80665 m/s² (T_s "
    "− T_a) D³ Pr/(T ν_air(T)²), Pr = Pr_air(T), T = (T_s + T_a)/2",
    cites=_CITES,
    empirical=_UNITS,
)
def natural_film_on_pipe(T_s: Kelvins, T_a: Kelvins, D: Metres) -> WattsPerSquareMetreKelvin:
    """Film coefficient of still air round a hot horizontal pipe, after Churchill and Chu.

    ``T_s`` surface and ``T_a`` air [K], T_s ≥ T_a, their mean within 250 to 600 K; ``D`` outside diameter
    [m]. Returns [W/(m²·K)]. Raises OutOfRange outside.

    Incropera, example 9.4 (from memory, rounded there): 7.29 W/(m²·K) for 0.1 m, 438 K in air of 296 K.

    >>> round(natural_film_on_pipe(438.0, 296.0, 0.1), 1)
    7.2
    """
    return _film(T_s, T_a, D, convection.horizontal_cylinder_nusselt_number)


@formula(
    "h_w = λ_air(T)/H (0.825 + 0.387 Ra^(1/6)/(1 + (0.492/Pr)^(9/16))^(8/27))², Ra = 9.80665 m/s² "
    "(T_s − T_a) H³ Pr/(T ν_air(T)²), Pr = Pr_air(T), T = (T_s + T_a)/2",
    cites=_CITES,
    empirical=_UNITS,
)
def natural_film_on_wall(T_s: Kelvins, T_a: Kelvins, H: Metres) -> WattsPerSquareMetreKelvin:
    """Film coefficient of still air on a hot upright wall, after Churchill and Chu.

    ``T_s`` surface and ``T_a`` air [K], T_s ≥ T_a, their mean within 250 to 600 K; ``H`` height [m].
    Returns [W/(m²·K)]. Raises OutOfRange outside.

    Incropera, example 9.2 (from memory): 7.0 W/(m²·K) for 0.71 m, 505 K in air of 296 K.

    >>> round(natural_film_on_wall(505.0, 296.0, 0.71), 1)
    7.0
    """
    return _film(T_s, T_a, H, convection.vertical_plate_nusselt_number)


@formula(
    "T_p from 2 λ (T_i − T_p)/(D ln(D/d)) = α (T_p − T_a) + ε σ (T_p⁴ − T_a⁴), α = h_p(T_p, T_a, D), "
    "σ = 5.670374419e-8 W/(m²·K⁴)",
    cites=_CITES,
    empirical=_UNITS,
)
def lagged_pipe_surface_temperature(
    T_i: Kelvins, T_a: Kelvins, d: Metres, D: Metres, λ: WattsPerMetreKelvin, ε: Ratio
) -> Kelvins:
    """Temperature of the outside of lagging round a pipe or cylinder.

    2 λ (T_i − T_s)/(D ln(D/d)) = h (T_s − T_a) + ε σ (T_s⁴ − T_a⁴), solved for T_s

    ``T_i`` temperature of the metal under the lagging and ``T_a`` of the air [K], T_i ≥ T_a; ``d``, ``D``
    inside and outside diameter of the lagging [m], 0 < d < D; ``λ`` its conductivity at its mean temperature
    [W/(m·K)]; ``ε`` emissivity of the outside, 0 to 1. Returns [K]. Raises OutOfRange outside.
    """

    def conducted(T_s: float) -> float:
        return heat.cylinder_conduction(λ, d, D, T_i, T_s) / (math.pi * D)

    return _balance(T_i, T_a, conducted, lambda T_s: _given_off(natural_film_on_pipe, T_s, T_a, D, ε))


@formula("Q_L = 2 π λ (T_i − T_s)/ln(D/d), T_s = T_p(T_i, T_a, d, D, λ, ε)", cites=_CITES, empirical=_UNITS)
def lagged_pipe_loss(
    T_i: Kelvins, T_a: Kelvins, d: Metres, D: Metres, λ: WattsPerMetreKelvin, ε: Ratio
) -> WattsPerMetre:
    """Heat lost by one metre of lagged pipe or cylinder in still air.

    Q_L = 2 π λ (T_i − T_s)/ln(D/d) with T_s of ``lagged_pipe_surface_temperature``

    Arguments and limits as there. Returns [W/m].

    >>> round(lagged_pipe_loss(T_i=573.15, T_a=293.15, d=0.15, D=0.25, λ=0.06, ε=0.3))
    181
    """
    T_s = lagged_pipe_surface_temperature(T_i, T_a, d, D, λ, ε)
    return heat.cylinder_conduction(λ, d, D, T_i, T_s)


@formula(
    "T_w from λ (T_i − T_w)/t = α (T_w − T_a) + ε σ (T_w⁴ − T_a⁴), α = h_w(T_w, T_a, H), σ = "
    "5.670374419e-8 W/(m²·K⁴)",
    cites=_CITES,
    empirical=_UNITS,
)
def lagged_wall_surface_temperature(
    T_i: Kelvins, T_a: Kelvins, t: Metres, H: Metres, λ: WattsPerMetreKelvin, ε: Ratio
) -> Kelvins:
    """Temperature of the outside of lagging on an upright flat wall or cover.

    λ (T_i − T_s)/t = h (T_s − T_a) + ε σ (T_s⁴ − T_a⁴), solved for T_s

    ``T_i`` temperature of the metal under the lagging and ``T_a`` of the air [K], T_i ≥ T_a; ``t`` thickness
    [m], above 0; ``H`` height of the wall [m]; ``λ`` conductivity of the lagging at its mean temperature
    [W/(m·K)]; ``ε`` emissivity of the outside, 0 to 1. Returns [K]. Raises OutOfRange outside.

    >>> round(lagged_wall_surface_temperature(573.15, 293.15, t=0.05, H=0.8, λ=0.06, ε=0.3) - 273.15)
    61
    """
    require(t > 0, "the thickness of the lagging must be above 0")
    return _balance(
        T_i,
        T_a,
        lambda T_s: λ * (T_i - T_s) / t,
        lambda T_s: _given_off(natural_film_on_wall, T_s, T_a, H, ε),
    )


@formula("q = λ (T_i − T_s)/t, T_s = T_w(T_i, T_a, t, H, λ, ε)", cites=_CITES, empirical=_UNITS)
def lagged_wall_loss(
    T_i: Kelvins, T_a: Kelvins, t: Metres, H: Metres, λ: WattsPerMetreKelvin, ε: Ratio
) -> WattsPerSquareMetre:
    """Heat lost by one square metre of a lagged upright wall in still air.

    q = λ (T_i − T_s)/t with T_s of ``lagged_wall_surface_temperature``

    Arguments and limits as there. Returns [W/m²].

    >>> round(lagged_wall_loss(573.15, 293.15, t=0.05, H=0.8, λ=0.06, ε=0.3), -1)
    290.0
    """
    return λ * (T_i - lagged_wall_surface_temperature(T_i, T_a, t, H, λ, ε)) / t


def _film(T_s: float, T_a: float, length: float, nusselt: Callable[[float, float], float]) -> float:
    require(T_s >= T_a, f"a surface of {T_s:.4g} K is colder than the air of {T_a:.4g} K")
    air = air_at((T_s + T_a) / 2)
    Ra = convection.rayleigh_number(
        air.expansion, T_s - T_a, length, air.kinematic_viscosity, air.prandtl_number
    )
    return convection.film_coefficient(nusselt(Ra, air.prandtl_number), air.conductivity, length)


def _given_off(
    film: Callable[[float, float, float], float], T_s: float, T_a: float, length: float, ε: float
) -> float:
    """Heat that leaves one square metre of surface by convection and radiation."""
    return film(T_s, T_a, length) * (T_s - T_a) + heat.radiated_flux(ε, T_s, T_a)


def _balance(
    T_i: float, T_a: float, conducted: Callable[[float], float], given_off: Callable[[float], float]
) -> float:
    """The surface temperature at which both are equal: one falls with it, the other rises."""
    require(T_i >= T_a, f"metal of {T_i:.4g} K is colder than the air of {T_a:.4g} K")
    low, high = T_a, T_i
    for _ in range(_HALVINGS):
        middle = (low + high) / 2
        if conducted(middle) > given_off(middle):
            low = middle
        else:
            high = middle
    return (low + high) / 2
