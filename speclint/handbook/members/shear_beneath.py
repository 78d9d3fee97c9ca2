"""Shear of a metal beneath a line contact, at any depth: where a soft core lies under a hardened skin.

Near the surface it goes with the pressure and the width of the band. Far below it is that of the load on a line alone,
F/(π L z), after Flamant.
"""

from __future__ import annotations

import math

from speclint.equations import Metres, Newtons, Pascals, formula, require
from speclint.handbook.members.contact import LINE_DEPTH_OF_SHEAR
from speclint.handbook.tables import JOHNSON_CONTACT


@formula(
    "τ = 2 F/(a + w + √(w (a + w))), w = π L z, a = 4 F R/(E_star z), z = max(t, 0.786 √(4 F R/(π L E_star)))",
    cites=[JOHNSON_CONTACT.at("section 4.2, eq. 4.46")],
)
def line_shear_below(F: Newtons, L: Metres, R: Metres, E_star: Pascals, t: Metres) -> Pascals:
    """Greatest shear beneath a line contact, at a depth or below it.

    It lies under the middle of the band. After Johnson it is (p_0/b) (z − z²/√(b² + z²)), with p_0 = 2 F/(π L b) and
    b² = 4 F R/(π L E_star), which is written here as one fraction.

    ``F`` load, 0 or more [N]; ``L`` length of contact, above 0 [m]; ``R`` relative radius, above 0 [m]; ``E_star``
    contact modulus, above 0 [Pa]; ``t`` depth [m]: less than that of the greatest shear, 0.786 b, gives the greatest.
    Returns [Pa]. Raises OutOfRange outside.

    Hand working: 15 kN on 30 mm, R 16 mm, 113 GPa: b² = 4 × 15 000 × 16/(π × 30 × 113 000) = 0.09014 mm²
    At 0.8 mm: √(b² + z²) = 0.85448 mm, 2 F/(π L) = 318.31 N/mm; 318.31 × (0.8 − 0.64/0.85448)/0.09014 = 180.1 MPa.

    >>> round(line_shear_below(F=15e3, L=0.030, R=0.016, E_star=113e9, t=0.8e-3) / 1e6, 1)
    180.1
    """
    require(F >= 0 * F, f"a contact load of {F:.4g} N pulls the bodies apart")
    require(L > 0 * L, f"length of contact {L * 1e3:.4g} mm is not above 0")
    require(R > 0 * R, f"relative radius {R * 1e3:.4g} mm is not above 0")
    require(E_star > 0 * E_star, f"contact modulus {E_star / 1e9:.4g} GPa is not above 0")
    require(t > 0 * t, f"depth {t * 1e3:.4g} mm beneath the contact is not above 0")
    z = max(t, LINE_DEPTH_OF_SHEAR * (4 * F * R / (math.pi * L * E_star)) ** 0.5)
    w = math.pi * L * z
    a = 4 * F * R / (E_star * z)
    shear: float = 2 * F / (a + w + (w * (a + w)) ** 0.5)
    return shear
