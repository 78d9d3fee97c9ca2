"""Heat that spreads from a round foot into a wide plate, which gives it off on both faces."""

from __future__ import annotations

import math

from speclint import FIRST_PRINCIPLES, Source, formula, require
from speclint.equations import (
    KelvinsPerWatt,
    Metres,
    Ratio,
    SquareMetres,
    WattsPerMetreKelvin,
    WattsPerSquareMetreKelvin,
)
from speclint.handbook.heat import INCROPERA

_BESSEL = Source(
    "M. Abramowitz and I. A. Stegun, Handbook of Mathematical Functions",
    "10th printing, 1972",
    "9.6.24 and table 9.8",
    memory=True,
)
#: The integral of 9.6.24 runs to infinity: here to where its last term is below e^−80, in steps exact to 1e-12.
_STEPS, _END = 240, 12.0


@formula("r = √(A/π)", cites=[FIRST_PRINCIPLES])
def round_foot(A: SquareMetres) -> Metres:
    """Radius of the round foot that has the area of one of any shape.

    r = √(A/π)

    ``A`` area in contact [m²], not below 0. Returns [m]. Raises OutOfRange otherwise.

    >>> round(round_foot(0.062), 5)
    0.14048
    """
    require(A >= 0 * A, f"area {A * 1e6:.4g} mm² in contact is below 0")
    radius: float = (A / math.pi) ** 0.5
    return radius


@formula("x = r √(2 h/(λ t))", cites=[INCROPERA.at("section 3.6, annular fins")])
def fin_argument(r: Metres, h: WattsPerSquareMetreKelvin, λ: WattsPerMetreKelvin, t: Metres) -> Ratio:
    """How far the foot reaches beside the length over which a plate gives its heat off.

    x = r √(2 h/(λ t))

    ``r`` radius of the foot, ``t`` thickness of the plate [m]; ``h`` film on each face [W/(m²·K)]; ``λ`` conductivity
    of the plate [W/(m·K)]. Returns a ratio. Raises OutOfRange unless λ and t are above 0, and h
    0 or more.

    Hand working: 0.14048 × √(30/(45 × 0.028)) = 0.6855.

    >>> round(fin_argument(r=0.14048, h=15.0, λ=45.0, t=0.028), 4)
    0.6855
    """
    require(λ > 0 * λ and t > 0, "conductivity and thickness of the plate must be above 0")
    require(h >= 0 * h, f"film {h:.4g} W/(m²·K) is below 0")
    x: float = r * (2 * h / (λ * t)) ** 0.5
    return x


@formula("R = K_0(x)/(2 π λ t x K_1(x))", cites=[INCROPERA.at("section 3.6, annular fins"), _BESSEL])
def plate_spreading_resistance(x: Ratio, λ: WattsPerMetreKelvin, t: Metres) -> KelvinsPerWatt:
    """Resistance of a wide plate to heat from a round foot on it.

    R = K_0(x)/(2 π λ t x K_1(x))

    K_0, K_1 modified Bessel functions of the second kind. ``x`` as by fin_argument, 0.01 to 10; ``λ`` conductivity
    [W/(m·K)], ``t`` thickness of the plate [m]. Returns [K/W] between foot and air. Edges, ribs and holes of the plate
    are far away. Raises OutOfRange outside.

    Abramowitz and Stegun, table 9.8: K_0(1) = 0.4210, K_1(1) = 0.6019; λ t = 1/(2 π) leaves their quotient, 0.6995.

    >>> round(plate_spreading_resistance(x=1.0, λ=0.5, t=1 / math.pi), 4)
    0.6995
    """
    require(0.01 <= x <= 10, f"the plate's argument {x:.4g} lies outside 0.01 to 10")
    require(λ > 0 * λ and t > 0, "conductivity and thickness of the plate must be above 0")
    return _bessel_k(0, x) / (2 * math.pi * λ * t * x * _bessel_k(1, x))


def _bessel_k(n: int, x: float) -> float:
    """Modified Bessel function of the second kind, K_n(x) = ∫ exp(−x cosh u) cosh(n u) du, by the trapezium rule."""
    width = _END / _STEPS
    total = math.exp(-x) / 2
    for step in range(1, _STEPS + 1):
        u = step * width
        total = total + math.exp(-x * math.cosh(u)) * math.cosh(n * u)
    return total * width
