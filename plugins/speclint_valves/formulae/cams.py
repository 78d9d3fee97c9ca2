"""The shape of a cam under its follower: curvature, slant, and the jump of speed at a ramp's foot."""

from __future__ import annotations

import math
from typing import Annotated

from speclint import FIRST_PRINCIPLES, formula, require
from speclint.equations import (
    Metres,
    MetresPerSecond,
    Radians,
    RadiansPerSecond,
    Ratio,
)

MetresPerRadian = Annotated[float, "m/rad"]
MetresPerSquareRadian = Annotated[float, "m/rad²"]


@formula("ρ = R_b + s + κ", cites=[FIRST_PRINCIPLES])
def cam_radius_under_flat(R_b: Metres, s: Metres, κ: MetresPerSquareRadian) -> Metres:
    """Radius of curvature of a cam where a flat foot touches it.

    ρ = R_b + s + κ

    ``R_b`` base circle, ``s`` lift [m]; ``κ`` second derivative of the lift by the angle [m/rad²]. Returns [m].
    Raises OutOfRange unless above 0: a cam undercut.

    >>> round(cam_radius_under_flat(R_b=0.040, s=0.020, κ=-0.030), 6)
    0.03
    """
    ρ = R_b + s + κ
    require(ρ > 0, f"the cam is undercut: its radius of curvature would be {ρ * 1e3:.4g} mm")
    return ρ


@formula("k = (r/√D) (1 + (s′² − o κ)/D), D = o² + s′², o = R_b + r + s", cites=[FIRST_PRINCIPLES])
def roller_over_its_path(
    R_b: Metres, r: Metres, s: Metres, s_prime: MetresPerRadian, κ: MetresPerSquareRadian
) -> Ratio:
    """Radius of a roller over that of the path of its centre round the cam, for a roller in line with its axis.

    k = (r/√D) (1 + (s′² − o κ)/D), D = o² + s′², o = R_b + r + s

    ``R_b`` base circle, ``r`` roller, ``s`` lift [m]; ``s_prime`` first derivative of the lift by the angle [m/rad];
    ``κ`` second derivative of the lift by the angle [m/rad²]. Below 0 on a hollow flank.

    On the base circle the path is a circle of R_b + r = 55 mm, 15/55:

    >>> round(roller_over_its_path(R_b=0.040, r=0.015, s=0.0, s_prime=0.0, κ=0.0), 6)
    0.272727
    """
    o = R_b + r + s
    D = o**2 + s_prime**2
    k: float = r / D**0.5 * (1 + (s_prime**2 - o * κ) / D)
    return k


@formula("R = r (1 − k)", cites=[FIRST_PRINCIPLES])
def relative_radius_of_roller(r: Metres, k: Ratio) -> Metres:
    """Relative radius of cam and roller: with the cam's own radius r/k − r, 1/R = 1/(r/k − r) + 1/r.

    R = r (1 − k)

    ``r`` roller [m]; ``k`` its radius over that of the path of its centre. Returns [m]. Raises OutOfRange where a
    convex cam is undercut.

    Hand working, a cam of 40 mm under a roller of 15 mm: 1/(1/40 + 1/15) = 10.909 mm.

    >>> round(relative_radius_of_roller(r=0.015, k=0.015 / 0.055), 6)
    0.010909
    """
    require(
        k < 1,
        f"the cam is undercut: a roller of {r * 1e3:.4g} mm is {k:.4g} times the radius of the path of its centre",
    )
    return r * (1 - k)


@formula("φ = arctan(|s′|/(R_b + r + s))", cites=[FIRST_PRINCIPLES])
def pressure_angle(s_prime: MetresPerRadian, R_b: Metres, r: Metres, s: Metres) -> Radians:
    """Angle between the push of a cam and the way of a roller in line with its axis.

    φ = arctan(|s′|/(R_b + r + s))

    ``s_prime`` lift per angle of the cam [m/rad]; ``R_b`` base circle, ``r`` roller, ``s`` lift [m]. Returns [rad].
    Raises OutOfRange unless R_b + r + s > 0.

    Hand working: s′ 30 over 40: tan φ = 0.75, 36.87°.

    >>> round(math.degrees(pressure_angle(s_prime=-0.030, R_b=0.020, r=0.010, s=0.010)), 2)
    36.87
    """
    require(R_b + r + s > 0, f"radius {(R_b + r + s) * 1e3:.6g} mm of the roller's centre is not above 0")
    return math.atan(abs(s_prime) / (R_b + r + s))


@formula("v = |s′| ω", cites=[FIRST_PRINCIPLES])
def jump_of_speed(s_prime: MetresPerRadian, ω: RadiansPerSecond) -> MetresPerSecond:
    """Speed that a tappet at rest is given at once where a ramp starts, or loses where it ends.

    v = |s′| ω

    ``s_prime`` derivative of the lift by the angle where it meets the base circle [m/rad]; ``ω`` speed of the cam
    [rad/s]. Returns [m/s].

    >>> round(jump_of_speed(s_prime=0.0042, ω=40.0), 6)
    0.168
    """
    return abs(s_prime) * ω
