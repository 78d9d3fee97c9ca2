"""Lengths of compression springs: solid, clearance between working coils, growth of diameter, buckling.

All after EN 13906-1. A spring is cold or hot coiled; its ends are closed, and ground or not.
"""

from __future__ import annotations

import math

from speclint.equations import Metres, Pascals, Ratio, formula, require
from speclint.errors import NotKnown
from speclint.handbook import tables
from speclint.handbook.springs.helical import EN_13906_1, en_13906_1_clause
from speclint.handbook.tables import Reading

ENDS = "spring-ends-en-13906-1-2013.csv"
SEATING = "spring-seating-en-13906-1-2013.csv"

#: Factor on the clearance of a spring that works under alternating load, by process (EN 13906-1, 9.9).
DYNAMIC_CLEARANCE = {"cold": 1.5, "hot": 2.0}


def solid_coils(process: str, ends: str) -> Reading:
    """Coils that the end finish adds to the total, for the greatest solid length.

    ``process`` cold or hot; ``ends`` ground or closed. NotKnown for others.

    >>> solid_coils(process="cold", ends="closed").nominal
    1.5
    """
    value = float(_ends(process, ends)["solid_coils"])
    return Reading.exact(
        f"coils added at solid, {process} coiled, {ends} ends",
        value,
        "",
        en_13906_1_clause("9.10, solid length"),
    )


def dead_coils(process: str, ends: str) -> Reading:
    """Coils that do not work: total less working coils.

    ``process`` cold or hot; ``ends`` ground or closed. NotKnown for others.

    >>> dead_coils(process="hot", ends="ground").nominal
    1.5
    """
    value = float(_ends(process, ends)["dead_coils"])
    what = f"dead coils, {process} coiled, {ends} ends"
    return Reading.exact(what, value, "", EN_13906_1.at("9.8, number of coils"))


def clearance_multiplier(process: str, dynamic: bool) -> Reading:
    """Factor on the sum of clearances: 1 for a static load, more for an alternating one.

    ``process`` cold or hot; NotKnown for others.

    >>> clearance_multiplier(process="hot", dynamic=True).nominal
    2.0
    """
    if process not in DYNAMIC_CLEARANCE:
        raise NotKnown(f"no process {process!r} of coiling; known: {', '.join(DYNAMIC_CLEARANCE)}")
    value = DYNAMIC_CLEARANCE[process] if dynamic else 1.0
    load = "alternating" if dynamic else "static"
    return Reading.exact(
        f"factor on clearances, {process} coiled, {load} load",
        value,
        "",
        en_13906_1_clause("9.9, sum of clearances"),
    )


def seating_coefficient(seating: str) -> Reading:
    """Seating coefficient for buckling, by how the ends are held; NotKnown for ways not tabulated.

    >>> seating_coefficient("both ends held and guided in line").nominal
    0.5
    """
    value = float(tables.row(SEATING, "seating", seating)["coefficient"])
    return Reading.exact(f"seating coefficient, {seating}", value, "", en_13906_1_clause("9.14, buckling"))


@formula("L_c = (n_t + a) d_max", cites=[en_13906_1_clause("9.10, solid length")])
def solid_length(n_t: Ratio, a: Ratio, d_max: Metres) -> Metres:
    """Greatest solid length.

    L_c = (n_t + a) d_max

    ``n_t`` total coils; ``a`` coils added by the end finish (``solid_coils``); ``d_max`` greatest wire [m].
    Returns [m]. Raises OutOfRange unless n_t + a > 0.

    Hand working: 10 coils of 8.05 mm, cold, ground: 80.5 mm.

    >>> round(solid_length(n_t=10, a=0, d_max=8.05e-3) * 1e3, 2)
    80.5
    """
    require(n_t + a > 0, f"{n_t:.6g} total coils leave no solid length")
    return (n_t + a) * d_max


@formula("S_a = x n (0.0015 D²/d + 0.1 d)", cites=[en_13906_1_clause("9.9, sum of clearances")])
def clearance_sum_cold_coiled(x: Ratio, n: Ratio, D: Metres, d: Metres) -> Metres:
    """Least sum of the gaps between working coils at the greatest deflection, cold coiled.

    S_a = x n (0.0015 D²/d + 0.1 d)

    ``x`` 1 for a static, 1.5 for an alternating load (``clearance_multiplier``); ``n`` working coils;
    ``D`` mean coil diameter, ``d`` wire [m]. Returns [m]. Raises OutOfRange unless 0 < d < D.

    Hand working: 1.5 × 8 × (0.0015 × 2304/8 + 0.8) = 14.784 mm.

    >>> round(clearance_sum_cold_coiled(x=1.5, n=8, D=0.048, d=0.008) * 1e3, 3)
    14.784
    """
    _require_coil(D, d)
    return x * n * (0.0015 * D**2 / d + 0.1 * d)


@formula("S_a = 0.02 x n (D + d)", cites=[en_13906_1_clause("9.9, sum of clearances")])
def clearance_sum_hot_coiled(x: Ratio, n: Ratio, D: Metres, d: Metres) -> Metres:
    """Least sum of the gaps between working coils at the greatest deflection, hot coiled.

    S_a = 0.02 x n (D + d)

    ``x`` 1 for a static, 2 for an alternating load (``clearance_multiplier``); ``n`` working coils;
    ``D`` mean coil diameter, ``d`` wire [m]. Returns [m]. Raises OutOfRange unless 0 < d < D.

    Hand working: 0.02 × 2 × 6 × (120 + 20) = 33.6 mm.

    >>> round(clearance_sum_hot_coiled(x=2, n=6, D=0.120, d=0.020) * 1e3, 2)
    33.6
    """
    _require_coil(D, d)
    return 0.02 * x * n * (D + d)


@formula("m = (s_c + (n + b) d)/n", cites=[en_13906_1_clause("9.11, increase of coil diameter")])
def coil_pitch(s_c: Metres, n: Ratio, b: Ratio, d: Metres) -> Metres:
    """Pitch of the free coils, for the increase of diameter.

    m = (s_c + (n + b) d)/n

    ``s_c`` deflection from free to solid [m]; ``n`` working coils; ``b`` 0 for ground, 1.5 for unground ends;
    ``d`` wire [m]. Returns [m]. Raises OutOfRange unless n > 0.

    Hand working: (40 + 8 × 8)/8 = 13 mm.

    >>> round(coil_pitch(s_c=0.040, n=8, b=0, d=0.008) * 1e3, 3)
    13.0
    """
    require(n > 0, f"{n:.6g} working coils are not above 0")
    return (s_c + (n + b) * d) / n


@formula("ΔD = 0.1 (m² − 0.8 m d − 0.2 d²)/D", cites=[en_13906_1_clause("9.11, increase of coil diameter")])
def outside_growth_at_solid(m: Metres, d: Metres, D: Metres) -> Metres:
    """Growth of the coil's outside diameter from free to solid, the ends free to turn.

    ΔD = 0.1 (m² − 0.8 m d − 0.2 d²)/D

    ``m`` pitch of the free coils (``coil_pitch``); ``d`` wire; ``D`` mean coil diameter, all [m].
    Returns [m]. Raises OutOfRange unless 0 < d < D and m ≥ d.

    Hand working: 0.1 (169 − 83.2 − 12.8)/48 = 0.1521 mm.

    >>> round(outside_growth_at_solid(m=0.013, d=0.008, D=0.048) * 1e3, 4)
    0.1521
    """
    _require_coil(D, d)
    require(m >= d, f"pitch {m * 1e3:.6g} mm is less than the wire {d * 1e3:.6g} mm")
    return 0.1 * (m**2 - 0.8 * m * d - 0.2 * d**2) / D


@formula(
    "s_k = L_0 · 0.5/(1 − G/E) · (1 − √x) if x ≥ 0, else L_0, x = 1 − (1 − G/E)/(0.5 + G/E) · (π D/(ν L_0))²",
    cites=[en_13906_1_clause("9.14, buckling")],
)
def buckling_deflection(L_0: Metres, D: Metres, nu: Ratio, G: Pascals, E: Pascals) -> Metres:
    """Deflection at which a spring buckles; its whole free length when it cannot buckle at all.

    s_k = L_0 · 0.5/(1 − G/E) · (1 − √x) if x ≥ 0, else L_0, x = 1 − (1 − G/E)/(0.5 + G/E) · (π D/(ν L_0))²

    ``L_0`` free length, ``D`` mean coil diameter [m]; ``nu`` seating coefficient (``seating_coefficient``);
    ``G``, ``E`` moduli of rigidity and elasticity [Pa]. Returns [m]. Where the root has no real value the
    spring does not buckle. Raises OutOfRange unless all are above 0 and G < E.

    Hand working: 200/40 mm, ν 1, G/E 0.4: 0.6/0.9 × (π/5)² = 0.26319; 200 × 0.8333 × (1 − 0.85838) = 23.6 mm.

    >>> round(buckling_deflection(L_0=0.200, D=0.040, nu=1.0, G=80e9, E=200e9) * 1e3, 2)
    23.6
    """
    require(
        0 < G < E, f"modulus of rigidity {G / 1e6:.6g} MPa is not between 0 and the modulus {E / 1e6:.6g} MPa"
    )
    require(L_0 > 0 and D > 0 and nu > 0, "length, coil diameter and seating coefficient must be above 0")
    bending, shape = 1 - G / E, (math.pi * D / (nu * L_0)) ** 2
    under_root = 1 - bending / (0.5 + G / E) * shape
    if under_root < 0:
        return L_0
    share: float = 0.5 / bending * (1 - under_root**0.5)
    return L_0 * share


def _ends(process: str, ends: str) -> tables.Row:
    for row in tables.rows(ENDS):
        if (row["process"], row["ends"]) == (process, ends):
            return row
    known = "; ".join(f"{row['process']} coiled, {row['ends']}" for row in tables.rows(ENDS))
    raise NotKnown(f"no ends {process} coiled, {ends}; known: {known}")


def _require_coil(D: float, d: float) -> None:
    require(0 < d < D, f"wire {d * 1e3:.6g} mm is not between 0 and the mean coil diameter {D * 1e3:.6g} mm")
