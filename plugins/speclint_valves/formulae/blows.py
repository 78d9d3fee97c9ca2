"""Stress that comes back at every turn in the wall of a valve: of the steam and of its blow on the seat."""

from __future__ import annotations

import math

from speclint import FIRST_PRINCIPLES, formula, require
from speclint.equations import Kilograms, KilogramsPerCubicMetre, Metres, MetresPerSecond, Pascals, Ratio
from speclint_valves.sources import WAVE_IN_BAR

#: Of the wave of landing thrown back by a mass, and what a great mass has beyond the root of its share.
_AT_ONCE, _BEYOND_ROOT = 3.0, 1.45


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


@formula("c = max(3, 1.45 + √((m_v + m_s)/m_w))", cites=[WAVE_IN_BAR])
def factor_of_mass_behind(m_v: Kilograms, m_s: Kilograms, m_w: Kilograms) -> Ratio:
    """How many times the stress of a plain bar one has that lands with a mass behind it.

    c = max(3, 1.45 + √((m_v + m_s)/m_w))

    ``m_v`` and ``m_s`` masses behind the bar, of valve and spindle, ``m_w`` its own [kg]. Returns [-].
    Raises OutOfRange unless m_w is above 0 and the others are not below it.

    The wave of landing runs up to the mass, is thrown back there, and meets its own end at the seat: 3 times at once,
    more as a great mass goes on. This is a bound of that, worked wave by wave: at most 7 % above it from a tenth of the
    bar's mass to a hundred times that (tests/plugins/valves/test_blows.py). Of a bar at rest that is struck, the cited
    work has about 1 + √(M/m).

    >>> factor_of_mass_behind(m_v=3.0, m_s=1.0, m_w=1.0)
    3.45
    """
    require(m_w > 0 and min(m_v, m_s) >= 0, "a wall has a mass, and what is behind it none below nothing")
    late: float = _BEYOND_ROOT + ((m_v + m_s) / m_w) ** 0.5
    return max(_AT_ONCE, late)


@formula("σ_v = c v √(E ρ)", cites=[WAVE_IN_BAR])
def stress_of_blow(c: Ratio, v: MetresPerSecond, E: Pascals, ρ: KilogramsPerCubicMetre) -> Pascals:
    """Stress in a bar that strikes what does not give.

    σ_v = c v √(E ρ)

    ``c`` factor of a mass behind it, 1 of a plain bar; ``v`` speed [m/s]; ``E`` modulus [Pa]; ``ρ`` density [kg/m³].
    Returns [Pa]. Raises OutOfRange unless E and ρ are above 0. A seat that gives, and the other beat, make it less.

    Hand working, steel at 1 m/s: √(200e9 × 7850) = 39.623e6, 3 times 118.87 MPa.

    >>> round(stress_of_blow(c=3.0, v=1.0, E=200e9, ρ=7850.0) / 1e6, 2)
    118.87
    """
    require(E > 0 and ρ > 0, "modulus and density must be above 0")
    stress: float = c * v * (E * ρ) ** 0.5
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

    ``k`` share of its tensile strength that it bears reversed for good; ``R_m`` tensile strength [Pa]; ``K`` factor of
    the notch, ``x`` factor of safety [-]. Returns [Pa]. Raises OutOfRange unless K and x are above 0.

    Hand working: 0.3 × 600/(2 × 1.5) = 60 MPa.

    >>> amplitude_allowed(k=0.3, R_m=600e6, K=2.0, x=1.5)
    60000000.0
    """
    require(K > 0 and x > 0, "the factors must be above 0")
    return k * R_m / (K * x)
