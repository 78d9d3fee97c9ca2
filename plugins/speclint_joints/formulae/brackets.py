"""Welds at the root of a bracket, its stiffness and its natural frequency."""

from __future__ import annotations

import math

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, formula, require
from speclint.equations import (
    CubicMetres,
    Hertz,
    Kilograms,
    Metres,
    MetresPerSecond,
    NewtonMetres,
    Newtons,
    NewtonsPerMetre,
    Pascals,
    Ratio,
    SquareMetres,
)
from speclint_joints.sources import FATIGUE_CURVE, FATIGUE_SHEAR, WELD_STRENGTH


@formula("f = R_m R_T/R_0", cites=[COMMON_PRACTICE])
def strength_when_warm(R_m: Pascals, R_T: Pascals, R_0: Pascals) -> Pascals:
    """Tensile strength of a steel that is warm, taken to fall as its proof stress does.

    f = R_m R_T/R_0

    ``R_m`` tensile strength when cold; ``R_T`` proof stress at the temperature, ``R_0`` when cold [Pa]. Returns [Pa].
    Raises OutOfRange unless R_0 is above 0.

    Hand working: 1000 MPa, proof stress 855 of 900 MPa: 950 MPa.

    >>> strength_when_warm(R_m=1000e6, R_T=855e6, R_0=900e6) / 1e6
    950.0
    """
    require(R_0 > 0 * R_0, "proof stress when cold must be above 0")
    return R_m * R_T / R_0


@formula("A = n a l", cites=[FIRST_PRINCIPLES])
def throat_area(n: Ratio, a: Metres, l: Metres) -> SquareMetres:  # noqa: E741 - the letter of the equation
    """Area of the throats of welds side by side.

    A = n a l

    ``n`` welds; ``a`` throat, ``l`` length of one [m]. Returns [m²].

    >>> round(throat_area(n=2, a=0.008, l=0.3) * 1e6, 6)
    4800.0
    """
    return n * a * l


@formula("W = n a l²/6", cites=[FIRST_PRINCIPLES])
def throat_modulus(n: Ratio, a: Metres, l: Metres) -> CubicMetres:  # noqa: E741
    """Section modulus of the throats of welds side by side, bent along their length.

    W = n a l²/6

    ``n`` welds; ``a`` throat, ``l`` length of one [m]. Returns [m³].

    >>> round(throat_modulus(n=2, a=0.008, l=0.3) * 1e9, 3)
    240000.0
    """
    return n * a * l**2 / 6


@formula("σ = M/W + P/A", cites=[FIRST_PRINCIPLES])
def stress_across_throat(M: NewtonMetres, W: CubicMetres, P: Newtons, A: SquareMetres) -> Pascals:
    """Stress square to the face of the root, on the throats.

    σ = M/W + P/A

    ``M`` moment [N·m]; ``W`` section modulus [m³]; ``P`` pull [N]; ``A`` area [m²] of the throats. Returns [Pa].

    Hand working: 17.25 kN·m on 240 000 mm³ 71.9 MPa.

    >>> round(stress_across_throat(M=17250.0, W=240e-6, P=0.0, A=4800e-6) / 1e6, 1)
    71.9
    """
    return M / W + P / A


@formula("σ_v = √(σ² + 3 τ²)", cites=[WELD_STRENGTH])
def equivalent_in_plate(σ: Pascals, τ: Pascals) -> Pascals:
    """Equivalent stress of a weld that goes through its plate.

    σ_v = √(σ² + 3 τ²)

    ``σ`` stress square to the face of the root, ``τ`` shear along the weld [Pa]. Returns [Pa].

    >>> equivalent_in_plate(σ=40e6, τ=0.0)
    40000000.0
    """
    found: float = (σ**2 + 3 * τ**2) ** 0.5
    return found


@formula(
    "S = f_u/(β 1.25), β = 0.8 if f_u ≤ 360 MPa, 0.85 if f_u ≤ 430 MPa, 0.9 if f_u ≤ 510 MPa, else 1",
    cites=[WELD_STRENGTH],
    empirical="pascals",
)
def strength_of_weld(f_u: Pascals) -> Pascals:
    """Design strength of a fillet weld by the steel that it joins.

    S = f_u/(β 1.25), β = 0.8 if f_u ≤ 360 MPa, 0.85 if f_u ≤ 430 MPa, 0.9 if f_u ≤ 510 MPa, else 1

    ``f_u`` tensile strength of the weaker plate [Pa]. Returns [Pa]. γ_M2 is 1.25.

    Hand working: 470/(0.9 × 1.25) = 417.8 MPa.

    >>> round(strength_of_weld(f_u=470e6) / 1e6, 1)
    417.8
    """
    if f_u <= 360e6:
        return f_u / (0.8 * 1.25)
    if f_u <= 430e6:
        return f_u / (0.85 * 1.25)
    return f_u / (0.9 * 1.25) if f_u <= 510e6 else f_u / 1.25


@formula("S = 0.9 f_u/1.25", cites=[WELD_STRENGTH])
def strength_across_throat(f_u: Pascals) -> Pascals:
    """Design strength of a weld for the stress square to its throat.

    S = 0.9 f_u/1.25

    ``f_u`` tensile strength of the weaker plate [Pa]. Returns [Pa].

    >>> round(strength_across_throat(f_u=470e6) / 1e6, 1)
    338.4
    """
    return 0.9 * f_u / 1.25


@formula("S = 0.405 Δσ_C/γ", cites=[FATIGUE_CURVE])
def range_beyond_counting(Δσ_C: Pascals, gamma: Ratio) -> Pascals:
    """Range of stress below which no number of cycles harms.

    S = 0.405 Δσ_C/γ

    ``Δσ_C`` strength at two million cycles [Pa]; ``gamma`` partial factor. Returns [Pa]: the cut-off at 10⁸ cycles.

    Hand working: 0.405 × 36/1.35 = 10.8 MPa, × 71 21.3.

    >>> [round(range_beyond_counting(one, 1.35) / 1e6, 1) for one in (36e6, 71e6)]
    [10.8, 21.3]
    """
    return 0.405 * Δσ_C / gamma


@formula("S = 0.457 Δτ_C/γ", cites=[FATIGUE_SHEAR])
def shear_beyond_counting(Δτ_C: Pascals, gamma: Ratio) -> Pascals:
    """Range of shear below which no number of cycles harms: slope 5 from 2 · 10⁶ to 10⁸ cycles.

    S = 0.457 Δτ_C/γ

    ``Δτ_C`` strength at two million cycles [Pa]; ``gamma`` partial factor. Returns [Pa].

    >>> round(shear_beyond_counting(80e6, 1.35) / 1e6, 1), round((2e6 / 1e8) ** 0.2, 3)
    (27.1, 0.457)
    """
    return 0.457 * Δτ_C / gamma


@formula("f = √(k/m)/(2 π)", cites=[FIRST_PRINCIPLES])
def natural_frequency(k: NewtonsPerMetre, m: Kilograms) -> Hertz:
    """Natural frequency of a mass on a bracket.

    f = √(k/m)/(2 π)

    ``k`` stiffness [N/m], not below 0; ``m`` mass [kg], above 0. Returns [Hz]. Raises OutOfRange otherwise.

    Hand working, 25 kg: on 2e6 N/m 45.0 Hz, on 2e5 14.2.

    >>> [round(natural_frequency(k, 25.0), 1) for k in (2e6, 2e5)]
    [45.0, 14.2]
    """
    require(m > 0 * m, "a mass must be above 0")
    require(k >= 0 * k, f"stiffness {k / 1e3:.4g} N/mm is below 0")
    found: float = (k / m) ** 0.5 / (2 * math.pi)
    return found


@formula("f_e = 2 v/(π D)", cites=[FIRST_PRINCIPLES])
def exciting_frequency(v: MetresPerSecond, D: Metres) -> Hertz:
    """Highest frequency that shakes an engine: twice the turns of its wheels.

    f_e = 2 v/(π D)

    ``v`` speed [m/s]; ``D`` worn wheel [m]. Returns [Hz]. The joints of rails of 18.3 m shake it less often, v/18.3 m,
    with every wheel below 11 m.

    Hand working: 32 m/s on 1.675 m: 12.16 Hz.

    >>> round(exciting_frequency(v=32.0, D=1.675), 2)
    12.16
    """
    return 2 * v / (math.pi * D)


@formula("f_n = k f_e", cites=[FIRST_PRINCIPLES])
def frequency_wanted(k: Ratio, f_e: Hertz) -> Hertz:
    """Least natural frequency of what hangs on an engine.

    f_n = k f_e

    ``k`` factor; ``f_e`` highest exciting frequency [Hz]. Returns [Hz].

    >>> frequency_wanted(k=2, f_e=12.0)
    24.0
    """
    return k * f_e


@formula("y = F/k", cites=[FIRST_PRINCIPLES])
def deflection_of_bracket(F: Newtons, k: NewtonsPerMetre) -> Metres:
    """Deflection of a bracket at what it carries.

    y = F/k

    ``F`` load [N]; ``k`` stiffness [N/m]. Returns [m].

    >>> deflection_of_bracket(F=50e3, k=1e8)
    0.0005
    """
    return F / k


@formula("y_n = x L", cites=[FIRST_PRINCIPLES])
def deflection_allowed(x: Ratio, L: Metres) -> Metres:
    """Deflection allowed, as a share of the span of a slide bar or of the lift of a valve.

    y_n = x L

    ``x`` share; ``L`` span or lift [m]. Returns [m].

    >>> round(deflection_allowed(x=0.001, L=1.3), 6)
    0.0013
    """
    return x * L
