"""A valve on its seats: load of the contact, thermal expansion, clearances."""

from __future__ import annotations

import math

from speclint import FIRST_PRINCIPLES, formula
from speclint.equations import Metres, Newtons, NewtonsPerMetre, Pascals, Radians, Ratio, SquareMetres


@formula("g = (ε_v − ε_b)(L − (d_u tan β_u − d_l tan β_l)/2)", cites=[FIRST_PRINCIPLES])
def beat_gap(
    ε_v: Ratio, ε_b: Ratio, L: Metres, d_u: Metres, β_u: Radians, d_l: Metres, β_l: Radians
) -> Metres:
    """Gap at one beat of a double-beat valve that expands more or less than the block with its seats.

    g = (ε_v − ε_b)(L − (d_u tan β_u − d_l tan β_l)/2)

    ``ε_v``, ``ε_b`` thermal strain of valve and block; ``L`` distance between the contacts along the axis; ``d_u``,
    ``d_l`` their diameters [m]; ``β_u``, ``β_l`` angles of the seats to their plane [rad]. Returns [m]:
    positive at the upper beat, negative at the lower. Cones that meet in one point on the axis open no gap.
    The seats, pressed into the block, are assumed to follow its bores.

    Hand working, flat seats: (0.0040 − 0.0030) × 100 mm = 0.1 mm.

    >>> flat = {"d_u": 0.15, "β_u": 0.0, "d_l": 0.14, "β_l": 0.0}
    >>> round(beat_gap(ε_v=0.0040, ε_b=0.0030, L=0.100, **flat) * 1e3, 6)
    0.1
    """
    return (ε_v - ε_b) * (L - (d_u * math.tan(β_u) - d_l * math.tan(β_l)) / 2)


@formula("g = |g_u|", cites=[FIRST_PRINCIPLES])
def size_of_gap(g_u: Metres) -> Metres:
    """Gap at one beat, without sign.

    g = |g_u|

    ``g_u`` gap, positive at the upper beat [m]. Returns [m].

    >>> size_of_gap(g_u=-1e-5)
    1e-05
    """
    return abs(g_u)


@formula("F = F_f + W + max(−F_v, 0)", cites=[FIRST_PRINCIPLES])
def seating_load(F_f: Newtons, W: Newtons, F_v: Newtons) -> Newtons:
    """Load of a shut valve on its seats.

    F = F_f + W + max(−F_v, 0)

    ``F_f`` springs, ``W`` weight that shuts [N]; ``F_v`` steam load, positive for lifting [N]. Returns [N].

    >>> seating_load(F_f=1000.0, W=50.0, F_v=-2000.0)
    3050.0
    """
    return F_f + W + (abs(F_v) - F_v) / 2


@formula("c = c_0 − o − H (ε_v − ε_b) − y", cites=[FIRST_PRINCIPLES])
def clearance_hot(c_0: Metres, o: Metres, H: Metres, ε_v: Ratio, ε_b: Ratio, y: Metres) -> Metres:
    """Clearance beyond a valve at its furthest, hot.

    c = c_0 − o − H (ε_v − ε_b) − y

    ``c_0`` clearance at full lift, cold; ``o`` overtravel of the gear; ``H`` length of the valve from its seat
    to the end that comes near; ``y`` wear that brings the other part nearer [m]; ``ε_v``, ``ε_b`` thermal strain
    of valve and block. Returns [m], negative where they touch.

    Hand working: 5 − 0.5 − 120 (0.004 − 0.003) − 1 = 3.38 mm.

    >>> round(clearance_hot(c_0=0.005, o=0.0005, H=0.120, ε_v=0.004, ε_b=0.003, y=0.001) * 1e3, 6)
    3.38
    """
    return c_0 - o - H * (ε_v - ε_b) - y


@formula("y_r = y + L ε + l ε_c + p A_p (L/(E A) + l/(E_c A_c))", cites=[FIRST_PRINCIPLES])
def piston_nearer(
    y: Metres,
    L: Metres,
    ε: Ratio,
    l: Metres,  # noqa: E741 - the symbol of the trade
    ε_c: Ratio,
    p: Pascals,
    A_p: SquareMetres,
    E: Pascals,
    A: SquareMetres,
    E_c: Pascals,
    A_c: SquareMetres,
) -> Metres:
    """How much nearer to the cylinder's end a piston comes than it is drawn: worn, both its rods grown and stretched.

    y_r = y + L ε + l ε_c + p A_p (L/(E A) + l/(E_c A_c))

    ``y`` wear of boxes and bearings, ``L`` length of the piston rod, ``l`` of the connecting rod [m]; ``ε``, ``ε_c``
    their growth; ``p`` pressure on the piston [Pa] and ``A_p`` its area [m²]; ``E``, ``E_c`` moduli [Pa] and ``A``,
    ``A_c`` sections of the rods [m²]. Returns [m]. Growth and stretch are all counted, whichever end it is.

    Hand working: 1 + 1000 × 0.0012 + 2000 × 0.0005 + 1.6 × 196 350 (1000/(200 000 × 5026.5) + 2000/(200 000 × 6283.2))
    = 1 + 1.2 + 1 + 0.3125 + 0.5 = 4.0125 mm.

    >>> rods = {"L": 1.0, "ε": 0.0012, "E": 200e9, "A": 5026.5e-6, "l": 2.0, "ε_c": 0.0005, "E_c": 200e9}
    >>> round(piston_nearer(y=0.001, p=1.6e6, A_p=0.19635, A_c=6283.2e-6, **rods) * 1e3, 4)
    4.0125
    """
    return y + L * ε + l * ε_c + p * A_p * (L / (E * A) + l / (E_c * A_c))


@formula("b_p = min(b, d)", cites=[FIRST_PRINCIPLES])
def least_piece(b: Metres, d: Metres) -> Metres:
    """Width of the smallest piece that a fracture can leave of a valve and its spindle.

    b_p = min(b, d)

    ``b`` smallest piece stated, ``d`` least diameter of the spindle, whose broken end is no wider [m]. Returns [m].

    >>> least_piece(b=0.030, d=0.017), least_piece(b=0.015, d=0.017)
    (0.017, 0.015)
    """
    return min(b, d)


@formula("h_g = h_s + F/k", cites=[FIRST_PRINCIPLES])
def lift_as_stop_gives(h_s: Metres, F: Newtons, k: NewtonsPerMetre) -> Metres:
    """Lift of a valve that is thrown against its stop, as far as that gives.

    h_g = h_s + F/k

    ``h_s`` lift at the stop [m]; ``F`` load on it [N]; ``k`` its stiffness, above 0 [N/m]. Returns [m].

    Hand working: 22 mm, 3 kN on 2 kN/mm: 1.5 mm more.

    >>> round(lift_as_stop_gives(h_s=0.022, F=3e3, k=2e6), 6)
    0.0235
    """
    return h_s + F / k
