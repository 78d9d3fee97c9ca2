"""Fatigue of welds over the strokes of the engine's life by EN 1993-1-9, with a temperature factor."""

from __future__ import annotations

import math

from speclint import FIRST_PRINCIPLES, formula, require
from speclint.equations import Kelvins, Metres, Pascals, Ratio
from speclint_fabrication.sources import EN_1993_1_9, EN_13445_3, FATIGUE_CURVE, HOT_FATIGUE

_ICE = 273.15
#: Cycles of the detail category, of the constant-amplitude limit and of the cut-off (EN 1993-1-9, 7.1).
_CATEGORY, _LIMIT, _CUT_OFF = 2e6, 5e6, 1e8


@formula("N = i S/(π D)", cites=[FIRST_PRINCIPLES])
def strokes_of_life(i: Ratio, S: Metres, D: Metres) -> Ratio:
    """Strokes at each end of a cylinder over the engine's life: one per turn of the crank.

    N = i S/(π D)

    ``i`` turns of the crank for one of the wheels, ``S`` distance run, ``D`` diameter of the driving wheels [m].
    Returns a number.

    Hand working: two million kilometres on 1.75 m: 2e9/5.4978 = 3.638e8.

    >>> round(strokes_of_life(i=1.0, S=2e9, D=1.75) / 1e8, 3)
    3.638
    """
    return i * S / (math.pi * D)


@formula("N_c = max(N, 1e4)", cites=[EN_1993_1_9.at("fig. 7.1, from 10 000 cycles")])
def cycles_counted(N: Ratio) -> Ratio:
    """Cycles at which a weld is judged: never fewer than those at which the curve begins.

    N_c = max(N, 1e4)

    ``N`` cycles of its life [-]. Returns a number. Fewer than 10 000 allow at least as much.

    >>> cycles_counted(N=5000.0), cycles_counted(N=20000.0)
    (10000.0, 20000.0)
    """
    return max(N, 1e4)


@formula(
    "Δσ = Δσ_C (2e6/N)^(1/3) if N ≤ 5e6, else Δσ_C (2/5)^(1/3) (5e6/min(N, 1e8))^(1/5)",
    cites=[FATIGUE_CURVE],
)
def fatigue_strength(Δσ_C: Pascals, N: Ratio) -> Pascals:
    """Fatigue strength of a weld detail at a number of cycles; the cut-off limit beyond 1e8.

    Δσ = Δσ_C (2e6/N)^(1/3) if N ≤ 5e6, else Δσ_C (2/5)^(1/3) (5e6/min(N, 1e8))^(1/5)

    ``Δσ_C`` detail category, the range for two million cycles [Pa]; ``N`` cycles, from 1e4 [-]. Returns [Pa].
    Constant beyond 1e8 cycles, as in the standard: smaller ranges cause no damage. Raises OutOfRange below 1e4.

    EN 1993-1-9, fig. 7.1 (as reproduced in public documents): the constant-amplitude limit is 0.737 and the cut-off
    0.405 of the category.

    >>> round(fatigue_strength(Δσ_C=100e6, N=5e6) / 1e6, 1), round(fatigue_strength(Δσ_C=100e6, N=1e9) / 1e6, 1)
    (73.7, 40.5)
    """
    require(N >= 1e4, f"{N:.4g} cycles are fewer than 10 000: a matter of yielding, not of fatigue")
    if N <= _LIMIT:
        share: Ratio = (_CATEGORY / N) ** (1 / 3)
    else:
        share = (_CATEGORY / _LIMIT) ** (1 / 3) * (_LIMIT / min(N, _CUT_OFF)) ** (1 / 5)
    return Δσ_C * share


@formula(
    "f_T = 1 if t ≤ 100, else 1.03 − 1.5e-4 t − 1.5e-6 t², t = T/K − 273.15",
    cites=[HOT_FATIGUE],
    empirical="°C",
)
def fatigue_temperature_factor(T: Kelvins) -> Ratio:
    """Temperature factor of the fatigue strength of ferritic steel.

    f_T = 1 if t ≤ 100, else 1.03 − 1.5e-4 t − 1.5e-6 t², t = T/K − 273.15

    ``T`` metal temperature [K], to 380 °C. Returns a ratio. Raises OutOfRange above.

    Hand working: 260 °C: 1.03 − 0.039 − 0.1014 = 0.8896.

    >>> round(fatigue_temperature_factor(T=533.15), 4)
    0.8896
    """
    celsius = T - _ICE
    require(celsius <= 380, f"{celsius:.4g} °C is above 380 °C, to which the correction holds")
    return 1.0 if celsius <= 100 else 1.03 - 1.5e-4 * celsius - 1.5e-6 * celsius**2


@formula(
    "f_t = min(1, (25 mm/t)^0.2)",
    cites=[EN_1993_1_9.at("Table 8.3, size effect")],
    empirical="millimetres",
)
def fatigue_size_factor(t: Metres) -> Ratio:
    """Thickness factor of the fatigue strength of a weld transverse to the stress.

    f_t = min(1, (25 mm/t)^0.2)

    ``t`` plate [m], above 0. Returns a ratio. Raises OutOfRange otherwise.

    Hand working: 40 mm: 0.625^0.2 = exp(0.2 × −0.4700) = 0.9103.

    >>> round(fatigue_size_factor(t=0.040), 4)
    0.9103
    """
    require(t > 0, f"plate of {t * 1e3:.4g} mm is not above 0")
    millimetres = t * 1e3
    factor: Ratio = min(1.0, (25 / millimetres) ** 0.2)
    return factor


@formula(
    "S = Δσ f_T f_t/γ",
    cites=[EN_1993_1_9.at("8, verification"), EN_13445_3.at("18.10, thickness and temperature")],
)
def range_allowed(Δσ: Pascals, f_T: Ratio, f_t: Ratio, gamma: Ratio) -> Pascals:
    """Allowable stress range.

    S = Δσ f_T f_t/γ

    ``Δσ`` fatigue strength [Pa]; ``f_T`` factor for temperature, ``f_t`` factor for size, ``gamma`` partial factor [-].
    Returns [Pa].

    >>> round(range_allowed(Δσ=40.5e6, f_T=0.89, f_t=1.0, gamma=1.35) / 1e6, 3)
    26.7
    """
    return Δσ * f_T * f_t / gamma


@formula("Δσ = Δp (r + e/2)/e", cites=[FIRST_PRINCIPLES])
def range_round_barrel(Δp: Pascals, r: Metres, e: Metres) -> Pascals:
    """Stress range round a barrel as the pressure in it rises and falls.

    Δσ = Δp (r + e/2)/e

    ``Δp`` range of the pressure [Pa]; ``r`` inside radius, ``e`` net thickness of the barrel [m]. Returns [Pa]. Raises
    OutOfRange unless ``e`` is above 0.

    Hand working: 1.6 × (290 + 20)/40 = 12.4 MPa.

    >>> round(range_round_barrel(Δp=1.6e6, r=0.290, e=0.040) / 1e6, 6)
    12.4
    """
    require(e > 0, "no metal of the barrel is left")
    return Δp * (r + e / 2) / e
