"""Flow area of conical-seated poppet valves of one or two beats, and the steam load on them when shut.

A seat is a cone; ``β`` is the angle of its side to the plane of the seat (0 flat, 45° usual), ``d`` the
smaller diameter of the contact, ``w`` the width of contact along the side. The valve lifts along its axis,
larger end foremost. Derivation, with the seat's lower edge as origin: from the valve's lower edge, h above the
seat's, the shortest line to the seat meets it at a right angle a length h sin β up the side.

- While that is not beyond the contact, h ≤ w/sin β, the passage is the frustum of side h cos β between the
  diameters d and d + 2 h sin β cos β: A = π h cos β (d + h sin β cos β).
- Beyond, the nearest place is the seat's upper edge: a frustum of side √((h − w sin β)² + (w cos β)²)
  between d and d + 2 w cos β: A = π (d + w cos β) √((h − w sin β)² + (w cos β)²).

Both give π (d + w cos β) w cot β at h = w/sin β, where the slope alone drops. A flat seat (β = 0) never
leaves the first stage, and a knife-edge (w = 0) is always in the second: both are then π d h. The frustum of
truly least area lies slightly off the normal one; up to h = d/8 it is less by below 0.2 % from 45° up, and
by below 0.7 % at any angle. Valve and seat are taken to end where their contact ends: a valve cone carried
on inwards passes less, π h cos β (d − h sin β cos β).
"""

from __future__ import annotations

import math

from speclint.equations import (
    FIRST_PRINCIPLES,
    Metres,
    Newtons,
    Pascals,
    Radians,
    Ratio,
    Source,
    SquareMetres,
    formula,
    require,
)

HEYWOOD = Source(
    "J. B. Heywood, Internal Combustion Engine Fundamentals", "1988", "equations 6.7 to 6.9", memory=True
)
LARDNER = Source("D. Lardner, The Steam Engine Explained and Illustrated", "7th ed., 1840", "art. 131")
#: Valves stick in steeper seats (common practice; Lardner gives 45° as the best).
_STEEPEST = math.radians(75)


@formula(
    "A = π h cos β (d + h sin β cos β) if h sin β ≤ w, else π (d + w cos β) √((h − w sin β)² + (w cos β)²)",
    cites=[HEYWOOD, FIRST_PRINCIPLES],
)
def beat_area(h: Metres, d: Metres, w: Metres, β: Radians) -> SquareMetres:
    """Flow area of one beat at a lift, before any throat.

    A = π h cos β (d + h sin β cos β) if h sin β ≤ w, else π (d + w cos β) √((h − w sin β)² + (w cos β)²)

    ``h`` lift [m], not below 0; ``d`` smaller diameter of the contact [m], above 0; ``w`` width of contact
    along the cone [m], not below 0; ``β`` angle of the seat to its plane [rad], 0 to 75°. Returns [m²].
    Raises OutOfRange outside.

    By hand, flat seat: π · 0.1 · 0.01 m².

    >>> round(beat_area(h=0.01, d=0.10, w=0.003, β=0.0) * 1e6, 2)
    3141.59
    """
    require(h >= 0, "the lift must not be below 0")
    require(d > 0, "the diameter of the seat must be above 0")
    require(w >= 0, "the width of contact must not be below 0")
    require(0 <= β <= _STEEPEST, f"seat angle {math.degrees(β):.4g}° lies outside 0 to 75°")
    sin, cos = math.sin(β), math.cos(β)
    if h * sin <= w:
        return math.pi * h * cos * (d + h * sin * cos)
    side: float = ((h - w * sin) ** 2 + (w * cos) ** 2) ** 0.5
    return math.pi * (d + w * cos) * side


@formula("T = π (D² − d²)/4 − A_o", cites=[FIRST_PRINCIPLES, HEYWOOD])
def throat_area(D: Metres, d: Metres, A_o: SquareMetres) -> SquareMetres:
    """Area of the opening that feeds a beat, less what stands in it.

    T = π (D² − d²)/4 − A_o

    ``D`` bore [m]; ``d`` diameter of a round body in its middle (spindle, hub or the valve itself), 0 if none [m];
    ``A_o`` area of ribs and whatever else stands across [m²]. Returns [m²]. Raises OutOfRange unless 0 ≤ d < D, A_o is
    not below 0, and some opening is left.

    By hand: π (0.15² − 0.04²)/4 − 3 · 0.055 · 0.008 = 0.017671 − 0.001257 − 0.00132.

    >>> round(throat_area(D=0.150, d=0.040, A_o=3 * 0.055 * 0.008), 6)
    0.015095
    """
    require(0 <= d < D, "the body in the middle of a throat must be smaller than its bore")
    require(A_o >= 0, "the area of the ribs must not be below 0")
    area = math.pi * (D**2 - d**2) / 4 - A_o
    require(area > 0, "hub and ribs leave no opening in the throat")
    return area


@formula("A = min(A_b, T)", cites=[FIRST_PRINCIPLES, HEYWOOD])
def single_beat_flow_area(A_b: SquareMetres, T: SquareMetres) -> SquareMetres:
    """Flow area of one beat: never more than the throat that feeds it.

    A = min(A_b, T)

    ``A_b`` area of the beat at its lift and ``T`` area of its throat [m²]. Returns [m²].

    >>> single_beat_flow_area(0.012, 0.010)
    0.01
    """
    return min(A_b, T)


@formula("A = min(A_u, T_u) + min(A_l, T_l)", cites=[FIRST_PRINCIPLES])
def double_beat_flow_area(
    A_u: SquareMetres, T_u: SquareMetres, A_l: SquareMetres, T_l: SquareMetres
) -> SquareMetres:
    """Flow area of a double-beat valve: each beat with its own throat.

    A = min(A_u, T_u) + min(A_l, T_l)

    ``A_u``, ``A_l`` area of the upper and the lower beat at the lift; ``T_u``, ``T_l`` area of the throat of
    each [m²]. What one beat passes through the valve's own middle has that middle as its throat.
    Returns [m²].

    >>> round(double_beat_flow_area(0.012, 0.010, 0.009, 0.011), 6)
    0.019
    """
    return min(A_u, T_u) + min(A_l, T_l)


@formula(
    "h = 2 T/(π cos β (d + √(d² + 4 T sin β/π))) if T sin β ≤ π w cos β (d + w cos β), else w sin β + "
    "√((T/(π (d + w cos β)))² − (w cos β)²)",
    cites=[HEYWOOD, FIRST_PRINCIPLES],
)
def lift_for_area(T: SquareMetres, d: Metres, w: Metres, β: Radians) -> Metres:
    """Lift at which one beat passes as much as its throat: a greater lift passes no more.

    h where ``beat_area`` (h) = T

    ``T`` area of the throat [m²], above 0. Other arguments and limits as ``beat_area``. Returns [m]. The area rises
    with the lift throughout, so there is one such lift; it is solved in closed form.

    A flat single beat with an open throat, π d²/4: d/4.

    >>> round(lift_for_area(T=math.pi * 0.16**2 / 4, d=0.16, w=0.003, β=0.0), 9)
    0.04
    """
    require(T > 0, "the area of the throat must be above 0")
    beat_area(0 * d, d, w, β)  # raises outside the limits
    sin, cos = math.sin(β), math.cos(β)
    if T * sin <= math.pi * w * cos * (d + w * cos):
        # π h cos β (d + h sin β cos β) = T, a quadratic in h, written so that sin β may be 0
        root: float = (d**2 + 4 * sin * T / math.pi) ** 0.5
        return 2 * T / (math.pi * cos * (d + root))
    side = T / (math.pi * (d + w * cos))
    rise: float = (side**2 - (w * cos) ** 2) ** 0.5
    return w * sin + rise


@formula("F = Δp π (d_u² − d_l²)/4", cites=[FIRST_PRINCIPLES])
def unbalanced_load(Δp: Pascals, d_u: Metres, d_l: Metres) -> Newtons:
    """Steam load on a shut double-beat valve, along its axis.

    F = Δp π (d_u² − d_l²)/4

    ``Δp`` pressure round the valve, between its beats, less that beyond them [Pa] (the other way round for a
    valve fed from beyond its beats: negative); ``d_u``, ``d_l`` sealing diameters of the beat at the end
    towards which a positive load acts, and of the other [m]. Returns [N]. Where on the contact the valve seals
    moves each diameter by 2 w cos β: calculate with both ends. A single beat has d_l = 0.

    By hand: 1.4 MPa, 160 and 150 mm: 1.4 · π (25 600 − 22 500)/4 = 3408.6 N.

    >>> round(unbalanced_load(1.4e6, 0.160, 0.150), 1)
    3408.6
    """
    require(d_u >= 0, "a sealing diameter must not be below 0")
    require(d_l >= 0, "a sealing diameter must not be below 0")
    return Δp * math.pi * (d_u**2 - d_l**2) / 4


@formula("σ = F/(π (d + w cos β) w cos β)", cites=[FIRST_PRINCIPLES])
def seat_bearing_stress(F: Newtons, d: Metres, w: Metres, β: Radians) -> Pascals:
    """Bearing stress of a conical seat on its projected contact area.

    σ = F/(π (d + w cos β) w cos β)

    ``F`` axial load [N]; ``d`` smaller diameter and ``w`` width along the cone of the contact [m], above 0;
    ``β`` angle of the seat to its plane [rad], 0 to 75°. Returns [Pa]. On the projected area the mean pressure
    equals that normal to the cone without friction. Raises OutOfRange outside.

    By hand: 4308.6 N on 150 mm, 2.5 mm flat: 4308.6/(π · 0.1525 · 0.0025) = 3.597 MPa.

    >>> round(seat_bearing_stress(4308.6, 0.150, 0.0025, 0.0) / 1e6, 3)
    3.597
    """
    require(d > 0, "the diameter of the seat must be above 0")
    require(w > 0, "the width of contact must be above 0")
    require(0 <= β <= _STEEPEST, f"seat angle {math.degrees(β):.4g}° lies outside 0 to 75°")
    across = w * math.cos(β)
    return F / (math.pi * (d + across) * across)


@formula("k = A/A_1", cites=[FIRST_PRINCIPLES])
def gain_of_second_beat(A: SquareMetres, A_1: SquareMetres) -> Ratio:
    """Flow of a double-beat valve over that of one of its beats, about 2 at small lift.

    k = A/A_1

    ``A`` flow area of the valve [m²]; ``A_1`` flow area of the single beat at the same lift [m²], above 0. Returns a
    ratio. Raises OutOfRange outside.

    >>> round(gain_of_second_beat(0.018, 0.010), 9)
    1.8
    """
    require(A_1 > 0, "the area of the single beat must be above 0")
    return A / A_1
