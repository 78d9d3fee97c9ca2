"""Room inside the holes of a joint, and the metal that a tapped hole needs."""

from __future__ import annotations

from speclint import FIRST_PRINCIPLES, formula
from speclint.equations import Metres, Ratio


@formula("D_f = D_h − d_h", cites=[FIRST_PRINCIPLES])
def inside_of_holes(D_h: Metres, d_h: Metres) -> Metres:
    """Diameter left inside the holes of a joint.

    D_f = D_h − d_h

    D_h: diameter of the bolt circle, m. d_h: diameter of the holes, m. Returns m.

    >>> round(inside_of_holes(D_h=0.740, d_h=0.026) * 1e3, 3)
    714.0
    """
    return D_h - d_h


@formula("L_m = L + (k_p + k_l) d", cites=[FIRST_PRINCIPLES])
def depth_with_metal(L: Metres, k_p: Ratio, k_l: Ratio, d: Metres) -> Metres:
    """Thickness of metal that a blind tapped hole needs.

    L_m = L + (k_p + k_l) d

    ``L`` depth of the hole, ``d`` diameter of its thread [m]; ``k_p`` length of the drill's point, ``k_l`` metal left
    below it, both over that diameter. Returns [m].

    Hand working: 42 + (0.3 + 1) × 20 = 68 mm.

    >>> round(depth_with_metal(L=0.042, k_p=0.3, k_l=1.0, d=0.020) * 1e3, 6)
    68.0
    """
    return L + (k_p + k_l) * d
