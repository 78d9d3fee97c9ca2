"""Heat that metal leads from the hot block into frames and chambers."""

from __future__ import annotations

from speclint import FIRST_PRINCIPLES, formula, require
from speclint.equations import (
    KelvinDifference,
    Kelvins,
    KelvinsPerWatt,
    Metres,
    SquareMetres,
    WattsPerKelvin,
    WattsPerMetreKelvin,
    WattsPerSquareMetreKelvin,
)


@formula("R = L/(λ A)", cites=[FIRST_PRINCIPLES])
def path_resistance(L: Metres, λ: WattsPerMetreKelvin, A: SquareMetres) -> KelvinsPerWatt:
    """Resistance of metal along the flow of heat.

    R = L/(λ A)

    ``L`` length [m]; ``λ`` conductivity [W/(m·K)]; ``A`` section [m²], both above 0. Returns [K/W]. Raises OutOfRange
    outside.

    Hand working: 0.15/(45 × 0.012) = 0.2778.

    >>> round(path_resistance(L=0.15, λ=45.0, A=0.012), 4)
    0.2778
    """
    require(λ > 0 * λ and A > 0, "conductivity and section of a path must be above 0")
    return L / (λ * A)


@formula("R = 1/(h A)", cites=[FIRST_PRINCIPLES])
def surface_resistance(h: WattsPerSquareMetreKelvin, A: SquareMetres) -> KelvinsPerWatt:
    """Resistance of a surface, or of two faces in contact.

    R = 1/(h A)

    ``h`` coefficient [W/(m²·K)]; ``A`` area [m²], both above 0. Returns [K/W]. Raises OutOfRange outside.

    Hand working: 1/(15 × 0.25) = 0.2667.

    >>> round(surface_resistance(h=15.0, A=0.25), 4)
    0.2667
    """
    require(h > 0 * h and A > 0, "coefficient and area of a surface must be above 0")
    return 1 / (h * A)


@formula("G = G_0 + λ A/L", cites=[FIRST_PRINCIPLES])
def paths_together(G_0: WattsPerKelvin, λ: WattsPerMetreKelvin, A: SquareMetres, L: Metres) -> WattsPerKelvin:
    """Heat for each kelvin along several paths side by side.

    G = G_0 + λ A/L

    ``G_0`` of the paths so far [W/K]; ``λ`` conductivity [W/(m·K)], ``A`` section [m²], ``L`` length [m] of one more,
    above 0. Returns [W/K]. Raises OutOfRange outside.

    Hand working: 45 × 0.003/0.12 = 1.125.

    >>> round(paths_together(G_0=0.0, λ=45.0, A=0.003, L=0.12), 6)
    1.125
    """
    require(L > 0, "the length of a path must be above 0")
    return G_0 + λ * A / L


@formula("R = 1/G", cites=[FIRST_PRINCIPLES])
def resistance_together(G: WattsPerKelvin) -> KelvinsPerWatt:
    """Resistance of paths side by side.

    R = 1/G

    ``G`` heat for each kelvin along all of them [W/K], above 0. Returns [K/W]. Raises OutOfRange otherwise.

    >>> round(resistance_together(1.125), 4)
    0.8889
    """
    require(G > 0 * G, "no path leads heat")
    return 1 / G


@formula("T = T_a + (T_b − T_a) R_2/(R_1 + R_2)", cites=[FIRST_PRINCIPLES])
def between(T_a: Kelvins, T_b: Kelvins, R_1: KelvinsPerWatt, R_2: KelvinsPerWatt) -> Kelvins:
    """Temperature of a place on the way of heat from the block to the air.

    T = T_a + (T_b − T_a) R_2/(R_1 + R_2)

    ``T_a`` air, ``T_b`` block [K]; ``R_1`` resistance from the block to the place, ``R_2`` from there to the air [K/W],
    above 0 together. Returns [K]. Raises OutOfRange otherwise.

    Hand working: block 260, air 20 °C, 0.278 against 0.120 K/W: 20 + 240 × 0.3015 = 92.4 °C.

    >>> round(between(T_a=293.15, T_b=533.15, R_1=0.278, R_2=0.120) - 273.15, 1)
    92.4
    """
    together = R_1 + R_2
    require(together > 0 * together, "nothing stands in the way of the heat")
    return T_a + (T_b - T_a) * R_2 / together


@formula("R = R_1 + R_2", cites=[FIRST_PRINCIPLES])
def in_series(R_1: KelvinsPerWatt, R_2: KelvinsPerWatt) -> KelvinsPerWatt:
    """Resistance of two parts of the way of heat, one after the other.

    R = R_1 + R_2

    ``R_1`` resistance of the first part [K/W]; ``R_2`` resistance of the second part [K/W]. Returns [K/W].

    >>> in_series(R_1=0.25, R_2=0.125)
    0.375
    """
    return R_1 + R_2


@formula("T_1 = T − ΔT", cites=[FIRST_PRINCIPLES])
def cooler_by(T: Kelvins, ΔT: KelvinDifference) -> Kelvins:
    """A temperature less a margin.

    T_1 = T − ΔT

    ``T`` temperature [K]; ``ΔT`` margin [K]. Returns [K].

    >>> cooler_by(T=400.0, ΔT=25.0)
    375.0
    """
    return T - ΔT
