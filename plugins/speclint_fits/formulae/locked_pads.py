"""Two locked pads with a hot block between them: the growth that they hold back, and what it does to both."""

from __future__ import annotations

from speclint import FIRST_PRINCIPLES, formula, require
from speclint.equations import (
    CubicMetres,
    Metres,
    Newtons,
    NewtonsPerMetre,
    Pascals,
    SquareMetres,
)


@formula("L = |x_1 − x_2|", cites=[FIRST_PRINCIPLES])
def apart(x_1: Metres, x_2: Metres) -> Metres:
    """Distance of the middles of two pads.

    L = |x_1 − x_2|

    ``x_1``, ``x_2`` forward of the fixed point [m]. Returns [m].

    >>> apart(x_1=0.62, x_2=0.0)
    0.62
    """
    return abs(x_1 - x_2)


@formula("k = E A/L", cites=[FIRST_PRINCIPLES])
def stiffness_of_bar(E: Pascals, A: SquareMetres, L: Metres) -> NewtonsPerMetre:
    """Stiffness of a length of metal along its axis.

    k = E A/L

    ``E`` modulus [Pa]; ``A`` section [m²]; ``L`` length [m], above 0. Returns [N/m]. Raises OutOfRange otherwise.

    Hand working: 195 GPa × 9000 mm²/620 mm = 2.831e6 N/mm.

    >>> round(stiffness_of_bar(E=195e9, A=9e-3, L=0.62) / 1e9, 3)
    2.831
    """
    require(L > 0, "the pads must lie apart")
    return E * A / L


@formula("k = 1/(1/k_1 + 1/k_2)", cites=[FIRST_PRINCIPLES])
def in_series(k_1: NewtonsPerMetre, k_2: NewtonsPerMetre) -> NewtonsPerMetre:
    """Stiffness of two springs, one after the other.

    k = 1/(1/k_1 + 1/k_2)

    ``k_1``, ``k_2`` [N/m], above 0. Returns [N/m]. Raises OutOfRange otherwise.

    >>> in_series(k_1=3.0, k_2=6.0)
    2.0
    """
    require(k_1 > 0 * k_1 and k_2 > 0 * k_2, "a stiffness must be above 0")
    return 1 / (1 / k_1 + 1 / k_2)


@formula("k = 2 k_s", cites=[FIRST_PRINCIPLES])
def stiffness_of_one_face(k_s: NewtonsPerMetre) -> NewtonsPerMetre:
    """Stiffness of one face of a cut-out, of that of the whole against being spread.

    k = 2 k_s

    ``k_s`` of the whole cut-out [N/m]. Returns [N/m].

    >>> stiffness_of_one_face(7.5e9)
    15000000000.0
    """
    return 2 * k_s


@formula("F = k |Δ|", cites=[FIRST_PRINCIPLES])
def force_of_growth(k: NewtonsPerMetre, Δ: Metres) -> Newtons:
    """Force by which two locked pads hold a growth back.

    F = k |Δ|

    ``k`` of block, frame, pads and faces in series [N/m]; ``Δ`` growth of block over frame [m]. Returns [N].

    Hand working: 0.536e6 N/mm × 0.699 mm = 374.7 kN.

    >>> round(force_of_growth(k=0.536e9, Δ=0.699e-3) / 1e3, 1)
    374.7
    """
    return k * abs(Δ)


@formula("P_1 = P k_1/(k_1 + k_2)", cites=[FIRST_PRINCIPLES])
def share_of_thrust(P: Newtons, k_1: NewtonsPerMetre, k_2: NewtonsPerMetre) -> Newtons:
    """Share of one of two pads in a thrust, by their stiffness.

    P_1 = P k_1/(k_1 + k_2)

    ``P`` thrust [N]; ``k_1`` of the pad, ``k_2`` of the other [N/m], above 0. Returns [N]. Raises OutOfRange otherwise.

    >>> share_of_thrust(P=326e3, k_1=1.5e9, k_2=1.5e9)
    163000.0
    """
    require(k_1 > 0 * k_1 and k_2 > 0 * k_2, "a stiffness must be above 0")
    return P * k_1 / (k_1 + k_2)


@formula("σ = F/A + F |e|/W", cites=[FIRST_PRINCIPLES])
def stress_beside_axis(F: Newtons, A: SquareMetres, e: Metres, W: CubicMetres) -> Pascals:
    """Stress of a section under a force beside its middle.

    σ = F/A + F |e|/W

    ``F`` force square to the section [N]; ``A`` area of the section [m²], above 0; ``e`` distance of the force from the
    middle of the section [m]; ``W`` section modulus [m³], above 0. Returns [Pa]. Raises OutOfRange otherwise.

    Hand working: 375 kN on 28 × 600 mm at 60 mm: 22.3 + 13.4 = 35.7 MPa.

    >>> round(stress_beside_axis(F=375e3, A=16.8e-3, e=0.060, W=1.68e-3) / 1e6, 1)
    35.7
    """
    require(A > 0 and W > 0, "section and section modulus must be above 0")
    return F / A + F * abs(e) / W


@formula("W = t h²/6", cites=[FIRST_PRINCIPLES])
def modulus_of_plate(t: Metres, h: Metres) -> CubicMetres:
    """Section modulus of a plate on edge.

    W = t h²/6

    ``t`` thickness, ``h`` depth [m]. Returns [m³].

    >>> round(modulus_of_plate(t=0.028, h=0.6) * 1e9)
    1680000
    """
    return t * h**2 / 6


@formula("σ = √((F a/W)² + 3 (F/A)²)", cites=[FIRST_PRINCIPLES])
def stress_of_web(F: Newtons, A: SquareMetres, a: Metres, W: CubicMetres) -> Pascals:
    """Stress at the root of a pad's web, bending and shear together.

    σ = √((F a/W)² + 3 (F/A)²)

    ``F`` force along the frame [N]; ``A`` section [m²], ``W`` section modulus [m³] of the root, above 0; ``a`` arm [m].
    Returns [Pa]. Raises OutOfRange otherwise.

    Hand working: 1533 kN at 80 mm, 12 000 mm², 600 000 mm³: 204.4 and 127.75: 301.2 MPa.

    >>> round(stress_of_web(F=1533e3, A=12e-3, a=0.080, W=600e-6) / 1e6, 1)
    301.2
    """
    require(A > 0 and W > 0, "section and section modulus must be above 0")
    stress: Pascals = ((F * a / W) ** 2 + 3 * (F / A) ** 2) ** 0.5
    return stress


@formula("σ = F/A", cites=[FIRST_PRINCIPLES])
def pressure_on_face(F: Newtons, A: SquareMetres) -> Pascals:
    """Mean pressure on a face.

    σ = F/A

    ``F`` force on the face [N]; ``A`` area of the face [m²], above 0. Returns [Pa]. Raises OutOfRange otherwise.

    >>> round(pressure_on_face(F=378e3, A=8.4e-3) / 1e6, 6)
    45.0
    """
    require(A > 0, "a face must be above 0")
    return F / A


@formula("s = 0 m if σ ≤ R, else |Δ| (1 − R/σ)", cites=[FIRST_PRINCIPLES])
def set_left(Δ: Metres, R: Pascals, σ: Pascals) -> Metres:
    """What a place sets where the force of growth would stress it above its proof stress.

    s = 0 m if σ ≤ R, else |Δ| (1 − R/σ)

    ``Δ`` growth held back [m]; ``R`` proof stress; ``σ`` stress by growth if all stayed elastic [Pa]. Returns [m].

    Hand working: 1.49 mm, 200 of 250 MPa: 0.298 mm.

    >>> round(set_left(Δ=1.49e-3, R=200e6, σ=250e6) * 1e3, 6)
    0.298
    """
    if σ <= R:
        return 0 * Δ
    return abs(Δ) * (1 - R / σ)


@formula("N = max(δ − s, 0)/(w/(E A) + 1/k)", cites=[FIRST_PRINCIPLES])
def grip(δ: Metres, s: Metres, w: Metres, E: Pascals, A: SquareMetres, k: NewtonsPerMetre) -> Newtons:
    """Force by which the faces of a cut-out grip a pad.

    N = max(δ − s, 0)/(w/(E A) + 1/k)

    ``δ`` interference, ``s`` set, ``w`` width of the pad [m]; ``E`` its modulus [Pa]; ``A`` face [m²]; ``k`` stiffness
    of the cut-out against being spread [N/m]. Returns [N]. Raises OutOfRange unless all but δ and s are above 0.

    Hand working: 0.021183 mm, 220 mm of 207 GPa on 8400 mm² and 7.5e6 N/mm: 81.5 kN.

    >>> round(grip(δ=0.021183e-3, s=0.0, w=0.22, E=207e9, A=8.4e-3, k=7.5e9) / 1e3, 1)
    81.5
    """
    require(w > 0 and A > 0 and k > 0 * k, "width, face and stiffness of a pad must be above 0")
    return max(δ - s, 0 * δ) / (w / (E * A) + 1 / k)


@formula("N_l = N − P/2", cites=[FIRST_PRINCIPLES])
def grip_left(N: Newtons, P: Newtons) -> Newtons:
    """Grip that a thrust leaves on the face which it unloads: of two like faces each takes half.

    N_l = N − P/2

    ``N`` grip; ``P`` thrust on the pad [N]. Returns [N], below 0 where the face opens.

    >>> grip_left(N=100e3, P=163e3)
    18500.0
    """
    return N - P / 2


@formula("N_h = max(F − P, N_l)", cites=[FIRST_PRINCIPLES])
def grip_when_hot(F: Newtons, P: Newtons, N_l: Newtons) -> Newtons:
    """Grip of a pad that growth presses on its one face, or that its interference still grips.

    N_h = max(F − P, N_l)

    ``F`` force of growth; ``P`` thrust against it; ``N_l`` grip left by interference [N]. Returns [N].

    >>> grip_when_hot(F=375e3, P=163e3, N_l=-10e3)
    212000.0
    """
    return max(F - P, N_l)


@formula("δ_t = δ − z − 0.8 (R_p + R_s)", cites=[FIRST_PRINCIPLES])
def true_interference(δ: Metres, z: Metres, R_p: Metres, R_s: Metres) -> Metres:
    """Interference that is left of sizes when form and smoothing have taken their share.

    δ_t = δ − z − 0.8 (R_p + R_s)

    ``δ`` interference by the sizes; ``z`` form; ``R_p``, ``R_s`` mean roughness depths Rz of pad and cut-out [m].
    Returns [m].

    Hand working: 0.030 − 0.020 − 0.8 × 0.006 = 0.0052 mm.

    >>> round(true_interference(δ=0.030e-3, z=0.020e-3, R_p=3e-6, R_s=3e-6) * 1e3, 6)
    0.0052
    """
    return δ - z - 0.8 * (R_p + R_s)


@formula("F_o = 2 F + G", cites=[FIRST_PRINCIPLES])
def force_to_leave(F: Newtons, G: Newtons) -> Newtons:
    """Force that draws a rusted pad out: twice that to enter at high friction, and the weight.

    F_o = 2 F + G

    ``F`` force to enter at the greatest friction; ``G`` weight [N]. Returns [N].

    >>> force_to_leave(F=70e3, G=20e3)
    160000.0
    """
    return 2 * F + G
