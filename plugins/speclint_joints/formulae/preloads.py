"""Preload of a stud after embedding and creep, torsion, and permitted stress."""

from __future__ import annotations

import math

from speclint import FIRST_PRINCIPLES, formula, require
from speclint.equations import Metres, Newtons, Pascals, Radians, Ratio, SquareMetres
from speclint_joints.sources import VDI_2230, VDI_TORSION


@formula("F_left = max(F − F_Z, 0) (1 − r)", cites=[VDI_2230.at("section 5.4.2"), FIRST_PRINCIPLES])
def preload_left(F: Newtons, F_Z: Newtons, r: Ratio) -> Newtons:
    """Preload left after embedding and creep.

    F_left = max(F − F_Z, 0) (1 − r)

    F: preload as tightened, N. F_Z: preload lost by embedding, N. r: share lost by creep of gasket and stud, 0 to 1.
    Returns N; zero where embedding takes all of it.

    >>> round(preload_left(F=80e3, F_Z=5e3, r=0.1))
    67500
    """
    require(0 <= r <= 1, f"relaxation {r:.3g} is not from 0 to 1")
    left = F - F_Z
    return left * (1 - r) if left > 0 * F else 0 * F


@formula(
    "μ = (K d − P/(2 π))/(d_2/(2 cos α) + D_h/2)",
    cites=[VDI_2230.at("eq. R13/1, the two frictions alike")],
)
def friction_of_coefficient(
    K: Ratio, d: Metres, P: Metres, d_2: Metres, alpha: Radians, D_h: Metres
) -> Ratio:
    """Coefficient of friction, the same in the thread and under the nut, that a torque coefficient implies.

    K: torque coefficient. d: nominal diameter, m. P: pitch, m. d_2: pitch diameter, m. alpha: flank angle,
    rad. D_h: mean diameter of the face under the nut, m. Returns a ratio. Raises OutOfRange where the torque is not
    more than the pitch of the thread alone needs.

    Hand working, M24 on a 31 mm face: (0.16 × 24 - 3/2π)/(22.051/(2 cos 30°) + 15.5) = 3.3625/28.231.

    >>> round(friction_of_coefficient(0.16, 0.024, 0.003, 0.022051, math.radians(30), 0.031), 4)
    0.1191
    """
    mu = (K * d - P / (2 * math.pi)) / (d_2 / (2 * math.cos(alpha)) + D_h / 2)
    require(mu > 0, f"torque coefficient {K:.3g} leaves nothing for friction")
    return mu


@formula("F_max = ν R_p02 A_s", cites=[FIRST_PRINCIPLES])
def preload_without_torsion(nu: Ratio, R_p02: Pascals, A_s: SquareMetres) -> Newtons:
    """Preload that brings a stud tightened without torsion to a share of its proof strength.

    F_max = ν R_p02 A_s

    nu: share of proof strength. R_p02: least 0.2 % proof strength, Pa. A_s: stress area, m². Returns N.

    >>> round(preload_without_torsion(nu=0.9, R_p02=600e6, A_s=353e-6))  # hand: 540 × 353
    190620
    """
    return nu * R_p02 * A_s


@formula("τ = k τ_0", cites=[VDI_TORSION])
def torsion_in_service(k: Ratio, tau_0: Pascals) -> Pascals:
    """Torsional shear stress that remains in service after tightening.

    τ = k τ_0

    k: share left. tau_0: shear stress during tightening, Pa. Returns Pa.

    >>> torsion_in_service(k=0.5, tau_0=120e6)
    60000000.0
    """
    return k * tau_0


@formula("F_share = ν F", cites=[FIRST_PRINCIPLES])
def share_of_load(nu: Ratio, F: Newtons) -> Newtons:
    """Share of the preload cold.

    F_share = ν F

    nu: share. F: least preload cold, N. Returns N.

    >>> share_of_load(nu=0.5, F=60e3)
    30000.0
    """
    return nu * F


@formula("F_m = R_m A_s", cites=[FIRST_PRINCIPLES])
def breaking_load(R_m: Pascals, A_s: SquareMetres) -> Newtons:
    """Load that breaks a stud.

    F_m = R_m A_s

    R_m: tensile strength, Pa. A_s: stress area, m². Returns N.

    Published check, ISO 898-1, M20 of class 8.8: 203 kN.

    >>> round(breaking_load(R_m=830e6, A_s=245e-6) / 1e3)
    203
    """
    return R_m * A_s


@formula("F_mean = F_i + Φ (P_high + P_low)/2", cites=[VDI_2230.at("section 5.5.3")])
def mean_stud_load(F_i: Newtons, Phi: Ratio, P_high: Newtons, P_low: Newtons) -> Newtons:
    """Mean load of a stud under the cyclic working load.

    F_mean = F_i + Φ (P_high + P_low)/2

    F_i: preload, N. Phi: load factor. P_high, P_low: greatest and least working load per stud, N. Returns N.

    >>> mean_stud_load(F_i=100e3, Phi=0.25, P_high=24e3, P_low=0.0)  # hand: 100 + 3
    103000.0
    """
    return F_i + Phi * (P_high + P_low) / 2


@formula("σ_A = σ/S", cites=[VDI_2230.at("section 5.5.3")])
def endurance_with_factor(sigma: Pascals, S: Ratio) -> Pascals:
    """Permitted stress amplitude: the endurance limit of the thread over its factor.

    σ_A = σ/S

    sigma: endurance limit, Pa. S: factor, above 0. Returns Pa.

    >>> round(endurance_with_factor(sigma=48e6, S=1.2))
    40000000
    """
    require(S > 0, f"a factor of {S:.3g} against fatigue is not above 0")
    return sigma / S
