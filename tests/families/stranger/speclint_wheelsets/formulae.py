"""Formulae of wheels and axles."""

from __future__ import annotations

import math

from speclint import FIRST_PRINCIPLES, formula, require
from speclint.equations import (
    CubicMetres,
    Kilograms,
    Metres,
    NewtonMetres,
    Newtons,
    Pascals,
    RadiansPerSecond,
    Ratio,
)


@formula("δ = D − d", cites=[FIRST_PRINCIPLES])
def interference(D: Metres, d: Metres) -> Metres:
    """Interference of a seat.

    ``D`` seat, ``d`` bore [m]. Returns [m], on the diameter; negative where the wheel is loose.
    """
    return D - d


@formula("k = D_h/d", cites=[FIRST_PRINCIPLES])
def hub_ratio(D_h: Metres, d: Metres) -> Ratio:
    """Outside of a hub over its bore.

    ``D_h`` outside, ``d`` bore [m]. Raises OutOfRange unless the bore is above 0.
    """
    require(d > 0 * d, "a hub has a bore")
    return D_h / d


@formula("M = F a/2", cites=[FIRST_PRINCIPLES])
def journal_moment(F: Newtons, a: Metres) -> NewtonMetres:
    """Bending moment of an axle between its wheels.

    ``F`` load of both journals [N], each ``a`` outside its wheel [m]. Returns [N·m].

    Hand working: 160 kN and 0.2 m: 160e3 × 0.2/2 = 16 kN m.

    >>> journal_moment(F=160e3, a=0.2)
    16000.0
    """
    return F * a / 2


@formula("Z = π D³/32", cites=[FIRST_PRINCIPLES])
def round_modulus(D: Metres) -> CubicMetres:
    """Section modulus of a solid round axle.

    ``D`` diameter [m]. Returns [m³].
    """
    return math.pi * D**3 / 32


@formula("F_c = m r ω²", cites=[FIRST_PRINCIPLES])
def centrifugal(m: Kilograms, r: Metres, ω: RadiansPerSecond) -> Newtons:
    """Centrifugal force of a mass.

    ``m`` mass [kg] at the radius ``r`` [m], turning at ``ω`` [rad/s]. Returns [N].
    """
    return m * r * ω**2


@formula("W = x F", cites=[FIRST_PRINCIPLES])
def share_of_load(x: Ratio, F: Newtons) -> Newtons:
    """Share of the load of an axle.

    ``x`` share, ``F`` load [N]. Returns [N].
    """
    return x * F


@formula("S = x R", cites=[FIRST_PRINCIPLES])
def share_of_stress(x: Ratio, R: Pascals) -> Pascals:
    """Share of a strength.

    ``x`` share, ``R`` strength [Pa]. Returns [Pa].
    """
    return x * R
