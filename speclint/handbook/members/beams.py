"""Bending moment and deflection of bars by their supports: slide bars, rocker arms, pins, ribs.

Each gives its greatest value along the bar. ``a`` places a point load from the left support (from the wall
of a cantilever). Shear deflection is left out: a bar shorter than about five depths bends more than this.

>>> round(simple_deflection(F=10e3, a=0.5, L=1.0, E=200e9, I=1e-6) * 1e3, 3)  # hand: F L³/(48 E I)
1.042
"""

from __future__ import annotations

from speclint.equations import (
    FIRST_PRINCIPLES,
    CubicMetres,
    Metres,
    MetresToTheFourth,
    NewtonMetres,
    Newtons,
    NewtonsPerMetre,
    Pascals,
    formula,
    require,
)
from speclint.handbook.tables import ROARK

_CANTILEVER = (ROARK.at("Table 8.1, cases 1a and 2a"),)
_SIMPLE = (ROARK.at("Table 8.1, cases 1e and 2e"),)
_FIXED = (ROARK.at("Table 8.1, cases 1d and 2d"),)


@formula("σ = M/Z", cites=[FIRST_PRINCIPLES])
def bending_stress(M: NewtonMetres, Z: CubicMetres) -> Pascals:
    """Stress in the outermost fibre.

    M: bending moment, N·m. Z: section modulus, m³. Returns Pa.
    """
    return M / Z


@formula("M = F a", cites=_CANTILEVER)
def cantilever_moment(F: Newtons, a: Metres) -> NewtonMetres:
    """Moment at the wall of a cantilever under a point load.

    F: load, N. a: its distance from the wall, or from the face that holds a crank pin, m. Returns N·m.
    """
    return F * a


@formula("y = F a² (3 L − a)/(6 E I)", cites=_CANTILEVER)
def cantilever_deflection(F: Newtons, a: Metres, L: Metres, E: Pascals, I: MetresToTheFourth) -> Metres:  # noqa: E741
    """Deflection of the free end of a cantilever under a point load.

    F: load, N. a: its distance from the wall, m. L: length, m. E: modulus, Pa. I: second moment, m⁴.
    Returns m.
    """
    _check(a, L)
    return F * a**2 * (3 * L - a) / (6 * E * I)


@formula("M = w L²/2", cites=_CANTILEVER)
def cantilever_moment_uniform(w: NewtonsPerMetre, L: Metres) -> NewtonMetres:
    """Moment at the wall of a cantilever under a uniform load.

    w: load on unit length, N/m. L: length, m. Returns N·m.
    """
    return w * L**2 / 2


@formula("y = w L⁴/(8 E I)", cites=_CANTILEVER)
def cantilever_deflection_uniform(w: NewtonsPerMetre, L: Metres, E: Pascals, I: MetresToTheFourth) -> Metres:  # noqa: E741
    """Deflection of the free end of a cantilever under a uniform load.

    w: load on unit length, N/m. L: length, m. E: modulus, Pa. I: second moment, m⁴. Returns m.
    """
    return w * L**4 / (8 * E * I)


@formula("M = F a (L − a)/L", cites=_SIMPLE)
def simple_moment(F: Newtons, a: Metres, L: Metres) -> NewtonMetres:
    """Moment under a point load on a simply supported bar.

    F: load, N. a: its place, m. L: span, m. Returns N·m.
    """
    _check(a, L)
    return F * a * (L - a) / L


@formula("y = F b (L² − b²)^(3/2)/(9 √3 E I L), b = min(a, L − a)", cites=_SIMPLE)
def simple_deflection(F: Newtons, a: Metres, L: Metres, E: Pascals, I: MetresToTheFourth) -> Metres:  # noqa: E741
    """Greatest deflection of a simply supported bar under a point load; it lies in the longer part.

    F: load, N. a: its place, m. L: span, m. E: modulus, Pa. I: second moment, m⁴. Returns m.
    """
    _check(a, L)
    b = min(a, L - a)
    deflection: float = F * b * (L**2 - b**2) ** 1.5 / (9 * 3**0.5 * E * I * L)
    return deflection


@formula("M = w L²/8", cites=_SIMPLE)
def simple_moment_uniform(w: NewtonsPerMetre, L: Metres) -> NewtonMetres:
    """Moment in the middle of a simply supported bar under a uniform load.

    w: load on unit length, N/m. L: span, m. Returns N·m.
    """
    return w * L**2 / 8


@formula("y = 5 w L⁴/(384 E I)", cites=_SIMPLE)
def simple_deflection_uniform(w: NewtonsPerMetre, L: Metres, E: Pascals, I: MetresToTheFourth) -> Metres:  # noqa: E741
    """Deflection in the middle of a simply supported bar under a uniform load.

    w: load on unit length, N/m. L: span, m. E: modulus, Pa. I: second moment, m⁴. Returns m.
    """
    return 5 * w * L**4 / (384 * E * I)


@formula("M = F a b max(a, b)/L², b = L − a", cites=_FIXED)
def fixed_moment(F: Newtons, a: Metres, L: Metres) -> NewtonMetres:
    """Greatest moment of a bar fixed at both ends under a point load: at the nearer end.

    F: load, N. a: its place, m. L: span, m. Returns N·m.
    """
    _check(a, L)
    return F * a * (L - a) * max(a, L - a) / L**2


@formula("y = 2 F g³ b²/(3 E I (3 g + b)²), g = max(a, L − a), b = L − g", cites=_FIXED)
def fixed_deflection(F: Newtons, a: Metres, L: Metres, E: Pascals, I: MetresToTheFourth) -> Metres:  # noqa: E741
    """Greatest deflection of a bar fixed at both ends under a point load.

    F: load, N. a: its place, m. L: span, m. E: modulus, Pa. I: second moment, m⁴. Returns m.
    """
    _check(a, L)
    long = max(a, L - a)
    short = L - long
    return 2 * F * long**3 * short**2 / (3 * E * I * (3 * long + short) ** 2)


@formula("M = w L²/12", cites=_FIXED)
def fixed_moment_uniform(w: NewtonsPerMetre, L: Metres) -> NewtonMetres:
    """Moment at the ends of a bar fixed at both ends under a uniform load.

    w: load on unit length, N/m. L: span, m. Returns N·m.
    """
    return w * L**2 / 12


@formula("y = w L⁴/(384 E I)", cites=_FIXED)
def fixed_deflection_uniform(w: NewtonsPerMetre, L: Metres, E: Pascals, I: MetresToTheFourth) -> Metres:  # noqa: E741
    """Deflection in the middle of a bar fixed at both ends under a uniform load.

    w: load on unit length, N/m. L: span, m. E: modulus, Pa. I: second moment, m⁴. Returns m.
    """
    return w * L**4 / (384 * E * I)


def _check(a: Metres, L: Metres) -> None:
    require(
        0 * L < a <= L, f"the load, at {a * 1e3:.4g} mm, does not lie on the bar of length {L * 1e3:.4g} mm"
    )
