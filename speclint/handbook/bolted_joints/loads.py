"""Effects of a working load and of heat on a tightened joint.

Loads are per stud. A gauge pressure on the joint circle makes the working load.
"""

from __future__ import annotations

import math

from speclint.equations import (
    FIRST_PRINCIPLES,
    KelvinDifference,
    Metres,
    Newtons,
    NewtonsPerMetre,
    Pascals,
    PerKelvin,
    Ratio,
    formula,
    require,
)
from speclint.handbook.tables import JINDAL, KHURMI, SHIGLEY, VDI_2230


@formula("F = π D² p/4", cites=[KHURMI.at("cylinder head example"), FIRST_PRINCIPLES])
def pressure_load(D: Metres, p: Pascals) -> Newtons:
    """Load from the gauge pressure inside a circle.

    D: diameter to which the pressure reaches, of a cover or of a piston whose rod is not taken off, m.
    p: gauge pressure, or its mean over a stroke, Pa. Returns N.

    Published check, Khurmi: 115 mm at 3.15 MPa, printed 32 702 N with a rounded π:

    >>> round(pressure_load(D=0.115, p=3.15e6), -1)
    32720.0
    """
    return math.pi * D**2 * p / 4


@formula("F_b = F_i + Φ P", cites=[SHIGLEY.at("eq. 8-24"), JINDAL.at("Ex. 9-6")])
def stud_load(F_i: Newtons, Phi: Ratio, P: Newtons) -> Newtons:
    """Load in the stud while the joint stays closed.

    F_i: preload, N. Phi: load factor. P: working load, N. Returns N.

    >>> stud_load(F_i=120e3, Phi=0.35, P=30e3)  # Jindal, Ex. 9-6
    130500.0
    """
    return F_i + Phi * P


@formula("F_m = F_i − (1 − Φ) P", cites=[SHIGLEY.at("eq. 8-25")])
def clamping_load_left(F_i: Newtons, Phi: Ratio, P: Newtons) -> Newtons:
    """Load that still presses the faces together; at or below zero the joint has separated.

    F_i: preload, N. Phi: load factor. P: working load, N. Returns N.

    >>> round(clamping_load_left(F_i=25e3, Phi=0.32, P=6e3))  # Shigley, Ex. 8-3: hand, 25 - 0.68 × 6
    20920
    """
    return F_i - (1 - Phi) * P


@formula("n = F_i/((1 − Φ) P)", cites=[SHIGLEY.at("eq. 8-30")])
def separation_factor(F_i: Newtons, Phi: Ratio, P: Newtons) -> Ratio:
    """Multiple of the working load at which the joint separates.

    F_i: preload, N. Phi: load factor, below 1. P: working load, N, above 0. Returns a ratio. Raises OutOfRange outside.
    """
    require(Phi < 1, f"load factor {Phi:.3g} is not below 1")
    require(P > 0 * P, "separation needs a working load above 0")
    return F_i / ((1 - Phi) * P)


@formula("F_i = n (1 − Φ) P", cites=[SHIGLEY.at("eq. 8-30, solved for the preload")])
def preload_against_separation(n: Ratio, Phi: Ratio, P: Newtons) -> Newtons:
    """Least preload that keeps the joint closed under a multiple of the working load.

    n: factor. Phi: load factor. P: working load, N. Returns N.
    """
    return n * (1 - Phi) * P


@formula("Δ = L (α_m ΔT_m − α_b ΔT_b)", cites=[FIRST_PRINCIPLES])
def differential_growth(
    L: Metres,
    alpha_m: PerKelvin,
    ΔT_m: KelvinDifference,
    alpha_b: PerKelvin,
    ΔT_b: KelvinDifference,
) -> Metres:
    """Differential expansion of clamped parts and stud over one length; parts of several materials add up.

    L: length, m. alpha_m, alpha_b: mean expansion of parts and stud, 1/K. ΔT_m, ΔT_b: their rise above the
    temperature of tightening, K. Returns m, negative where the stud expands more than the parts.

    Hand working: 100 mm of iron at 11e-6/K up 200 K and steel at 12e-6/K up 150 K: 0.220 - 0.180 mm.

    >>> round(differential_growth(0.100, 11e-6, 200.0, 12e-6, 150.0) * 1e3, 3)
    0.04
    """
    return L * (alpha_m * ΔT_m - alpha_b * ΔT_b)


@formula(
    "F_hot = (F_cold (1/k_bc + 1/k_mc) + Δ)/(1/k_bh + 1/k_mh)",
    cites=[VDI_2230.at("eq. 118"), FIRST_PRINCIPLES],
)
def preload_hot(
    F_cold: Newtons,
    Delta: Metres,
    k_bc: NewtonsPerMetre,
    k_mc: NewtonsPerMetre,
    k_bh: NewtonsPerMetre,
    k_mh: NewtonsPerMetre,
) -> Newtons:
    """Preload of a joint when hot: that when cold and the differential expansion, at the hot stiffnesses.

    F_cold: preload cold, N. Delta: ``differential_growth`` over everything between the engaged threads, m. k_bc, k_mc:
    stiffness of stud and parts with cold moduli, N/m. k_bh, k_mh: stiffness of stud and parts with hot moduli, N/m.
    Returns N; below zero the stud has expanded more than the joint and is slack.

    Hand working: springs of 1 and 4 MN/mm give 1.25 µm/kN; 40 µm more on 100 kN is 32 kN.

    >>> round(preload_hot(100e3, 40e-6, 1e9, 4e9, 1e9, 4e9))
    132000
    """
    drawn = F_cold * (1 / k_bc + 1 / k_mc) + Delta
    return drawn / (1 / k_bh + 1 / k_mh)
