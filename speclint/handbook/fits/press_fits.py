"""Press and shrink fits of two round parts: pressure, stress and grip.

The inner part has a bore ``d_in`` (0 for a solid one) and the outer part an outside ``D_out``; they meet at
``D``. Interference is diametral and positive when the parts overlap. Elastic, plane stress, as long as
neither part yields; ends of a hub stressed above the mean are not counted. What heat does to a fit is in
``hot_sizes``.
"""

from __future__ import annotations

import math

from speclint.equations import (
    FIRST_PRINCIPLES,
    Metres,
    NewtonMetres,
    Newtons,
    Pascals,
    Ratio,
    Source,
    formula,
    require,
)
from speclint.handbook.cylinders import (
    BORESI,
    TIMOSHENKO,
    bore_hoop_stress,
    bore_hoop_stress_between_pressures,
    outside_growth,
)

DIN_7190_SMOOTHING = Source(
    "DIN 7190-1, Interference fits: calculation and design",
    "2017",
    "smoothing, as reproduced in a public calculation with a note on both editions",
)
DIN_7190_2001 = Source(
    "DIN 7190, Interference fits: calculation and design rules",
    "2001",
    "smoothing, as reproduced in public calculations of fits",
)
SHRINK_FIT = (
    BORESI.at("ch. 11, shrink-fit composite cylinders"),
    TIMOSHENKO.at("ch. VI, shrink-fit stresses"),
)


@formula(
    "p = δ/(D (((D² + d_in²)/(D² − d_in²) − ν_in)/E_in + ((D_out² + D²)/(D_out² − D²) + ν_out)/E_out))",
    cites=SHRINK_FIT,
)
def contact_pressure(
    delta: Metres,
    d_in: Metres,
    D: Metres,
    D_out: Metres,
    E_in: Pascals,
    nu_in: Ratio,
    E_out: Pascals,
    nu_out: Ratio,
) -> Pascals:
    """Pressure between two parts forced together.

    p = δ/(D (((D² + d_in²)/(D² − d_in²) − ν_in)/E_in + ((D_out² + D²)/(D_out² − D²) + ν_out)/E_out))

    ``delta`` diametral interference [m]; ``d_in`` bore of the inner part (0 if solid), ``D`` joint, ``D_out`` outside
    of the outer part [m]; ``E_in``, ``E_out`` moduli of elasticity of the inner and the outer part [Pa]; ``nu_in``,
    ``nu_out`` Poisson's ratios of the inner and the outer part. Returns [Pa]. Raises OutOfRange for a clearance, or
    unless 0 ≤ d_in < D < D_out.

    Bhavikatti, example 8.8.16: 0.189 mm radial interference of 200/250/300 mm steel rings gives 30 MPa;
    by hand, unrounded, 250 (166.364 + 136.667)/200000 = 0.3788 mm on the diameter.

    >>> steel = {"E_in": 200e9, "nu_in": 0.3, "E_out": 200e9, "nu_out": 0.3}
    >>> round(contact_pressure(delta=0.3788e-3, d_in=0.200, D=0.250, D_out=0.300, **steel) / 1e6, 2)
    30.0
    """
    require(delta >= 0, f"the interference {delta * 1e3:.6g} mm is negative: the parts are loose")
    return delta / _yielding(d_in, D, D_out, E_in, nu_in, E_out, nu_out)


@formula(
    "δ = p D (((D² + d_in²)/(D² − d_in²) − ν_in)/E_in + ((D_out² + D²)/(D_out² − D²) + ν_out)/E_out)",
    cites=SHRINK_FIT,
)
def interference_for_pressure(
    p: Pascals,
    d_in: Metres,
    D: Metres,
    D_out: Metres,
    E_in: Pascals,
    nu_in: Ratio,
    E_out: Pascals,
    nu_out: Ratio,
) -> Metres:
    """Diametral interference that gives a wanted contact pressure: the inverse of ``contact_pressure``.

    δ = p D (((D² + d_in²)/(D² − d_in²) − ν_in)/E_in + ((D_out² + D²)/(D_out² − D²) + ν_out)/E_out)

    ``p`` contact pressure [Pa]. Other arguments as for ``contact_pressure``. Returns [m]. Raises OutOfRange unless 0 ≤
    d_in < D < D_out.

    Bhavikatti, example 8.8.16: 2 × 0.189 mm; unrounded, 250 (166.364 + 136.667)/200000 = 0.379 mm.

    >>> steel = {"E_in": 200e9, "nu_in": 0.3, "E_out": 200e9, "nu_out": 0.3}
    >>> round(interference_for_pressure(p=30e6, d_in=0.200, D=0.250, D_out=0.300, **steel) * 1e3, 3)
    0.379
    """
    return p * _yielding(d_in, D, D_out, E_in, nu_in, E_out, nu_out)


@formula("δ_w = δ − 0.8 (Rz_in + Rz_out)", cites=[DIN_7190_2001])
def interference_after_smoothing(delta: Metres, Rz_in: Metres, Rz_out: Metres) -> Metres:
    """Interference that is sure to be left for the grip when both faces have been smoothed.

    δ_w = δ − 0.8 (Rz_in + Rz_out)

    ``delta`` measured interference [m]; ``Rz_in``, ``Rz_out`` mean roughness depths of both faces [m].
    Returns [m]; negative when the roughness takes up the whole interference. A part shrunk in by heat or cold loses
    less; the standard takes the same figure. The edition of 2017 deducts half as much
    (``interference_after_light_smoothing``): the older one is conservative for a fit that must hold.

    Hand working: 0.100 mm less 0.8 × (6.3 + 10) µm.

    >>> round(interference_after_smoothing(delta=0.100e-3, Rz_in=6.3e-6, Rz_out=10e-6) * 1e6, 2)
    86.96
    """
    return delta - 0.8 * (Rz_in + Rz_out)


@formula("δ_w = δ − 0.4 (Rz_in + Rz_out)", cites=[DIN_7190_SMOOTHING])
def interference_after_light_smoothing(delta: Metres, Rz_in: Metres, Rz_out: Metres) -> Metres:
    """Interference that may be left to press and to stress both parts when their faces have been smoothed.

    δ_w = δ − 0.4 (Rz_in + Rz_out)

    ``delta`` measured interference [m]; ``Rz_in``, ``Rz_out`` mean roughness depths of both faces [m].
    Returns [m]. For the greatest pressure; for the least, ``interference_after_smoothing``.

    Hand working: 0.100 mm less 0.4 × (6.3 + 10) µm.

    >>> round(interference_after_light_smoothing(delta=0.100e-3, Rz_in=6.3e-6, Rz_out=10e-6) * 1e6, 2)
    93.48
    """
    return delta - 0.4 * (Rz_in + Rz_out)


@formula("δ_p = max(δ, 0)", cites=[FIRST_PRINCIPLES])
def pressing_interference(delta: Metres) -> Metres:
    """Interference that gives contact pressure: zero where the parts are loose.

    δ_p = max(δ, 0)

    ``delta`` diametral interference, negative for a clearance [m]. Returns [m].

    >>> pressing_interference(delta=-0.1e-3), pressing_interference(delta=0.1e-3)
    (0.0, 0.0001)
    """
    return (delta + abs(delta)) / 2


@formula("σ = p (D_out² + D²)/(D_out² − D²)", cites=SHRINK_FIT)
def outer_hoop_stress(p: Pascals, D: Metres, D_out: Metres) -> Pascals:
    """Hoop stress in the bore of the outer part, its greatest tension.

    σ = p (D_out² + D²)/(D_out² − D²)

    ``p`` contact pressure [Pa]; ``D`` joint, ``D_out`` outside [m]. Returns [Pa].
    Raises OutOfRange unless 0 < D < D_out.

    Boresi and Schmidt, example 11.3: 314.94 MPa.

    >>> round(outer_hoop_stress(p=188.97e6, D=0.050, D_out=0.100) / 1e6, 2)
    314.95
    """
    return bore_hoop_stress(p, D, D_out)


@formula("σ_T = 2 p D_out²/(D_out² − D²)", cites=SHRINK_FIT)
def outer_tresca_stress(p: Pascals, D: Metres, D_out: Metres) -> Pascals:
    """Tresca's stress in the bore of the outer part: hoop tension plus contact pressure.

    σ_T = 2 p D_out²/(D_out² − D²)

    ``p`` contact pressure [Pa]; ``D`` joint, ``D_out`` outside [m]. Returns [Pa], to be held against yield.
    Raises OutOfRange unless 0 < D < D_out.

    Boresi and Schmidt, example 11.3: 314.94 + 188.97 = 503.9 MPa.

    >>> round(outer_tresca_stress(p=188.97e6, D=0.050, D_out=0.100) / 1e6, 1)
    503.9
    """
    return bore_hoop_stress(p, D, D_out) + p


@formula("σ = −2 p D²/(D² − d_in²)", cites=SHRINK_FIT)
def inner_hoop_stress(p: Pascals, d_in: Metres, D: Metres) -> Pascals:
    """Hoop stress in the bore of a hollow inner part: its greatest compression, and its Tresca stress too.

    σ = −2 p D²/(D² − d_in²)

    ``p`` contact pressure [Pa]; ``d_in`` bore, ``D`` joint [m]. Returns [Pa], negative.
    Raises OutOfRange unless 0 < d_in < D: a solid part has −p throughout, half of what the smallest bore has.

    Boresi and Schmidt, example 11.3: −449.92 MPa.

    >>> round(inner_hoop_stress(p=188.97e6, d_in=0.020, D=0.050) / 1e6, 2)
    -449.93
    """
    return bore_hoop_stress_between_pressures(0 * p, p, d_in, D)


@formula("σ_s = |σ|", cites=[FIRST_PRINCIPLES])
def size_of_stress(sigma: Pascals) -> Pascals:
    """Magnitude of the hoop stress.

    σ_s = |σ|

    ``sigma`` stress, tension positive [Pa]. Returns [Pa].

    >>> size_of_stress(sigma=-60e6)
    60000000.0
    """
    return abs(sigma)


@formula("Δd = 2 p D² d_in/(E_in (D² − d_in²))", cites=SHRINK_FIT)
def bore_closing(p: Pascals, d_in: Metres, D: Metres, E_in: Pascals) -> Metres:
    """How much the bore of the inner part closes when it is pressed in.

    Δd = 2 p D² d_in/(E_in (D² − d_in²))

    ``p`` contact pressure [Pa]; ``d_in`` bore, ``D`` joint [m]; ``E_in`` modulus of the inner part [Pa].
    Returns [m], positive for closing, diametral. Raises OutOfRange unless 0 < d_in < D.

    Hand working: 10 MPa on 500/550 mm, 100 GPa: 2 × 10e6 × 0.3025 × 0.5/(100e9 × 0.0525) = 0.576 mm.

    >>> round(bore_closing(p=10e6, d_in=0.500, D=0.550, E_in=100e9) * 1e3, 3)
    0.576
    """
    return -inner_hoop_stress(p, d_in, D) * d_in / E_in


@formula("ΔD = 2 p D² D_out/(E_out (D_out² − D²))", cites=SHRINK_FIT)
def outer_growth(p: Pascals, D: Metres, D_out: Metres, E_out: Pascals) -> Metres:
    """How much the outside of the outer part grows when the inner one is pressed in.

    ΔD = 2 p D² D_out/(E_out (D_out² − D²))

    ``p`` contact pressure [Pa]; ``D`` joint, ``D_out`` outside [m]; ``E_out`` modulus of the outer part [Pa].
    Returns [m], diametral. Raises OutOfRange unless 0 < D < D_out.

    Hand working: 10 MPa, 100/200 mm, 200 GPa: 2 × 10e6 × 0.01 × 0.2/(200e9 × 0.03) = 6.667 µm.

    >>> round(outer_growth(p=10e6, D=0.1, D_out=0.2, E_out=200e9) * 1e6, 3)
    6.667
    """
    return outside_growth(p, D, D_out, E_out)


@formula("F = μ p π D L", cites=[FIRST_PRINCIPLES])
def axial_grip(mu: Ratio, p: Pascals, D: Metres, L: Metres) -> Newtons:
    """Axial force that a press fit holds, or that presses it in over its full length.

    F = μ p π D L

    ``mu`` friction: its low value for holding, its high one for the press [-]; ``p`` contact pressure [Pa];
    ``D`` joint, ``L`` length in contact [m]. Returns [N].

    Hand working: 0.12 × 41.84 MPa × π × 220 × 180 mm² = 624.63 kN.

    >>> round(axial_grip(mu=0.12, p=41.84e6, D=0.220, L=0.180) / 1e3, 1)
    624.6
    """
    return mu * p * math.pi * D * L


@formula("M = μ p π D² L/2", cites=[FIRST_PRINCIPLES])
def torque_grip(mu: Ratio, p: Pascals, D: Metres, L: Metres) -> NewtonMetres:
    """Torque that a press fit holds before it slips.

    M = μ p π D² L/2

    ``mu`` friction, its low value [-]; ``p`` contact pressure [Pa]; ``D`` joint, ``L`` length in contact [m].
    Returns [N·m].

    Hand working: 624.63 kN × 0.22 m/2 = 68.709 kN·m.

    >>> round(torque_grip(mu=0.12, p=41.84e6, D=0.220, L=0.180) / 1e3, 2)
    68.71
    """
    return axial_grip(mu, p, D, L) * D / 2


def _yielding(
    d_in: float, D: float, D_out: float, E_in: float, nu_in: float, E_out: float, nu_out: float
) -> float:
    """Overlap that the parts take up per unit of contact pressure."""
    require(
        0 <= d_in < D < D_out,
        f"bore {d_in * 1e3:.6g} mm, joint {D * 1e3:.6g} mm, outside {D_out * 1e3:.6g} mm: not three rising diameters",
    )
    inner = ((D**2 + d_in**2) / (D**2 - d_in**2) - nu_in) / E_in
    outer = ((D_out**2 + D**2) / (D_out**2 - D**2) + nu_out) / E_out
    return D * (inner + outer)
