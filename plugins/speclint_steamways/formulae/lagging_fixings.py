"""What holds the sheet over lagging, against its weight as the track jolts it and against the air."""

from __future__ import annotations

import math

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, formula, require
from speclint.equations import (
    CGPM,
    STANDARD_GRAVITY,
    Kilograms,
    KilogramsPerCubicMetre,
    Metres,
    MetresPerSecond,
    Newtons,
    Pascals,
    Ratio,
    SquareMetres,
)
from speclint_steamways.sources import EN_1991_1_4, PULLED_THROUGH

#: Density of air for its pull on what it flows past, kg/m³.
_AIR = 1.25
#: Of the load that tears a sheet over the head of a screw: where the load comes and goes, as that of the wind.
_REPEATED = 0.5


@formula("M = A (ρ t + ρ_s t_s)", cites=[FIRST_PRINCIPLES])
def mass_of_flat_lagging(
    A: SquareMetres, ρ: KilogramsPerCubicMetre, t: Metres, ρ_s: KilogramsPerCubicMetre, t_s: Metres
) -> Kilograms:
    """Mass of flat lagging and the sheet over it.

    M = A (ρ t + ρ_s t_s)

    ``A`` area [m²]; ``ρ`` density of the lagging [kg/m³], ``t`` its thickness [m]; ``ρ_s`` density of the sheet
    [kg/m³], ``t_s`` thickness of the sheet [m]. Returns [kg].

    Hand working: 2 m² of 120 kg/m³ × 0.05 m and 7850 kg/m³ × 0.001 m: 2 × (6 + 7.85) = 27.7 kg.

    >>> round(mass_of_flat_lagging(A=2.0, ρ=120.0, t=0.05, ρ_s=7850.0, t_s=0.001), 6)
    27.7
    """
    return A * (ρ * t + ρ_s * t_s)


@formula("M = π L (ρ (d + t) t + ρ_s (d + 2 t + t_s) t_s)", cites=[FIRST_PRINCIPLES])
def mass_of_round_lagging(
    L: Metres,
    d: Metres,
    ρ: KilogramsPerCubicMetre,
    t: Metres,
    ρ_s: KilogramsPerCubicMetre,
    t_s: Metres,
) -> Kilograms:
    """Mass of lagging about a pipe and the sheet over it.

    M = π L (ρ (d + t) t + ρ_s (d + 2 t + t_s) t_s)

    ``L`` length, ``d`` inside diameter of the lagging, ``t`` its thickness [m]; ``ρ`` its density [kg/m³]; ``ρ_s``
    density of the sheet [kg/m³], ``t_s`` thickness of the sheet [m]. Returns [kg].

    Hand working: 1 m, d 0.1, t 0.05, 120 kg/m³: π × 0.15 × 0.05 × 120 = 2.8274; sheet 1 mm of 7850 kg/m³ about
    0.2 m: π × 0.201 × 0.001 × 7850 = 4.9570; together 7.7844 kg.

    >>> round(mass_of_round_lagging(L=1.0, d=0.1, ρ=120.0, t=0.05, ρ_s=7850.0, t_s=0.001), 4)
    7.7844
    """
    return math.pi * L * (ρ * (d + t) * t + ρ_s * (d + 2 * t + t_s) * t_s)


@formula("A = (d + 2 t + 2 t_s) L", cites=[FIRST_PRINCIPLES])
def side_of_round_lagging(d: Metres, t: Metres, t_s: Metres, L: Metres) -> SquareMetres:
    """Area that round lagging shows from the side.

    A = (d + 2 t + 2 t_s) L

    ``d`` inside diameter, ``t`` thickness of the lagging, ``t_s`` of its sheet, ``L`` length [m]. Returns [m²].

    >>> round(side_of_round_lagging(d=0.1, t=0.05, t_s=0.001, L=2.0), 6)
    0.404
    """
    return (d + 2 * t + 2 * t_s) * L


@formula("F_a = c · 1.25 kg/m³ · v² A/2", cites=[EN_1991_1_4, COMMON_PRACTICE], empirical="kg, m, s and N")
def pull_of_air(c: Ratio, v: MetresPerSecond, A: SquareMetres) -> Newtons:
    """Pull of the air on a sheet that moves through it.

    F_a = c · 1.25 kg/m³ · v² A/2

    ``c`` pull in times the pressure of the speed, whose source stands at the limit that gives it; ``v`` speed [m/s];
    ``A`` area [m²]. Returns [N].

    Hand working: 40 m/s: 1.25 × 1600/2 = 1000 Pa on 3 m² are 3000 N.

    >>> pull_of_air(c=1.0, v=40.0, A=3.0)
    3000.0
    """
    return c * _AIR * v**2 * A / 2


@formula("F_j = (1 + n) M · 9.80665 m/s²", cites=[FIRST_PRINCIPLES, CGPM], empirical="kg and N")
def jolted_weight(M: Kilograms, n: Ratio) -> Newtons:
    """Weight of a mass as the track jolts it.

    F_j = (1 + n) M · 9.80665 m/s²

    ``M`` mass [kg]; ``n`` acceleration in times gravity [-]. Returns [N].

    Hand working: 3 × 50 × 9.80665 = 1470.9975 N.

    >>> round(jolted_weight(M=50.0, n=2.0), 4)
    1470.9975
    """
    return (1 + n) * M * STANDARD_GRAVITY


@formula("F_1 = F/(s n)", cites=[FIRST_PRINCIPLES])
def load_of_one_fixing(F: Newtons, s: Ratio, n: Ratio) -> Newtons:
    """Load on one of several screws or bands of which a share carries.

    F_1 = F/(s n)

    ``F`` load together [N]; ``s`` share that carries, ``n`` how many there are. Returns [N]. Raises OutOfRange unless
    both are above 0.

    >>> load_of_one_fixing(F=3000.0, s=0.5, n=12.0)
    500.0
    """
    require(s > 0 and n > 0, "one fixing at least carries")
    return F / (s * n)


@formula("A_1 = A/n", cites=[FIRST_PRINCIPLES])
def area_of_one_screw(A: SquareMetres, n: Ratio) -> SquareMetres:
    """Area of sheet for each of its screws.

    A_1 = A/n

    ``A`` area [m²]; ``n`` how many screws there are [-]. Returns [m²]. Raises OutOfRange unless n is above 0.

    >>> area_of_one_screw(A=3.0, n=24.0)
    0.125
    """
    require(n > 0, "one screw at least holds a sheet")
    return A / n


@formula("F_p = 0.5 d_w t_s f_u/γ", cites=[PULLED_THROUGH])
def load_over_head(d_w: Metres, t_s: Metres, f_u: Pascals, gamma: Ratio) -> Newtons:
    """Load, coming and going, under which a sheet does not tear over the head of a screw.

    F_p = 0.5 d_w t_s f_u/γ

    ``d_w`` diameter of the head or washer, ``t_s`` thickness of the sheet [m]; ``f_u`` its least tensile strength [Pa];
    ``gamma`` partial factor, whose source stands at the limit that gives it. Returns [N]. Raises OutOfRange unless γ is
    at least 1.

    Hand working: 0.5 × 16 mm × 1 mm × 360 MPa/1.25 = 2304 N.

    >>> round(load_over_head(d_w=0.016, t_s=0.001, f_u=360e6, gamma=1.25), 6)
    2304.0
    """
    require(gamma >= 1, "a partial factor is at least 1")
    return _REPEATED * d_w * t_s * f_u / gamma


@formula("F_s = k R_m A_s", cites=[FIRST_PRINCIPLES])
def load_of_screw(k: Ratio, R_m: Pascals, A_s: SquareMetres) -> Newtons:
    """Load that a screw bears with its share of tensile strength.

    F_s = k R_m A_s

    ``k`` the share, whose source stands at the limit that gives it; ``R_m`` tensile strength [Pa]; ``A_s`` stress area
    [m²]. Returns [N].

    Hand working: 0.25 × 500 MPa × 20 mm² = 2500 N.

    >>> load_of_screw(k=0.25, R_m=500e6, A_s=20e-6)
    2500.0
    """
    return k * R_m * A_s


@formula("F_b = 2 k R_m b t_b", cites=[FIRST_PRINCIPLES])
def load_of_band(k: Ratio, R_m: Pascals, b: Metres, t_b: Metres) -> Newtons:
    """Load that a band about lagging bears in its two legs with its share of tensile strength.

    F_b = 2 k R_m b t_b

    ``k`` the share, whose source stands at the limit that gives it; ``R_m`` tensile strength [Pa]; ``b`` width, ``t_b``
    thickness of the band [m]. Returns [N].

    Hand working: 2 × 0.25 × 400 MPa × 25 mm × 1 mm = 5000 N.

    >>> round(load_of_band(k=0.25, R_m=400e6, b=0.025, t_b=0.001), 6)
    5000.0
    """
    return 2 * k * R_m * b * t_b


@formula("k_e = e/d", cites=[FIRST_PRINCIPLES])
def edge_in_diameters(e: Metres, d: Metres) -> Ratio:
    """Distance of a screw from the edge of its sheet over its diameter.

    k_e = e/d

    ``e`` distance from the edge [m]; ``d`` nominal diameter of the screw [m], above 0. Returns a ratio. Raises
    OutOfRange outside.

    >>> edge_in_diameters(e=0.015, d=0.008)
    1.875
    """
    require(d > 0, "the diameter of a screw must be above 0")
    return e / d


@formula("r_w = d_w/2", cites=[FIRST_PRINCIPLES])
def half_of_head(d_w: Metres) -> Metres:
    """How far the head of a screw, or its washer, reaches from its middle.

    r_w = d_w/2

    d_w: diameter of the head or the washer, m. Returns m.

    >>> half_of_head(d_w=0.016)
    0.008
    """
    return d_w / 2


@formula("k_w = d_w/d", cites=[FIRST_PRINCIPLES])
def head_in_diameters(d_w: Metres, d: Metres) -> Ratio:
    """Diameter of the head or washer of a screw over that of the screw.

    k_w = d_w/d

    ``d_w`` diameter of the head or washer [m]; ``d`` nominal diameter of the screw [m], above 0. Returns a ratio.
    Raises OutOfRange outside.

    >>> head_in_diameters(d_w=0.012, d=0.006)
    2.0
    """
    require(d > 0, "the diameter of a screw must be above 0")
    return d_w / d
