"""Stress that comes back at every turn in the wall of a valve: of the steam and of its blow on the seat."""

from __future__ import annotations

from speclint import FIRST_PRINCIPLES, formula, require
from speclint.equations import KilogramsPerCubicMetre, MetresPerSecond, Pascals, Ratio
from speclint_valves.sources import WAVE_IN_BAR


@formula("σ_v = v √(E ρ)", cites=[WAVE_IN_BAR])
def stress_of_blow(v: MetresPerSecond, E: Pascals, ρ: KilogramsPerCubicMetre) -> Pascals:
    """Stress of the wave in a bar that strikes what does not give.

    σ_v = v √(E ρ)

    ``v`` speed [m/s]; ``E`` modulus [Pa]; ``ρ`` density [kg/m³]. Returns [Pa]. Raises OutOfRange unless E and ρ are
    above 0. A seat that gives, and faces that meet one after another, make it less.

    Hand working, steel at 1 m/s: √(200e9 × 7850) = 39.623e6.

    >>> round(stress_of_blow(v=1.0, E=200e9, ρ=7850.0) / 1e6, 3)
    39.623
    """
    require(E > 0 and ρ > 0, "modulus and density must be above 0")
    stress: float = v * (E * ρ) ** 0.5
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
