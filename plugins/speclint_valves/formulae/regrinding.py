"""What regrinding takes off the faces of a valve and its seat, and what follows from it."""

from __future__ import annotations

import math

from speclint import FIRST_PRINCIPLES, formula, require
from speclint.equations import Metres, Newtons, NewtonsPerMetre, Radians, Ratio


@formula("t = n g", cites=[FIRST_PRINCIPLES])
def ground_off(n: Ratio, g: Metres) -> Metres:
    """Depth that all regrinds of a face take off it.

    t = n g

    ``n`` how often; ``g`` depth of each, square to the face [m]. Returns [m].

    >>> round(ground_off(n=3.0, g=0.0001) * 1e3, 6)
    0.3
    """
    return n * g


@formula("w_n = w + t/(sin β cos β)", cites=[FIRST_PRINCIPLES])
def face_widened(w: Metres, t: Metres, β: Radians) -> Metres:
    """Width along its cone of a ground face between a cylinder inside and a plane above.

    w_n = w + t/(sin β cos β)

    ``w`` width before it is ground [m]; ``t`` depth ground off, square to the face [m]; ``β`` angle of the cone from
    the plane of the seat [rad]. Returns [m]. Its inner edge stays on the cylinder and its outer edge moves outwards by
    t/sin β. Raises OutOfRange unless 0 < β < 90°: a flat face grows no wider.

    Hand working: 2.5 mm, 0.3 mm at 45°: 2.5 + 0.3/0.5 = 3.1 mm.

    >>> round(face_widened(w=0.0025, t=0.0003, β=math.radians(45)) * 1e3, 6)
    3.1
    """
    require(β > 0, f"angle {math.degrees(β):.6g}° is not above 0°")
    require(math.pi / 2 > β, f"angle {math.degrees(β):.6g}° is not below 90°")
    return w + t / (math.sin(β) * math.cos(β))


@formula("b = (D − d)/2 − w cos β", cites=[FIRST_PRINCIPLES])
def ring_outside_face(D: Metres, d: Metres, w: Metres, β: Radians) -> Metres:
    """Metal of a seat ring that is left outside of its face, across.

    b = (D − d)/2 − w cos β

    ``D`` outside of the ring; ``d`` smaller diameter of the face; ``w`` its width along the cone [m]; ``β`` of the
    cone, from the plane of the seat [rad]. Returns [m].

    Hand working: 170 mm, 153 mm, 3.1 mm at 45°: 8.5 − 2.192 = 6.308 mm.

    >>> round(ring_outside_face(D=0.170, d=0.153, w=0.0031, β=math.radians(45)) * 1e3, 3)
    6.308
    """
    return (D - d) / 2 - w * math.cos(β)


@formula("l = L − w sin β − t/cos β", cites=[FIRST_PRINCIPLES])
def ring_below_face(L: Metres, w: Metres, t: Metres, β: Radians) -> Metres:
    """Metal of a seat ring that is left below its face, along the axis.

    l = L − w sin β − t/cos β

    ``L`` length of the ring; ``w`` width of its face along the cone, new; ``t`` depth ground off, square to the face
    [m]; ``β`` of the cone, from the plane of the seat [rad]. Returns [m].

    Hand working: 28 mm, 2.5 mm, 0.3 mm at 45°: 28 − 1.768 − 0.424 = 25.808 mm.

    >>> round(ring_below_face(L=0.028, w=0.0025, t=0.0003, β=math.radians(45)) * 1e3, 3)
    25.808
    """
    return L - w * math.sin(β) - t / math.cos(β)


@formula("F = F_U − R (L_0 − L)", cites=[FIRST_PRINCIPLES])
def load_when_shortened(F_U: Newtons, R: NewtonsPerMetre, L_0: Metres, L: Metres) -> Newtons:
    """Load at one length of a spring whose free length has grown shorter.

    F = F_U − R (L_0 − L)

    ``F_U`` load new [N]; ``R`` rate [N/m]; ``L_0`` free length new, ``L`` now [m]. Returns [N].

    Hand working: 1000 N, 38.7 N/mm, 0.5 mm: 1000 − 19.35 = 980.65 N.

    >>> round(load_when_shortened(F_U=1000.0, R=38.7e3, L_0=0.1418, L=0.1413), 2)
    980.65
    """
    return F_U - R * (L_0 - L)


@formula("F = F_U − R max(h − z, 0)", cites=[FIRST_PRINCIPLES])
def load_when_sunk(F_U: Newtons, R: NewtonsPerMetre, h: Metres, z: Metres) -> Newtons:
    """Load of the springs on a shut valve that has sunk into its seats.

    F = F_U − R max(h − z, 0)

    ``F_U`` load before the valve has sunk [N]; ``R`` rate [N/m]; ``h`` sink [m]; ``z`` washers put under the springs to
    make up for it [m]. Returns [N]. Washers that are thicker than the sink count as no more than it.

    Hand working: 700 N less 5 % and less 5 % of that is 631.75 N; 31.6 N/mm and 0.849 mm take 26.8 N: 604.9 N.

    >>> round(load_when_sunk(F_U=631.75, R=31.6e3, h=0.000849, z=0.0), 1)
    604.9
    """
    return F_U - R * max(h - z, 0.0)


@formula("a = a_0 − a_g", cites=[FIRST_PRINCIPLES])
def adjustment_left(a_0: Metres, a_g: Metres) -> Metres:
    """What is left to shorten the way from seat to gear by, once its clearance was set.

    a = a_0 − a_g

    ``a_0`` adjustment in all, ``a_g`` adjustment used when the gear was first set [m]. Returns [m].

    >>> round(adjustment_left(a_0=0.003, a_g=0.00105) * 1e3, 6)
    1.95
    """
    return a_0 - a_g


@formula("t = t_g + t_w", cites=[FIRST_PRINCIPLES])
def skin_used(t_g: Metres, t_w: Metres) -> Metres:
    """Depth of a hardened skin that grinding and wear use up.

    t = t_g + t_w

    ``t_g`` ground off, ``t_w`` worn off at the limit [m]. Returns [m].

    >>> round(skin_used(t_g=0.0002, t_w=0.0001) * 1e3, 6)
    0.3
    """
    return t_g + t_w


@formula("t_c = a_g + h", cites=[FIRST_PRINCIPLES])
def cap_ground(a_g: Metres, h: Metres) -> Metres:
    """Depth ground off the cap of a spindle in its life, where grinding it adjusts the gear.

    t_c = a_g + h

    ``a_g`` as the gear is set; ``h`` by how much the valve sinks by all regrinds, of which each asks for as much off
    the cap [m]. Returns [m].

    Hand working: 0.3 mm and three regrinds of 0.1 mm on both faces at 45°, 0.849 mm: 1.149 mm.

    >>> round(cap_ground(a_g=0.0003, h=0.000849) * 1e3, 6)
    1.149
    """
    return a_g + h


@formula("t_n = x t", cites=[FIRST_PRINCIPLES])
def share_of_skin(x: Ratio, t: Metres) -> Metres:
    """Share of the depth of a hardened skin.

    t_n = x t

    ``x`` share; ``t`` depth [m]. Returns [m].

    >>> round(share_of_skin(x=0.5, t=0.001) * 1e3, 6)
    0.5
    """
    return x * t
