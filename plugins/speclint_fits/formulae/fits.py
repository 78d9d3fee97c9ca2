"""Clearance and interference between the limits, stress, grip, and a saddle on its barrel."""

from __future__ import annotations

import math

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, formula, require
from speclint.equations import Kelvins, Metres, Newtons, Pascals, PerKelvin, Radians, Ratio

#: Beyond this half arc a saddle bears on its flanks, and a gap measured along the radius is not meaningful.
_WIDEST_HALF_ARC = math.radians(80)


@formula("δ = d − D", cites=[FIRST_PRINCIPLES])
def interference(d: Metres, D: Metres) -> Metres:
    """Interference of a shaft in its hole.

    δ = d − D

    ``d`` shaft, ``D`` hole [m]. Returns [m], negative for a clearance.

    >>> round(interference(d=0.17012, D=0.17004) * 1e6, 6)
    80.0
    """
    return d - D


@formula("c = −δ", cites=[FIRST_PRINCIPLES])
def clearance(delta: Metres) -> Metres:
    """Clearance.

    c = −δ

    ``delta`` interference [m]. Returns [m].

    >>> clearance(delta=-0.1e-3)
    0.0001
    """
    return -delta


@formula("m = (a + b)/2", cites=[FIRST_PRINCIPLES])
def middle(a: Metres, b: Metres) -> Metres:
    """Middle of two limits.

    m = (a + b)/2

    ``a``, ``b`` least and greatest [m]. Returns [m].

    >>> round(middle(a=14e-6, b=48e-6) * 1e6, 6)
    31.0
    """
    return (a + b) / 2


@formula("δ_p = max(δ, 0)", cites=[FIRST_PRINCIPLES])
def pressing_interference(delta: Metres) -> Metres:
    """Interference that gives contact pressure: zero where the parts are loose.

    δ_p = max(δ, 0)

    ``delta`` interference, negative for a clearance [m]. Returns [m].

    >>> abs(pressing_interference(delta=-0.1e-3))
    0.0
    """
    return max(delta, 0 * delta)


@formula("D_o = D + 2 t", cites=[FIRST_PRINCIPLES])
def outside_of_wall(D: Metres, t: Metres) -> Metres:
    """Outside diameter of the ring of metal round a hole.

    D_o = D + 2 t

    ``D`` hole, ``t`` least metal round it [m]. Returns [m].

    >>> round(outside_of_wall(D=0.170, t=0.022), 6)
    0.214
    """
    return D + 2 * t


@formula("σ_s = |σ|", cites=[FIRST_PRINCIPLES])
def size_of_stress(sigma: Pascals) -> Pascals:
    """Magnitude of the hoop stress.

    σ_s = |σ|

    ``sigma`` stress, tension positive [Pa]. Returns [Pa].

    >>> size_of_stress(sigma=-60e6)
    60000000.0
    """
    return abs(sigma)


@formula("σ = p", cites=[FIRST_PRINCIPLES])
def solid_shaft_stress(p: Pascals) -> Pascals:
    """Stress in a solid shaft under contact pressure, equal to the pressure throughout.

    σ = p

    ``p`` contact pressure [Pa]. Returns [Pa].

    >>> solid_shaft_stress(p=40e6)
    40000000.0
    """
    return p


@formula("S = k R", cites=[COMMON_PRACTICE])
def share_of_strength(k: Ratio, R: Pascals) -> Pascals:
    """Allowable stress.

    S = k R

    ``k`` share [-]; ``R`` strength [Pa]. Returns [Pa].

    >>> round(share_of_strength(k=0.67, R=300e6) / 1e6, 6)
    201.0
    """
    return k * R


@formula("F_n = x F", cites=[COMMON_PRACTICE])
def load_with_factor(x: Ratio, F: Newtons) -> Newtons:
    """Holding force required of the fit.

    F_n = x F

    ``x`` factor [-]; ``F`` load [N]. Returns [N].

    >>> load_with_factor(x=2.0, F=30e3)
    60000.0
    """
    return x * F


@formula("D_h = D (1 + α (T − T_ref))", cites=[FIRST_PRINCIPLES])
def hot_diameter(D: Metres, alpha: PerKelvin, T: Kelvins, T_ref: Kelvins) -> Metres:
    """Diameter at the temperature of its part.

    D_h = D (1 + α (T − T_ref))

    ``D`` diameter at ``T_ref`` [m]; ``alpha`` mean coefficient from ``T_ref`` [1/K]; ``T``, ``T_ref`` [K].
    Returns [m].

    Hand working: 1800 mm, 12e-6, 180 K: 1800 × 1.00216 = 1803.888 mm.

    >>> round(hot_diameter(D=1.8, alpha=12e-6, T=473.15, T_ref=293.15) * 1e3, 6)
    1803.888
    """
    return D * (1 + alpha * (T - T_ref))


@formula("g = |D_s − D_b| (1 − cos θ)/(2 k), k = 1 if D_s ≥ D_b, else cos θ", cites=[FIRST_PRINCIPLES])
def saddle_gap(D_s: Metres, D_b: Metres, theta: Radians) -> Metres:
    """Greatest gap between saddle and barrel.

    g = |D_s − D_b| (1 − cos θ)/(2 k), k = 1 if D_s ≥ D_b, else cos θ

    ``D_s`` diameter to which the saddle is machined, ``D_b`` of the barrel [m]; ``theta`` half of the arc of the
    saddle [rad]. Returns [m]. A saddle of larger radius rests on its middle with a gap at its edges; one of
    smaller radius rests on its edges with a gap at its middle, larger by 1/cos θ, since the flanks hold it off.
    Measured along the radius, to the first order in the difference of radii: conservative by its square over
    the radius.
    Raises OutOfRange unless 0 < θ ≤ 80° and the diameters are within a tenth of each other.

    Hand working: radii 900.5 and 900.0 mm over 2 × 60°: 0.5 × (1 − 0.5) = 0.25 mm; the other way 0.5 mm.

    >>> round(saddle_gap(D_s=1.801, D_b=1.800, theta=math.radians(60)) * 1e3, 6)
    0.25
    >>> round(saddle_gap(D_s=1.799, D_b=1.800, theta=math.radians(60)) * 1e3, 6)
    0.5
    """
    require(0 < theta <= _WIDEST_HALF_ARC, f"half arc {math.degrees(theta):.4g}° is not between 0 and 80°")
    require(abs(D_s - D_b) <= 0.1 * D_b, f"saddle {D_s:.6g} and barrel {D_b:.6g} do not belong together")
    gap = abs(D_s - D_b) / 2 * (1 - math.cos(theta))
    return gap if D_s >= D_b else gap / math.cos(theta)
