"""The bench worked by hand, in newtons and millimetres, without a line of the code that it checks.

Springs after Shigley, section 8-5, and VDI 2230, section 5.1.1.1: stud of 30 mm shank (24 mm) and 30 mm thread
between 0.4 d in the nut and 0.33 d in the block, half a diameter of core at each end; parts of 62 mm of one modulus
(50 mm of cover and d/2 of block) under a 36 mm face with a 26 mm hole, as two cones of 30°; the gasket's share.
"""

from __future__ import annotations

import math

E = 200e3
D, D_2, D_3, P = 24.0, 22.0514, 20.3194, 3.0
A_S = math.pi / 4 * ((D_2 + D_3) / 2) ** 2
A_3 = math.pi / 4 * D_3**2
A_N = math.pi / 4 * D**2
N = 20


def stud() -> float:
    """Stiffness of the stud with its ends, N/mm."""
    free = 30 / A_N + 30 / A_S
    ends = 2 * 0.5 * D / A_3 + (0.4 + 0.33) * D / A_N
    return E / (free + ends)


def parts(gasket: bool = True) -> float:
    """Stiffness of what a stud clamps, N/mm; Shigley, eq. 8-22, with the hole for the bolt."""
    tan = math.tan(math.radians(30))
    inside = (62 * tan + 36 - 26) * (36 + 26) / ((62 * tan + 36 + 26) * (36 - 26))
    metal = math.pi * E * 26 * tan / (2 * math.log(inside))
    seal = 1500 * math.pi / 4 * (636**2 - 604**2) / (N * 1.2)
    return 1 / (1 / metal + 1 / seal) if gasket else metal


def give(gasket: bool = True) -> float:
    """Give of stud and parts together, mm/N."""
    return 1 / stud() + 1 / parts(gasket)


def share(gasket: bool = True) -> float:
    """Load factor."""
    return stud() / (stud() + parts(gasket))


def settled(mean: float = 100e3, scatter: float = 0.3, gasket: bool = True) -> float:
    """Least preload cold: 8.5 µm embedding (3 + 2.5 + 2 × 1.5, VDI 2230 Table 5.4/1) and a tenth of creep, N."""
    return (mean * (1 - scatter) - 8.5e-3 / give(gasket)) * 0.9


def heated(cold: float, gasket: bool = True, rise: float = 180.0) -> float:
    """The same all at one temperature: the 8.8 mm of block grow 2.5e-6/K less than the stud, N."""
    return cold - 8.8 * 2.5e-6 * rise / give(gasket)


#: Basic width 8 mm is 0.31496 in: b = 0.5 √0.31496 in = 7.1274 mm, G = 636 - 2 b.
B = 0.5 * math.sqrt(8 / 25.4) * 25.4
G = 636 - 2 * B


def lift(p: float = 1.6, circle: float = G) -> float:
    """Load of the pressure on one stud, N; p in MPa."""
    return math.pi / 4 * circle**2 * p / N


def gasket_needs(p: float = 1.6) -> float:
    """Operating load of the gasket, m = 2, N."""
    return math.pi / 4 * G**2 * p + 2 * math.pi * B * G * 2 * p


def friction(coefficient: float) -> float:
    """Friction, the same in thread and under the nut, mean face 31 mm."""
    return (coefficient * D - P / (2 * math.pi)) / (D_2 / (2 * math.cos(math.radians(30))) + 31 / 2)


def twist(load: float, mu: float) -> float:
    """Elastic shear of the tightening torsion, MPa."""
    on_flank = mu / math.cos(math.radians(30))
    torque = load * D_2 / 2 * (P + math.pi * on_flank * D_2) / (math.pi * D_2 - on_flank * P)
    across = math.sqrt(4 * A_S / math.pi)
    return 16 * torque / (math.pi * across**3)
