"""How far a piston ring is opened, and what stress its metal bears."""

from __future__ import annotations

import math

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, formula, require
from speclint.equations import Metres, Pascals, Ratio


@formula("s_o = π (D_p − d + 2 t) + s", cites=[FIRST_PRINCIPLES])
def ring_opened(D_p: Metres, d: Metres, t: Metres, s: Metres) -> Metres:
    """Gap of a piston ring as it is opened to slip over the piston.

    s_o = π (D_p − d + 2 t) + s

    ``D_p`` diameter of the piston [m]; ``d`` bore that the ring is made for [m]; ``t`` radial thickness of the ring
    [m]; ``s`` gap of the ring in that bore [m]. The line through the middle of the ring keeps its length. Returns [m].

    Hand working: 497 in 500 mm, 16 mm thick, 3 mm gap: π (497 − 500 + 32) + 3 = 94.106 mm.

    >>> round(ring_opened(D_p=0.497, d=0.500, t=0.016, s=0.003) * 1e3, 3)
    94.106
    """
    require(t > 0, f"a ring of {t * 1e3:.4g} mm has no thickness")
    return math.pi * (D_p - d + 2 * t) + s


@formula("s_max = k t", cites=[COMMON_PRACTICE])
def ring_may_open(k: Ratio, t: Metres) -> Metres:
    """Greatest gap to which a ring of iron may be opened by hand.

    s_max = k t

    ``k`` multiple of the radial thickness [-]; ``t`` radial thickness of the ring [m]. Returns [m].

    >>> round(ring_may_open(k=8.0, t=0.016), 6)
    0.128
    """
    return k * t


@formula("R_b = k R_m", cites=[COMMON_PRACTICE])
def bending_strength_of_iron(k: Ratio, R_m: Pascals) -> Pascals:
    """Bending strength of grey iron, which yields more in compression than in tension.

    R_b = k R_m

    ``k`` bending over tensile strength [-]; ``R_m`` tensile strength [Pa]. Returns [Pa].

    >>> round(bending_strength_of_iron(k=1.5, R_m=230e6) / 1e6, 6)
    345.0
    """
    return k * R_m


@formula("δ_o = s_o − s − δ", cites=[FIRST_PRINCIPLES])
def further_opened(s_o: Metres, s: Metres, delta: Metres) -> Metres:
    """How far the gap of a ring is opened beyond that of the free ring.

    δ_o = s_o − s − δ

    ``s_o`` gap opened, ``s`` gap in the bore, ``delta`` gap of the free ring less that in the bore [m]. Returns [m].

    >>> round(further_opened(s_o=0.128, s=0.003, delta=0.060), 6)
    0.065
    """
    return s_o - s - delta
