"""Shear of threads: the stud's along the crests of the nut, the nut's along the crests of the stud.

The worst fit is least metal: for the stud's thread the widest nut and the thinnest stud, for the nut's
thread the same two. The formulae hold for 60° and Whitworth threads alike; engaged length is that of full
threads (take off chamfers and countersinks).

>>> import math
>>> basic = 2 * external_shear_area(D_1=8.376e-3, d_2=9.026e-3, P=1.5e-3, L=10e-3, alpha=math.radians(30))
>>> round(basic / (2 * 0.75 * math.pi * 8.376e-3 * 10e-3), 3)  # three quarters of the cylinder: basic profile
1.0
"""

from __future__ import annotations

import math

from speclint.equations import (
    Metres,
    Newtons,
    Pascals,
    Radians,
    Ratio,
    Source,
    SquareMetres,
    formula,
    require,
)
from speclint.handbook.tables import VDI_2230, Reading, entries, row

FED_STD_H28 = Source("FED-STD-H28/2B, Screw-Thread Standards for Federal Services", "1991", memory=True)
_RATIOS = "shear-strength-ratios.csv"


@formula(
    "A_e = π D_1 L/P (P/2 + (d_2 − D_1) tan α)", cites=[FED_STD_H28.at("shear area of external threads")]
)
def external_shear_area(D_1: Metres, d_2: Metres, P: Metres, L: Metres, alpha: Radians) -> SquareMetres:
    """Area over which the stud's thread shears, along the minor diameter of the nut.

    D_1: greatest minor diameter of the nut, m. d_2: least pitch diameter of the stud, m. P: pitch, m.
    L: engaged length of full thread, m. alpha: flank angle, rad. Returns m².
    """
    thickness = P / 2 + (d_2 - D_1) * math.tan(alpha)
    _check(thickness, P)
    return math.pi * D_1 * L / P * thickness


@formula("A_n = π d L/P (P/2 + (d − D_2) tan α)", cites=[FED_STD_H28.at("shear area of internal threads")])
def internal_shear_area(d: Metres, D_2: Metres, P: Metres, L: Metres, alpha: Radians) -> SquareMetres:
    """Area over which the thread of nut or block shears, along the crests of the stud.

    d: least major diameter of the stud, m. D_2: greatest pitch diameter of the nut, m. P: pitch, m.
    L: engaged length of full thread, m. alpha: flank angle, rad. Returns m².
    """
    thickness = P / 2 + (d - D_2) * math.tan(alpha)
    _check(thickness, P)
    return math.pi * d * L / P * thickness


@formula("F = τ_B A", cites=[FED_STD_H28.at("stripping of threads")])
def stripping_load(tau_B: Pascals, A: SquareMetres) -> Newtons:
    """Load that strips a thread, all engaged turns sharing it.

    tau_B: shear strength, Pa. A: shear area, m². Returns N. Beyond about 1.5 diameters of engagement the far
    turns take little: no gain is certain there.
    """
    return tau_B * A


@formula("τ_B = r R_m", cites=[VDI_2230.at("strength of threads in shear")])
def shear_strength(r: Ratio, R_m: Pascals) -> Pascals:
    """Shear strength of a thread's metal.

    r: shear over tensile strength. R_m: least tensile strength, Pa. Returns Pa.

    >>> shear_strength(r=0.6, R_m=500e6)
    300000000.0
    """
    return r * R_m


def shear_strength_ratio(material: str) -> Reading:
    """Shear strength over tensile strength of a group of materials; NotKnown outside the table."""
    found = row(_RATIOS, "material", material)
    source = Source(found["source"], found["edition"], found["place"], memory=True)
    low, nominal, high = (float(found[name]) for name in ("low", "nominal", "high"))
    return Reading(f"shear over tensile strength of {material}", nominal, low, high, "", source)


def shear_strength_materials() -> tuple[str, ...]:
    """Groups of materials with a known shear strength ratio."""
    return entries(_RATIOS, "material")


def _check(thickness: Metres, P: Metres) -> None:
    require(thickness > 0 * P, "the threads do not overlap: nothing is left to shear")
