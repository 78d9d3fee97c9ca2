"""A spindle in its guide: how far its seat may be out of line, and how its edge is pressed."""

from __future__ import annotations

from speclint import FIRST_PRINCIPLES, formula, require
from speclint.equations import Metres, Newtons, Pascals, Ratio


@formula("e = e_0 + t/2", cites=[FIRST_PRINCIPLES])
def out_of_line(e_0: Metres, t: Metres) -> Metres:
    """How far one axis may be off another, by what came before and one more coaxial zone.

    e = e_0 + t/2

    ``e_0`` how far the axes may be apart by what came before [m]; ``t`` diameter of the zone [m]. Returns [m].

    >>> round(out_of_line(e_0=0.0, t=50e-6) * 1e6, 6)
    25.0
    """
    return e_0 + t / 2


@formula("e_h = s |ε_x − ε_b|", cites=[FIRST_PRINCIPLES])
def shift_by_heat(s: Metres, ε_x: Ratio, ε_b: Ratio) -> Metres:
    """How far an axis in a box moves against one in the block, counted from where the box is located.

    e_h = s |ε_x − ε_b|

    ``s`` distance of the axes from there [m]; ``ε_x``, ``ε_b`` growth of box and block. Returns [m].

    Hand working: 40 mm, 0.0006 and 0.0018: 0.048 mm.

    >>> round(shift_by_heat(s=0.040, ε_x=0.0006, ε_b=0.0018) * 1e6, 6)
    48.0
    """
    return s * abs(ε_x - ε_b)


@formula("e = e_s + e_x", cites=[FIRST_PRINCIPLES])
def errors_together(e_s: Metres, e_x: Metres) -> Metres:
    """How far a seat may be off its guide, by its own zone and by the box that holds the guide.

    e = e_s + e_x

    ``e_s`` error by the zone of the seat; ``e_x`` error by the box [m]. Returns [m].

    >>> round(errors_together(e_s=25e-6, e_x=5e-6) * 1e6, 6)
    30.0
    """
    return e_s + e_x


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
