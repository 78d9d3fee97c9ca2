"""The piston at the ends of its stroke: clearance hot, stretch of the rod, overrun of rings, clearance volume."""

from __future__ import annotations

import math
from typing import Annotated

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, formula, require
from speclint.equations import (
    Kelvins,
    Metres,
    Newtons,
    Pascals,
    PerKelvin,
    Ratio,
    SquareMetres,
)

#: Brinell hardness: a number of its own scale.
Brinell = Annotated[float, "HB"]


@formula("c_h = c + s (x α_b (T_b − T_ref) − L α_r (T_r − T_ref))", cites=[FIRST_PRINCIPLES])
def clearance_when_hot(
    c: Metres,
    s: Ratio,
    x: Metres,
    alpha_b: PerKelvin,
    T_b: Kelvins,
    L: Metres,
    alpha_r: PerKelvin,
    T_r: Kelvins,
    T_ref: Kelvins,
) -> Metres:
    """Clearance from piston to cover, hot, before wear and stretch.

    c_h = c + s (x α_b (T_b − T_ref) − L α_r (T_r − T_ref))

    ``c`` clearance at ``T_ref`` [m]; ``s`` 1 at the front, −1 at the back; ``x`` face of the cover, forward of
    the block's fixed point [m]; ``L`` from crosshead to piston [m]; ``alpha_b``, ``alpha_r`` mean coefficients
    of block and rod from ``T_ref`` [1/K]; ``T_b``, ``T_r``, ``T_ref`` temperatures [K]. Returns [m].
    Growth of the rod moves the piston forward; a block grows away from its fixed point in both directions.

    Hand working: front, 8 + 700 × 12e-6 × 200 − 1500 × 12e-6 × 50 = 8 + 1.68 − 0.90 = 8.78 mm.

    >>> hot = {"alpha_b": 12e-6, "T_b": 493.15, "alpha_r": 12e-6, "T_r": 343.15, "T_ref": 293.15}
    >>> round(clearance_when_hot(c=8e-3, s=1, x=0.700, L=1.500, **hot) * 1e3, 3)
    8.78
    """
    return c + s * (x * alpha_b * (T_b - T_ref) - L * alpha_r * (T_r - T_ref))


@formula("c_r = c − s (l α_c (T_c − T_ref) − L_f α_f (T_f − T_ref))", cites=[FIRST_PRINCIPLES])
def clearance_with_driving_rod(
    c: Metres,
    s: Ratio,
    l: Metres,  # noqa: E741 - the letter of the equation
    alpha_c: PerKelvin,
    T_c: Kelvins,
    L_f: Metres,
    alpha_f: PerKelvin,
    T_f: Kelvins,
    T_ref: Kelvins,
) -> Metres:
    """Clearance from piston to cover with the growth of the connecting rod, and of the frame that it is held by.

    c_r = c − s (l α_c (T_c − T_ref) − L_f α_f (T_f − T_ref))

    ``c`` clearance with block and piston rod hot [m]; ``s`` 1 at the front, −1 at the back; ``l`` connecting rod
    between centres, ``L_f`` frame from the driven axle to the block's fixed point [m]; ``alpha_c``, ``alpha_f`` their
    mean coefficients from ``T_ref`` [1/K]; ``T_c``, ``T_f``, ``T_ref`` temperatures [K]. Returns [m]. The rod carries
    the piston forward, the frame the block.

    Hand working: front, 8 − (2000 × 12e-6 × 30 − 3500 × 12e-6 × 10) = 8 − 0.72 + 0.42 = 7.70 mm.

    >>> warm = {"alpha_c": 12e-6, "T_c": 323.15, "alpha_f": 12e-6, "T_f": 303.15, "T_ref": 293.15}
    >>> round(clearance_with_driving_rod(c=8e-3, s=1, l=2.0, L_f=3.5, **warm) * 1e3, 6)
    7.7
    """
    return c - s * (l * alpha_c * (T_c - T_ref) - L_f * alpha_f * (T_f - T_ref))


@formula("u = F l/(A E)", cites=[FIRST_PRINCIPLES])
def stretch_of_section(F: Newtons, l: Metres, A: SquareMetres, E: Pascals) -> Metres:  # noqa: E741
    """Stretch of the connecting rod.

    u = F l/(A E)

    ``F`` force along it [N]; ``l`` its length [m]; ``A`` its least section [m²]; ``E`` modulus [Pa].
    Returns [m]. Raises OutOfRange unless A and E are above 0.

    Hand working: 103.95 kN, 1980 mm, 5000 mm², 200 GPa: 0.205821 mm.

    >>> round(stretch_of_section(F=103.95e3, l=1.98, A=5e-3, E=200e9) * 1e3, 6)
    0.205821
    """
    require(A > 0 and E > 0, f"section {A * 1e6:.6g} mm² and modulus {E / 1e6:.6g} MPa must be above 0")
    return F * l / (A * E)


@formula("u = u_1 + u_2", cites=[FIRST_PRINCIPLES])
def stretches_together(u_1: Metres, u_2: Metres) -> Metres:
    """Stretch of piston rod and connecting rod together.

    u = u_1 + u_2

    ``u_1``, ``u_2`` stretch of each [m]. Returns [m].

    >>> round(stretches_together(u_1=0.12e-3, u_2=0.2e-3) * 1e3, 6)
    0.32
    """
    return u_1 + u_2


@formula("u = 4 F L/(π d² E)", cites=[FIRST_PRINCIPLES])
def rod_stretch(F: Newtons, L: Metres, d: Metres, E: Pascals) -> Metres:
    """Stretch of the piston rod.

    u = 4 F L/(π d² E)

    ``F`` force along it [N]; ``L`` its length, ``d`` its diameter [m]; ``E`` modulus [Pa]. Returns [m].

    Hand working: 103.95 kN, 1500 mm, 90 mm (6361.7 mm²), 200 GPa: 0.12255 mm.

    >>> round(rod_stretch(F=103.95e3, L=1.5, d=0.090, E=200e9) * 1e3, 5)
    0.12255
    """
    return 4 * F * L / (math.pi * d**2 * E)


@formula("c_l = c_h − u − w", cites=[FIRST_PRINCIPLES])
def clearance_left(c_h: Metres, u: Metres, w: Metres) -> Metres:
    """Clearance from piston to cover, hot, worn and at speed.

    c_l = c_h − u − w

    ``c_h`` clearance hot, ``u`` stretch of the rod, ``w`` wear that moves the piston [m]. Returns [m].

    >>> round(clearance_left(c_h=8.78e-3, u=0.12e-3, w=1e-3) * 1e3, 6)
    7.66
    """
    return c_h - u - w


@formula("c_p = c − L_p α_p (T_p − T_ref)/2", cites=[FIRST_PRINCIPLES])
def clearance_beside_hot_piston(
    c: Metres, L_p: Metres, alpha_p: PerKelvin, T_p: Kelvins, T_ref: Kelvins
) -> Metres:
    """Clearance from piston to cover with the growth of the piston, whose faces move away from its middle.

    c_p = c − L_p α_p (T_p − T_ref)/2

    ``c`` clearance with the piston cold, ``L_p`` its length [m]; ``alpha_p`` its mean coefficient from ``T_ref`` [1/K];
    ``T_p``, ``T_ref`` temperatures [K]. Returns [m].

    Hand working: 8 − 150 × 13e-6 × 300/2 = 8 − 0.2925 = 7.7075 mm.

    >>> grown = clearance_beside_hot_piston(c=8e-3, L_p=0.150, alpha_p=13e-6, T_p=593.15, T_ref=293.15)
    >>> round(grown * 1e3, 4)
    7.7075
    """
    return c - L_p * alpha_p * (T_p - T_ref) / 2


@formula("w = |x_w − x_f|", cites=[FIRST_PRINCIPLES])
def beyond_working_bore(x_w: Metres, x_f: Metres) -> Metres:
    """Length from the cover's face to the beginning of the working bore.

    w = |x_w − x_f|

    ``x_w`` end of the working bore, ``x_f`` face of the cover, both from the collar's seat [m]. Returns [m].

    >>> round(beyond_working_bore(x_w=0.088, x_f=0.035) * 1e3, 6)
    53.0
    """
    return abs(x_w - x_f)


@formula("o = w − c − e", cites=[FIRST_PRINCIPLES])
def ring_overrun(w: Metres, c: Metres, e: Metres) -> Metres:
    """Overrun of the ring past the end of the working bore.

    o = w − c − e

    ``w`` from the cover's face to the working bore, ``c`` clearance from piston to cover, ``e`` from the
    piston's face to the ring's nearer edge [m]. Returns [m], negative when the ring stays within.

    >>> round(ring_overrun(w=0.053, c=0.008, e=0.040) * 1e3, 6)
    5.0
    """
    return w - c - e


@formula("o_max = b (1 − k)", cites=[COMMON_PRACTICE])
def greatest_overrun(b: Metres, k: Ratio) -> Metres:
    """Greatest overrun with which a ring is still held in the bore.

    o_max = b (1 − k)

    ``b`` width of the ring along the axis [m]; ``k`` share of it that stays in the bore [-]. Returns [m]. A ring with
    more overrun may spring out of the bore.

    >>> round(greatest_overrun(b=0.014, k=0.25) * 1e3, 6)
    10.5
    """
    return b * (1 - k)


@formula("r = |x_p − x_w| − h/2", cites=[FIRST_PRINCIPLES])
def room_before_port(x_p: Metres, x_w: Metres, h: Metres) -> Metres:
    """Length of bore between the end of the working bore and the edge of the port beyond it.

    r = |x_p − x_w| − h/2

    ``x_p`` middle of the port, ``x_w`` end of the working bore, both from the collar's seat; ``h`` opening of the
    port along the axis [m]. Returns [m], negative when the port opens into the working bore.

    Hand working: a port of 40 mm at 60 mm, working bore from 88 mm: 28 − 20 = 8 mm.

    >>> round(room_before_port(x_p=0.060, x_w=0.088, h=0.040) * 1e3, 6)
    8.0
    """
    return abs(x_p - x_w) - h / 2


@formula("m = |a α (T − T_ref) − s|", cites=[FIRST_PRINCIPLES])
def axis_out_of_line(a: Metres, alpha: PerKelvin, T: Kelvins, T_ref: Kelvins, s: Metres) -> Metres:
    """Distance of the bore's hot axis from the centre line of the motion.

    m = |a α (T − T_ref) − s|

    ``a`` from the frame face that locates the block to the axis [m]; ``alpha`` mean coefficient of the block
    from ``T_ref`` [1/K]; ``T``, ``T_ref`` temperatures [K]; ``s`` offset of the axis towards the frame cold [m].
    Returns [m].

    Hand working: 350 × 13e-6 × 240 − 0.95 = 0.142 mm.

    >>> round(axis_out_of_line(a=0.350, alpha=13e-6, T=533.15, T_ref=293.15, s=0.95e-3) * 1e3, 3)
    0.142
    """
    return abs(a * alpha * (T - T_ref) - s)


@formula("Δ = |H_1 − H_2|", cites=[FIRST_PRINCIPLES], empirical="Brinell hardness numbers")
def hardness_apart(H_1: Brinell, H_2: Brinell) -> Brinell:
    """Difference of two Brinell hardnesses.

    Δ = |H_1 − H_2|

    ``H_1``, ``H_2`` hardnesses [HB]. Returns [HB].

    >>> hardness_apart(H_1=230.0, H_2=210.0)
    20.0
    """
    return abs(H_1 - H_2)
