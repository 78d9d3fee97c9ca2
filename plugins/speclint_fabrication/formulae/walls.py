"""Flat walls less their corrosion allowance, and the ribs that stiffen them."""

from __future__ import annotations

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, formula, require
from speclint.equations import CubicMetres, Metres, NewtonsPerMetre, Pascals, Ratio
from speclint_fabrication.sources import EN_13445_3


@formula("t_c = t − c", cites=[FIRST_PRINCIPLES])
def wasted_thickness(t: Metres, c: Metres) -> Metres:
    """Wall less its corrosion allowance.

    t_c = t − c

    ``t`` thickness, ``c`` allowance [m]. Returns [m]. Raises OutOfRange when nothing is left.

    >>> round(wasted_thickness(t=0.025, c=0.001) * 1e3, 6)
    24.0
    """
    require(c < t, f"the allowance {c:.6g} leaves nothing of the wall {t:.6g}")
    return t - c


@formula("S_z = z S", cites=[EN_13445_3.at("5.6, joint factor, and clause 15")])
def bending_allowed_at_weld(z: Ratio, S: Pascals) -> Pascals:
    """Allowable bending stress of a wall with a welded joint.

    S_z = z S

    ``z`` joint factor of the weld, above 0 and at most 1 [-]; ``S`` allowable bending stress of a wall in one piece
    [Pa].
    Returns [Pa]. Raises OutOfRange outside.

    Hand working: 0.85 × 200 = 170 MPa.

    >>> round(bending_allowed_at_weld(z=0.85, S=200e6) / 1e6, 6)
    170.0
    """
    require(0 < z <= 1, f"joint factor {z:.4g} is not above 0 and at most 1")
    return z * S


@formula("w = p s", cites=[FIRST_PRINCIPLES])
def rib_load(p: Pascals, s: Metres) -> NewtonsPerMetre:
    """Load on a rib, per unit of its length.

    w = p s

    ``p`` pressure on the wall [Pa]; ``s`` spacing of the ribs [m]. Returns [N/m].

    >>> rib_load(p=1.6e6, s=0.200)
    320000.0
    """
    return p * s


@formula("b = min(s, n t)", cites=[COMMON_PRACTICE])
def plate_with_rib(s: Metres, n: Ratio, t: Metres) -> Metres:
    """Effective width of wall that acts with its rib.

    b = min(s, n t)

    ``s`` spacing of the ribs [m]; ``n`` effective width in wall thicknesses [-]; ``t`` wall [m]. Returns [m].

    >>> round(plate_with_rib(s=0.200, n=30.0, t=0.010) * 1e3, 6)
    200.0
    """
    return min(s, n * t)


@formula(
    "Z = I/y, y = (b t (d + t/2) + w d²/2)/(b t + w d), "
    "I = b t³/12 + b t (d + t/2 − y)² + w d³/12 + w d (y − d/2)²",
    cites=[FIRST_PRINCIPLES],
)
def rib_section_modulus(b: Metres, t: Metres, d: Metres, w: Metres) -> CubicMetres:
    """Section modulus of a rib with its strip of wall, to the rib's free edge.

    Z = I/y, y = (b t (d + t/2) + w d²/2)/(b t + w d), I = b t³/12 + b t (d + t/2 − y)² + w d³/12 + w d (y − d/2)²

    ``b`` width of wall, ``t`` its thickness; ``d`` depth of the rib, ``w`` its thickness [m]. Returns [m³], for the
    edge farther from the wall, where the stress is greatest.

    Hand working: a strip of 100 × 10 mm on a rib of 100 × 10 mm: y = (1000 × 105 + 1000 × 50)/2000 = 77.5 mm,
    I = 8333 + 1000 × 27.5² + 833 333 + 1000 × 27.5² = 2 354 167 mm⁴, Z = 30 376 mm³.

    >>> round(rib_section_modulus(b=0.100, t=0.010, d=0.100, w=0.010) * 1e9)
    30376
    """
    y = (b * t * (d + t / 2) + w * d**2 / 2) / (b * t + w * d)
    about = b * t**3 / 12 + b * t * (d + t / 2 - y) ** 2 + w * d**3 / 12 + w * d * (y - d / 2) ** 2
    return about / y
