"""The valve train in motion: mass reduced to the valve, loads at the cam, clearance."""

from __future__ import annotations

from typing import Annotated

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, formula, require
from speclint.equations import (
    Kilograms,
    Metres,
    MetresPerSecondSquared,
    Newtons,
    Radians,
    RadiansPerSecond,
    Ratio,
)

MetresPerSquareRadian = Annotated[float, "m/rad²"]


@formula("F = −m a", cites=[FIRST_PRINCIPLES])
def following_load(m: Kilograms, a: MetresPerSecondSquared) -> Newtons:
    """Load that makes the train follow the cam.

    F = −m a

    ``m`` mass at the valve [kg]; ``a`` acceleration of the valve [m/s²]. Returns [N].

    >>> following_load(m=7.5, a=-80.0)
    600.0
    """
    return -m * a


@formula("F = F_f + W − F_r − F_w", cites=[FIRST_PRINCIPLES])
def load_to_follow(F_f: Newtons, W: Newtons, F_r: Newtons, F_w: Newtons) -> Newtons:
    """Load available to keep the valve on the cam.

    F = F_f + W − F_r − F_w

    ``F_f`` springs at the lift, ``W`` weight that shuts, ``F_r`` friction, ``F_w`` steam that holds the valve
    open [N]. Returns [N].

    >>> load_to_follow(F_f=1000.0, W=50.0, F_r=20.0, F_w=30.0)
    1000.0
    """
    return F_f + W - F_r - F_w


@formula("F_a = F_n + F_r + F_w − W", cites=[FIRST_PRINCIPLES])
def asked_of_springs(F_n: Newtons, F_r: Newtons, F_w: Newtons, W: Newtons) -> Newtons:
    """Load that the springs need while the valve moves.

    F_a = F_n + F_r + F_w − W

    ``F_n`` load that the train's inertia needs, including its margin, ``F_r`` friction, ``F_w`` steam that holds the
    valve open, ``W`` weight that shuts [N]. Returns [N].

    >>> asked_of_springs(F_n=780.0, F_r=20.0, F_w=30.0, W=50.0)
    780.0
    """
    return F_n + F_r + F_w - W


@formula("ω_o = x ω", cites=[COMMON_PRACTICE])
def overspeed(x: Ratio, ω: RadiansPerSecond) -> RadiansPerSecond:
    """Speed of the cam beyond the greatest permitted.

    ω_o = x ω

    ``x`` factor; ``ω`` greatest permitted speed [rad/s]. Returns [rad/s].

    >>> round(overspeed(x=1.1, ω=40.0), 9)
    44.0
    """
    return x * ω


@formula("F_v = F_t/i", cites=[FIRST_PRINCIPLES])
def valve_end_load(F_t: Newtons, i: Ratio) -> Newtons:
    """Load at the valve end of the train.

    F_v = F_t/i

    ``F_t`` load along the tappet [N]; ``i`` travel of the valve over travel of the tappet. Returns [N].
    Raises OutOfRange unless i > 0.

    >>> valve_end_load(F_t=3600.0, i=1.2)
    3000.0
    """
    require(i > 0, "the lever ratio must be above 0")
    return F_t / i


@formula("e = max(a − Δc/2, 0)", cites=[FIRST_PRINCIPLES])
def setting_error(a: Metres, Δc: Metres) -> Metres:
    """How far the clearance may be set outside the limits of its drawing.

    e = max(a − Δc/2, 0)

    ``a`` accuracy to which it can be set, either way; ``Δc`` tolerance of the drawing, from limit to limit [m].
    Returns [m]: none where the setting is as close as the drawing asks.

    Hand working: to 0.05 mm, where ± 0.03 is drawn: 0.02 mm.

    >>> round(setting_error(a=0.05e-3, Δc=0.06e-3) * 1e3, 6), setting_error(a=0.02e-3, Δc=0.06e-3)
    (0.02, 0.0)
    """
    return max(a - Δc / 2, 0.0 * a)


@formula("φ = x φ_1", cites=[FIRST_PRINCIPLES])
def angle_at(x: Ratio, φ_1: Radians) -> Radians:
    """Angle of the cam at a share of its lift's duration.

    φ = x φ_1

    ``x`` share; ``φ_1`` angle over which the tappet is off the base circle [rad]. Returns [rad].

    >>> angle_at(x=0.5, φ_1=2.0)
    1.0
    """
    return x * φ_1
