"""Turning shafts and thick pins: the size of what is bent, the code of transmission shafting, and fatigue."""

from __future__ import annotations

import math

from speclint import FIRST_PRINCIPLES, formula, require
from speclint.equations import Metres, NewtonMetres, Pascals, Ratio
from speclint_motion.sources import SHAFTING, SHIGLEY_MARIN, SHIGLEY_SHAFTS

#: Between these diameters the size factor was fitted [m].
_LEAST, _STEP, _MOST = 0.00279, 0.051, 0.254


@formula("d_e = 0.37 d", cites=[SHIGLEY_MARIN.at("eq. 6-24")])
def effective_diameter(d: Metres) -> Metres:
    """Diameter of the turning bar that is stressed as highly over as much metal as a round bar that does not turn.

    d_e = 0.37 d

    ``d`` of the bar that does not turn [m]. Returns [m].

    >>> round(effective_diameter(d=0.032) * 1e3, 6)
    11.84
    """
    return 0.37 * d


@formula(
    "k_b = (d/7.62 mm)^(−0.107) if d ≤ 51 mm, else 1.51 (d/mm)^(−0.157)",
    cites=[SHIGLEY_MARIN.at("eq. 6-20")],
    empirical="millimetres",
)
def size_factor(d: Metres) -> Ratio:
    """Fatigue strength of a bar that turns in bending over that of a thin specimen.

    k_b = (d/7.62 mm)^(−0.107) if d ≤ 51 mm, else 1.51 (d/mm)^(−0.157)

    ``d`` diameter [m], 2.79 to 254 mm. Returns a ratio. Raises OutOfRange outside.

    Published check, Shigley, example 6-4 (from memory): 32 mm turning, 0.858.

    >>> round(size_factor(d=0.032), 3)
    0.858
    """
    require(_LEAST <= d <= _MOST, f"the size factor holds for 2.79 to 254 mm, not for {d * 1e3:.4g} mm")
    millimetres = d * 1e3
    factor: Ratio = (millimetres / 7.62) ** -0.107 if d <= _STEP else 1.51 * millimetres**-0.157
    return factor


@formula("k = k_a k_b", cites=[SHIGLEY_MARIN.at("eq. 6-18")])
def share_of_specimen(k_a: Ratio, k_b: Ratio) -> Ratio:
    """Fatigue strength of a part over that of a polished specimen, by surface and size.

    k = k_a k_b

    ``k_a`` surface factor, ``k_b`` size factor. Returns a ratio.

    >>> share_of_specimen(k_a=0.8, k_b=0.5)
    0.4
    """
    return k_a * k_b


@formula("τ = 16 √((C_m M)² + (C_t T)²)/(π d³)", cites=[SHAFTING])
def shafting_shear(M: NewtonMetres, T: NewtonMetres, C_m: Ratio, C_t: Ratio, d: Metres) -> Pascals:
    """Greatest shear stress of a turning shaft by the code, with its factors of shock and fatigue.

    τ = 16 √((C_m M)² + (C_t T)²)/(π d³)

    ``M`` bending moment, ``T`` torque [N·m]; ``C_m``, ``C_t`` factors of bending and of torque; ``d`` diameter [m],
    above 0. Returns [Pa]. Raises OutOfRange otherwise.

    Hand working: 1.5 × 2 and 4 kN·m make 5 kN·m; on 100 mm 16 × 5000/(π × 0.001) = 25.4648 MPa.

    >>> round(shafting_shear(M=2e3, T=4e3, C_m=1.5, C_t=1.0, d=0.1) / 1e6, 4)
    25.4648
    """
    require(d > 0 * d, "the diameter of the shaft must be above 0")
    both: NewtonMetres = ((C_m * M) ** 2 + (C_t * T) ** 2) ** 0.5
    return 16 * both / (math.pi * d**3)


@formula("S = e min(0.3 S_y, 0.18 S_ut)", cites=[SHAFTING])
def shafting_allowable(S_y: Pascals, S_ut: Pascals, e: Ratio) -> Pascals:
    """Allowable shear stress of a shaft by the code.

    S = e min(0.3 S_y, 0.18 S_ut)

    ``S_y`` yield, ``S_ut`` tensile strength [Pa]; ``e`` share that a keyway leaves, 0.75 by the code, 1 without one.
    Returns [Pa]. Raises OutOfRange unless 0 < e ≤ 1.

    Published check, Singh, example 6.1: 380 and 650 MPa with a keyway, 85.5 MPa.

    >>> round(shafting_allowable(S_y=380e6, S_ut=650e6, e=0.75) / 1e6, 6)
    85.5
    """
    require(0 < e <= 1, f"strength left by the keyway {e:.4g} is not between 0 and 1")
    return e * min(0.3 * S_y, 0.18 * S_ut)


@formula("S = √(4 (K_f M)² + 3 (K_s T)²)", cites=[SHIGLEY_SHAFTS])
def moments_together(M: NewtonMetres, T: NewtonMetres, K_f: Ratio, K_s: Ratio) -> NewtonMetres:
    """Bending and torque as one by distortion energy, each with its notch.

    S = √(4 (K_f M)² + 3 (K_s T)²)

    ``M`` bending moment, ``T`` torque [N·m]; ``K_f``, ``K_s`` fatigue notch factors in bending and torsion, at least 1.
    Returns [N·m], twice the moment that bends as much. Raises OutOfRange otherwise.

    >>> moments_together(M=500.0, T=0.0, K_f=2.0, K_s=3.0)
    2000.0
    """
    require(K_f >= 1 and K_s >= 1, "a fatigue notch factor is below 1")
    together: NewtonMetres = (4 * (K_f * M) ** 2 + 3 * (K_s * T) ** 2) ** 0.5
    return together


@formula("n = π d³/(16 (S_a/(k S_f) + S_m/R_m))", cites=[SHIGLEY_SHAFTS])
def shaft_fatigue_factor(
    S_a: NewtonMetres, S_m: NewtonMetres, k: Ratio, S_f: Pascals, R_m: Pascals, d: Metres
) -> Ratio:
    """Factor of safety of a shaft against fatigue after Goodman.

    n = π d³/(16 (S_a/(k S_f) + S_m/R_m))

    ``S_a`` amplitude and ``S_m`` mean of its moments together, as ``moments_together`` has them, S_a above 0 [N·m];
    ``k`` share of the specimen's strength, above 0 to 1; ``S_f`` fatigue strength in bending, ``R_m`` tensile strength
    [Pa]; ``d`` diameter [m]. Raises OutOfRange outside.

    Hand working: 2000/(0.5 × 400 MPa) + 2000/1000 MPa = 12e-6 m³; on 100 mm π × 0.001/(16 × 12e-6) = 16.3625.

    >>> round(shaft_fatigue_factor(S_a=2e3, S_m=2e3, k=0.5, S_f=400e6, R_m=1e9, d=0.1), 4)
    16.3625
    """
    require(S_a > 0 * S_a, "a shaft without bending or torque does not tire")
    require(0 < k <= 1, f"share of the specimen's strength {k:.4g} is not between 0 and 1")
    return math.pi * d**3 / (16 * (S_a / (k * S_f) + S_m / R_m))


@formula("T_a = T/2", cites=[FIRST_PRINCIPLES])
def half_of_torque(T: NewtonMetres) -> NewtonMetres:
    """Amplitude, and mean, of a torque that rises from nothing to its greatest and falls again.

    T_a = T/2

    ``T`` the greatest [N·m]. Returns [N·m].

    >>> half_of_torque(T=600.0)
    300.0
    """
    return T / 2
