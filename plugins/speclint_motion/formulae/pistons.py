"""Piston, rings and lands, cold and hot."""

from __future__ import annotations

import math

from speclint import FIRST_PRINCIPLES, formula, require
from speclint.equations import Kelvins, Metres, Newtons, Pascals, PerKelvin, Ratio, SquareMetres


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

    ``g`` gap cold in the bore of the liner [m]; ``D`` bore of the liner [m]; ``alpha_l``, ``alpha_r`` mean coefficients
    of expansion of liner and ring [1/K]; ``T_l``, ``T_r`` temperatures of liner and ring [K]; ``T_ref`` temperature of
    the drawing [K]. Returns [m], below 0 when the ends meet.

    Hand working: 4 mm, 500 mm, both 12e-6/K, liner 200 K and ring 300 K up: 4 − 1570.796 × 0.0012 = 2.11504 mm.

    >>> round(ring_gap_when_hot(0.004, 0.5, 12e-6, 493.15, 12e-6, 593.15, 293.15) * 1e3, 5)
    2.11504
    """
    return g + math.pi * D * (alpha_l * (T_l - T_ref) - alpha_r * (T_r - T_ref))


@formula("g_w = g + π (D_w − D)", cites=[FIRST_PRINCIPLES])
def ring_gap_when_worn(g: Metres, D: Metres, D_w: Metres) -> Metres:
    """Gap between the ends of a ring in a bore that has worn, cold.

    g_w = g + π (D_w − D)

    ``g`` gap in the bore that the ring was made for [m]; ``D`` bore that the ring was made for [m]; ``D_w`` the bore
    worn [m]. Returns [m].

    Hand working: 3 mm, worn by 3 mm on the diameter: 3 + 9.424778.

    >>> round(ring_gap_when_worn(g=0.003, D=0.500, D_w=0.503) * 1e3, 6)
    12.424778
    """
    return g + math.pi * (D_w - D)


@formula("F_p = k R_p A", cites=[FIRST_PRINCIPLES])
def load_before_yield(k: Ratio, R_p: Pascals, A: SquareMetres) -> Newtons:
    """Load that stretches a section to a share of its proof stress.

    F_p = k R_p A

    ``k`` the share, whose source stands at the limit that gives it; ``R_p`` proof stress [Pa]; ``A`` section [m²].
    Returns [N].

    Hand working, 0.9 of 600 MPa on 5000 mm²:

    >>> round(load_before_yield(k=0.9, R_p=600e6, A=5000e-6), 3)
    2700000.0
    """
    return k * R_p * A


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
