"""A roller that rocks on an arm of its own over its cam: where it stands, how aslant it is pushed, and its path."""

from __future__ import annotations

import math

from speclint import FIRST_PRINCIPLES, formula, require
from speclint.equations import Metres, Newtons, Radians, Ratio
from speclint.handbook.cams import NORTON
from speclint_valves.formulae.cams import MetresPerRadian, MetresPerSquareRadian


@formula("ψ = arccos((b² + c² − (R_b + r)²)/(2 b c)) + s/b", cites=[FIRST_PRINCIPLES])
def angle_of_arm(b: Metres, c: Metres, R_b: Metres, r: Metres, s: Metres) -> Radians:
    """Angle at the pivot between the arm of a follower and the line to the axis of its cam.

    ψ = arccos((b² + c² − (R_b + r)²)/(2 b c)) + s/b

    ``b`` arm, ``c`` from the pivot to the axis of the cam, ``R_b`` base circle, ``r`` roller, ``s`` lift along the
    circle of the roller [m]. Returns [rad]. Raises OutOfRange unless arm, distance and radius make a triangle.

    Hand working: b 60, c 100, R_b + r 80 mm: cos ψ = (3600 + 10 000 − 6400)/12 000 = 0.6.

    >>> round(math.cos(angle_of_arm(b=0.060, c=0.100, R_b=0.050, r=0.030, s=0.0)), 6)
    0.6
    """
    require(b > 0 and c > 0, "arm and distance of the pivot must be above 0")
    share = (b**2 + c**2 - (R_b + r) ** 2) / (2 * b * c)
    require(-1 < share < 1, "the arm of the follower does not reach the base circle of the cam")
    return math.acos(share) + s / b


@formula("α = arctan(|c cos ψ − b + n s′|/(c sin ψ))", cites=[NORTON, FIRST_PRINCIPLES])
def pressure_angle_of_arm(b: Metres, c: Metres, ψ: Radians, n: Ratio, s_prime: MetresPerRadian) -> Radians:
    """Angle between the push of a cam on the roller of an arm and the way that the roller goes, by its size.

    α = arctan(|c cos ψ − b + n s′|/(c sin ψ))

    ``b`` arm, ``c`` from the pivot to the axis of the cam [m]; ``ψ`` angle of the arm [rad]; ``n`` 1 where the track
    runs towards the pivot under the roller, −1 where it runs away; ``s_prime`` lift per angle of the cam [m/rad].
    Returns [rad]. Raises OutOfRange unless the roller stands off the line from pivot to cam.

    The push goes through the point about which cam and arm turn alike, c/(1 − n s′/b) from the pivot.

    Hand working, b 60, c 100 mm, cos ψ 0.6, s′ 0: 60 − 60 = 0; s′ 40 mm/rad: 40/80 = 0.5, 26.57°.

    >>> ψ = math.acos(0.6)
    >>> round(math.degrees(pressure_angle_of_arm(b=0.06, c=0.1, ψ=ψ, n=1.0, s_prime=0.04)), 2)
    26.57
    """
    require(c * math.sin(ψ) > 0, "the roller stands on the line from its pivot to the cam")
    return math.atan(abs(c * math.cos(ψ) - b + n * s_prime) / (c * math.sin(ψ)))


@formula(
    "k = r (c² − b² w³ + b c (w cos ψ − w² cos ψ) − c κ sin ψ)/(b² w² + c² + 2 b c w cos ψ)^1.5, w = n s′/b − 1",
    cites=[FIRST_PRINCIPLES],
)
def roller_over_path_of_arm(
    r: Metres,
    b: Metres,
    c: Metres,
    ψ: Radians,
    n: Ratio,
    s_prime: MetresPerRadian,
    κ: MetresPerSquareRadian,
) -> Ratio:
    """Radius of a roller over that of the path of its centre round the cam, for a roller on an arm.

    k = r (c² − b² w³ + b c (w cos ψ − w² cos ψ) − c κ sin ψ)/(b² w² + c² + 2 b c w cos ψ)^1.5, w = n s′/b − 1

    ``r`` roller, ``b`` arm, ``c`` from the pivot to the axis of the cam [m]; ``ψ`` angle of the arm [rad]; ``n`` 1
    where the track runs towards the pivot, −1 where it runs away; ``s_prime`` first derivative of the lift by the angle
    [m/rad]; ``κ`` second derivative of the lift by the angle [m/rad²]. Below 0 on a hollow flank. Raises OutOfRange
    where the centre stands still.

    The centre is b e^(iψ) − c in the plane of the engine, turned back by the angle of the cam. On the base circle of
    50 mm a roller of 30 mm goes round a circle of 80 mm, 30/80:

    >>> ψ = math.acos(0.6)
    >>> round(roller_over_path_of_arm(r=0.03, b=0.06, c=0.1, ψ=ψ, n=1.0, s_prime=0.0, κ=0.0), 6)
    0.375
    """
    w = n * s_prime / b - 1
    speed = b**2 * w**2 + c**2 + 2 * b * c * w * math.cos(ψ)
    require(speed > 0, "the centre of the roller stands still on the cam")
    turned = c**2 - b**2 * w**3 + b * c * (w * math.cos(ψ) - w**2 * math.cos(ψ)) - c * κ * math.sin(ψ)
    bent: float = r * turned / speed**1.5
    return bent


@formula("F_n = F_t/cos α", cites=[FIRST_PRINCIPLES])
def load_square_to_cam(F_t: Newtons, α: Radians) -> Newtons:
    """Load square to the cam where it pushes a roller aslant.

    F_n = F_t/cos α

    ``F_t`` load along the way of the roller [N]; ``α`` pressure angle [rad]. Returns [N]. Raises OutOfRange at a right
    angle or beyond.

    Hand working: 800/0.8 = 1000 N.

    >>> round(load_square_to_cam(F_t=800.0, α=math.acos(0.8)), 6)
    1000.0
    """
    require(abs(α) < math.pi / 2, "the cam pushes square to the way of its roller")
    return F_t / math.cos(α)
