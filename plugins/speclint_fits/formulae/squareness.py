"""Faces of a pad that are out of square: how far the axis lies out, and the chamfer that leads them in."""

from __future__ import annotations

from speclint import FIRST_PRINCIPLES, formula, require
from speclint.equations import Metres


@formula("u = t X/l", cites=[FIRST_PRINCIPLES])
def out_of_square(t: Metres, X: Metres, l: Metres) -> Metres:  # noqa: E741 - the letter of the equation
    """How far an axis lies out at a distance, of a face that is out of square.

    u = t X/l

    ``t`` zone of squareness over its own length [m]; ``X`` distance at which it counts [m]; ``l`` length of the face
    over which the zone is stated, above 0 [m]. Returns [m]. Raises OutOfRange otherwise.

    Hand working: 0.05 mm over 300 mm: 0.242 mm at 1450 mm.

    >>> round(out_of_square(t=0.05e-3, X=1.45, l=0.3) * 1e3, 3)
    0.242
    """
    require(l > 0, "the length of a face must be above 0")
    return t * X / l


@formula("u_b = u_1 + u_2", cites=[FIRST_PRINCIPLES])
def out_together(u_1: Metres, u_2: Metres) -> Metres:
    """How far an axis lies out at its crosshead where the axle is square to the other axis, and both lie out.

    u_b = u_1 + u_2

    ``u_1``, ``u_2`` by which each lies out at its own crosshead, the opposite way [m]. Returns [m].

    Hand working: 0.025 mm over 300 mm gives each 0.148 mm at 1780 mm: 0.297 mm together.

    >>> round(out_together(u_1=0.1483e-3, u_2=0.1483e-3) * 1e3, 4)
    0.2966
    """
    return u_1 + u_2


@formula("X = L + S/2", cites=[FIRST_PRINCIPLES])
def far_crosshead(L: Metres, S: Metres) -> Metres:
    """From the middle of the cylinder to the crosshead at the far end of its stroke.

    X = L + S/2

    ``L`` from the crosshead to the middle of the piston; ``S`` stroke [m]. Returns [m].

    >>> round(far_crosshead(L=1.2, S=0.66), 6)
    1.53
    """
    return L + S / 2


@formula("c = 2 q", cites=[FIRST_PRINCIPLES])
def chamfer_to_lead_in(q: Metres) -> Metres:
    """Chamfer that leads in a pad which is out of square.

    c = 2 q

    ``q`` squareness of its faces over their height [m]. Returns [m].

    >>> chamfer_to_lead_in(0.25)
    0.5
    """
    return 2 * q
