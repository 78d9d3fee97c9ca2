"""What keeps a cam on its shaft, a valve on its spindle and a tappet whole."""

from __future__ import annotations

import math

from speclint import FIRST_PRINCIPLES, formula, require
from speclint.equations import Metres, NewtonMetres, Newtons, Pascals, Radians, Ratio, SquareMetres


@formula("τ = 2 T/(d b L)", cites=[FIRST_PRINCIPLES])
def shear_of_key(T: NewtonMetres, d: Metres, b: Metres, L: Metres) -> Pascals:
    """Shear stress of a key that turns a cam.

    τ = 2 T/(d b L)

    ``T`` torque [N·m]; ``d`` shaft, ``b`` width and ``L`` length of the key [m]. Returns [Pa]. Raises OutOfRange unless
    all of them are above 0.

    Hand working: 2 × 120 N·m/(60 × 18 × 40 mm³) = 5.56 MPa.

    >>> round(shear_of_key(T=120.0, d=0.060, b=0.018, L=0.040) / 1e6, 2)
    5.56
    """
    require(d > 0 and b > 0 and L > 0, "the key has no section")
    return 2 * T / (d * b * L)


@formula("p = 2 T/(d h L)", cites=[FIRST_PRINCIPLES])
def pressure_of_key(T: NewtonMetres, d: Metres, h: Metres, L: Metres) -> Pascals:
    """Pressure of a key on the side of its seat.

    p = 2 T/(d h L)

    ``T`` torque [N·m]; ``d`` shaft, ``h`` depth of the seat beside the key, ``L`` length [m]. Returns [Pa]. Raises
    OutOfRange unless all of them are above 0.

    Hand working: 2 × 120 N·m/(60 × 4 × 40 mm³) = 25 MPa.

    >>> round(pressure_of_key(T=120.0, d=0.060, h=0.004, L=0.040) / 1e6, 6)
    25.0
    """
    require(d > 0 and h > 0 and L > 0, "the key does not bear")
    return 2 * T / (d * h * L)


@formula("F_b = k R_p A", cites=[FIRST_PRINCIPLES])
def preload_borne(k: Ratio, R_p: Pascals, A: SquareMetres) -> Newtons:
    """Preload that stretches a thread to a share of its proof stress.

    F_b = k R_p A

    ``k`` the share, whose source stands at the limit that gives it; ``R_p`` proof stress [Pa]; ``A`` section [m²].
    Returns [N].

    >>> round(preload_borne(k=0.7, R_p=600e6, A=157e-6), 3)
    65940.0
    """
    return k * R_p * A


@formula("Q = F tan α", cites=[FIRST_PRINCIPLES])
def side_by_slant(F: Newtons, α: Radians) -> Newtons:
    """Force across a tappet whose roller the cam pushes aslant.

    Q = F tan α

    ``F`` along the tappet [N]; ``α`` pressure angle [rad]. Returns [N]. Raises OutOfRange from a right angle on.

    Hand working: 4 kN at 30°: 2.309 kN.

    >>> round(side_by_slant(F=4000.0, α=math.radians(30)))
    2309
    """
    require(0 <= α < math.pi / 2, "the cam pushes square to the way of its tappet")
    return F * math.tan(α)


@formula("Q = μ F", cites=[FIRST_PRINCIPLES])
def side_by_rubbing(μ: Ratio, F: Newtons) -> Newtons:
    """Force across a tappet whose foot the cam rubs.

    Q = μ F

    ``μ`` friction; ``F`` along the tappet [N]. Returns [N].

    >>> side_by_rubbing(μ=0.1, F=4000.0)
    400.0
    """
    return μ * F


@formula("M = Q a + F b", cites=[FIRST_PRINCIPLES])
def moment_at_guide(Q: Newtons, a: Metres, F: Newtons, b: Metres) -> NewtonMetres:
    """Moment that bends a tappet's stem where it enters its guide.

    M = Q a + F b

    ``Q`` across it at roller or foot, ``F`` along it [N]; ``a`` from there to the guide, ``b`` reach of the cam beside
    the line [m]. Returns [N·m].

    Hand working: 400 N × 30 mm + 4 kN × 26 mm = 116 N·m.

    >>> round(moment_at_guide(Q=400.0, a=0.030, F=4000.0, b=0.026), 6)
    116.0
    """
    return Q * a + F * b


@formula("p = Q/(d L) + 6 (M + Q L/2)/(d L²)", cites=[FIRST_PRINCIPLES])
def edge_of_guide(Q: Newtons, M: NewtonMetres, d: Metres, L: Metres) -> Pascals:
    """Pressure at the edge of a tappet's guide.

    p = Q/(d L) + 6 (M + Q L/2)/(d L²)

    ``Q`` across the tappet [N]; ``M`` moment where it enters the guide [N·m]; ``d`` stem, ``L`` length of the guide
    [m]. Returns [Pa]. Raises OutOfRange unless d and L are above 0.

    Hand working, 400 N and 116 N·m, 36 and 100 mm: 0.111 + 6 × 136 N·m/(36 × 10⁴ mm³) = 2.378 MPa.

    >>> round(edge_of_guide(Q=400.0, M=116.0, d=0.036, L=0.100) / 1e6, 3)
    2.378
    """
    require(d > 0 and L > 0, "the tappet has no guide")
    return Q / (d * L) + 6 * (M + Q * L / 2) / (d * L**2)


@formula("σ = 4 F/(π d²) + 32 M/(π d³)", cites=[FIRST_PRINCIPLES])
def stress_of_stem(F: Newtons, M: NewtonMetres, d: Metres) -> Pascals:
    """Greatest stress of a tappet's stem where it enters its guide.

    σ = 4 F/(π d²) + 32 M/(π d³)

    ``F`` force along the stem [N]; ``M`` moment that bends the stem [N·m]; ``d`` diameter of the stem [m]. Returns
    [Pa]. Raises OutOfRange unless d is above 0.

    Hand working, 4 kN and 116 N·m, 36 mm: 3.93 + 25.33 = 29.25 MPa.

    >>> round(stress_of_stem(F=4000.0, M=116.0, d=0.036) / 1e6, 2)
    29.25
    """
    require(d > 0, "the stem has no diameter")
    return 4 * F / (math.pi * d**2) + 32 * M / (math.pi * d**3)


@formula("A = n A_1", cites=[FIRST_PRINCIPLES])
def area_of_bars(n: Ratio, A_1: SquareMetres) -> SquareMetres:
    """Section of all bars of a cage.

    A = n A_1

    ``n`` bars; ``A_1`` section of each [m²]. Returns [m²].

    >>> round(area_of_bars(n=8.0, A_1=60e-6) * 1e6, 6)
    480.0
    """
    return n * A_1


@formula("s_f = b_g − b_f", cites=[FIRST_PRINCIPLES])
def play_of_fork(b_g: Metres, b_f: Metres) -> Metres:
    """Play along its shaft of a cam that a fork holds.

    s_f = b_g − b_f

    ``b_g`` width of the groove of the cam, ``b_f`` of the fork in it [m]. Returns [m].

    >>> round(play_of_fork(b_g=0.0202, b_f=0.0198) * 1e3, 6)
    0.4
    """
    return b_g - b_f
