"""Motion of a piston driven by a crank and a connecting rod, in line with the crank axle.

``θ`` is the angle of the crank from the dead centre at which the piston is farthest from the axle; travel,
speed and acceleration count from there, towards the axle. ``r`` crank radius, half the stroke; ``l`` length of
the connecting rod; λ = r/l. Exact formulae are given beside the two-term ones of period books.
"""

from __future__ import annotations

import math

from speclint.equations import (
    FIRST_PRINCIPLES,
    Hertz,
    Kilograms,
    Metres,
    MetresPerSecond,
    MetresPerSecondSquared,
    Newtons,
    Radians,
    RadiansPerSecond,
    Source,
    formula,
    require,
)

KHURMI_MACHINES = Source(
    "R. S. Khurmi and J. K. Gupta, Theory of Machines",
    "2005",
    "ch. 15, inertia forces, examples 15.3 to 15.8 as printed in a public companion notebook",
)


@formula("r = S/2", cites=[FIRST_PRINCIPLES])
def crank_radius(S: Metres) -> Metres:
    """Radius of the crank.

    r = S/2

    ``S`` stroke [m]. Returns [m].

    >>> crank_radius(S=0.66)
    0.33
    """
    return S / 2


@formula("n = ω/(2 π)", cites=[FIRST_PRINCIPLES])
def revolutions(ω: RadiansPerSecond) -> Hertz:
    """Revolutions in a second.

    n = ω/(2 π)

    ``ω`` speed of rotation [rad/s]. Returns [1/s].

    By hand: 4 π rad/s.

    >>> round(revolutions(ω=4 * math.pi), 9)
    2.0
    """
    return ω / (2 * math.pi)


@formula("s = r (1 − cos θ) + l (1 − √(1 − (r/l)² sin² θ))", cites=[FIRST_PRINCIPLES])
def piston_travel(r: Metres, l: Metres, θ: Radians) -> Metres:  # noqa: E741 - the symbol of the trade
    """Travel of the piston from the far dead centre, exact.

    s = r (1 − cos θ) + l (1 − √(1 − (r/l)² sin² θ))

    ``r`` crank radius and ``l`` rod length [m], 0 < r < l; ``θ`` crank angle [rad]. Returns [m], 0 to 2 r.
    Raises OutOfRange outside.

    By hand, r = 3, l = 5, θ = 90°: 3 + 5 − √(25 − 9) = 4.

    >>> round(piston_travel(r=3.0, l=5.0, θ=math.pi / 2), 9)
    4.0
    """
    _require_crank(r, l)
    return r * (1 - math.cos(θ)) + l * (1 - _root(r, l, θ))


@formula("v = ω r (sin θ + (r/l) sin θ cos θ/√(1 − (r/l)² sin² θ))", cites=[FIRST_PRINCIPLES])
def piston_speed(r: Metres, l: Metres, ω: RadiansPerSecond, θ: Radians) -> MetresPerSecond:  # noqa: E741
    """Speed of the piston, exact.

    v = ω r (sin θ + (r/l) sin θ cos θ/√(1 − (r/l)² sin² θ))

    ``r`` crank radius and ``l`` rod length [m], 0 < r < l; ``ω`` speed of the crank [rad/s]; ``θ`` crank angle
    [rad]. Returns [m/s]. Raises OutOfRange outside.

    >>> round(piston_speed(r=0.3, l=2.5, ω=30.0, θ=math.pi / 2), 9)  # ω r
    9.0
    """
    _require_crank(r, l)
    return ω * r * (math.sin(θ) + r / l * math.sin(2 * θ) / (2 * _root(r, l, θ)))


@formula(
    "a = ω² r (cos θ + (r/l) (cos(2 θ) + (r/l)² sin⁴ θ)/(1 − (r/l)² sin² θ)^(3/2))", cites=[FIRST_PRINCIPLES]
)
def piston_acceleration(
    r: Metres,
    l: Metres,  # noqa: E741
    ω: RadiansPerSecond,
    θ: Radians,
) -> MetresPerSecondSquared:
    """Acceleration of the piston, exact.

    a = ω² r (cos θ + (r/l) (cos(2 θ) + (r/l)² sin⁴ θ)/(1 − (r/l)² sin² θ)^(3/2))

    ``r`` crank radius and ``l`` rod length [m], 0 < r < l; ``ω`` speed of the crank [rad/s]; ``θ`` crank angle
    [rad]. Returns [m/s²]. Greatest at the far dead centre, ω² r (1 + r/l). Raises OutOfRange outside.

    >>> round(piston_acceleration(r=0.3, l=2.4, ω=30.0, θ=0.0), 9)  # 900 · 0.3 · 1.125
    303.75
    """
    _require_crank(r, l)
    λ = r / l
    second = λ * (math.cos(2 * θ) + λ**2 * math.sin(θ) ** 4) / _root(r, l, θ) ** 3
    return ω**2 * r * (math.cos(θ) + second)


@formula("v = ω r (sin θ + (r/l) sin(2 θ)/2)", cites=[KHURMI_MACHINES])
def piston_speed_two_term(
    r: Metres,
    l: Metres,  # noqa: E741
    ω: RadiansPerSecond,
    θ: Radians,
) -> MetresPerSecond:
    """Speed of the piston to the first power of r/l.

    v = ω r (sin θ + (r/l) sin(2 θ)/2)

    Arguments and limits as ``piston_speed``; within 0.18 ω r (r/l)³ of it while l is at least 3 r.
    Returns [m/s].

    >>> round(piston_speed_two_term(r=0.3, l=2.4, ω=30.0, θ=math.pi / 4), 4)  # 9 (0.70711 + 0.0625)
    6.9265
    """
    _require_crank(r, l)
    return ω * r * (math.sin(θ) + r / l * math.sin(2 * θ) / 2)


@formula("a = ω² r (cos θ + (r/l) cos(2 θ))", cites=[KHURMI_MACHINES])
def piston_acceleration_two_term(
    r: Metres,
    l: Metres,  # noqa: E741
    ω: RadiansPerSecond,
    θ: Radians,
) -> MetresPerSecondSquared:
    """Acceleration of the piston to the first power of r/l: right at both dead centres.

    a = ω² r (cos θ + (r/l) cos(2 θ))

    Arguments and limits as ``piston_acceleration``; within 0.55 ω² r (r/l)³ of it while l is at least 3 r.
    Returns [m/s²].

    >>> round(piston_acceleration_two_term(r=0.3, l=2.4, ω=30.0, θ=math.pi), 9)  # −900 · 0.3 · 0.875
    -236.25
    """
    _require_crank(r, l)
    return ω**2 * r * (math.cos(θ) + r / l * math.cos(2 * θ))


@formula("v_m = 2 S n", cites=[FIRST_PRINCIPLES])
def mean_piston_speed(S: Metres, n: Hertz) -> MetresPerSecond:
    """Mean speed of the piston over a revolution.

    v_m = 2 S n

    ``S`` stroke [m]; ``n`` revolutions in a second [1/s]. Returns [m/s].

    By hand: 660 mm at 5 revolutions in a second.

    >>> round(mean_piston_speed(S=0.660, n=5.0), 9)
    6.6
    """
    return 2 * S * n


@formula("F = m a", cites=[FIRST_PRINCIPLES])
def inertia_force(m: Kilograms, a: MetresPerSecondSquared) -> Newtons:
    """Inertia force of a reciprocating mass.

    F = m a

    ``m`` mass that travels with the piston [kg]; ``a`` its acceleration [m/s²]. Returns [N].

    By hand: 300 kg at 500 m/s².

    >>> inertia_force(m=300.0, a=500.0)
    150000.0
    """
    return m * a


@formula("φ = arcsin((r/l) sin θ)", cites=[FIRST_PRINCIPLES])
def rod_angle(r: Metres, l: Metres, θ: Radians) -> Radians:  # noqa: E741
    """Angle of the connecting rod to the line of stroke.

    φ = arcsin((r/l) sin θ)

    ``r`` crank radius and ``l`` rod length [m], 0 < r < l; ``θ`` crank angle [rad]. Returns [rad].
    Raises OutOfRange outside.

    >>> round(math.degrees(rod_angle(r=1.0, l=2.0, θ=math.pi / 2)), 9)
    30.0
    """
    _require_crank(r, l)
    return math.asin(r / l * math.sin(θ))


@formula("N = F tan φ", cites=[FIRST_PRINCIPLES])
def side_thrust(F: Newtons, φ: Radians) -> Newtons:
    """Thrust of the crosshead on its slide bar.

    N = F tan φ

    ``F`` force along the line of stroke [N]; ``φ`` angle of the rod [rad], below a right angle in either direction.
    Returns [N]. Friction at the pins left out. Raises OutOfRange outside.

    >>> round(side_thrust(F=100e3, φ=math.atan(0.125)), 6)
    12500.0
    """
    require(abs(φ) < math.pi / 2, "the rod must be at less than a right angle to the line of stroke")
    return F * math.tan(φ)


def _root(r: float, l: float, θ: float) -> float:  # noqa: E741
    """cos φ: √(1 − (r/l)² sin² θ)."""
    return math.sqrt(1 - (r / l * math.sin(θ)) ** 2)


def _require_crank(r: float, l: float) -> None:  # noqa: E741
    require(0 < r < l, "the connecting rod must be longer than the crank, and that above 0")
