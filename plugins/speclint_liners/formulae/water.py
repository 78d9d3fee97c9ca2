"""Water in the cylinder: displacement, relief area, setting of relief valves, and the hydraulic test."""

from __future__ import annotations

import math

from speclint import FIRST_PRINCIPLES, formula, require
from speclint.equations import (
    CubicMetresPerSecond,
    KilogramsPerCubicMetre,
    Metres,
    MetresPerSecond,
    Pascals,
    Radians,
    Ratio,
    SquareMetres,
)
from speclint_liners.sources import EN_13445_5


@formula("Q = π d² v/4", cites=[FIRST_PRINCIPLES])
def water_displaced(d: Metres, v: MetresPerSecond) -> CubicMetresPerSecond:
    """Volume flow of water that the piston displaces.

    Q = π d² v/4

    ``d`` bore [m]; ``v`` speed of the piston [m/s]. Returns [m³/s].

    Hand working: 500 mm at 0.53 m/s: 0.19635 × 0.53 = 0.104065 m³/s.

    >>> round(water_displaced(d=0.500, v=0.53), 6)
    0.104065
    """
    return math.pi * d**2 * v / 4


@formula("A = Q/(C √(2 p/ρ))", cites=[FIRST_PRINCIPLES])
def relief_area_wanted(
    Q: CubicMetresPerSecond, C: Ratio, p: Pascals, rho: KilogramsPerCubicMetre
) -> SquareMetres:
    """Relief area required for the displaced water.

    A = Q/(C √(2 p/ρ))

    ``Q`` water displaced [m³/s]; ``C`` coefficient of discharge [-]; ``p`` pressure in the cylinder, gauge [Pa];
    ``rho`` density of the water [kg/m³]. Returns [m²]. Torricelli's law for a liquid that does not flash upstream
    of the valve. Raises OutOfRange unless p and ρ > 0.

    Hand working: 0.1 m³/s, 0.6, 1.8 MPa, 1000 kg/m³: √3600 = 60 m/s; 0.1/36 = 2777.8 mm².

    >>> round(relief_area_wanted(Q=0.1, C=0.6, p=1.8e6, rho=1000.0) * 1e6, 1)
    2777.8
    """
    require(p > 0 * p, f"the relief pressure {p / 1e5:.6g} bar must be above 0")
    require(rho > 0 * rho, f"density {rho:.6g} kg/m³ of the water is not above 0")
    area: float = Q / (C * (2 * p / rho) ** 0.5)
    return area


@formula("A = n min(π d h cos β, π d²/4)", cites=[FIRST_PRINCIPLES])
def relief_area(n: Ratio, d: Metres, h: Metres, beta: Radians) -> SquareMetres:
    """Relief area of the open valves.

    A = n min(π d h cos β, π d²/4)

    ``n`` number of valves [-]; ``d`` seat, ``h`` lift [m]; ``beta`` angle of the seat to a plane square to the axis,
    0 for a flat one [rad]. Returns [m²]. The gap under the valve, which a coned seat narrows, or the bore of the
    seat if that is less. Raises OutOfRange unless 0 ≤ β < 90°.

    Hand working: two of 60 mm lifting 10 mm: flat 2 × π × 600 = 3769.9 mm², at 45° 0.7071 of it, 2665.7 mm².

    >>> round(relief_area(n=2, d=0.060, h=0.010, beta=0.0) * 1e6, 1)
    3769.9
    >>> round(relief_area(n=2, d=0.060, h=0.010, beta=math.radians(45)) * 1e6, 1)
    2665.7

    Lifted 20 mm, more than a quarter of the bore, no more than the bore passes: 2 × π × 60²/4 = 5654.9 mm².

    >>> round(relief_area(n=2, d=0.060, h=0.020, beta=0.0) * 1e6, 1)
    5654.9
    """
    require(
        0 <= beta < math.pi / 2, f"the angle of the seat, {math.degrees(beta):.4g}°, is not from 0 to 90°"
    )
    return n * min(math.pi * d * h * math.cos(beta), math.pi * d**2 / 4)


@formula("p_s = k p", cites=[FIRST_PRINCIPLES])
def pressure_times(k: Ratio, p: Pascals) -> Pascals:
    """Bound on the setting of the relief valves.

    p_s = k p

    ``k`` factor [-]; ``p`` pressure, gauge [Pa]. Returns [Pa].

    >>> round(pressure_times(k=1.1, p=1.6e6))
    1760000
    """
    return k * p


@formula("p_s = p_t/k", cites=[FIRST_PRINCIPLES])
def highest_setting(p_t: Pascals, k: Ratio) -> Pascals:
    """Highest setting of the relief valves that the test pressure covers.

    p_s = p_t/k

    ``p_t`` test pressure, gauge [Pa]; ``k`` factor [-]. Returns [Pa].

    >>> round(highest_setting(p_t=2.75e6, k=1.1))
    2500000
    """
    return p_t / k


@formula("p_t = p max(k, k_T f_20/f_T)", cites=[EN_13445_5])
def wanted_test_pressure(p: Pascals, k: Ratio, k_T: Ratio, f_20: Pascals, f_T: Pascals) -> Pascals:
    """Hydraulic test pressure required by the duty.

    p_t = p max(k, k_T f_20/f_T)

    ``p`` greatest pressure in service, gauge [Pa]; ``k`` least factor, ``k_T`` factor with the strengths [-];
    ``f_20``, ``f_T`` allowable stress at the test's and at the metal's temperature [Pa]. Returns [Pa].
    EN 13445-5 and Annex I of the pressure equipment directive have k = 1.43 and k_T = 1.25.

    Hand working: 16 bar, 1.43, 1.25, 200 and 150 MPa: 1.25 × 4/3 = 1.6667: 26.667 bar.

    >>> round(wanted_test_pressure(p=1.6e6, k=1.43, k_T=1.25, f_20=200e6, f_T=150e6) / 1e5, 3)
    26.667
    """
    return p * max(k, k_T * f_20 / f_T)


@formula("Δp = max(p_1 − q_2, p_2 − q_1, 0)", cites=[FIRST_PRINCIPLES])
def greatest_pressure_across(p_1: Pascals, q_1: Pascals, p_2: Pascals, q_2: Pascals) -> Pascals:
    """The greatest pressure that a wall carries between two spaces whose pressures change.

    Δp = max(p_1 − q_2, p_2 − q_1, 0)

    ``p_1``, ``p_2`` greatest and ``q_1``, ``q_2`` least pressures on its two sides [Pa]. Returns [Pa]. The greatest
    of one side meets the least of the other at some moment; two greatest never cancel.

    Hand working: a cylinder from 0.35 to 16.6 bar beside a chest from 0 to 16.6 bar: 16.6 bar.

    >>> round(greatest_pressure_across(p_1=1.66e6, q_1=0.035e6, p_2=1.66e6, q_2=0.0))
    1660000
    """
    return max(p_1 - q_2, p_2 - q_1, 0 * p_1)
