"""Heat between a wall and what flows along it: forced inside passages, natural round pipes and walls.

Properties are those of the bulk in a passage and of the film, midway between wall and air, outside.
Correlations of this kind scatter by 10 to 25 % (Incropera, from memory). All are for steady flow: the
pulsating flow of an engine transfers more heat than they give.
"""

from __future__ import annotations

import math

from speclint.equations import (
    FIRST_PRINCIPLES,
    STANDARD_GRAVITY,
    KelvinDifference,
    Metres,
    MetresPerSecondSquared,
    PerKelvin,
    Ratio,
    Source,
    SquareMetresPerSecond,
    WattsPerMetreKelvin,
    WattsPerSquareMetreKelvin,
    formula,
    require,
)
from speclint.handbook.heat.air import INCROPERA

GNIELINSKI = Source(
    "V. Gnielinski, New equations for heat and mass transfer in turbulent pipe and channel flow, "
    "Int. Chemical Engineering 16",
    "1976",
    "equation and range, as reproduced in the open library ht",
)
PETUKHOV = Source(
    "B. S. Petukhov, Heat transfer and friction in turbulent pipe flow, Advances in Heat Transfer 6",
    "1970",
    "friction factor of smooth tubes",
    memory=True,
)
CHURCHILL_CHU = Source(
    "S. W. Churchill and H. H. S. Chu, Int. J. Heat and Mass Transfer 18",
    "1975",
    "horizontal cylinder and vertical plate, as reproduced in the open library ht",
)


def _seen(place: str) -> Source:
    """A place of Incropera whose worked example was seen in a companion to the book, not on the printed page."""
    return INCROPERA.at(f"{place} as printed in a public companion notebook", memory=False)


@formula(
    "Nu = 0.023 Re^0.8 Pr^n",
    cites=[_seen("equation 8.60, after Dittus and Boelter, example 8.6")],
)
def dittus_boelter_nusselt_number(Re: Ratio, Pr: Ratio, n: Ratio) -> Ratio:
    """Nusselt number of turbulent flow in a smooth passage, the older and rougher equation.

    Nu = 0.023 Re^0.8 Pr^n

    ``Re`` Reynolds number, 1e4 and more; ``Pr`` Prandtl number, 0.6 to 160; ``n`` 0.4 where the wall heats
    the steam, 0.3 where it cools it. Raises OutOfRange outside. Moderate differences of temperature, and
    ten diameters from the entrance.

    By hand, Re = 1e5 and Pr = 1: 0.023 · 1e4 = 230.

    >>> round(dittus_boelter_nusselt_number(Re=1e5, Pr=1.0, n=0.4), 6)
    230.0
    """
    require(Re >= 1e4, f"Reynolds number {Re:.4g} lies below 1e4")
    require(0.6 <= Pr <= 160, f"Prandtl number {Pr:.4g} lies outside 0.6 to 160")
    require(n in (0.3, 0.4), f"exponent {n:.4g} is neither 0.3 (steam cooled) nor 0.4 (steam heated)")
    number: float = 0.023 * Re**0.8 * Pr**n
    return number


@formula("f = (0.790 ln Re − 1.64)^−2", cites=[PETUKHOV, INCROPERA.at("equation 8.21")])
def petukhov_friction_factor(Re: Ratio) -> Ratio:
    """Darcy friction factor of a smooth passage.

    f = (0.790 ln Re − 1.64)^−2

    ``Re`` Reynolds number, 3000 to 5e6. Raises OutOfRange outside.

    By hand, Re = 1e5: 0.790 · 11.5129 − 1.64 = 7.4552; squared 55.580.

    >>> round(petukhov_friction_factor(1e5), 5)
    0.01799
    """
    _require_reynolds(Re)
    return 1 / (0.790 * math.log(Re) - 1.64) ** 2


@formula(
    "Nu = (f/8)(Re − 1000) Pr/(1 + 12.7 √(f/8) (Pr^(2/3) − 1))",
    cites=[GNIELINSKI, INCROPERA.at("equation 8.62")],
)
def gnielinski_nusselt_number(Re: Ratio, Pr: Ratio, f: Ratio) -> Ratio:
    """Nusselt number of turbulent flow in a passage.

    Nu = (f/8)(Re − 1000) Pr/(1 + 12.7 √(f/8) (Pr^(2/3) − 1))

    ``Re`` Reynolds number, 3000 to 5e6; ``Pr`` Prandtl number, 0.5 to 2000; ``f`` Darcy friction factor
    (Petukhov's for a smooth wall). Raises OutOfRange outside. Ten diameters from the entrance.

    By hand, Re = 1e5, Pr = 1, f = 0.018: 0.00225 · 99 000 = 222.75.

    >>> round(gnielinski_nusselt_number(Re=1e5, Pr=1.0, f=0.018), 2)
    222.75
    """
    _require_reynolds(Re)
    require(0.5 <= Pr <= 2000, f"Prandtl number {Pr:.4g} lies outside 0.5 to 2000")
    require(f > 0, f"friction factor {f:.4g} must be above 0")
    number: float = (f / 8) * (Re - 1000) * Pr / (1 + 12.7 * (f / 8) ** 0.5 * (Pr ** (2 / 3) - 1))
    return number


@formula("h = Nu λ/d", cites=[FIRST_PRINCIPLES])
def film_coefficient(Nu: Ratio, λ: WattsPerMetreKelvin, d: Metres) -> WattsPerSquareMetreKelvin:
    """Heat transfer coefficient from a Nusselt number.

    h = Nu λ/d

    ``Nu`` Nusselt number; ``λ`` conductivity of the fluid [W/(m·K)]; ``d`` the length on which the number is based
    (bore or hydraulic diameter, outside diameter, height) [m]. Returns [W/(m²·K)]. Raises OutOfRange unless d is above
    0.

    >>> round(film_coefficient(Nu=500.0, λ=0.05, d=0.1), 6)
    250.0
    """
    require(d > 0, "the length of a Nusselt number must be above 0")
    return Nu * λ / d


@formula("Ra = g β ΔT L³ Pr/ν²", cites=[_seen("equation 9.25, example 9.2")])
def rayleigh_number(
    β: PerKelvin,
    ΔT: KelvinDifference,
    L: Metres,
    ν: SquareMetresPerSecond,
    Pr: Ratio,
    g: MetresPerSecondSquared = STANDARD_GRAVITY,
) -> Ratio:
    """Rayleigh number of natural convection.

    Ra = g β ΔT L³ Pr/ν²

    ``β`` thermal expansion of the fluid [1/K], for air one over the film temperature; ``ΔT`` wall above air
    [K]; ``L`` outside diameter or height [m]; ``ν`` kinematic viscosity [m²/s]; ``Pr`` Prandtl number; ``g``
    acceleration of free fall [m/s²]. Raises OutOfRange unless ν is above 0 and ΔT not below.

    Incropera, example 9.2 (its companion seen): 1.81e9, here 1.813e9 for 0.71 m and 209 K at 400 K, with g = 9.8.

    >>> round(rayleigh_number(β=1 / 400, ΔT=209.0, L=0.71, ν=26.4e-6, Pr=0.690, g=9.8) / 1e9, 2)
    1.81
    """
    require(ΔT >= 0, "the wall must not be colder than the air")
    require(ν > 0, "the kinematic viscosity must be above 0")
    return g * β * ΔT * L**3 * Pr / ν**2


@formula(
    "Nu = (0.60 + 0.387 Ra^(1/6)/(1 + (0.559/Pr)^(9/16))^(8/27))²",
    cites=[CHURCHILL_CHU, _seen("equation 9.34, example 9.4")],
)
def horizontal_cylinder_nusselt_number(Ra: Ratio, Pr: Ratio) -> Ratio:
    """Nusselt number of natural convection round a long horizontal cylinder, on its diameter.

    Nu = (0.60 + 0.387 Ra^(1/6)/(1 + (0.559/Pr)^(9/16))^(8/27))²

    ``Ra`` Rayleigh number on the diameter, 0 to 1e12; ``Pr`` Prandtl number, above 0.
    Raises OutOfRange outside.

    Cengel, example 9-1 (from memory): 17.40 at Ra = 1.869e6, Pr = 0.7241.

    >>> round(horizontal_cylinder_nusselt_number(Ra=1.869e6, Pr=0.7241), 2)
    17.4
    """
    return _churchill_chu(Ra, Pr, 0.60, 0.559)


@formula(
    "Nu = (0.825 + 0.387 Ra^(1/6)/(1 + (0.492/Pr)^(9/16))^(8/27))²",
    cites=[CHURCHILL_CHU, _seen("equation 9.26, example 9.2")],
)
def vertical_plate_nusselt_number(Ra: Ratio, Pr: Ratio) -> Ratio:
    """Nusselt number of natural convection on a vertical wall, on its height.

    Nu = (0.825 + 0.387 Ra^(1/6)/(1 + (0.492/Pr)^(9/16))^(8/27))²

    ``Ra`` Rayleigh number on the height, 0 to 1e12; ``Pr`` Prandtl number, above 0.
    Raises OutOfRange outside.

    Incropera, example 9.2 (its companion seen): 147 at Ra = 1.813e9, Pr = 0.690.

    >>> round(vertical_plate_nusselt_number(Ra=1.813e9, Pr=0.690))
    147
    """
    return _churchill_chu(Ra, Pr, 0.825, 0.492)


def _churchill_chu(Ra: float, Pr: float, still: float, constant: float) -> float:
    require(0 <= Ra <= 1e12, f"Rayleigh number {Ra:.4g} lies outside 0 to 1e12")
    require(Pr > 0, f"Prandtl number {Pr:.4g} must be above 0")
    root: float = still + 0.387 * Ra ** (1 / 6) / (1 + (constant / Pr) ** (9 / 16)) ** (8 / 27)
    return root**2


def _require_reynolds(Re: float) -> None:
    require(3000 <= Re <= 5e6, f"Reynolds number {Re:.4g} lies outside 3000 to 5e6")
