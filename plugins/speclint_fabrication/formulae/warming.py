"""A wall heated at one face: temperature difference and thermal stress at that face."""

from __future__ import annotations

import math

from speclint import FIRST_PRINCIPLES, formula, require
from speclint.equations import (
    JoulesPerKilogramKelvin,
    KelvinDifference,
    KilogramsPerCubicMetre,
    Metres,
    Pascals,
    PerKelvin,
    Ratio,
    Seconds,
    SquareMetresPerSecond,
    WattsPerMetreKelvin,
    WattsPerSquareMetreKelvin,
)
from speclint_fabrication.sources import CARSLAW, MANSON, TIMOSHENKO_GOODIER


@formula("a = λ/(ρ c_p)", cites=[FIRST_PRINCIPLES])
def diffusivity(
    λ: WattsPerMetreKelvin, rho: KilogramsPerCubicMetre, c_p: JoulesPerKilogramKelvin
) -> SquareMetresPerSecond:
    """Thermal diffusivity of the metal.

    a = λ/(ρ c_p)

    ``λ`` conductivity [W/(m·K)]; ``rho`` density [kg/m³]; ``c_p`` specific heat [J/(kg·K)]. Returns [m²/s].

    Hand working: 47.3/(7850 × 530) = 11.37 mm²/s.

    >>> round(diffusivity(λ=47.3, rho=7850.0, c_p=530.0) * 1e6, 2)
    11.37
    """
    return λ / (rho * c_p)


@formula("ΔT = θ/τ t²/(3 a)", cites=[CARSLAW])
def face_above_mean(
    theta: KelvinDifference, tau: Seconds, t: Metres, a: SquareMetresPerSecond
) -> KelvinDifference:
    """Temperature of the heated face above the mean of its wall, at a steady heating rate.

    ΔT = θ/τ t²/(3 a)

    ``theta`` rise of temperature in the time of heating [K]; ``tau`` time of heating [s]; ``t`` wall, heated on one
    face and insulated on the other [m]; ``a`` diffusivity [m²/s]. Returns [K]. The difference from face to face is 1.5
    times that, (θ/τ) t²/(2 a).

    Hand working: 2 K a minute, 40 mm, 11.4 mm²/s: 2/60 × 1600/34.2 = 1.559 K.

    >>> round(face_above_mean(theta=2.0, tau=60.0, t=0.040, a=11.4e-6), 3)
    1.559
    """
    return theta / tau * t**2 / (3 * a)


@formula("σ = E α ΔT/(1 − ν)", cites=[TIMOSHENKO_GOODIER])
def face_stress(E: Pascals, alpha: PerKelvin, ΔT: KelvinDifference, nu: Ratio) -> Pascals:
    """Thermal stress of the heated face.

    σ = E α ΔT/(1 − ν)

    ``E`` modulus [Pa]; ``alpha`` expansion [1/K]; ``ΔT`` face above mean [K]; ``nu`` Poisson's ratio,
    below 1. Returns [Pa]. The wall is taken as held flat by the walls beside it. Raises OutOfRange outside.

    Hand working: 200 GPa × 12e-6 × 10/0.7 = 34.29 MPa.

    >>> round(face_stress(E=200e9, alpha=12e-6, ΔT=10.0, nu=0.3) / 1e6, 2)
    34.29
    """
    require(nu < 1, f"Poisson's ratio {nu:.6g} is not below 1")
    return E * alpha * ΔT / (1 - nu)


@formula("Bi = h t/λ", cites=[FIRST_PRINCIPLES])
def biot_number(h: WattsPerSquareMetreKelvin, t: Metres, λ: WattsPerMetreKelvin) -> Ratio:
    """Biot number of a wall under condensing steam.

    Bi = h t/λ

    ``h`` coefficient at its face [W/(m²·K)]; ``t`` wall [m]; ``λ`` conductivity [W/(m·K)]. Returns a ratio.

    >>> round(biot_number(h=5000.0, t=0.040, λ=47.3), 3)
    4.228
    """
    return h * t / λ


@formula("ΔT = (T_s − T_0)/(1.5 + 3.25/Bi − 0.5 exp(−16/Bi))", cites=[MANSON])
def shock_difference(T_s: KelvinDifference, T_0: KelvinDifference, Bi: Ratio) -> KelvinDifference:
    """Greatest temperature of a face above the mean of its wall when steam reaches it suddenly.

    ΔT = (T_s − T_0)/(1.5 + 3.25/Bi − 0.5 exp(−16/Bi))

    ``T_s`` temperature of the condensing steam, ``T_0`` of the wall before [K]; ``Bi`` Biot number [-]. Returns [K].
    Manson's approximation for a plate heated suddenly on both faces with half its thickness as length, which is
    the same as one heated on one face and insulated on the other. Raises OutOfRange unless Bi > 0.

    Hand working: 120 K, Bi 4: 1.5 + 0.8125 − 0.5 × 0.0183 = 2.3033: 52.1 K. An infinite Biot number gives the whole
    120 K.

    >>> round(shock_difference(T_s=413.15, T_0=293.15, Bi=4.0), 1)
    52.1
    >>> round(shock_difference(T_s=413.15, T_0=293.15, Bi=1e9), 3)
    120.0
    """
    require(Bi > 0, f"Biot number {Bi:.6g} is not above 0")
    return (T_s - T_0) / (1.5 + 3.25 / Bi - 0.5 * math.exp(-16 / Bi))
