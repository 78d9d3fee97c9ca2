"""Zones of geometrical tolerances, and holes that match those of another part."""

from __future__ import annotations

import math

from speclint import FIRST_PRINCIPLES, formula, require
from speclint.equations import Metres, Radians, Ratio
from speclint_fits.sources import ASME_Y14_5, ISO_2692


@formula("T = 2 √(x² + x²)", cites=[FIRST_PRINCIPLES])
def zone_of_coordinates(x: Metres) -> Metres:
    """Diameter of the round zone that holds an axis with an error of each of two coordinates.

    T = 2 √(x² + x²)

    ``x`` error either way [m]. Returns [m].

    Hand working: ±0.3 mm: 2 × 0.4243 = 0.849 mm.

    >>> round(zone_of_coordinates(x=0.0003) * 1e3, 3)
    0.849
    """
    zone: Metres = 2 * (x**2 + x**2) ** 0.5
    return zone


@formula("T_n = T_1 k + T_2 + 2 r Δθ", cites=[ASME_Y14_5, FIRST_PRINCIPLES])
def zones_together(T_1: Metres, k: Ratio, T_2: Metres, r: Metres, Δθ: Radians) -> Metres:
    """What two zones of position and an error of the first angle take of the room of a stud in its hole.

    T_n = T_1 k + T_2 + 2 r Δθ

    ``T_1`` zone of the tapped hole, ``k`` by how much it opens at the top of the plate; ``T_2`` zone of the clearance
    hole; ``r`` radius of the circle [m]; ``Δθ`` error of the first angle [rad]. Returns [m], on the diameter.

    Hand working: 0.8 + 0.8 = 1.6 mm projected; 0.8 × (1 + 80/36) + 0.8 = 3.378 mm not projected.

    >>> round(zones_together(T_1=0.0008, k=1 + 80 / 36, T_2=0.0008, r=0.3, Δθ=0.0) * 1e3, 3)
    3.378
    """
    return T_1 * k + T_2 + 2 * r * Δθ


@formula("e = √((x_1 − x_2)² + (y_1 − y_2)²)", cites=[FIRST_PRINCIPLES])
def holes_apart(x_1: Metres, x_2: Metres, y_1: Metres, y_2: Metres) -> Metres:
    """How far two holes that should lie under each other are apart.

    e = √((x_1 − x_2)² + (y_1 − y_2)²)

    ``x_1``, ``y_1`` place of the one, ``x_2``, ``y_2`` of the other [m]. Returns [m].

    >>> round(holes_apart(x_1=0.1003, x_2=0.1, y_1=0.0504, y_2=0.05) * 1e3, 6)
    0.5
    """
    apart: Metres = ((x_1 - x_2) ** 2 + (y_1 - y_2) ** 2) ** 0.5
    return apart


@formula("T_n = T_1 k + T_2 + 2 e", cites=[ASME_Y14_5, FIRST_PRINCIPLES])
def zones_beside(T_1: Metres, k: Ratio, T_2: Metres, e: Metres) -> Metres:
    """What two zones of position and the distance of their places take of the room of a stud in its hole.

    T_n = T_1 k + T_2 + 2 e

    ``T_1`` zone of the tapped hole, ``k`` by how much it opens at the top of the plate; ``T_2`` zone of the clearance
    hole; ``e`` distance of the places [m]. Returns [m], on the diameter.

    >>> round(zones_beside(T_1=0.0008, k=1.0, T_2=0.0008, e=0.0001) * 1e3, 6)
    1.8
    """
    return T_1 * k + T_2 + 2 * e


@formula("T_h = T_n + 2 r Δε", cites=[FIRST_PRINCIPLES])
def zones_hot(T_n: Metres, r: Metres, Δε: Ratio) -> Metres:
    """What the zones of two patterns take of the room of a stud, and their unlike growth beside.

    T_h = T_n + 2 r Δε

    ``T_n`` what the zones take, cold, ``r`` radius of the circle [m]; ``Δε`` by how much one part grows more than the
    other. Returns [m], on the diameter.

    >>> round(zones_hot(T_n=0.0016, r=0.3, Δε=0.0006) * 1e3, 6)
    1.96
    """
    return T_n + 2 * r * Δε


@formula("Δε = |ε_1 − ε_2|", cites=[FIRST_PRINCIPLES])
def unlike_growth(ε_1: Ratio, ε_2: Ratio) -> Ratio:
    """By how much one of two parts grows more than the other.

    Δε = |ε_1 − ε_2|

    ``ε_1``, ``ε_2`` growth of each since it was drawn. Returns a ratio.

    >>> round(unlike_growth(ε_1=0.0020, ε_2=0.0025), 6)
    0.0005
    """
    return abs(ε_1 - ε_2)


@formula("k = 1 + 2 P/D", cites=[ASME_Y14_5])
def opening_of_zone(P: Metres, D: Metres) -> Ratio:
    """By how much the zone of a tapped hole opens at the far side of the plate that its stud holds.

    k = 1 + 2 P/D

    ``P`` thickness of that plate; ``D`` depth of the thread [m]. Returns a ratio. Raises OutOfRange unless D > 0.

    >>> round(opening_of_zone(P=0.040, D=0.036), 4)
    3.2222
    """
    require(D > 0, "the thread has no depth")
    return 1 + 2 * P / D


@formula("P_x = max(P − h, 0)", cites=[FIRST_PRINCIPLES])
def beyond_projection(P: Metres, h: Metres) -> Metres:
    """How much of a plate stands beyond the height to which the zone of a tapped hole is projected.

    P_x = max(P − h, 0)

    ``P`` thickness of the plate; ``h`` height of the projection [m]. Returns [m].

    >>> round(beyond_projection(P=0.040, h=0.030) * 1e3, 6)
    10.0
    """
    return max(P - h, 0.0)


@formula("Δθ = 2 |arctan(tan(z (θ_1 − θ_2)/2))|/z", cites=[FIRST_PRINCIPLES])
def angles_apart(θ_1: Radians, θ_2: Radians, z: Ratio) -> Radians:
    """By how much two patterns of holes on a circle are turned against each other, to the nearest hole.

    Δθ = 2 |arctan(tan(z (θ_1 − θ_2)/2))|/z

    ``θ_1``, ``θ_2`` first angles [rad]; ``z`` how many holes, evenly spaced. Returns [rad], at most π/z.
    Raises OutOfRange unless z is above 0.

    Hand working, twelve holes, 30° apart: 0 and 0.25° are 0.25° apart, 0 and 29.75° as well, 0 and 30° not at all.

    >>> [round(math.degrees(angles_apart(θ_1=0.0, θ_2=math.radians(a), z=12)), 6) for a in (0.25, 29.75, 30)]
    [0.25, 0.25, 0.0]
    """
    require(z > 0, "the number of holes must be above 0")
    return 2 * abs(math.atan(math.tan(z * (θ_1 - θ_2) / 2))) / z


@formula("c = H − F", cites=[FIRST_PRINCIPLES])
def room_in_hole(H: Metres, F: Metres) -> Metres:
    """Room of a stud in its clearance hole.

    c = H − F

    ``H`` hole, ``F`` stud [m]. Returns [m].

    >>> round(room_in_hole(H=0.026, F=0.024) * 1e3, 6)
    2.0
    """
    return H - F


@formula("c = c_0 − t_1 − t_2", cites=[FIRST_PRINCIPLES])
def room_for_form(c_0: Metres, t_1: Metres, t_2: Metres) -> Metres:
    """Clearance or interference that is left of a fit whose parts are out of form.

    c = c_0 − t_1 − t_2

    ``c_0`` clearance or interference by the sizes [m]; ``t_1``, ``t_2`` zones of form of hole and shaft [m]. They are
    of straightness in a sliding fit; of roundness in a press fit, where the radius of each is out by half of its zone
    either way. Returns [m].

    >>> round(room_for_form(c_0=0.03e-3, t_1=0.01e-3, t_2=0.01e-3) * 1e3, 6)
    0.01
    """
    return c_0 - t_1 - t_2


@formula("T = |x − x_m|", cites=[ISO_2692])
def departure_from_material(x: Metres, x_m: Metres) -> Metres:
    """By how much a size has left that of maximum material.

    T = |x − x_m|

    ``x`` the size; ``x_m`` at maximum material: the least of a hole, the greatest of a shaft [m]. Returns [m].

    >>> round(departure_from_material(x=22.02e-3, x_m=22e-3) * 1e3, 6)
    0.02
    """
    return abs(x - x_m)


@formula("e = t/2", cites=[FIRST_PRINCIPLES])
def half_of_zone(t: Metres) -> Metres:
    """How far either way a zone of form, place or run-out lets a face stand off.

    e = t/2

    ``t`` width of the zone [m]. Returns [m].

    >>> round(half_of_zone(t=0.4e-3) * 1e3, 6)
    0.2
    """
    return t / 2


@formula("e = (f + q)/2", cites=[FIRST_PRINCIPLES])
def zone_of_faces(f: Metres, q: Metres) -> Metres:
    """How far the faces of a pad or a cut-out stand off what its size says, as in the interference of a locked pad.

    e = (f + q)/2

    ``f`` flatness of the faces, ``q`` their squareness over their height [m]. Returns [m].

    >>> round(zone_of_faces(f=0.01e-3, q=0.02e-3) * 1e3, 6)
    0.015
    """
    return (f + q) / 2


@formula("z = k e", cites=[FIRST_PRINCIPLES])
def part_of_zone(k: Ratio, e: Metres) -> Metres:
    """What a face that stands off takes of a gap.

    z = k e

    ``k`` size of the effect of its link [-]; ``e`` by how much it stands off [m]. Returns [m].

    >>> round(part_of_zone(k=0.5, e=0.1e-3) * 1e3, 6)
    0.05
    """
    return k * e


@formula("g_z = g + z", cites=[FIRST_PRINCIPLES])
def gap_at_zone(g: Metres, z: Metres) -> Metres:
    """Gap of a chain with the zones of its faces.

    g_z = g + z

    ``g`` gap by the sizes; ``z`` what the zones add, below 0 where they take it [m]. Returns [m].

    >>> round(gap_at_zone(g=2.5e-3, z=-0.2e-3) * 1e3, 6)
    2.3
    """
    return g + z
