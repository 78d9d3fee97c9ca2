"""Round shafts: torsion, twist, keyways and fluctuating loads.

>>> inch, pound = 0.0254, 4.4482216
>>> tau = torsion_shear(T=360 * pound * inch, D=0.5 * inch, d=0.0)  # Wentzell, Ex. 3.4: 14 667.7 psi
>>> round(tau * inch**2 / pound, -1)
14670.0
"""

from __future__ import annotations

import math

from speclint.equations import (
    FIRST_PRINCIPLES,
    Metres,
    MetresToTheFourth,
    NewtonMetres,
    Pascals,
    Radians,
    RadiansPerSecond,
    Ratio,
    Source,
    Watts,
    formula,
    require,
)
from speclint.handbook.members.sections import tube_polar_moment
from speclint.handbook.tables import SHIGLEY, SINGH, WENTZELL

MOORE = Source(
    "H. F. Moore, The Effect of Keyways on the Strength of Shafts, University of Illinois Bulletin 42",
    "1910",
    "tests of shafts with keyways",
    memory=True,
)
#: Keyways that Moore tried, over the diameter of the shaft (from memory).
_WIDEST_KEYWAY, _DEEPEST_KEYWAY = 0.5, 0.1875


@formula("T = P/ω", cites=[FIRST_PRINCIPLES])
def torque_of_power(P: Watts, omega: RadiansPerSecond) -> NewtonMetres:
    """Mean torque of a shaft that transmits power.

    P: power, W. omega: speed, rad/s, above 0. Returns N·m. Raises OutOfRange outside.
    """
    require(omega > 0 * omega, "a shaft at rest transmits no power")
    return P / omega


@formula("τ = T D/(2 J), J = π (D⁴ − d⁴)/32", cites=[WENTZELL.at("Ex. 3.4"), FIRST_PRINCIPLES])
def torsion_shear(T: NewtonMetres, D: Metres, d: Metres) -> Pascals:
    """Elastic shear at the surface of a round shaft.

    T: torque, N·m. D: outside, m. d: bore, m (0 if solid). Returns Pa.
    """
    return T * D / (2 * tube_polar_moment(D, d))


@formula("θ = T L/(G J)", cites=[WENTZELL.at("Ex. 3.4"), FIRST_PRINCIPLES])
def twist(T: NewtonMetres, L: Metres, G: Pascals, J: MetresToTheFourth) -> Radians:
    """Angle by which one end of a shaft turns against the other.

    T: torque, N·m. L: length, m. G: shear modulus, Pa. J: polar second moment, m⁴. Returns rad.
    """
    return T * L / (G * J)


@formula("e = 1 − 0.2 w/d − 1.1 h/d", cites=[MOORE])
def keyway_strength_factor(w: Metres, h: Metres, d: Metres) -> Ratio:
    """Elastic strength of a shaft with one keyway over that of the plain shaft, by experiment.

    w: width of keyway, m, to d/2. h: its depth in the shaft, m, to 3 d/16. d: diameter, m. Returns a ratio.

    Published check, Khurmi (from memory): 40 mm shaft, keyway 10 mm wide and 5 mm deep, 0.8125:

    >>> keyway_strength_factor(w=0.010, h=0.005, d=0.040)
    0.8125
    """
    _check_keyway(w, h, d)
    return 1 - 0.2 * w / d - 1.1 * h / d


@formula("k = 1 + 0.4 w/d + 0.7 h/d", cites=[MOORE])
def keyway_twist_factor(w: Metres, h: Metres, d: Metres) -> Ratio:
    """Twist of the length of a shaft that has a keyway over that of the plain shaft, by experiment.

    w: width of keyway, m. h: depth, m. d: diameter, m, limits as ``keyway_strength_factor``. Returns a ratio.

    >>> round(keyway_twist_factor(w=0.010, h=0.005, d=0.040), 4)  # hand: 1 + 0.1 + 0.0875
    1.1875
    """
    _check_keyway(w, h, d)
    return 1 + 0.4 * w / d + 0.7 * h / d


@formula(
    "d = (32 n/(π S_y) √((M_m + M_a S_y/S_e)² + 3/4 (T_m + T_a S_y/S_e)²))^(1/3)",
    cites=[SINGH.at("Ex. 6.2"), SHIGLEY.at("section 7-4")],
)
def shaft_diameter(
    M_m: NewtonMetres,
    M_a: NewtonMetres,
    T_m: NewtonMetres,
    T_a: NewtonMetres,
    S_y: Pascals,
    S_e: Pascals,
    n: Ratio,
) -> Metres:
    """Diameter of a solid shaft under fluctuating bending and torque (Soderberg, distortion energy).

    M_m, T_m: mean bending moment and torque, N·m. M_a, T_a: amplitudes, N·m. S_y: yield strength, Pa.
    S_e: endurance limit of the part, all notch, size and surface factors taken, Pa. n: factor of safety,
    0 or more. Returns m. Raises OutOfRange unless the strengths are above 0.

    Published check, Sadhu Singh, Ex. 6.2, 34.81 mm (the limit of 172.8 MPa is what the print needs):

    >>> round(shaft_diameter(375.0, 125.0, 270.0, 130.0, 400e6, 172.8e6, 2.0) * 1e3, 2)
    34.81
    """
    require(
        S_y > 0 * S_y and S_e > 0 * S_e,
        f"yield strength {S_y / 1e6:.4g} MPa or endurance limit {S_e / 1e6:.4g} MPa is not above 0",
    )
    require(n >= 0, f"factor of safety {n:.4g} is below 0")
    ratio = S_y / S_e
    severity = ((M_m + M_a * ratio) ** 2 + 3 / 4 * (T_m + T_a * ratio) ** 2) ** 0.5
    diameter: float = (32 * n * severity / (math.pi * S_y)) ** (1 / 3)
    return diameter


def _check_keyway(w: Metres, h: Metres, d: Metres) -> None:
    require(0 <= w / d <= _WIDEST_KEYWAY, f"keyway width {w / d:.3g} of the diameter is outside 0 to 0.5")
    require(0 <= h / d <= _DEEPEST_KEYWAY, f"keyway depth {h / d:.3g} of the diameter is outside 0 to 0.1875")
