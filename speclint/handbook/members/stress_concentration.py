"""Stress at a change of section over the nominal stress of the smaller section, and its effect in fatigue.

>>> fit = 0.99957 * 0.1**-0.28221  # Norton, Appendix C (from memory), D/d 1.5
>>> abs(shoulder_in_tension(D=0.045, d=0.030, r=0.003) / fit - 1) < 0.05
True
"""

from __future__ import annotations

from speclint.equations import Metres, Pascals, Ratio, Source, formula, require
from speclint.errors import NotKnown, OutOfRange
from speclint.handbook.tables import PETERSON, ROARK, SHIGLEY, Reading, Row, row, rows

HEYWOOD = Source("R. B. Heywood, Designing by Photoelasticity", "1952", "hole in a strip", memory=True)
_SEEN = "as reproduced in a public calculation of shafts"
_SHOULDERS = "stepped-round-bar-peterson-1997.csv"
_THREADS = "thread-notch-factors-shigley-2015-table-8-16.csv"
_EQUATION = "K_t = C_1(k) + C_2(k) x + C_3(k) x² + C_4(k) x³, x = (D − d)/D, k = (D − d)/(2 r)"


@formula(_EQUATION, cites=[PETERSON.at(f"Chart 3.4, {_SEEN}", memory=False), ROARK.at("Table 17.1")])
def shoulder_in_tension(D: Metres, d: Metres, r: Metres) -> Ratio:
    """Stress concentration of a round bar with a shoulder fillet in tension.

    D: larger diameter, m. d: smaller diameter, m. r: fillet, m; (D - d)/2 from 0.1 r to 20 r. Returns a ratio.
    """
    return _shoulder("tension", D, d, r)


@formula(_EQUATION, cites=[PETERSON.at(f"Chart 3.10, {_SEEN}", memory=False), ROARK.at("Table 17.1")])
def shoulder_in_bending(D: Metres, d: Metres, r: Metres) -> Ratio:
    """Stress concentration of a round bar with a shoulder fillet in bending.

    D: larger diameter, m. d: smaller diameter, m. r: fillet, m; (D - d)/2 from 0.1 r to 20 r. Returns a ratio.

    Published check, Shigley, Ex. 7-1 (from memory): D/d 1.5, r/d 0.1, 1.68 from an older chart:

    >>> abs(shoulder_in_bending(D=0.042, d=0.028, r=0.0028) / 1.68 - 1) < 0.05
    True
    """
    return _shoulder("bending", D, d, r)


@formula(_EQUATION, cites=[PETERSON.at("Chart 3.12"), ROARK.at("Table 17.1")])
def shoulder_in_torsion(D: Metres, d: Metres, r: Metres) -> Ratio:
    """Stress concentration of a round bar with a shoulder fillet in torsion.

    D: larger diameter, m. d: smaller diameter, m. r: fillet, m; (D - d)/2 from 0.25 r to 4 r. Returns a ratio.
    """
    return _shoulder("torsion", D, d, r)


@formula("K_t = 2 + (1 − d/w)³", cites=[HEYWOOD])
def hole_in_strip(d: Metres, w: Metres) -> Ratio:
    """Stress concentration at a hole, or the round end of a cotter slot, in a strip in tension, on the net section.

    d: width of hole across the pull, m. w: width of strip, m. Returns a ratio from 2 to 3.
    """
    require(0 < d / w < 1, f"a hole of {d * 1e3:.4g} mm does not lie within a strip of {w * 1e3:.4g} mm")
    return 2 + (1 - d / w) ** 3


@formula(
    "K_t = 12.882 − 52.714 x + 89.762 x² − 51.667 x³, x = d/w", cites=[ROARK.at("Table 17.1", memory=True)]
)
def eye_on_its_pin(d: Metres, w: Metres) -> Ratio:
    """Stress concentration at the hole of an eye that a pin pulls, on the net section.

    K_t = 12.882 − 52.714 x + 89.762 x² − 51.667 x³, x = d/w

    d: pin and hole, m. w: width of the eye across the pull, m; d/w from 0.15 to 0.75. Returns a ratio.

    Hand working, x = 0.5: 12.882 − 26.357 + 22.4405 − 6.458375 = 2.507.

    >>> round(eye_on_its_pin(d=0.1, w=0.2), 3)
    2.507
    """
    require(0.15 * w <= d <= 0.75 * w, f"a pin has 0.15 to 0.75 of the width of its eye, not {d / w:.4g}")
    x = d / w
    return 12.882 - 52.714 * x + 89.762 * x**2 - 51.667 * x**3


@formula(
    "q = 1/(1 + 0.0254 mm (2070 MPa/R_m)^1.8/r)",
    cites=[PETERSON.at("eq. 1.31")],
    empirical="millimetres and MPa",
)
def notch_sensitivity(R_m: Pascals, r: Metres) -> Ratio:
    """Share of a stress concentration that is effective in fatigue of steel, bending or tension.

    R_m: tensile strength, 350 to 2000 MPa, Pa. r: notch radius, m, above 0. Returns a ratio from 0 to 1.
    """
    require(350e6 <= R_m <= 2000e6, f"tensile strength {R_m / 1e6:.4g} MPa is not from 350 to 2000 MPa")
    require(r > 0, f"notch radius {r * 1e3:.4g} mm is not above 0")
    share: float = 1 / (1 + 0.0254 * (2070e6 / R_m) ** 1.8 / (r * 1e3))
    return share


@formula("K_f = 1 + q (K_t − 1)", cites=[SHIGLEY.at("eq. 6-32")])
def fatigue_notch_factor(K_t: Ratio, q: Ratio) -> Ratio:
    """Loss of endurance by a stress concentration.

    K_t: stress concentration, at least 1. q: notch sensitivity, 0 to 1. Returns a ratio.

    >>> round(fatigue_notch_factor(K_t=1.68, q=0.85), 2)  # Shigley, Ex. 7-1
    1.58
    """
    require(K_t >= 1, f"stress concentration {K_t:.3g} is below 1")
    require(0 <= q <= 1, f"notch sensitivity {q:.3g} is not from 0 to 1")
    return 1 + q * (K_t - 1)


def thread_notch_factor(strength: str, thread: str) -> Reading:
    """Fatigue notch factor at the root of a thread, or under a bolt head, notch sensitivity and finish taken.

    ``strength`` is "low" (classes to 5.8) or "high" (from 6.6); ``thread`` is "rolled", "cut" or "fillet".
    """
    found = row(_THREADS, "strength", strength)
    if thread not in found or thread == "strength":
        raise NotKnown(f"no thread {thread!r} in the handbook; it knows rolled, cut and fillet")
    what = f"fatigue notch factor, {thread} thread of {strength} strength"
    return Reading.exact(what, float(found[thread]), "", SHIGLEY.at("Table 8-16"))


def _shoulder(load: str, D: Metres, d: Metres, r: Metres) -> Ratio:
    require(d < D, f"shoulder of {D * 1e3:.4g} mm is not larger than the bar of {d * 1e3:.4g} mm")
    share, steep = (D - d) / D, (D - d) / (2 * r)
    terms = _terms(load, steep)
    return sum(_term(found, steep) * share ** (int(found["term"]) - 1) for found in terms)


def _terms(load: str, steep: Ratio) -> list[Row]:
    known = [found for found in rows(_SHOULDERS) if found["load"] == load]
    fitting = [found for found in known if float(found["from"]) <= steep <= float(found["to"])]
    if not fitting:
        least, most = min(float(f["from"]) for f in known), max(float(f["to"]) for f in known)
        raise OutOfRange(f"shoulder height over fillet, {steep:.3g}, is not from {least:g} to {most:g}")
    return fitting[:4]


def _term(found: Row, steep: Ratio) -> Ratio:
    c_0, c_1, c_2 = (float(found[name]) for name in ("c0", "c1", "c2"))
    term: float = c_0 + c_1 * steep**0.5 + c_2 * steep
    return term
