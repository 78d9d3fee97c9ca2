"""Welds side by side that are bent across their lines, or twisted in their plane."""

from __future__ import annotations

import math

from speclint import FIRST_PRINCIPLES, formula, require
from speclint.equations import (
    CubicMetres,
    Metres,
    MetresToTheFourth,
    NewtonMetres,
    Newtons,
    Pascals,
    Ratio,
    SquareMetres,
)
from speclint_joints.sources import FATIGUE_ROOT, ROARK, WELD_STRENGTH


@formula("s = n (n + 1) b²/(12 (n − 1))", cites=[FIRST_PRINCIPLES])
def spread_of_lines(n: Ratio, b: Metres) -> SquareMetres:
    """Sum of the squares of the distances of equally spaced welds from their middle.

    s = n (n + 1) b²/(12 (n − 1))

    ``n`` welds, 2 or more; ``b`` distance of the outermost two [m]. Returns [m²]. Raises OutOfRange of one weld.

    Hand working, 48 mm apart: two 2 × 24² = 1152 mm²; four at 8 and 24 mm 2 × (64 + 576) = 1280.

    >>> [round(spread_of_lines(n, 0.048) * 1e6, 6) for n in (2, 4)]
    [1152.0, 1280.0]
    """
    require(n >= 2, "one weld stands beside no other")
    return n * (n + 1) * b**2 / (12 * (n - 1))


@formula("I_y = a l (s + n a²/12)", cites=[FIRST_PRINCIPLES])
def second_moment_across(n: Ratio, a: Metres, l: Metres, s: SquareMetres) -> MetresToTheFourth:  # noqa: E741
    """Second moment of the throats of welds side by side, bent across their lines.

    I_y = a l (s + n a²/12)

    ``n`` welds; ``a`` throat, ``l`` length of one [m]; ``s`` sum of the squares of their distances [m²], 0 of one
    alone. Returns [m⁴].

    Hand working, 8 × 300 twice, 48 mm apart: 2400 × (1152 + 10.667) = 2 790 400 mm⁴.

    >>> round(second_moment_across(n=2, a=0.008, l=0.3, s=1152e-6) * 1e12, 3)
    2790400.0
    """
    return a * l * (s + n * a**2 / 12)


@formula("W_y = 2 I_y/(b + a)", cites=[FIRST_PRINCIPLES])
def modulus_across(I_y: MetresToTheFourth, b: Metres, a: Metres) -> CubicMetres:
    """Section modulus of the throats of welds side by side, bent across their lines.

    W_y = 2 I_y/(b + a)

    ``I_y`` second moment [m⁴]; ``b`` distance of the outermost two, 0 of one alone; ``a`` throat [m]. Returns [m³].

    Hand working: 2 × 2 790 400/56 = 99 657 mm³.

    >>> round(modulus_across(I_y=2790400e-12, b=0.048, a=0.008) * 1e9)
    99657
    """
    return 2 * I_y / (b + a)


@formula("σ = σ_x + M_y/W_y", cites=[FIRST_PRINCIPLES])
def stress_with_bending_across(σ_x: Pascals, M_y: NewtonMetres, W_y: CubicMetres) -> Pascals:
    """Stress square to the face of the root at the corner of the welds.

    σ = σ_x + M_y/W_y

    ``σ_x`` stress by pull and bending along the welds [Pa]; ``M_y`` moment across them [N·m]; ``W_y`` modulus [m³].
    Returns [Pa].

    Hand working: 1 kN·m on 99 657 mm³ 10.03 MPa, beside 20 MPa.

    >>> round(stress_with_bending_across(σ_x=20e6, M_y=1000.0, W_y=99657e-9) / 1e6, 2)
    30.03
    """
    return σ_x + M_y / W_y


@formula("τ_T = T √(l² + (b + a)²)/(2 (I_y + n a l³/12))", cites=[FIRST_PRINCIPLES])
def twist_of_group(
    T: NewtonMetres,
    I_y: MetresToTheFourth,
    n: Ratio,
    a: Metres,
    l: Metres,  # noqa: E741
    b: Metres,
) -> Pascals:
    """Shear at the farthest corner of welds side by side that are twisted in their plane.

    τ_T = T √(l² + (b + a)²)/(2 (I_y + n a l³/12))

    ``T`` twist [N·m]; ``I_y`` second moment across [m⁴]; ``n`` welds; ``a`` throat, ``l`` length of one, ``b`` distance
    of the outermost two [m]. Returns [Pa].

    Hand working, 8 × 300 twice: I_x = 36 000 000, with 2 790 400 38 790 400 mm⁴; r = √(300² + 56²)/2 = 152.59 mm;
    1 kN·m makes 3.934 MPa.

    >>> round(twist_of_group(T=1000.0, I_y=2790400e-12, n=2, a=0.008, l=0.3, b=0.048) / 1e6, 3)
    3.934
    """
    farthest: float = (l**2 + (b + a) ** 2) ** 0.5
    return T * farthest / (2 * (I_y + n * a * l**3 / 12))


@formula(
    "τ_T = 3 T/(L t²) (1 + 0.6095 k + 0.8865 k² − 1.8023 k³ + 0.91 k⁴), k = t/L",
    cites=[ROARK.at("Table 10.1, solid rectangular section")],
)
def twist_of_rectangle(T: NewtonMetres, L: Metres, t: Metres) -> Pascals:
    """Shear of one plate that is welded through, twisted about its middle.

    τ_T = 3 T/(L t²) (1 + 0.6095 k + 0.8865 k² − 1.8023 k³ + 0.91 k⁴), k = t/L

    ``T`` twist [N·m]; ``L`` longer, ``t`` shorter side [m]. Returns [Pa].

    Hand working, 40 × 400: k = 0.1, 3 × 1 kN·m/(400 × 40²) = 4.6875 MPa × 1.0681 = 5.007 MPa.

    >>> round(twist_of_rectangle(T=1000.0, L=0.4, t=0.04) / 1e6, 3)
    5.007
    """
    k = t / L
    return 3 * T / (L * t**2) * (1 + 0.6095 * k + 0.8865 * k**2 - 1.8023 * k**3 + 0.91 * k**4)


@formula("τ_t = S_x/A + τ_T", cites=[FIRST_PRINCIPLES])
def shear_across_lines(S_x: Newtons, A: SquareMetres, τ_T: Pascals) -> Pascals:
    """Shear in the face and across the welds: all that twist makes is taken to act so.

    τ_t = S_x/A + τ_T

    ``S_x`` force across the welds [N]; ``A`` area of the throats [m²]; ``τ_T`` shear stress by twist [Pa]. Returns
    [Pa].

    >>> shear_across_lines(S_x=4800.0, A=4800e-6, τ_T=2e6)
    3000000.0
    """
    return S_x / A + τ_T


@formula("τ = τ_S + τ_T", cites=[FIRST_PRINCIPLES])
def shear_with_twist_of_welds(τ_S: Pascals, τ_T: Pascals) -> Pascals:
    """All shear in the face of the root, taken to act one way.

    τ = τ_S + τ_T

    ``τ_S`` shear stress by the forces in the face, ``τ_T`` shear stress by twist [Pa]. Returns [Pa].

    >>> shear_with_twist_of_welds(τ_S=1e6, τ_T=2e6)
    3000000.0
    """
    return τ_S + τ_T


@formula("σ_v = √(2 σ² + 2 |σ τ_t| + 3 τ²)", cites=[WELD_STRENGTH])
def equivalent_in_fillet(σ: Pascals, τ_t: Pascals, τ: Pascals) -> Pascals:
    """Equivalent stress of a fillet weld whose throat stands at 45°.

    σ_v = √(2 σ² + 2 |σ τ_t| + 3 τ²)

    ``σ`` stress square to the face of the root; ``τ_t`` shear in the face across the weld; ``τ`` all shear in the face
    [Pa]. Returns [Pa]: on the throat σ and τ_t make (σ − τ_t)/√2 and (σ + τ_t)/√2; with the sense of the weld that is
    worse off (σ − τ_t)²/2 + 3 (σ + τ_t)²/2 = 2 σ² + 2 |σ τ_t| + 2 τ_t², beside 3 τ_l² along it. 3 τ² is no less than
    2 τ_t² + 3 τ_l².

    Hand working: √(2 × 71.9² + 3 × 12.0²) = 103.8 MPa; with τ_t 12.0 √(10771 + 1726) = 111.8.

    >>> [round(equivalent_in_fillet(σ=71.9e6, τ_t=one, τ=12.0e6) / 1e6, 1) for one in (0.0, 12.0e6)]
    [103.8, 111.8]
    """
    found: float = (2 * σ**2 + 2 * abs(σ * τ_t) + 3 * τ**2) ** 0.5
    return found


@formula("σ_s = (σ + τ_t)/√2", cites=[WELD_STRENGTH])
def across_fillet(σ: Pascals, τ_t: Pascals) -> Pascals:
    """Stress square to the throat of a fillet weld.

    σ_s = (σ + τ_t)/√2

    ``σ`` stress square to the face of the root, ``τ_t`` shear in the face across the weld [Pa]. Returns [Pa].

    >>> [round(across_fillet(σ=71.9e6, τ_t=one) / 1e6, 1) for one in (0.0, 12.0e6)]
    [50.8, 59.3]
    """
    return (σ + τ_t) / math.sqrt(2)


@formula("σ_f = √(σ² + τ_t²)", cites=[FATIGUE_ROOT])
def across_root_of_fillet(σ: Pascals, τ_t: Pascals) -> Pascals:
    """Stress across a fillet weld by which its root is held against fatigue: √(σ_⊥² + τ_⊥²) on the throat.

    σ_f = √(σ² + τ_t²)

    ``σ`` stress square to the face of the root, ``τ_t`` shear in the face across the weld [Pa]. Returns [Pa].

    >>> across_root_of_fillet(σ=4e6, τ_t=3e6)
    5000000.0
    """
    found: float = (σ**2 + τ_t**2) ** 0.5
    return found
