"""Pins and shafts: bending, and what a keyway takes of a shaft."""

from __future__ import annotations

import math

from speclint import FIRST_PRINCIPLES, formula, require
from speclint.equations import CubicMetres, Metres, NewtonMetres, Newtons, Radians, Ratio


@formula("M = F (2 L − b)/8", cites=[FIRST_PRINCIPLES])
def moment_of_held_pin(F: Newtons, L: Metres, b: Metres) -> NewtonMetres:
    """Moment in the middle of a pin held on both sides of its bearing, with the load uniform along it.

    M = F (2 L − b)/8

    ``F`` load [N]; ``L`` between the middles of the supports, ``b`` length of the bearing [m], b ≤ 2 L.
    Returns [N·m]. Raises OutOfRange outside.

    Hand working: 320 kN, 170 and 100 mm: 320e3 × 0.240/8 = 9600 N·m.

    >>> round(moment_of_held_pin(F=320e3, L=0.170, b=0.100), 6)
    9600.0
    """
    require(b <= 2 * L, f"a bearing of {b * 1e3:.4g} mm does not lie between supports {L * 1e3:.4g} mm apart")
    return F * (2 * L - b) / 8


@formula("a_b = b/2", cites=[FIRST_PRINCIPLES])
def least_overhang(b: Metres) -> Metres:
    """Distance of the middle of a bearing from the face beside it, where the bearing begins at that face.

    a_b = b/2

    ``b`` length of the bearing [m]. Returns [m].

    >>> least_overhang(b=0.190)
    0.095
    """
    return b / 2


@formula("Z = π d³/32", cites=[FIRST_PRINCIPLES])
def round_modulus(d: Metres) -> CubicMetres:
    """Section modulus of a round pin or shaft.

    Z = π d³/32

    ``d`` diameter [m]. Returns [m³].

    >>> round(round_modulus(d=0.1) * 1e9, 1)
    98174.8
    """
    return math.pi * d**3 / 32


@formula("θ_k = k θ", cites=[FIRST_PRINCIPLES])
def weakened_twist(k: Ratio, θ: Radians) -> Radians:
    """Twist of a length with a keyway.

    θ_k = k θ

    ``k`` factor of the keyway; ``θ`` twist of the plain shaft [rad]. Returns [rad].

    >>> weakened_twist(k=1.25, θ=0.008)
    0.01
    """
    return k * θ
