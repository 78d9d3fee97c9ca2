"""Lengths of a stud, stiffness of stud and clamped parts, and their thermal growth."""

from __future__ import annotations

import math

from speclint import FIRST_PRINCIPLES, formula, require
from speclint.equations import (
    KelvinDifference,
    Metres,
    NewtonsPerMetre,
    Pascals,
    PerKelvin,
    Radians,
    Ratio,
    SquareMetres,
)
from speclint.handbook.bolted_joints import differential_growth, frustum_stiffness
from speclint_joints.sources import SHIGLEY, VDI_2230

#: A cone thinner than this share of the grip is rounding of floating-point arithmetic, not a part.
_ROUNDING = 1e-9


@formula("L = l_1 + l_2 + t_g + s", cites=[FIRST_PRINCIPLES])
def free_length(l_1: Metres, l_2: Metres, t_g: Metres, s: Metres) -> Metres:
    """Length of stud that stretches between the engaged threads.

    L = l_1 + l_2 + t_g + s

    l_1: grip in the part held, m. l_2: grip in the part bolted to (0 for a stud), m. t_g: thickness of
    the gasket, m. s: depth at which the first engaged thread is set in, m. Returns m.

    >>> round(free_length(l_1=0.040, l_2=0.0, t_g=0.0015, s=0.005), 4)
    0.0465
    """
    return l_1 + l_2 + t_g + s


@formula("l_t = L − l_d", cites=[FIRST_PRINCIPLES])
def free_thread(L: Metres, l_d: Metres) -> Metres:
    """Length of thread within the free length of a stud.

    l_t = L − l_d

    L: free length, m. l_d: length of shank, m, not more than L. Returns m.

    >>> round(free_thread(L=0.0465, l_d=0.030), 4)
    0.0165
    """
    require(
        l_d <= L,
        f"the shank, {l_d * 1e3:.4g} mm, is longer than the free length of the stud, {L * 1e3:.4g} mm",
    )
    return L - l_d


@formula("k_b = 1/(1/k_f + 1/k_n + 1/k_e)", cites=[VDI_2230.at("section 5.1.1.1")])
def stud_with_ends_stiffness(
    k_f: NewtonsPerMetre, k_n: NewtonsPerMetre, k_e: NewtonsPerMetre
) -> NewtonsPerMetre:
    """Stiffness of a stud with its two engaged ends.

    k_b = 1/(1/k_f + 1/k_n + 1/k_e)

    k_f: free length, N/m. k_n: end in the nut, N/m. k_e: end in the tapped hole, or in the nut or head at the
    other end of a bolt, N/m. Returns N/m.

    >>> stud_with_ends_stiffness(k_f=1e9, k_n=4e9, k_e=4e9)  # hand: 1 + 1/4 + 1/4 = 3/2
    666666666.6666666
    """
    return 1 / (1 / k_f + 1 / k_n + 1 / k_e)


@formula(
    "k_m = 1/(1/k(E_a, d, D, h, α) + 1/k(E_b, d, D, t, α) + y), y = 1/k(E_a, d, D + 2 t tan α, h − t, "
    "α) if h > t, else 0, h = (h_1 + h_2)/2, t = min(h_1, h_2), E_a = E_1 if h_1 ≥ h_2, else E_2, E_b "
    "= E_2 if h_1 ≥ h_2, else E_1",
    cites=[SHIGLEY.at("section 8-5, eq. 8-18 and Ex. 8-2")],
)
def two_part_stiffness(
    E_1: Pascals, E_2: Pascals, d: Metres, D: Metres, h_1: Metres, h_2: Metres, alpha: Radians
) -> NewtonsPerMetre:
    """Stiffness of two clamped parts of different metals.

    E_1, E_2: moduli, Pa. d: hole (Shigley takes the bolt), m. D: face under the nut, m. h_1, h_2: thickness
    of each part in the grip, m, above 0. alpha: half angle of the cones of pressure, rad. Returns N/m.
    For a stud in a tapped part h_2 is the smaller of half the stud's diameter and half the part's thickness
    (Shigley, section 8-5). The cones must lie within the metal: a flange narrower than
    D + (h_1 + h_2) tan α is less stiff than this gives.

    Published check, Shigley, Ex. 8-2 (from memory): 0.595 in of steel on 0.75 in of cast iron, 1/2 in bolt,
    9.378 Mlbf/in:

    >>> inch, pound, psi = 0.0254, 4.4482216, 6894.757
    >>> k = two_part_stiffness(30e6 * psi, 14.5e6 * psi, 0.5 * inch, 0.75 * inch, 0.595 * inch, 0.75 * inch,
    ...                        math.radians(30))
    >>> round(k * inch / pound / 1e6, 2)
    9.38
    """
    require(h_1 > 0 * d, f"thickness {h_1 * 1e3:.4g} mm of the first part is not above 0")
    require(h_2 > 0 * d, f"thickness {h_2 * 1e3:.4g} mm of the second part is not above 0")
    thick, thin, E_thick, E_thin = (h_1, h_2, E_1, E_2) if h_1 >= h_2 else (h_2, h_1, E_2, E_1)
    half = (h_1 + h_2) / 2
    gives = 1 / frustum_stiffness(E_thick, d, D, half, alpha) + 1 / frustum_stiffness(
        E_thin, d, D, thin, alpha
    )
    if thick - half > _ROUNDING * half:
        at_joint = D + 2 * thin * math.tan(alpha)
        gives = gives + 1 / frustum_stiffness(E_thick, d, at_joint, thick - half, alpha)
    return 1 / gives


@formula("h_2 = d/2", cites=[SHIGLEY.at("section 8-5, cap screws")])
def tapped_part_in_grip(d: Metres) -> Metres:
    """Thickness of a tapped part that counts as clamped.

    h_2 = d/2

    d: nominal diameter, m; the part is at least as thick as that. Returns m.

    >>> tapped_part_in_grip(d=0.024)
    0.012
    """
    return d / 2


@formula("k_g = E_g A/(n t_g)", cites=[FIRST_PRINCIPLES])
def gasket_stiffness(E_g: Pascals, A: SquareMetres, n: Ratio, t_g: Metres) -> NewtonsPerMetre:
    """Stiffness of the share of a gasket that belongs to one stud.

    k_g = E_g A/(n t_g)

    E_g: modulus of the gasket as it is unloaded, Pa. A: area of the gasket, m². n: number of studs.
    t_g: thickness, m. Returns N/m.

    Hand working: 2 GPa × 24 000 mm²/(24 × 2 mm) = 1 MN/mm.

    >>> round(gasket_stiffness(E_g=2e9, A=24e-3, n=24, t_g=2e-3))
    1000000000
    """
    return E_g * A / (n * t_g)


@formula("Δ = l_1 (α_1 ΔT_1 − α_b ΔT_b) + l_2 (α_2 ΔT_2 − α_b ΔT_b)", cites=[FIRST_PRINCIPLES])
def growth_of_stack(
    l_1: Metres,
    alpha_1: PerKelvin,
    ΔT_1: KelvinDifference,
    l_2: Metres,
    alpha_2: PerKelvin,
    ΔT_2: KelvinDifference,
    alpha_b: PerKelvin,
    ΔT_b: KelvinDifference,
) -> Metres:
    """Thermal growth of two clamped parts over that of the stud through them.

    Δ = l_1 (α_1 ΔT_1 − α_b ΔT_b) + l_2 (α_2 ΔT_2 − α_b ΔT_b)

    ``l_1``, ``l_2`` lengths of the parts between the engaged threads [m]; ``alpha_1``, ``alpha_2`` mean coefficients of
    expansion of the parts [1/K]; ``ΔT_1``, ``ΔT_2`` rise of the parts above the temperature of tightening [K];
    ``alpha_b`` mean coefficient of expansion of the stud [1/K]; ``ΔT_b`` rise of the stud above the temperature of
    tightening [K]. Returns [m], negative where the stud grows more than the parts. A thin gasket grows nearly as the
    stud beside it and is neglected.

    Hand working: 40 mm at 13e-6/K up 225 K and 10 mm at 11e-6/K up 240 K against 12.5e-6/K up 200 K:
    40 (2.925 - 2.5) + 10 (2.64 - 2.5) = 17 + 1.4 µm.

    >>> round(growth_of_stack(0.040, 13e-6, 225.0, 0.010, 11e-6, 240.0, 12.5e-6, 200.0) * 1e6, 2)
    18.4
    """
    held = differential_growth(l_1, alpha_1, ΔT_1, alpha_b, ΔT_b)
    return held + differential_growth(l_2, alpha_2, ΔT_2, alpha_b, ΔT_b)
