"""A pipe between what carries it: its weight, and the stress of that beside its pressure."""

from __future__ import annotations

import math

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, formula, require
from speclint.equations import (
    CGPM,
    STANDARD_GRAVITY,
    CubicMetres,
    Kilograms,
    Metres,
    MetresToTheFourth,
    NewtonMetres,
    NewtonsPerMetre,
    Pascals,
    Ratio,
)
from speclint_steamways.sources import KELLOGG, SUSTAINED, SUSTAINED_BEND

#: Cold water, kg/m³.
_WATER = 1000.0
#: Of a pipe whose ends are neither free to turn nor held: 12/1.2, and 1728/17.1.
_MOMENT, _SAG = 10.0, 1728 / 17.1
#: Moment beside a joint that bends freely, where it does most harm between two ends that are held, over w l².
_BESIDE_JOINT = 0.137
#: Of the American code: in the factor of a bend, and the share of a factor that counts beside pressure.
_OF_BEND, _SHARE = 0.9, 0.75


@formula("l = L/(n + 1)", cites=[FIRST_PRINCIPLES])
def span_between(L: Metres, n: Ratio) -> Metres:
    """Length of a pipe between two places that carry it, evenly apart.

    l = L/(n + 1)

    ``L`` developed length [m]; ``n`` how many brackets carry it between its ends [-]. Returns [m].
    Raises OutOfRange unless n is at least 0.

    >>> span_between(L=6.0, n=2.0)
    2.0
    """
    require(n >= 0, "there are no fewer brackets than none")
    return L / (n + 1)


@formula(
    "w = 9.80665 m/s² · (M/L + 1000 kg/m³ · π d²/4)",
    cites=[FIRST_PRINCIPLES, CGPM, COMMON_PRACTICE],
    empirical="kg, m and N",
)
def weight_full_of_water(M: Kilograms, L: Metres, d: Metres) -> NewtonsPerMetre:
    """Weight of one metre of a pipe full of cold water.

    w = 9.80665 m/s² · (M/L + 1000 kg/m³ · π d²/4)

    ``M`` mass of the empty pipe [kg], ``L`` its length, ``d`` its bore [m]. Returns [N/m].
    Raises OutOfRange unless L is above 0.

    Hand working: 40 kg on 2 m are 20 kg/m, and a bore of 100 mm holds 7.854 kg/m: 27.854 × 9.80665 = 273.2 N/m.

    >>> round(weight_full_of_water(M=40.0, L=2.0, d=0.1), 1)
    273.2
    """
    require(L > 0, "the length must be above 0")
    return (M / L + _WATER * math.pi * d**2 / 4) * STANDARD_GRAVITY


@formula("w_j = (1 + n) w", cites=[FIRST_PRINCIPLES])
def jolted_load(w: NewtonsPerMetre, n: Ratio) -> NewtonsPerMetre:
    """Load on one metre as the track jolts the engine.

    w_j = (1 + n) w

    ``w`` weight of one metre [N/m]; ``n`` acceleration in times gravity [-]. Returns [N/m].

    >>> jolted_load(w=200.0, n=2.0)
    600.0
    """
    return (1 + n) * w


@formula("M = w l²/10", cites=[KELLOGG])
def moment_of_span(w: NewtonsPerMetre, l: Metres) -> NewtonMetres:  # noqa: E741
    """Greatest moment of its weight in a pipe between two places that carry it.

    M = w l²/10

    ``w`` load on one metre [N/m]; ``l`` span [m]. Returns [N·m]. Of a bar that is free to turn there it is w l²/8,
    of one that is held w l²/12.

    Hand working: 600 N/m on 3 m: 600 × 9/10 = 540 N·m.

    >>> moment_of_span(w=600.0, l=3.0)
    540.0
    """
    return w * l**2 / _MOMENT


@formula("M = 0.137 w l²", cites=[FIRST_PRINCIPLES])
def moment_beside_sliding_joint(w: NewtonsPerMetre, l: Metres) -> NewtonMetres:  # noqa: E741
    """Greatest moment of its weight in a pipe with a joint in it that bends freely and carries across.

    M = 0.137 w l²

    ``w`` load on one metre [N/m]; ``l`` span between two ends that are held [m]. Returns [N·m].

    The joint stands where it does most harm, at 0.42 l: it sinks alike on both sides, w a⁴/8 + V a³/3 = w b⁴/8 − V
    b³/3, and w a²/2 + V a is greatest, 0.1362 w l². Hand working, at a = 0.4 l: V (0.4³ + 0.6³)/3 = (0.6⁴ − 0.4⁴)/8, so
    that V = 0.1393 w l, and 0.08 + 0.4 × 0.1393 = 0.1357.

    >>> round(moment_beside_sliding_joint(w=600.0, l=3.0), 1)
    739.8
    """
    return _BESIDE_JOINT * w * l**2


@formula("M = w l²/2", cites=[FIRST_PRINCIPLES])
def moment_of_free_end(w: NewtonsPerMetre, l: Metres) -> NewtonMetres:  # noqa: E741
    """Moment of its weight where a pipe is held whose other end hangs free.

    M = w l²/2

    ``w`` load on one metre [N/m]; ``l`` length that hangs [m]. Returns [N·m].

    >>> moment_of_free_end(w=600.0, l=3.0)
    2700.0
    """
    return w * l**2 / 2


@formula("y = w l⁴/(8 E I)", cites=[FIRST_PRINCIPLES])
def sag_of_free_end(w: NewtonsPerMetre, l: Metres, E: Pascals, I: MetresToTheFourth) -> Metres:  # noqa: E741
    """Sag of the free end of a pipe that is held at the other.

    y = w l⁴/(8 E I)

    ``w`` load on one metre [N/m]; ``l`` length that hangs [m]; ``E`` modulus [Pa]; ``I`` second moment [m⁴].
    Returns [m]. Raises OutOfRange unless E and I are above 0.

    Hand working: 400 N/m on 2 m, 200 GPa, 5e-6 m⁴: 400 × 16/(8 × 1e6) = 0.8 mm.

    >>> round(sag_of_free_end(w=400.0, l=2.0, E=200e9, I=5e-6) * 1e3, 6)
    0.8
    """
    require(E > 0 and I > 0, "modulus and second moment must be above 0")
    return w * l**4 / (8 * E * I)


@formula("y = 17.1 w l⁴/(1728 E I)", cites=[KELLOGG])
def sag_of_span(w: NewtonsPerMetre, l: Metres, E: Pascals, I: MetresToTheFourth) -> Metres:  # noqa: E741
    """Sag of a pipe between two places that carry it.

    y = 17.1 w l⁴/(1728 E I)

    ``w`` load on one metre [N/m]; ``l`` span [m]; ``E`` modulus [Pa]; ``I`` second moment [m⁴]. Returns [m]. Raises
    OutOfRange unless E and I are above 0. Of a bar that is free to turn there it is w l⁴/(76.8 E I), of one that is
    held a fifth of that.

    Hand working: 400 N/m on 4 m, 200 GPa, 5e-6 m⁴: 17.1 × 400 × 256/(1728 × 1e6) = 1.0133 mm.

    >>> round(sag_of_span(w=400.0, l=4.0, E=200e9, I=5e-6) * 1e3, 4)
    1.0133
    """
    require(E > 0 and I > 0, "modulus and second moment must be above 0")
    return w * l**4 / (_SAG * E * I)


@formula("i = max(1, 0.9/h^(2/3)), h = 4 t R/(D − t)²", cites=[SUSTAINED_BEND])
def stress_factor_of_bend(t: Metres, R: Metres, D: Metres) -> Ratio:
    """Factor by which a bend is stressed more than straight pipe by the same moment.

    i = max(1, 0.9/h^(2/3)), h = 4 t R/(D − t)²

    ``t`` wall, ``R`` radius of the bend's centre line, ``D`` outside of the pipe [m]. Returns [-].
    Raises OutOfRange unless 0 < t < D/2 and R > D/2.

    The code has h = t R/r² with the mean radius r = (D − t)/2. Hand working: t 5, R 250, D 105 mm: h = 0.5, and
    0.9/0.5^(2/3) = 0.9 × 1.5874 = 1.4287.

    >>> round(stress_factor_of_bend(t=0.005, R=0.25, D=0.105), 4)
    1.4287
    """
    require(t > 0 and 2 * t < D, f"wall {t * 1e3:.6g} mm is not between 0 and half of {D * 1e3:.6g} mm")
    require(2 * R > D, f"a bend of {R * 1e3:.6g} mm closes on a pipe of {D * 1e3:.6g} mm")
    factor: float = _OF_BEND / (4 * t * R / (D - t) ** 2) ** (2 / 3)
    return max(1.0, factor)


@formula("S_L = p D/(4 t) + max(1, 0.75 i) M/Z", cites=[SUSTAINED])
def sustained_stress(p: Pascals, D: Metres, t: Metres, i: Ratio, M: NewtonMetres, Z: CubicMetres) -> Pascals:
    """Stress along a pipe of its pressure and its weight.

    S_L = p D/(4 t) + max(1, 0.75 i) M/Z

    ``p`` pressure, gauge [Pa]; ``D`` outside, ``t`` wall [m]; ``i`` factor of a bend [-]; ``M`` moment of the weight
    [N·m]; ``Z`` section modulus [m³]. Returns [Pa]. Raises OutOfRange unless t and Z are above 0.

    Hand working: 2 MPa × 0.1/(4 × 0.005) = 10 MPa; 0.75 × 2 × 500 N·m/50e-6 m³ = 15 MPa; together 25 MPa.

    >>> sustained_stress(p=2e6, D=0.1, t=0.005, i=2.0, M=500.0, Z=50e-6)
    25000000.0
    """
    require(t > 0 and Z > 0, "wall and section modulus must be above 0")
    return p * D / (4 * t) + max(1.0, _SHARE * i) * M / Z
