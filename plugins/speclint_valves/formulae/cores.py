"""The core under a hardened skin: how deep the skin still is at the end of its life, and what the core bears."""

from __future__ import annotations

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, formula, require
from speclint.equations import Metres, Pascals, Radians, Ratio


@formula("t_l = t − u", cites=[FIRST_PRINCIPLES])
def skin_left(t: Metres, u: Metres) -> Metres:
    """Depth of a hardened skin that grinding and wear leave.

    ``t`` depth of the skin, ``u`` what grinding and wear take of it [m]. Returns [m]. Raises OutOfRange where none is
    left.

    Hand working: 1 mm less two regrinds of 0.15 mm and 0.1 mm of wear.

    >>> round(skin_left(t=1.0e-3, u=0.4e-3) * 1e3, 6)
    0.6
    """
    require(
        t > u, f"grinding and wear take {u * 1e3:.4g} mm of a skin of {t * 1e3:.4g} mm: none of it is left"
    )
    return t - u


@formula("τ_a = R_p/(2 x)", cites=[COMMON_PRACTICE])
def shear_allowed(R_p: Pascals, x: Ratio) -> Pascals:
    """Shear allowed in the core under a hardened skin.

    That at which it yields after Tresca, over a factor. ``R_p`` proof stress of the core [Pa]; ``x`` factor, above 0.
    Returns [Pa]. Raises OutOfRange outside.

    Hand working: 600/(2 × 1.2) = 250 MPa.

    >>> round(shear_allowed(R_p=600e6, x=1.2) / 1e6, 6)
    250.0
    """
    require(x > 0, f"factor {x:.4g} is not above 0")
    return R_p / (2 * x)


@formula("φ′ = min(max(φ, φ_1), φ_2)", cites=[FIRST_PRINCIPLES])
def angle_between(φ: Radians, φ_1: Radians, φ_2: Radians) -> Radians:
    """Angle of a cam at which a part of its lift shears the core most, between the ends of that part.

    ``φ`` angle as it was looked for, ``φ_1`` and ``φ_2`` where that part begins and ends [rad]. Returns [rad].

    >>> angle_between(φ=0.3, φ_1=0.1, φ_2=0.2)
    0.2
    """
    return min(max(φ, φ_1), φ_2)
