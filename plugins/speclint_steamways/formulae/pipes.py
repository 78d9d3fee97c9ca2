"""Formulae of steam pipes in addition to those of the handbook."""

from __future__ import annotations

from speclint import FIRST_PRINCIPLES, formula, require
from speclint.equations import Metres, Pascals, Ratio
from speclint.handbook.steam import BENT, EN_13480_3, STRAIGHT
from speclint_steamways.sources import ASME_II_D, EN_13480_5, PIPE_TEST, TEMA_BENDS


@formula("S = min(R_m/3.5, 2 R_p/3)", cites=[ASME_II_D.at("table 1-100, wrought ferrous material")])
def power_piping_allowable(R_m: Pascals, R_p: Pascals) -> Pascals:
    """Allowable stress of wrought steel pipe after the American code, below the temperatures of creep.

    S = min(R_m/3.5, 2 R_p/3)

    ``R_m`` least tensile strength at 20 °C; ``R_p`` least 0.2 % proof stress at metal temperature [Pa].
    Returns [Pa]. The tables of the code take precedence. Raises OutOfRange unless both are above 0.

    Hand working: 450/3.5 = 128.6, 2 × 156/3 = 104 MPa.

    >>> round(power_piping_allowable(R_m=450e6, R_p=156e6) / 1e6, 3)
    104.0
    """
    require(R_m > 0, "the tensile strength must be above 0")
    require(R_p > 0, "the proof stress must be above 0")
    return min(R_m / 3.5, 2 * R_p / 3)


@formula("t_b = t (1 − k)", cites=[FIRST_PRINCIPLES])
def wall_outside_bend(t: Metres, k: Ratio) -> Metres:
    """Wall left on the outside of a bend.

    t_b = t (1 − k)

    ``t`` wall before bending [m]; ``k`` share of it lost by bending. Returns [m].
    Raises OutOfRange unless 0 ≤ k < 1.

    >>> round(wall_outside_bend(t=0.007, k=0.2) * 1e3, 6)
    5.6
    """
    require(0 <= k < 1, f"thinning {k:.6g} is not between 0 and 1")
    return t * (1 - k)


@formula("k = x D/(D + 4 R)", cites=[TEMA_BENDS])
def least_thinning(x: Ratio, D: Metres, R: Metres) -> Ratio:
    """Least share of its wall that the outside of a bend loses as a tube is bent.

    k = x D/(D + 4 R)

    ``x`` share of the least thinning that is asked [-]; ``D`` outside of the tube, ``R`` radius of the bend's centre
    line [m]. Returns [-]. Raises OutOfRange unless D and R are above 0.

    The wall before bending is t (1 + D/(4 R)) for a wall t after it, so that D/(D + 4 R) of it is lost. Hand working: R
    of 2 D loses a ninth.

    >>> round(least_thinning(x=1.0, D=0.1, R=0.2), 6)
    0.111111
    """
    require(D > 0 and R > 0, "a bend has a diameter and a radius")
    return x * D / (D + 4 * R)


@formula("t = e + c", cites=[EN_13480_3.at("4.3, thickness with allowances")])
def with_allowance(e: Metres, c: Metres) -> Metres:
    """Wall after EN 13480-3 with the allowance for corrosion and wear.

    t = e + c

    ``e`` wall that the pressure needs, ``c`` allowance [m]. Returns [m].

    >>> round(with_allowance(e=0.002, c=0.001) * 1e3, 6)
    3.0
    """
    return e + c


@formula("p_w = p max(k, 1.25 f_20/f_T)", cites=[EN_13480_5.at("9.3.2.2"), PIPE_TEST])
def wanted_pipe_test(p: Pascals, k: Ratio, f_20: Pascals, f_T: Pascals) -> Pascals:
    """Hydraulic test pressure that a pipe needs.

    p_w = p max(k, 1.25 f_20/f_T)

    ``p`` pressure in service, gauge [Pa]; ``k`` least factor; ``f_20``, ``f_T`` allowable stress cold and at
    service temperature [Pa]. Returns [Pa] gauge. Raises OutOfRange unless f_T is above 0.

    Hand working: 1.6 MPa, 1.5, 180 and 100 MPa: 1.25 × 1.8 = 2.25, 3.6 MPa.

    >>> round(wanted_pipe_test(p=1.6e6, k=1.5, f_20=180e6, f_T=100e6) / 1e6, 6)
    3.6
    """
    require(f_T > 0, "the allowable stress must be above 0")
    return p * max(k, 1.25 * f_20 / f_T)


@formula("S = p (D − 2 y t)/(2 E t)", cites=[STRAIGHT])
def hoop_stress_of_pipe(p: Pascals, D: Metres, t: Metres, E: Ratio, y: Ratio) -> Pascals:
    """Hoop stress in the wall of a pipe by the formula of the code.

    S = p (D − 2 y t)/(2 E t)

    ``p`` gauge [Pa]; ``D`` outside, ``t`` wall without its allowance [m]; ``E`` joint factor; ``y`` factor of
    the code. Returns [Pa]. Raises OutOfRange unless 0 < t < D/2 and 0 < E ≤ 1.

    Hand working: 3 MPa, 100 mm, 4 mm, y 0.4: 3 × 96.8/8 = 36.3 MPa.

    >>> round(hoop_stress_of_pipe(p=3e6, D=0.1, t=0.004, E=1.0, y=0.4) / 1e6, 6)
    36.3
    """
    require(t > 0 and 2 * t < D, f"wall {t * 1e3:.6g} mm is not between 0 and half of {D * 1e3:.6g} mm")
    require(0 < E <= 1, f"joint factor {E:.6g} is not between 0 and 1")
    return p * (D - 2 * y * t) / (2 * E * t)


@formula("S_b = I S", cites=[BENT])
def hoop_stress_in_bend(I: Ratio, S: Pascals) -> Pascals:  # noqa: E741
    """Hoop stress at the inside or the outside of a bend by the formula of the code.

    S_b = I S

    ``I`` factor of the code for that side; ``S`` of straight pipe with the wall that is there [Pa]. Returns [Pa].
    Raises OutOfRange unless I is above 0.

    Hand working: the inside of a bend of R = 1.5 D, 1.25 × 80 MPa.

    >>> hoop_stress_in_bend(I=1.25, S=80e6) / 1e6
    100.0
    """
    require(I > 0, f"the factor of the bend {I:.6g} is not above 0")
    return I * S
