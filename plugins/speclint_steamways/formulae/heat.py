"""Formulae of heat through partitions and lagging, in addition to those of the handbook."""

from __future__ import annotations

from speclint import FIRST_PRINCIPLES, formula, require
from speclint.equations import (
    KelvinDifference,
    Kelvins,
    KilogramsPerSecond,
    Metres,
    Pascals,
    PerKelvin,
    Ratio,
    SquareMetreKelvinsPerWatt,
    SquareMetres,
    Watts,
    WattsPerKelvin,
    WattsPerMetre,
    WattsPerMetreKelvin,
    WattsPerSquareMetre,
    WattsPerSquareMetreKelvin,
)
from speclint_steamways.sources import TIMOSHENKO_GOODIER


@formula("R = 2 t/λ + R_g", cites=[FIRST_PRINCIPLES])
def double_wall_resistance(
    t: Metres, λ: WattsPerMetreKelvin, R_g: SquareMetreKelvinsPerWatt
) -> SquareMetreKelvinsPerWatt:
    """Resistance of two equal walls with a gap between them.

    R = 2 t/λ + R_g

    ``t`` one wall [m]; ``λ`` conductivity of the metal [W/(m·K)], above 0; ``R_g`` resistance of the gap [m²·K/W].
    Returns [m²·K/W]. Raises OutOfRange outside.

    Hand working: 2 × 0.012/48 + 0.034 = 0.0345.

    >>> round(double_wall_resistance(t=0.012, λ=48.0, R_g=0.034), 6)
    0.0345
    """
    require(λ > 0 * λ, "a conductivity must be above 0")
    return 2 * t / λ + R_g


@formula("T = (T_1 + T_2)/2", cites=[FIRST_PRINCIPLES])
def midway(T_1: Kelvins, T_2: Kelvins) -> Kelvins:
    """Temperature midway between two.

    T = (T_1 + T_2)/2

    ``T_1`` first temperature [K]; ``T_2`` second temperature [K]. Returns [K].

    >>> midway(T_1=663.15, T_2=443.15)
    553.15
    """
    return (T_1 + T_2) / 2


@formula("ΔT = T_1 − T_2", cites=[FIRST_PRINCIPLES])
def apart(T_1: Kelvins, T_2: Kelvins) -> KelvinDifference:
    """Difference of two temperatures.

    ΔT = T_1 − T_2

    ``T_1`` first temperature [K]; ``T_2`` temperature that is taken from it [K]. Returns [K].

    >>> apart(T_1=663.15, T_2=443.15)
    220.0
    """
    return T_1 - T_2


@formula("A = P L + A_e", cites=[FIRST_PRINCIPLES])
def surface_of_passage(P: Metres, L: Metres, A_e: SquareMetres) -> SquareMetres:
    """Surface of a passage with its ends.

    A = P L + A_e

    ``P`` perimeter, ``L`` length [m]; ``A_e`` ends that it closes [m²]. Returns [m²].

    >>> surface_of_passage(P=0.8, L=0.6, A_e=0.02)
    0.5
    """
    return P * L + A_e


@formula("A_1 = x A", cites=[FIRST_PRINCIPLES])
def area_of_share(x: Ratio, A: SquareMetres) -> SquareMetres:
    """Area of a share of a surface.

    A_1 = x A

    ``x`` share; ``A`` the whole [m²]. Returns [m²].

    >>> area_of_share(x=0.4, A=0.5)
    0.2
    """
    return x * A


@formula("UA = UA_0 + U A", cites=[FIRST_PRINCIPLES])
def conducted_together(UA_0: WattsPerKelvin, U: WattsPerSquareMetreKelvin, A: SquareMetres) -> WattsPerKelvin:
    """Heat for each kelvin through several walls side by side.

    UA = UA_0 + U A

    ``UA_0`` of the walls so far [W/K]; ``U`` coefficient of one more [W/(m²·K)]; ``A`` its area [m²]. Returns [W/K].

    >>> conducted_together(UA_0=10.0, U=100.0, A=0.25)
    35.0
    """
    return UA_0 + U * A


@formula("m_1 = x m", cites=[FIRST_PRINCIPLES])
def flow_of_branch(m: KilogramsPerSecond, x: Ratio) -> KilogramsPerSecond:
    """Flow of a branch.

    m_1 = x m

    ``m`` flow of what it leaves [kg/s]; ``x`` its share. Returns [kg/s].

    >>> flow_of_branch(m=1.7, x=0.1)
    0.17
    """
    return x * m


@formula("P_i = W_1 m/m_1", cites=[FIRST_PRINCIPLES])
def indicated_power(m: KilogramsPerSecond, m_1: KilogramsPerSecond, W_1: Watts) -> Watts:
    """Indicated power by the steam that is used.

    P_i = W_1 m/m_1

    ``m`` steam used [kg/s]; ``m_1`` steam that a known power takes [kg/s], above 0; ``W_1`` known power [W]. Returns
    [W]. Raises OutOfRange outside.

    Hand working: 1.7 kg/s at 7.5 kg for each kilowatt-hour: 816 kW.

    >>> round(indicated_power(m=1.7, m_1=7.5 / 3600, W_1=1000.0))
    816000
    """
    require(m_1 > 0 * m_1, "the steam that a kilowatt takes must be above 0")
    return W_1 * m / m_1


@formula("x = P/P_i", cites=[FIRST_PRINCIPLES])
def share_of_power(P: Watts, P_i: Watts) -> Ratio:
    """A lost power as a share of the indicated one.

    x = P/P_i

    ``P`` lost power [W]; ``P_i`` indicated power [W], above 0. Returns a ratio. Raises OutOfRange outside.

    >>> share_of_power(P=8.0, P_i=800.0)
    0.01
    """
    require(P_i > 0 * P_i, "the indicated power must be above 0")
    return P / P_i


@formula("k = U_2/U_1", cites=[FIRST_PRINCIPLES])
def share_of_coefficient(U_2: WattsPerSquareMetreKelvin, U_1: WattsPerSquareMetreKelvin) -> Ratio:
    """Coefficient of a wall as a share of that of another.

    k = U_2/U_1

    ``U_2`` coefficient of the wall [W/(m²·K)]; ``U_1`` coefficient of the other wall [W/(m²·K)], above 0. Returns a
    ratio. Raises OutOfRange outside.

    >>> share_of_coefficient(U_2=22.8, U_1=114.0)
    0.2
    """
    require(U_1 > 0 * U_1, "the coefficient of a wall must be above 0")
    return U_2 / U_1


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

    ``E`` modulus [Pa]; ``alpha`` coefficient of expansion [1/K]; ``ΔT`` difference between the faces [K]; ``nu``
    Poisson's ratio, below 1. Returns [Pa]. Raises OutOfRange outside.

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

    ``σ_p`` stress of pressure [Pa]; ``σ_T`` stress of heat [Pa]. Returns [Pa].

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
