"""Metal that replaces an opening, by the areas of the ASME code: beside the pressed areas, and in flat walls."""

from __future__ import annotations

import math

from speclint import formula, require
from speclint.equations import Metres, Pascals, Ratio, SquareMetres
from speclint_fabrication.sources import UG_37, UG_39


@formula("t_r = P R/(S − 0.6 P)", cites=[UG_37])
def thickness_required(P: Pascals, R: Metres, S: Pascals) -> Metres:
    """Thickness that a shell, or a branch, needs of itself.

    t_r = P R/(S − 0.6 P)

    ``P`` pressure, ``S`` allowable tension [Pa], above 0.6 P; ``R`` inside radius [m]. Returns [m]. Raises OutOfRange
    otherwise.

    Hand working: 1.66 × 250/(150 − 0.996) = 2.785 mm.

    >>> round(thickness_required(P=1.66e6, R=0.250, S=150e6) * 1e3, 3)
    2.785
    """
    require(S > 0.6 * P, "a pressure above what any thin shell of this metal holds")
    return P * R / (S - 0.6 * P)


@formula("A = t_r (d + 2 t_n (1 − f_r))", cites=[UG_37])
def area_required(d: Metres, t_r: Metres, t_n: Metres, f_r: Ratio) -> SquareMetres:
    """Area to be replaced at an opening.

    A = t_r (d + 2 t_n (1 − f_r))

    ``d`` clear way, ``t_r`` thickness that the shell needs, ``t_n`` wall of the branch [m]; ``f_r`` its strength over
    that of the shell, at most 1. Returns [m²].

    Hand working: 2.785 × (280 + 20 × (1 − 130/150)) = 787.2 mm².

    >>> round(area_required(d=0.280, t_r=2.785e-3, t_n=0.010, f_r=130 / 150) * 1e6, 1)
    787.2
    """
    return t_r * (d + 2 * t_n * (1 - f_r))


@formula("A_1 = (t − t_r) (max(d, 2 (t + t_n)) − 2 t_n (1 − f_r))", cites=[UG_37])
def area_of_shell(d: Metres, t: Metres, t_r: Metres, t_n: Metres, f_r: Ratio) -> SquareMetres:
    """Area that a shell has to spare beside an opening.

    A_1 = (t − t_r) (max(d, 2 (t + t_n)) − 2 t_n (1 − f_r))

    ``t`` thickness of the shell [m]. Other arguments as :func:`area_required`. Returns [m²], below 0 where it has none.

    Hand working: 5.215 × (280 − 20 × (1 − 130/150)) = 1446.3 mm².

    >>> round(area_of_shell(d=0.280, t=0.008, t_r=2.785e-3, t_n=0.010, f_r=130 / 150) * 1e6, 1)
    1446.3
    """
    return (t - t_r) * (max(d, 2 * (t + t_n)) - 2 * t_n * (1 - f_r))


@formula("A_2 = 5 min(t, t_n) (t_n − t_rn) f_r", cites=[UG_37])
def area_of_branch(t: Metres, t_n: Metres, t_rn: Metres, f_r: Ratio) -> SquareMetres:
    """Area that a branch has to spare outside of its shell.

    A_2 = 5 min(t, t_n) (t_n − t_rn) f_r

    ``t`` thickness of the shell, ``t_n`` wall of the branch, ``t_rn`` what the branch needs [m]; ``f_r`` its strength
    over that of the shell. Returns [m²].

    Hand working: 5 × 8 × (10 − 1.80) × 130/150 = 284.3 mm².

    >>> round(area_of_branch(t=0.008, t_n=0.010, t_rn=0.0018, f_r=130 / 150) * 1e6, 1)
    284.3
    """
    return 5 * min(t, t_n) * (t_n - t_rn) * f_r


@formula("u = A/(A_1 + A_2)", cites=[UG_37])
def share_of_area(A: SquareMetres, A_1: SquareMetres, A_2: SquareMetres) -> Ratio:
    """Area to be replaced over what is there.

    u = A/(A_1 + A_2)

    ``A`` area to be replaced; ``A_1`` area to spare in the shell, ``A_2`` area to spare in the branch [m²]. Returns a
    ratio. Raises OutOfRange unless A_1 + A_2 > 0.

    >>> round(share_of_area(A=787.2e-6, A_1=1446.3e-6, A_2=284.3e-6), 3)
    0.455
    """
    require(A_1 + A_2 > 0 * A, "shell and branch have nothing to spare")
    return A / (A_1 + A_2)


@formula("t_0 = t √(σ/S)", cites=[UG_39])
def wall_without_opening(t: Metres, σ: Pascals, S: Pascals) -> Metres:
    """Thickness that a flat wall would need without its opening.

    t_0 = t √(σ/S)

    ``t`` its net thickness [m]; ``σ`` its stress [Pa], not below 0; ``S`` what is allowed [Pa], above 0. Returns [m]:
    of bending exactly, and too much rather than too little where it is pulled too. Raises OutOfRange otherwise.

    >>> round(wall_without_opening(t=0.020, σ=50e6, S=200e6), 6)
    0.01
    """
    require(
        σ >= 0 * σ and S > 0 * S,
        f"stress {σ / 1e6:.4g} MPa is below 0 or the allowed {S / 1e6:.4g} MPa not above 0",
    )
    return t * math.sqrt(σ / S)


@formula(
    "t_n = max(t_0, min(t_0 √2, 1.5 t_0 − A_b/d)) if d ≤ a/2, else t_0 √(a/(a − d))",
    cites=[UG_39],
)
def wall_with_opening(t_0: Metres, d: Metres, a: Metres, A_b: SquareMetres) -> Metres:
    """Thickness that a flat wall needs with a single opening.

    t_n = max(t_0, min(t_0 √2, 1.5 t_0 − A_b/d)) if d ≤ a/2, else t_0 √(a/(a − d))

    ``t_0`` what it needs without; ``d`` opening, ``a`` shorter side of the wall [m]; ``A_b`` metal that the branch has
    to spare [m²]. Returns [m]. Raises OutOfRange for an opening above 0.8 of the shorter side: finite elements are
    wanted there.

    To half of the shorter side either the thickness is √2 times that without, or half of d t_0 is replaced by what wall
    and branch have to spare within d on each side of the axis: (t − t_0) d + A_b ≥ d t_0/2. Beyond, the line of metal
    across the opening carries the whole bending, and the stress grows as a/(a − d); at half both give √2.

    >>> round(wall_with_opening(t_0=0.010, d=0.080, a=0.180, A_b=0.0) * 1e3, 3)
    14.142
    >>> round(wall_with_opening(t_0=0.010, d=0.080, a=0.180, A_b=200e-6) * 1e3, 3)
    12.5
    >>> round(wall_with_opening(t_0=0.010, d=0.120, a=0.180, A_b=0.0) * 1e3, 3)
    17.321
    """
    require(d <= 0.8 * a, "an opening above 0.8 of the shorter side of its wall wants finite elements")
    if d <= a / 2:
        return max(t_0, min(t_0 * math.sqrt(2), 1.5 * t_0 - A_b / d))
    return t_0 * math.sqrt(a / (a - d))
