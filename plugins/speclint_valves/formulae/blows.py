"""Stress that comes back at every turn in the wall of a valve: of the steam and of its blow on the seat."""

from __future__ import annotations

import math

from speclint import FIRST_PRINCIPLES, formula, require
from speclint.equations import Kilograms, KilogramsPerCubicMetre, Metres, MetresPerSecond, Pascals, Ratio
from speclint_valves.sources import WAVE_IN_BAR


@formula("m_w = ρ π (D − t) t L", cites=[FIRST_PRINCIPLES])
def mass_of_wall(ρ: KilogramsPerCubicMetre, D: Metres, t: Metres, L: Metres) -> Kilograms:
    """Mass of a round wall.

    m_w = ρ π (D − t) t L

    ``ρ`` density [kg/m³]; ``D`` outside, ``t`` thickness, ``L`` length [m]. Returns [kg].
    Raises OutOfRange unless 0 < 2 t < D.

    Hand working: 8000 × π × 95 mm × 5 mm × 50 mm = 0.5969 kg.

    >>> round(mass_of_wall(ρ=8000.0, D=0.1, t=0.005, L=0.05), 4)
    0.5969
    """
    require(t > 0 and 2 * t < D, f"a wall of {t * 1e3:.4g} mm is not that of a ring of {D * 1e3:.4g} mm")
    return ρ * math.pi * (D - t) * t * L


@formula("σ_v = v √(E ρ) (1 + √((m_v + m_s)/m_w))", cites=[WAVE_IN_BAR])
def stress_of_blow(
    v: MetresPerSecond, E: Pascals, ρ: KilogramsPerCubicMetre, m_v: Kilograms, m_s: Kilograms, m_w: Kilograms
) -> Pascals:
    """Stress in a bar through which a mass strikes what does not give.

    σ_v = v √(E ρ) (1 + √((m_v + m_s)/m_w))

    ``v`` speed [m/s]; ``E`` modulus [Pa]; ``ρ`` density [kg/m³]; ``m_v`` and ``m_s`` masses behind the bar, of valve
    and spindle, ``m_w`` its own [kg]. Returns [Pa]. Raises OutOfRange unless E, ρ and m_w are above 0. A seat that
    gives, and the other beat, make it less.

    Hand working, steel at 1 m/s: √(200e9 × 7850) = 39.623e6; with four times its mass behind it 3 × 39.623 MPa.

    >>> round(stress_of_blow(v=1.0, E=200e9, ρ=7850.0, m_v=3.0, m_s=1.0, m_w=1.0) / 1e6, 2)
    118.87
    """
    require(E > 0 and ρ > 0, "modulus and density must be above 0")
    require(m_w > 0 and m_v + m_s >= 0, "a wall has a mass, and what is behind it none below nothing")
    stress: float = v * (E * ρ) ** 0.5 * (1 + ((m_v + m_s) / m_w) ** 0.5)
    return stress


@formula("σ_a = σ/2 + σ_v", cites=[FIRST_PRINCIPLES])
def amplitude_at_each_turn(sigma: Pascals, sigma_v: Pascals) -> Pascals:
    """Amplitude of a stress that comes and goes once a turn, with that of a blow on top.

    σ_a = σ/2 + σ_v

    ``sigma`` stress of the steam, which falls to nothing; ``sigma_v`` of the blow [Pa]. Returns [Pa].

    >>> amplitude_at_each_turn(sigma=20e6, sigma_v=15e6)
    25000000.0
    """
    return sigma / 2 + sigma_v


@formula("σ_n = k R_m/(K x)", cites=[FIRST_PRINCIPLES])
def amplitude_allowed(k: Ratio, R_m: Pascals, K: Ratio, x: Ratio) -> Pascals:
    """Amplitude that metal bears for good beside a notch, over a factor.

    σ_n = k R_m/(K x)

    ``k`` share of its tensile strength that it bears reversed for good; ``R_m`` that strength [Pa]; ``K`` factor of the
    notch, ``x`` factor of safety [-]. Returns [Pa]. Raises OutOfRange unless K and x are above 0.

    Hand working: 0.3 × 600/(2 × 1.5) = 60 MPa.

    >>> amplitude_allowed(k=0.3, R_m=600e6, K=2.0, x=1.5)
    60000000.0
    """
    require(K > 0 and x > 0, "the factors must be above 0")
    return k * R_m / (K * x)
