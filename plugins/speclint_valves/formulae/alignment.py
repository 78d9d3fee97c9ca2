"""A spindle in its guide: how far its seat may be out of line, and how its edge is pressed."""

from __future__ import annotations

from speclint import FIRST_PRINCIPLES, formula, require
from speclint.equations import Metres, Newtons, Pascals


@formula("e = e_0 + t/2", cites=[FIRST_PRINCIPLES])
def out_of_line(e_0: Metres, t: Metres) -> Metres:
    """How far one axis may be off another, by what came before and one more coaxial zone.

    e = e_0 + t/2

    ``e_0`` before; ``t`` diameter of the zone [m]. Returns [m].

    >>> round(out_of_line(e_0=0.0, t=50e-6) * 1e6, 6)
    25.0
    """
    return e_0 + t / 2


@formula("b = H − a − L", cites=[FIRST_PRINCIPLES])
def tip_beyond_guide(H: Metres, a: Metres, L: Metres) -> Metres:
    """Length of a spindle from its guide to where the gear pushes it.

    b = H − a − L

    ``H`` from the seat to the gear; ``a`` from the seat to the guide; ``L`` length of the guide [m]. Returns [m].

    >>> round(tip_beyond_guide(H=0.330, a=0.060, L=0.100) * 1e3, 6)
    170.0
    """
    return H - a - L


@formula("p = F/(d L) + 6 F (b + L/2)/(d L²)", cites=[FIRST_PRINCIPLES])
def edge_pressure(F: Newtons, d: Metres, L: Metres, b: Metres) -> Pascals:
    """Pressure at the edge of a guide whose spindle is pushed aside beyond it.

    p = F/(d L) + 6 F (b + L/2)/(d L²)

    ``F`` across the spindle [N]; ``d`` its diameter, ``L`` length of the guide, ``b`` from its end to the force [m].
    Returns [Pa]. Raises OutOfRange unless d and L are above 0.

    Hand working: 250 N, 22 and 100 mm, 60 mm: 0.1136 + 6 × 250 × 110/(22 × 10⁴) = 0.8636 MPa.

    >>> round(edge_pressure(F=250.0, d=0.022, L=0.100, b=0.060) / 1e6, 4)
    0.8636
    """
    require(d > 0, f"spindle of {d * 1e3:.6g} mm has no diameter")
    require(L > 0, f"guide of {L * 1e3:.6g} mm has no length")
    return F / (d * L) + 6 * F * (b + L / 2) / (d * L**2)
