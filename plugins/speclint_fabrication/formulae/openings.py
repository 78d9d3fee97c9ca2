"""Openings in round shells: the metal that replaces what is cut out, by pressed areas."""

from __future__ import annotations

import math

from speclint import COMMON_PRACTICE, FIRST_PRINCIPLES, formula, require
from speclint.equations import Metres, Newtons, Pascals, Radians, Ratio, SquareMetres
from speclint_fabrication.sources import OPENING_TO_EDGE, OPENINGS_APART, PRESSURE_AREA, SMALL_OPENING


@formula("l_s = √((2 r + e) e)", cites=[PRESSURE_AREA])
def reach_in_shell(r: Metres, e: Metres) -> Metres:
    """Length of shell beside an opening that helps to carry what is cut out.

    l_s = √((2 r + e) e)

    ``r`` inside radius, ``e`` net thickness of the shell [m], 0 or more. Returns [m]. Raises OutOfRange otherwise.

    Hand working, 250 mm and 8 mm: √(508 × 8) = 63.75 mm.

    >>> round(reach_in_shell(r=0.250, e=0.008) * 1e3, 2)
    63.75
    """
    require(
        r >= 0 * r and e >= 0 * e,
        f"inside radius {r * 1e3:.4g} mm or net thickness {e * 1e3:.4g} mm of a shell is below 0",
    )
    found: float = ((2 * r + e) * e) ** 0.5
    return found


@formula("l_b = √((d − e) e)", cites=[PRESSURE_AREA])
def reach_in_branch(d: Metres, e: Metres) -> Metres:
    """Length of branch that helps to carry what is cut out of its shell.

    l_b = √((d − e) e)

    ``d`` outside diameter, ``e`` net wall of the branch [m], 0 or more and below d. Returns [m]. Raises OutOfRange
    otherwise.

    Hand working, 300 mm and 10 mm: √(290 × 10) = 53.85 mm.

    >>> round(reach_in_branch(d=0.300, e=0.010) * 1e3, 2)
    53.85
    """
    require(e < d, "the wall of a branch is no less than its outside diameter")
    require(e >= 0 * e, f"net wall {e * 1e3:.4g} mm of a branch is below 0")
    found: float = ((d - e) * e) ** 0.5
    return found


@formula("d_0 = k l_s", cites=[SMALL_OPENING])
def unworked_opening(k: Ratio, l_s: Metres) -> Metres:
    """Largest single opening whose metal need not be replaced.

    d_0 = k l_s

    ``k`` share, ``l_s`` length of shell beside the opening that helps [m]. Returns [m].

    >>> round(unworked_opening(k=0.15, l_s=0.06375) * 1e3, 4)
    9.5625
    """
    return k * l_s


@formula("d_φ = d/cos φ", cites=[PRESSURE_AREA])
def chord_aslant(d: Metres, φ: Radians) -> Metres:
    """Longest chord that an opening cuts in a shell where its axis stands aslant.

    d_φ = d/cos φ

    ``d`` opening square to its axis [m]; ``φ`` angle of the axis from the square to the shell [rad], to 60° either
    way. Returns [m]. Raises OutOfRange beyond: finite elements are wanted there.

    >>> round(chord_aslant(d=0.100, φ=math.radians(60)), 6)
    0.2
    """
    require(abs(φ) <= math.radians(60) * (1 + 1e-9), "an opening beyond 60° aslant wants finite elements")
    return d / math.cos(φ)


@formula("F = P (r (l_s + d/2) + d_i (l_b + e)/2)", cites=[PRESSURE_AREA])
def load_at_opening(
    P: Pascals, r: Metres, l_s: Metres, d: Metres, d_i: Metres, l_b: Metres, e: Metres
) -> Newtons:
    """Load of the pressure on shell and branch beside an opening, in the plane of the axis of the shell.

    F = P (r (l_s + d/2) + d_i (l_b + e)/2)

    ``P`` pressure [Pa]; ``r`` inside radius of the shell, ``l_s`` length of it that helps, ``d`` opening as cut,
    ``d_i`` clear way of the branch, ``l_b`` length of branch that helps, ``e`` net thickness of the shell [m]. Returns
    [N].

    Hand working: 1.66 MPa × (250 × (63.75 + 150) + 280 × (53.85 + 8)/2) = 1.66 × (53437 + 8659) = 103.1 kN.

    >>> round(load_at_opening(P=1.66e6, r=0.25, l_s=0.06375, d=0.3, d_i=0.28, l_b=0.05385, e=0.008))
    103080
    """
    return P * (r * (l_s + d / 2) + d_i * (l_b + e) / 2)


@formula("A = e l", cites=[PRESSURE_AREA])
def metal_of_shell(e: Metres, l: Metres) -> SquareMetres:  # noqa: E741 - the letter of the equation
    """Metal of a shell beside an opening, in the plane of its axis.

    A = e l

    ``e`` net thickness, ``l`` length that helps [m]. Returns [m²].

    >>> round(metal_of_shell(e=0.008, l=0.06375) * 1e6, 6)
    510.0
    """
    return e * l


@formula("A = e_b (l_b + l_i + s)", cites=[PRESSURE_AREA])
def metal_of_branch(e_b: Metres, l_b: Metres, l_i: Metres, s: Metres) -> SquareMetres:
    """Metal of a branch that helps to carry what is cut out of its shell.

    A = e_b (l_b + l_i + s)

    ``e_b`` net wall; ``l_b`` length outside of the shell, ``l_i`` inside of it, ``s`` in its thickness, nothing for a
    branch that is set on [m]. Returns [m²].

    Hand working: 10 × (53.85 + 0 + 8) = 618.5 mm².

    >>> round(metal_of_branch(e_b=0.010, l_b=0.05385, l_i=0.0, s=0.008) * 1e6, 6)
    618.5
    """
    return e_b * (l_b + l_i + s)


@formula("R = A_s (f_s − P/2) + A_b (min(f_b, f_s) − P/2)", cites=[PRESSURE_AREA])
def strength_at_opening(
    A_s: SquareMetres, f_s: Pascals, A_b: SquareMetres, f_b: Pascals, P: Pascals
) -> Newtons:
    """What shell and branch beside an opening carry; the weld between them is not counted.

    R = A_s (f_s − P/2) + A_b (min(f_b, f_s) − P/2)

    ``A_s``, ``A_b`` metal of shell and branch [m²]; ``f_s``, ``f_b`` their allowable tension, ``P`` pressure [Pa].
    Returns [N].

    Hand working: 510 × (150 − 0.83) + 618.5 × (130 − 0.83) = 76 077 + 79 892 = 155.97 kN.

    >>> round(strength_at_opening(A_s=510e-6, f_s=150e6, A_b=618.5e-6, f_b=130e6, P=1.66e6))
    155968
    """
    return A_s * (f_s - P / 2) + A_b * (min(f_b, f_s) - P / 2)


@formula("σ = P r²/(2 r + e)/e/(1 − b/(π (2 r + e)))", cites=[FIRST_PRINCIPLES])
def stress_beside_ports(P: Pascals, r: Metres, e: Metres, b: Metres) -> Pascals:
    """Stress along a barrel in the metal that ports cut round it leave.

    σ = P r²/(2 r + e)/e/(1 − b/(π (2 r + e)))

    ``P`` pressure [Pa]; ``r`` inside radius, ``e`` net thickness of the barrel, ``b`` width of all ports side by side,
    along the middle of the plate [m]. Returns [Pa]. Raises OutOfRange where nothing is left between the ports.

    Hand working: 1.66 × 289²/(2 × 307.75 × 37.5) = 6.007 MPa; of 2 π × 307.75 mm, 400 mm are cut: /0.7931 = 7.57.

    >>> round(stress_beside_ports(P=1.66e6, r=0.289, e=0.0375, b=0.4) / 1e6, 3)
    7.573
    """
    left = 1 - b / (math.pi * (2 * r + e))
    require(left > 0, "ports side by side leave nothing of the barrel")
    return P * r**2 / (2 * r + e) / e / left


@formula("σ = P (r + e/2)/e/η, η = (p − (d_1 + d_2)/2)/p", cites=[FIRST_PRINCIPLES])
def stress_of_ligament(P: Pascals, r: Metres, e: Metres, p: Metres, d_1: Metres, d_2: Metres) -> Pascals:
    """Stress round a shell in the ligament between two openings along its axis.

    σ = P (r + e/2)/e/η, η = (p − (d_1 + d_2)/2)/p

    ``P`` pressure [Pa]; ``r`` inside radius, ``e`` net thickness, ``p`` from centre to centre, ``d_1``, ``d_2`` both
    openings [m]. Returns [Pa]. Raises OutOfRange where they run into each other.

    Hand working, 153.25 mm to the middle of 6.5 mm, openings of 60 mm: at 90 mm 39.14/0.3333 = 117.4 MPa, at 160 mm
    39.14/0.625 = 62.6 MPa.

    >>> [round(stress_of_ligament(1.66e6, 0.150, 0.0065, p, 0.060, 0.060) / 1e6, 1) for p in (0.090, 0.160)]
    [117.4, 62.6]
    """
    η = (p - (d_1 + d_2) / 2) / p
    require(η > 0, "two openings run into each other")
    return P * (r + e / 2) / e / η


@formula("a = max(0.2 l_s, 3 e)", cites=[OPENING_TO_EDGE])
def least_to_edge(l_s: Metres, e: Metres) -> Metres:
    """Least distance of the edge of an opening from a weld, a corner, a flange or a rib.

    a = max(0.2 l_s, 3 e)

    ``l_s`` length of shell beside an opening that helps, ``e`` its net thickness [m]. Returns [m].

    >>> round(least_to_edge(l_s=0.06375, e=0.008), 6)
    0.024
    """
    return max(0.2 * l_s, 3 * e)


@formula("l = |x_2 − x_1| − a/2", cites=[FIRST_PRINCIPLES])
def barrel_beside_port(x_1: Metres, x_2: Metres, a: Metres) -> Metres:
    """Length of barrel between the edge of a port and an end of its bore.

    l = |x_2 − x_1| − a/2

    ``x_1`` middle of the port, ``x_2`` end of the bore along the axis, ``a`` height of the port [m]. Returns [m].
    Raises OutOfRange where the port runs out of the bore.

    >>> round(barrel_beside_port(x_1=0.058, x_2=0.0, a=0.040), 6)
    0.038
    """
    left = abs(x_2 - x_1) - a / 2
    require(left > 0, "a port runs out of the end of its bore")
    return left


@formula("p = |x_2 − x_1|", cites=[FIRST_PRINCIPLES])
def between_ports(x_1: Metres, x_2: Metres) -> Metres:
    """Distance of two ports along the axis of a barrel.

    p = |x_2 − x_1|

    ``x_1``, ``x_2`` their middles [m]. Returns [m].

    >>> round(between_ports(x_1=0.058, x_2=0.838), 6)
    0.78
    """
    return abs(x_2 - x_1)


@formula("n = 2 l_s + (d_1 + d_2)/2", cites=[OPENINGS_APART])
def apart_alone(l_s: Metres, d_1: Metres, d_2: Metres) -> Metres:
    """Distance from which two openings of a shell do not weaken each other.

    n = 2 l_s + (d_1 + d_2)/2

    ``l_s`` length of shell beside an opening that helps, ``d_1``, ``d_2`` both openings [m]. Returns [m], from centre
    to centre.

    >>> round(apart_alone(l_s=0.06375, d_1=0.1, d_2=0.06), 6)
    0.2075
    """
    return 2 * l_s + (d_1 + d_2) / 2


@formula("σ_η = σ/η, η = (p − (d_1 + d_2)/2)/p", cites=[FIRST_PRINCIPLES])
def stress_between_openings(σ: Pascals, p: Metres, d_1: Metres, d_2: Metres) -> Pascals:
    """Stress of a flat wall in the ligament between two openings.

    σ_η = σ/η, η = (p − (d_1 + d_2)/2)/p

    ``σ`` stress of the wall without them [Pa]; ``p`` from centre to centre, ``d_1``, ``d_2`` both openings [m]. Returns
    [Pa]. Raises OutOfRange where they run into each other.

    >>> round(stress_between_openings(σ=50e6, p=0.160, d_1=0.060, d_2=0.060))
    80000000
    """
    η = (p - (d_1 + d_2) / 2) / p
    require(η > 0, "two openings run into each other")
    return σ / η


@formula("Δσ = k Δp (r + e/2)/e", cites=[FIRST_PRINCIPLES, COMMON_PRACTICE])
def range_at_root(k: Ratio, Δp: Pascals, r: Metres, e: Metres) -> Pascals:
    """Stress range at the root of a branch in a round shell.

    Δσ = k Δp (r + e/2)/e

    ``k`` by how much the branch raises the stress of the shell; ``Δp`` range of the pressure [Pa]; ``r`` inside radius,
    ``e`` net thickness of the shell [m]. Returns [Pa]. Raises OutOfRange unless ``e`` is above 0.

    Hand working: 2.5 × 1.6 × (250 + 4)/8 = 127 MPa.

    >>> round(range_at_root(k=2.5, Δp=1.6e6, r=0.250, e=0.008) / 1e6, 6)
    127.0
    """
    require(e > 0, "no metal of the shell is left")
    return k * Δp * (r + e / 2) / e
