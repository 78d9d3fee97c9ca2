"""Angles between cranks."""

from __future__ import annotations

import math

from speclint import FIRST_PRINCIPLES, formula
from speclint.equations import Radians, Ratio


@formula("x = |sin(θ_1 − θ_2)|", cites=[FIRST_PRINCIPLES])
def across_the_line(θ_1: Radians, θ_2: Radians) -> Ratio:
    """Sine of the angle between two cranks: 0 where they lie in one line, 1 where they stand square to each other.

    x = |sin(θ_1 − θ_2)|

    ``θ_1``, ``θ_2`` their angles [rad]. Returns a ratio [-].

    Hand working: 120° apart: sin 60°.

    >>> round(across_the_line(θ_1=math.radians(-120), θ_2=0.0), 6)
    0.866025
    """
    return abs(math.sin(θ_1 - θ_2))


@formula("δ = θ_2 − θ_1 − 2π ⌊(θ_2 − θ_1)/(2π)⌋", cites=[FIRST_PRINCIPLES])
def ahead_of(θ_1: Radians, θ_2: Radians) -> Radians:
    """Angle from one crank to another, round in one sense.

    δ = θ_2 − θ_1 − 2π ⌊(θ_2 − θ_1)/(2π)⌋

    ``θ_1`` angle of the one, ``θ_2`` of the other, which leads [rad]. Returns [rad].

    Hand working: from −120° to −240° it is −120°, and with a whole turn 240°.

    >>> round(math.degrees(ahead_of(θ_1=math.radians(-120), θ_2=math.radians(-240))), 6)
    240.0
    """
    return (θ_2 - θ_1) % (2 * math.pi)


@formula("δ = min(δ_1, 2π − δ_1)", cites=[FIRST_PRINCIPLES])
def lesser_way(δ_1: Radians) -> Radians:
    """Angle between two cranks, the shorter way round.

    δ = min(δ_1, 2π − δ_1)

    ``δ_1`` angle by which one leads the other [rad]. Returns [rad].

    >>> round(math.degrees(lesser_way(δ_1=math.radians(270))), 6)
    90.0
    """
    return min(δ_1, 2 * math.pi - δ_1)


@formula("θ_c = θ + β", cites=[FIRST_PRINCIPLES])
def lead_by_cylinder(θ: Radians, β: Radians) -> Radians:
    """Angle by which a cylinder leads the one from which angles count, by its crank and its inclination.

    θ_c = θ + β

    ``θ`` by which its crank leads running forwards; ``β`` by which the axis of its cylinder rises forward of the axle
    [rad]. Returns [rad].

    Hand working: a crank that turns forwards comes down to its front dead centre: it passes an axis that rises by 7°
    before it passes the level one.

    >>> round(math.degrees(lead_by_cylinder(θ=math.radians(-127), β=math.radians(7))), 6)
    -120.0
    """
    return θ + β


@formula("δ_w = δ_n + k δ_s", cites=[FIRST_PRINCIPLES])
def angle_allowed(δ_n: Radians, k: Ratio, δ_s: Radians) -> Radians:
    """Least or greatest angle between two cranks.

    δ_w = δ_n + k δ_s

    ``δ_n`` the usual angle, ``δ_s`` what it may be off [rad]; ``k`` −1 for the least, 1 for the greatest [-]. Returns
    [rad].

    >>> round(math.degrees(angle_allowed(δ_n=math.radians(120), k=-1.0, δ_s=math.radians(0.5))), 6)
    119.5
    """
    return δ_n + k * δ_s
