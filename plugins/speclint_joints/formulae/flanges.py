"""The flange of a pipe as a ring that its bolts turn, and the weld that holds it on its pipe."""

from __future__ import annotations

import math

from speclint import FIRST_PRINCIPLES, formula, require
from speclint.equations import Metres, NewtonMetres, Newtons, Pascals, Ratio
from speclint_joints.sources import EN_1591_1, LOOSE_FLANGE


@formula("M = W (D_b − G)/2 + π G² p (G − B)/8", cites=[LOOSE_FLANGE, FIRST_PRINCIPLES])
def moment_of_flange(W: Newtons, D_b: Metres, G: Metres, B: Metres, p: Pascals) -> NewtonMetres:
    """Moment that turns a flange: of its bolts about the joint, and of steam on the end of its pipe about its bore.

    M = W (D_b − G)/2 + π G² p (G − B)/8

    ``W`` load of all bolts [N]; ``D_b`` their circle, ``G`` circle on which joint or collar pushes back, ``B`` bore of
    the flange [m], G for a loose flange, which steam does not reach; ``p`` gauge pressure [Pa]. Returns [N·m]. Raises
    OutOfRange unless D_b > G ≥ B.

    Hand working: 200 kN × (250 − 190)/2 mm = 6 kN·m; at 1.6 MPa in 150 mm beside it π 190² × 1.6 × 40/8 = 0.907 kN·m.

    >>> round(moment_of_flange(W=200e3, D_b=0.250, G=0.190, B=0.190, p=1.6e6))
    6000
    >>> round(moment_of_flange(W=200e3, D_b=0.250, G=0.190, B=0.150, p=1.6e6))
    6907
    """
    require(D_b > G >= B, "the circles of bolts, joint and bore of the flange do not lie in this order")
    return W * (D_b - G) / 2 + math.pi * G**2 * p * (G - B) / 8


@formula("M_l = π f (A − B − 2 d √(d n/(π D_b))) t²/4", cites=[EN_1591_1])
def limit_moment_of_ring(
    f: Pascals, A: Metres, B: Metres, t: Metres, d: Metres, n: Ratio, D_b: Metres
) -> NewtonMetres:
    """Moment of its bolts at which a flat ring is stressed all round to a strength, half of it pulled, half pressed.

    M_l = π f (A − B − 2 d √(d n/(π D_b))) t²/4

    ``f`` strength [Pa]; ``A`` outside diameter, ``B`` inside diameter, ``t`` thickness of the ring [m]; ``d`` diameter
    of the holes of the bolts [m]; ``n`` number of the bolts; ``D_b`` diameter of the circle of the bolts [m]. Returns
    [N·m]. Raises OutOfRange where a hole or a number is below 0, and where the holes leave no metal. Without what a
    pipe welded to it helps.

    Hand working, 240 MPa, 760 on 500 mm, 20 holes of 26 mm on 700: d √ = 26 × 0.4863 = 12.64 mm each side, 234.7 mm
    left; π × 240 × 234.7 × 60²/4 = 159.3 kN·m.

    >>> round(limit_moment_of_ring(f=240e6, A=0.760, B=0.500, t=0.060, d=0.026, n=20.0, D_b=0.700) / 1e3, 1)
    159.3
    """
    require(
        d >= 0 * d and n >= 0 and D_b > 0 * D_b,
        f"{n:.4g} holes of {d * 1e3:.4g} mm on a circle of {D_b * 1e3:.4g} mm cannot be drilled",
    )
    left = A - B - 2 * d * (d * n / (math.pi * D_b)) ** 0.5
    require(left > 0, "the holes of the bolts leave no metal of the flange")
    moment: float = math.pi * f * left * t**2 / 4
    return moment


@formula("τ = p d/(4 a)", cites=[FIRST_PRINCIPLES])
def stress_of_weld_round(p: Pascals, d: Metres, a: Metres) -> Pascals:
    """Stress of the weld that holds a flange on the end of its pipe against the steam.

    τ = p d/(4 a)

    ``p`` gauge pressure [Pa]; ``d`` outside of the pipe, ``a`` throat of the weld round it [m]. Returns [Pa].

    Hand working: 1.6 MPa × 200/(4 × 5) mm = 16 MPa.

    >>> round(stress_of_weld_round(p=1.6e6, d=0.200, a=0.005) / 1e6, 6)
    16.0
    """
    return p * d / (4 * a)


@formula("a_m = k t", cites=[FIRST_PRINCIPLES])
def greatest_throat_round(k: Ratio, t: Metres) -> Metres:
    """The greatest throat that the fillets round the end of a pipe can have.

    a_m = k t

    ``k`` throat over the wall: of a fillet outside with a leg of 1.4 walls, and one inside of a wall, 2.4/√2;
    ``t`` wall [m]. Returns [m].

    Hand working: 1.7 times a wall of 6.3 mm.

    >>> round(greatest_throat_round(k=1.7, t=0.0063) * 1e3, 3)
    10.71
    """
    return k * t


@formula("w = (D_c + d)/2 − B", cites=[FIRST_PRINCIPLES])
def least_ring_of_collar(D_c: Metres, d: Metres, B: Metres) -> Metres:
    """Least width of collar on its loose flange, where the pipe lies against the bore.

    w = (D_c + d)/2 − B

    ``D_c`` outside of the collar, ``d`` of the pipe, ``B`` bore of the flange [m]. Returns [m], below 0 where the
    collar comes through on that side. The ring of (D_c − B)/2 is narrower there by the play (B − d)/2.

    Hand working: a collar of 205 mm on a pipe of 168.3 in a bore of 172: 16.5 mm less 1.85.

    >>> round(least_ring_of_collar(D_c=0.205, d=0.1683, B=0.172) * 1e3, 6)
    14.65
    """
    return (D_c + d) / 2 - B


@formula("D_r = D_c + B − d", cites=[FIRST_PRINCIPLES])
def reach_of_collar(D_c: Metres, d: Metres, B: Metres) -> Metres:
    """Diameter of the circle about its loose flange to which a collar reaches, the pipe against the bore on one side.

    D_r = D_c + B − d

    ``D_c`` outside of the collar, ``d`` of the pipe, ``B`` bore of the flange [m]. Returns [m].

    Hand working: a collar of 205 mm on a pipe of 168.3 in a bore of 172: 3.7 mm more.

    >>> round(reach_of_collar(D_c=0.205, d=0.1683, B=0.172) * 1e3, 6)
    208.7
    """
    return D_c + B - d


@formula("q = 4 W/(π (D_c² − B²))", cites=[FIRST_PRINCIPLES])
def pressure_of_collar(W: Newtons, D_c: Metres, B: Metres) -> Pascals:
    """Mean pressure between a collar and its loose flange.

    q = 4 W/(π (D_c² − B²))

    ``W`` load of all bolts [N]; ``D_c`` outside of the collar, ``B`` bore of the flange [m]. Returns [Pa]. Raises
    OutOfRange unless D_c > B ≥ 0.

    Hand working: 200 kN on a ring of 205 by 172 mm, 9771 mm²: 20.47 MPa.

    >>> round(pressure_of_collar(W=200e3, D_c=0.205, B=0.172) / 1e6, 2)
    20.47
    """
    require(D_c > B >= 0 * B, "the collar is no larger than the bore of its flange")
    return 4 * W / (math.pi * (D_c**2 - B**2))
