"""Springs of a bolted joint: the stud, the parts it clamps, a gasket, and the load factor they make.

The clamped parts are taken as two cones of pressure that meet in the middle of the grip. A half angle of
30° fits plates best (Shigley); the older workshop figure of 45° (after Rötscher) makes the parts stiffer and
the share of the stud smaller, so it is the less cautious for the stud and the more cautious for the face.
"""

from __future__ import annotations

import math

from speclint.equations import (
    FIRST_PRINCIPLES,
    Metres,
    NewtonsPerMetre,
    Pascals,
    Radians,
    Ratio,
    SquareMetres,
    formula,
    require,
)
from speclint.handbook.tables import JINDAL, SHIGLEY, VDI_2230

#: Half angle of the cone of pressure: Shigley, section 8-5 (from memory).
CONE_30 = math.radians(30.0)
#: Half angle of the cone of pressure: Jindal, Ex. 9-4, after Rötscher.
CONE_45 = math.radians(45.0)
#: Length of engaged thread that deflects, over diameter: nut, tapped hole (VDI 2230, 5.1.1.1, from memory).
GIVE_OF_NUT = 0.4
GIVE_OF_TAPPED_HOLE = 0.33


@formula("k = E A/L", cites=[FIRST_PRINCIPLES])
def bar_stiffness(E: Pascals, A: SquareMetres, L: Metres) -> NewtonsPerMetre:
    """Stiffness along its axis of a bar, a length of stud, a sleeve or a flat gasket.

    E: modulus, Pa. A: area, m². L: length (thickness of a gasket), m. Returns N/m.
    """
    return E * A / L


@formula("k = 1/(1/k_1 + 1/k_2)", cites=[FIRST_PRINCIPLES])
def stiffness_in_series(k_1: NewtonsPerMetre, k_2: NewtonsPerMetre) -> NewtonsPerMetre:
    """Stiffness of two springs in series.

    k_1, k_2: stiffnesses, N/m. Returns N/m.
    """
    return 1 / (1 / k_1 + 1 / k_2)


@formula("k_b = E A_d A_t/(A_d l_t + A_t l_d)", cites=[SHIGLEY.at("eq. 8-17")])
def stud_stiffness(
    E: Pascals, A_d: SquareMetres, l_d: Metres, A_t: SquareMetres, l_t: Metres
) -> NewtonsPerMetre:
    """Stiffness of a stud with a plain or reduced shank and a length of free thread, within the grip.

    E: modulus, Pa. A_d: area of shank, m². l_d: length of shank, m. A_t: stress area, m². l_t: length of
    thread in the grip, m. Returns N/m.

    Published check, Shigley, Ex. 8-2 (1/2-20, shank 0.25 in, thread 1.095 in), 3.69 Mlbf/in:

    >>> square_inch, inch, pound = 0.0254**2, 0.0254, 4.4482216
    >>> k = stud_stiffness(206.84e9, 0.1963 * square_inch, 0.25 * inch, 0.1599 * square_inch, 1.095 * inch)
    >>> round(k * inch / pound / 1e6, 2)
    3.69
    """
    return E * A_d * A_t / (A_d * l_t + A_t * l_d)


@formula("k_e = 1/(0.5 d/(E A_3) + x d/(E_n A_N)), A_N = π d²/4", cites=[VDI_2230.at("section 5.1.1.1")])
def engaged_thread_stiffness(
    E: Pascals, E_n: Pascals, d: Metres, A_3: SquareMetres, x: Ratio
) -> NewtonsPerMetre:
    """Stiffness of the engaged length of a stud with its nut or tapped hole, in series with the free stud.

    E: modulus of the stud, Pa. E_n: modulus of nut or block, Pa. d: nominal diameter, m. A_3: core area, m².
    x: ``GIVE_OF_NUT`` or ``GIVE_OF_TAPPED_HOLE``. Returns N/m.
    """
    A_N = math.pi * d**2 / 4
    return 1 / (d / (2 * E * A_3) + x * d / (E_n * A_N))


@formula(
    "k = π E d tan α/ln((2 t tan α + D − d)(D + d)/((2 t tan α + D + d)(D − d)))",
    cites=[SHIGLEY.at("eq. 8-19")],
)
def frustum_stiffness(E: Pascals, d: Metres, D: Metres, t: Metres, alpha: Radians) -> NewtonsPerMetre:
    """Stiffness of one cone of pressure through one part.

    E: modulus, Pa. d: hole (Shigley takes the bolt), m. D: diameter at the narrow end, m, more than d.
    t: thickness, m, above 0. alpha: half angle, rad, between 0 and 90°. Returns N/m.
    Raises OutOfRange outside, and unless d is above 0.

    Published check, Shigley, Ex. 8-2, upper steel cone, 30.80 Mlbf/in:

    >>> inch, pound = 0.0254, 4.4482216
    >>> k = frustum_stiffness(206.843e9, 0.5 * inch, 0.75 * inch, 0.595 * inch, CONE_30)
    >>> round(k * inch / pound / 1e6, 1)
    30.8
    """
    require(d < D, f"the face under the nut, {D * 1e3:.4g} mm, is not larger than the hole, {d * 1e3:.4g} mm")
    require(0 < alpha < math.pi / 2, f"half angle {alpha:.3g} rad of the cone is not between 0 and 90°")
    require(d > 0 * d, f"hole of {d * 1e3:.4g} mm is not above 0")
    require(t > 0 * t, f"thickness {t * 1e3:.4g} mm is not above 0")
    spread = 2 * t * math.tan(alpha)
    ratio = (spread + D - d) * (D + d) / ((spread + D + d) * (D - d))
    return math.pi * E * d * math.tan(alpha) / math.log(ratio)


@formula("k_m = k(E, d, D, L/2, α)/2", cites=[SHIGLEY.at("eq. 8-21"), JINDAL.at("Ex. 9-4")])
def member_stiffness(E: Pascals, d: Metres, D: Metres, L: Metres, alpha: Radians) -> NewtonsPerMetre:
    """Stiffness of clamped parts of one modulus: two equal cones of pressure in series.

    E: modulus, Pa. d: hole (or bolt), m. D: face under nut, m. L: grip, m. alpha: half angle, rad.
    Returns N/m. A flange narrower than the widest cone, D + L tan α, is softer than this says.

    Published check, Shigley, Ex. 8-2, both parts steel, 14.64 Mlbf/in:

    >>> inch, pound = 0.0254, 4.4482216
    >>> k = member_stiffness(206.843e9, 0.5 * inch, 0.75 * inch, 1.345 * inch, CONE_30)
    >>> round(k * inch / pound / 1e6, 2)
    14.64
    """
    return frustum_stiffness(E, d, D, L / 2, alpha) / 2


@formula("Φ = k_b/(k_b + k_m)", cites=[SHIGLEY.at("section 8-7"), JINDAL.at("Ex. 9-4")])
def load_factor(k_b: NewtonsPerMetre, k_m: NewtonsPerMetre) -> Ratio:
    """Share of a working load that comes on the stud while the joint stays shut.

    k_b: stiffness of the stud, N/m. k_m: stiffness of what it clamps, N/m. Returns a ratio from 0 to 1.
    The load is taken to enter under the nut; where it enters nearer the joint face the stud takes less.

    >>> round(load_factor(k_b=6.50, k_m=13.8), 3)  # Shigley, Ex. 8-3
    0.32
    """
    return k_b / (k_b + k_m)


@formula("Φ_n = n Φ", cites=[VDI_2230.at("section 5.3, load introduction factor")])
def load_factor_at(n: Ratio, Phi: Ratio) -> Ratio:
    """Share of a working load that comes on the stud where the load enters the parts nearer their joint.

    Φ_n = n Φ

    n: load introduction factor, 1 where the load enters under nut and head, 0 where it enters at the joint face.
    Phi: ``load_factor``. Returns a ratio. A smaller factor spares the stud and unloads the joint face more.

    >>> round(load_factor_at(n=0.7, Phi=0.1307), 5)
    0.09149
    """
    require(0 <= n <= 1, f"load introduction factor {n:.3g} is not from 0 to 1")
    return n * Phi
