"""Heat through walls: conduction, radiation and the coefficient of a wall with a film on each side.

Steady state throughout. Film coefficients come from ``convection``; lagging, where the surface finds its
own temperature, from ``lagging``.

>>> wall = plane_wall_resistance(t=0.018, λ=48.0)
>>> round(overall_coefficient(h_1=900.0, R=wall, h_2=250.0), 3)
182.278
"""

from __future__ import annotations

import math

from speclint.equations import (
    FIRST_PRINCIPLES,
    JoulesPerKilogramKelvin,
    KelvinDifference,
    Kelvins,
    KilogramsPerSecond,
    Metres,
    Ratio,
    Source,
    SquareMetreKelvinsPerWatt,
    SquareMetres,
    Watts,
    WattsPerMetre,
    WattsPerMetreKelvin,
    WattsPerSquareMetre,
    WattsPerSquareMetreKelvin,
    WattsPerSquareMetreKelvinToTheFourth,
    formula,
    require,
)
from speclint.handbook.tables import CENGEL_HEAT, JOEL

CODATA = Source(
    "CODATA recommended values of the fundamental physical constants",
    "2018",
    "Stefan-Boltzmann constant",
    memory=True,
)
_WALLS = CENGEL_HEAT.at("ch. 2 and 3")

#: Stefan and Boltzmann's constant [W/(m²·K⁴)], CODATA 2018.
STEFAN_BOLTZMANN = 5.670374419e-8


@formula("R = t/λ", cites=[_WALLS])
def plane_wall_resistance(t: Metres, λ: WattsPerMetreKelvin) -> SquareMetreKelvinsPerWatt:
    """Resistance to heat of one square metre of a flat layer; those of layers in series add.

    R = t/λ

    ``t`` thickness [m], not below 0; ``λ`` conductivity [W/(m·K)], above 0. Returns [m²·K/W].
    Raises OutOfRange outside.

    >>> plane_wall_resistance(t=0.025, λ=0.05)
    0.5
    """
    require(t >= 0, "the thickness of a layer must not be below 0")
    _require_conductivity(λ)
    return t / λ


@formula("U = 1/(1/h_1 + R + 1/h_2)", cites=[JOEL.at("example 9.6")])
def overall_coefficient(
    h_1: WattsPerSquareMetreKelvin, R: SquareMetreKelvinsPerWatt, h_2: WattsPerSquareMetreKelvin
) -> WattsPerSquareMetreKelvin:
    """Coefficient of a flat wall with a film on each side.

    U = 1/(1/h_1 + R + 1/h_2)

    ``h_1``, ``h_2`` film coefficients [W/(m²·K)], above 0; ``R`` resistance of the layers between [m²·K/W].
    Returns [W/(m²·K)]. Raises OutOfRange outside.

    Joel, example 9.6: 0.313 W/(m²·K) through layers of 25, 75 and 110 mm.

    >>> layers = 0.025 / 0.06 + 0.075 / 0.04 + 0.110 / 0.6
    >>> round(overall_coefficient(2.5, layers, 3.1), 3)
    0.313
    """
    require(h_1 > 0, "a film coefficient must be above 0")
    require(h_2 > 0, "a film coefficient must be above 0")
    return 1 / (1 / h_1 + R + 1 / h_2)


@formula("q = U (T_1 − T_2)", cites=[FIRST_PRINCIPLES])
def heat_flux(U: WattsPerSquareMetreKelvin, T_1: Kelvins, T_2: Kelvins) -> WattsPerSquareMetre:
    """Heat through one square metre, from 1 to 2.

    q = U (T_1 − T_2)

    ``U`` coefficient [W/(m²·K)]; ``T_1``, ``T_2`` temperatures [K]. Returns [W/m²], negative from 2 to 1.

    >>> heat_flux(U=200.0, T_1=650.0, T_2=400.0)
    50000.0
    """
    return U * (T_1 - T_2)


@formula("Q_L = 2 π λ (T_1 − T_2)/ln(D/d)", cites=[CENGEL_HEAT.at("example 2.15")])
def cylinder_conduction(
    λ: WattsPerMetreKelvin, d: Metres, D: Metres, T_1: Kelvins, T_2: Kelvins
) -> WattsPerMetre:
    """Heat through one metre of a round wall, outwards.

    Q_L = 2 π λ (T_1 − T_2)/ln(D/d)

    ``λ`` conductivity [W/(m·K)]; ``d``, ``D`` inside and outside diameter [m], 0 < d < D; ``T_1``, ``T_2``
    temperature inside and outside [K]. Returns [W/m]. Raises OutOfRange outside.

    Cengel, example 2.15: 786 kW over 20 m.

    >>> round(20 * cylinder_conduction(20.0, 0.12, 0.16, 423.15, 333.15) / 1e3)
    786
    """
    _require_conductivity(λ)
    _require_shell(d, D)
    return 2 * math.pi * λ * (T_1 - T_2) / math.log(D / d)


@formula("U = 1/(D/(d h_1) + D ln(D/d)/(2 λ) + 1/h_2)", cites=[_WALLS])
def cylinder_overall_coefficient(
    h_1: WattsPerSquareMetreKelvin,
    h_2: WattsPerSquareMetreKelvin,
    d: Metres,
    D: Metres,
    λ: WattsPerMetreKelvin,
) -> WattsPerSquareMetreKelvin:
    """Coefficient of a round wall with a film on each side, on its outside area.

    U = 1/(D/(d h_1) + D ln(D/d)/(2 λ) + 1/h_2)

    ``h_1``, ``h_2`` film coefficients inside and outside [W/(m²·K)], above 0; ``d``, ``D`` inside and outside
    diameter [m], 0 < d < D; ``λ`` conductivity [W/(m·K)]. Returns [W/(m²·K)]. Raises OutOfRange outside.

    By hand: 0.1/(0.08·50) + 0.1·0.22314/(2·0.5) + 1/10 = 0.025 + 0.022314 + 0.1 = 0.147314.

    >>> round(cylinder_overall_coefficient(50.0, 10.0, 0.08, 0.10, 0.5), 4)
    6.7882
    """
    require(h_1 > 0, "a film coefficient must be above 0")
    require(h_2 > 0, "a film coefficient must be above 0")
    _require_conductivity(λ)
    _require_shell(d, D)
    return 1 / (D / (d * h_1) + D * math.log(D / d) / (2 * λ) + 1 / h_2)


@formula("q = ε σ (T_1⁴ − T_2⁴)", cites=[CENGEL_HEAT.at("ch. 1"), CODATA])
def radiated_flux(
    ε: Ratio, T_1: Kelvins, T_2: Kelvins, σ: WattsPerSquareMetreKelvinToTheFourth = STEFAN_BOLTZMANN
) -> WattsPerSquareMetre:
    """Heat radiated by one square metre of a surface to wide surroundings.

    q = ε σ (T_1⁴ − T_2⁴)

    ``ε`` emissivity, 0 to 1; ``T_1``, ``T_2`` temperature of surface and surroundings [K]; ``σ`` Stefan and
    Boltzmann's constant. Returns [W/m²]. Raises OutOfRange for ε outside.

    Incropera, example 9.4 (its companion seen): 441 W/m from a pipe of 0.1 m, 438 K, ε = 0.85, to 296 K.

    >>> round(math.pi * 0.1 * radiated_flux(0.85, 438.0, 296.0))
    441
    """
    require(0 <= ε <= 1, f"emissivity {ε:.4g} lies outside 0 to 1")
    return ε * σ * (T_1**4 - T_2**4)


@formula("ΔT = Q/(m c_p)", cites=[FIRST_PRINCIPLES])
def temperature_rise(Q: Watts, m: KilogramsPerSecond, c_p: JoulesPerKilogramKelvin) -> KelvinDifference:
    """Rise in temperature of dry steam that takes up heat as it flows.

    ΔT = Q/(m c_p)

    ``Q`` heat [W]; ``m`` mass flow [kg/s], above 0; ``c_p`` specific heat [J/(kg·K)], above 0. Returns [K].
    Raises OutOfRange outside.

    >>> temperature_rise(Q=60e3, m=3.0, c_p=2000.0)
    10.0
    """
    require(m > 0, "the mass flow must be above 0")
    require(c_p > 0, "the specific heat must be above 0")
    return Q / (m * c_p)


@formula("T = T_b + ΔT", cites=[FIRST_PRINCIPLES])
def tied_temperature(T_b: Kelvins, ΔT: KelvinDifference) -> Kelvins:
    """Temperature of a part that is stated as another's and a difference.

    T = T_b + ΔT

    ``T_b`` temperature of the other part [K]; ``ΔT`` how much hotter this one is [K]. Returns [K].

    >>> round(tied_temperature(T_b=523.15, ΔT=25.0), 2)
    548.15
    """
    return T_b + ΔT


@formula("T = max(T_1, T_2)", cites=[FIRST_PRINCIPLES])
def hotter(T_1: Kelvins, T_2: Kelvins) -> Kelvins:
    """Temperature to which a part between two others is judged: that of the hotter, which it cannot exceed.

    T = max(T_1, T_2)

    ``T_1``, ``T_2`` metal temperatures of the parts on either side [K]. Returns [K].

    >>> hotter(T_1=543.15, T_2=648.15)
    648.15
    """
    return max(T_1, T_2)


def _require_conductivity(λ: float) -> None:
    require(λ > 0, "the conductivity must be above 0")


def _require_shell(d: float, D: float) -> None:
    require(0 < d < D, "the outside diameter must be greater than the inside one, and that above 0")


@formula("A = A_0 + A_1", cites=[FIRST_PRINCIPLES])
def areas_together(A_0: SquareMetres, A_1: SquareMetres) -> SquareMetres:
    """Two areas together.

    A = A_0 + A_1

    ``A_0`` area so far [m²]; ``A_1`` area that is added [m²]. Returns [m²].

    >>> areas_together(A_0=0.25, A_1=0.5)
    0.75
    """
    return A_0 + A_1
