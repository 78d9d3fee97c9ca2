"""A spindle in its guide, and a valve that sinks into its seat."""

from __future__ import annotations

import math

from speclint.equations import FIRST_PRINCIPLES, Metres, Radians, formula, require


@formula("e = (c/2) (1 + 2 a/L)", cites=[FIRST_PRINCIPLES])
def shift_at_seat(c: Metres, a: Metres, L: Metres) -> Metres:
    """How far a spindle that tilts in its guide is off its axis at the seat.

    e = (c/2) (1 + 2 a/L)

    ``c`` diametral clearance in the guide; ``a`` from the guide's nearer end to the seat; ``L`` length of the guide
    [m]. Returns [m]. At the ends of the guide it is off by half the clearance, to either side. Raises OutOfRange unless
    L > 0.

    Hand working: 0.22 mm, 60 and 100 mm: 0.11 × 2.2 = 0.242 mm.

    >>> round(shift_at_seat(c=0.00022, a=0.060, L=0.100) * 1e3, 6)
    0.242
    """
    require(L > 0, f"guide of {L * 1e3:.6g} mm has no length")
    return (c / 2) * (1 + 2 * a / L)


@formula("h = (t_s + t_v)/cos β", cites=[FIRST_PRINCIPLES])
def sink_of_valve(t_s: Metres, t_v: Metres, β: Radians) -> Metres:
    """How far a valve sinks along its axis when its face and that of its seat are ground.

    h = (t_s + t_v)/cos β

    ``t_s``, ``t_v`` depth ground off seat and valve, square to the face [m]; ``β`` of the cone, from the plane of the
    seat [rad]. Returns [m]. Raises OutOfRange unless 0 ≤ β < 90°.

    Hand working: three of 0.1 mm on each, 45°: 0.6/0.7071 = 0.849 mm.

    >>> round(sink_of_valve(t_s=0.0003, t_v=0.0003, β=math.radians(45)) * 1e3, 3)
    0.849
    """
    require(β >= 0, f"angle {math.degrees(β):.6g}° is below 0°")
    require(math.pi / 2 > β, f"angle {math.degrees(β):.6g}° is not below 90°")
    return (t_s + t_v) / math.cos(β)
