"""Weakened sections of a rod, and their factor of safety against fatigue."""

from __future__ import annotations

import math

from speclint import FIRST_PRINCIPLES, formula, require
from speclint.equations import Metres, Pascals, Ratio, SquareMetres
from speclint_motion.sources import BOURNE, SHIGLEY_GOODMAN

_PSI = 6894.757293168361  # Pa: 0.45359237 kg × 9.80665 m/s² over 0.0254² m², all exact by definition


@formula("A = π d²/4 − (w/2) √(d² − w²) − (d²/2) arcsin(w/d)", cites=[FIRST_PRINCIPLES])
def slotted_area(d: Metres, w: Metres) -> SquareMetres:
    """Area of a round rod with a slot through it.

    A = π d²/4 − (w/2) √(d² − w²) − (d²/2) arcsin(w/d)

    ``d`` diameter, ``w`` width of the slot across the load [m], 0 ≤ w < d. Returns [m²].
    Raises OutOfRange outside.

    Hand working, d = 100 mm, w = 50 mm: 7853.98 − 25 × 86.6025 − 5000 × 0.523599 = 3070.92 mm².

    >>> round(slotted_area(d=0.100, w=0.050) * 1e6, 2)
    3070.92
    """
    require(0 * d <= w < d, f"a slot of {w * 1e3:.4g} mm does not lie within a rod of {d * 1e3:.4g} mm")
    chord: SquareMetres = w / 2 * (d**2 - w**2) ** 0.5
    return math.pi * d**2 / 4 - chord - d**2 / 2 * math.asin(w / d)


@formula("σ_a = (σ_t + σ_c)/2", cites=[FIRST_PRINCIPLES])
def stress_amplitude(σ_t: Pascals, σ_c: Pascals) -> Pascals:
    """Amplitude of a stress between tension and compression.

    σ_a = (σ_t + σ_c)/2

    ``σ_t`` greatest tension, ``σ_c`` greatest compression [Pa], both 0 or more. Returns [Pa].

    >>> stress_amplitude(σ_t=60e6, σ_c=40e6) / 1e6
    50.0
    """
    return (σ_t + σ_c) / 2


@formula("σ_m = (σ_t − σ_c)/2", cites=[FIRST_PRINCIPLES])
def mean_stress(σ_t: Pascals, σ_c: Pascals) -> Pascals:
    """Mean of a stress between tension and compression; below 0 where the compression is greater.

    σ_m = (σ_t − σ_c)/2

    Arguments as ``stress_amplitude``. Returns [Pa].

    >>> mean_stress(σ_t=60e6, σ_c=40e6) / 1e6
    10.0
    """
    return (σ_t - σ_c) / 2


@formula("n = 1/(K_f σ_a/(k S_f) + max(σ_m, 0)/R_m)", cites=[SHIGLEY_GOODMAN])
def fatigue_factor(σ_a: Pascals, σ_m: Pascals, K_f: Ratio, k: Ratio, S_f: Pascals, R_m: Pascals) -> Ratio:
    """Factor of safety against fatigue after Goodman; a mean compression is not credited.

    n = 1/(K_f σ_a/(k S_f) + max(σ_m, 0)/R_m)

    ``σ_a`` amplitude, above 0, and ``σ_m`` mean of the nominal stress [Pa]; ``K_f`` fatigue notch factor, at
    least 1; ``k`` share of the polished bar's endurance that the surface keeps, above 0 to 1; ``S_f`` endurance
    of a polished bar [Pa]; ``R_m`` tensile strength [Pa]. Raises OutOfRange outside.

    Hand working: 2 × 40/(0.8 × 400) + 40/800 = 0.25 + 0.05; 1/0.3.

    >>> round(fatigue_factor(σ_a=40e6, σ_m=40e6, K_f=2.0, k=0.8, S_f=400e6, R_m=800e6), 4)
    3.3333
    """
    require(σ_a > 0 * σ_a, "a stress without amplitude causes no fatigue")
    require(K_f >= 1, f"fatigue notch factor {K_f:.4g} is below 1")
    require(0 < k <= 1, f"share of the surface {k:.4g} is not between 0 and 1")
    return 1 / (K_f * σ_a / (k * S_f) + max(σ_m, 0 * σ_m) / R_m)


@formula("d = D √(p in²/lbf)/50", cites=[BOURNE.at("Q. 358")], empirical="inches and psi")
def bourne_rod(D: Metres, p: Pascals) -> Metres:
    """Diameter of a piston rod by Bourne's rule.

    d = D √p/50 in inches and psi

    ``D`` bore of the cylinder [m]; ``p`` pressure [Pa gauge], above 0. Returns [m].

    Hand working: 20 in at 225 psi: 20 × 15/50 = 6 in, much thicker than later practice: the rods were of wrought iron.

    >>> round(bourne_rod(D=20 * 0.0254, p=225 * 6894.757293168361) / 0.0254, 6)
    6.0
    """
    require(p > 0, "the pressure must be above 0")
    root: float = (p / _PSI) ** 0.5
    return D * root / 50
