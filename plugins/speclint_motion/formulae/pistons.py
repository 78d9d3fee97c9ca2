"""Piston, rings and lands, cold and hot."""

from __future__ import annotations

import math

from speclint import FIRST_PRINCIPLES, formula, require
from speclint.equations import Kelvins, Metres, MetresPerSecond, Newtons, Pascals, PerKelvin, Ratio


@formula("D_h = D (1 + α (T − T_ref))", cites=[FIRST_PRINCIPLES])
def size_when_hot(D: Metres, alpha: PerKelvin, T: Kelvins, T_ref: Kelvins) -> Metres:
    """Diameter of a part at its own temperature.

    D_h = D (1 + α (T − T_ref))

    ``D`` cold [m]; ``alpha`` mean coefficient of expansion [1/K]; ``T`` of the part, ``T_ref`` of the drawing [K].
    Returns [m].

    Hand working: 500 mm, 12e-6/K, 300 K: 501.8 mm.

    >>> round(size_when_hot(D=0.5, alpha=12e-6, T=593.15, T_ref=293.15) * 1e3, 6)
    501.8
    """
    return D * (1 + alpha * (T - T_ref))


@formula("c = D_l − D_p", cites=[FIRST_PRINCIPLES])
def diametral_clearance(D_l: Metres, D_p: Metres) -> Metres:
    """Diametral clearance between a bore and the part in it; below 0 it binds.

    c = D_l − D_p

    ``D_l`` bore, ``D_p`` outside of the piston or rod [m]. Returns [m].

    >>> round(diametral_clearance(D_l=0.5010, D_p=0.4990) * 1e3, 6)
    2.0
    """
    return D_l - D_p


@formula("c_n = k D", cites=[FIRST_PRINCIPLES])
def share_of_diameter(k: Ratio, D: Metres) -> Metres:
    """A clearance as a share of the diameter.

    c_n = k D

    ``k`` share; ``D`` [m]. Returns [m].

    >>> round(share_of_diameter(k=0.0005, D=0.5) * 1e3, 6)
    0.25
    """
    return k * D


@formula(
    "g_h = g + π D (α_l (T_l − T_ref) − α_r (T_r − T_ref))",
    cites=[FIRST_PRINCIPLES],
)
def ring_gap_when_hot(
    g: Metres,
    D: Metres,
    alpha_l: PerKelvin,
    T_l: Kelvins,
    alpha_r: PerKelvin,
    T_r: Kelvins,
    T_ref: Kelvins,
) -> Metres:
    """Gap between the ends of a ring, with ring and liner hot.

    g_h = g + π D (α_l (T_l − T_ref) − α_r (T_r − T_ref))

    ``g`` gap cold in the bore ``D`` [m]; ``alpha_l``, ``alpha_r`` mean coefficients of liner and ring [1/K];
    ``T_l``, ``T_r`` their temperatures, ``T_ref`` that of the drawing [K]. Returns [m], below 0 when the ends meet.

    Hand working: 4 mm, 500 mm, both 12e-6/K, liner 200 K and ring 300 K up: 4 − 1570.796 × 0.0012 = 2.11504 mm.

    >>> round(ring_gap_when_hot(0.004, 0.5, 12e-6, 493.15, 12e-6, 593.15, 293.15) * 1e3, 5)
    2.11504
    """
    return g + math.pi * D * (alpha_l * (T_l - T_ref) - alpha_r * (T_r - T_ref))


@formula("g_w = g + π (D_w − D)", cites=[FIRST_PRINCIPLES])
def ring_gap_when_worn(g: Metres, D: Metres, D_w: Metres) -> Metres:
    """Gap between the ends of a ring in a bore that has worn, cold.

    g_w = g + π (D_w − D)

    ``g`` gap in the bore ``D`` that the ring was made for, ``D_w`` the bore worn [m]. Returns [m].

    Hand working: 3 mm, worn by 3 mm on the diameter: 3 + 9.424778.

    >>> round(ring_gap_when_worn(g=0.003, D=0.500, D_w=0.503) * 1e3, 6)
    12.424778
    """
    return g + math.pi * (D_w - D)


@formula("σ = 3 p h²/b²", cites=[FIRST_PRINCIPLES])
def land_bending(p: Pascals, h: Metres, b: Metres) -> Pascals:
    """Bending stress at the root of a piston's land, taken as a strip fixed at the bottom of the groove.

    σ = 3 p h²/b²

    ``p`` pressure on the land's one side [Pa]; ``h`` depth of the groove, ``b`` thickness of the land [m], above 0.
    Returns [Pa]: conservative, as the ring shape of the land stiffens it. Raises OutOfRange unless b is above 0.

    Hand working: 1.6 MPa, 20 and 20 mm: 3 × 1.6 = 4.8 MPa.

    >>> round(land_bending(p=1.6e6, h=0.020, b=0.020) / 1e6, 6)
    4.8
    """
    require(b > 0 * b, "the thickness of the land must be above 0")
    return 3 * p * h**2 / b**2


@formula("τ = 3 p h/(2 b)", cites=[FIRST_PRINCIPLES])
def land_shear(p: Pascals, h: Metres, b: Metres) -> Pascals:
    """Greatest shear stress at the root of a piston's land: 1.5 times the mean.

    τ = 3 p h/(2 b)

    Arguments and errors as ``land_bending``. Returns [Pa].

    Hand working: 1.6 MPa, 20 and 10 mm: 1.5 × 3.2 = 4.8 MPa.

    >>> round(land_shear(p=1.6e6, h=0.020, b=0.010) / 1e6, 6)
    4.8
    """
    require(b > 0 * b, "the thickness of the land must be above 0")
    return 3 * p * h / (2 * b)


@formula("S = R/n", cites=[FIRST_PRINCIPLES])
def strength_over(R: Pascals, n: Ratio) -> Pascals:
    """A strength divided by a factor.

    S = R/n

    ``R`` strength [Pa]; ``n`` factor, above 0. Returns [Pa]. Raises OutOfRange otherwise.

    >>> strength_over(R=200e6, n=8.0) / 1e6
    25.0
    """
    require(n > 0, "the factor must be above 0")
    return R / n


@formula("S = x R", cites=[FIRST_PRINCIPLES])
def share_of_strength(x: Ratio, R: Pascals) -> Pascals:
    """A share of a strength.

    S = x R

    ``x`` share; ``R`` strength [Pa]. Returns [Pa].

    >>> round(share_of_strength(x=0.33, R=300e6) / 1e6, 6)
    99.0
    """
    return x * R


@formula("F_w = k F", cites=[FIRST_PRINCIPLES])
def times_load(k: Ratio, F: Newtons) -> Newtons:
    """A multiple of a load.

    F_w = k F

    ``k`` factor; ``F`` load [N]. Returns [N].

    >>> times_load(k=1.5, F=400e3)
    600000.0
    """
    return k * F


@formula("x = F_1/F_2", cites=[FIRST_PRINCIPLES])
def load_ratio(F_1: Newtons, F_2: Newtons) -> Ratio:
    """One load as a share of another.

    x = F_1/F_2

    ``F_1``, ``F_2`` [N], F_2 above 0. Raises OutOfRange otherwise.

    >>> load_ratio(F_1=160e3, F_2=320e3)
    0.5
    """
    require(F_2 > 0 * F_2, "the load to compare with must be above 0")
    return F_1 / F_2


@formula("x = v/v_0", cites=[FIRST_PRINCIPLES])
def speed_ratio(v: MetresPerSecond, v_0: MetresPerSecond) -> Ratio:
    """A speed as a multiple of another.

    x = v/v_0

    ``v``, ``v_0`` [m/s], v_0 above 0. Raises OutOfRange otherwise.

    >>> speed_ratio(v=6.0, v_0=5.0)
    1.2
    """
    require(v_0 > 0 * v_0, "the speed to compare with must be above 0")
    return v / v_0
