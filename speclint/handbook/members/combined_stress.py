"""A direct stress, and one shear taken together with it.

>>> round(equivalent_stress(sigma=60.0, tau=40.0), 2), greatest_shear(sigma=60.0, tau=40.0)
(91.65, 50.0)
"""

from __future__ import annotations

from speclint.equations import (
    FIRST_PRINCIPLES,
    NewtonMetres,
    Newtons,
    Pascals,
    Ratio,
    SquareMetres,
    formula,
    require,
)
from speclint.handbook.tables import KHURMI, SHIGLEY


@formula("σ = F/A", cites=[FIRST_PRINCIPLES])
def direct_stress(F: Newtons, A: SquareMetres) -> Pascals:
    """Mean stress of the area that carries a load.

    F: load, along the axis of a section or across the area that it shears or presses, N. A: area that carries the load,
    m². Returns Pa. OutOfRange unless A is above 0.

    >>> direct_stress(F=320e3, A=0.004) / 1e6
    80.0
    """
    require(A > 0 * A, "the area of the section must be above 0")
    return F / A


@formula("σ_eq = √(σ² + 3 τ²)", cites=[SHIGLEY.at("eq. 5-15")])
def equivalent_stress(sigma: Pascals, tau: Pascals) -> Pascals:
    """Direct stress that is as severe as both, by distortion energy.

    sigma: direct stress, Pa. tau: shear, Pa. Returns Pa. For ductile metals.
    """
    stress: float = (sigma**2 + 3 * tau**2) ** 0.5
    return stress


@formula("τ_max = √((σ/2)² + τ²)", cites=[SHIGLEY.at("eq. 3-14")])
def greatest_shear(sigma: Pascals, tau: Pascals) -> Pascals:
    """Greatest shear in the plane of both, after Mohr.

    sigma: direct stress, Pa. tau: shear, Pa. Returns Pa.
    """
    stress: float = (sigma**2 / 4 + tau**2) ** 0.5
    return stress


@formula("σ_1 = σ/2 + √((σ/2)² + τ²)", cites=[SHIGLEY.at("eq. 3-13")])
def greatest_tension(sigma: Pascals, tau: Pascals) -> Pascals:
    """Greatest principal stress, which counts for brittle iron.

    sigma: direct stress, Pa. tau: shear, Pa. Returns Pa.

    >>> greatest_tension(sigma=60.0, tau=40.0)  # hand: 30 + 50
    80.0
    """
    return sigma / 2 + greatest_shear(sigma, tau)


@formula("T_e = √(M² + T²)", cites=[KHURMI.at("shafts, maximum shear stress theory", memory=True)])
def equivalent_torque(M: NewtonMetres, T: NewtonMetres) -> NewtonMetres:
    """Torque that alone would make the same greatest shear in a round shaft.

    M: bending moment, N·m. T: torque, N·m. Returns N·m.

    >>> equivalent_torque(M=3.0, T=4.0)
    5.0
    """
    torque: float = (M**2 + T**2) ** 0.5
    return torque


@formula("M_e = (M + √(M² + T²))/2", cites=[KHURMI.at("shafts, maximum normal stress theory", memory=True)])
def equivalent_bending_moment(M: NewtonMetres, T: NewtonMetres) -> NewtonMetres:
    """Bending moment that alone would make the same greatest tension in a round shaft.

    M: bending moment, N·m. T: torque, N·m. Returns N·m.

    >>> equivalent_bending_moment(M=3.0, T=4.0)
    4.0
    """
    return (M + equivalent_torque(M, T)) / 2


@formula("Δσ = k σ", cites=[FIRST_PRINCIPLES])
def range_of_stress(k: Ratio, σ: Pascals) -> Pascals:
    """Range of a stress that comes and goes, or reverses.

    Δσ = k σ

    ``k`` 2 where it reverses, 1 where it comes and goes, times what raises it at a notch; ``σ`` greatest
    stress [Pa]. Returns [Pa].

    >>> range_of_stress(k=2, σ=36e6)
    72000000.0
    """
    return k * σ
