"""The fit of a seat ring in its bore, and the load that pulls it out."""

from __future__ import annotations

import math

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, formula, require
from speclint.equations import Kelvins, Metres, Newtons, Pascals, PerKelvin, Ratio
from speclint.handbook.fits import SHRINK_FIT


@formula("δ = D_s − D_b", cites=[FIRST_PRINCIPLES])
def interference(D_s: Metres, D_b: Metres) -> Metres:
    """Diametral interference of a seat ring in its bore.

    δ = D_s − D_b

    ``D_s`` outside of the ring, ``D_b`` bore of the block [m]. Returns [m], negative for a clearance.

    >>> round(interference(D_s=0.200122, D_b=0.200046) * 1e6, 3)
    76.0
    """
    return D_s - D_b


@formula("D_o = D + 2 t", cites=[FIRST_PRINCIPLES])
def ring_of_block(D: Metres, t: Metres) -> Metres:
    """Outside diameter of the part of the block that backs a seat, with its least wall all round.

    D_o = D + 2 t

    ``D`` joint, ``t`` least metal to a free edge, a passage or the next bore [m]. Returns [m].
    Raises OutOfRange unless t > 0.

    >>> round(ring_of_block(D=0.200, t=0.040), 6)
    0.28
    """
    require(t > 0, f"wall {t:.6g} is not above 0")
    return D + 2 * t


@formula("p = δ/(D (((D² + d²)/(D² − d²) − ν_s)/E_s + (1 + ν_b)/E_b))", cites=SHRINK_FIT)
def pressure_in_solid_block(
    delta: Metres, d: Metres, D: Metres, E_s: Pascals, nu_s: Ratio, E_b: Pascals, nu_b: Ratio
) -> Pascals:
    """Contact pressure of a ring in a block so thick all round that no free edge eases it.

    p = δ/(D (((D² + d²)/(D² − d²) − ν_s)/E_s + (1 + ν_b)/E_b))

    ``delta`` diametral interference, not below 0, ``d`` bore of the ring, ``D`` joint [m]; ``E_s``, ``nu_s``, ``E_b``,
    ``nu_b`` moduli [Pa] and Poisson's ratios of ring and block. Returns [Pa]. It is the greatest that any wall behind
    the ring can give. Raises OutOfRange unless 0 < d < D.

    Hand working, steel throughout, 0.2 mm, 170/200 mm: (68900/11100 − 0.3 + 1.3)/200000 = 3.6036e-5 per MPa;
    0.2/200/3.6036e-5 = 27.750 MPa.

    >>> steel = {"E_s": 200e9, "nu_s": 0.3, "E_b": 200e9, "nu_b": 0.3}
    >>> round(pressure_in_solid_block(delta=0.2e-3, d=0.170, D=0.200, **steel) / 1e6, 2)
    27.75
    """
    require(0 < d < D, f"bore {d:.6g} is not between 0 and the joint {D:.6g}")
    inner = ((D**2 + d**2) / (D**2 - d**2) - nu_s) / E_s
    return delta / (D * (inner + (1 + nu_b) / E_b))


@formula("L = min(L_s, L_b)", cites=[FIRST_PRINCIPLES])
def length_in_contact(L_s: Metres, L_b: Metres) -> Metres:
    """Length over which a seat touches its bore.

    L = min(L_s, L_b)

    ``L_s`` length of the seat's joint, ``L_b`` depth of the bore [m]. Returns [m].

    >>> length_in_contact(L_s=0.028, L_b=0.008)
    0.008
    """
    return min(L_s, L_b)


@formula("δ_p = max(δ, 0)", cites=[FIRST_PRINCIPLES])
def pressing_interference(delta: Metres) -> Metres:
    """Interference that gives contact pressure: zero where the ring is loose.

    δ_p = max(δ, 0)

    ``delta`` diametral interference, negative for a clearance [m]. Returns [m].

    >>> pressing_interference(delta=-20e-6)
    0.0
    """
    return (delta + abs(delta)) / 2


@formula("σ_s = |σ|", cites=[FIRST_PRINCIPLES])
def size_of_stress(sigma: Pascals) -> Pascals:
    """Hoop stress without sign.

    σ_s = |σ|

    ``sigma`` stress, tension positive [Pa]. Returns [Pa].

    >>> size_of_stress(sigma=-135e6)
    135000000.0
    """
    return abs(sigma)


@formula("s = k S", cites=[COMMON_PRACTICE])
def share_of_strength(k: Ratio, S: Pascals) -> Pascals:
    """Permissible stress, a share of the strength.

    s = k S

    ``k`` share; ``S`` strength [Pa]. Returns [Pa].

    >>> share_of_strength(k=0.5, S=800e6)
    400000000.0
    """
    return k * S


@formula("F = π/4 (D² − d²) max(p_b − p_f, 0) + F_d", cites=[FIRST_PRINCIPLES])
def withdrawing_load(D: Metres, d: Metres, p_b: Pascals, p_f: Pascals, F_d: Newtons) -> Newtons:
    """Load that pulls the ring out of its bore.

    F = π/4 (D² − d²) max(p_b − p_f, 0) + F_d

    ``D`` joint, ``d`` bore of the ring [m]; ``p_b`` pressure behind the ring and ``p_f`` on the side to which
    it would come out [Pa], from the same datum; ``F_d`` pull of a sticking valve [N]. Returns [N].
    Pressure in the other direction presses the ring in and counts as zero. Raises OutOfRange unless 0 < d < D.

    Hand working: π/4 (200² − 170²) mm² × 0.24 MPa + 500 N = 8717.9 × 0.24 + 500 = 2592.3 N.

    >>> round(withdrawing_load(D=0.200, d=0.170, p_b=0.25e6, p_f=0.01e6, F_d=500.0), 1)
    2592.3
    """
    require(0 < d < D, f"bore {d:.6g} is not between 0 and the joint {D:.6g}")
    excess = max(p_b - p_f, 0 * p_b)
    return math.pi / 4 * (D**2 - d**2) * excess + F_d


@formula("F_n = x F", cites=[COMMON_PRACTICE])
def load_with_margin(x: Ratio, F: Newtons) -> Newtons:
    """Load to be held, including its margin.

    F_n = x F

    ``x`` factor; ``F`` load [N]. Returns [N].

    >>> load_with_margin(x=1.2, F=500.0)
    600.0
    """
    return x * F


@formula("s = δ + a + D/5000", cites=[COMMON_PRACTICE])
def shrinkage_to_enter(delta: Metres, a: Metres, D: Metres) -> Metres:
    """Shrinkage needed to drop the ring in without its sticking half-way.

    s = δ + a + D/5000

    ``delta`` greatest interference, ``a`` allowance for handling and dirt, ``D`` joint [m]. Returns [m].

    Hand working: 0.265 + 0.05 + 200/5000 = 0.355 mm.

    >>> round(shrinkage_to_enter(delta=0.265e-3, a=0.05e-3, D=0.200) * 1e3, 6)
    0.355
    """
    return delta + a + D / 5000


@formula("s = D (α_b (T_b − T_ref) + α_s (T_ref − T_s))", cites=[FIRST_PRINCIPLES])
def shrinkage_available(
    D: Metres, alpha_b: PerKelvin, T_b: Kelvins, alpha_s: PerKelvin, T_s: Kelvins, T_ref: Kelvins
) -> Metres:
    """Difference in diameter that a heated block and a chilled ring give together.

    s = D (α_b (T_b − T_ref) + α_s (T_ref − T_s))

    ``D`` joint [m]; ``alpha_b``, ``alpha_s`` mean coefficients of block and ring over their own change of
    temperature [1/K]; ``T_b``, ``T_s`` temperatures at assembly, ``T_ref`` the drawing's [K].
    Returns [m].

    Hand working: 200 mm, block 12e-6 to 120 °C, ring 9.7e-6 to −78 °C: 200 (1200 + 950.6)e-6 = 0.430 mm.

    >>> assembled = {"alpha_b": 12e-6, "T_b": 393.15, "alpha_s": 9.7e-6, "T_s": 195.15}
    >>> round(shrinkage_available(D=0.200, T_ref=293.15, **assembled) * 1e3, 3)
    0.43
    """
    return D * (alpha_b * (T_b - T_ref) + alpha_s * (T_ref - T_s))
