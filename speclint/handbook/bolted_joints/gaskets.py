"""Bolt load that a gasket needs, in the classic form of ASME VIII-1 Appendix 2.

Widths are of the ring on which gasket and both faces touch. Pressures are gauge. The form holds for a
gasket wholly inside the bolt circle; a ground metal face without a gasket is judged by its pressure instead.

Published check, a flange by Pressure Vessel Engineering Ltd. (gasket 17.75/16.25 in, m 3, y 10 000 psi):

>>> inch = 0.0254
>>> b = effective_seating_width(basic_seating_width(N=0.75 * inch))
>>> round(b / inch, 4), round(gasket_reaction_diameter(D_o=17.75 * inch, D_i=16.25 * inch) / inch, 3)
(0.3062, 17.138)
"""

from __future__ import annotations

import math

from speclint.equations import (
    FIRST_PRINCIPLES,
    Metres,
    Newtons,
    Pascals,
    Ratio,
    Source,
    SquareMetres,
    formula,
    require,
)
from speclint.handbook.bolted_joints.loads import pressure_load
from speclint.handbook.tables import ASME_APPENDIX_2

TAYLOR_FORGE = Source("Taylor Forge, Modern Flange Design, Bulletin 502", "7th ed.", memory=True)
EN_13445_3 = Source("EN 13445-3, Unfired pressure vessels, Design", "2014", memory=True)
_INCH = 0.0254


def _code(place: str) -> Source:
    """A place of the code that was seen in a public calculation after it."""
    return ASME_APPENDIX_2.at(f"{place}, as reproduced in a public flange calculation", memory=False)


#: Up to this basic width the whole of it counts (1/4 in in ASME, 6.3 mm in EN 13445-3).
_NARROW = 0.25 * _INCH


@formula("N = (D_o − D_i)/2", cites=[FIRST_PRINCIPLES])
def contact_width(D_o: Metres, D_i: Metres) -> Metres:
    """Width of the ring on which a flat gasket bears.

    D_o, D_i: outside and inside of the contact, m. Returns m.
    """
    require(
        D_o > D_i,
        f"outside of the gasket, {D_o * 1e3:.4g} mm, is not larger than its inside, {D_i * 1e3:.4g} mm",
    )
    return (D_o - D_i) / 2


@formula("b_0 = N/2", cites=[_code("Table 2-5.2, sketch 1a")])
def basic_seating_width(N: Metres) -> Metres:
    """Basic seating width of a gasket between flat faces.

    N: width of contact, m. Returns m.
    """
    return N / 2


@formula("b_0 = w/8", cites=[_code("Table 2-5.2, sketch 6")])
def basic_seating_width_of_ring_joint(w: Metres) -> Metres:
    """Basic seating width of a solid ring in a groove.

    w: width of the ring, m. Returns m.
    """
    return w / 8


@formula(
    "b = b_0 if b_0 ≤ 0.25 in, else 0.5 in √(b_0/in)",
    cites=[_code("Table 2-5.2")],
    empirical="inches",
)
def effective_seating_width(b_0: Metres) -> Metres:
    """Effective seating width, by the inch form: all of the basic width to 1/4 in, then 0.5 √b_0.

    b_0: basic seating width, m. Returns m.
    """
    if b_0 <= _NARROW:
        return b_0
    width: float = 0.5 * (b_0 / _INCH) ** 0.5 * _INCH
    return width


@formula(
    "b = b_0 if b_0 ≤ 6.3 mm, else 2.52 mm √(b_0/mm)",
    cites=[EN_13445_3.at("11.5.2, equation 11.5-4")],
    empirical="millimetres",
)
def effective_seating_width_metric(b_0: Metres) -> Metres:
    """Effective seating width, by the millimetre form: all of the basic width to 6.3 mm, then 2.52 √b_0.

    b_0: basic seating width, m. Returns m. Agrees with the inch form within 1 %.
    """
    if b_0 <= 6.3e-3:
        return b_0
    width: float = 2.52e-3 * (b_0 * 1e3) ** 0.5
    return width


@formula(
    "G = (D_o + D_i)/2 if b_0 ≤ 0.25 in, else D_o − 2 b, b = 0.5 in √(b_0/in), b_0 = (D_o − D_i)/4",
    cites=[_code("2-3, definition of G")],
    empirical="inches",
)
def gasket_reaction_diameter(D_o: Metres, D_i: Metres) -> Metres:
    """Diameter of the circle of the gasket reaction, up to which the pressure acts.

    D_o, D_i: outside and inside of the contact, m. Returns m.
    """
    b_0 = basic_seating_width(contact_width(D_o, D_i))
    if b_0 <= _NARROW:
        return (D_o + D_i) / 2
    return D_o - 2 * effective_seating_width(b_0)


@formula("H = π G² p/4", cites=[_code("2-3, definition of H")])
def hydrostatic_end_force(G: Metres, p: Pascals) -> Newtons:
    """Force with which the pressure lifts the cover.

    G: gasket reaction diameter, m. p: gauge pressure, Pa. Returns N.
    """
    return pressure_load(G, p)


@formula("W_m1 = π G² p/4 + 2 π b G m p", cites=[_code("2-5(c)(1), equation 1")])
def operating_bolt_load(G: Metres, b: Metres, m: Ratio, p: Pascals) -> Newtons:
    """Least bolt load that keeps the gasket tight under pressure.

    G: gasket reaction diameter, m. b: effective seating width, m. m: gasket factor. p: gauge pressure, Pa.
    Returns N.

    Published check (as at the head of this module, at 400 psi), 131 830 lbf within 0.1 %:

    >>> inch, psi = 0.0254, 6894.757
    >>> W = operating_bolt_load(17.138 * inch, 0.3062 * inch, 3.0, 400 * psi)
    >>> abs(W / 4.4482216 / 131_830 - 1) < 1e-3
    True
    """
    return hydrostatic_end_force(G, p) + 2 * math.pi * b * G * m * p


@formula("W_m2 = π b G y", cites=[_code("2-5(c)(2), equation 2")])
def seating_bolt_load(G: Metres, b: Metres, y: Pascals) -> Newtons:
    """Least bolt load that beds the gasket in, before there is any pressure.

    G: gasket reaction diameter, m. b: effective seating width, m. y: seating stress, Pa. Returns N.
    """
    return math.pi * b * G * y


@formula("A_m = max(W_m1/S_b, W_m2/S_a)", cites=[_code("2-5(d)")])
def required_bolt_area(W_m1: Newtons, S_b: Pascals, W_m2: Newtons, S_a: Pascals) -> SquareMetres:
    """Least total core area of the studs.

    W_m1, W_m2: operating and seating loads, N. S_b, S_a: allowable stud stress hot and cold, Pa. Returns m².
    """
    return max(W_m1 / S_b, W_m2 / S_a)


@formula("W = (A_m + A_b) S_a/2", cites=[_code("2-5(e), equation 5")])
def flange_design_bolt_load(A_m: SquareMetres, A_b: SquareMetres, S_a: Pascals) -> Newtons:
    """Bolt load for which a flange or cover is designed in seating: the fitter may tighten the studs further.

    A_m, A_b: required and actual core area, m². S_a: allowable stud stress cold, Pa. Returns N.
    """
    return (A_m + A_b) * S_a / 2


@formula("N_least = A_b S_a/(2 π y G)", cites=[TAYLOR_FORGE.at("minimum gasket width")])
def least_width_against_crushing(A_b: SquareMetres, S_a: Pascals, y: Pascals, G: Metres) -> Metres:
    """Least width of gasket that the studs, fully tightened, do not crush.

    A_b: actual core area of the studs, m². S_a: allowable stud stress cold, Pa. y: seating stress, Pa, above
    0. G: gasket reaction diameter, m. Returns m.
    """
    require(y > 0 * S_a, "a gasket without seating stress has no such width")
    return A_b * S_a / (2 * math.pi * y * G)
