"""Contact of a lens ring with its seats."""

from __future__ import annotations

import math

from speclint import FIRST_PRINCIPLES, formula, require
from speclint.equations import Metres, Newtons, NewtonsPerMetre, Pascals, Radians, Ratio


@formula("L = π D", cites=[FIRST_PRINCIPLES])
def round_the_seat(D: Metres) -> Metres:
    """Length of the circle of contact.

    L = π D

    D: diameter of the circle, m. Returns m.

    >>> round(round_the_seat(D=0.1), 4)
    0.3142
    """
    return math.pi * D


@formula("N = q L", cites=[FIRST_PRINCIPLES])
def load_square_to_seat(q: NewtonsPerMetre, L: Metres) -> Newtons:
    """Load normal to the seat round the whole circle.

    N = q L

    q: line load, N/m. L: length of the circle of contact, m. Returns N.

    >>> load_square_to_seat(q=600e3, L=0.5)
    300000.0
    """
    return q * L


@formula("e = |D_c − D|", cites=[FIRST_PRINCIPLES])
def circle_missed(D_c: Metres, D: Metres) -> Metres:
    """Difference of the stated circle of contact from that of the geometry.

    e = |D_c − D|

    D_c: stated diameter of contact, m. D: diameter at which sphere and cone touch, m. Returns m.

    >>> round(circle_missed(D_c=0.150, D=0.1503) * 1e3, 3)
    0.3
    """
    return abs(D_c - D)


@formula("a = R (arcsin(D_2/(2 R)) − arcsin(D_1/(2 R)))", cites=[FIRST_PRINCIPLES])
def arc_between(R: Metres, D_1: Metres, D_2: Metres) -> Metres:
    """Length along the spherical face of a ring from one circle to a larger one.

    a = R (arcsin(D_2/(2 R)) − arcsin(D_1/(2 R)))

    R: radius of the sphere, m. D_1, D_2: diameters of the smaller and of the larger circle, m. Returns m. Raises
    OutOfRange where a circle is larger than the sphere.

    Hand working: a sphere of 180 mm from its circle of 180 mm, at 30°, to that of 205 mm: sin = 0.56944 at 34.711°,
    180 · 4.711° · π/180° = 14.80 mm.

    >>> round(arc_between(R=0.18, D_1=0.18, D_2=0.205) * 1e3, 2)
    14.8
    """
    require(D_1 <= 2 * R and D_2 <= 2 * R, f"a sphere of {R * 1e3:.4g} mm has no circle so large")
    require(D_1 >= 0 and D_2 >= 0, "a diameter lies below 0")
    return R * (math.asin(D_2 / (2 * R)) - math.asin(D_1 / (2 * R)))


@formula("a = (D_2 − D_1)/(2 sin(φ))", cites=[FIRST_PRINCIPLES])
def slant_between(D_1: Metres, D_2: Metres, phi: Radians) -> Metres:
    """Length along the cone of a seat from one circle to a larger one.

    a = (D_2 − D_1)/(2 sin(φ))

    D_1, D_2: diameters of the smaller and of the larger circle, m. phi: half angle of the cone, rad, above 0 and no
    more than a right angle. Returns m. Raises OutOfRange outside of these angles.

    Hand working: a cone of 30° to its axis from 100 mm to 120 mm: 20/(2 · 0.5) = 20 mm.

    >>> round(slant_between(D_1=0.100, D_2=0.120, phi=math.radians(30.0)) * 1e3, 6)
    20.0
    """
    require(0 < phi <= math.pi / 2, f"half angle {phi:.4g} rad of the seat is not between 0 and 90°")
    return (D_2 - D_1) / (2 * math.sin(phi))


@formula("w = min(w_s, 2 a_i, 2 a_o)", cites=[FIRST_PRINCIPLES])
def face_of_ring(w_s: Metres, a_i: Metres, a_o: Metres) -> Metres:
    """Width of the spherical face with the contact in the middle, that the ring has: as stated, and as its edges leave.

    w = min(w_s, 2 a_i, 2 a_o)

    w_s: stated width, m. a_i, a_o: arcs from the circle of contact to the bore and to the outside, m. Returns m.

    >>> face_of_ring(w_s=0.06, a_i=0.013, a_o=0.0148)
    0.026
    """
    return min(w_s, 2 * a_i, 2 * a_o)


@formula("p_perm = k R_p", cites=[FIRST_PRINCIPLES])
def permitted_contact(k: Ratio, R_p: Pascals) -> Pascals:
    """Permitted mean contact pressure: at 2.8 times proof stress the contact is fully plastic.

    p_perm = k R_p

    k: multiple. R_p: least 0.2 % proof stress, Pa. Returns Pa.

    >>> round(permitted_contact(k=2.8, R_p=250e6) / 1e6)
    700
    """
    return k * R_p
