"""What a spring's load may differ from its drawing: the tolerances of EN 15800 for cold coiled springs."""

from __future__ import annotations

from speclint.equations import Metres, Newtons, Ratio, Source, formula, require
from speclint.handbook.tables import Reading

EN_15800 = Source(
    "EN 15800, Cylindrical helical springs made of round wire: quality specifications for cold coiled "
    "compression springs",
    "2008",
    "as reproduced in a public program with tables after EN 13906-1 and EN 15800",
)
_MM = 1e-3
#: Factor of each quality grade on the tolerances of load (EN 15800).
_FACTORS = {"1": 0.63, "2": 1.0, "3": 1.6}


def quality_factor(grade: str) -> Reading:
    """Factor of a quality grade on the permissible deviations; OutOfRange for others than 1, 2 and 3.

    >>> quality_factor("3").nominal
    1.6
    """
    require(grade in _FACTORS, f"quality grade {grade!r} is none of {', '.join(_FACTORS)}")
    return Reading.exact(
        f"factor of quality grade {grade}", _FACTORS[grade], "", EN_15800.at("quality grades")
    )


@formula(
    "A_F = Q (a_F k_f + 0.015 F), a_F = 65.92 N (d/mm)^3.3/(D/mm)^1.6 (−0.84 x³ + 3.781 x² − 4.244 x "
    "+ 2.274), k_f = 0.803 + 1.6/n − 1/(3 n²), x = D/(10 d)",
    cites=[EN_15800.at("tolerances on load")],
    empirical="mm and N",
)
def load_tolerance(Q: Ratio, F: Newtons, d: Metres, D: Metres, n: Ratio) -> Newtons:
    """Permissible deviation of a cold coiled spring's load from the drawing, either way.

    A_F = Q (a_F k_f + 0.015 F), a_F = 65.92 d^3.3/D^1.6 (−0.84 (w/10)³ + 3.781 (w/10)² − 4.244 (w/10) + 2.274),
    k_f = 0.803 + 1.6/n − 1/(3 n²)

    ``Q`` factor of the quality grade (``quality_factor``); ``F`` stated load [N]; ``d`` wire, ``D`` mean coil
    diameter [m], entered in mm; ``n`` working coils. The index w is D/d. Returns [N]. Raises OutOfRange beyond the
    standard's wires of 0.07 to 16 mm, diameters to 200 mm, index of 4 to 20 and at least 2 coils.

    Hand working, 8/48 mm, 8 coils, 1000 N, grade 2: 65.92 × 955.4/489.8 × 0.90732 = 116.7;
    k_f = 0.803 + 0.2 − 0.0052 = 0.9978; 116.4 + 15 = 131 N.

    >>> round(load_tolerance(Q=1.0, F=1000, d=0.008, D=0.048, n=8))
    131

    References: EN 15800:2008, load tolerances and the equations of its diagrams. The public program has + 1/(3 n²) in
    k_f; the diagram of DIN 2095 runs near 1.5 at two coils, which the minus sign gives (from memory).
    """
    wire, mean, index = d / _MM, D / _MM, D / d
    require(0.07e-3 <= d <= 16e-3, f"wire {wire:.6g} mm is outside the standard's 0.07 to 16 mm")
    require(D <= 0.2, f"mean coil diameter {mean:.6g} mm is above the standard's 200 mm")
    require(4 <= index <= 20, f"spring index {index:.6g} is outside the standard's 4 to 20")
    require(n >= 2, f"{n:.6g} working coils are fewer than the standard's 2")
    tenth = index / 10
    shape = -0.84 * tenth**3 + 3.781 * tenth**2 - 4.244 * tenth + 2.274
    by_size: float = 65.92 * wire**3.3 / mean**1.6 * shape
    by_coils = 0.803 + 1.6 / n - 1 / (3 * n**2)
    return Q * (by_size * by_coils + 0.015 * F)


def load_deviation(grade: str, F: Newtons, d: Metres, D: Metres, n: Ratio) -> Reading:
    """What the load of a cold coiled spring may differ from a drawing that states no limits, either way [N].

    ``grade`` quality grade; the rest and the range as for ``load_tolerance``.

    Hand working, 8/48 mm, 8 coils, 1000 N, grade 2: ±131 N.

    >>> round(load_deviation("2", F=1000, d=0.008, D=0.048, n=8).low)
    -131
    """
    allowed = load_tolerance(quality_factor(grade).nominal, F, d, D, n)
    what = f"deviation of load in quality grade {grade}"
    return Reading(what, 0.0, -allowed, allowed, "N", EN_15800.at("tolerances on load"))
