"""Axial location of a liner: its collar, and the clearance at its free end."""

from __future__ import annotations

import math

from speclint import FIRST_PRINCIPLES, formula, require
from speclint.equations import Kelvins, Metres, Newtons, Pascals, PerKelvin, Ratio, SquareMetres
from speclint_liners.sources import SHIGLEY


@formula("c = L_b − L_l", cites=[FIRST_PRINCIPLES])
def room_at_free_end(L_b: Metres, L_l: Metres) -> Metres:
    """Clearance beyond the free end of a liner by the drawings.

    c = L_b − L_l

    ``L_b`` from the collar seat to the stop beyond the free end, ``L_l`` length of the liner [m].
    Returns [m], negative when the liner is too long.

    >>> round(room_at_free_end(L_b=0.902, L_l=0.900) * 1e3, 6)
    2.0
    """
    return L_b - L_l


@formula("c_h = c + L_b α_b (T_b − T_ref) − L_l α_l (T_l − T_ref)", cites=[FIRST_PRINCIPLES])
def room_left(
    c: Metres,
    L_b: Metres,
    alpha_b: PerKelvin,
    T_b: Kelvins,
    L_l: Metres,
    alpha_l: PerKelvin,
    T_l: Kelvins,
    T_ref: Kelvins,
) -> Metres:
    """Clearance beyond the free end of the liner, hot.

    c_h = c + L_b α_b (T_b − T_ref) − L_l α_l (T_l − T_ref)

    ``c`` clearance at ``T_ref``; ``L_b``, ``L_l`` lengths of block and liner from the collar seat [m]; ``alpha_b``,
    ``alpha_l`` mean coefficients from ``T_ref`` [1/K]; ``T_b``, ``T_l``, ``T_ref`` temperatures [K].
    Returns [m].

    Hand working: 2 mm; block 900 × 12e-6 × 40 = 0.432 mm, liner 900 × 11e-6 × 100 = 0.990 mm: 1.442 mm.

    >>> warm = {"alpha_b": 12e-6, "T_b": 333.15, "alpha_l": 11e-6, "T_l": 393.15}
    >>> round(room_left(c=2e-3, L_b=0.9, L_l=0.9, T_ref=293.15, **warm) * 1e3, 3)
    1.442
    """
    return c + L_b * alpha_b * (T_b - T_ref) - L_l * alpha_l * (T_l - T_ref)


@formula("n = b − h", cites=[FIRST_PRINCIPLES])
def collar_nip(b: Metres, h: Metres) -> Metres:
    """Nip of the collar: its height above the recess before the cover is tightened.

    n = b − h

    ``b`` thickness of the collar, ``h`` depth of the recess [m]. Returns [m]; negative when the collar lies below
    the face.

    >>> round(collar_nip(b=25.1e-3, h=25.0e-3) * 1e3, 6)
    0.1
    """
    return b - h


@formula("n_h = b (1 + α_l (T_l − T_ref)) − h (1 + α_b (T_b − T_ref))", cites=[FIRST_PRINCIPLES])
def collar_nip_hot(
    b: Metres,
    alpha_l: PerKelvin,
    T_l: Kelvins,
    h: Metres,
    alpha_b: PerKelvin,
    T_b: Kelvins,
    T_ref: Kelvins,
) -> Metres:
    """Nip of the collar with liner and block each at its own temperature.

    n_h = b (1 + α_l (T_l − T_ref)) − h (1 + α_b (T_b − T_ref))

    ``b`` thickness of the collar, ``h`` depth of the recess at ``T_ref`` [m]; ``alpha_l``, ``alpha_b`` mean
    coefficients of liner and block from ``T_ref`` [1/K]; ``T_l``, ``T_b``, ``T_ref`` temperatures [K].
    Returns [m]; negative when the collar lies low and the cover does not touch it.

    Hand working: 25.1 × (1 + 11e-6 × 180) − 25.0 × (1 + 13e-6 × 180) = 25.149698 − 25.0585 = 0.0912 mm.

    >>> hot = {"alpha_l": 11e-6, "T_l": 473.15, "alpha_b": 13e-6, "T_b": 473.15, "T_ref": 293.15}
    >>> round(collar_nip_hot(b=25.1e-3, h=25.0e-3, **hot) * 1e3, 6)
    0.091198
    """
    return b * (1 + alpha_l * (T_l - T_ref)) - h * (1 + alpha_b * (T_b - T_ref))


@formula("F = p π (D² − d²)/4", cites=[FIRST_PRINCIPLES])
def steam_on_liner_end(p: Pascals, D: Metres, d: Metres) -> Newtons:
    """Force by which steam at one end moves a loose liner along its bore.

    F = p π (D² − d²)/4

    ``p`` pressure, gauge [Pa]; ``D`` outside, ``d`` bore of the liner [m]. Returns [N].
    Raises OutOfRange unless d < D.

    Hand working: 16.6 bar on 500/560 mm: 1.66 × π (560² − 500²)/4 = 82.92 kN.

    >>> round(steam_on_liner_end(p=1.66e6, D=0.560, d=0.500) / 1e3, 2)
    82.92
    """
    require(d < D, f"bore {d * 1e3:.6g} mm leaves no wall within {D * 1e3:.6g} mm")
    return p * math.pi * (D**2 - d**2) / 4


@formula("τ = 4 F/(n π d²)", cites=[FIRST_PRINCIPLES])
def dowel_shear(F: Newtons, n: Ratio, d: Metres) -> Pascals:
    """Mean shear of the dowels that hold a loose liner.

    τ = 4 F/(n π d²)

    ``F`` force along the bore [N]; ``n`` number of dowels [-]; ``d`` diameter of each [m]. Returns [Pa].
    Raises OutOfRange unless n and d are above 0.

    Hand working: 80 kN on two of 25 mm: 80000/(2 × 490.874) = 81.487 MPa.

    >>> round(dowel_shear(F=80e3, n=2, d=0.025) / 1e6, 3)
    81.487
    """
    require(n > 0 and d > 0, f"{n:g} dowels of {d * 1e3:.6g} mm hold nothing")
    return 4 * F / (n * math.pi * d**2)


@formula("σ = F/(n d L)", cites=[FIRST_PRINCIPLES])
def dowel_bearing(F: Newtons, n: Ratio, d: Metres, L: Metres) -> Pascals:
    """Bearing pressure of the dowels on the iron of the liner.

    σ = F/(n d L)

    ``F`` force along the bore [N]; ``n`` number of dowels [-]; ``d`` diameter, ``L`` depth of each in the
    liner [m]. Returns [Pa]. Raises OutOfRange unless n, d and L are above 0.

    >>> round(dowel_bearing(F=80e3, n=2, d=0.025, L=0.016) / 1e6, 6)
    100.0
    """
    require(n > 0 and d > 0 and L > 0, f"{n:g} dowels of {d * 1e3:.6g} mm by {L * 1e3:.6g} mm hold nothing")
    return F / (n * d * L)


@formula("w = (D_c − D_b)/2 − k", cites=[FIRST_PRINCIPLES])
def collar_seat_width(D_c: Metres, D_b: Metres, k: Metres) -> Metres:
    """Width of the ring on which a collar sits in its recess.

    w = (D_c − D_b)/2 − k

    ``D_c`` outside of the collar, ``D_b`` bore of the block, ``k`` chamfer of its edge [m]. Returns [m], negative
    when the collar passes through.

    >>> round(collar_seat_width(D_c=0.600, D_b=0.560, k=0.004) * 1e3, 6)
    16.0
    """
    return (D_c - D_b) / 2 - k


@formula("A = π (D_c² − (D_b + 2 k)²)/4", cites=[FIRST_PRINCIPLES])
def collar_seat_area(D_c: Metres, D_b: Metres, k: Metres) -> SquareMetres:
    """Area on which a collar sits in its recess.

    A = π (D_c² − (D_b + 2 k)²)/4

    ``D_c`` outside of the collar, ``D_b`` bore of the block, ``k`` chamfer of its edge [m]. Returns [m²].
    Raises OutOfRange when the chamfer leaves no seat.

    Hand working: π (0.600² − 0.568²)/4 = 0.029355 m².

    >>> round(collar_seat_area(D_c=0.600, D_b=0.560, k=0.004), 6)
    0.029355
    """
    inside = D_b + 2 * k
    require(D_c > inside, f"collar {D_c * 1e3:.6g} mm leaves no seat outside {inside * 1e3:.6g} mm")
    return math.pi * (D_c**2 - inside**2) / 4


@formula("τ = F/(π D b)", cites=[FIRST_PRINCIPLES])
def collar_shear(F: Newtons, D: Metres, b: Metres) -> Pascals:
    """Mean shear where the collar joins the barrel.

    τ = F/(π D b)

    ``F`` force on the collar [N]; ``D`` outside of the barrel, ``b`` thickness of the collar [m]. Returns [Pa].

    Hand working: 200 kN/(π × 560 × 25 mm²) = 4.547 MPa.

    >>> round(collar_shear(F=200e3, D=0.560, b=0.025) / 1e6, 3)
    4.547
    """
    return F / (math.pi * D * b)


@formula("σ = 6 F |D_k − D_s|/2/(π D b²)", cites=[SHIGLEY.at("ch. 3, bending of a strip"), FIRST_PRINCIPLES])
def collar_bending(F: Newtons, D_k: Metres, D_s: Metres, D: Metres, b: Metres) -> Pascals:
    """Bending stress where the collar joins the barrel, when it is pressed on one circle and sits on another.

    σ = 6 F |D_k − D_s|/2/(π D b²)

    ``F`` force on the collar [N]; ``D_k`` circle on which the cover presses, ``D_s`` middle circle of the
    seat, ``D`` outside of the barrel, ``b`` thickness of the collar [m]. Returns [Pa]. A strip round the barrel
    without support from hoop stress, which is
    conservative.

    Hand working: 200 kN, circles 590 and 584 mm, arm 3 mm: 6 × 200000 × 3/(π × 560 × 25²) = 3.274 MPa.

    >>> round(collar_bending(F=200e3, D_k=0.590, D_s=0.584, D=0.560, b=0.025) / 1e6, 3)
    3.274
    """
    return 6 * F * (abs(D_k - D_s) / 2) / (math.pi * D * b**2)


@formula("D_s = (D_c + D_b + 2 k)/2", cites=[FIRST_PRINCIPLES])
def seat_circle(D_c: Metres, D_b: Metres, k: Metres) -> Metres:
    """Middle circle of the seat of the collar.

    D_s = (D_c + D_b + 2 k)/2

    ``D_c`` outside of the collar, ``D_b`` bore of the block, ``k`` chamfer of its edge [m]. Returns [m].

    >>> round(seat_circle(D_c=0.600, D_b=0.560, k=0.004), 6)
    0.584
    """
    return (D_c + D_b + 2 * k) / 2


@formula("L = x_2 − x_1", cites=[FIRST_PRINCIPLES])
def land_length(x_1: Metres, x_2: Metres) -> Metres:
    """Length of a sealing land.

    L = x_2 − x_1

    ``x_1``, ``x_2`` its beginning and its end, from the collar's seat [m]. Returns [m].

    >>> round(land_length(x_1=0.005, x_2=0.035) * 1e3, 6)
    30.0
    """
    return x_2 - x_1
