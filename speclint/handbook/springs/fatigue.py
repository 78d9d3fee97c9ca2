"""Endurance of compression springs: the range of stress that a wire carries for infinite life.

Stresses are corrected shear stresses. Two bodies of data are kept apart: the infinite-life lines of
EN 13906-1 by wire, treatment and diameter, and Zimmerli's one pair of figures for all spring steels.
A spring that is rusted, pitted or scored reaches neither.
"""

from __future__ import annotations

from speclint.equations import Metres, Pascals, Ratio, Source, formula, require
from speclint.errors import NotKnown
from speclint.handbook import tables
from speclint.handbook.springs.helical import en_13906_1_clause
from speclint.handbook.tables import SHIGLEY, Reading, between

STROKE_STRENGTH = "spring-stroke-strength-en-13906-1-2013.csv"
FATIGUE_DIAGRAMS = en_13906_1_clause("10.3, fatigue diagrams, 10⁷ cycles")
_RECALLED = FATIGUE_DIAGRAMS.at("10.3, fatigue diagrams, 10⁷ cycles", memory=True)
ZIMMERLI = Source(
    "F. P. Zimmerli, Human Failures in Spring Applications",
    "1957",
    "as given by Shigley, fatigue loading of helical compression springs, peened wire",
    memory=True,
)
_UNPEENED = ZIMMERLI.at(
    "as given by Shigley, section 10-9, unpeened wire, and reproduced in public spring calculations",
    memory=False,
)
#: Greatest wire for which Zimmerli's figures are quoted, 3/8 in [m].
ZIMMERLI_LARGEST_WIRE: Metres = 9.525e-3

_PSI = 6894.757293168
_ZIMMERLI_KPSI = {"none": (35.0, 55.0), "peened": (57.5, 77.5)}
_SLOPE = (0.70, 0.75, 0.80)


def stroke_strength(wire: str, treatment: str, d: Metres) -> Reading:
    """Range of corrected stress from zero that a wire carries for infinite life, after EN 13906-1.

    ``wire`` grade by its standard ("VDC", "SH", "1.4310", "hot coiled bar"); ``treatment`` none or peened;
    ``d`` wire [m], between the tabulated diameters by straight lines over the diameter. [Pa], ±15 %. The source says
    whether the figures of that wire were seen elsewhere or are from memory.
    NotKnown for a wire or treatment not tabulated; OutOfRange beyond its diameters.

    >>> stroke_strength(wire="VDC", treatment="peened", d=0.004).nominal
    540000000.0
    """
    rows = [
        row for row in tables.rows(STROKE_STRENGTH) if (row["wire"], row["treatment"]) == (wire, treatment)
    ]
    if not rows:
        known = sorted({f"{row['wire']}, {row['treatment']}" for row in tables.rows(STROKE_STRENGTH)})
        raise NotKnown(f"no fatigue line for {wire}, {treatment}; known: {'; '.join(known)}")
    low, nominal, high = (_between(rows, column, d * 1e3) * 1e6 for column in ("low", "nominal", "high"))
    what = f"stroke strength of {wire}, {treatment}, {d * 1e3:g} mm"
    source = FATIGUE_DIAGRAMS if all(row["seen"] == "yes" for row in rows) else _RECALLED
    return Reading(what, nominal, low, high, "Pa", source)


def fatigue_line_slope() -> Reading:
    """Slope of the lines: permissible rise of the upper stress over the rise of the lower.

    Read elsewhere as 0.67 to 0.77 by wire.

    >>> fatigue_line_slope().nominal
    0.75
    """
    low, nominal, high = _SLOPE
    return Reading("slope of the fatigue line", nominal, low, high, "", FATIGUE_DIAGRAMS)


def zimmerli_amplitude(treatment: str) -> Reading:
    """Alternating stress for infinite life of spring steel wire to 3/8 in, independent of its size and strength.

    ``treatment`` none (35 ksi) or peened (57.5 ksi); NotKnown for others. [Pa].

    >>> round(zimmerli_amplitude("none").nominal / 1e6, 1)
    241.3
    """
    return _zimmerli(treatment, 0, "alternating")


def zimmerli_mean(treatment: str) -> Reading:
    """Mean stress that went with ``zimmerli_amplitude``: 55 ksi unpeened, 77.5 ksi peened. [Pa].

    >>> round(zimmerli_mean("peened").nominal / 1e6, 1)
    534.3
    """
    return _zimmerli(treatment, 1, "mean")


@formula("τ_O = τ_H0 + m τ_U", cites=[FATIGUE_DIAGRAMS])
def upper_stress_limit(tau_U: Pascals, tau_H0: Pascals, m: Ratio) -> Pascals:
    """Upper stress on the infinite-life line above a lower stress.

    τ_O = τ_H0 + m τ_U

    ``tau_U`` lower corrected stress [Pa]; ``tau_H0`` stroke strength from zero [Pa]; ``m`` slope of the line.
    Returns [Pa]. Whether the spring carries that stress at rest is judged by the static limit.
    Raises OutOfRange for a negative lower stress.

    Hand working: 500 + 0.75 × 200 = 650 MPa.

    >>> upper_stress_limit(tau_U=200e6, tau_H0=500e6, m=0.75) / 1e6
    650.0
    """
    require(tau_U >= 0, f"lower stress {tau_U / 1e6:.6g} MPa is negative: a compression spring is not pulled")
    return tau_H0 + m * tau_U


@formula("S = (τ_H0 − (1 − m) τ_U)/(τ_O − τ_U)", cites=[FATIGUE_DIAGRAMS])
def stroke_factor(tau_U: Pascals, tau_O: Pascals, tau_H0: Pascals, m: Ratio) -> Ratio:
    """Factor of safety of the stress range: permissible over working range, at the same lower stress.

    S = (τ_H0 − (1 − m) τ_U)/(τ_O − τ_U)

    ``tau_U``, ``tau_O`` lower and upper corrected stress [Pa]; ``tau_H0`` stroke strength from zero [Pa];
    ``m`` slope of the line. Returns [-]. Raises OutOfRange unless 0 ≤ τ_U < τ_O.

    Hand working: (500 − 0.25 × 200)/(500 − 200) = 1.5.

    >>> stroke_factor(tau_U=200e6, tau_O=500e6, tau_H0=500e6, m=0.75)
    1.5
    """
    _require_stroke(tau_U, tau_O)
    return (tau_H0 - (1 - m) * tau_U) / (tau_O - tau_U)


@formula(
    "S_e = S_a/(1 − S_m/S_su)",
    cites=[SHIGLEY.at("section 10-9, as reproduced in public spring calculations", memory=False)],
)
def goodman_endurance(S_a: Pascals, S_m: Pascals, S_su: Pascals) -> Pascals:
    """Endurance at no mean stress that an alternating and a mean strength imply on Goodman's line.

    S_e = S_a/(1 − S_m/S_su)

    ``S_a``, ``S_m`` alternating and mean strength found together [Pa]; ``S_su`` shear strength of the wire,
    0.67 of its tensile strength [Pa]. Returns [Pa]. Raises OutOfRange unless S_m < S_su.

    Shigley, example 10-4: 35/(1 − 55/190.3) = 49.2 ksi; here in units of 1 ksi.

    >>> round(goodman_endurance(S_a=35.0, S_m=55.0, S_su=190.3), 1)
    49.2
    """
    require(
        0 <= S_m < S_su,
        f"mean strength {S_m / 1e6:.6g} MPa is not between 0 and the shear strength {S_su / 1e6:.6g} MPa",
    )
    return S_a / (1 - S_m / S_su)


@formula(
    "S = 1/((τ_O − τ_U)/(2 S_e) + (τ_O + τ_U)/(2 S_su))",
    cites=[SHIGLEY.at("ch. 10, fatigue loading of helical compression springs")],
)
def goodman_factor(tau_U: Pascals, tau_O: Pascals, S_e: Pascals, S_su: Pascals) -> Ratio:
    """Factor of safety on Goodman's line, both stresses increasing together.

    S = 1/((τ_O − τ_U)/(2 S_e) + (τ_O + τ_U)/(2 S_su))

    ``tau_U``, ``tau_O`` lower and upper corrected stress [Pa]; ``S_e`` endurance at no mean stress
    (``goodman_endurance``), ``S_su`` shear strength [Pa]. Returns [-].
    Raises OutOfRange unless 0 ≤ τ_U < τ_O.

    Hand working: amplitude 100, mean 200 on 400 and 800 MPa: 1/(0.25 + 0.25) = 2.

    >>> goodman_factor(tau_U=100e6, tau_O=300e6, S_e=400e6, S_su=800e6)
    2.0
    """
    _require_stroke(tau_U, tau_O)
    return 1 / ((tau_O - tau_U) / (2 * S_e) + (tau_O + tau_U) / (2 * S_su))


def _require_stroke(tau_U: float, tau_O: float) -> None:
    require(
        0 <= tau_U < tau_O,
        f"lower stress {tau_U / 1e6:.6g} MPa is not between 0 and the upper {tau_O / 1e6:.6g} MPa",
    )


def _zimmerli(treatment: str, which: int, name: str) -> Reading:
    if treatment not in _ZIMMERLI_KPSI:
        raise NotKnown(f"no endurance figures for treatment {treatment!r}; known: none, peened")
    value = _ZIMMERLI_KPSI[treatment][which] * 1e3 * _PSI
    source = _UNPEENED if treatment == "none" else ZIMMERLI
    return Reading.exact(f"{name} strength of spring wire, {treatment}", value, "Pa", source)


def _between(rows: list[tables.Row], column: str, d: float) -> float:
    points = [(float(row["d"]), float(row[column])) for row in rows]
    return between(points, d, "stroke strength over mm of wire")
