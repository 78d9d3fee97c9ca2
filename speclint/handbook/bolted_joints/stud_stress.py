"""Stress in a stud: tension from the load and torsion left by tightening.

Both together are ``combined_stress.equivalent_stress``.
"""

from __future__ import annotations

import math

from speclint.equations import (
    FIRST_PRINCIPLES,
    Metres,
    NewtonMetres,
    Newtons,
    Pascals,
    Radians,
    Ratio,
    SquareMetres,
    formula,
    require,
)
from speclint.handbook.members import shafts
from speclint.handbook.tables import SHIGLEY, VDI_2230

#: Share of the tightening torsion that remains in service (VDI 2230 (2003), section 5.5.2, seen reproduced).
TORSION_LEFT_IN_SERVICE = 0.5


@formula("σ = F/A_s", cites=[FIRST_PRINCIPLES])
def tension(F: Newtons, A_s: SquareMetres) -> Pascals:
    """Mean tension on the stress area of the thread (or on a reduced shank, if less).

    F: load, N. A_s: area, m². Returns Pa.

    >>> round(tension(F=130.5e3, A_s=245e-6) / 1e6, 2)  # Jindal, Ex. 9-6
    532.65
    """
    return F / A_s


@formula("d_s = √(4 A_s/π)", cites=[FIRST_PRINCIPLES])
def stress_diameter(A_s: SquareMetres) -> Metres:
    """Diameter of the circle that has the stress area.

    A_s: stress area, m², not below 0. Returns m. Raises OutOfRange otherwise.
    """
    require(A_s >= 0 * A_s, f"stress area {A_s * 1e6:.4g} mm² is below 0")
    diameter: float = (4 * A_s / math.pi) ** 0.5
    return diameter


@formula("τ = 16 M_t/(π d_s³)", cites=[SHIGLEY.at("eq. 8-7")])
def torsion_shear(M_t: NewtonMetres, d_s: Metres) -> Pascals:
    """Elastic torsional shear at the surface of the stress section.

    M_t: torque in the thread, N·m. d_s: diameter of the stress section, m. Returns Pa.

    Published check, Shigley, Ex. 8-1, 26.18 N·m on a 28 mm root, 6.07 MPa:

    >>> round(torsion_shear(M_t=26.18, d_s=0.028) / 1e6, 2)
    6.07
    """
    return shafts.torsion_shear(M_t, d_s, 0 * d_s)


@formula(
    "F_M = ν R_p02 A_s/√(1 + 3 (3 d_2/(2 d_s) (P/(π d_2) + μ_t/cos α))²), d_s = √(4 A_s/π)",
    cites=[VDI_2230.at("eq. R8/1, as reproduced in a public table after Table A1", memory=False)],
)
def permissible_preload(
    nu: Ratio, R_p02: Pascals, A_s: SquareMetres, P: Metres, d_2: Metres, mu_t: Ratio, alpha: Radians
) -> Newtons:
    """Preload that brings a stud, with the torsion of tightening, to a share of its proof strength.

    nu: share of proof strength, above 0 and at most 1 (0.9 is usual). R_p02: least 0.2 % proof strength, Pa.
    A_s: stress area, m². P: pitch, m. d_2: pitch diameter, m. mu_t: friction in the thread. alpha: flank
    angle, rad. Returns N. The section counts as fully plastic in torsion, as VDI 2230 has it.
    Raises OutOfRange unless 0 < ν ≤ 1.

    Published check, VDI 2230 Table A1 (from memory): M12, 8.8, friction 0.12, 43.0 kN within 0.5 %:

    >>> F_M = permissible_preload(0.9, 640e6, 84.3e-6, 1.75e-3, 10.863e-3, 0.12, math.radians(30.0))
    >>> 42.8 < F_M / 1e3 < 43.2
    True
    """
    require(0 < nu <= 1, f"share of proof strength {nu:.3g} is not above 0 and at most 1")
    twist = 1.5 * d_2 / stress_diameter(A_s) * (P / (math.pi * d_2) + mu_t / math.cos(alpha))
    preload: float = nu * R_p02 * A_s / (1 + 3 * twist**2) ** 0.5
    return preload
