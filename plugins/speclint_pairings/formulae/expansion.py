"""Unequal expansion of two parts that are joined."""

from __future__ import annotations

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, formula
from speclint.equations import Kelvins, Metres, Pascals, PerKelvin, Ratio


@formula("s = C |α_1 (T_1 − T_ref) − α_2 (T_2 − T_ref)|/2", cites=[FIRST_PRINCIPLES])
def shift_at_studs(
    C: Metres, alpha_1: PerKelvin, T_1: Kelvins, alpha_2: PerKelvin, T_2: Kelvins, T_ref: Kelvins
) -> Metres:
    """Movement of a part against the part below it at the stud circle, each free to expand.

    s = C |α_1 (T_1 − T_ref) − α_2 (T_2 − T_ref)|/2

    ``C`` circle of the studs [m]; ``alpha_1``, ``alpha_2`` mean coefficients of expansion of both parts [1/K]; ``T_1``,
    ``T_2`` temperatures of both parts [K]; ``T_ref`` temperature from which the coefficients count [K]. Returns [m].

    Hand working: 700 mm, 12e-6 × 200 − 12e-6 × 240 = 0.48e-3: 350 × 0.00048 = 0.168 mm.

    >>> round(shift_at_studs(C=0.7, alpha_1=12e-6, T_1=493.15, alpha_2=12e-6, T_2=533.15, T_ref=293.15) * 1e3, 6)
    0.168
    """
    return C * abs(alpha_1 * (T_1 - T_ref) - alpha_2 * (T_2 - T_ref)) / 2


@formula("r_n = x r", cites=[COMMON_PRACTICE])
def share_of_room(x: Ratio, r: Metres) -> Metres:
    """Clearance that expansion may use.

    r_n = x r

    ``x`` share; ``r`` room [m]. Returns [m].

    >>> round(share_of_room(x=0.5, r=1e-3) * 1e3, 6)
    0.5
    """
    return x * r


@formula("σ = E |α_1 − α_2| |T − T_ref|", cites=[FIRST_PRINCIPLES])
def stress_of_unlike_plates(
    E: Pascals, alpha_1: PerKelvin, alpha_2: PerKelvin, T: Kelvins, T_ref: Kelvins
) -> Pascals:
    """Range of stress along the seam of two unlike plates, all of it in one of them.

    σ = E |α_1 − α_2| |T − T_ref|

    ``E`` modulus of the plate that is strained [Pa]; ``alpha_1``, ``alpha_2`` mean coefficients from ``T_ref`` [1/K];
    ``T`` of both plates, ``T_ref`` cold [K]. Returns [Pa]. Two plates of one thickness share it equally; a thin one
    on a thick one carries all of it.

    Hand working: 200 GPa, 17e-6 − 12e-6, 250 K: 200e3 × 0.00125 = 250 MPa.

    >>> round(stress_of_unlike_plates(E=200e9, alpha_1=17e-6, alpha_2=12e-6, T=543.15, T_ref=293.15) / 1e6, 6)
    250.0
    """
    return E * abs(alpha_1 - alpha_2) * abs(T - T_ref)


@formula("S = k R_p", cites=[FIRST_PRINCIPLES])
def range_allowed(k: Ratio, R_p: Pascals) -> Pascals:
    """Range of stress that repeats without yielding again each time (shakedown).

    S = k R_p

    ``k`` 2 for the range from yield in tension to yield in compression; ``R_p`` proof stress [Pa]. Returns [Pa].

    >>> range_allowed(k=2.0, R_p=200e6)
    400000000.0
    """
    return k * R_p
