"""Stresses of a turning shaft that carries the two arms of a rocker apart."""

from __future__ import annotations

import math

from speclint import FIRST_PRINCIPLES, formula, require
from speclint.equations import (
    Metres,
    NewtonMetres,
    Newtons,
    Pascals,
    Ratio,
)


@formula("M = (F_1 min(a, x) (L − max(a, x)) + F_2 x (L − x))/L", cites=[FIRST_PRINCIPLES])
def moment_under_arm(F_1: Newtons, a: Metres, F_2: Newtons, x: Metres, L: Metres) -> NewtonMetres:
    """Moment in a shaft on two bearings under one of two loads.

    M = (F_1 min(a, x) (L − max(a, x)) + F_2 x (L − x))/L

    ``F_1`` the other load [N]; ``a`` distance of the other load from one bearing [m]; ``F_2`` the load under which the
    moment is taken [N]; ``x`` distance of that load from the same bearing [m]; ``L`` distance between the bearings [m].
    Returns [N·m].

    >>> moment_under_arm(F_1=0.0, a=0.2, F_2=1000.0, x=0.5, L=1.0)
    250.0
    """
    return (F_1 * min(a, x) * (L - max(a, x)) + F_2 * x * (L - x)) / L


@formula("σ_b = 32 M/(π d³)", cites=[FIRST_PRINCIPLES])
def bending_of_shaft(M: NewtonMetres, d: Metres) -> Pascals:
    """Bending stress of a round shaft.

    σ_b = 32 M/(π d³)

    ``M`` moment [N·m]; ``d`` diameter [m]. Returns [Pa]. Raises OutOfRange unless d > 0.

    >>> round(bending_of_shaft(M=640.0, d=0.050) / 1e6, 2)
    52.15
    """
    require(d > 0, f"shaft of {d * 1e3:.6g} mm has no diameter")
    return 32 * M / (math.pi * d**3)


@formula("σ_v = √((K_b σ_b)² + 3 (K_t τ)²)", cites=[FIRST_PRINCIPLES])
def notched_equivalent(K_b: Ratio, σ_b: Pascals, K_t: Ratio, τ: Pascals) -> Pascals:
    """Equivalent stress in bending and torsion, notched.

    σ_v = √((K_b σ_b)² + 3 (K_t τ)²)

    ``K_b``, ``K_t`` notch factors in bending and torsion; ``σ_b``, ``τ`` stresses [Pa]. Returns [Pa].

    >>> round(notched_equivalent(K_b=1.0, σ_b=30e6, K_t=1.0, τ=40e6) / 1e6, 3)
    75.498
    """
    equivalent: float = ((K_b * σ_b) ** 2 + 3 * (K_t * τ) ** 2) ** 0.5
    return equivalent
