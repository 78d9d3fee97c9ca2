"""The fit of a liner in its bore: interference, shrinkage for assembly, and allowable stress."""

from __future__ import annotations

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, formula
from speclint.equations import Kelvins, Metres, Pascals, PerKelvin, Ratio
from speclint_liners.sources import DIN_7190


@formula("δ = D_l − D_b", cites=[FIRST_PRINCIPLES])
def interference(D_l: Metres, D_b: Metres) -> Metres:
    """Diametral interference of a liner in its bore; negative for a clearance.

    δ = D_l − D_b

    ``D_l`` outside of the liner, ``D_b`` bore of the block [m]. Returns [m].

    >>> round(interference(D_l=0.5503, D_b=0.5500) * 1e3, 6)
    0.3
    """
    return D_l - D_b


@formula("c = −δ", cites=[FIRST_PRINCIPLES])
def gap_of_interference(delta: Metres) -> Metres:
    """Diametral gap, negative for an interference.

    c = −δ

    ``delta`` diametral interference [m]. Returns [m].

    >>> gap_of_interference(delta=-0.1e-3)
    0.0001
    """
    return -delta


@formula("δ_p = max(δ, 0)", cites=[FIRST_PRINCIPLES])
def pressing_interference(delta: Metres) -> Metres:
    """Interference that gives contact pressure: zero where the parts are loose.

    δ_p = max(δ, 0)

    ``delta`` interference, negative for a clearance [m]. Returns [m].

    >>> abs(pressing_interference(delta=-0.1e-3))
    0.0
    """
    return max(delta, 0 * delta)


@formula("Δ = D (α_b (T_b − T_ref) − α_l (T_l − T_ref))", cites=[FIRST_PRINCIPLES])
def interference_lost(
    D: Metres, alpha_l: PerKelvin, T_l: Kelvins, alpha_b: PerKelvin, T_b: Kelvins, T_ref: Kelvins
) -> Metres:
    """Interference that a liner loses as block and liner warm up; negative where it gains.

    Δ = D (α_b (T_b − T_ref) − α_l (T_l − T_ref))

    ``D`` joint [m]; ``alpha_l``, ``alpha_b`` mean coefficients of liner and block from ``T_ref`` [1/K];
    ``T_l``, ``T_b`` their temperatures, ``T_ref`` that of the drawing [K]. Returns [m].

    Hand working: 550 mm, 11.5 and 12.5e-6, both 280 K above the drawing: 550 × 280 × 1e-6 = 0.154 mm.

    >>> hot = {"alpha_l": 11.5e-6, "T_l": 573.15, "alpha_b": 12.5e-6, "T_b": 573.15}
    >>> round(interference_lost(D=0.550, T_ref=293.15, **hot) * 1e3, 3)
    0.154
    """
    return D * (alpha_b * (T_b - T_ref) - alpha_l * (T_l - T_ref))


@formula(
    "s = δ + a + D/5000", cites=[DIN_7190.at("entering clearance, thousandths of the joint"), COMMON_PRACTICE]
)
def shrinkage_to_enter(delta: Metres, a: Metres, D: Metres) -> Metres:
    """Difference of diameter needed to enter a liner freely.

    s = δ + a + D/5000

    ``delta`` greatest interference, ``a`` allowance for handling and dirt, ``D`` joint [m]. Returns [m].
    The clearance of D/5000 is common practice for large rings; DIN 7190 takes up to D/1000.

    Hand working: 0.32 + 0.05 + 550/5000 = 0.48 mm.

    >>> round(shrinkage_to_enter(delta=0.32e-3, a=0.05e-3, D=0.550) * 1e3, 6)
    0.48
    """
    return delta + a + D / 5000.0


@formula("s = D (α_b (T_b − T_ref) + α_l (T_ref − T_l))", cites=[FIRST_PRINCIPLES])
def shrinkage_available(
    D: Metres, alpha_b: PerKelvin, T_b: Kelvins, alpha_l: PerKelvin, T_l: Kelvins, T_ref: Kelvins
) -> Metres:
    """Difference of diameter from heating the block and chilling the liner together.

    s = D (α_b (T_b − T_ref) + α_l (T_ref − T_l))

    ``D`` joint [m]; ``alpha_b``, ``alpha_l`` mean coefficients of block and liner over their own change of
    temperature [1/K]; ``T_b``, ``T_l`` temperatures at assembly, ``T_ref`` that of the drawing [K].
    Returns [m]. A part left at ``T_ref`` gives none.

    Hand working: 550 mm, block 12e-6 to 120 °C, liner 10e-6 to −78 °C: 550 (1200 + 980)e-6 = 1.199 mm.

    >>> met = {"alpha_b": 12e-6, "T_b": 393.15, "alpha_l": 10e-6, "T_l": 195.15}
    >>> round(shrinkage_available(D=0.550, T_ref=293.15, **met) * 1e3, 3)
    1.199
    """
    return D * (alpha_b * (T_b - T_ref) + alpha_l * (T_ref - T_l))


@formula("σ_c = max(−σ, 0)", cites=[FIRST_PRINCIPLES])
def compression(sigma: Pascals) -> Pascals:
    """Compressive hoop stress of the liner at its bore.

    σ_c = max(−σ, 0)

    ``sigma`` hoop stress, tension positive [Pa]. Returns [Pa]; nothing for a tension.

    >>> compression(sigma=-60e6)
    60000000.0
    """
    return max(-sigma, 0 * sigma)


@formula("S_c = k R_c", cites=[COMMON_PRACTICE])
def allowed_compression(k: Ratio, R_c: Pascals) -> Pascals:
    """Allowable compressive stress of the liner.

    S_c = k R_c

    ``k`` share of the strength [-]; ``R_c`` compressive strength of the iron [Pa]. Returns [Pa].

    >>> allowed_compression(k=0.5, R_c=800e6)
    400000000.0
    """
    return k * R_c


@formula("S_b = k R_p", cites=[COMMON_PRACTICE])
def allowed_fit_stress(k: Ratio, R_p: Pascals) -> Pascals:
    """Allowable stress of the block from the fit.

    S_b = k R_p

    ``k`` share of the strength [-]; ``R_p`` proof stress of the block's metal [Pa]. Returns [Pa].

    >>> round(allowed_fit_stress(k=0.67, R_p=300e6) / 1e6, 6)
    201.0
    """
    return k * R_p
