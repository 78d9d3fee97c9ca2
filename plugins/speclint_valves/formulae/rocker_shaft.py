"""A turning shaft that carries the two arms of a rocker apart."""

from __future__ import annotations

import math

from speclint import FIRST_PRINCIPLES, formula, require
from speclint.equations import (
    Metres,
    MetresToTheFourth,
    NewtonMetres,
    Newtons,
    Pascals,
    Radians,
    Ratio,
)


@formula("T = F r", cites=[FIRST_PRINCIPLES])
def torque_of_arm(F: Newtons, r: Metres) -> NewtonMetres:
    """Torque of a force on an arm.

    T = F r

    ``F`` [N]; ``r`` arm [m]. Returns [N·m].

    >>> torque_of_arm(F=8000.0, r=0.08)
    640.0
    """
    return F * r


@formula("G = E/(2 (1 + ν))", cites=[FIRST_PRINCIPLES])
def modulus_of_rigidity(E: Pascals, ν: Ratio) -> Pascals:
    """Modulus of rigidity of a metal alike in all directions.

    G = E/(2 (1 + ν))

    ``E`` modulus [Pa]; ``ν`` Poisson's ratio. Returns [Pa].

    >>> round(modulus_of_rigidity(E=208e9, ν=0.3) / 1e9, 6)
    80.0
    """
    return E / (2 * (1 + ν))


@formula("x = a − a_1", cites=[FIRST_PRINCIPLES])
def place_between(a: Metres, a_1: Metres) -> Metres:
    """Place of an arm from one bearing.

    x = a − a_1

    ``a`` of the arm, ``a_1`` of the bearing along the shaft [m]. Returns [m].

    >>> round(place_between(a=0.3, a_1=0.1), 9)
    0.2
    """
    return a - a_1


@formula(
    "u = F (L − max(a, x)) min(a, x) (L² − (L − max(a, x))² − min(a, x)²)/(6 E I L)", cites=[FIRST_PRINCIPLES]
)
def sag_at(
    F: Newtons,
    a: Metres,
    x: Metres,
    L: Metres,
    E: Pascals,
    I: MetresToTheFourth,  # noqa: E741
) -> Metres:
    """Deflection at one place of a shaft on two bearings under a load at another.

    u = F (L − max(a, x)) min(a, x) (L² − (L − max(a, x))² − min(a, x)²)/(6 E I L)

    ``F`` load [N] at ``a``; ``x`` the place; ``L`` between the bearings [m]; ``E`` modulus [Pa]; ``I`` second moment
    [m⁴]. Returns [m]. Raises OutOfRange where a place lies beyond a bearing.

    Hand working, in the middle: F L³/(48 E I).

    >>> round(sag_at(F=48.0, a=0.5, x=0.5, L=1.0, E=1e9, I=1e-6) * 1e3, 6)
    1.0
    """
    for place in (a, x):
        require(place >= 0 * place, "an arm stands beyond the bearings of its shaft")
        require(place <= L, "an arm stands beyond the bearings of its shaft")
    near, far = min(a, x), max(a, x)
    return F * (L - far) * near * (L**2 - (L - far) ** 2 - near**2) / (6 * E * I * L)


@formula("M = (F_1 min(a, x) (L − max(a, x)) + F_2 x (L − x))/L", cites=[FIRST_PRINCIPLES])
def moment_under_arm(F_1: Newtons, a: Metres, F_2: Newtons, x: Metres, L: Metres) -> NewtonMetres:
    """Moment in a shaft on two bearings under one of two loads.

    M = (F_1 min(a, x) (L − max(a, x)) + F_2 x (L − x))/L

    ``F_1`` the other load [N] at ``a``; ``F_2`` this load at ``x``; ``L`` between the bearings [m]. Returns [N·m].

    >>> moment_under_arm(F_1=0.0, a=0.2, F_2=1000.0, x=0.5, L=1.0)
    250.0
    """
    return (F_1 * min(a, x) * (L - max(a, x)) + F_2 * x * (L - x)) / L


@formula("f = θ b + u_v + i u_t", cites=[FIRST_PRINCIPLES])
def lift_lost_by_shaft(θ: Radians, b: Metres, u_v: Metres, i: Ratio, u_t: Metres) -> Metres:
    """Lift that a valve loses by twist and bending of the shaft of its rocker.

    f = θ b + u_v + i u_t

    ``θ`` twist [rad]; ``b`` valve arm, ``u_v`` deflection at it, ``u_t`` at the tappet arm [m]; ``i`` travel of the
    valve over that of the tappet. Returns [m].

    Hand working: 3.26e-3 × 80 = 0.261 mm by twist alone.

    >>> round(lift_lost_by_shaft(θ=3.26e-3, b=0.08, u_v=0.0, i=1.0, u_t=0.0) * 1e3, 3)
    0.261
    """
    return θ * b + u_v + i * u_t


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


@formula("ψ = f γ/(i h_r)", cites=[FIRST_PRINCIPLES])
def delay_on_ramp(f: Metres, γ: Radians, i: Ratio, h_r: Metres) -> Radians:
    """Cam angle by which a valve cracks later as its gear gives way on the ramp.

    ψ = f γ/(i h_r)

    ``f`` lift lost [m]; ``γ`` angle and ``h_r`` height of the ramp [rad, m]; ``i`` travel of the valve over that of the
    tappet. Returns [rad]. Raises OutOfRange unless h_r > 0.

    >>> round(delay_on_ramp(f=0.00022, γ=0.1, i=1.0, h_r=0.0011), 6)
    0.02
    """
    require(h_r > 0, "the ramp has no height")
    return f * γ / (i * h_r)
