"""Welds of two plates that differ in thickness or in metal."""

from __future__ import annotations

from speclint import FIRST_PRINCIPLES, formula, require
from speclint.equations import KelvinDifference, Metres, Pascals, PerKelvin, Ratio
from speclint_fabrication.sources import HOBBACHER_OFFSET, UW_9


@formula("d = min(3 mm, t_1/4)", cites=[UW_9], empirical="metres")
def difference_without_taper(t_1: Metres) -> Metres:
    """Difference of thickness up to which two plates are welded without a taper.

    d = min(3 mm, t_1/4)

    ``t_1`` thickness of the thinner plate [m]. Returns [m].

    >>> difference_without_taper(t_1=0.008), difference_without_taper(t_1=0.016)
    (0.002, 0.003)
    """
    return min(0.003, t_1 / 4)


@formula("k_m = 1 + 6 e/t_1 t_1^1.5/(t_1^1.5 + t_2^1.5)", cites=[HOBBACHER_OFFSET])
def offset_factor(e: Metres, t_1: Metres, t_2: Metres) -> Ratio:
    """What the bending of an offset multiplies the stress of a butt weld by.

    k_m = 1 + 6 e/t_1 t_1^1.5/(t_1^1.5 + t_2^1.5)

    ``e`` offset of the middles of both plates, ``t_1`` thickness of the thinner, ``t_2`` of the thicker [m], above 0.
    Returns a ratio. Raises OutOfRange otherwise.

    Hand working, 16 on 25 mm flush on one side, e = 4.5: 1 + 6 × 0.28125 × 64/(64 + 125) = 1.571; e = 1: 1.127.

    >>> [round(offset_factor(e, 0.016, 0.025), 3) for e in (0.0045, 0.001)]
    [1.571, 1.127]
    """
    require(t_1 > 0 * t_2 and t_2 > 0 * t_1, "a thickness must be above 0")
    k: Ratio = 1 + 6 * e / t_1 * t_1**1.5 / (t_1**1.5 + t_2**1.5)
    return k


@formula("e = |t_2 − t_1|/2", cites=[FIRST_PRINCIPLES])
def offset_when_flush(t_1: Metres, t_2: Metres) -> Metres:
    """Offset of the middles of two plates that are flush on one side.

    e = |t_2 − t_1|/2

    ``t_1``, ``t_2`` thicknesses [m]. Returns [m].

    >>> round(offset_when_flush(t_1=0.016, t_2=0.025), 6)
    0.0045
    """
    return abs(t_2 - t_1) / 2


@formula("σ_k = k_m σ", cites=[HOBBACHER_OFFSET])
def stress_with_offset(k_m: Ratio, σ: Pascals) -> Pascals:
    """Stress range of a weld with the bending of its offset.

    σ_k = k_m σ

    ``k_m`` factor of the offset; ``σ`` stress range of plates in line [Pa]. Returns [Pa].

    >>> stress_with_offset(k_m=1.5, σ=20e6)
    30000000.0
    """
    return k_m * σ


@formula("σ = E |α_1 − α_2| |ΔT|/2", cites=[FIRST_PRINCIPLES])
def stress_of_unlike_growth(E: Pascals, α_1: PerKelvin, α_2: PerKelvin, ΔT: KelvinDifference) -> Pascals:
    """Stress beside a weld of two metals that grow unlike, plates of like stiffness.

    σ = E |α_1 − α_2| |ΔT|/2

    ``E`` modulus [Pa]; ``α_1``, ``α_2`` mean expansion of both [1/K]; ``ΔT`` from the temperature at which it is
    free of stress [K]. Returns [Pa].

    Hand working, austenitic on ferritic: 190e9 × 4.5e-6 × 330/2 = 141 MPa.

    >>> round(stress_of_unlike_growth(E=190e9, α_1=16.5e-6, α_2=12.0e-6, ΔT=330.0) / 1e6, 1)
    141.1
    """
    return E * abs(α_1 - α_2) * abs(ΔT) / 2


@formula("Δt = |t_2 − t_1|", cites=[FIRST_PRINCIPLES])
def difference_of_plates(t_1: Metres, t_2: Metres) -> Metres:
    """Difference of the thicknesses of two plates.

    Δt = |t_2 − t_1|

    ``t_1``, ``t_2`` thicknesses [m]. Returns [m].

    >>> round(difference_of_plates(t_1=0.016, t_2=0.025), 6)
    0.009
    """
    return abs(t_2 - t_1)
