"""Formulae of springs that no other family needs."""

from __future__ import annotations

import math

from speclint import FIRST_PRINCIPLES, formula, require
from speclint.equations import (
    Hertz,
    Metres,
    Newtons,
    NewtonsPerMetre,
    RadiansPerSecond,
    Ratio,
)


@formula("F_O = F_U + R (L_U − L_O)", cites=[FIRST_PRINCIPLES])
def open_load_from_shut(F_U: Newtons, R: NewtonsPerMetre, L_U: Metres, L_O: Metres) -> Newtons:
    """Load of a spring at the open length, from its load at the shut length.

    F_O = F_U + R (L_U − L_O)

    ``F_U`` load at the shut length [N]; ``R`` rate [N/m]; ``L_U`` shut length [m]; ``L_O`` open length [m]. Returns
    [N]. Raises OutOfRange unless L_O < L_U.

    Hand working: 800 + 39.3 × 20 = 1586 N.

    >>> round(open_load_from_shut(F_U=800, R=39.3e3, L_U=0.105, L_O=0.085), 3)
    1586.0
    """
    require(
        L_O < L_U, f"the open length {L_O * 1e3:.6g} mm is not less than the shut length {L_U * 1e3:.6g} mm"
    )
    return F_U + R * (L_U - L_O)


@formula("S = L_O − L_c", cites=[FIRST_PRINCIPLES])
def gap_before_solid(L_O: Metres, L_c: Metres) -> Metres:
    """Clearance left before the coils touch.

    S = L_O − L_c

    ``L_O`` length at full lift, ``L_c`` greatest solid length [m]. Returns [m], negative where they touch.

    >>> round(gap_before_solid(L_O=0.085, L_c=0.068), 6)
    0.017
    """
    return L_O - L_c


@formula("n_d = n_t − n", cites=[FIRST_PRINCIPLES])
def coils_at_rest(n_t: Ratio, n: Ratio) -> Ratio:
    """Coils of a spring that do not work.

    n_d = n_t − n

    ``n_t`` all coils, ``n`` working coils [-]. Returns [-], negative where fewer are stated in all than work.

    >>> coils_at_rest(n_t=10.0, n=8.0)
    2.0
    """
    return n_t - n


@formula("Δ = |F − F_s|", cites=[FIRST_PRINCIPLES])
def load_difference(F: Newtons, F_s: Newtons) -> Newtons:
    """Difference of a calculated and a stated load, without sign.

    Δ = |F − F_s|

    ``F`` calculated, ``F_s`` stated load [N]. Returns [N].

    >>> load_difference(F=980.0, F_s=1000.0)
    20.0
    """
    return abs(F - F_s)


@formula("Δ_s = w/2", cites=[FIRST_PRINCIPLES])
def half_of_width(w: Newtons) -> Newtons:
    """How far a load may be to each side of the middle of its limits.

    Δ_s = w/2

    ``w`` from the lower to the upper limit [N]. Returns [N].

    >>> half_of_width(w=200.0)
    100.0
    """
    return w / 2


@formula("δ = |R − R_s|/R_s", cites=[FIRST_PRINCIPLES])
def rate_difference(R: NewtonsPerMetre, R_s: NewtonsPerMetre) -> Ratio:
    """Difference of a calculated and a stated rate as a share of the stated one.

    δ = |R − R_s|/R_s

    ``R`` calculated, ``R_s`` stated rate [N/m]. Returns [-]. Raises OutOfRange unless R_s > 0.

    >>> round(rate_difference(R=42e3, R_s=40e3), 6)
    0.05
    """
    require(R_s > 0, f"stated rate {R_s / 1e3:.6g} N/mm is not above 0")
    return abs(R - R_s) / R_s


@formula("j = 2 π f/ω", cites=[FIRST_PRINCIPLES])
def surge_ratio(f: Hertz, omega: RadiansPerSecond) -> Ratio:
    """Natural frequency of the spring over the rotational frequency of the cam.

    j = 2 π f/ω

    ``f`` lowest natural frequency [1/s]; ``omega`` speed of the cam [rad/s]. Returns [-].
    Raises OutOfRange unless the cam turns.

    Hand working: 120 per second on 6 revolutions a second: 20.

    >>> round(surge_ratio(f=120.0, omega=6 * 6.283185307179586), 9)
    20.0
    """
    require(omega > 0, "the cam does not turn")
    return 2 * math.pi * f / omega


@formula("c = D_h − (D + d + ΔD)", cites=[FIRST_PRINCIPLES])
def clearance_outside(D_h: Metres, D: Metres, d: Metres, ΔD: Metres) -> Metres:
    """Diametral clearance around the coils.

    c = D_h − (D + d + ΔD)

    ``D_h`` bore of what surrounds the spring; ``D`` mean coil diameter, ``d`` wire; ``ΔD`` growth of the
    outside diameter since the spring was free [m]. Returns [m], negative where the coils rub.

    Hand working: 58 − (48 + 8 + 0.152) = 1.848 mm.

    >>> round(clearance_outside(D_h=0.058, D=0.048, d=0.008, ΔD=0.152e-3) * 1e3, 3)
    1.848
    """
    return D_h - (D + d + ΔD)


@formula("c = D − d − d_p", cites=[FIRST_PRINCIPLES])
def clearance_inside(D: Metres, d: Metres, d_p: Metres) -> Metres:
    """Diametral clearance between the coils and a pin inside them; a spring is narrowest when free.

    c = D − d − d_p

    ``D`` mean coil diameter, ``d`` wire, ``d_p`` diameter of the pin [m]. Returns [m].

    >>> round(clearance_inside(D=0.048, d=0.008, d_p=0.038) * 1e3, 6)
    2.0
    """
    return D - d - d_p


@formula("c_g = x D", cites=[FIRST_PRINCIPLES])
def share_of_coil(x: Ratio, D: Metres) -> Metres:
    """A share of the mean diameter of a spring's coils.

    c_g = x D

    ``x`` share [-]; ``D`` mean coil diameter [m]. Returns [m].

    Hand working: 0.1 × 48 mm = 4.8 mm.

    >>> round(share_of_coil(x=0.1, D=0.048) * 1e3, 6)
    4.8
    """
    return x * D


@formula("F_r = F_f − W", cites=[FIRST_PRINCIPLES])
def closing_need(F_f: Newtons, W: Newtons) -> Newtons:
    """Load needed to shut a valve at slow speed: friction, less the weight that helps to shut it.

    F_r = F_f − W

    ``F_f`` friction, ``W`` weight that shuts the valve, below 0 where it opens it [N]. Returns [N], negative where
    weight alone shuts the valve.

    Hand working: 20 + 58.84 = 78.84 N.

    >>> closing_need(F_f=20.0, W=-58.84)
    78.84
    """
    return F_f - W


@formula("c_r = (D_o − d_o − D − d)/2", cites=[FIRST_PRINCIPLES])
def radial_room(D_o: Metres, d_o: Metres, D: Metres, d: Metres) -> Metres:
    """Radial clearance between a spring and the next larger one around it.

    c_r = (D_o − d_o − D − d)/2

    ``D_o``, ``d_o`` mean coil diameter and wire of the outer, ``D``, ``d`` of the inner spring [m].
    Returns [m], negative where they do not fit into each other.

    Hand working: (60 − 8 − 42 − 6)/2 = 2 mm.

    >>> round(radial_room(D_o=0.060, d_o=0.008, D=0.042, d=0.006) * 1e3, 6)
    2.0
    """
    return (D_o - d_o - D - d) / 2
