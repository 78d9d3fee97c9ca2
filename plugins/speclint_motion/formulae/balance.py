"""What hammer blow and unbalanced masses are held against, and the load on axles."""

from __future__ import annotations

from speclint import FIRST_PRINCIPLES, formula, require
from speclint.equations import KilogramMetres, Kilograms, Metres, MetresPerSecondSquared, Newtons, Ratio


@formula("F = k m g", cites=[FIRST_PRINCIPLES])
def share_of_load(k: Ratio, m: Kilograms, g: MetresPerSecondSquared) -> Newtons:
    """Share of the load of a wheel at rest.

    F = k m g

    ``k`` share [-]; ``m`` mass that rests on the rail under it [kg]; ``g`` of free fall [m/s²]. Returns [N].

    >>> round(share_of_load(k=0.5, m=9000.0, g=9.80665), 3)
    44129.925
    """
    return k * m * g


@formula("m = M/n", cites=[FIRST_PRINCIPLES])
def part_of_engine(M: Kilograms, n: Ratio) -> Kilograms:
    """Greatest mass left unbalanced on one side of an engine.

    m = M/n

    ``M`` of the engine [kg]; ``n`` how many times that it must be the heavier [-], above 0. Returns [kg]. Raises
    OutOfRange otherwise.

    >>> part_of_engine(M=80000.0, n=400.0)
    200.0
    """
    require(n > 0, "the number of times must be above 0")
    return M / n


@formula("x = |m_l − m_r|/(m_l + m_r)", cites=[FIRST_PRINCIPLES])
def unevenness(m_l: Kilograms, m_r: Kilograms) -> Ratio:
    """How far each wheel's load is from the mean of both, as a share of it.

    x = |m_l − m_r|/(m_l + m_r)

    ``m_l``, ``m_r`` masses on both wheels [kg], together above 0. Returns [-]. Raises OutOfRange otherwise.

    >>> unevenness(m_l=10200.0, m_r=9800.0)
    0.02
    """
    require(m_l + m_r > 0 * m_l, "something must rest on the wheels")
    return abs(m_l - m_r) / (m_l + m_r)


@formula("S = S_0 + m x", cites=[FIRST_PRINCIPLES])
def moment_with(S_0: KilogramMetres, m: Kilograms, x: Metres) -> KilogramMetres:
    """Moment of masses about a place along an axis, added up one by one.

    S = S_0 + m x

    ``S_0`` of those before [kg·m]; ``m`` one more [kg] and ``x`` where it stands [m]. Returns [kg·m].

    >>> moment_with(S_0=100.0, m=50.0, x=-1.0)
    50.0
    """
    return S_0 + m * x


@formula("x = S/M", cites=[FIRST_PRINCIPLES])
def place_of_centre(S: KilogramMetres, M: Kilograms) -> Metres:
    """Where the centre of masses stands.

    x = S/M

    ``S`` moment of all masses [kg·m]; ``M`` sum of all masses [kg], above 0. Returns [m]. Raises OutOfRange otherwise.

    >>> place_of_centre(S=50.0, M=100.0)
    0.5
    """
    require(M > 0 * M, "something must stand on the axles")
    return S / M


@formula("δ = |x_1 − x_2|", cites=[FIRST_PRINCIPLES])
def centres_apart(x_1: Metres, x_2: Metres) -> Metres:
    """Distance of two centres along an axis.

    δ = |x_1 − x_2|

    ``x_1``, ``x_2`` where they stand [m]. Returns [m].

    >>> round(centres_apart(x_1=1.25, x_2=1.30), 9)
    0.05
    """
    return abs(x_1 - x_2)


@formula("δ = |c − c_0|", cites=[FIRST_PRINCIPLES])
def shares_apart(c: Ratio, c_0: Ratio) -> Ratio:
    """Difference of a share from the one that is asked for.

    δ = |c − c_0|

    ``c`` worked, ``c_0`` asked for [-]. Returns [-].

    >>> round(shares_apart(c=0.25, c_0=0.30), 9)
    0.05
    """
    return abs(c - c_0)


@formula("X = X_0 + c U", cites=[FIRST_PRINCIPLES])
def moment_with_share(X_0: KilogramMetres, c: Ratio, U: KilogramMetres) -> KilogramMetres:
    """Moment of what turns, with a share of what reciprocates.

    X = X_0 + c U

    ``X_0`` of what turns, ``U`` of what reciprocates [kg·m]; ``c`` share [-]. Returns [kg·m].

    >>> moment_with_share(X_0=20.0, c=0.25, U=40.0)
    30.0
    """
    return X_0 + c * U


@formula("x = R/R_0", cites=[FIRST_PRINCIPLES])
def moment_amiss(R: KilogramMetres, R_0: KilogramMetres) -> Ratio:
    """What a balance weight leaves amiss, as a share of what it has to balance.

    x = R/R_0

    ``R`` moment left [kg·m]; ``R_0`` moment to be balanced [kg·m], above 0. Returns [-]. Raises OutOfRange otherwise.

    >>> moment_amiss(R=2.0, R_0=40.0)
    0.05
    """
    require(R_0 > 0 * R_0, "something must turn out of balance")
    return R / R_0
