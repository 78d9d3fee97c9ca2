"""What masses and forces do to a pattern of bolts, or to the welds at a root: shear, pull, tilt and twist."""

from __future__ import annotations

import math

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, formula, require
from speclint.equations import (
    Kilograms,
    Metres,
    MetresPerSecondSquared,
    NewtonMetres,
    Newtons,
    Ratio,
    SquareMetres,
)


@formula("F = y F_0", cites=[FIRST_PRINCIPLES])
def share_of_force(y: Ratio, F_0: Newtons) -> Newtons:
    """What one of two brackets takes of a force.

    F = y F_0

    ``y`` its share; ``F_0`` the whole force [N]. Returns [N].

    >>> share_of_force(y=0.6, F_0=1000.0)
    600.0
    """
    return y * F_0


@formula("m = y m_0", cites=[FIRST_PRINCIPLES])
def share_of_mass(y: Ratio, m_0: Kilograms) -> Kilograms:
    """What one of two brackets takes of a mass.

    m = y m_0

    ``y`` its share; ``m_0`` the whole mass [kg]. Returns [kg].

    >>> share_of_mass(y=0.6, m_0=25.0)
    15.0
    """
    return y * m_0


@formula("y = y_1 + y_2", cites=[FIRST_PRINCIPLES])
def shares_together(y_1: Ratio, y_2: Ratio) -> Ratio:
    """What two brackets take together of one load.

    y = y_1 + y_2

    ``y_1``, ``y_2`` share of each. Returns a ratio.

    >>> shares_together(y_1=0.6, y_2=0.4)
    1.0
    """
    return y_1 + y_2


@formula("N = F r/√(l² − r²)", cites=[FIRST_PRINCIPLES])
def thrust_of_bar(F: Newtons, r: Metres, l: Metres) -> Newtons:  # noqa: E741 - the symbol of the trade
    """Greatest side thrust of a crosshead under a constant load on its piston, the crank upright.

    N = F r/√(l² − r²)

    ``F`` load on the piston [N]; ``r`` crank, ``l`` connecting rod [m], 0 < r < l. Returns [N]. Raises OutOfRange
    otherwise.

    Hand working: 326 kN × tan(arcsin(330/1900)) = 57.5 kN.

    >>> round(thrust_of_bar(F=326e3, r=0.330, l=1.900), -2)
    57500.0
    """
    require(0 * l < r < l, "a crank is no shorter than its connecting rod")
    found: float = F * r / (l**2 - r**2) ** 0.5
    return found


@formula("k = 2 √(c (1 − c)) if c < 0.5, else 1", cites=[FIRST_PRINCIPLES])
def share_at_cut_off(c: Ratio) -> Ratio:
    """Side thrust at cut-off over that with the crank upright, both under full pressure.

    k = 2 √(c (1 − c)) if c < 0.5, else 1

    ``c`` share of the stroke at which admission ends, 0 to 1: the sine of the crank's angle there, with a long rod.
    Returns a ratio. Raises OutOfRange outside.

    >>> round(share_at_cut_off(c=0.2), 6), share_at_cut_off(c=0.7)
    (0.8, 1.0)
    """
    require(0 < c <= 1, "a cut-off lies between 0 and 1")
    return 2 * math.sqrt(c * (1 - c)) if c < 0.5 else 1.0


@formula("N_c = k N", cites=[FIRST_PRINCIPLES])
def thrust_at_cut_off(k: Ratio, N: Newtons) -> Newtons:
    """Side thrust of a crosshead at the cut-off.

    N_c = k N

    ``k`` side thrust at the cut-off over that with the crank upright; ``N`` side thrust with the crank upright [N].
    Returns [N].

    >>> thrust_at_cut_off(k=0.8, N=50e3)
    40000.0
    """
    return k * N


@formula("W = m g (1 + n)", cites=[FIRST_PRINCIPLES])
def jolted_weight(m: Kilograms, g: MetresPerSecondSquared, n: Ratio) -> Newtons:
    """Weight of a mass with the jolts of the track.

    W = m g (1 + n)

    ``m`` mass [kg]; ``g`` gravity [m/s²]; ``n`` acceleration of a jolt, in times gravity. Returns [N].

    >>> round(jolted_weight(m=25.0, g=9.80665, n=2.0), 1)
    735.5
    """
    return m * g * (1 + n)


@formula("P = m g max(n − 1, 0)", cites=[FIRST_PRINCIPLES])
def lift_of_mass(m: Kilograms, g: MetresPerSecondSquared, n: Ratio) -> Newtons:
    """Pull of a mass that stands on its joint, as a jolt lifts it.

    P = m g max(n − 1, 0)

    ``m`` mass [kg]; ``g`` gravity [m/s²]; ``n`` acceleration of a jolt, in times gravity. Returns [N].

    >>> round(lift_of_mass(m=25.0, g=9.80665, n=2.0), 1)
    245.2
    """
    return m * g * max(n - 1, 0.0)


@formula("s = s_0 + |F|", cites=[FIRST_PRINCIPLES])
def loads_added(s_0: Newtons, F: Newtons) -> Newtons:
    """Loads added up, each with the sense that makes it worse.

    s = s_0 + |F|

    ``s_0`` sum so far, ``F`` one more load [N]. Returns [N].

    >>> loads_added(s_0=1000.0, F=-500.0)
    1500.0
    """
    return s_0 + abs(F)


@formula("M = M_0 + |F a|", cites=[FIRST_PRINCIPLES])
def moments_added(M_0: NewtonMetres, F: Newtons, a: Metres) -> NewtonMetres:
    """Moments added up, each with the sense that makes it worse.

    M = M_0 + |F a|

    ``M_0`` moment so far [N·m]; ``F`` one more load [N]; ``a`` arm of that load [m]. Returns [N·m].

    Hand working: 57.5 kN at 300 mm, 17.25 kN·m.

    >>> round(moments_added(M_0=0.0, F=57.5e3, a=0.3))
    17250
    """
    return M_0 + abs(F * a)


@formula("s = s_0 + k y²", cites=[FIRST_PRINCIPLES])
def squares_added(s_0: SquareMetres, k: Ratio, y: Metres) -> SquareMetres:
    """Squares of the distances of bolts, row by row.

    s = s_0 + k y²

    ``s_0`` sum so far [m²]; ``k`` number of bolts in one more row; ``y`` distance of that row [m]. Returns [m²].

    >>> squares_added(s_0=0.0, k=2, y=0.5)
    0.5
    """
    return s_0 + k * y**2


@formula("F = M y/s", cites=[FIRST_PRINCIPLES])
def pull_in_row(M: NewtonMetres, y: Metres, s: SquareMetres) -> Newtons:
    """Pull of a moment on one bolt of the row that is farthest from the edge on which the part turns.

    F = M y/s

    ``M`` moment [N·m]; ``y`` distance of the row [m]; ``s`` sum of the squares of the distances of all bolts [m²],
    above 0. Returns [N]. Raises OutOfRange otherwise.

    Hand working, six rows of two at 50, 130 … 450 mm, Σy² 0.974 m²: 17 250 × 0.450/0.974 = 7.97 kN.

    >>> round(pull_in_row(M=17250.0, y=0.450, s=0.974))
    7970
    """
    require(s > 0 * s, "no row of bolts stands apart from the edge")
    return M * y / s


@formula("F = 8 M/(3 n D)", cites=[FIRST_PRINCIPLES])
def pull_on_circle(M: NewtonMetres, n: Ratio, D: Metres) -> Newtons:
    """Pull of a moment on the worst of the bolts on a circle, which turns on the bolt opposite.

    F = 8 M/(3 n D)

    ``M`` moment [N·m]; ``n`` bolts; ``D`` circle [m]. Returns [N]. With y = r (1 − cos θ), Σy² = 1.5 n r² and y = 2 r.

    >>> round(pull_on_circle(M=3000.0, n=8, D=0.25))
    4000
    """
    return 8 * M / (3 * n * D)


@formula("F = M/(w k)", cites=[FIRST_PRINCIPLES])
def pull_across_rows(M: NewtonMetres, w: Metres, k: Ratio) -> Newtons:
    """Pull of a moment across the rows on one bolt, the part turning on the bolts at the other end of each row.

    F = M/(w k)

    ``M`` moment [N·m]; ``w`` from the first to the last bolt of a row [m]; ``k`` rows. Returns [N].

    >>> round(pull_across_rows(M=1000.0, w=0.1, k=5))
    2000
    """
    return M / (w * k)


@formula("F = F_x + F_y + P/n", cites=[FIRST_PRINCIPLES])
def pull_of_bolt(F_x: Newtons, F_y: Newtons, P: Newtons, n: Ratio) -> Newtons:
    """Pull of all loads on the worst bolt.

    F = F_x + F_y + P/n

    ``F_x``, ``F_y`` of moments along and across the rows, ``P`` straight pull [N]; ``n`` bolts. Returns [N].

    >>> pull_of_bolt(F_x=8e3, F_y=1e3, P=6e3, n=12)
    9500.0
    """
    return F_x + F_y + P / n


@formula("V = S + n T r/s", cites=[FIRST_PRINCIPLES])
def shear_with_twist(S: Newtons, n: Ratio, T: NewtonMetres, r: Metres, s: SquareMetres) -> Newtons:
    """Shear of a pattern as if its worst bolt were every bolt: straight shear, and its share of the twist by distance.

    V = S + n T r/s

    ``S`` straight shear [N]; ``n`` bolts; ``T`` twist about the pattern's centre [N·m]; ``r`` distance of the farthest
    bolt from it [m]; ``s`` sum of the squares of all distances [m²], above 0. Returns [N]. Raises OutOfRange otherwise.

    Hand working, eight bolts on a circle of 250 mm: 10 kN + 8 × 500 × 0.125/(8 × 0.125²) = 14 kN.

    >>> round(shear_with_twist(S=10e3, n=8, T=500.0, r=0.125, s=8 * 0.125**2))
    14000
    """
    require(s > 0 * s, "the bolts of a pattern do not stand apart")
    return S + n * T * r / s


@formula("r = √(h² + w²)/2", cites=[FIRST_PRINCIPLES])
def farthest_in_rows(h: Metres, w: Metres) -> Metres:
    """Distance of the farthest bolt of a pattern in rows from its centre.

    r = √(h² + w²)/2

    ``h`` from the first row to the last, ``w`` from the first to the last bolt of a row [m]. Returns [m].

    >>> farthest_in_rows(h=0.4, w=0.3)
    0.25
    """
    found: float = (h**2 + w**2) ** 0.5 / 2
    return found


@formula("S = μ max(n F − P, 0)/V", cites=[COMMON_PRACTICE])
def slip_factor(mu: Ratio, n: Ratio, F: Newtons, P: Newtons, V: Newtons) -> Ratio:
    """Factor against slip; a moment alone takes nothing off, since what one side loses the other gains.

    S = μ max(n F − P, 0)/V

    ``mu`` friction; ``n`` number of bolts; ``F`` least preload of each bolt [N]; ``P`` straight pull [N]; ``V`` shear
    [N], above 0. Returns a ratio. Raises OutOfRange otherwise.

    Hand working: 0.12 × 12 × 95.4/57.5 = 2.39; with eight bolts 1.59.

    >>> [round(slip_factor(mu=0.12, n=n, F=95.4e3, P=0.0, V=57.5e3), 2) for n in (12, 8)]
    [2.39, 1.59]
    """
    require(V > 0 * V, "nothing pulls across the joint")
    return mu * max(n * F - P, 0 * V) / V
