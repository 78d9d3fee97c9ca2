"""Struts: piston rods, connecting rods, push rods and valve spindles in compression.

Long ones buckle elastically (Euler), short ones by yielding as they bow (Johnson); the two meet at the
slenderness where the Euler stress is half the yield strength. All loads are central.

>>> inch, pound = 0.0254, 4.4482216
>>> psi = pound / inch**2
>>> I = 3.141592654 * (0.625 * inch) ** 4 / 64
>>> round(euler_load(E=30e6 * psi, I=I, K=1.0, L=30 * inch) / pound)  # Wentzell, Ex. 3.5: 2464 lbf
2464
"""

from __future__ import annotations

import math

from speclint.equations import (
    FIRST_PRINCIPLES,
    Metres,
    MetresToTheFourth,
    Newtons,
    Pascals,
    Ratio,
    Source,
    SquareMetres,
    formula,
    require,
)
from speclint.handbook.members.sections import radius_of_gyration
from speclint.handbook.tables import KAZIMI, KHURMI, SHIGLEY, WENTZELL, Reading, entries, row

AISC = Source("AISC 360 Commentary", "2010", "Table C-A-7.1", memory=True)
_FIXITY = "end-fixity-aisc-360-10-table-c-a-7-1.csv"
_RANKINE = "rankine-gordon-constants.csv"


def end_conditions() -> tuple[str, ...]:
    """The ways of holding the ends of a strut that the table knows."""
    return entries(_FIXITY, "ends")


def end_fixity(ends: str) -> Reading:
    """Effective length over length: the design figure, with the ideal one as its low."""
    found = row(_FIXITY, "ends", ends)
    design = float(found["design"])
    return Reading(f"effective length factor, {ends}", design, float(found["theory"]), design, "", AISC)


@formula("λ = K L/r", cites=[SHIGLEY.at("section 4-12")])
def slenderness(K: Ratio, L: Metres, r: Metres) -> Ratio:
    """Slenderness of a strut.

    K: effective length factor. L: length, m. r: least radius of gyration, m. Returns a ratio.
    """
    return K * L / r


@formula("λ_c = √(2 π² E/S_y)", cites=[SHIGLEY.at("eq. 4-45"), WENTZELL.at("Ex. 3.5")])
def transition_slenderness(E: Pascals, S_y: Pascals) -> Ratio:
    """Slenderness at which Johnson's formula meets Euler's.

    E: modulus, Pa, above 0. S_y: yield strength, Pa, above 0. Returns a ratio. Raises OutOfRange otherwise.

    >>> round(transition_slenderness(E=30e6, S_y=42e3), 2)  # Wentzell, Ex. 3.5
    118.74
    """
    require(
        E > 0 * E and S_y > 0 * S_y,
        f"modulus {E / 1e9:.4g} GPa or yield strength {S_y / 1e6:.4g} MPa is not above 0",
    )
    ratio: float = (2 * math.pi**2 * E / S_y) ** 0.5
    return ratio


@formula("F = π² E I/(K L)²", cites=[SHIGLEY.at("eq. 4-43"), WENTZELL.at("Ex. 3.5")])
def euler_load(E: Pascals, I: MetresToTheFourth, K: Ratio, L: Metres) -> Newtons:  # noqa: E741
    """Load at which a long strut buckles.

    E: modulus hot, Pa. I: least second moment, m⁴. K: effective length factor. L: length, m.
    Returns N. Below the transition slenderness it is more than the strut carries: use ``critical_load``.
    """
    return math.pi**2 * E * I / (K * L) ** 2


@formula("F = A S_y (1 − S_y λ²/(4 π² E))", cites=[SHIGLEY.at("eq. 4-48"), WENTZELL.at("Ex. 3.6")])
def johnson_load(A: SquareMetres, S_y: Pascals, E: Pascals, lambda_: Ratio) -> Newtons:
    """Load at which a short strut buckles.

    A: area, m². S_y: yield strength hot, Pa. E: modulus hot, Pa. lambda_: slenderness, to the transition slenderness.
    Returns N. Raises OutOfRange outside.

    Published check, Wentzell, Ex. 3.6, twice 35 116.5 lbf:

    >>> round(johnson_load(A=2.26, S_y=36e3, E=30e6, lambda_=67.08) / 2, -2)
    35100.0
    """
    limit = transition_slenderness(E, S_y)
    require(
        lambda_ <= limit * (1 + 1e-12),
        f"slenderness {lambda_:.4g} is above {limit:.4g}, where Johnson's formula ends",
    )
    return A * S_y * (1 - S_y * lambda_**2 / (4 * math.pi**2 * E))


@formula(
    "F = A S_y (1 − S_y λ²/(4 π² E)) if λ ≤ √(2 π² E/S_y), else π² E I/(K L)², λ = K L/√(I/A)",
    cites=[SHIGLEY.at("section 4-13"), WENTZELL.at("Ex. 3.6")],
)
def critical_load(
    E: Pascals,
    S_y: Pascals,
    A: SquareMetres,
    I: MetresToTheFourth,  # noqa: E741
    K: Ratio,
    L: Metres,
) -> Newtons:
    """Load at which a strut fails, long or short.

    E: modulus hot, Pa. S_y: yield strength hot, Pa. A: area, m². I: least second moment,
    m⁴. K: effective length factor. L: length, m. Returns N.
    """
    lambda_ = slenderness(K, L, radius_of_gyration(I, A))
    if lambda_ <= transition_slenderness(E, S_y):
        return johnson_load(A, S_y, E, lambda_)
    return euler_load(E, I, K, L)


@formula("F = σ_c A/(1 + a λ²)", cites=[KHURMI.at("columns and struts", memory=True), KAZIMI.at("Ex. 6")])
def rankine_gordon_load(sigma_c: Pascals, A: SquareMetres, a: Ratio, lambda_: Ratio) -> Newtons:
    """Load that a strut carries by the formula of period handbooks.

    sigma_c: crushing strength (or permitted stress), Pa. A: area, m². a: Rankine's constant for the material,
    pinned ends. lambda_: slenderness. Returns N.

    Published check, Kazimi, Ex. 6, 59 415.61 kgf:

    >>> round(rankine_gordon_load(sigma_c=1260.0, A=48.76, a=1 / 18000, lambda_=24.75))
    59416
    """
    return sigma_c * A / (1 + a * lambda_**2)


@formula("n = F_c/F", cites=[FIRST_PRINCIPLES])
def buckling_factor(F_c: Newtons, F: Newtons) -> Ratio:
    """Factor of safety against buckling.

    F_c: load at which the strut buckles. F: load that it carries, N. OutOfRange unless F is above 0.

    >>> buckling_factor(F_c=1600e3, F=320e3)
    5.0
    """
    require(F > 0 * F, "the load must be above 0")
    return F_c / F


def crushing_strength(material: str) -> Reading:
    """Crushing strength for ``rankine_gordon_load``, Pa."""
    value = float(row(_RANKINE, "material", material)["crushing_MPa"]) * 1e6
    return Reading.exact(f"crushing strength of {material}", value, "Pa", KHURMI.at("columns", memory=True))


def rankine_constant(material: str) -> Reading:
    """Rankine's constant for ``rankine_gordon_load``, pinned ends."""
    value = 1 / float(row(_RANKINE, "material", material)["one_over_a"])
    return Reading.exact(f"Rankine's constant of {material}", value, "", KHURMI.at("columns", memory=True))
