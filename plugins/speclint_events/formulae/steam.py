"""Pressures and forces of the cycle held against what they may be."""

from __future__ import annotations

from speclint import FIRST_PRINCIPLES, formula, require
from speclint.equations import (
    CGPM,
    CubicMetres,
    Kilograms,
    KilogramsPerCubicMetre,
    KilogramsPerSecond,
    Metres,
    MetresPerSecondSquared,
    NewtonMetres,
    Newtons,
    Pascals,
    Ratio,
    SquareMetres,
    Watts,
)
from speclint.handbook.valve_events import BALDWIN


@formula("m_n = x m", cites=[FIRST_PRINCIPLES])
def share_of_flow(x: Ratio, m: KilogramsPerSecond) -> KilogramsPerSecond:
    """A flow of steam within the error of its calculation.

    m_n = x m

    ``x`` share; ``m`` flow [kg/s]. Returns [kg/s].

    >>> round(share_of_flow(x=0.85, m=1.2), 6)
    1.02
    """
    return x * m


@formula("V = V_c + A x", cites=[FIRST_PRINCIPLES])
def volume_of_steam(V_c: CubicMetres, A: SquareMetres, x: Metres) -> CubicMetres:
    """Volume of the steam in an end of a cylinder.

    V = V_c + A x

    ``V_c`` clearance volume [m³]; ``A`` area of the piston towards the end [m²]; ``x`` its travel from there [m].
    Returns [m³].

    Hand working: 0.011 + 0.2 × 0.15 = 0.041 m³.

    >>> round(volume_of_steam(V_c=0.011, A=0.2, x=0.15), 9)
    0.041
    """
    return V_c + A * x


@formula("m = ρ V", cites=[FIRST_PRINCIPLES])
def mass_of_steam(ρ: KilogramsPerCubicMetre, V: CubicMetres) -> Kilograms:
    """Steam in a volume.

    m = ρ V

    ``ρ`` density [kg/m³]; ``V`` volume [m³]. Returns [kg].

    >>> round(mass_of_steam(ρ=3.5, V=0.041), 6)
    0.1435
    """
    return ρ * V


@formula("m = m_c − m_k", cites=[FIRST_PRINCIPLES])
def steam_let_in(m_c: Kilograms, m_k: Kilograms) -> Kilograms:
    """Steam of a revolution of an end, by what stands in it as the valves shut.

    m = m_c − m_k

    ``m_c`` as the inlet shuts, ``m_k`` as the exhaust shuts [kg]. Returns [kg].

    >>> round(steam_let_in(m_c=0.152, m_k=0.041), 6)
    0.111
    """
    return m_c - m_k


@formula("P = P_f + P_b", cites=[FIRST_PRINCIPLES])
def power_of_ends(P_f: Watts, P_b: Watts) -> Watts:
    """Indicated power of both ends.

    P = P_f + P_b

    ``P_f``, ``P_b`` of the front and the back [W]. Returns [W].

    >>> power_of_ends(P_f=178e3, P_b=152e3)
    330000.0
    """
    return P_f + P_b


@formula("F = z (F_f + F_b)", cites=[FIRST_PRINCIPLES])
def effort_of_engine(z: Ratio, F_f: Newtons, F_b: Newtons) -> Newtons:
    """Tractive effort of all cylinders alike.

    F = z (F_f + F_b)

    ``z`` cylinders; ``F_f``, ``F_b`` of the front and the back end of one [N]. Returns [N].

    >>> effort_of_engine(z=3.0, F_f=20e3, F_b=18e3)
    114000.0
    """
    return z * (F_f + F_b)


@formula("F_a = μ m g", cites=[FIRST_PRINCIPLES, CGPM])
def force_of_adhesion(μ: Ratio, m: Kilograms, g: MetresPerSecondSquared) -> Newtons:
    """Greatest force that wheels pass to the rail before they slip.

    F_a = μ m g

    ``μ`` adhesion; ``m`` mass that rests on the wheels [kg]; ``g`` acceleration of free fall [m/s²]. Returns [N].

    Hand working: 0.3 × 66 000 × 9.80665 = 194.17 kN.

    >>> round(force_of_adhesion(μ=0.3, m=66e3, g=9.80665))
    194172
    """
    return μ * m * g


@formula("M = k p d² S z/4", cites=[BALDWIN])
def mean_starting_moment(k: Ratio, p: Pascals, d: Metres, S: Metres, z: Ratio) -> NewtonMetres:
    """Mean turning moment at starting by the trade's formula for the tractive effort, on the axle.

    M = k p d² S z/4

    ``k`` share of the pressure that acts, 0.85; ``p`` pressure of the steam [Pa gauge]; ``d`` bore, ``S`` stroke [m];
    ``z`` cylinders. Returns [N·m]: the effort k p d² S z/(2 D) at half the wheel's diameter D.

    Hand working: 0.85 × 16 bar × 0.5² × 0.66 × 2/4 = 112.2 kN·m.

    >>> round(mean_starting_moment(k=0.85, p=16e5, d=0.5, S=0.66, z=2.0) / 1e3, 6)
    112.2
    """
    return k * p * d**2 * S * z / 4


@formula("x = M/M_m", cites=[FIRST_PRINCIPLES])
def share_of_moment(M: NewtonMetres, M_m: NewtonMetres) -> Ratio:
    """A turning moment over the mean one.

    x = M/M_m

    ``M`` moment [N·m]; ``M_m`` mean moment [N·m], above 0. Returns a ratio. Raises OutOfRange outside.

    >>> share_of_moment(M=30e3, M_m=120e3)
    0.25
    """
    require(M_m > 0, "the mean turning moment must be above 0")
    return M / M_m
