"""Tapped holes: depth, edge distance, and the stress of the metal round a loaded thread."""

from __future__ import annotations

import math

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, formula, require
from speclint.equations import Metres, Newtons, Pascals, Radians, Ratio


@formula("L = s + L_e + r", cites=[FIRST_PRINCIPLES])
def depth_needed(s: Metres, L_e: Metres, r: Metres) -> Metres:
    """Depth that a tapped hole needs below the face.

    L = s + L_e + r

    s: depth at which the thread begins, m. L_e: engaged length, m. r: run-out for tap and chips, m.
    Returns m.

    >>> round(depth_needed(s=0.005, L_e=0.036, r=0.010), 3)
    0.051
    """
    return s + L_e + r


@formula("L_e = min(l, L − s − r)", cites=[FIRST_PRINCIPLES])
def engaged_in_hole(l: Metres, L: Metres, s: Metres, r: Metres) -> Metres:  # noqa: E741 - symbol of a length
    """Length of full thread that a stud can find in its hole, however long the engagement stated.

    L_e = min(l, L − s − r)

    l: engagement stated, m. L: depth of the drilled hole below the face, m. s: depth at which the thread begins,
    m. r: depth at the bottom that the tap leaves without full thread, nothing in a hole that goes through, m.
    Returns m; OutOfRange where the hole has no full thread.

    >>> round(engaged_in_hole(l=0.036, L=0.020, s=0.005, r=0.0), 4)
    0.015
    """
    require(
        s + r < L,
        f"a hole {L * 1e3:.4g} mm deep has no full thread below {s * 1e3:.4g} mm and above the last {r * 1e3:.4g} mm",
    )
    return min(l, L - s - r)


@formula("e = k d", cites=[COMMON_PRACTICE])
def least_edge_distance(d: Metres, k: Ratio) -> Metres:
    """Least distance from the centre of a tapped hole to a bore or an edge.

    e = k d

    d: nominal diameter, m. k: number of diameters. Returns m.

    >>> round(least_edge_distance(d=0.024, k=0.7), 4)
    0.0168
    """
    return k * d


@formula("q = F tan(α)/(π d_2 L_e)", cites=[FIRST_PRINCIPLES])
def bursting_pressure(F: Newtons, alpha: Radians, d_2: Metres, L_e: Metres) -> Pascals:
    """Radial pressure of the flanks of a loaded thread on the metal round its hole.

    q = F tan(α)/(π d_2 L_e)

    F: load of the stud, N. alpha: flank angle, rad. d_2: pitch diameter, m. L_e: engaged length, m. Returns
    Pa. Friction on the flanks lowers it and is neglected.

    Hand working: 130 kN tan 30° over π × 22.05 × 36 mm²: 75 056/2493.8 = 30.10 MPa.

    >>> round(bursting_pressure(130e3, math.radians(30), 0.02205, 0.036) / 1e6, 2)
    30.1
    """
    return F * math.tan(alpha) / (math.pi * d_2 * L_e)


@formula("D = 2 e", cites=[FIRST_PRINCIPLES])
def ring_round_hole(e: Metres) -> Metres:
    """Outside diameter of the ring of metal round a hole that just reaches the edge.

    D = 2 e

    e: distance from the centre to the edge, m. Returns m.

    >>> ring_round_hole(e=0.030)
    0.06
    """
    return 2 * e


@formula("k = L_e/d", cites=[COMMON_PRACTICE])
def engaged_diameters(L_e: Metres, d: Metres) -> Ratio:
    """Engaged length in diameters; usual are 1 in steel, 1.5 in iron, 2 in light alloy.

    k = L_e/d

    L_e: engaged length, m. d: nominal diameter, m. Returns a ratio.

    >>> round(engaged_diameters(L_e=0.036, d=0.024), 2)
    1.5
    """
    return L_e / d


@formula("D_in = D_b − d_h", cites=[FIRST_PRINCIPLES])
def inside_of_holes(D_b: Metres, d_h: Metres) -> Metres:
    """Diameter inside the stud holes.

    D_in = D_b − d_h

    D_b: stud circle, m. d_h: hole, m. Returns m.

    >>> round(inside_of_holes(D_b=0.700, d_h=0.026), 3)
    0.674
    """
    return D_b - d_h


@formula("D_out = D_b + D_w", cites=[FIRST_PRINCIPLES])
def outside_of_nuts(D_b: Metres, D_w: Metres) -> Metres:
    """Diameter outside the nuts' faces.

    D_out = D_b + D_w

    D_b: stud circle, m. D_w: face under a nut, m. Returns m.

    >>> round(outside_of_nuts(D_b=0.700, D_w=0.036), 3)
    0.736
    """
    return D_b + D_w
