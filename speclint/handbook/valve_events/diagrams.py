"""The theoretical indicator diagram: expansion and compression along p v = constant, events on the instant.

It stands behind the real diagram as the trade's measure. It is no limit: superheated steam expands below the
hyperbola, and steam is throttled at speed.
"""

from __future__ import annotations

import math

from speclint.equations import FIRST_PRINCIPLES, Pascals, Ratio, formula, require
from speclint.handbook.tables import JOEL, LINEHAM

_HYPERBOLA = JOEL.at("example 11.1, hypothetical mean effective pressure")
UNWIN = LINEHAM.at("p. 772, Unwin's factor from theoretical to real diagram")


@formula(
    "p_f = p_1 (x_c + (x_c + c) ln((x_r + c)/(x_c + c))) + p_b (1 − x_r)",
    cites=[_HYPERBOLA, FIRST_PRINCIPLES],
)
def mean_forward_pressure(p_1: Pascals, p_b: Pascals, x_c: Ratio, c: Ratio, x_r: Ratio) -> Pascals:
    """Mean pressure behind the piston over its stroke.

    p_f = p_1 (x_c + (x_c + c) ln((x_r + c)/(x_c + c))) + p_b (1 − x_r)

    ``p_1`` pressure of admission, ``p_b`` back pressure [Pa absolute]; ``x_c`` cut-off and ``x_r`` release as shares
    of the stroke, 0 < x_c ≤ x_r ≤ 1; ``c`` clearance over swept volume, not below 0. Returns [Pa absolute]. At
    release the pressure is taken to drop at once to p_b. Raises OutOfRange outside.

    By hand: 12 bar, a quarter, no clearance: 12 (0.25 + 0.25 · 1.38629) = 7.1589 bar.

    >>> round(mean_forward_pressure(p_1=12e5, p_b=1.2e5, x_c=0.25, c=0.0, x_r=1.0) / 1e5, 4)
    7.1589
    """
    require(0 < x_c <= x_r, f"cut-off {x_c:.4g} lies outside 0 to the release at {x_r:.4g}")
    require(x_r <= 1, f"release {x_r:.4g} lies beyond the end of the stroke")
    require(c >= 0, f"clearance {c:.4g} must not be below 0")
    return p_1 * (x_c + (x_c + c) * math.log((x_r + c) / (x_c + c))) + p_b * (1 - x_r)


@formula("p_r = p_b (1 − x_k + (x_k + c) ln((x_k + c)/c))", cites=[FIRST_PRINCIPLES])
def mean_return_pressure(p_b: Pascals, x_k: Ratio, c: Ratio) -> Pascals:
    """Mean pressure against the piston over its return: exhaust, then compression.

    p_r = p_b (1 − x_k + (x_k + c) ln((x_k + c)/c))

    ``p_b`` back pressure [Pa absolute]; ``x_k`` share of the stroke left at compression, 0 to 1; ``c`` clearance over
    swept volume, above 0. Returns [Pa absolute]. Raises OutOfRange outside.

    By hand: 1.2 bar, 0.1 left, clearance 0.1: 1.2 (0.9 + 0.2 ln 2) = 1.2464 bar.

    >>> round(mean_return_pressure(p_b=1.2e5, x_k=0.1, c=0.1) / 1e5, 4)
    1.2464
    """
    require(0 <= x_k <= 1, f"share of the stroke left at compression {x_k:.4g} lies outside 0 to 1")
    require(c > 0, "steam cannot be compressed into no clearance at all")
    return p_b * (1 - x_k + (x_k + c) * math.log((x_k + c) / c))


@formula(
    "p_t = p_f − p_r, p_f = p_f(p_1, p_b, x_c, c, x_r), p_r = p_r(p_b, x_k, c)",
    cites=[_HYPERBOLA, FIRST_PRINCIPLES],
)
def theoretical_mean_pressure(
    p_1: Pascals, p_b: Pascals, x_c: Ratio, c: Ratio, x_r: Ratio, x_k: Ratio
) -> Pascals:
    """Mean effective pressure of the theoretical diagram.

    p_t = p_f − p_r, p_f = p_f(p_1, p_b, x_c, c, x_r), p_r = p_r(p_b, x_k, c)

    Arguments and limits as ``mean_forward_pressure`` and ``mean_return_pressure``. Returns [Pa], negative where the
    steam would do no work.

    By hand: 12 bar, a quarter, 1.2 bar, 0.1 left, clearance 0.1: 12 (0.25 + 0.35 ln(1.1/0.35)) = 7.8096, less 1.2464.

    >>> round(theoretical_mean_pressure(12e5, 1.2e5, x_c=0.25, c=0.1, x_r=1.0, x_k=0.1) / 1e5, 4)
    6.5632
    """
    return mean_forward_pressure(p_1, p_b, x_c, c, x_r) - mean_return_pressure(p_b, x_k, c)


@formula("k = p_m/p_t", cites=[UNWIN, JOEL.at("example 11.3, diagram factor")])
def diagram_factor(p_m: Pascals, p_t: Pascals) -> Ratio:
    """Mean effective pressure of the real diagram over that of the theoretical one.

    k = p_m/p_t

    ``p_m`` mean effective pressure of the real diagram [Pa]; ``p_t`` mean effective pressure of the theoretical diagram
    [Pa], above 0. Returns a ratio, 0.85 to 0.95 in good slow engines. Raises OutOfRange outside.

    By hand: 4.1 of 5.0 bar.

    >>> round(diagram_factor(4.1e5, 5.0e5), 9)
    0.82
    """
    require(p_t > 0, "the theoretical diagram must do work")
    return p_m / p_t


def theoretical_pressure(
    x: float, outward: bool, p_1: float, p_b: float, x_c: float, c: float, x_r: float, x_k: float
) -> float:
    """Pressure of the theoretical diagram [Pa absolute] at a share of the stroke from the end's dead centre.

    ``outward`` on the working stroke, else on the return; other arguments as ``theoretical_mean_pressure``.
    OutOfRange unless x lies within 0 to 1.
    """
    require(0 <= x <= 1, f"share of the stroke {x:.4g} lies outside 0 to 1")
    if outward:
        expanding = p_1 if x <= x_c else p_1 * (x_c + c) / (x + c)
        return expanding if x <= x_r else p_b
    return p_b if x >= x_k else p_b * (x_k + c) / (x + c)
