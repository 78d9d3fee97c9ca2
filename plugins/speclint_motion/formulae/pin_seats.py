"""A pin pressed into its boss: what turns it, and what opens its seat."""

from __future__ import annotations

import math

from speclint import FIRST_PRINCIPLES, formula, require
from speclint.equations import Metres, NewtonMetres, Newtons, Pascals, Ratio


@formula("T_n = x μ F d/2", cites=[FIRST_PRINCIPLES])
def torque_to_hold(x: Ratio, mu: Ratio, F: Newtons, d: Metres) -> NewtonMetres:
    """Torque that a seat must hold so that the bearing turns on its pin, and not the pin in its seat.

    T_n = x μ F d/2

    ``x`` factor, ``mu`` friction of the bearing [-]; ``F`` force on it [N]; ``d`` its diameter [m]. Returns [N·m].

    Hand working: 2 × 0.15 × 100 kN × 0.1 m = 3 kN·m.

    >>> round(torque_to_hold(x=2.0, mu=0.15, F=100e3, d=0.2), 6)
    3000.0
    """
    return x * mu * F * d / 2


@formula("p_e = x · 2/π · (F/(D L) + 6 F (a + L/2)/(D L²))", cites=[FIRST_PRINCIPLES])
def pressure_lost_at_edge(x: Ratio, F: Newtons, a: Metres, D: Metres, L: Metres) -> Pascals:
    """Pressure lost at the edge of a seat by a force beside it, times a factor.

    p_e = x · 2/π · (F/(D L) + 6 F (a + L/2)/(D L²))

    ``x`` factor [-]; ``F`` force [N]; ``a`` its distance from the face of the boss, ``D`` diameter and ``L`` length of
    the seat [m]. Returns [Pa]. Raises OutOfRange unless D and L are above 0. As long as the seat is shut all round, one
    half of it presses more and the other less, by the cosine round the pin and evenly along it: 2/π of what the
    projected area of one half would take.

    Hand working: 100 kN, 50 mm before a seat of 100 × 100: 10 MPa, and 6 × 100 kN × 100 mm/(100 × 100²) = 60 MPa;
    2/π × 70 = 44.563 MPa.

    >>> round(pressure_lost_at_edge(x=1.0, F=100e3, a=0.05, D=0.1, L=0.1) / 1e6, 3)
    44.563
    """
    require(D > 0 and L > 0, "a seat has a diameter and a length above 0")
    return x * 2 / math.pi * (F / (D * L) + 6 * F * (a + L / 2) / (D * L**2))


@formula("p_a = x · 2/π · F/(D L)", cites=[FIRST_PRINCIPLES])
def pressure_lost_all_along(x: Ratio, F: Newtons, D: Metres, L: Metres) -> Pascals:
    """Pressure lost all along a seat by a force in its middle, times a factor.

    p_a = x · 2/π · F/(D L)

    As ``pressure_lost_at_edge``, without its bending. Raises OutOfRange unless D and L are above 0.

    Hand working: 325.1 kN on 105 × 120 mm²: 25.80 MPa, of which 2/π is 16.425 MPa; times 1.2, 19.710 MPa.

    >>> round(pressure_lost_all_along(x=1.2, F=325.1e3, D=0.105, L=0.120) / 1e6, 2)
    19.71
    """
    require(D > 0 and L > 0, "a seat has a diameter and a length above 0")
    return x * 2 / math.pi * F / (D * L)
