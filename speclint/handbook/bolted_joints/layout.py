"""Studs on a circle: pitch and number.

>>> round(chordal_pitch(D=0.600, n=24), 4)  # hand: 600 sin 7.5°
0.0783
"""

from __future__ import annotations

import math

from speclint.equations import (
    COMMON_PRACTICE,
    FIRST_PRINCIPLES,
    Metres,
    Newtons,
    Pascals,
    Ratio,
    Source,
    SquareMetres,
    formula,
    require,
)
from speclint.handbook.tables import KHURMI

TEMA = Source(
    "Standards of the Tubular Exchanger Manufacturers Association, as reproduced in a public flange calculation",
    "9th ed., 2007",
    "maximum bolt spacing",
)
#: Room that a spanner needs between studs, over the diameter of the stud (common practice).
SPANNER_PITCH = 2.5
#: Smallest stud on a pressure cover, m (Khurmi).
SMALLEST_STUD = 0.016


@formula("s = D sin(π/n)", cites=[FIRST_PRINCIPLES])
def chordal_pitch(D: Metres, n: Ratio) -> Metres:
    """Straight distance between neighbouring studs on a circle.

    D: diameter of the stud circle, m. n: number of studs, at least 2. Returns m.
    """
    require(n >= 2, f"{n:g} studs have no pitch: at least 2 are needed")
    return D * math.sin(math.pi / n)


@formula("s = π D/n", cites=[FIRST_PRINCIPLES])
def arc_pitch(D: Metres, n: Ratio) -> Metres:
    """Distance between neighbouring studs along the arc of their circle.

    s = π D/n

    D: diameter of the stud circle, m. n: number of studs, at least 2. Returns m.

    >>> round(arc_pitch(D=0.600, n=24), 4)
    0.0785
    """
    require(n >= 2, f"{n:g} studs make no pitch: at least 2 are needed")
    return math.pi * D / n


@formula("s = 2.5 d", cites=[COMMON_PRACTICE])
def spanner_pitch(d: Metres) -> Metres:
    """Least pitch that leaves room for a spanner.

    d: nominal diameter, m. Returns m.
    """
    return SPANNER_PITCH * d


@formula("s = 2 d + 6 t/(m + 0.5)", cites=[TEMA])
def greatest_pitch_by_flange(d: Metres, t: Metres, m: Ratio) -> Metres:
    """Greatest pitch at which the flange still presses the gasket between two studs.

    d: nominal diameter, m. t: flange thickness, m. m: gasket factor, 0 or more. Returns m.

    Hand working: 2 × 24 + 6 × 30/(2.75 + 0.5) = 103.38 mm.

    >>> round(greatest_pitch_by_flange(0.024, 0.030, 2.75) * 1e3, 2)
    103.38
    """
    require(m >= 0, f"gasket factor {m:.3g} is below 0")
    return 2 * d + 6 * t / (m + 0.5)


@formula("s = 28.5 mm √(d/mm)", cites=[KHURMI.at("cylinder head example")], empirical="millimetres")
def greatest_pitch_for_tightness(d: Metres) -> Metres:
    """Greatest pitch of studs for a joint that is tight under steam.

    d: nominal diameter, m, above 0. Returns m. Raises OutOfRange otherwise.

    >>> greatest_pitch_for_tightness(0.016)  # hand: 28.5 × 4 mm
    0.114
    """
    _check_diameter(d)
    pitch: float = 28.5e-3 * (d * 1e3) ** 0.5
    return pitch


@formula("s = 19 mm √(d/mm)", cites=[KHURMI.at("cylinder head example")], empirical="millimetres")
def least_pitch_for_tightness(d: Metres) -> Metres:
    """Least pitch of studs by the same rule.

    d: nominal diameter, m, above 0. Returns m. Raises OutOfRange otherwise.

    >>> least_pitch_for_tightness(0.016)  # hand: 19 × 4 mm
    0.076
    """
    _check_diameter(d)
    pitch: float = 19e-3 * (d * 1e3) ** 0.5
    return pitch


@formula(
    "s = min(2 d + 6 t/(m + 0.5), 28.5 mm √(d/mm))",
    cites=[TEMA, KHURMI.at("cylinder head example")],
    empirical="millimetres",
)
def greatest_pitch(d: Metres, t: Metres, m: Ratio) -> Metres:
    """Greatest pitch by both rules.

    d: nominal diameter, m, above 0. t: flange thickness, m. m: gasket factor. Returns m. Raises OutOfRange otherwise.
    """
    return min(greatest_pitch_by_flange(d, t, m), greatest_pitch_for_tightness(d))


@formula("n = 0.01 D/mm + 4", cites=[KHURMI.at("cylinder head example")], empirical="millimetres")
def fewest_studs(D: Metres) -> Ratio:
    """Least number of studs in a cylinder cover by period practice; a sound modern cover has more.

    D: cylinder bore, m. Returns a number, not rounded.

    >>> round(fewest_studs(0.115), 2)  # Khurmi: between 5.15 and 6.3, six studs
    5.15
    """
    return 0.01 * D * 1e3 + 4


@formula("n = 0.02 D/mm + 4", cites=[KHURMI.at("cylinder head example")], empirical="millimetres")
def most_studs(D: Metres) -> Ratio:
    """Greatest number of studs in a cylinder cover by period practice.

    D: cylinder bore, m. Returns a number, not rounded.

    >>> round(most_studs(0.115), 2)  # Khurmi: between 5.15 and 6.3, six studs
    6.3
    """
    return 0.02 * D * 1e3 + 4


@formula("n = F/(A σ)", cites=[KHURMI.at("cylinder head example"), FIRST_PRINCIPLES])
def studs_for_stress(F: Newtons, A: SquareMetres, sigma: Pascals) -> Ratio:
    """Number of studs that carry a load at a stress; the next whole even number is made.

    F: load on the cover, N. A: area of one stud, m². sigma: permitted stress, Pa. Returns a number, not
    rounded.
    """
    return F / (A * sigma)


def _check_diameter(d: Metres) -> None:
    require(d > 0 * d, f"stud of {d * 1e3:.4g} mm is not above 0")
