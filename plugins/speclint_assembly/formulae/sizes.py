"""Greatest sizes of parts as they are put in, and the room that tools need."""

from __future__ import annotations

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, formula
from speclint.equations import Metres, Ratio


@formula("c = W − w", cites=[FIRST_PRINCIPLES])
def room_left(W: Metres, w: Metres) -> Metres:
    """Room left beside the part.

    c = W − w

    ``W`` clear size of what the part goes through, ``w`` size of the part [m], both diameters or both lengths.
    Returns [m], below 0 where the part does not pass.

    >>> round(room_left(W=0.2300, w=0.1702), 6)
    0.0598
    """
    return W - w


@formula("f = f_0 + t", cites=[FIRST_PRINCIPLES])
def filled_together(f_0: Metres, t: Metres) -> Metres:
    """Thickness of the seals at both ends of a pipe, added up seal by seal.

    f = f_0 + t

    ``f_0`` of the seals before, ``t`` thickness of one more [m]. Returns [m].

    >>> round(filled_together(f_0=0.0012, t=0.003), 6)
    0.0042
    """
    return f_0 + t


@formula("e = G − L − f", cites=[FIRST_PRINCIPLES])
def beyond_seals(G: Metres, L: Metres, f: Metres) -> Metres:
    """Gap left between the faces of a pipe beyond its seals.

    e = G − L − f

    ``G`` distance of the faces between which the pipe is put, ``L`` of its own faces, ``f`` thickness of its seals [m].
    Returns [m], below 0 where pipe and seals are longer than their place.

    >>> round(beyond_seals(G=1.304, L=1.300, f=0.0024), 6)
    0.0016
    """
    return G - L - f


@formula("u = −e", cites=[FIRST_PRINCIPLES])
def beyond_place(e: Metres) -> Metres:
    """How much longer a pipe and its seals are than their place.

    u = −e

    ``e`` gap left between the faces beyond the seals [m]. Returns [m], below 0 where a gap is left.

    >>> round(beyond_place(e=-0.0509), 6)
    0.0509
    """
    return -e


@formula("e_a = Y_j − Y", cites=[FIRST_PRINCIPLES])
def left_of_joint(Y_j: Metres, Y: Metres) -> Metres:
    """What a sliding joint gives beyond what the hot pipe takes of it.

    e_a = Y_j − Y

    ``Y_j`` movement for which the joint is designed, ``Y`` which the hot pipe takes of it [m]. Returns [m].

    >>> round(left_of_joint(Y_j=0.010, Y=0.0049), 6)
    0.0051
    """
    return Y_j - Y


@formula("l_m = s − 2 t", cites=[COMMON_PRACTICE])
def between_rims(s: Metres, t: Metres) -> Metres:
    """Greatest opening in a side of a box.

    l_m = s − 2 t

    ``s`` size of the side, ``t`` metal left on each side of the opening [m]. Returns [m].

    >>> round(between_rims(s=0.36, t=0.005), 6)
    0.35
    """
    return s - 2 * t


@formula("H_v = H + a", cites=[FIRST_PRINCIPLES])
def height_over_beats(H: Metres, a: Metres) -> Metres:
    """Greatest height of a valve, its end above the plane of one beat and the other beat below it.

    H_v = H + a

    ``H`` from the plane of the seat to the end of the valve, ``a`` distance of the beats [m]. Returns [m].

    >>> round(height_over_beats(H=0.082, a=0.072), 6)
    0.154
    """
    return H + a


@formula("D_e = D_m + w", cites=[FIRST_PRINCIPLES])
def over_the_coils(D_m: Metres, w: Metres) -> Metres:
    """Diameter over the coils of a spring.

    D_e = D_m + w

    ``D_m`` mean diameter of the coils, ``w`` diameter of the wire [m]. Returns [m].

    >>> round(over_the_coils(D_m=0.050, w=0.008), 6)
    0.058
    """
    return D_m + w


@formula("D_t = 2 k s", cites=[COMMON_PRACTICE])
def tool_over_hexagon(k: Ratio, s: Metres) -> Metres:
    """Outside diameter of a box spanner over a hexagon.

    D_t = 2 k s

    ``k`` half the diameter of the tool over the width across flats [-]; ``s`` width across flats [m]. Returns [m].

    >>> round(tool_over_hexagon(k=0.8, s=0.050), 6)
    0.08
    """
    return 2 * k * s


@formula("r_t = k d", cites=[COMMON_PRACTICE])
def half_of_tool(k: Ratio, d: Metres) -> Metres:
    """Half the outside diameter of the tool that screws a part in.

    r_t = k d

    ``k`` half its diameter over that of the thread, or over the width across flats [-]; ``d`` nominal diameter of the
    thread, or width across flats [m]. Returns [m].

    >>> round(half_of_tool(k=1.0, d=0.024), 6)
    0.024
    """
    return k * d


@formula("t_b = (D_h − d)/2", cites=[FIRST_PRINCIPLES])
def wall_of_bush(D_h: Metres, d: Metres) -> Metres:
    """Wall of the bush, or room for the bearing, between a journal and its housing.

    t_b = (D_h − d)/2

    ``D_h`` bore of the housing, ``d`` diameter of the journal [m]. Returns [m], negative where the journal is larger.

    >>> round(wall_of_bush(D_h=0.070, d=0.060), 6)
    0.005
    """
    return (D_h - d) / 2


@formula("t_l = k d", cites=[COMMON_PRACTICE])
def least_wall_of_bush(k: Ratio, d: Metres) -> Metres:
    """Least wall of a bush round a journal.

    t_l = k d

    ``k`` least wall over the diameter of the journal [-]; ``d`` that diameter [m]. Returns [m].

    >>> round(least_wall_of_bush(k=0.04, d=0.060), 6)
    0.0024
    """
    return k * d


@formula("D_c = 2 (r + h)", cites=[FIRST_PRINCIPLES])
def over_the_nose(r: Metres, h: Metres) -> Metres:
    """Diameter of the circle round the shaft's axis that a cam needs.

    D_c = 2 (r + h)

    ``r`` radius of the base circle, ``h`` lift at the nose [m]. Returns [m].

    >>> round(over_the_nose(r=0.050, h=0.020), 6)
    0.14
    """
    return 2 * (r + h)
