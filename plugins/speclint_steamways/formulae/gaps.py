"""Heat across the gap between two walls: radiation, the gas that stands in it, and metal that bridges it."""

from __future__ import annotations

from speclint import FIRST_PRINCIPLES, formula, require
from speclint.equations import (
    STANDARD_GRAVITY,
    KelvinDifference,
    Kelvins,
    Metres,
    MetresPerSecondSquared,
    Ratio,
    SquareMetreKelvinsPerWatt,
    SquareMetres,
    WattsPerMetreKelvin,
    WattsPerSquareMetreKelvin,
    WattsPerSquareMetreKelvinToTheFourth,
)
from speclint.handbook.heat import INCROPERA, STEFAN_BOLTZMANN, air_at, rayleigh_number

#: How the formulae that read the table of air are stated.
_UNITS = "properties of air in SI, from a table"


@formula("h_r = 4 σ T_m³/(2/ε − 1), T_m = (T_1 + T_2)/2", cites=[INCROPERA.at("chapter 13, parallel plates")])
def radiation_across_gap(
    ε: Ratio, T_1: Kelvins, T_2: Kelvins, σ: WattsPerSquareMetreKelvinToTheFourth = STEFAN_BOLTZMANN
) -> WattsPerSquareMetreKelvin:
    """Radiation between two wide faces near each other, as a film coefficient.

    h_r = 4 σ T_m³/(2/ε − 1), T_m = (T_1 + T_2)/2

    ``ε`` emissivity of both faces, above 0 to 1; ``T_1``, ``T_2`` on either side [K]; ``σ`` Stefan and Boltzmann's
    constant. Returns [W/(m²·K)]. Raises OutOfRange for ε outside.

    Hand working between 390 and 170 °C: 4 × 5.6704e-8 × 553.15³/1.5 = 25.6.

    >>> round(radiation_across_gap(ε=0.8, T_1=663.15, T_2=443.15), 1)
    25.6
    """
    require(0 < ε <= 1, f"emissivity {ε:.4g} does not lie above 0 and up to 1")
    mean = (T_1 + T_2) / 2
    return 4 * σ * mean**3 / (2 / ε - 1)


@formula("λ = λ_air(T)", cites=[INCROPERA.at("table A.4")], empirical=_UNITS)
def air_conductivity(T: Kelvins) -> WattsPerMetreKelvin:
    """Conductivity of dry air in a gap that is open to the atmosphere.

    λ = λ_air(T)

    ``T`` its temperature [K], 250 to 600 K. Returns [W/(m·K)]. Raises OutOfRange outside.

    >>> round(air_conductivity(550.0), 4)
    0.0439
    """
    return air_at(T).conductivity


@formula(
    "Ra = g ΔT s³ Pr_air(T)/(T ν_air(T)²)",
    cites=[INCROPERA.at("section 9.8, on the width of an enclosure")],
    empirical=_UNITS,
)
def gap_rayleigh_number(
    ΔT: KelvinDifference, s: Metres, T: Kelvins, g: MetresPerSecondSquared = STANDARD_GRAVITY
) -> Ratio:
    """Rayleigh number of air in a gap, on its width.

    Ra = g ΔT s³ Pr_air(T)/(T ν_air(T)²)

    ``ΔT`` between its walls [K], not below 0; ``s`` width [m]; ``T`` of the air [K], 250 to 600 K; ``g`` acceleration
    of free fall [m/s²]. Returns a ratio. Raises OutOfRange outside.

    Hand working at 550 K, ν = 45.57e-6 m²/s and Pr = 0.683: 9.80665 × 200 × 0.012³ × 0.683/(550 × 45.57e-6²) = 2027.

    >>> round(gap_rayleigh_number(ΔT=200.0, s=0.012, T=550.0), -1)
    2030.0
    """
    air = air_at(T)
    return rayleigh_number(air.expansion, ΔT, s, air.kinematic_viscosity, air.prandtl_number, g)


@formula(
    "Nu = 1 if Ra ≤ 1000, else max(1, 0.42 Ra^0.25 (H/s)^−0.3)",
    cites=[INCROPERA.at("equation 9.52, tall enclosure between walls of unlike temperature")],
)
def slot_nusselt_number(Ra: Ratio, H: Metres, s: Metres) -> Ratio:
    """By how much natural convection in the gap between two upright walls carries more than the still gas.

    Nu = 1 if Ra ≤ 1000, else max(1, 0.42 Ra^0.25 (H/s)^−0.3)

    ``Ra`` Rayleigh number on the width of the gap, up to 1e7; ``H`` height and ``s`` width of the gap [m]. Returns a
    ratio of 1 or more. The equation is stated for 1e4 and more, and for gaps 10 to 40 times as high as wide; below, it
    gives more than is measured. Raises OutOfRange outside.

    Hand working, Ra = 1e4, ten times as high as wide: 0.42 × 10 × 10^−0.3 = 2.105.

    >>> round(slot_nusselt_number(Ra=1e4, H=0.5, s=0.05), 3)
    2.105
    """
    require(0 <= Ra <= 1e7, f"Rayleigh number {Ra:.4g} of the gap lies outside 0 to 1e7")
    require(H > 0 and s > 0, "height and width of a gap must be above 0")
    if Ra <= 1000:
        return 1.0
    more: float = 0.42 * Ra**0.25 * (H / s) ** -0.3
    return max(1.0, more)


@formula("R = 1/(h_r + Nu λ_g/s + b λ_w/s)", cites=[FIRST_PRINCIPLES])
def gap_resistance(
    h_r: WattsPerSquareMetreKelvin,
    Nu: Ratio,
    λ_g: WattsPerMetreKelvin,
    s: Metres,
    b: Ratio,
    λ_w: WattsPerMetreKelvin,
) -> SquareMetreKelvinsPerWatt:
    """Resistance of a gap: radiation, gas and bridges side by side.

    R = 1/(h_r + Nu λ_g/s + b λ_w/s)

    ``h_r`` radiation [W/(m²·K)]; ``Nu`` Nusselt number of the gas; ``λ_g`` conductivity of the gas, ``λ_w``
    conductivity of the metal [W/(m·K)]; ``s`` width [m], above 0; ``b`` share of the area that ribs and stays bridge.
    Returns [m²·K/W]. Raises OutOfRange unless something carries heat across.

    Hand working: 25.6 + 0.0432/0.012 = 29.2; with 1 % of steel of 45 W/(m·K) 37.5 more.

    >>> round(1 / gap_resistance(h_r=25.6, Nu=1.0, λ_g=0.0432, s=0.012, b=0.01, λ_w=45.0), 6)
    66.7
    """
    require(s > 0, "the width of a gap must be above 0")
    across = h_r + Nu * λ_g / s + b * λ_w / s
    require(across > 0 * across, "nothing carries heat across the gap")
    return 1 / across


@formula("s_l = s − y_1 − y_2", cites=[FIRST_PRINCIPLES])
def gap_left(s: Metres, y_1: Metres, y_2: Metres) -> Metres:
    """Gap that is left between two walls which pressure bends towards each other.

    s_l = s − y_1 − y_2

    ``s`` gap as drawn; ``y_1``, ``y_2`` by which the walls bend into it [m]. Returns [m], below 0 where they touch.

    >>> round(gap_left(s=0.012, y_1=0.0003, y_2=0.0001) * 1e3, 6)
    11.6
    """
    return s - y_1 - y_2


@formula("A_b = b A", cites=[FIRST_PRINCIPLES])
def section_of_bridges(b: Ratio, A: SquareMetres) -> SquareMetres:
    """Section of all ribs and stays across the gap between two walls.

    A_b = b A

    ``b`` their share of the area of the wall; ``A`` that area [m²]. Returns [m²].

    >>> section_of_bridges(b=0.01, A=0.25)
    0.0025
    """
    return b * A
