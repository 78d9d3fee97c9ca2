"""Loss coefficients of bends, mitres, entrances and steps in a passage.

Each refers to the mean speed in the passage, or in the smaller of two sections. ``f_T`` is
``flow.rough_friction_factor``. Multiply by ρ v²/2 with ``flow.fitting_pressure_loss``.
"""

from __future__ import annotations

import math
from functools import cache
from itertools import pairwise

from speclint.equations import FIRST_PRINCIPLES, Radians, Ratio, Source, SquareMetres, formula, require
from speclint.handbook import tables

CRANE = Source(
    "Crane Co., Flow of Fluids Through Valves, Fittings and Pipe, TP-410M",
    "2009",
    "p. A-27 to A-30, as reproduced in the open library fluids",
)
BORDA = Source(
    "F. M. White, Fluid Mechanics", "7th ed., 2011", "section 6.9, the loss of Borda and Carnot", memory=True
)

_TABLE = "loss-coefficients-crane-tp-410m-2009.csv"
_QUARTER = math.pi / 2

#: Loss where a passage opens into a chest or the cylinder: all its kinetic energy.
EXIT_LOSS = 1.0


@formula(
    "ζ = (n − 1) (π f_T r_d/4 + ζ_q/2) + ζ_q, n = 2 θ/π, ζ_q = f_T k_bend(r_d)",
    cites=[CRANE.at("p. A-29, bends, as reproduced in the open library fluids")],
)
def bend_loss(r_d: Ratio, θ: Radians, f_T: Ratio) -> Ratio:
    """Loss coefficient of a smooth round bend.

    ζ = (n − 1)(π f_T r_d/4 + ζ₉₀/2) + ζ₉₀ with n = θ/90° and ζ₉₀ from the table, a multiple of f_T

    ``r_d`` radius of the centre line over bore, 1 to 20; ``θ`` angle turned [rad], 45° to 360°; ``f_T``
    friction factor in fully rough flow. Between tabled radii the multiple is read in a straight line.
    Raises OutOfRange outside.

    >>> round(bend_loss(r_d=1.5, θ=math.pi / 2, f_T=0.016), 3)  # 14 f_T
    0.224
    """
    require(_QUARTER / 2 <= θ <= 4 * _QUARTER, f"a bend of {math.degrees(θ):.4g}° lies outside 45° to 360°")
    quarter = f_T * _read("bend", r_d, "bend radius over bore")
    return (θ / _QUARTER - 1) * (math.pi * f_T * r_d / 4 + quarter / 2) + quarter


@formula(
    "ζ = f_T k_mitre(θ)", cites=[CRANE.at("p. A-29, mitre bends, as reproduced in the open library fluids")]
)
def mitre_loss(θ: Radians, f_T: Ratio) -> Ratio:
    """Loss coefficient of a sharp corner without vanes.

    ζ = k(θ) f_T with k from the table

    ``θ`` angle turned [rad], 0 to 90°; ``f_T`` friction factor in fully rough flow.
    Raises OutOfRange outside.

    >>> round(mitre_loss(θ=math.pi / 2, f_T=0.016), 2)  # 60 f_T
    0.96
    """
    return f_T * _read("mitre", math.degrees(θ), "angle of the mitre in degrees")


@formula(
    "ζ = k_entrance(r_d)",
    cites=[CRANE.at("p. A-29, pipe entrance, as reproduced in the open library fluids")],
)
def entrance_loss(r_d: Ratio) -> Ratio:
    """Loss coefficient of the entrance from a chest into a flush passage.

    ζ = k(r_d) from the table

    ``r_d`` rounding of the edge over bore, 0 (sharp) to 0.15 (and better). Raises OutOfRange outside.

    >>> entrance_loss(r_d=0.0), entrance_loss(r_d=0.15)
    (0.5, 0.04)
    """
    return _read("entrance", r_d, "rounding of the entrance over bore")


@formula("ζ = (1 − A_1/A_2)²", cites=[BORDA, FIRST_PRINCIPLES])
def enlargement_loss(A_1: SquareMetres, A_2: SquareMetres) -> Ratio:
    """Loss coefficient of a sudden enlargement, referred to the speed before it.

    ζ = (1 − A_1/A_2)²

    ``A_1`` area before [m²], above 0; ``A_2`` area after [m²], not less. Raises OutOfRange otherwise.

    >>> enlargement_loss(A_1=0.01, A_2=0.02)
    0.25
    """
    require(0 < A_1 <= A_2, "a sudden enlargement must lead to a greater area")
    return (1 - A_1 / A_2) ** 2


@formula("ζ = (1 − A_2/A_1)/2", cites=[CRANE.at("p. A-26, sudden contraction", memory=True)])
def contraction_loss(A_1: SquareMetres, A_2: SquareMetres) -> Ratio:
    """Loss coefficient of a sudden contraction with sharp edges, referred to the speed after it.

    ζ = (1 − A_2/A_1)/2

    ``A_1`` area before [m²]; ``A_2`` area after [m²], above 0 and not more. Raises OutOfRange otherwise.

    >>> contraction_loss(A_1=0.02, A_2=0.01)
    0.25
    """
    require(0 < A_2 <= A_1, "a sudden contraction must lead to a smaller area")
    return (1 - A_2 / A_1) / 2


@cache
def _curve(group: str) -> tuple[tuple[float, float], ...]:
    table = tables.rows(_TABLE)
    return tuple((float(row["argument"]), float(row["value"])) for row in table if row["group"] == group)


def _read(group: str, at: float, what: str) -> float:
    """Straight-line reading of one curve of the table."""
    curve = _curve(group)
    low, high = curve[0][0], curve[-1][0]
    require(low <= at <= high, f"{what} {at:.4g} lies outside {low:g} to {high:g}")
    for (x_1, y_1), (x_2, y_2) in pairwise(curve):
        if at <= x_2:
            return y_1 + (y_2 - y_1) * (at - x_1) / (x_2 - x_1)
    raise AssertionError("unreachable: the range was required above")
