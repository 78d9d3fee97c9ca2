"""Loads along a valve train: its mass, what acts on a shut valve, the load at the cam and the torque that it asks."""

from __future__ import annotations

import math
from typing import Annotated

from speclint.equations import (
    COMMON_PRACTICE,
    FIRST_PRINCIPLES,
    Kilograms,
    KilogramSquareMetres,
    Metres,
    MetresPerSecond,
    MetresPerSecondSquared,
    NewtonMetres,
    Newtons,
    Pascals,
    RadiansPerSecond,
    Ratio,
    formula,
    require,
)
from speclint.errors import NotKnown
from speclint.handbook.tables import Reading
from speclint.specs import Axis, axis_in_words

MetresPerRadian = Annotated[float, "m/rad"]
MetresPerSquareRadian = Annotated[float, "m/rad²"]

_SENSE_OF_PUSH = {"open": 1.0, "shut": -1.0}


def sense_of_weight(opens: str) -> Reading:
    """Share of the weight that shuts a valve: 1 where it opens upwards, −1 downwards, the cosine of its angle between.

    >>> sense_of_weight("downwards").nominal, sense_of_weight("60 ° from upright, outwards").nominal
    (-1.0, 0.5)
    """
    return Reading.exact(f"sense of weight, opening {opens}", _axis(opens).rise, "", FIRST_PRINCIPLES)


def share_across(opens: str) -> Reading:
    """Share of the weight that lies across a valve's axis: 1 where it opens sideways, the sine of its angle between.

    >>> share_across("sideways").nominal, share_across("30 ° from upright, back").nominal
    (1.0, 0.5)
    """
    return Reading.exact(f"weight across an axis {opens}", _axis(opens).lean, "", FIRST_PRINCIPLES)


def _axis(opens: str) -> Axis:
    axis = axis_in_words(opens)
    if axis is None:
        raise NotKnown(f"{opens!r} does not say how an axis stands")
    return axis


def sense_of_push(pushed: str) -> Reading:
    """1 where steam on the end of the spindle pushes the valve open, −1 where shut.

    >>> sense_of_push("shut").nominal
    -1.0
    """
    return Reading.exact(
        f"sense of the spindle's load, pushed {pushed}", _SENSE_OF_PUSH[pushed], "", FIRST_PRINCIPLES
    )


@formula("m = m_v + m_s + m_f/3 + m_t/i² + J/b_v²", cites=[FIRST_PRINCIPLES, COMMON_PRACTICE])
def mass_at_valve(
    m_v: Kilograms,
    m_s: Kilograms,
    m_f: Kilograms,
    m_t: Kilograms,
    i: Ratio,
    J: KilogramSquareMetres,
    b_v: Metres,
) -> Kilograms:
    """Mass of the whole train reduced to the valve.

    m = m_v + m_s + m_f/3 + m_t/i² + J/b_v²

    ``m_v``, ``m_s``, ``m_f``, ``m_t`` mass of valve, spindle, springs and tappet [kg]; ``i`` travel of the valve
    over travel of the tappet; ``J`` inertia of the rocker about its axis [kg·m²] and ``b_v`` its arm
    at the valve [m]. Returns [kg]. A third of the springs moves with the valve: common practice, and exact
    for a spring that deflects evenly. Raises OutOfRange unless i > 0 and b_v > 0.

    Hand working: 4.5 + 1.5 + 0.6/3 + 0.9/1.5² + 0.0036/0.06² = 7.6 kg.

    >>> round(mass_at_valve(m_v=4.5, m_s=1.5, m_f=0.6, m_t=0.9, i=1.5, J=0.0036, b_v=0.06), 9)
    7.6
    """
    require(i > 0 and b_v > 0, "lever ratio and arm must be above 0")
    return m_v + m_s + m_f / 3 + m_t / i**2 + J / b_v**2


@formula("v = i |s′| ω", cites=[FIRST_PRINCIPLES])
def valve_speed(i: Ratio, s_prime: MetresPerRadian, ω: RadiansPerSecond) -> MetresPerSecond:
    """Speed of the valve at an angle of the cam, without sign.

    v = i |s′| ω

    ``i`` travel of the valve over travel of the tappet; ``s_prime`` derivative of the tappet's lift by the angle
    [m/rad]; ``ω`` speed of the cam [rad/s]. Returns [m/s].

    >>> round(valve_speed(i=1.0, s_prime=-0.01, ω=40.0), 6)
    0.4
    """
    return i * abs(s_prime) * ω


@formula("a = i κ ω²", cites=[FIRST_PRINCIPLES])
def valve_acceleration(i: Ratio, κ: MetresPerSquareRadian, ω: RadiansPerSecond) -> MetresPerSecondSquared:
    """Acceleration of the valve at an angle of the cam.

    a = i κ ω²

    ``i`` travel of the valve over travel of the tappet; ``κ`` second derivative of the tappet's lift by
    the angle [m/rad²]; ``ω`` speed of the cam [rad/s]. Returns [m/s²], negative where the spring must follow.

    >>> round(valve_acceleration(i=1.0, κ=-0.05, ω=40.0), 6)
    -80.0
    """
    return i * κ * ω**2


@formula("F_t = i (F_f + F_st + m a + F_r + W)", cites=[FIRST_PRINCIPLES])
def tappet_load(
    i: Ratio, F_f: Newtons, F_st: Newtons, m: Kilograms, a: MetresPerSecondSquared, F_r: Newtons, W: Newtons
) -> Newtons:
    """Load between cam and tappet, along the tappet.

    F_t = i (F_f + F_st + m a + F_r + W)

    ``i`` travel of the valve over travel of the tappet; ``F_f`` springs, ``F_st`` steam that holds the valve
    shut, ``F_r`` friction, ``W`` weight that shuts, negative where weight opens, all at the valve [N]; ``m``
    mass [kg] and ``a`` acceleration [m/s²] there. Returns [N].

    Hand working: 1.2 (1000 + 2000 + 7.5 × 100 + 20 + 50) = 4584 N.

    >>> round(tappet_load(i=1.2, F_f=1000.0, F_st=2000.0, m=7.5, a=100.0, F_r=20.0, W=50.0), 6)
    4584.0
    """
    return i * (F_f + F_st + m * a + F_r + W)


@formula("F_n = F_t/cos φ, φ = arctan(s′/(R_b + r + s))", cites=[FIRST_PRINCIPLES])
def normal_load(F_t: Newtons, s_prime: MetresPerRadian, R_b: Metres, r: Metres, s: Metres) -> Newtons:
    """Load square to the cam where a roller in line with its axis touches it.

    F_n = F_t/cos φ, φ = arctan(s′/(R_b + r + s))

    ``F_t`` load along the tappet [N]; ``s_prime`` lift per angle of the cam [m/rad]; ``R_b`` base circle, ``r`` roller,
    ``s`` lift [m]. Returns [N].

    Hand working: s′ 30 over 40: φ has the cosine 0.8; 800/0.8 = 1000 N.

    >>> round(normal_load(F_t=800.0, s_prime=0.030, R_b=0.020, r=0.010, s=0.010), 6)
    1000.0
    """
    share = s_prime / (R_b + r + s)
    root: float = (1 + share**2) ** 0.5
    return F_t * root


@formula("F_s = g π d² p/4", cites=[FIRST_PRINCIPLES])
def spindle_load(g: Ratio, d: Metres, p: Pascals) -> Newtons:
    """Load of steam on the end of a spindle that passes through a seal.

    F_s = g π d² p/4

    ``g`` 1 where it pushes the valve open, −1 where it pushes it shut; ``d`` diameter in the seal [m]; ``p``
    gauge pressure inside the seal [Pa]. Returns [N], positive for lifting.

    Hand working: 20 mm at 1.5 MPa: 314.159 × 1.5 = 471.2 N.

    >>> round(spindle_load(g=-1.0, d=0.020, p=1.5e6), 1)
    -471.2
    """
    return g * math.pi * d**2 * p / 4


@formula("F_st = max(−F, 0)", cites=[FIRST_PRINCIPLES])
def holding_load(F: Newtons) -> Newtons:
    """Steam load that holds the valve shut as it is opened.

    F_st = max(−F, 0)

    ``F`` steam load, positive for lifting [N]. Returns [N].

    >>> holding_load(F=-2000.0)
    2000.0
    """
    return (abs(F) - F) / 2


@formula("T_c = F s′", cites=[FIRST_PRINCIPLES])
def torque_of_cam(F: Newtons, s_prime: MetresPerRadian) -> NewtonMetres:
    """Torque that a cam needs to lift its tappet, by the work of a small turn.

    T_c = F s′

    ``F`` load along the tappet [N]; ``s_prime`` lift per angle of the cam [m/rad]. Returns [N·m], negative where the
    tappet drives the cam.

    >>> round(torque_of_cam(F=1500.0, s_prime=0.028), 6)
    42.0
    """
    return F * s_prime


@formula("T = T_0 + T_c", cites=[FIRST_PRINCIPLES])
def torque_together(T_0: NewtonMetres, T_c: NewtonMetres) -> NewtonMetres:
    """Torque of a shaft that drives one cam more.

    T = T_0 + T_c

    ``T_0`` torque of the cams before, ``T_c`` of one more [N·m]. Returns [N·m].

    >>> torque_together(T_0=80.0, T_c=42.0)
    122.0
    """
    return T_0 + T_c
