"""The shape of a cam under its follower: how aslant it pushes, and how sharply it is curved."""

from __future__ import annotations

import math

from speclint import FIRST_PRINCIPLES, formula, require
from speclint.equations import Metres, Radians, Ratio
from speclint.handbook.cams import NORTON
from speclint_valves.formulae.cams import MetresPerRadian, MetresPerSquareRadian


@formula("y = √((R_b + r)² − e²) + s", cites=[FIRST_PRINCIPLES])
def height_of_roller(R_b: Metres, r: Metres, e: Metres, s: Metres) -> Metres:
    """Height of a roller's axis over the axis of its cam, along the line of the tappet.

    y = √((R_b + r)² − e²) + s

    ``R_b`` base circle, ``r`` roller, ``e`` offset of the tappet's line, ``s`` lift [m]. Returns [m]. Raises OutOfRange
    unless the line of the tappet meets the circle of base and roller.

    >>> round(height_of_roller(R_b=0.060, r=0.030, e=0.0, s=0.010), 6)
    0.1
    """
    require(R_b + r > abs(e), "the tappet's line passes the cam by")
    height: Metres = ((R_b + r) ** 2 - e**2) ** 0.5
    return height + s


@formula("α = arctan(|s′ − e|/y)", cites=[NORTON, FIRST_PRINCIPLES])
def pressure_angle_of_roller(s_prime: MetresPerRadian, e: Metres, y: Metres) -> Radians:
    """Angle between the push of the cam on a roller and the tappet's line, by its size.

    α = arctan(|s′ − e|/y)

    ``s_prime`` lift per angle of the cam [m/rad]; ``e`` offset, positive to the side that eases the rise [m]; ``y``
    height of the roller [m]. Returns [rad]. Raises OutOfRange unless y > 0.

    Hand working: 26.5 mm/rad at y 101.4 mm: arctan 0.2613 = 14.6°.

    >>> round(math.degrees(pressure_angle_of_roller(s_prime=0.0265, e=0.0, y=0.1014)), 1)
    14.6
    """
    require(y > 0, "the roller is not above the axis of its cam")
    return math.atan(abs(s_prime - e) / y)


@formula("k = r (y² − y κ + (s′ − e) (2 s′ − e))/(y² + (s′ − e)²)^1.5", cites=[FIRST_PRINCIPLES])
def roller_over_offset_path(
    r: Metres, y: Metres, s_prime: MetresPerRadian, κ: MetresPerSquareRadian, e: Metres
) -> Ratio:
    """Radius of a roller over that of the path of its centre round the cam, its line offset from the axis.

    k = r (y² − y κ + (s′ − e) (2 s′ − e))/(y² + (s′ − e)²)^1.5

    ``r`` roller; ``y`` height of its axis [m]; ``s_prime`` first derivative of the lift by the angle [m/rad]; ``κ``
    second derivative of the lift by the angle [m/rad²]; ``e`` offset [m]. Below 0 on a hollow flank. Raises OutOfRange
    unless y > 0.

    In the turning cam's frame the centre moves along (y, s′ − e) for each radian, and that along (2 s′ − e, κ − y).
    On the base circle, without offset, the path is a circle of 55 mm, 15/55:

    >>> round(roller_over_offset_path(r=0.015, y=0.055, s_prime=0.0, κ=0.0, e=0.0), 6)
    0.272727
    """
    require(y > 0, "the roller is not above the axis of its cam")
    aside = s_prime - e
    bent: float = r * (y**2 - y * κ + aside * (2 * s_prime - e)) / (y**2 + aside**2) ** 1.5
    return bent


@formula("x = 1/k", cites=[FIRST_PRINCIPLES])
def path_over_roller(k: Ratio) -> Ratio:
    """Radius of the path of a roller's centre over that of the roller.

    x = 1/k

    ``k`` radius of the roller over that of its path. Returns a ratio. Raises OutOfRange unless k > 0: the path is
    nowhere bent outwards.

    >>> path_over_roller(k=0.5)
    2.0
    """
    require(k > 0, "the path of the roller is nowhere bent outwards")
    return 1 / k


@formula("ρ = R_b + s + κ", cites=[FIRST_PRINCIPLES])
def radius_under_flat(R_b: Metres, s: Metres, κ: MetresPerSquareRadian) -> Metres:
    """Radius of a cam under a flat foot; below 0 where it is undercut.

    ρ = R_b + s + κ

    ``R_b`` base circle, ``s`` lift [m]; ``κ`` second derivative of the lift by the angle [m/rad²]. Returns [m].

    >>> round(radius_under_flat(R_b=0.060, s=0.018, κ=-0.0467) * 1e3, 6)
    31.3
    """
    return R_b + s + κ


@formula("R = R_b − t", cites=[FIRST_PRINCIPLES])
def base_reground(R_b: Metres, t: Metres) -> Metres:
    """Base circle of a cam that is ground and worn.

    R = R_b − t

    ``R_b`` new; ``t`` ground and worn off [m]. Returns [m].

    >>> round(base_reground(R_b=0.060, t=0.0004) * 1e3, 6)
    59.6
    """
    return R_b - t


@formula("b = r sin α", cites=[FIRST_PRINCIPLES])
def reach_on_crown(r: Metres, α: Radians) -> Metres:
    """How far from the tappet's line a cam touches a crowned foot.

    b = r sin α

    ``r`` radius of the crown [m]; ``α`` angle at which it is pushed [rad]. Returns [m].

    >>> round(reach_on_crown(r=0.2, α=math.radians(30)), 6)
    0.1
    """
    return r * math.sin(α)


@formula("b = |s′|", cites=[FIRST_PRINCIPLES])
def reach_on_flat(s_prime: MetresPerRadian) -> Metres:
    """How far from the tappet's line a cam touches a flat foot.

    b = |s′|

    ``s_prime`` lift per angle of the cam [m/rad]. Returns [m].

    >>> reach_on_flat(s_prime=-0.026)
    0.026
    """
    return abs(s_prime)


@formula("l = 2 (b + c)", cites=[FIRST_PRINCIPLES])
def foot_wanted(b: Metres, c: Metres) -> Metres:
    """Length of a foot that the cam does not touch at its edge.

    l = 2 (b + c)

    ``b`` greatest reach of the cam either way; ``c`` left beyond it [m]. Returns [m].

    >>> round(foot_wanted(b=0.0265, c=0.002) * 1e3, 6)
    57.0
    """
    return 2 * (b + c)
