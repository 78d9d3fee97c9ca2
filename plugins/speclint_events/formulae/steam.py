"""Pressures and forces of the cycle held against what they may be."""

from __future__ import annotations

from speclint import FIRST_PRINCIPLES, formula, require
from speclint.equations import (
    Kilograms,
    KilogramsPerSecond,
    Metres,
    MetresPerSecondSquared,
    NewtonMetres,
    Newtons,
    Pascals,
    Ratio,
)
from speclint.handbook.valve_events import BALDWIN
from speclint_events.sources import CGPM

STANDARD_GRAVITY = 9.80665  # m/s², exact: CGPM 3 (1901)


@formula("m_n = x m", cites=[FIRST_PRINCIPLES])
def share_of_flow(x: Ratio, m: KilogramsPerSecond) -> KilogramsPerSecond:
    """A flow of steam within the error of its calculation.

    m_n = x m

    ``x`` share; ``m`` flow [kg/s]. Returns [kg/s].

    >>> round(share_of_flow(x=0.85, m=1.2), 6)
    1.02
    """
    return x * m


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

    >>> round(force_of_adhesion(μ=0.3, m=66e3, g=STANDARD_GRAVITY))
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

    ``M`` moment, ``M_m`` mean moment [N·m], above 0, else OutOfRange. Returns a ratio.

    >>> share_of_moment(M=30e3, M_m=120e3)
    0.25
    """
    require(M_m > 0, "the mean turning moment must be above 0")
    return M / M_m
