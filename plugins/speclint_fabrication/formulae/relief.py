"""Holding time of stress relief, and the machining allowance left on faces until then."""

from __future__ import annotations

from speclint import COMMON_PRACTICE, formula
from speclint.equations import Metres, Seconds
from speclint_fabrication.sources import EN_13445_4


@formula(
    "τ = 30 min if t ≤ 35 mm, (t/mm − 5) min if t ≤ 90 mm, else (40 + t/(2 mm)) min",
    cites=[EN_13445_4.at("Table 10.1-1")],
    empirical="millimetres and minutes",
)
def holding_time(t: Metres) -> Seconds:
    """Least holding time at temperature.

    τ = 30 min if t ≤ 35 mm, (t/mm − 5) min if t ≤ 90 mm, else (40 + t/(2 mm)) min

    ``t`` thickest plate [m]. Returns [s].

    Hand working: 20 mm 30 min; 60 mm 55 min; 90 mm 85 min either way; 100 mm 90 min.

    >>> [round(holding_time(t=mm / 1e3) / 60, 6) for mm in (20, 60, 90, 100)]
    [30.0, 55.0, 85.0, 90.0]
    """
    millimetres = t * 1e3
    if millimetres <= 35:
        return 30.0 * 60
    minutes = millimetres - 5 if millimetres <= 90 else 40 + millimetres / 2
    return minutes * 60


@formula("a = Δ + c", cites=[COMMON_PRACTICE])
def face_wanted(Delta: Metres, c: Metres) -> Metres:
    """Machining allowance required on a face until the weldment is stress relieved.

    a = Δ + c

    ``Delta`` tolerance of the face either way, ``c`` metal to be removed even at its worst limit [m]. Returns [m].

    >>> round(face_wanted(Delta=3e-3, c=2e-3) * 1e3, 6)
    5.0
    """
    return Delta + c
