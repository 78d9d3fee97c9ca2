"""Flanges that a packing makes tight against air: how far they open between bolts, and what leaks in."""

from __future__ import annotations

from speclint import FIRST_PRINCIPLES, formula, require
from speclint.equations import (
    KelvinDifference,
    KilogramsPerCubicMetre,
    KilogramsPerSecond,
    Metres,
    Pascals,
    PerKelvin,
    Ratio,
    SquareMetres,
)
from speclint.handbook.tables import ROARK


@formula("p = L/n", cites=[FIRST_PRINCIPLES])
def mean_pitch(L: Metres, n: Ratio) -> Metres:
    """Mean distance of bolts along a joint, with half of it beyond the first and the last.

    p = L/n

    ``L`` length of the joint [m]; ``n`` how many bolts. Returns [m]. Raises OutOfRange unless n is above 0.

    >>> mean_pitch(L=1.8, n=12)
    0.15
    """
    require(n > 0, "the number of bolts must be above 0")
    return L / n


@formula("w = q b p⁴/(32 E c t³)", cites=[ROARK.at("Table 8.1, case 2d, clamped beam, uniform load")])
def opening_between_bolts(q: Pascals, b: Metres, p: Metres, E: Pascals, c: Metres, t: Metres) -> Metres:
    """How far the strip of a flange opens between two bolts, as a clamped beam.

    w = q b p⁴/(32 E c t³)

    ``q`` pressure that seats the packing [Pa]; ``b`` width of the packing [m]; ``p`` pitch of the bolts [m]; ``E``
    modulus [Pa]; ``c`` width of the strip [m]; ``t`` thickness of the strip [m]. Returns [m]: q b p⁴/(384 E I) with I =
    c t³/12.

    Hand working, 8 × 40 mm, 206 GPa, 20 N/mm: pitch 150 mm 0.075 mm, 250 mm 0.58.

    >>> [round(opening_between_bolts(2e6, 0.010, p, 206e9, 0.040, 0.008) * 1e3, 3) for p in (0.150, 0.250)]
    [0.075, 0.579]
    """
    return q * b * p**4 / (32 * E * c * t**3)


@formula("w = l max(α_b ΔT_b − α_m ΔT_m, 0 K/K)", cites=[FIRST_PRINCIPLES])
def slack_of_bolt(
    l: Metres,  # noqa: E741 - the letter of the equation
    α_b: PerKelvin,
    ΔT_b: KelvinDifference,
    α_m: PerKelvin,
    ΔT_m: KelvinDifference,
) -> Metres:
    """How much more a bolt grows than what it clamps.

    w = l max(α_b ΔT_b − α_m ΔT_m, 0 K/K)

    ``l`` clamped length [m]; ``α_b``, ``α_m`` expansion of bolt and part [1/K]; ``ΔT_b``, ``ΔT_m`` how much warmer than
    tightened [K]. Returns [m].

    >>> round(slack_of_bolt(l=0.05, α_b=16e-6, ΔT_b=100.0, α_m=12e-6, ΔT_m=100.0) * 1e6, 6)
    20.0
    """
    return l * max(α_b * ΔT_b - α_m * ΔT_m, 0 * α_b * ΔT_b)


@formula("w = w_1 + w_2", cites=[FIRST_PRINCIPLES])
def openings_added(w_1: Metres, w_2: Metres) -> Metres:
    """Opening of a flange by the press of its packing and by heat.

    w = w_1 + w_2

    ``w_1`` opening by the press of the packing [m]; ``w_2`` opening by heat [m]. Returns [m].

    >>> openings_added(w_1=0.25, w_2=0.5)
    0.75
    """
    return w_1 + w_2


@formula("ΔL = L |α_1 ΔT_1 − α_2 ΔT_2|", cites=[FIRST_PRINCIPLES])
def unlike_growth_along(
    L: Metres, α_1: PerKelvin, ΔT_1: KelvinDifference, α_2: PerKelvin, ΔT_2: KelvinDifference
) -> Metres:
    """How far two joined parts grow apart along their joint.

    ΔL = L |α_1 ΔT_1 − α_2 ΔT_2|

    ``L`` length of the joint [m]; ``α_1``, ``α_2`` expansion [1/K]; ``ΔT_1``, ``ΔT_2`` how much warmer than tightened
    [K]. Returns [m].

    >>> round(unlike_growth_along(L=1.0, α_1=12e-6, ΔT_1=200.0, α_2=12e-6, ΔT_2=100.0) * 1e3, 3)
    1.2
    """
    return L * abs(α_1 * ΔT_1 - α_2 * ΔT_2)


@formula("A = w L", cites=[FIRST_PRINCIPLES])
def gap_of_flange(w: Metres, L: Metres) -> SquareMetres:
    """Gap of a flange whose packing no longer springs back.

    A = w L

    ``w`` opening, ``L`` length of the joint [m]. Returns [m²].

    >>> round(gap_of_flange(w=0.0001, L=4.0) * 1e6, 6)
    400.0
    """
    return w * L


@formula("m = 0.6 A √(2 ρ Δp)", cites=[FIRST_PRINCIPLES])
def inflow_of_air(A: SquareMetres, rho: KilogramsPerCubicMetre, Δp: Pascals) -> KilogramsPerSecond:
    """Air that is drawn in through a gap.

    m = 0.6 A √(2 ρ Δp)

    ``A`` gap [m²]; ``rho`` density of the air [kg/m³] and ``Δp`` vacuum [Pa], neither below 0. Returns [kg/s]. 0.6 is
    the contraction of a sharp-edged gap. Raises OutOfRange outside.

    Hand working: 0.6 × 400 mm² × √(2 × 1.2 × 1500 Pa) = 0.0144 kg/s.

    >>> round(inflow_of_air(A=400e-6, rho=1.2, Δp=1500.0), 4)
    0.0144
    """
    require(
        rho >= 0 * rho and Δp >= 0 * Δp,
        f"density {rho:.4g} kg/m³ of the air or vacuum {Δp / 100:.4g} mbar is below 0",
    )
    found: float = 0.6 * A * (2 * rho * Δp) ** 0.5
    return found


@formula("s = d_h − d", cites=[FIRST_PRINCIPLES])
def room_in_hole(d_h: Metres, d: Metres) -> Metres:
    """How far a bolt can move in a hole or a slot.

    s = d_h − d

    ``d_h`` hole, or length of the slot, ``d`` bolt [m]. Returns [m].

    >>> round(room_in_hole(d_h=0.030, d=0.024), 6)
    0.006
    """
    return d_h - d


@formula("x = m/m_g", cites=[FIRST_PRINCIPLES])
def share_of_gas(m: KilogramsPerSecond, m_g: KilogramsPerSecond) -> Ratio:
    """Air drawn in over the gas of a smokebox.

    x = m/m_g

    ``m`` inflow, ``m_g`` gas [kg/s], above 0. Returns a ratio. Raises OutOfRange otherwise.

    >>> share_of_gas(m=0.0125, m_g=5.0)
    0.0025
    """
    require(m_g > 0 * m, "no gas flows")
    return m / m_g
