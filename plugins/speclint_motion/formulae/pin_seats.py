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

    ``x`` factor [-]; ``F`` force [N]; ``D`` diameter of the seat [m]; ``L`` length of the seat [m]. Returns [Pa]: as
    ``pressure_lost_at_edge``, without its bending. Raises OutOfRange unless D and L are above 0.

    Hand working: 325.1 kN on 105 × 120 mm²: 25.80 MPa, of which 2/π is 16.425 MPa; times 1.2, 19.710 MPa.

    >>> round(pressure_lost_all_along(x=1.2, F=325.1e3, D=0.105, L=0.120) / 1e6, 2)
    19.71
    """
    require(D > 0 and L > 0, "a seat has a diameter and a length above 0")
    return x * 2 / math.pi * F / (D * L)


@formula("L_m = k d_s", cites=[FIRST_PRINCIPLES])
def longest_seat(k: Ratio, d_s: Metres) -> Metres:
    """Greatest length of a seat that is usual for its diameter.

    L_m = k d_s

    ``k`` length over diameter [-]; ``d_s`` diameter of the seat [m]. Returns [m].

    >>> round(longest_seat(k=1.75, d_s=0.2), 6)
    0.35
    """
    return k * d_s


@formula("y_e = a + L", cites=[FIRST_PRINCIPLES])
def end_of_seat(a: Metres, L: Metres) -> Metres:
    """Distance of the end of a pin's seat from the plane in which the rods move.

    y_e = a + L

    ``a`` from that plane to the face that holds the pin; ``L`` length of the seat [m]. Returns [m].

    >>> round(end_of_seat(a=0.125, L=0.230), 6)
    0.355
    """
    return a + L


@formula("y_r = y_a − y_f", cites=[FIRST_PRINCIPLES])
def room_outside(y_a: Metres, y_f: Metres) -> Metres:
    """Room from the plane of rods that run outside of the frames to the frame on their side.

    y_r = y_a − y_f

    ``y_a`` of the rods, ``y_f`` of the frame, both from the middle of the engine [m]. Returns [m].

    >>> round(room_outside(y_a=0.880, y_f=0.470), 6)
    0.41
    """
    return y_a - y_f


@formula("y_r = y_a + y_f", cites=[FIRST_PRINCIPLES])
def room_inside(y_a: Metres, y_f: Metres) -> Metres:
    """Room from the plane of rods that run between the frames to the frame that is farther from them.

    y_r = y_a + y_f

    ``y_a`` of the rods, ``y_f`` of a frame, both from the middle of the engine [m]. Returns [m].

    >>> round(room_inside(y_a=0.3, y_f=0.47), 6)
    0.77
    """
    return y_a + y_f
