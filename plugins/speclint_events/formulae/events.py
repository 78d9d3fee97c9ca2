"""Events of both ends compared: leads, gaps between valves, shifts with the clearance."""

from __future__ import annotations

import math

from speclint import FIRST_PRINCIPLES, formula, require
from speclint.equations import Metres, MetresPerSecond, Radians, RadiansPerSecond, Ratio


@formula("x = (x_f + x_b)/2", cites=[FIRST_PRINCIPLES])
def mean_of_ends(x_f: Ratio, x_b: Ratio) -> Ratio:
    """Mean of a share of the stroke over both ends.

    x = (x_f + x_b)/2

    ``x_f`` share of the stroke at the front, ``x_b`` share of the stroke at the back. Returns a ratio.

    >>> round(mean_of_ends(x_f=0.389, x_b=0.311), 6)
    0.35
    """
    return (x_f + x_b) / 2


@formula("Δx = |x_f − x_b|", cites=[FIRST_PRINCIPLES])
def ends_apart(x_f: Ratio, x_b: Ratio) -> Ratio:
    """By how much a share of the stroke differs between the ends.

    Δx = |x_f − x_b|

    ``x_f`` share of the stroke at the front, ``x_b`` share of the stroke at the back. Returns a ratio.

    >>> round(ends_apart(x_f=0.389, x_b=0.311), 6)
    0.078
    """
    return abs(x_f - x_b)


@formula("λ = −φ", cites=[FIRST_PRINCIPLES])
def lead_angle(φ: Radians) -> Radians:
    """Angle before dead centre at which the inlet opens.

    λ = −φ

    ``φ`` crank angle of admission from the end's dead centre [rad]. Returns [rad], negative where it opens late.

    >>> lead_angle(φ=-0.1)
    0.1
    """
    return -φ


@formula("Δλ = λ_1 − λ_2", cites=[FIRST_PRINCIPLES])
def leads_apart(λ_1: Radians, λ_2: Radians) -> Radians:
    """By how much the lead of one notch exceeds that of another.

    Δλ = λ_1 − λ_2

    ``λ_1``, ``λ_2`` lead angles [rad]. Returns [rad].

    >>> round(leads_apart(λ_1=0.12, λ_2=0.1), 6)
    0.02
    """
    return λ_1 - λ_2


@formula("β = φ_2 − φ_1 + 2 π k", cites=[FIRST_PRINCIPLES])
def angle_between(φ_1: Radians, φ_2: Radians, k: Ratio) -> Radians:
    """Crank angle from one event to the next.

    β = φ_2 − φ_1 + 2 π k

    ``φ_1`` of the first, ``φ_2`` of the second [rad]; ``k`` whole turns between the counts of both. Returns [rad],
    negative where the second comes before the first.

    Hand working: exhaust shut at 317.5°, inlet open at −6° of the next turn: −6 − 317.5 + 360 = 36.5°.

    >>> round(math.degrees(angle_between(φ_1=math.radians(317.5), φ_2=math.radians(-6), k=1.0)), 6)
    36.5
    """
    return φ_2 - φ_1 + 2 * math.pi * k


@formula("Δx = |x_1 − x_2|", cites=[FIRST_PRINCIPLES])
def share_shifted(x_1: Ratio, x_2: Ratio) -> Ratio:
    """By how much an event shifts on the stroke between two clearances.

    Δx = |x_1 − x_2|

    ``x_1``, ``x_2`` its share of the stroke at either. Returns a ratio.

    >>> round(share_shifted(x_1=0.36, x_2=0.35), 6)
    0.01
    """
    return abs(x_1 - x_2)


@formula("Δφ = |φ_1 − φ_2|", cites=[FIRST_PRINCIPLES])
def angle_shifted(φ_1: Radians, φ_2: Radians) -> Radians:
    """By how much an event shifts in crank angle between two clearances.

    Δφ = |φ_1 − φ_2|

    ``φ_1``, ``φ_2`` its crank angle at either [rad]. Returns [rad].

    >>> round(angle_shifted(φ_1=-0.11, φ_2=-0.09), 6)
    0.02
    """
    return abs(φ_1 - φ_2)


@formula("h = i (s − δ)", cites=[FIRST_PRINCIPLES])
def lift_left(i: Ratio, s: Metres, δ: Metres) -> Metres:
    """Greatest lift of a valve that its clearance leaves of the cam's.

    h = i (s − δ)

    ``i`` travel of the valve for each of the tappet; ``s`` greatest lift of the tappet, ``δ`` clearance at it [m].
    Returns [m], negative where the valve never leaves its seat.

    >>> round(lift_left(i=1.0, s=0.0151, δ=0.0005), 6)
    0.0146
    """
    return i * (s - δ)


@formula("y = δ/h_r", cites=[FIRST_PRINCIPLES])
def share_of_ramp(δ: Metres, h_r: Metres) -> Ratio:
    """Share of its ramp's height at which a clearance is used up.

    y = δ/h_r

    ``δ`` clearance at the tappet [m]; ``h_r`` height of the ramp [m], above 0. Returns a ratio. Raises OutOfRange
    outside.

    >>> round(share_of_ramp(δ=0.55e-3, h_r=1.1e-3), 6)
    0.5
    """
    require(h_r > 0, "the height of a ramp must be above 0")
    return δ / h_r


@formula("Δφ = |φ_1 − φ_2 + 2 π k|", cites=[FIRST_PRINCIPLES])
def apart_in_two_notches(φ_1: Radians, φ_2: Radians, k: Ratio) -> Radians:
    """How far the feet of one cam are apart in two notches that run the same way.

    Δφ = |φ_1 − φ_2 + 2 π k|

    ``φ_1``, ``φ_2`` its foot in either [rad]; ``k`` whole turns between the two. Returns [rad].

    Hand working: 355° and -8.3° are 363.3° apart, which is 3.3°.

    >>> φ_1, φ_2 = math.radians(-8.3), math.radians(355)
    >>> round(math.degrees(apart_in_two_notches(φ_1=φ_1, φ_2=φ_2, k=1.0)), 6)
    3.3
    """
    return abs(φ_1 - φ_2 + 2 * math.pi * k)


@formula("Δφ = |φ_b + φ_f + β − 2 π k|", cites=[FIRST_PRINCIPLES])
def apart_when_reversed(φ_b: Radians, φ_f: Radians, β: Radians, k: Ratio) -> Radians:
    """How far the stated foot of a cam running backwards is from where the same cam, fixed to its shaft, has it.

    Δφ = |φ_b + φ_f + β − 2 π k|

    ``φ_b`` foot stated for running backwards, ``φ_f`` for running forwards, each in the direction of running; ``β``
    angle from foot to foot [rad]; ``k`` whole turns between the two. Returns [rad]: nothing where φ_b = −(φ_f + β).

    Hand working: a cam of 182° with its foot at 140° has it backwards at −322°, which is 38°.

    >>> feet = {"φ_b": math.radians(40), "φ_f": math.radians(140), "β": math.radians(182)}
    >>> round(math.degrees(apart_when_reversed(**feet, k=1.0)), 6)
    2.0
    """
    return abs(φ_b + φ_f + β - 2 * math.pi * k)


@formula("c = x S ω/φ", cites=[FIRST_PRINCIPLES])
def mean_speed_of_share(x: Ratio, S: Metres, ω: RadiansPerSecond, φ: Radians) -> MetresPerSecond:
    """Mean speed of a piston from dead centre over a share of its stroke.

    c = x S ω/φ

    ``x`` share of the stroke; ``S`` stroke [m]; ``ω`` speed of the crank [rad/s]; ``φ`` crank angle at which the share
    is made, above 0 [rad]. Returns [m/s]. Raises OutOfRange unless φ > 0.

    Hand working: a quarter of 660 mm in 60°, 1.047198 rad, at 26.17994 rad/s takes 0.04 s: 4.125 m/s.

    >>> round(mean_speed_of_share(x=0.25, S=0.660, ω=26.17994, φ=1.047198), 4)
    4.125
    """
    require(φ > 0, "no share of the stroke is made at dead centre")
    return x * S * ω / φ
