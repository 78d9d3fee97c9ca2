"""Flow of a gas with a constant isentropic exponent through a nozzle or an orifice, choked or not.

Pressures are absolute. Inlet figures are at rest: the speed of approach is neglected. For steam itself
``steam_nozzles`` follows IAPWS-IF97; Napier's rule is given here as the check of the trade.
"""

from __future__ import annotations

import math

from speclint.equations import (
    FIRST_PRINCIPLES,
    KelvinDifference,
    Kelvins,
    KilogramsPerCubicMetre,
    KilogramsPerSecond,
    KilogramsPerSquareMetreSecond,
    Metres,
    MetresPerSecond,
    Pascals,
    Ratio,
    Source,
    SquareMetres,
    formula,
    require,
)
from speclint.handbook.tables import JOEL

_JOEL = JOEL.at("ch. 12, steam nozzles")
HUGHES = Source("V. A. B. Hughes, The Steam Injector", "1912", "p. 24")
NAPIER_SUPERHEAT = Source(
    "L. S. Marks, Mechanical Engineers' Handbook",
    "4th ed., 1941",
    "flow of steam through nozzles, Napier's rule with superheat",
    memory=True,
)
ISO_5167 = Source(
    "ISO 5167-2, Measurement of fluid flow by means of pressure differential devices: orifice plates", "2003"
)

_EXPANSIBILITY = ISO_5167.at("5.3.2.2, as reproduced in the open library fluids")
_PSI = 6894.757293168361  # Pa: 0.45359237 kg × 9.80665 m/s² over 0.0254² m², all exact by definition
_SQUARE_INCH = 0.0254**2
_POUND = 0.45359237
_FAHRENHEIT_PER_KELVIN = 1.8


@formula("r_c = (2/(κ + 1))^(κ/(κ − 1))", cites=[_JOEL])
def critical_pressure_ratio(κ: Ratio) -> Ratio:
    """Throat pressure over inlet pressure when the flow is choked.

    r_c = (2/(κ + 1))^(κ/(κ − 1))

    ``κ`` isentropic exponent, above 1. Raises OutOfRange otherwise.

    W. R. Crawford, Examples in Thermodynamics Problems, example 6.10: 0.5457 for superheated steam, n = 1.3.

    >>> round(critical_pressure_ratio(1.3), 4)
    0.5457
    """
    _require_exponent(κ)
    ratio: float = (2 / (κ + 1)) ** (κ / (κ - 1))
    return ratio


@formula("v = √(2 κ/(κ − 1) (p/ρ) (1 − r^((κ − 1)/κ)))", cites=[_JOEL])
def throat_speed(p: Pascals, ρ: KilogramsPerCubicMetre, r: Ratio, κ: Ratio) -> MetresPerSecond:
    """Speed reached in a frictionless expansion from rest to r times the inlet pressure.

    v = √(2 κ/(κ − 1) (p/ρ) (1 − r^((κ − 1)/κ)))

    ``p`` inlet pressure [Pa absolute]; ``ρ`` inlet density [kg/m³]; ``r`` pressure after over before, 0 to 1;
    ``κ`` isentropic exponent, above 1. Returns [m/s]. In a nozzle that only converges r is not below
    the critical ratio. Raises OutOfRange outside.

    Joel, example 12.3 (2 MPa, 0.132 m³/kg, n = 1.3): the throat reaches 546 m/s.

    >>> round(throat_speed(2e6, 1 / 0.132, critical_pressure_ratio(1.3), 1.3))
    546
    """
    _require_exponent(κ)
    _require_ratio(r)
    _require_inlet(p, ρ)
    speed: float = (2 * κ / (κ - 1) * (p / ρ) * (1 - r ** ((κ - 1) / κ))) ** 0.5
    return speed


@formula(
    "G = √(2 κ/(κ − 1) p ρ (r^(2/κ) − r^((κ + 1)/κ))), r = max(p_2/p, (2/(κ + 1))^(κ/(κ − 1)))", cites=[_JOEL]
)
def nozzle_mass_flux(
    p: Pascals, p_2: Pascals, ρ: KilogramsPerCubicMetre, κ: Ratio
) -> KilogramsPerSquareMetreSecond:
    """Mass flow per area of throat, choked where the back pressure is low enough.

    G = √(2 κ/(κ − 1) p ρ (r^(2/κ) − r^((κ + 1)/κ))) with r = max(p_2/p, r_c)

    ``p`` inlet and ``p_2`` back pressure [Pa absolute], 0 ≤ p_2 ≤ p; ``ρ`` inlet density [kg/m³]; ``κ``
    isentropic exponent, above 1. Returns [kg/(m²·s)]. Raises OutOfRange outside.

    Joel, example 12.3: 7.5 kg/s need a throat of 2888 mm².

    >>> round(7.5 / nozzle_mass_flux(2e6, 0.5e6, 1 / 0.132, 1.3) * 1e6)
    2888
    """
    _require_inlet(p, ρ)
    _require_ratio(p_2 / p)
    r = max(p_2 / p, critical_pressure_ratio(κ))
    flux: float = (2 * κ / (κ - 1) * p * ρ * (r ** (2 / κ) - r ** ((κ + 1) / κ))) ** 0.5
    return flux


@formula("G_c = √(κ p ρ) (2/(κ + 1))^((κ + 1)/(2(κ − 1)))", cites=[_JOEL, FIRST_PRINCIPLES])
def choked_mass_flux(p: Pascals, ρ: KilogramsPerCubicMetre, κ: Ratio) -> KilogramsPerSquareMetreSecond:
    """Greatest mass flow per area that any back pressure can draw through a throat.

    G_c = √(κ p ρ) (2/(κ + 1))^((κ + 1)/(2(κ − 1)))

    ``p`` inlet pressure [Pa absolute]; ``ρ`` inlet density [kg/m³]; ``κ`` isentropic exponent, above 1.
    Returns [kg/(m²·s)]. Raises OutOfRange outside.

    >>> round(7.5 / choked_mass_flux(2e6, 1 / 0.132, 1.3) * 1e6)  # Joel, example 12.3
    2888
    """
    _require_exponent(κ)
    _require_inlet(p, ρ)
    flux: float = (κ * p * ρ) ** 0.5 * (2 / (κ + 1)) ** ((κ + 1) / (2 * (κ - 1)))
    return flux


@formula("m = C A G", cites=[FIRST_PRINCIPLES])
def nozzle_mass_flow(C: Ratio, A: SquareMetres, G: KilogramsPerSquareMetreSecond) -> KilogramsPerSecond:
    """Mass flow of a throat from its mass flux.

    m = C A G

    ``C`` discharge coefficient, above 0 to 1; ``A`` throat area [m²]; ``G`` mass flux [kg/(m²·s)].
    Returns [kg/s]. Raises OutOfRange for C outside.

    >>> nozzle_mass_flow(C=0.5, A=0.01, G=2000.0)
    10.0
    """
    require(0 < C <= 1, f"discharge coefficient {C:.4g} lies outside 0 to 1")
    return C * A * G


@formula("A = z π d²/4", cites=[FIRST_PRINCIPLES])
def nozzle_area(z: Ratio, d: Metres) -> SquareMetres:
    """Area of several round nozzles together.

    A = z π d²/4

    ``z`` number of the nozzles; ``d`` diameter of each [m]. Returns [m²].

    >>> round(nozzle_area(z=4.0, d=0.1) * 1e6, 2)
    31415.93
    """
    return z * math.pi * d**2 / 4


@formula("T_2 = T r^((κ − 1)/κ)", cites=[FIRST_PRINCIPLES])
def compressed_temperature(T: Kelvins, r: Ratio, κ: Ratio) -> Kelvins:
    """Temperature of a gas after compression or expansion without heat or loss.

    T_2 = T r^((κ − 1)/κ)

    ``T`` temperature before [K]; ``r`` pressure after over before, absolute, above 0; ``κ`` exponent of the
    compression, above 1. Returns [K]. Raises OutOfRange outside.

    >>> round(compressed_temperature(T=300.0, r=8.0, κ=1.4), 1)  # air-standard cycle: 300 · 8^(2/7)
    543.4
    """
    _require_exponent(κ)
    require(r > 0, f"pressure ratio {r:.4g} must be above 0")
    temperature: float = T * r ** ((κ - 1) / κ)
    return temperature


@formula("ε = 1 − (0.351 + 0.256 β⁴ + 0.93 β⁸)(1 − r^(1/κ))", cites=[_EXPANSIBILITY])
def orifice_expansibility(β: Ratio, r: Ratio, κ: Ratio) -> Ratio:
    """Factor by which expansion lowers the flow of a gas through a sharp orifice.

    ε = 1 − (0.351 + 0.256 β⁴ + 0.93 β⁸)(1 − r^(1/κ))

    ``β`` orifice over pipe, 0.1 to 0.75; ``r`` pressure after over before, absolute, 0.75 to 1; ``κ``
    isentropic exponent, above 1. Raises OutOfRange outside.

    >>> orifice_expansibility(β=0.5, r=1.0, κ=1.3)
    1.0
    """
    _require_exponent(κ)
    require(0.1 <= β <= 0.75, f"orifice over pipe {β:.4g} lies outside 0.1 to 0.75")
    require(0.75 <= r <= 1, f"pressure ratio {r:.4g} lies outside 0.75 to 1")
    expanded: float = r ** (1 / κ)
    return 1 - (0.351 + 0.256 * β**4 + 0.93 * β**8) * (1 - expanded)


@formula("m = C ε (π d²/4) √(2 ρ Δp/(1 − (d/D)⁴))", cites=[ISO_5167.at("equation 1", memory=True)])
def orifice_mass_flow(
    C: Ratio, ε: Ratio, d: Metres, D: Metres, ρ: KilogramsPerCubicMetre, Δp: Pascals
) -> KilogramsPerSecond:
    """Mass flow through a sharp orifice in a pipe.

    m = C ε (π d²/4) √(2 ρ Δp/(1 − (d/D)⁴))

    ``C`` discharge coefficient, about 0.6; ``ε`` expansibility, 1 for water; ``d``, ``D`` orifice and pipe
    [m], 0 < d < D; ``ρ`` density before [kg/m³], not below 0; ``Δp`` pressure difference [Pa], not below 0.
    Returns [kg/s]. Raises OutOfRange outside.

    >>> round(orifice_mass_flow(C=0.6, ε=1.0, d=0.05, D=0.10, ρ=1000.0, Δp=10e3), 2)
    5.44
    """
    require(0 < d / D < 1, "the orifice must be smaller than its pipe")
    require(Δp >= 0, "the pressure must fall along the flow")
    require(ρ >= 0 * ρ, f"density {ρ:.6g} kg/m³ is below 0")
    flux: float = (2 * ρ * Δp / (1 - (d / D) ** 4)) ** 0.5
    return C * ε * (math.pi * d**2 / 4) * flux


@formula("m = p A/(70 lbf) lb/s", cites=[HUGHES], empirical="lb/s, psi absolute and square inches")
def napier_flow(p: Pascals, A: SquareMetres) -> KilogramsPerSecond:
    """Choked flow of dry saturated steam after Napier.

    m = p A/70 in lb/s, psi absolute and in²

    ``p`` inlet pressure [Pa absolute], 1.5 to 100 bar, where the rule keeps within 5 % of IAPWS-IF97; ``A``
    area [m²]. Returns [kg/s]. For a back pressure below 0.58 of the inlet (Hughes).
    Raises OutOfRange outside.

    Hughes, p. 24: 2.86 lb/s through 2 in² at 100 psi absolute.

    >>> round(napier_flow(100 * 6894.757, 2 * 0.0254**2) / 0.45359237, 2)
    2.86
    """
    require(
        1.5e5 <= p <= 100e5, f"pressure {p / 1e5:.4g} bar absolute lies outside 1.5 to 100, Napier's range"
    )
    return p / _PSI * (A / _SQUARE_INCH) / 70 * _POUND


@formula(
    "m = p A/(70 lbf (1 + 0.00065 · 1.8 ΔT/K)) lb/s",
    cites=[HUGHES, NAPIER_SUPERHEAT],
    empirical="lb/s, psi absolute, in² and °F",
)
def napier_superheated_flow(p: Pascals, A: SquareMetres, ΔT: KelvinDifference) -> KilogramsPerSecond:
    """Choked flow of superheated steam after Napier.

    m = p A/(70 (1 + 0.00065 ΔT)) in lb/s, psi absolute, in² and °F of superheat

    ``p`` inlet pressure [Pa absolute], 1.5 to 100 bar; ``A`` area [m²]; ``ΔT`` superheat [K], 0 to 300 K.
    Returns [kg/s]. Within 5 % of IAPWS-IF97 from 10 to 40 bar, up to 9 % below it at 2 bar and 300 K.
    Raises OutOfRange outside.

    >>> dry = napier_flow(10e5, 0.001)
    >>> round(dry / napier_superheated_flow(10e5, 0.001, 100.0), 3)  # 1 + 0.00065 · 180
    1.117
    """
    require(0 <= ΔT <= 300, f"superheat {ΔT:.4g} K lies outside 0 to 300 K, Napier's range")
    return napier_flow(p, A) / (1 + 0.00065 * ΔT * _FAHRENHEIT_PER_KELVIN)


def _require_exponent(κ: float) -> None:
    require(κ > 1, f"isentropic exponent {κ:.4g} must be above 1")


def _require_ratio(r: float) -> None:
    require(0 <= r <= 1, f"pressure ratio {r:.4g} lies outside 0 to 1")


def _require_inlet(p: float, ρ: float) -> None:
    require(p > 0, "the inlet pressure must be above 0 absolute")
    require(ρ > 0, "the inlet density must be above 0")
