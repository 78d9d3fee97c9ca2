"""Crosshead and slide bars: deflection of the bar, reciprocating mass."""

from __future__ import annotations

import math  # noqa: F401 - used by the doctests below

from speclint import FIRST_PRINCIPLES, formula, require
from speclint.equations import (
    Kilograms,
    Metres,
    MetresToTheFourth,
    Newtons,
    Pascals,
    Radians,
    RadiansPerSecond,
    Ratio,
    SquareMetres,
)
from speclint.handbook.cams import piston_travel
from speclint.handbook.members import fixed_deflection, simple_deflection
from speclint.handbook.tables import ROARK
from speclint_motion.formulae.thrust import crosshead_force, slipper_thrust


@formula("a = x_0 + r (1 − cos θ) + l (1 − √(1 − (r/l)² sin² θ))", cites=[FIRST_PRINCIPLES])
def place_on_bar(x_0: Metres, r: Metres, l: Metres, θ: Radians) -> Metres:  # noqa: E741
    """Distance of the crosshead from the bar's front support.

    a = x_0 + r (1 − cos θ) + l (1 − √(1 − (r/l)² sin² θ))

    ``x_0`` that distance at the front dead centre [m]; ``r``, ``l`` crank radius and rod length [m]; ``θ`` crank
    angle [rad]. Returns [m].

    By hand, r = 3, l = 5, crank upright: s = 4.

    >>> round(place_on_bar(x_0=1.0, r=3.0, l=5.0, θ=math.pi / 2), 9)
    5.0
    """
    return x_0 + piston_travel(r=r, l=l, θ=θ)


@formula(
    "y = F b (L² − b²)^(3/2)/(9 √3 E I L), F = N(θ, r, l, ω, m, A, p_1, p_e, c)/z, b = min(a, L − a), "
    "a = a(x_0, r, l, θ)",
    cites=[ROARK.at("Table 8.1, case 1e")],
)
def deflection_of_resting_bar(
    θ: Radians,
    r: Metres,
    l: Metres,  # noqa: E741 - the symbol of the trade
    ω: RadiansPerSecond,
    m: Kilograms,
    A: SquareMetres,
    p_1: Pascals,
    p_e: Pascals,
    c: Ratio,
    x_0: Metres,
    z: Ratio,
    L: Metres,
    E: Pascals,
    I: MetresToTheFourth,  # noqa: E741
) -> Metres:
    """Greatest deflection of a slide bar with simply supported ends, the crosshead at one crank angle.

    y = N b (L² − b²)^(3/2)/(9 √3 E I L), N = N(θ)/z, b the shorter part

    The arguments to ``c`` as ``crosshead_force``; ``x_0`` from the front support to the crosshead at the front dead
    centre [m]; ``z`` bars that share the thrust; ``L`` span [m]; ``E`` modulus [Pa]; ``I`` second moment [m⁴].
    Returns [m]. The slipper is taken as a point load. Raises OutOfRange where the crosshead leaves the bar.

    By hand, r = 0.3, l = 0.5, crank upright, 240 kN on the middle of 1.2 m: s = 0.4, F L³/(48 E I) with E I =
    7.2e6: 240e3 × 1.728/345.6e6 = 1.2 mm.

    >>> gear = (math.pi / 2, 0.3, 0.5, 0.0, 300.0, 0.2, 17e5, 1e5, 1.0)
    >>> round(deflection_of_resting_bar(*gear, x_0=0.2, z=1, L=1.2, E=200e9, I=3.6e-5) * 1e3, 6)
    1.2
    """
    N = slipper_thrust(crosshead_force(θ, r, l, ω, m, A, p_1, p_e, c), r, l, θ) / z
    return simple_deflection(F=N, a=place_on_bar(x_0, r, l, θ), L=L, E=E, I=I)


@formula(
    "y = 2 F g³ b²/(3 E I (3 g + b)²), F = N(θ, r, l, ω, m, A, p_1, p_e, c)/z, g = max(a, L − a), b = "
    "L − g, a = a(x_0, r, l, θ)",
    cites=[ROARK.at("Table 8.1, case 1d")],
)
def deflection_of_held_bar(
    θ: Radians,
    r: Metres,
    l: Metres,  # noqa: E741
    ω: RadiansPerSecond,
    m: Kilograms,
    A: SquareMetres,
    p_1: Pascals,
    p_e: Pascals,
    c: Ratio,
    x_0: Metres,
    z: Ratio,
    L: Metres,
    E: Pascals,
    I: MetresToTheFourth,  # noqa: E741
) -> Metres:
    """Greatest deflection of a slide bar with fixed ends, the crosshead at one crank angle.

    y = 2 N a³ b²/(3 E I (3 a + b)²), N = N(θ)/z, a the longer part

    Arguments, limits and errors as ``deflection_of_resting_bar``. Returns [m].

    By hand, as there but fixed: F L³/(192 E I), a quarter: 0.3 mm.

    >>> gear = (math.pi / 2, 0.3, 0.5, 0.0, 300.0, 0.2, 17e5, 1e5, 1.0)
    >>> round(deflection_of_held_bar(*gear, x_0=0.2, z=1, L=1.2, E=200e9, I=3.6e-5) * 1e3, 6)
    0.3
    """
    N = slipper_thrust(crosshead_force(θ, r, l, ω, m, A, p_1, p_e, c), r, l, θ) / z
    return fixed_deflection(F=N, a=place_on_bar(x_0, r, l, θ), L=L, E=E, I=I)


@formula("y_n = L k", cites=[FIRST_PRINCIPLES])
def share_of_span(k: Ratio, L: Metres) -> Metres:
    """A deflection as a share of the span.

    y_n = L k

    ``k`` share; ``L`` span [m]. Returns [m].

    >>> round(share_of_span(k=0.001, L=1.3) * 1e3, 6)
    1.3
    """
    return k * L


@formula("x = |m − m_0|/m_0", cites=[FIRST_PRINCIPLES])
def mass_apart(m: Kilograms, m_0: Kilograms) -> Ratio:
    """Difference of a mass from the mass assumed, as a share of it.

    x = |m − m_0|/m_0

    ``m``, ``m_0`` [kg], m_0 above 0. Raises OutOfRange otherwise.

    >>> mass_apart(m=306.0, m_0=300.0)
    0.02
    """
    require(m_0 > 0 * m_0, "the mass assumed must be above 0")
    return abs(m - m_0) / m_0


@formula("N_1 = N/z", cites=[FIRST_PRINCIPLES])
def thrust_on_one_bar(N: Newtons, z: Ratio) -> Newtons:
    """Thrust on one of the bars that share it.

    N_1 = N/z

    ``N`` thrust of the crosshead [N]; ``z`` how many bars share it [-]. Returns [N]. Raises OutOfRange unless z is at
    least 1.

    >>> thrust_on_one_bar(N=60e3, z=2.0)
    30000.0
    """
    require(z >= 1, "one bar at least takes the thrust")
    return N / z
