"""Formulae of heat through partitions and lagging, in addition to those of the handbook."""

from __future__ import annotations

from speclint import FIRST_PRINCIPLES, formula, require
from speclint.equations import (
    KelvinDifference,
    Kelvins,
    Metres,
    Pascals,
    PerKelvin,
    Ratio,
    SquareMetreKelvinsPerWatt,
    SquareMetres,
    Watts,
    WattsPerMetre,
    WattsPerMetreKelvin,
    WattsPerSquareMetre,
    WattsPerSquareMetreKelvin,
)
from speclint_steamways.sources import TIMOSHENKO_GOODIER


@formula("R = 2 t/λ + s/λ_s", cites=[FIRST_PRINCIPLES])
def double_wall_resistance(
    t: Metres, λ: WattsPerMetreKelvin, s: Metres, λ_s: WattsPerMetreKelvin
) -> SquareMetreKelvinsPerWatt:
    """Resistance of two equal walls with still steam between them, conduction only.

    R = 2 t/λ + s/λ_s

    ``t`` one wall, ``s`` gap [m]; ``λ``, ``λ_s`` conductivity of metal and steam [W/(m·K)], above 0.
    Returns [m²·K/W]. Convection in the gap and radiation lower it: the estimate is for a narrow gap.
    Raises OutOfRange outside.

    Hand working: 2 × 0.012/48 + 0.010/0.04 = 0.0005 + 0.25.

    >>> double_wall_resistance(t=0.012, λ=48.0, s=0.010, λ_s=0.04)
    0.2505
    """
    require(λ > 0 * λ and λ_s > 0 * λ_s, "a conductivity must be above 0")
    return 2 * t / λ + s / λ_s


@formula("Q = U A (T_1 − T_2)", cites=[FIRST_PRINCIPLES])
def heat_through(U: WattsPerSquareMetreKelvin, A: SquareMetres, T_1: Kelvins, T_2: Kelvins) -> Watts:
    """Heat through a wall between two streams.

    Q = U A (T_1 − T_2)

    ``U`` coefficient [W/(m²·K)]; ``A`` area [m²]; ``T_1``, ``T_2`` of the hot and the cold stream [K]. Returns [W].

    >>> heat_through(U=100.0, A=0.5, T_1=650.0, T_2=450.0)
    10000.0
    """
    return U * A * (T_1 - T_2)


@formula("Q_1 = Q (1 + u)", cites=[FIRST_PRINCIPLES])
def at_the_upper_end(Q: Watts, u: Ratio) -> Watts:
    """Heat flow at the upper end of the scatter of the correlation.

    Q_1 = Q (1 + u)

    ``Q`` estimate [W]; ``u`` scatter as a share. Returns [W].

    >>> at_the_upper_end(Q=10e3, u=0.25)
    12500.0
    """
    return Q * (1 + u)


@formula("q_1 = q (1 + u)", cites=[FIRST_PRINCIPLES])
def flux_at_the_upper_end(q: WattsPerSquareMetre, u: Ratio) -> WattsPerSquareMetre:
    """Heat flux at the upper end of the scatter of the correlation.

    q_1 = q (1 + u)

    ``q`` estimate [W/m²]; ``u`` scatter as a share. Returns [W/m²].

    >>> flux_at_the_upper_end(q=40e3, u=0.25)
    50000.0
    """
    return q * (1 + u)


@formula("q = (T_1 − T_2)/R", cites=[FIRST_PRINCIPLES])
def flux_without_films(T_1: Kelvins, T_2: Kelvins, R: SquareMetreKelvinsPerWatt) -> WattsPerSquareMetre:
    """Heat flux through a wall whose faces are as hot as the streams: more than any flow of steam can bring.

    q = (T_1 − T_2)/R

    ``T_1``, ``T_2`` of the hot and the cold stream [K]; ``R`` resistance of the wall alone [m²·K/W], above 0. Returns
    [W/m²]. Raises OutOfRange otherwise.

    >>> flux_without_films(T_1=600.0, T_2=450.0, R=0.0005)
    300000.0
    """
    require(R > 0 * R, "the resistance of the wall must be above 0")
    return (T_1 - T_2) / R


@formula("P = Q (1 − T_2/T_1)", cites=[FIRST_PRINCIPLES])
def work_lost(Q: Watts, T_1: Kelvins, T_2: Kelvins) -> Watts:
    """Greatest power that the leaked heat could have given between the two streams.

    P = Q (1 − T_2/T_1)

    ``Q`` heat [W]; ``T_1``, ``T_2`` of the hot and the cold stream [K], T_1 above T_2. Returns [W]: Carnot's share,
    which no engine reaches. Raises OutOfRange outside.

    Hand working: 10 kW between 600 and 450 K: a quarter.

    >>> work_lost(Q=10e3, T_1=600.0, T_2=450.0)
    2500.0
    """
    require(T_1 > T_2, "the heat must leak from the hotter stream")
    return Q * (1 - T_2 / T_1)


@formula("ΔT = q R", cites=[FIRST_PRINCIPLES])
def drop_through_wall(q: WattsPerSquareMetre, R: SquareMetreKelvinsPerWatt) -> KelvinDifference:
    """Temperature difference between the faces of a wall.

    ΔT = q R

    ``q`` heat flux [W/m²]; ``R`` resistance of the wall [m²·K/W]. Returns [K].

    >>> drop_through_wall(q=40e3, R=0.0005)
    20.0
    """
    return q * R


@formula("σ_T = E α ΔT/(2 (1 − ν))", cites=[TIMOSHENKO_GOODIER.at("article 149, plate held flat")])
def thermal_stress(E: Pascals, alpha: PerKelvin, ΔT: KelvinDifference, nu: Ratio) -> Pascals:
    """Stress in the faces of a plate that is held flat while heat passes through it.

    σ_T = E α ΔT/(2 (1 − ν))

    ``E`` modulus [Pa]; ``alpha`` coefficient of expansion [1/K]; ``ΔT`` between the faces [K]; ``nu`` Poisson's ratio,
    below 1. Returns [Pa]. Raises OutOfRange for nu outside.

    Hand working: 200 GPa × 12e-6 × 20 K/(2 × 0.75) = 32 MPa.

    >>> round(thermal_stress(E=200e9, alpha=12e-6, ΔT=20.0, nu=0.25) / 1e6, 6)
    32.0
    """
    require(nu < 1, f"Poisson's ratio {nu:.4g} is not below 1")
    return E * alpha * ΔT / (2 * (1 - nu))


@formula("σ = σ_p + σ_T", cites=[FIRST_PRINCIPLES])
def stresses_together(σ_p: Pascals, σ_T: Pascals) -> Pascals:
    """Stress of pressure and of heat in the same face.

    σ = σ_p + σ_T

    ``σ_p``, ``σ_T`` [Pa]. Returns [Pa].

    >>> stresses_together(σ_p=50e6, σ_T=30e6) / 1e6
    80.0
    """
    return σ_p + σ_T


@formula("Q = q_L L", cites=[FIRST_PRINCIPLES])
def loss_of_length(q_L: WattsPerMetre, L: Metres) -> Watts:
    """Heat lost by a length of round lagging.

    Q = q_L L

    ``q_L`` loss of one metre [W/m]; ``L`` length [m]. Returns [W].

    >>> loss_of_length(q_L=200.0, L=2.5)
    500.0
    """
    return q_L * L


@formula("Q = q A", cites=[FIRST_PRINCIPLES])
def loss_of_area(q: WattsPerSquareMetre, A: SquareMetres) -> Watts:
    """Heat lost by an area of flat lagging.

    Q = q A

    ``q`` loss of one square metre [W/m²]; ``A`` area [m²]. Returns [W].

    >>> loss_of_area(q=300.0, A=0.5)
    150.0
    """
    return q * A
