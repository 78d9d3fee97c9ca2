"""Endurance of a stud's thread under a fluctuating load, after VDI 2230.

Holds for studs of ISO 898-1 classes 8.8 to 12.9 and for at least two million loads. Ordinary carbon steel,
corrosion and heat lower it: use with a factor.

>>> round(endurance_rolled_before_treatment(d=0.016) / 1e6, 2)  # hand: 0.85 (9.375 + 45)
46.22
"""

from __future__ import annotations

from speclint.equations import (
    COMMON_PRACTICE,
    FIRST_PRINCIPLES,
    Metres,
    Newtons,
    Pascals,
    Ratio,
    Source,
    SquareMetres,
    formula,
    require,
)
from speclint.handbook.tables import VDI_2230


def _seen(place: str) -> Source:
    """An equation of the guideline that was seen in public calculations after it."""
    return VDI_2230.at(f"{place}, as reproduced in public calculations of bolted joints", memory=False)


#: A cut thread endures this share of one rolled before heat treatment (common practice).
CUT_THREAD_SHARE = 0.7
_SMALLEST, _LARGEST = 0.004, 0.039  # VDI 2230 covers M4 to M39
_ENDLESS = 2e6
_FEWEST = 1e4


@formula("σ_a = Φ (P_high − P_low)/(2 A_s)", cites=[_seen("eq. 187"), FIRST_PRINCIPLES])
def stress_amplitude(Phi: Ratio, P_high: Newtons, P_low: Newtons, A_s: SquareMetres) -> Pascals:
    """Amplitude of the tension in a stud, which for a cylinder cover repeats at each stroke.

    Phi: load factor. P_high, P_low: greatest and least working load per stud, N. A_s: stress area, m².
    Returns Pa.

    Hand working: 0.2 of a 30 kN range, half of it, on 245 mm²: 3000/245 = 12.24 MPa.

    >>> round(stress_amplitude(0.2, 30e3, 0.0, 245e-6) / 1e6, 2)
    12.24
    """
    return Phi * (P_high - P_low) / (2 * A_s)


@formula(
    "σ_AV = 0.85 (150 mm/d + 45) MPa",
    cites=[_seen("eq. R10/1")],
    empirical="millimetres and megapascals",
)
def endurance_rolled_before_treatment(d: Metres) -> Pascals:
    """Stress amplitude that a thread rolled before heat treatment endures.

    d: nominal diameter, 4 to 39 mm, m. Returns Pa.
    """
    require(
        _SMALLEST <= d <= _LARGEST,
        f"endurance of threads is known from 4 to 39 mm; {d * 1e3:.4g} mm is outside",
    )
    return 0.85 * (150 / (d * 1e3) + 45) * 1e6


@formula("σ_AG = (2 − F_m/F_02) σ_AV", cites=[_seen("eq. R10/2")])
def endurance_rolled_after_treatment(sigma_AV: Pascals, F_m: Newtons, F_02: Newtons) -> Pascals:
    """Stress amplitude that a thread rolled after heat treatment endures; a mean load reduces the gain.

    sigma_AV: endurance rolled before treatment, Pa. F_m: mean stud load, N. F_02: load at the 0.2 % proof
    strength, N; F_m/F_02 from 0.3 to 1. Returns Pa.

    >>> round(endurance_rolled_after_treatment(46.22, 70e3, 100e3), 2)  # hand: 1.3 × 46.22
    60.09
    """
    share = F_m / F_02
    require(0.3 <= share <= 1, f"mean stud load over proof load, {share:.3g}, is not from 0.3 to 1")
    return (2 - share) * sigma_AV


@formula("σ_AC = 0.7 σ_AV", cites=[COMMON_PRACTICE])
def endurance_cut(sigma_AV: Pascals) -> Pascals:
    """Stress amplitude that a cut thread endures.

    sigma_AV: endurance rolled before treatment, Pa. Returns Pa.
    """
    return CUT_THREAD_SHARE * sigma_AV


@formula("σ_AZ = σ_A (2e6/min(N, 2e6))^(1/3)", cites=[VDI_2230.at("eq. R10/3")])
def strength_for_cycles(sigma_A: Pascals, N: Ratio) -> Pascals:
    """Stress amplitude that a thread rolled before treatment carries for a stated, smaller number of loads.

    sigma_A: endurance, Pa. N: number of loads, at least 10 000; from two million on the endurance holds.
    Returns Pa.

    >>> strength_for_cycles(40.0, 250_000)  # hand: 8^(1/3) = 2
    80.0
    """
    require(N >= _FEWEST, f"{N:.4g} loads: below 10 000 the fatigue line does not hold")
    strength: float = sigma_A * (_ENDLESS / min(N, _ENDLESS)) ** (1 / 3)
    return strength
