"""Properties of the sections rods, shafts and bars are made of.

Second moments are about the axis through the centroid; ``h`` is in the plane of bending.

>>> round(round_second_moment(d=0.0159) * 1e12)  # hand: π 15.9⁴/64
3137
"""

from __future__ import annotations

import math

from speclint.equations import (
    FIRST_PRINCIPLES,
    CubicMetres,
    Metres,
    MetresToTheFourth,
    Ratio,
    SquareMetres,
    formula,
    require,
)
from speclint.handbook.tables import POCKET_BOOK

_GEOMETRY = (FIRST_PRINCIPLES,)


@formula("A = π d²/4", cites=_GEOMETRY)
def round_area(d: Metres) -> SquareMetres:
    """Area of a circle.

    d: diameter of a round bar, of a bore, or of a piston whose rod is not taken off, m. Returns m².
    """
    return math.pi * d**2 / 4


@formula("I = π d⁴/64", cites=_GEOMETRY)
def round_second_moment(d: Metres) -> MetresToTheFourth:
    """Second moment of a round bar about a diameter.

    d: diameter, m. Returns m⁴.
    """
    return math.pi * d**4 / 64


@formula("A = π (D² − d²)/4", cites=_GEOMETRY)
def tube_area(D: Metres, d: Metres) -> SquareMetres:
    """Area of a ring.

    D: outside of a tube, a bored rod or a flat face, m. d: its bore, m. Returns m². OutOfRange unless 0 ≤ d < D.
    """
    _check_bore(D, d)
    return math.pi * (D**2 - d**2) / 4


@formula("t = (D − d)/2", cites=_GEOMETRY)
def tube_wall(D: Metres, d: Metres) -> Metres:
    """Wall of a tube, or of a ring such as a guide or a valve seat.

    D: outside, m. d: bore, m. Returns m. OutOfRange unless 0 ≤ d < D.
    """
    _check_bore(D, d)
    return (D - d) / 2


@formula("I = π (D⁴ − d⁴)/64", cites=_GEOMETRY)
def tube_second_moment(D: Metres, d: Metres) -> MetresToTheFourth:
    """Second moment of a tube about a diameter.

    D: outside, m. d: bore, m (0 for a solid bar). Returns m⁴.
    """
    _check_bore(D, d)
    return math.pi * (D**4 - d**4) / 64


@formula("J = π (D⁴ − d⁴)/32", cites=_GEOMETRY)
def tube_polar_moment(D: Metres, d: Metres) -> MetresToTheFourth:
    """Polar second moment of a tube or, with a bore of 0, a round bar.

    D: outside, m. d: bore, m. Returns m⁴.
    """
    return 2 * tube_second_moment(D, d)


@formula("A = b h", cites=_GEOMETRY)
def rectangle_area(b: Metres, h: Metres) -> SquareMetres:
    """Area of a rectangle.

    b: width, m. h: depth, m. Returns m².
    """
    return b * h


@formula("A = 2 (l b + l h + b h)", cites=_GEOMETRY)
def outside_of_box(l: Metres, b: Metres, h: Metres) -> SquareMetres:  # noqa: E741 - the letter of the equation
    """Outside of a box with plain faces.

    l: length, m. b: width, m. h: height, m. Returns m².

    >>> round(outside_of_box(l=0.42, b=0.36, h=0.30), 4)
    0.7704
    """
    return 2 * (l * b + l * h + b * h)


@formula("I = b h³/12", cites=_GEOMETRY)
def rectangle_second_moment(b: Metres, h: Metres) -> MetresToTheFourth:
    """Second moment of a rectangle about its axis of width.

    b: width, m. h: depth, m. Returns m⁴.
    """
    return b * h**3 / 12


@formula("A = b h − (b − t_w)(h − 2 t_f)", cites=_GEOMETRY)
def i_section_area(b: Metres, h: Metres, t_w: Metres, t_f: Metres) -> SquareMetres:
    """Area of an I with equal flanges, fillets left out.

    b: flange width, m. h: depth, m. t_w: web, m. t_f: flange thickness, m. Returns m².
    """
    _check_flanges(b, h, t_w, t_f)
    return b * h - (b - t_w) * (h - 2 * t_f)


@formula("I = (b h³ − (b − t_w)(h − 2 t_f)³)/12", cites=_GEOMETRY)
def i_section_second_moment(b: Metres, h: Metres, t_w: Metres, t_f: Metres) -> MetresToTheFourth:
    """Second moment of an I with equal flanges for bending in the plane of the web.

    Arguments as ``i_section_area``. Returns m⁴.
    """
    _check_flanges(b, h, t_w, t_f)
    return (b * h**3 - (b - t_w) * (h - 2 * t_f) ** 3) / 12


@formula("I = (2 t_f b³ + (h − 2 t_f) t_w³)/12", cites=_GEOMETRY)
def i_section_second_moment_sideways(b: Metres, h: Metres, t_w: Metres, t_f: Metres) -> MetresToTheFourth:
    """Second moment of an I with equal flanges for bending out of the plane of the web.

    Arguments as ``i_section_area``. Returns m⁴.
    """
    _check_flanges(b, h, t_w, t_f)
    return (2 * t_f * b**3 + (h - 2 * t_f) * t_w**3) / 12


@formula("Z = I/c", cites=_GEOMETRY)
def section_modulus(I: MetresToTheFourth, c: Metres) -> CubicMetres:  # noqa: E741
    """Section modulus.

    I: second moment, m⁴. c: distance of the outermost fibre from the axis, m. Returns m³.
    """
    return I / c


@formula("r = √(I/A)", cites=_GEOMETRY)
def radius_of_gyration(I: MetresToTheFourth, A: SquareMetres) -> Metres:  # noqa: E741
    """Radius of gyration.

    I: second moment, m⁴, not below 0. A: area, m², above 0. Returns m. Raises OutOfRange otherwise. A round bar
    has a quarter of its diameter.
    """
    require(
        I >= 0 * I and A > 0 * A,
        f"second moment {I * 1e12:.4g} mm⁴ is below 0 or area {A * 1e6:.4g} mm² not above 0",
    )
    radius: float = (I / A) ** 0.5
    return radius


@formula("x = d/d_0", cites=_GEOMETRY)
def size_ratio(d: Metres, d_0: Metres) -> Ratio:
    """One size as a share of another.

    d: size; d_0: the size to compare with, m. OutOfRange unless d_0 is above 0.

    >>> size_ratio(d=90.0, d_0=80.0)
    1.125
    """
    require(d_0 > 0 * d_0, "the size to compare with must be above 0")
    return d / d_0


@formula("d = k D", cites=[POCKET_BOOK.at("p. 501, approximate rules for locomotives")])
def share_of_bore(D: Metres, k: Ratio) -> Metres:
    """Size by the period's rules, as a share of the cylinder's bore.

    D: bore, m. k: share of it. Returns m.

    Published check, a period pocket-book, p. 501: piston rod 0.16 D; 17 in make 2.72 in.

    >>> round(share_of_bore(D=17.0, k=0.16), 6)
    2.72
    """
    return k * D


def _check_bore(D: Metres, d: Metres) -> None:
    require(0 * D <= d < D, f"bore {d * 1e3:.4g} mm does not lie within the outside {D * 1e3:.4g} mm")


def _check_flanges(b: Metres, h: Metres, t_w: Metres, t_f: Metres) -> None:
    require(0 * b < t_w <= b, f"web {t_w * 1e3:.4g} mm does not lie within the flange width {b * 1e3:.4g} mm")
    require(
        0 * h < 2 * t_f <= h,
        f"two flanges of {t_f * 1e3:.4g} mm do not lie within the depth {h * 1e3:.4g} mm",
    )
