"""Crosshead and slide bars: deflection of the bar, reciprocating mass."""

from __future__ import annotations

import math  # noqa: F401 - used by the doctests below

from speclint import FIRST_PRINCIPLES, formula, require
from speclint.equations import Kilograms, Metres, Newtons, Pascals, Radians, Ratio
from speclint.handbook.cams import piston_travel


@formula("a = x_0 + r (1 − cos θ) + l (1 − √(1 − (r/l)² sin² θ))", cites=[FIRST_PRINCIPLES])
def place_on_bar(x_0: Metres, r: Metres, l: Metres, θ: Radians) -> Metres:  # noqa: E741
    """Distance of the crosshead from the bar's front support.

    a = x_0 + r (1 − cos θ) + l (1 − √(1 − (r/l)² sin² θ))

    ``x_0`` distance of the crosshead from that support at the front dead centre [m]; ``r``, ``l`` crank radius and rod
    length [m]; ``θ`` crank angle [rad]. Returns [m].

    By hand, r = 3, l = 5, crank upright: s = 4.

    >>> round(place_on_bar(x_0=1.0, r=3.0, l=5.0, θ=math.pi / 2), 9)
    5.0
    """
    return x_0 + piston_travel(r=r, l=l, θ=θ)


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

    ``m`` mass [kg]; ``m_0`` mass assumed [kg], above 0. Raises OutOfRange otherwise.

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


@formula("c = (b − t_w)/2", cites=[FIRST_PRINCIPLES])
def beside_the_web(b: Metres, t_w: Metres) -> Metres:
    """How far a slipper bears on a flange beyond its web, on one side.

    c = (b − t_w)/2

    ``b`` width on which the slipper bears [m]; ``t_w`` thickness of the web [m]. Returns [m].

    >>> round(beside_the_web(b=0.24, t_w=0.02), 9)
    0.11
    """
    return (b - t_w) / 2


@formula("σ = 3 p c²/t²", cites=[FIRST_PRINCIPLES])
def stress_of_flange(p: Pascals, c: Metres, t: Metres) -> Pascals:
    """Bending stress of a flange at its web, taken as a strip that is fixed there and pressed evenly.

    σ = 3 p c²/t²

    ``p`` pressure of the slipper [Pa]; ``c`` how far it bears beyond the web [m]; ``t`` thickness of the flange [m],
    above 0. Raises OutOfRange otherwise. Returns [Pa].

    Hand working: 0.6 MPa, 110 and 25 mm: 3 × 0.6 × 12 100/625 = 34.848 MPa.

    >>> round(stress_of_flange(p=0.6e6, c=0.110, t=0.025) / 1e6, 6)
    34.848
    """
    require(t > 0 * t, "the flange must have a thickness")
    return 3 * p * c**2 / t**2
