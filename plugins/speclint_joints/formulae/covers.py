"""Bending of a cover between its studs and its joint."""

from __future__ import annotations

import math

from speclint import FIRST_PRINCIPLES, formula, require
from speclint.equations import Metres, Newtons, Pascals, Ratio
from speclint_joints.sources import ASME_APPENDIX_2, GOODMAN


@formula("h_G = (D_b − G)/2", cites=[ASME_APPENDIX_2.at("definition of h_G")])
def gasket_lever(D_b: Metres, G: Metres) -> Metres:
    """Lever arm from the stud circle to the reaction circle of the joint.

    h_G = (D_b − G)/2

    D_b: stud circle, m, wider than G. G: reaction diameter of gasket or ground face, m. Returns m.

    >>> round(gasket_lever(D_b=0.620, G=0.560), 3)
    0.03
    """
    require(D_b > G, f"the stud circle, {D_b * 1e3:.4g} mm, is not outside the joint, {G * 1e3:.4g} mm")
    return (D_b - G) / 2


@formula("σ = 6 W h_G/(π G t²)", cites=[FIRST_PRINCIPLES])
def flange_bending_stress(W: Newtons, h_G: Metres, G: Metres, t: Metres) -> Pascals:
    """Bending stress of a flange at the joint, taken as a straight strip.

    σ = 6 W h_G/(π G t²)

    W: load of all studs, N. h_G: lever, m. G: reaction diameter, m. t: thickness of the flange, m. Returns Pa.
    The code's 1.9 W h_G/(S G t²) is the same, 6/π being 1.91.

    Hand working: 1.2 MN at 30 mm round 500 mm, 45 mm thick: 6 × 36e6/(π × 500 × 2025) = 67.91 MPa.

    >>> round(flange_bending_stress(W=1.2e6, h_G=0.030, G=0.500, t=0.045) / 1e6, 2)
    67.91
    """
    return 6 * W * h_G / (math.pi * G * t**2)


@formula("n = 2/(σ/S_e + σ/R_m)", cites=[GOODMAN])
def factor_from_zero(σ: Pascals, S_e: Pascals, R_m: Pascals) -> Ratio:
    """Factor against fatigue of a stress that comes and goes, after Goodman: half of it alternates, half stays.

    n = 2/(σ/S_e + σ/R_m)

    ``σ`` greatest stress [Pa], above 0; ``S_e`` endurance when the stress is reversed [Pa]; ``R_m`` tensile strength
    [Pa]. Returns a ratio. Raises OutOfRange unless σ is above 0.

    Hand working: 2/(80/100 + 80/400) = 2.

    >>> factor_from_zero(σ=80e6, S_e=100e6, R_m=400e6)
    2.0
    """
    require(σ > 0, "a plate without stress does not tire")
    return 2 / (σ / S_e + σ / R_m)
