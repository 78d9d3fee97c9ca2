"""Pressure of parts that touch: on the projected area of a pin or a slipper, and of curved surfaces after Hertz.

Those are cam and tappet, roller and pin, a spherical ring in its seat.

Radii are positive for a convex, negative for a concave and infinite for a flat surface. The theory holds for smooth
elastic bodies whose contact is small beside their radii; it does not include friction, oil or edges.

>>> E_star = contact_modulus(E_1=206e9, nu_1=0.3, E_2=206e9, nu_2=0.3)
>>> R = relative_radius(R_1=0.060, R_2=0.025)
>>> round(line_pressure(F=3000.0, L=0.018, R=R, E_star=E_star) / 1e6, 2)  # hand: 0.418 √(F E/(L R))
583.33
"""

from __future__ import annotations

import math

from speclint.equations import (
    FIRST_PRINCIPLES,
    Metres,
    Newtons,
    NewtonsPerMetre,
    Pascals,
    Radians,
    Ratio,
    formula,
    require,
)
from speclint.handbook.tables import BORESI, JOHNSON_CONTACT

#: Depth of the greatest shear: over half width of a line, over radius of a spot with Poisson's ratio 0.3.
LINE_DEPTH_OF_SHEAR = 0.786
POINT_DEPTH_OF_SHEAR = 0.48


@formula("p = F/(d b)", cites=[FIRST_PRINCIPLES])
def projected_pressure(F: Newtons, d: Metres, b: Metres) -> Pascals:
    """Mean pressure of a pin or a journal on its projected area.

    ``F`` load [N]; ``d`` diameter of the pin [m]; ``b`` length that bears [m]. Returns [Pa]. Raises OutOfRange unless d
    and b are above 0.

    Published check, Jindal: 22 kN on a journal 95.74 mm across and as long, 2.4 N/mm².

    >>> round(projected_pressure(F=22e3, d=0.09574, b=0.09574) / 1e6, 2)
    2.4
    """
    require(d > 0 * d and b > 0 * b, "the bearing must have an area")
    return F / (d * b)


@formula("p = N/(x L b)", cites=[FIRST_PRINCIPLES])
def slipper_pressure(N: Newtons, L: Metres, b: Metres, x: Ratio) -> Pascals:
    """Mean pressure of a slipper on its slide bar.

    N: thrust, N. L, b: length and breadth of the slipper's face, m. x: share of the face that bears.
    Returns Pa. OutOfRange unless 0 < x ≤ 1 and the face is above 0.

    By hand: 60 kN on 400 × 250 mm, 0.6 N/mm².

    >>> round(slipper_pressure(N=60e3, L=0.4, b=0.25, x=1.0) / 1e6, 9)
    0.6
    """
    require(0 < x <= 1, f"bearing share {x:.4g} is not between 0 and 1")
    require(L > 0 * L and b > 0 * b, "the slipper must have a face")
    return N / (x * L * b)


@formula("E_star = 1/((1 − ν_1²)/E_1 + (1 − ν_2²)/E_2)", cites=[JOHNSON_CONTACT.at("eq. 4.1")])
def contact_modulus(E_1: Pascals, nu_1: Ratio, E_2: Pascals, nu_2: Ratio) -> Pascals:
    """Modulus of two bodies in contact.

    E_1, E_2: moduli, Pa. nu_1, nu_2: Poisson's ratios. Returns Pa.
    """
    return 1 / ((1 - nu_1**2) / E_1 + (1 - nu_2**2) / E_2)


@formula("R = 1/(1/R_1 + 1/R_2)", cites=[JOHNSON_CONTACT.at("eq. 4.3")])
def relative_radius(R_1: Metres, R_2: Metres) -> Metres:
    """Radius of a convex surface that touches a flat one as the two bodies touch each other.

    R_1, R_2: radii in one plane, m, concave negative, flat infinite. Returns m. OutOfRange where a concave
    radius is not greater than the convex one: they touch over an area or at the edges.

    >>> round(relative_radius(R_1=0.100, R_2=-0.125), 3)  # hand: 1/10 - 1/12.5 = 1/50
    0.5
    """
    curvature = 1 / R_1 + 1 / R_2
    require(
        curvature > 0 / R_1,
        f"concave radius {R_2 * 1e3:.4g} mm is not greater than convex radius {R_1 * 1e3:.4g} mm",
    )
    return 1 / curvature


@formula("p_0 = √(F E_star/(π L R))", cites=[JOHNSON_CONTACT.at("eq. 4.45"), BORESI.at("chapter 17")])
def line_pressure(F: Newtons, L: Metres, R: Metres, E_star: Pascals) -> Pascals:
    """Greatest pressure where two parallel rollers touch.

    ``F`` load, 0 or more [N]; ``L`` length of contact, above 0 [m]; ``R`` relative radius, above 0 [m]; ``E_star``
    contact modulus, above 0 [Pa]. Returns [Pa]. Raises OutOfRange outside.
    """
    _check_load(F)
    _check_line(L, R, E_star)
    pressure: float = (F * E_star / (math.pi * L * R)) ** 0.5
    return pressure


@formula("b = √(4 F R/(π L E_star))", cites=[JOHNSON_CONTACT.at("eq. 4.43")])
def line_half_width(F: Newtons, L: Metres, R: Metres, E_star: Pascals) -> Metres:
    """Half the width of the band where two parallel rollers touch.

    Arguments as ``line_pressure``. Returns m.
    """
    _check_load(F)
    _check_line(L, R, E_star)
    width: float = (4 * F * R / (math.pi * L * E_star)) ** 0.5
    return width


@formula("p_m = π p_0/4", cites=[JOHNSON_CONTACT.at("eq. 4.45")])
def line_mean_pressure(p_0: Pascals) -> Pascals:
    """Mean pressure over the band of a line contact.

    p_0: greatest pressure, Pa. Returns Pa.
    """
    return math.pi * p_0 / 4


@formula("τ_max = 0.300 p_0", cites=[JOHNSON_CONTACT.at("section 4.5"), BORESI.at("chapter 17, example 3")])
def line_greatest_shear(p_0: Pascals) -> Pascals:
    """Greatest shear beneath a line contact, ``LINE_DEPTH_OF_SHEAR`` half widths below the surface.

    p_0: greatest pressure, Pa. Returns Pa. Friction brings it nearer the surface and raises it.

    >>> round(line_greatest_shear(p_0=1445.0))  # Boresi and Schmidt: 433
    434
    """
    return 0.300 * p_0


@formula("z = 0.786 · 2 p_0 R/E_star", cites=[JOHNSON_CONTACT.at("section 4.5")])
def line_depth_of_shear(p_0: Pascals, R: Metres, E_star: Pascals) -> Metres:
    """Depth of the greatest shear beneath a line contact.

    p_0: greatest pressure, Pa. R: relative radius, m. E_star: contact modulus, Pa. Returns m: 0.786 of the half width,
    which is 2 p_0 R/E_star.

    >>> round(line_depth_of_shear(p_0=583.33e6, R=0.0176471, E_star=113.19e9) * 1e3, 3)  # hand: 0.786 × 0.18189
    0.143
    """
    return LINE_DEPTH_OF_SHEAR * 2 * p_0 * R / E_star


@formula("p_s = 4 S_y/√3", cites=[JOHNSON_CONTACT.at("section 9.2, rolling without friction")])
def line_shakedown_pressure(S_y: Pascals) -> Pascals:
    """Greatest pressure of a line contact that a metal, once it has settled, bears again and again without yielding.

    S_y: proof stress, Pa. Returns Pa: four times the yield in shear after von Mises. Sliding under load lowers it.

    >>> round(line_shakedown_pressure(S_y=235e6) / 1e6, 1)  # hand: 4 × 235/1.73205
    542.7
    """
    return 4 * S_y / math.sqrt(3)


@formula("a = (3 F R/(4 E_star))^(1/3)", cites=[JOHNSON_CONTACT.at("eq. 4.22")])
def point_radius(F: Newtons, R: Metres, E_star: Pascals) -> Metres:
    """Radius of the spot where two spheres touch.

    F: load, N, 0 or more. R: relative radius, m. E_star: contact modulus, Pa. Returns m.
    """
    _check_load(F)
    return R * math.cbrt(3 * F / (4 * E_star * R**2))


@formula("p_0 = 2 E_star/π (3 F/(4 E_star R²))^(1/3)", cites=[JOHNSON_CONTACT.at("eq. 4.24")])
def point_pressure(F: Newtons, R: Metres, E_star: Pascals) -> Pascals:
    """Greatest pressure where two spheres touch.

    F: load, N, 0 or more. R: relative radius, m. E_star: contact modulus, Pa. Returns Pa.
    """
    _check_load(F)
    return 2 * E_star * math.cbrt(3 * F / (4 * E_star * R**2)) / math.pi


@formula("τ_max = 0.310 p_0", cites=[JOHNSON_CONTACT.at("section 3.4")])
def point_greatest_shear(p_0: Pascals) -> Pascals:
    """Greatest shear beneath a spot, ``POINT_DEPTH_OF_SHEAR`` radii below the surface, Poisson's ratio 0.3.

    p_0: greatest pressure, Pa. Returns Pa.
    """
    return 0.310 * p_0


@formula("φ = arccos(D/(2 R))", cites=[FIRST_PRINCIPLES])
def seat_angle(D: Metres, R: Metres) -> Radians:
    """Angle to the axis at which a sphere touches its seat: the half angle of the cone that touches there.

    D: diameter of the circle of contact, m, less than 2 R. R: radius of the sphere, m. Returns rad.

    >>> round(math.degrees(seat_angle(D=0.100, R=0.100)), 6)  # hand: cos 60° = 1/2
    60.0
    """
    require(
        0 < D / R < 2, f"a circle of {D * 1e3:.4g} mm does not lie on a sphere of radius {R * 1e3:.4g} mm"
    )
    return math.acos(D / (2 * R))


@formula("D = 2 R cos(φ)", cites=[FIRST_PRINCIPLES])
def circle_in_cone(R: Metres, phi: Radians) -> Metres:
    """Diameter of the circle on which a sphere touches a cone.

    R: radius of the sphere, m. phi: half angle of the cone, rad, between 0 and 90°. Returns m.
    """
    _check_angle(phi)
    return 2 * R * math.cos(phi)


@formula("g = t/2 − (D_m − D)/(2 tan(φ))", cites=[FIRST_PRINCIPLES])
def half_gap_at_ring(t: Metres, D_m: Metres, D: Metres, phi: Radians) -> Metres:
    """Half of the gap between two flanges with a ring of spherical faces between their cones.

    t: thickness of the ring along the axis, between its two circles of contact, m. D_m: diameter of the cone at the
    flange's face, m, not below D. D: diameter of the circle of contact, m. phi: half angle of the cone, rad, between 0
    and 90°. Returns m, below 0 where the flanges would meet before the ring is seated.

    Hand working: 50 mm, cone of 195 mm at 60°, circle of 180 mm: 25 − 15/(2 × 1.7321) = 20.67 mm.

    >>> round(half_gap_at_ring(t=0.050, D_m=0.195, D=0.180, phi=math.radians(60)) * 1e3, 2)
    20.67
    """
    _check_angle(phi)
    require(D_m >= D, f"a cone of {D_m * 1e3:.4g} mm at its mouth does not take a circle of {D * 1e3:.4g} mm")
    return t / 2 - (D_m - D) / (2 * math.tan(phi))


@formula("g = t/2 − (√(R² − D²/4) − √(R² − D_m²/4))", cites=[FIRST_PRINCIPLES])
def half_gap_at_hollow(t: Metres, D_m: Metres, D: Metres, R: Metres) -> Metres:
    """Half of the gap between two flanges with a ring of spherical faces between their hollow spherical seats.

    t: thickness of the ring along the axis, between its two circles of contact, m. D_m: diameter of the seat at the
    flange's face, m, not below D nor above 2 R. D: diameter of the circle of contact, m, not below 0. R: radius of the
    seat, m. Returns m, below 0 where the flanges would meet before the ring is seated.

    Hand working: 50 mm, hollow of 100 mm radius, 160 mm at its mouth, circle of 120 mm: 25 − (80 − 60) = 5 mm.

    >>> round(half_gap_at_hollow(t=0.050, D_m=0.160, D=0.120, R=0.100) * 1e3, 6)
    5.0
    """
    require(D_m >= D, f"a seat of {D_m * 1e3:.4g} mm at its mouth does not take a circle of {D * 1e3:.4g} mm")
    require(
        D_m <= 2 * R,
        f"a seat of {D_m * 1e3:.4g} mm at its mouth does not lie on a sphere of radius {R * 1e3:.4g} mm",
    )
    require(D >= 0 * D, f"circle of contact of {D * 1e3:.4g} mm is below 0")
    circle: float = (R**2 - D**2 / 4) ** 0.5
    mouth: float = (R**2 - D_m**2 / 4) ** 0.5
    return t / 2 - (circle - mouth)


@formula("q = W/(π D sin(φ))", cites=[FIRST_PRINCIPLES])
def seat_line_load(W: Newtons, D: Metres, phi: Radians) -> NewtonsPerMetre:
    """Load on unit length of a circular line of contact, normal to the seat.

    W: load along the axis, N. D: diameter of the circle, m. phi: half angle of the cone, or ``seat_angle``, rad,
    between 0 and 90°. Returns N/m. Friction on the seat would lower it and is left out. The contact pressure is
    that of ``line_pressure`` with F/L = q and the relative radius in the plane through the axis.

    Hand working: 100 kN on a 100 mm circle at 30°: 100 000/(314.16 × 0.5) = 636.6 N/mm.

    >>> round(seat_line_load(W=100e3, D=0.100, phi=math.radians(30.0)) / 1e3, 1)
    636.6
    """
    _check_angle(phi)
    return W / (math.pi * D * math.sin(phi))


@formula("δ = (w/2 − b)/R", cites=[FIRST_PRINCIPLES])
def swing_of_seat(w: Metres, b: Metres, R: Metres) -> Radians:
    """Angle by which a spherical ring may tilt before its band of contact runs off the edge of its face.

    w: width of the spherical face along its arc, contact in the middle, m. b: half width of contact, m. R: radius
    of the sphere, m. Returns rad, below 0 when the band is wider than the face.
    """
    return (w / 2 - b) / R


def _check_load(F: Newtons) -> None:
    require(F >= 0 * F, f"a contact load of {F:.4g} N pulls the bodies apart")


def _check_line(L: Metres, R: Metres, E_star: Pascals) -> None:
    require(L > 0 * L, f"length of contact {L * 1e3:.4g} mm is not above 0")
    require(R > 0 * R, f"relative radius {R * 1e3:.4g} mm is not above 0")
    require(E_star > 0 * E_star, f"contact modulus {E_star / 1e9:.4g} GPa is not above 0")


def _check_angle(phi: Radians) -> None:
    require(0 < phi < math.pi / 2, f"half angle {phi:.4g} rad of the seat is not between 0 and 90°")
