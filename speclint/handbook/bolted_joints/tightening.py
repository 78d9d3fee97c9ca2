"""Torque on a nut and the preload it gives.

The short form combines all friction in one coefficient K (0.2 for steel as received, 0.15 lubricated, both
common practice). The long form keeps the thread and the face under the nut apart.

>>> inch, pound = 0.0254, 4.4482216
>>> torque = tightening_torque(F=24_131.5 * pound, K=0.2, d=0.75 * inch)  # Wentzell, Ex. 6.1
>>> round(torque / (pound * inch), 1)
3619.7
"""

from __future__ import annotations

import math

from speclint.equations import (
    FIRST_PRINCIPLES,
    Metres,
    NewtonMetres,
    Newtons,
    NewtonsPerMetre,
    Radians,
    Ratio,
    formula,
    require,
)
from speclint.handbook.tables import SHIGLEY, VDI_2230, WENTZELL

#: Flank angle of a thread: half of 60° metric and Unified, half of 55° Whitworth.
METRIC_FLANK_ANGLE = math.radians(30.0)
WHITWORTH_FLANK_ANGLE = math.radians(27.5)


@formula(
    "T = K F d",
    cites=[
        WENTZELL.at("Ex. 6.1"),
        SHIGLEY.at("eq. 8-27, as reproduced in a public calculation", memory=False),
    ],
)
def tightening_torque(F: Newtons, K: Ratio, d: Metres) -> NewtonMetres:
    """Torque that gives a preload, by the short form.

    F: preload, N. K: torque coefficient, greater than 0. d: nominal diameter, m. Returns N·m.
    """
    require(K > 0, f"torque coefficient {K:.3g} is not above 0")
    return K * F * d


@formula(
    "F = T/(K d)",
    cites=[
        WENTZELL.at("Ex. 6.1"),
        SHIGLEY.at("eq. 8-27, as reproduced in a public calculation", memory=False),
    ],
)
def preload_from_torque(T: NewtonMetres, K: Ratio, d: Metres) -> Newtons:
    """Preload that a torque gives, by the short form.

    T: tightening torque, N·m. K: torque coefficient, greater than 0. d: nominal diameter, m. Returns N.

    >>> round(preload_from_torque(T=432.0, K=0.18, d=0.020))  # Jindal, Ex. 9-6
    120000
    """
    require(K > 0, f"torque coefficient {K:.3g} is not above 0")
    return T / (K * d)


@formula(
    "F = F_0 + θ P/(2 π (1/k_b + 1/k_m))",
    cites=[VDI_2230.at("angle controlled tightening"), FIRST_PRINCIPLES],
)
def preload_from_angle(
    F_0: Newtons, theta: Radians, P: Metres, k_b: NewtonsPerMetre, k_m: NewtonsPerMetre
) -> Newtons:
    """Preload after a nut drawn snug is turned by an angle, stud and parts elastic.

    F = F_0 + θ P/(2 π (1/k_b + 1/k_m))

    F_0: preload when snug, N. theta: angle by which the nut is then turned, rad. P: pitch, m. k_b, k_m: stiffness of
    the stud with its ends and of what it clamps, N/m. Returns N; above the yield of the stud it has less.

    Hand working, 60° of 3 mm on springs of 0.5 and 1 MN/mm: 0.5 mm on 3 nm/N are 166 667 N, and 10 kN before.

    >>> round(preload_from_angle(F_0=10e3, theta=math.pi / 3, P=0.003, k_b=0.5e9, k_m=1e9))
    176667
    """
    return F_0 + theta * P / (2 * math.pi * (1 / k_b + 1 / k_m))


@formula("M_t = F d_2/2 (P + π μ_t d_2/cos α)/(π d_2 − μ_t P/cos α)", cites=[SHIGLEY.at("eqs. 8-1, 8-5")])
def thread_torque(F: Newtons, P: Metres, d_2: Metres, mu_t: Ratio, alpha: Radians) -> NewtonMetres:
    """Torque that the thread takes while the nut is turned: the part that twists the stud.

    F: preload, N. P: pitch (lead of a single thread), m. d_2: pitch diameter, m. mu_t: friction in the
    thread. alpha: flank angle, rad (30° metric, 27.5° Whitworth). Returns N·m.

    >>> round(thread_torque(F=6400.0, P=0.008, d_2=0.030, mu_t=0.08, alpha=0.0), 2)  # Shigley, Ex. 8-1
    15.94
    """
    friction = mu_t / math.cos(alpha)
    away = math.pi * d_2 - friction * P
    require(away > 0 * d_2, f"thread friction {mu_t:.3g} locks the thread at this pitch")
    return F * d_2 / 2 * (P + math.pi * friction * d_2) / away


@formula("M_h = μ_h F D_h/2", cites=[SHIGLEY.at("eq. 8-6")])
def bearing_torque(F: Newtons, mu_h: Ratio, D_h: Metres) -> NewtonMetres:
    """Friction torque under the nut or the head.

    F: preload, N. mu_h: friction there. D_h: mean diameter of the bearing face, m. Returns N·m.

    >>> round(bearing_torque(F=6400.0, mu_h=0.08, D_h=0.040), 2)  # Shigley, Ex. 8-1
    10.24
    """
    return mu_h * F * D_h / 2


@formula("D_h = (D_w + d_h)/2", cites=[VDI_2230.at("eq. R8/4")])
def mean_bearing_diameter(D_w: Metres, d_h: Metres) -> Metres:
    """Mean diameter of the face under a nut.

    D_w: outside of the face, m. d_h: hole, m. Returns m.

    >>> mean_bearing_diameter(D_w=0.030, d_h=0.022)
    0.026
    """
    return (D_w + d_h) / 2


@formula(
    "T = F d_2/2 (P + π μ_t d_2/cos α)/(π d_2 − μ_t P/cos α) + μ_h F D_h/2", cites=[SHIGLEY.at("eq. 8-26")]
)
def tightening_torque_with_friction(
    F: Newtons, P: Metres, d_2: Metres, mu_t: Ratio, alpha: Radians, mu_h: Ratio, D_h: Metres
) -> NewtonMetres:
    """Torque on the nut that gives a preload, by the long form.

    Arguments as ``thread_torque`` and ``bearing_torque``. Returns N·m.

    Published check, Shigley, Ex. 8-1:

    >>> round(tightening_torque_with_friction(6400.0, 0.008, 0.030, 0.08, 0.0, 0.08, 0.040), 2)
    26.18
    """
    return thread_torque(F, P, d_2, mu_t, alpha) + bearing_torque(F, mu_h, D_h)


@formula(
    "F = T/(d_2/2 (P + π μ_t d_2/cos α)/(π d_2 − μ_t P/cos α) + μ_h D_h/2)",
    cites=[SHIGLEY.at("eq. 8-26, solved for the preload")],
)
def preload_with_friction(
    T: NewtonMetres, P: Metres, d_2: Metres, mu_t: Ratio, alpha: Radians, mu_h: Ratio, D_h: Metres
) -> Newtons:
    """Preload that a torque on the nut gives, by the long form.

    T: torque, N·m. Other arguments as ``thread_torque`` and ``bearing_torque``. Returns N.

    Published check, Shigley, Ex. 8-1 in reverse, 6.4 kN:

    >>> round(preload_with_friction(26.18, 0.008, 0.030, 0.08, 0.0, 0.08, 0.040) / 1e3, 1)
    6.4
    """
    arm = thread_torque(1.0, P, d_2, mu_t, alpha) + bearing_torque(1.0, mu_h, D_h)
    return T / arm


@formula("K = T/(F d)", cites=[FIRST_PRINCIPLES])
def torque_coefficient(T: NewtonMetres, F: Newtons, d: Metres) -> Ratio:
    """Coefficient K of the short form that a measured torque and preload show.

    T: torque, N·m. F: preload, N. d: nominal diameter, m. Returns a ratio.
    """
    return T / (F * d)
