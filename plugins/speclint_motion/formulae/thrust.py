"""The force of steam and inertia on the motion, at any crank angle."""

from __future__ import annotations

import math

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, formula, require
from speclint.equations import (
    Kilograms,
    Metres,
    Newtons,
    Pascals,
    Radians,
    RadiansPerSecond,
    Ratio,
    SquareMetres,
)
from speclint.handbook.cams import piston_acceleration, piston_travel, rod_angle, side_thrust
from speclint.handbook.tables import JOEL

HYPERBOLA = JOEL.at("example 11.1, hypothetical indicator diagram")


@formula("p = max(p_1 c/max(x, c), p_e)", cites=[HYPERBOLA])
def pressure_behind_piston(x: Ratio, p_1: Pascals, p_e: Pascals, c: Ratio) -> Pascals:
    """Pressure of the steam behind the piston, by hyperbolic expansion, clearance volume neglected.

    p = max(p_1 c/max(x, c), p_e)

    ``x`` share of the stroke done, 0 to 1; ``p_1`` admission and ``p_e`` exhaust pressure [Pa absolute]; ``c``
    cut-off, above 0 to 1. Returns [Pa absolute]. Raises OutOfRange outside.

    Hand working: 17 bar cut off at 0.25, at half stroke 17 × 0.25/0.5 = 8.5 bar.

    >>> pressure_behind_piston(x=0.5, p_1=17e5, p_e=1.3e5, c=0.25)
    850000.0
    """
    require(0 < c <= 1, f"cut-off {c:.4g} is not between 0 and 1")
    require(-1e-9 <= x <= 1 + 1e-9, f"share of stroke {x:.4g} is not between 0 and 1")
    return max(p_1 * c / max(x, c), p_e)


@formula(
    "F = k A (p − p_e) − m a, k = 1 if θ ≤ π, else −1, p = max(p_1 c/max(x, c), p_e), x = s/(2 r) if θ ≤ π, "
    "else 1 − s/(2 r), s = r (1 − cos θ) + l (1 − √(1 − (r/l)² sin² θ)), "
    "a = ω² r (cos θ + (r/l) (cos(2 θ) + (r/l)² sin⁴ θ)/(1 − (r/l)² sin² θ)^(3/2))",
    cites=[HYPERBOLA, FIRST_PRINCIPLES],
)
def crosshead_force(
    θ: Radians,
    r: Metres,
    l: Metres,  # noqa: E741 - the symbol of the trade
    ω: RadiansPerSecond,
    m: Kilograms,
    A: SquareMetres,
    p_1: Pascals,
    p_e: Pascals,
    c: Ratio,
) -> Newtons:
    """Force along the line of stroke, of steam and inertia together, positive towards the axle.

    F = ± A (p(x) − p_e) − m a

    ``θ`` crank angle from the front dead centre, away from the axle [rad], 0 to 2 π; ``r`` crank radius and ``l`` rod
    length [m], 0 < r < l; ``ω`` speed [rad/s]; ``m`` reciprocating mass [kg]; ``A`` area of the piston [m²], the
    same on both sides; ``p_1`` admission and ``p_e`` exhaust pressure [Pa absolute]; ``c`` cut-off, above 0 to 1.
    Returns [N]. Compression and lead are neglected. Raises OutOfRange outside.

    Hand working, at the front dead centre: 0.2 m² × (17 − 1) bar = 320 kN less 300 kg × 30² × 0.3 × 1.125 =
    91.125 kN leaves 228.875 kN.

    >>> round(crosshead_force(0.0, 0.3, 2.4, 30.0, 300.0, 0.2, 17e5, 1e5, 0.5))
    228875
    """
    done = piston_travel(r=r, l=l, θ=θ) / (2 * r)
    outward = θ <= math.pi
    pressure = pressure_behind_piston(done if outward else 1 - done, p_1, p_e, c)
    steam = A * (pressure - p_e)
    return (steam if outward else -steam) - m * piston_acceleration(r=r, l=l, ω=ω, θ=θ)


@formula("N = |F tan φ|, φ = arcsin((r/l) sin θ)", cites=[FIRST_PRINCIPLES])
def slipper_thrust(F: Newtons, r: Metres, l: Metres, θ: Radians) -> Newtons:  # noqa: E741
    """Magnitude of the thrust of the crosshead on its slide bar.

    N = |F tan φ|, φ = arcsin((r/l) sin θ)

    ``F`` force along the line of stroke [N]; ``r`` crank radius and ``l`` rod length [m], 0 < r < l; ``θ`` crank angle
    from a dead centre [rad]. Returns [N]. Raises OutOfRange outside.

    Hand working, r = 0.3, l = 0.5, crank upright: tan φ = 0.3/0.4; 320 kN × 0.75 = 240 kN.

    >>> round(slipper_thrust(-320e3, 0.3, 0.5, math.pi / 2))
    240000
    """
    return abs(side_thrust(F=F, φ=rod_angle(r=r, l=l, θ=θ)))


@formula("F_c = |F|/cos φ, φ = arcsin((r/l) sin θ)", cites=[FIRST_PRINCIPLES])
def connecting_rod_force(F: Newtons, r: Metres, l: Metres, θ: Radians) -> Newtons:  # noqa: E741
    """Magnitude of the force along the connecting rod, tension or compression, on both its pins.

    F_c = |F|/cos φ, φ = arcsin((r/l) sin θ)

    Arguments and limits as ``slipper_thrust``. Returns [N]. The rod's own weight and bending by inertia are neglected.

    Hand working, as there: 320 kN/0.8 = 400 kN.

    >>> round(connecting_rod_force(-320e3, 0.3, 0.5, math.pi / 2))
    400000
    """
    return abs(F) / math.cos(rod_angle(r=r, l=l, θ=θ))


@formula("F_k = min(k F, F_m)", cites=[FIRST_PRINCIPLES, COMMON_PRACTICE])
def steam_within_error(k: Ratio, F: Newtons, F_m: Newtons) -> Newtons:
    """Force of steam on a piston within the error of the cycle that gives it, in one sense.

    F_k = min(k F, F_m)

    ``k`` true force over that by the cycle; ``F`` force by the cycle [N], negative where it acts the other way; ``F_m``
    force of the greatest pressure on one side and the least on the other [N]. Returns [N].

    Hand working: 1.1 × 200 = 220 kN, where chest against exhaust gives 300 kN.

    >>> round(steam_within_error(k=1.1, F=200e3, F_m=300e3), 6)
    220000.0
    """
    return min(k * F, F_m)


@formula(
    "F = F_k − g m a, a = ω² r (cos θ + (r/l) (cos(2 θ) + (r/l)² sin⁴ θ)/(1 − (r/l)² sin² θ)^(3/2))",
    cites=[FIRST_PRINCIPLES],
)
def force_in_sense(
    F_k: Newtons,
    g: Ratio,
    m: Kilograms,
    r: Metres,
    l: Metres,  # noqa: E741
    ω: RadiansPerSecond,
    θ: Radians,
) -> Newtons:
    """Force along the line of stroke, of steam and inertia together, in one sense.

    F = F_k − g m a, with the acceleration a of the piston

    ``F_k`` force of the steam in that sense [N]; ``g`` 1 towards the axle, −1 away from it; ``m`` reciprocating mass
    [kg]; ``r`` crank radius and ``l`` rod length [m], 0 < r < l; ``ω`` speed [rad/s]; ``θ`` crank angle from the front
    dead centre [rad]. Returns [N]. Raises OutOfRange outside.

    Hand working, at the front dead centre: 320 kN less 300 kg × 30² × 0.3 × 1.125 = 91.125 kN; away from the axle
    −320 kN and as much again.

    >>> gear = {"m": 300.0, "r": 0.3, "l": 2.4, "ω": 30.0, "θ": 0.0}
    >>> round(force_in_sense(320e3, 1.0, **gear)), round(force_in_sense(-320e3, -1.0, **gear))
    (228875, -228875)
    """
    return F_k - g * m * piston_acceleration(r=r, l=l, ω=ω, θ=θ)


@formula("N = F |tan φ|, φ = arcsin((r/l) sin θ)", cites=[FIRST_PRINCIPLES])
def thrust_of_force(F: Newtons, r: Metres, l: Metres, θ: Radians) -> Newtons:  # noqa: E741
    """Thrust of a crosshead on one of its slide bars, by the force along the line of stroke in one sense.

    N = F |tan φ|, φ = arcsin((r/l) sin θ)

    ``F`` force along the line of stroke in that sense [N]; ``r`` crank radius and ``l`` rod length [m], 0 < r < l;
    ``θ`` crank angle [rad]. Returns [N], negative where the force acts in the other sense. Raises OutOfRange outside.

    Hand working, r = 0.3, l = 0.5, crank upright: tan φ = 0.3/0.4; 320 × 0.75 = 240 kN.

    >>> round(thrust_of_force(320e3, 0.3, 0.5, math.pi / 2))
    240000
    """
    return F * abs(math.tan(rod_angle(r=r, l=l, θ=θ)))


@formula("F_c = F/cos φ, φ = arcsin((r/l) sin θ)", cites=[FIRST_PRINCIPLES])
def rod_force_of(F: Newtons, r: Metres, l: Metres, θ: Radians) -> Newtons:  # noqa: E741
    """Force along a connecting rod and on both its pins, by the force along the line of stroke.

    F_c = F/cos φ, φ = arcsin((r/l) sin θ)

    Arguments and limits as ``thrust_of_force``. Returns [N]. The rod's own weight and bending by inertia are neglected.

    Hand working, as there: 320 kN/0.8 = 400 kN.

    >>> round(rod_force_of(320e3, 0.3, 0.5, math.pi / 2))
    400000
    """
    return F / math.cos(rod_angle(r=r, l=l, θ=θ))
