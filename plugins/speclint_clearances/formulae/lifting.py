"""A lifted load: mass and centre of gravity, the pull in each leg of the sling, and the stress of eye and lug."""

from __future__ import annotations

import math

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, formula, require
from speclint.equations import (
    CGPM,
    Kilograms,
    Metres,
    MetresPerSecondSquared,
    Newtons,
    Pascals,
    Radians,
    Ratio,
)


@formula("L = √((x_1 − x_2)² + (y_1 − y_2)²)", cites=[FIRST_PRINCIPLES])
def distance(x_1: Metres, y_1: Metres, x_2: Metres, y_2: Metres) -> Metres:
    """Distance in plan.

    L = √((x_1 − x_2)² + (y_1 − y_2)²)

    ``x_1``, ``y_1`` and ``x_2``, ``y_2`` two points [m]. Returns [m].

    >>> round(distance(x_1=0.0, y_1=0.0, x_2=0.3, y_2=0.4), 6)
    0.5
    """
    length: Metres = ((x_1 - x_2) ** 2 + (y_1 - y_2) ** 2) ** 0.5
    return length


@formula("e = ((x_2 − x_1)(y − y_1) − (y_2 − y_1)(x − x_1))/L", cites=[FIRST_PRINCIPLES])
def beside_line(
    x: Metres, y: Metres, x_1: Metres, y_1: Metres, x_2: Metres, y_2: Metres, L: Metres
) -> Metres:
    """Distance in plan of a point from the line through two others, positive on its left.

    e = ((x_2 − x_1)(y − y_1) − (y_2 − y_1)(x − x_1))/L

    ``x``, ``y`` the point; ``x_1``, ``y_1`` and ``x_2``, ``y_2`` the two; ``L`` between them [m]. Returns [m].
    OutOfRange unless L > 0.

    >>> round(beside_line(x=0.9, y=0.2, x_1=0.0, y_1=0.0, x_2=2.0, y_2=0.0, L=2.0), 6)
    0.2
    """
    require(L > 0 * L, "the two lifting points coincide")
    return ((x_2 - x_1) * (y - y_1) - (y_2 - y_1) * (x - x_1)) / L


@formula("k = ((x_c − x_2)(x_1 − x_2) + (y_c − y_2)(y_1 − y_2))/L²", cites=[FIRST_PRINCIPLES])
def share_of_leg(
    x_c: Metres, y_c: Metres, x_1: Metres, y_1: Metres, x_2: Metres, y_2: Metres, L: Metres
) -> Ratio:
    """Share of the weight on a leg when it and the opposite leg carry the whole load.

    k = ((x_c − x_2)(x_1 − x_2) + (y_c − y_2)(y_1 − y_2))/L²

    ``x_c``, ``y_c`` centre of gravity; ``x_1``, ``y_1`` this point, ``x_2``, ``y_2`` the opposite one; ``L`` between
    them [m]. Returns a ratio, outside 0 to 1 where the centre does not lie between the two. OutOfRange unless L > 0.

    Hand working: centre 0.8 m from the far point of two 2 m apart: 0.4.

    >>> round(share_of_leg(x_c=0.8, y_c=0.1, x_1=2.0, y_1=0.0, x_2=0.0, y_2=0.0, L=2.0), 6)
    0.4
    """
    require(L > 0 * L, "the two lifting points coincide")
    return ((x_c - x_2) * (x_1 - x_2) + (y_c - y_2) * (y_1 - y_2)) / L**2


@formula("h_1 = h − (z − z_0)", cites=[FIRST_PRINCIPLES])
def hook_above_point(h: Metres, z: Metres, z_0: Metres) -> Metres:
    """Height of the hook above a lifting point.

    h_1 = h − (z − z_0)

    ``h`` of the hook above the lowest point; ``z`` this point, ``z_0`` the lowest one, upwards [m]. Returns [m].

    Hand working: a hook 1.2 m above points at 520 mm is 1.2 − 0.98 = 0.22 m above one at 1500 mm.

    >>> round(hook_above_point(h=1.2, z=1.5, z_0=0.52), 6)
    0.22
    """
    return h - (z - z_0)


@formula("k_1 = k h_1/(k h_1 + (1 − k) h_2)", cites=[FIRST_PRINCIPLES])
def share_at_heights(k: Ratio, h_1: Metres, h_2: Metres) -> Ratio:
    """Share of the weight on a leg of two whose points are not equally high: their pulls across balance at the hook.

    k_1 = k h_1/(k h_1 + (1 − k) h_2)

    ``k`` share by the distances in plan alone [-]; ``h_1``, ``h_2`` height of the hook above this point and above the
    opposite one [m]. Returns a ratio, ``k`` where both are equally high. OutOfRange unless h_1 and h_2 are above 0,
    and unless the load hangs between the two points.

    Hand working: midway, the hook 0.5 m above one point and 1 m above the other: 0.25/(0.25 + 0.5) = 1/3.

    >>> round(share_at_heights(k=0.5, h_1=0.5, h_2=1.0), 6)
    0.333333
    """
    require(h_1 > 0 * h_1, "the hook is not above the points")
    require(h_2 > 0 * h_2, "the hook is not above the points")
    borne = k * h_1 + (1 - k) * h_2
    require(borne > 0 * borne, "the load does not hang between the two points")
    return k * h_1 / borne


@formula("F = k m g √(1 + (r/h)²)", cites=[FIRST_PRINCIPLES, CGPM])
def leg_pull(k: Ratio, m: Kilograms, g: MetresPerSecondSquared, r: Metres, h: Metres) -> Newtons:
    """Pull along a leg of the sling.

    F = k m g √(1 + (r/h)²)

    ``k`` share of the weight [-]; ``m`` mass [kg]; ``g`` gravity [m/s²]; ``r`` horizontal distance of the point
    from the hook, ``h`` height of the hook above the point [m]. Returns [N]. Raises OutOfRange unless h > 0.

    Hand working: half of 2000 kg at 45°: 9806.65 √2 = 13 868.7 N.

    >>> round(leg_pull(k=0.5, m=2000.0, g=9.80665, r=1.0, h=1.0), 1)
    13868.7
    """
    require(h > 0 * h, "the hook is not above the points")
    pull: Newtons = k * m * g * (1 + (r / h) ** 2) ** 0.5
    return pull


@formula("s = r/h", cites=[FIRST_PRINCIPLES])
def leg_slope(r: Metres, h: Metres) -> Ratio:
    """Slope of the leg, the tangent of its angle from the vertical.

    s = r/h

    ``r`` horizontal distance of the point from the hook, ``h`` height of the hook above it [m]. Returns a ratio.

    >>> leg_slope(r=1.0, h=2.0)
    0.5
    """
    require(h > 0 * h, "the hook is not above the points")
    return r / h


@formula("β = arctan(s) + δ", cites=[FIRST_PRINCIPLES])
def angle_leaning(s: Ratio, δ: Radians) -> Radians:
    """Greatest angle of a leg from the vertical, as the sling leans out of its line.

    β = arctan(s) + δ

    ``s`` slope of the leg as the load hangs [-]; ``δ`` by which the sling may lean further [rad]. Returns [rad].

    Hand working: a leg at 45°, of slope 1, that leans by 10° more: 55°.

    >>> round(math.degrees(angle_leaning(s=1.0, δ=math.radians(10.0))), 6)
    55.0
    """
    return math.atan(s) + δ


@formula("β_z = arctan(s)", cites=[FIRST_PRINCIPLES])
def angle_of_slope(s: Ratio) -> Radians:
    """Angle from the vertical of a slope that is allowed.

    β_z = arctan(s)

    ``s`` greatest slope, the tangent of the angle [-]. Returns [rad].

    >>> round(math.degrees(angle_of_slope(s=1.0)), 6)
    45.0
    """
    return math.atan(s)


@formula("F_d = x F", cites=[COMMON_PRACTICE])
def dynamic_pull(x: Ratio, F: Newtons) -> Newtons:
    """Pull multiplied by its factor.

    F_d = x F

    ``x`` dynamic factor of the crane, or factor of safety of a thread [-]; ``F`` pull [N]. Returns [N].

    >>> dynamic_pull(x=1.5, F=10e3)
    15000.0
    """
    return x * F


@formula("F = m g", cites=[CGPM])
def force_of_mass(m: Kilograms, g: MetresPerSecondSquared) -> Newtons:
    """Working load limit marked on the eye, as a force.

    F = m g

    ``m`` mass [kg]; ``g`` gravity [m/s²]. Returns [N].

    >>> round(force_of_mass(m=1000.0, g=9.80665), 2)
    9806.65
    """
    return m * g


@formula("L = k d", cites=[COMMON_PRACTICE])
def engagement_wanted(k: Ratio, d: Metres) -> Metres:
    """Thread engagement required of the eye.

    L = k d

    ``k`` diameters [-]; ``d`` thread [m]. Returns [m].

    >>> round(engagement_wanted(k=1.5, d=0.030), 6)
    0.045
    """
    return k * d


@formula("σ = F/((w − d) t)", cites=[FIRST_PRINCIPLES])
def net_section_stress(F: Newtons, w: Metres, d: Metres, t: Metres) -> Pascals:
    """Tensile stress in the net section of the lug.

    σ = F/((w − d) t)

    ``F`` pull [N]; ``w`` width, ``d`` hole, ``t`` thickness [m]. Returns [Pa]. Raises OutOfRange unless w > d.

    Hand working: 30 kN, 80 − 30 mm, 20 mm: 30 MPa.

    >>> round(net_section_stress(F=30e3, w=0.080, d=0.030, t=0.020) / 1e6, 6)
    30.0
    """
    require(w > d, f"the hole {d * 1e3:.4g} mm takes all of the width {w * 1e3:.4g} mm")
    return F / ((w - d) * t)


@formula("τ = F/(2 (e − d/2) t)", cites=[FIRST_PRINCIPLES])
def tear_out_stress(F: Newtons, e: Metres, d: Metres, t: Metres) -> Pascals:
    """Tear-out shear stress of the lug.

    τ = F/(2 (e − d/2) t)

    ``F`` pull [N]; ``e`` centre of the hole to the edge, ``d`` hole, ``t`` thickness [m]. Returns [Pa].
    Raises OutOfRange unless e > d/2.

    Hand working: 30 kN, 40 − 15 mm, 20 mm: 30 MPa.

    >>> round(tear_out_stress(F=30e3, e=0.040, d=0.030, t=0.020) / 1e6, 6)
    30.0
    """
    require(e > d / 2, f"the hole {d * 1e3:.4g} mm breaks through the edge at {e * 1e3:.4g} mm")
    return F / (2 * (e - d / 2) * t)
