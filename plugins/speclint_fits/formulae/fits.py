"""The middle of a fit, the stress of a solid shaft in it, and a saddle on its barrel."""

from __future__ import annotations

import math

from speclint import FIRST_PRINCIPLES, formula, require
from speclint.equations import Metres, Pascals, Radians

#: Beyond this half arc a saddle bears on its flanks, and a gap measured along the radius is not meaningful.
_WIDEST_HALF_ARC = math.radians(80)


@formula("m = (a + b)/2", cites=[FIRST_PRINCIPLES])
def middle(a: Metres, b: Metres) -> Metres:
    """Middle of two limits.

    m = (a + b)/2

    ``a``, ``b`` least and greatest [m]. Returns [m].

    >>> round(middle(a=14e-6, b=48e-6) * 1e6, 6)
    31.0
    """
    return (a + b) / 2


@formula("σ = p", cites=[FIRST_PRINCIPLES])
def solid_shaft_stress(p: Pascals) -> Pascals:
    """Stress in a solid shaft under contact pressure, equal to the pressure throughout.

    σ = p

    ``p`` contact pressure [Pa]. Returns [Pa].

    >>> solid_shaft_stress(p=40e6)
    40000000.0
    """
    return p


@formula("θ_w = arcsin(w/D_b)", cites=[FIRST_PRINCIPLES])
def half_arc_of_foot(w: Metres, D_b: Metres) -> Radians:
    """Half of the arc of a barrel under a foot of some width.

    θ_w = arcsin(w/D_b)

    ``w`` width of the foot, straight across; ``D_b`` of the barrel [m]. Returns [rad].

    :raises OutOfRange: for a foot as wide as the barrel or wider, or of a width below 0.

    Hand working: a foot of 450 mm on a barrel of 900 mm: arcsin 0.5 = 30°.

    >>> round(math.degrees(half_arc_of_foot(w=0.450, D_b=0.900)), 6)
    30.0
    """
    require(w >= 0 * w, f"the width of a foot, {w * 1e3:.4g} mm, is below 0")
    require(w < D_b, f"a foot of {w * 1e3:.6g} mm is as wide as the barrel of {D_b * 1e3:.6g} mm, or wider")
    return math.asin(w / D_b)


@formula("Δθ = |θ_w − θ|", cites=[FIRST_PRINCIPLES])
def arcs_apart(theta_w: Radians, theta: Radians) -> Radians:
    """Difference of two arcs, without sign.

    Δθ = |θ_w − θ|

    ``theta_w`` worked, ``theta`` stated [rad]. Returns [rad].

    >>> round(arcs_apart(theta_w=0.5, theta=0.75), 9)
    0.25
    """
    return abs(theta_w - theta)


@formula("g = |D_s − D_b| (1 − cos θ)/(2 k), k = 1 if D_s ≥ D_b, else cos θ", cites=[FIRST_PRINCIPLES])
def saddle_gap(D_s: Metres, D_b: Metres, theta: Radians) -> Metres:
    """Greatest gap between saddle and barrel.

    g = |D_s − D_b| (1 − cos θ)/(2 k), k = 1 if D_s ≥ D_b, else cos θ

    ``D_s`` diameter to which the saddle is machined, ``D_b`` of the barrel [m]; ``theta`` half of the arc of the
    saddle [rad]. Returns [m]. A saddle of larger radius rests on its middle with a gap at its edges; one of
    smaller radius rests on its edges with a gap at its middle, larger by 1/cos θ, since the flanks hold it off.
    Measured along the radius, to the first order in the difference of radii: conservative by its square over
    the radius.
    Raises OutOfRange unless 0 < θ ≤ 80° and the diameters are within a tenth of each other.

    Hand working: radii 900.5 and 900.0 mm over 2 × 60°: 0.5 × (1 − 0.5) = 0.25 mm; the other way 0.5 mm.

    >>> round(saddle_gap(D_s=1.801, D_b=1.800, theta=math.radians(60)) * 1e3, 6)
    0.25
    >>> round(saddle_gap(D_s=1.799, D_b=1.800, theta=math.radians(60)) * 1e3, 6)
    0.5
    """
    require(0 < theta <= _WIDEST_HALF_ARC, f"half arc {math.degrees(theta):.4g}° is not between 0 and 80°")
    require(
        abs(D_s - D_b) <= 0.1 * D_b,
        f"saddle {D_s * 1e3:.6g} mm and barrel {D_b * 1e3:.6g} mm do not belong together",
    )
    gap = abs(D_s - D_b) / 2 * (1 - math.cos(theta))
    return gap if D_s >= D_b else gap / math.cos(theta)
