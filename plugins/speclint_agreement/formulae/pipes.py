"""Sizes that a pipe gives its joints."""

from __future__ import annotations

import math

from speclint import FIRST_PRINCIPLES, formula, require
from speclint.equations import CGPM, STANDARD_GRAVITY, Kilograms, Metres, NewtonMetres, Newtons, Ratio

#: Density of cold water [kg/m³].
_WATER = 1000.0


@formula("d_l = d − s", cites=[FIRST_PRINCIPLES])
def less_step(d: Metres, s: Metres) -> Metres:
    """Least bore beside a pipe, with the step that is allowed.

    d_l = d − s

    d: bore of the pipe, m. s: step on the diameter, m. Returns m.

    >>> round(less_step(d=0.157, s=0.001) * 1e3, 6)
    156.0
    """
    return d - s


@formula("d_m = d + s", cites=[FIRST_PRINCIPLES])
def with_step(d: Metres, s: Metres) -> Metres:
    """Greatest bore beside an opening, with the step that is allowed.

    d_m = d + s

    d: bore of the opening, m. s: step on the diameter, m. Returns m.

    >>> round(with_step(d=0.157, s=0.002) * 1e3, 6)
    159.0
    """
    return d + s


@formula("L_m = L_a (1 + x)", cites=[FIRST_PRINCIPLES])
def longest_straight(L_a: Metres, x: Ratio) -> Metres:
    """Greatest length of a pipe without bends.

    L_m = L_a (1 + x)

    L_a: distance of its anchors, m. x: what it may be longer, as a share. Returns m.

    >>> round(longest_straight(L_a=2.1, x=0.01), 6)
    2.121
    """
    return L_a * (1 + x)


@formula("L_m = t/k", cites=[FIRST_PRINCIPLES])
def size_of_share(t: Metres, k: Ratio) -> Metres:
    """Greatest length of which a distance is at least a share.

    L_m = t/k

    t: the distance, m. k: the share, above 0. Returns m.

    >>> round(size_of_share(t=2.1, k=0.8), 6)
    2.625
    """
    require(k > 0, "no length has a share of 0 or less")
    return t / k


@formula("U_m = t + b", cites=[FIRST_PRINCIPLES])
def beyond_faces(t: Metres, b: Metres) -> Metres:
    """Greatest distance of the anchors of a pipe.

    U_m = t + b

    ``t`` distance of the faces between which it is put, ``b`` what its anchors may lie beyond them, of both ends
    together [m]. Returns [m].

    Hand working: 2100 mm and 100 mm: 2200 mm.

    >>> round(beyond_faces(t=2.1, b=0.1), 6)
    2.2
    """
    return t + b


@formula("F_l = k M · 9.80665 m/s²", cites=[FIRST_PRINCIPLES, CGPM], empirical="kg and N")
def share_of_weight(k: Ratio, M: Kilograms) -> Newtons:
    """A share of the weight of a pipe.

    F_l = k M · 9.80665 m/s²

    ``k`` share [-]; ``M`` mass of the pipe [kg]. Returns [N].

    Hand working: a quarter of 60 kg: 15 × 9.80665 = 147.1 N.

    >>> round(share_of_weight(k=0.25, M=60.0), 2)
    147.1
    """
    return k * M * STANDARD_GRAVITY


@formula(
    "M_l = k (M/L + 1000 kg/m³ · π d²/4) · 9.80665 m/s² · (L/(n + 1))²/12",
    cites=[FIRST_PRINCIPLES, CGPM],
    empirical="kg, m and N",
)
def share_of_moment(k: Ratio, M: Kilograms, L: Metres, d: Metres, n: Ratio) -> NewtonMetres:
    """A share of the moment that its weight, full of cold water, brings on the ends of a level pipe that both hold.

    M_l = k (M/L + 1000 kg/m³ · π d²/4) · 9.80665 m/s² · (L/(n + 1))²/12

    ``k`` share [-]; ``M`` mass of the empty pipe [kg]; ``L`` its length, ``d`` its bore [m]; ``n`` how many brackets
    carry it between its ends [-]. Returns [N·m]. Raises OutOfRange unless L > 0 and n ≥ 0.

    Hand working: 60 kg on 3 m are 20 kg/m, and a bore of 100 mm holds 7.854 kg/m: 27.854 × 9.80665 = 273.154 N/m; a
    quarter of 273.154 × 3²/12 is 51.216 N·m, and beside one bracket in the middle a quarter of that.

    >>> round(share_of_moment(k=0.25, M=60.0, L=3.0, d=0.1, n=0.0), 3)
    51.216
    """
    require(L > 0, "the length must be above 0")
    require(n >= 0, "the number of brackets must be 0 or more")
    return k * (M / L + _WATER * math.pi * d**2 / 4) * STANDARD_GRAVITY * (L / (n + 1)) ** 2 / 12
