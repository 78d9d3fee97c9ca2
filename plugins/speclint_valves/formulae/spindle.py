"""Spindle and rocker: stress, deflection, and the room to withdraw a part."""

from __future__ import annotations

import math

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, formula, require
from speclint.equations import Metres, MetresToTheFourth, Newtons, Pascals, Ratio


@formula("σ = 4 F/(π d²)", cites=[FIRST_PRINCIPLES])
def direct_stress(F: Newtons, d: Metres) -> Pascals:
    """Direct stress of a round section.

    σ = 4 F/(π d²)

    ``F`` load [N]; ``d`` diameter [m]. Returns [Pa]. Raises OutOfRange unless d > 0.

    Hand working: 5000 N on 16 mm: 5000/201.06 = 24.87 MPa.

    >>> round(direct_stress(F=5000.0, d=0.016) / 1e6, 2)
    24.87
    """
    require(d > 0, f"diameter {d * 1e3:.6g} mm is not above 0")
    return 4 * F / (math.pi * d**2)


@formula("F_p = F_v + F_t", cites=[FIRST_PRINCIPLES])
def pin_load(F_v: Newtons, F_t: Newtons) -> Newtons:
    """Load on the pin of a rocker, with the loads of both arms in the same direction.

    F_p = F_v + F_t

    ``F_v`` load at the valve, ``F_t`` load at the tappet [N]. Returns [N].

    >>> pin_load(F_v=3000.0, F_t=3600.0)
    6600.0
    """
    return F_v + F_t


@formula("σ = 6 F (b − B/2)/(w h²)", cites=[FIRST_PRINCIPLES])
def arm_stress(F: Newtons, b: Metres, B: Metres, w: Metres, h: Metres) -> Pascals:
    """Bending stress of a rocker's arm at its boss.

    σ = 6 F (b − B/2)/(w h²)

    ``F`` load at the end of the arm [N]; ``b`` arm from the axis, ``B`` diameter of the boss, ``w`` width and
    ``h`` depth of the arm there [m]. Returns [Pa]. Raises OutOfRange unless b > B/2.

    Hand working: 6 × 3000 × (60 − 25)/(20 × 900) = 35 MPa.

    >>> round(arm_stress(F=3000.0, b=0.060, B=0.050, w=0.020, h=0.030) / 1e6, 6)
    35.0
    """
    require(b > B / 2, f"an arm of {b * 1e3:.6g} mm does not reach beyond a boss of {B * 1e3:.6g} mm")
    return 6 * F * (b - B / 2) / (w * h**2)


@formula("σ = 8 F L/(π d³)", cites=[FIRST_PRINCIPLES])
def pin_bending_stress(F: Newtons, L: Metres, d: Metres) -> Pascals:
    """Bending stress of a pin with its load in the middle between two supports.

    σ = 8 F L/(π d³)

    ``F`` load [N]; ``L`` between the supports, ``d`` pin [m]. Returns [Pa].

    Hand working: M = 6600 × 60/4 = 99 000 N·mm; Z = π 30³/32 = 2650.7 mm³: 37.35 MPa.

    >>> round(pin_bending_stress(F=6600.0, L=0.060, d=0.030) / 1e6, 2)
    37.35
    """
    return 8 * F * L / (math.pi * d**3)


@formula(
    "f = (F_v (b_v − B/2)³ + i F_t (b_t − B/2)³)/(3 E I) + (1 + i) F_p L³/(48 E I_p)",
    cites=[FIRST_PRINCIPLES],
)
def lift_lost(
    F_v: Newtons,
    F_t: Newtons,
    F_p: Newtons,
    b_v: Metres,
    b_t: Metres,
    B: Metres,
    I: MetresToTheFourth,  # noqa: E741 - the symbol of the trade
    L: Metres,
    I_p: MetresToTheFourth,
    E: Pascals,
    i: Ratio,
) -> Metres:
    """Lift that a valve loses by deflection of its rocker and the rocker's pin.

    f = F_v b_v'³/(3 E I) + i F_t b_t'³/(3 E I) + (1 + i) F_p L³/(48 E I_p), b' = b − B/2

    ``F_v``, ``F_t``, ``F_p`` loads at valve, tappet and pin [N]; ``b_v``, ``b_t`` arms from the axis, ``B``
    diameter of the boss [m]; ``I`` second moment of the arms [m⁴]; ``L`` between the supports of the pin [m],
    ``I_p`` second moment of the pin [m⁴]; ``E`` modulus [Pa]; ``i`` travel of the valve over travel of the tappet.
    Returns [m]. The arms have one section, and the middle of the pin moves with the load. A pin
    that deflects by u, with the tappet held by its cam, takes (1 + i) u from the lift of the valve.

    Hand working, 3000/3000/6000 N, arms 60 mm, boss 40, I 45000 mm⁴, pin 30 mm over 60 mm, 200 GPa:
    2 × 3000 × 40³/(3 × 200000 × 45000) = 0.01422; 2 × 6000 × 60³/(48 × 200000 × 39761) = 0.00679; 0.02101 mm.

    >>> arms = {"b_v": 0.06, "b_t": 0.06, "B": 0.04, "I": 45000e-12, "L": 0.06, "I_p": 39761e-12}
    >>> round(lift_lost(F_v=3000.0, F_t=3000.0, F_p=6000.0, E=200e9, i=1.0, **arms) * 1e3, 5)
    0.02101
    """
    free_v, free_t = b_v - B / 2, b_t - B / 2
    arms = (F_v * free_v**3 + i * F_t * free_t**3) / (3 * E * I)
    return arms + (1 + i) * F_p * L**3 / (48 * E * I_p)


@formula("t_n = x z", cites=[COMMON_PRACTICE])
def depth_with_margin(x: Ratio, z: Metres) -> Metres:
    """Depth of hardened skin wanted over the greatest shear beneath a contact.

    t_n = x z

    ``x`` factor; ``z`` depth of the greatest shear [m]. Returns [m].

    >>> round(depth_with_margin(x=2.0, z=0.14e-3) * 1e3, 6)
    0.28
    """
    return x * z


@formula("l_n = L + r", cites=[FIRST_PRINCIPLES])
def length_with_room(L: Metres, r: Metres) -> Metres:
    """Free length needed to take a part out.

    l_n = L + r

    ``L`` its length, ``r`` clearance beyond it [m]. Returns [m].

    >>> round(length_with_room(L=0.4, r=0.025), 6)
    0.425
    """
    return L + r
