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

FED_STD_H28 = Source(
    "FED-STD-H28/2B, Screw-Thread Standards for Federal Services, as reproduced in public thread calculations",
    "1991",
    "shear areas of threads",
)
ALEXANDER = Source(
    "E. M. Alexander, Analysis and design of threaded assemblies, SAE paper 770420",
    "1977",
    "strength of threads that bend and widen",
    memory=True,
)
_RATIOS = "shear-strength-ratios.csv"
#: What both threads keep of their strength where they are equally strong (VDI 2230, section 5.5.5, from memory).
THREADS_ALIKE = 0.897
_LEAST_FLATS, _SOLID_FLATS = 1.4, 1.9  # the range of the factor for a nut that widens
_WEAKEST = 0.4  # least strength of the inner thread over that of the outer one for which its factor is known


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


@formula("C_1 = 3.8 x − x² − 2.61, x = min(s/d, 1.9)", cites=[VDI_2230.at("section 5.5.5"), ALEXANDER])
def nut_widening_factor(s: Metres, d: Metres) -> Ratio:
    """Share of its strength that a thread keeps in a nut that its flanks push wider.

    C_1 = 3.8 x − x² − 2.61, x = min(s/d, 1.9)

    s: width across the flats of the nut, or twice the distance from a tapped hole to the edge of its part, at
    least 1.4 d, m. d: nominal diameter, m. Returns a ratio; from 1.9 d on the metal is stiff and nothing is lost.

    Hand working, a hexagon of 36 mm on M24: x = 1.5, 5.7 - 2.25 - 2.61 = 0.84.

    >>> round(nut_widening_factor(s=0.036, d=0.024), 6)
    0.84
    """
    require(
        s >= _LEAST_FLATS * d,
        f"{s * 1e3:.4g} mm round a thread of {d * 1e3:.4g} mm: below 1.4 diameters no factor is known",
    )
    x = min(s / d, _SOLID_FLATS)
    return 3.8 * x - x**2 - 2.61


@formula("R_S = R_n A_n/(R_b A_b)", cites=[VDI_2230.at("section 5.5.5"), ALEXANDER])
def thread_strength_ratio(R_n: Pascals, A_n: SquareMetres, R_b: Pascals, A_b: SquareMetres) -> Ratio:
    """Strength of an inner thread over that of the outer thread in it.

    R_S = R_n A_n/(R_b A_b)

    R_n, R_b: tensile strength of nut or block, and of the stud, Pa. A_n, A_b: shear area of each thread, m².
    Returns a ratio.

    >>> round(thread_strength_ratio(R_n=500e6, A_n=60e-6, R_b=1000e6, A_b=40e-6), 6)
    0.75
    """
    return R_n * A_n / (R_b * A_b)


@formula(
    "C_3 = min(0.897 + 0.135 u + 0.992 u² − 1.296 u³, 1), u = min(max(1 − R_S, 0), 0.6)",
    cites=[VDI_2230.at("section 5.5.5"), ALEXANDER],
)
def inner_thread_bending_factor(R_S: Ratio) -> Ratio:
    """Share of its strength that the thread of a nut or block keeps where the threads bend under their load.

    C_3 = min(0.897 + 0.135 u + 0.992 u² − 1.296 u³, 1), u = min(max(1 − R_S, 0), 0.6)

    R_S: ``thread_strength_ratio``. Returns a ratio, never above 1. In print it is 0.897 from 1 on, and between 0.4
    and 1 it is 0.728 + 1.769 R_S − 2.896 R_S² + 1.296 R_S³, which is the same put in 1 − R_S. Below 0.4 that of 0.4
    is taken. The stud's own thread keeps 0.897 where both are alike; its gain in a stronger nut is not counted.

    Hand working at 0.8: 0.728 + 1.4152 - 1.85344 + 0.663552 = 0.953312.

    >>> round(inner_thread_bending_factor(R_S=0.8), 6), inner_thread_bending_factor(R_S=1.2)
    (0.953312, 0.897)
    """
    u = min(max(1 - R_S, 0.0), 1 - _WEAKEST)
    return min(THREADS_ALIKE + 0.135 * u + 0.992 * u**2 - 1.296 * u**3, 1.0)


def outer_thread_bending_factor() -> Reading:
    """Share of its strength that a stud's thread keeps where it bends: that for threads of like strength."""
    what = "share of its strength that the stud's thread keeps where it bends"
    return Reading.exact(what, THREADS_ALIKE, "", VDI_2230.at("section 5.5.5"))


@formula("F = C_1 C τ_B A", cites=[VDI_2230.at("section 5.5.5"), FED_STD_H28.at("stripping of threads")])
def stripping_load_with_factors(tau_B: Pascals, A: SquareMetres, C_1: Ratio, C: Ratio) -> Newtons:
    """Load that strips a thread in a nut that widens and on flanks that bend.

    F = C_1 C τ_B A

    tau_B: shear strength, Pa. A: shear area, m². C_1: ``nut_widening_factor``. C: ``inner_thread_bending_factor``,
    or that of the stud's thread. Returns N.

    Hand working, 0.84 × 0.897 × 500 MPa × 750 mm²: 282.6 kN.

    >>> round(stripping_load_with_factors(tau_B=500e6, A=750e-6, C_1=0.84, C=0.897) / 1e3, 1)
    282.6
    """
    return C_1 * C * stripping_load(tau_B, A)


@formula(
    "τ_B = r R_m",
    cites=[VDI_2230.at("strength of threads in shear, as reproduced in public calculations", memory=False)],
)
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
    seen = found["seen"] == "yes"
    place = f"{found['place']}, as reproduced in public calculations" if seen else found["place"]
    source = Source(found["source"], found["edition"], place, memory=not seen)
    low, nominal, high = (float(found[name]) for name in ("low", "nominal", "high"))
    return Reading(f"shear over tensile strength of {material}", nominal, low, high, "", source)


def shear_strength_materials() -> tuple[str, ...]:
    """Groups of materials with a known shear strength ratio."""
    return entries(_RATIOS, "material")


def _check(thickness: Metres, P: Metres) -> None:
    require(thickness > 0 * P, "the threads do not overlap: nothing is left to shear")
