"""Thrust of a cylinder on the frame, and the resistance of its bolts."""

from __future__ import annotations

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, formula, require
from speclint.equations import (
    CGPM,
    STANDARD_GRAVITY,
    Kilograms,
    Metres,
    MetresPerSecondSquared,
    NewtonMetres,
    Newtons,
    Pascals,
    Ratio,
    SquareMetres,
)
from speclint.handbook.tables import Reading


def standard_gravity() -> Reading:
    """Standard acceleration of free fall, m/s²: exact by definition."""
    return Reading.exact("standard acceleration of free fall", STANDARD_GRAVITY, "m/s²", CGPM)


@formula("S = m k g", cites=[FIRST_PRINCIPLES])
def shock_load(m: Kilograms, k: Ratio, g: MetresPerSecondSquared) -> Newtons:
    """Shock load of buffing on the fastening of a block.

    S = m k g

    m: mass of the block and all that it carries, kg. k: acceleration as a multiple of gravity. g: standard gravity,
    m/s². Returns N.

    >>> round(shock_load(m=2000.0, k=3.0, g=9.80665))
    58840
    """
    return m * k * g


@formula("T = F + S", cites=[FIRST_PRINCIPLES])
def thrust_along_frame(F: Newtons, S: Newtons) -> Newtons:
    """Thrust along the frame, in either direction.

    T = F + S

    F: load of the steam on a cover, N. S: load of a shock, N. Returns N. The inertia of piston and rods does
    not pass through the block: it acts on crank pin and axleboxes.

    >>> thrust_along_frame(F=350e3, S=50e3)
    400000.0
    """
    return F + S


@formula("D = μ n F", cites=[FIRST_PRINCIPLES])
def drag_of_pad(mu: Ratio, n: Ratio, F: Newtons) -> Newtons:
    """Force with which a sliding pad drags on the frame while the block grows.

    D = μ n F

    mu: greatest friction. n: number of its bolts. F: greatest preload of one, N. Returns N.

    Hand working: 0.15 × 8 × 150 kN.

    >>> round(drag_of_pad(mu=0.15, n=8, F=150e3))
    180000
    """
    return mu * n * F


@formula("T_D = T + D", cites=[FIRST_PRINCIPLES])
def thrust_with_drag(T: Newtons, D: Newtons) -> Newtons:
    """What the pad that locates the block takes: the thrust, and the drag of a pad that slides.

    T_D = T + D

    T: thrust, N. D: drag, N. Returns N. Heating and cooling pull both ways, as the thrust does.

    >>> thrust_with_drag(T=450e3, D=150e3)
    600000.0
    """
    return T + D


@formula("N_s = μ n (F − P)/T", cites=[FIRST_PRINCIPLES])
def factor_against_slip(mu: Ratio, n: Ratio, F: Newtons, P: Newtons, T: Newtons) -> Ratio:
    """Times the thrust that friction alone would hold on a pad that the couple lifts.

    N_s = μ n (F − P)/T

    mu: least friction. n: number of bolts. F: least preload, N. P: load of the couple on each, N. T: thrust, with
    drag, N, above 0. Returns a ratio; nothing or less where the pad gapes.

    Hand working: 0.15 × 20 × (200 - 50)/300 = 450/300.

    >>> round(factor_against_slip(mu=0.15, n=20, F=200e3, P=50e3, T=300e3), 6)
    1.5
    """
    require(T > 0 * F, "the thrust must be above 0")
    return mu * n * (F - P) / T


@formula("τ = T/(n A)", cites=[FIRST_PRINCIPLES])
def shear_of_fitted_bolts(T: Newtons, n: Ratio, A: SquareMetres) -> Pascals:
    """Shear stress of fitted bolts that take all the thrust.

    τ = T/(n A)

    T: thrust, N. n: number of bolts. A: area of one reamed shank, m². Returns Pa.

    >>> round(shear_of_fitted_bolts(T=400e3, n=10, A=800e-6) / 1e6, 6)
    50.0
    """
    return T / (n * A)


@formula("q = T/(n d L)", cites=[FIRST_PRINCIPLES])
def bearing_of_fitted_bolts(T: Newtons, n: Ratio, d: Metres, L: Metres) -> Pascals:
    """Bearing pressure of fitted bolts in the thinner plate.

    q = T/(n d L)

    T: thrust, N. n: number of bolts. d: reamed shank, m. L: thickness in which it bears, m. Returns Pa.

    >>> round(bearing_of_fitted_bolts(T=400e3, n=10, d=0.032, L=0.025) / 1e6, 6)
    50.0
    """
    return T / (n * d * L)


@formula("M = M_0 + T a", cites=[FIRST_PRINCIPLES])
def couple_of_thrust(M_0: NewtonMetres, T: Newtons, a: Metres) -> NewtonMetres:
    """Couple by which thrust twists the block on the frame, added up bore by bore.

    M = M_0 + T a

    M_0: couple of the bores before, N·m. T: thrust of one more, N. a: distance of its axis from the frame's face, m.
    Returns N·m.

    >>> couple_of_thrust(M_0=10e3, T=400e3, a=0.350)
    150000.0
    """
    return M_0 + T * a


@formula("l = |x_1 − x_2|", cites=[FIRST_PRINCIPLES])
def between_pads(x_1: Metres, x_2: Metres) -> Metres:
    """Distance between the pads that take the couple.

    l = |x_1 − x_2|

    x_1, x_2: middles of the pads along the frame, m, not the same. Returns m.

    >>> between_pads(x_1=0.0, x_2=0.62)
    0.62
    """
    require(x_1 != x_2, "both pads are at the same place and take no couple")
    return abs(x_1 - x_2)


@formula("P = M/(l n)", cites=[COMMON_PRACTICE])
def lift_by_couple(M: NewtonMetres, l: Metres, n: Ratio) -> Newtons:  # noqa: E741 - symbol of a length
    """Load of the couple on each bolt of the pad that it lifts from the frame.

    P = M/(l n)

    M: couple, N·m. l: distance between the pads, m. n: number of bolts on the pad, which share it equally. Returns N.

    >>> round(lift_by_couple(M=140e3, l=0.7, n=10))
    20000
    """
    return M / (l * n)


@formula("q = n (F + P)/A", cites=[FIRST_PRINCIPLES])
def greatest_pad_pressure(n: Ratio, F: Newtons, P: Newtons, A: SquareMetres) -> Pascals:
    """Mean pressure of the pad that the couple presses on the frame, at greatest preload.

    q = n (F + P)/A

    n: number of bolts. F: greatest preload of one, N. P: load of the couple on each, N. A: face of the pad,
    m². Returns Pa.

    >>> greatest_pad_pressure(n=10, F=200e3, P=20e3, A=0.05)
    44000000.0
    """
    return n * (F + P) / A
