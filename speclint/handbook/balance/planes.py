"""Masses on an axle, brought to the planes of its two wheels, and the masses there that balance them.

A mass ``m`` at the radius ``r`` stands at the angle ``α`` from the crank from which angles count, in the direction in
which the engine runs forwards. It is out of balance by its moment m r, one part along that crank and one across it.
A mass in a plane between the wheels is shared by both as the load of a beam on two supports: ``b`` is half of the
distance between the planes of the wheels, ``y`` that of the mass from the middle, towards the wheel in question.
A mass beyond a wheel loads that wheel with more than all of it, and the other one with the opposite of the rest.
"""

from __future__ import annotations

import math

from speclint.equations import (
    FIRST_PRINCIPLES,
    KilogramMetres,
    Kilograms,
    Metres,
    Radians,
    Source,
    formula,
    require,
)
from speclint.handbook.tables import SARKAR

DALBY = Source(
    "W. E. Dalby, The Balancing of Engines", "1906", "two reference planes; edition not seen", memory=True
)
_BALANCING = SARKAR.at("ch. 12, balancing")


@formula("b = a/2", cites=[FIRST_PRINCIPLES])
def half_of_distance(a: Metres) -> Metres:
    """Distance of the plane of a wheel from the middle of the engine.

    b = a/2

    ``a`` between the planes of both wheels [m]. Returns [m].

    >>> half_of_distance(a=1.5)
    0.75
    """
    return a / 2


@formula("X = X_0 + m r cos α (b + y)/(2 b)", cites=[DALBY, FIRST_PRINCIPLES])
def along_in_plane(
    X_0: KilogramMetres, m: Kilograms, r: Metres, α: Radians, b: Metres, y: Metres
) -> KilogramMetres:
    """Moment of masses in the plane of one wheel, along the crank from which angles count, added up mass by mass.

    X = X_0 + m r cos α (b + y)/(2 b)

    ``X_0`` moment of the masses before [kg·m]; ``m`` one more mass [kg]; ``r`` its radius [m]; ``α`` its angle [rad];
    ``b`` half the distance of the planes [m], above 0; ``y`` distance of the mass from the middle, towards this wheel
    [m]. Returns [kg·m]. Raises OutOfRange outside.

    By hand: 100 kg at 0.3 m, 0.35 m out of 0.75 m: 30 × 1.1/1.5.

    >>> round(along_in_plane(X_0=0.0, m=100.0, r=0.3, α=0.0, b=0.75, y=0.35), 9)
    22.0
    """
    require(b > 0, "the planes of the wheels must stand apart")
    return X_0 + m * r * math.cos(α) * (b + y) / (2 * b)


@formula("Y = Y_0 + m r sin α (b + y)/(2 b)", cites=[DALBY, FIRST_PRINCIPLES])
def across_in_plane(
    Y_0: KilogramMetres, m: Kilograms, r: Metres, α: Radians, b: Metres, y: Metres
) -> KilogramMetres:
    """Moment of masses in the plane of one wheel, a right angle ahead of the crank from which angles count.

    Y = Y_0 + m r sin α (b + y)/(2 b)

    ``Y_0`` moment of the masses before [kg·m]. Other arguments and their range as of ``along_in_plane``. Returns
    [kg·m]. Raises OutOfRange outside.

    By hand: the same mass on the other side of the middle, a right angle ahead: 30 × 0.4/1.5.

    >>> round(across_in_plane(Y_0=0.0, m=100.0, r=0.3, α=math.pi / 2, b=0.75, y=-0.35), 9)
    8.0
    """
    require(b > 0, "the planes of the wheels must stand apart")
    return Y_0 + m * r * math.sin(α) * (b + y) / (2 * b)


@formula("X = X_1 + X_2", cites=[FIRST_PRINCIPLES])
def sum_in_plane(X_1: KilogramMetres, X_2: KilogramMetres) -> KilogramMetres:
    """Two moments of one direction together.

    X = X_1 + X_2

    ``X_1``, ``X_2`` of either [kg·m]. Returns [kg·m].

    >>> sum_in_plane(X_1=22.0, X_2=-8.0)
    14.0
    """
    return X_1 + X_2


@formula("R = √(X² + Y²)", cites=[FIRST_PRINCIPLES])
def out_of_balance(X: KilogramMetres, Y: KilogramMetres) -> KilogramMetres:
    """What a plane is out of balance by, in whatever direction.

    R = √(X² + Y²)

    ``X`` along and ``Y`` across the crank from which angles count [kg·m]. Returns [kg·m], 0 where it is balanced.

    >>> out_of_balance(X=3.0, Y=-4.0)
    5.0
    """
    both: float = (X**2 + Y**2) ** 0.5
    return both


@formula("m = R/r", cites=[_BALANCING, FIRST_PRINCIPLES])
def mass_of_balance(R: KilogramMetres, r: Metres) -> Kilograms:
    """Mass that balances a moment in its plane, or a moment as a mass at the crank.

    m = R/r

    ``R`` moment [kg·m]; ``r`` radius of the mass's centre [m], above 0. Returns [kg]. Raises OutOfRange outside.

    Illustration 12.1: 150 kg at 90 mm by a mass at 150 mm.

    >>> round(mass_of_balance(R=150.0 * 0.090, r=0.150), 9)
    90.0
    """
    require(r > 0, "the radius of the balance must be above 0")
    return R / r


@formula("α = π if R ≤ X, else 2 arctan(Y/(X − R))", cites=[FIRST_PRINCIPLES])
def angle_of_balance(R: KilogramMetres, X: KilogramMetres, Y: KilogramMetres) -> Radians:
    """Angle at which the mass stands that balances a moment: opposite to it.

    α = π if R ≤ X, else 2 arctan(Y/(X − R))

    ``X`` along and ``Y`` across the crank from which angles count, ``R`` both together [kg·m]: what is to be balanced.
    Returns [rad], −π to π.

    By hand: opposite to a mass a right angle ahead.

    >>> round(math.degrees(angle_of_balance(R=5.0, X=0.0, Y=5.0)), 9)
    -90.0
    """
    return math.pi if R <= X else 2 * math.atan(Y / (X - R))


@formula("m_b = m (l − a)/l", cites=[_BALANCING, FIRST_PRINCIPLES])
def big_end_share(m: Kilograms, l: Metres, a: Metres) -> Kilograms:  # noqa: E741 - the symbol of the trade
    """Share of a connecting rod that turns with the crank pin, by its centre of gravity.

    m_b = m (l − a)/l

    ``m`` mass of the rod [kg]; ``l`` its length between centres, ``a`` from the crank pin to its centre of gravity [m],
    0 < a < l. Returns [kg]. The rod's moment of inertia is left out: it is usually less than that of the two shares,
    and alters only the thrust on the slide bars. Raises OutOfRange outside.

    By hand: 120 kg, a third of the way from the crank pin: two thirds.

    >>> round(big_end_share(m=120.0, l=1.8, a=0.6), 9)
    80.0
    """
    require(0 < a < l, "the rod's centre of gravity must lie between its pins")
    return m * (l - a) / l


@formula("m_s = m a/l", cites=[_BALANCING, FIRST_PRINCIPLES])
def small_end_share(m: Kilograms, l: Metres, a: Metres) -> Kilograms:  # noqa: E741
    """Share of a connecting rod that reciprocates with the crosshead, by its centre of gravity.

    m_s = m a/l

    Arguments and range as of ``big_end_share``. Returns [kg]. Raises OutOfRange outside.

    >>> round(small_end_share(m=120.0, l=1.8, a=0.6), 9)
    40.0
    """
    require(0 < a < l, "the rod's centre of gravity must lie between its pins")
    return m * a / l
