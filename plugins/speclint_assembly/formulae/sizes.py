"""Greatest sizes of parts as they are put in, and the room that tools need."""

from __future__ import annotations

import math

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, formula, require
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


@formula("h = L − y", cites=[FIRST_PRINCIPLES])
def height_to_grip(L: Metres, y: Metres) -> Metres:
    """Height above the lower seat of a free spring at which a tool takes hold of its plate.

    h = L − y

    ``L`` free length of the spring, ``y`` height of the plate over the spring's end, which the tool need not reach [m].
    Returns [m].

    >>> round(height_to_grip(L=0.142, y=0.012), 6)
    0.13
    """
    return L - y


@formula("s_o = π (D_p − d + 2 t) + s", cites=[FIRST_PRINCIPLES])
def ring_opened(D_p: Metres, d: Metres, t: Metres, s: Metres) -> Metres:
    """Gap of a piston ring as it is opened to slip over the piston.

    s_o = π (D_p − d + 2 t) + s

    ``D_p`` diameter of the piston, ``d`` bore in which the ring has the gap ``s``, ``t`` radial thickness of the ring
    [m]. The line through the middle of the ring keeps its length. Returns [m].

    Hand working: 497 in 500 mm, 16 mm thick, 3 mm gap: π (497 − 500 + 32) + 3 = 94.106 mm.

    >>> round(ring_opened(D_p=0.497, d=0.500, t=0.016, s=0.003) * 1e3, 3)
    94.106
    """
    require(t > 0, f"a ring of {t * 1e3:.4g} mm has no thickness")
    return math.pi * (D_p - d + 2 * t) + s


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


@formula("D_c = 2 (r + h)", cites=[FIRST_PRINCIPLES])
def over_the_nose(r: Metres, h: Metres) -> Metres:
    """Diameter of the circle round the shaft's axis that a cam needs.

    D_c = 2 (r + h)

    ``r`` radius of the base circle, ``h`` lift at the nose [m]. Returns [m].

    >>> round(over_the_nose(r=0.050, h=0.020), 6)
    0.14
    """
    return 2 * (r + h)


@formula("s_max = k t", cites=[COMMON_PRACTICE])
def ring_may_open(k: Ratio, t: Metres) -> Metres:
    """Greatest gap to which a ring of iron may be opened by hand.

    s_max = k t

    ``k`` multiple of the radial thickness [-], ``t`` that thickness [m]. Returns [m].

    >>> round(ring_may_open(k=8.0, t=0.016), 6)
    0.128
    """
    return k * t
