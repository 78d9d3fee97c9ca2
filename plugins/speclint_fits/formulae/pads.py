"""Pads of a block in the cut-outs of its frames: thermal growth, contact pressure, force to draw a pad in."""

from __future__ import annotations

from speclint import FIRST_PRINCIPLES, formula, require
from speclint.equations import (
    Kilograms,
    Metres,
    MetresPerSecondSquared,
    Newtons,
    NewtonsPerMetre,
    Pascals,
    Ratio,
    SquareMetres,
)


@formula("δ_h = δ + g", cites=[FIRST_PRINCIPLES])
def grown(delta: Metres, g: Metres) -> Metres:
    """Interference of a pad in its cut-out with thermal growth added.

    δ_h = δ + g

    ``delta`` interference cold, negative for a clearance; ``g`` growth [m]. Returns [m].

    >>> round(grown(delta=0.03e-3, g=0.25e-3) * 1e3, 6)
    0.28
    """
    return delta + g


@formula("L = |a| + w/2", cites=[FIRST_PRINCIPLES])
def far_side(a: Metres, w: Metres) -> Metres:
    """Distance from the fixed point to the far side of a pad.

    L = |a| + w/2

    ``a`` distance to the middle of the pad, on either side of the fixed point; ``w`` width of the pad [m].
    Returns [m].

    >>> round(far_side(a=-0.620, w=0.180) * 1e3, 6)
    710.0
    """
    return abs(a) + w / 2


@formula("r_h = r − g", cites=[FIRST_PRINCIPLES])
def room_left(r: Metres, g: Metres) -> Metres:
    """Clearance left hot.

    r_h = r − g

    ``r`` clearance cold, ``g`` growth [m]. Returns [m], negative when the part strikes the end.

    >>> round(room_left(r=2e-3, g=1.5e-3) * 1e3, 6)
    0.5
    """
    return r - g


@formula("σ = E max(δ, 0)/w", cites=[FIRST_PRINCIPLES])
def wedged_stress(delta: Metres, w: Metres, E: Pascals) -> Pascals:
    """Compressive stress of a pad with interference between rigid faces.

    σ = E max(δ, 0)/w

    ``delta`` interference, without stress below 0; ``w`` width of the pad [m]; ``E`` its modulus [Pa].
    Returns [Pa]. No frame is rigid: the real stress is lower.

    Hand working: 0.25 mm in 200 mm at 200 GPa: 250 MPa.

    >>> round(wedged_stress(delta=0.25e-3, w=0.200, E=200e9) / 1e6, 6)
    250.0
    """
    require(w > 0, f"width {w * 1e3:.6g} mm is not above 0")
    return E * max(delta, 0 * delta) / w


@formula("σ = max(δ, 0)/(w/E + A/k)", cites=[FIRST_PRINCIPLES])
def wedged_stress_in_slot(
    delta: Metres, w: Metres, E: Pascals, A: SquareMetres, k: NewtonsPerMetre
) -> Pascals:
    """Compressive stress of a pad with interference in a cut-out that yields elastically.

    σ = max(δ, 0)/(w/E + A/k)

    ``delta`` interference, without stress below 0; ``w`` width of the pad [m]; ``E`` its modulus [Pa];
    ``A`` face in contact [m²]; ``k`` stiffness of the cut-out, force per opening [N/m]. Returns [Pa].
    Raises OutOfRange unless w and k are above 0.

    Hand working: 0.25 mm, 200 mm, 200 GPa; 30 000 mm² and 30e9 N/m have the same flexibility as the pad: half of
    250 MPa.

    >>> round(wedged_stress_in_slot(delta=0.25e-3, w=0.200, E=200e9, A=0.030, k=30e9) / 1e6, 6)
    125.0
    """
    require(w > 0 and k > 0, f"width {w * 1e3:.6g} mm and stiffness {k / 1e3:.6g} N/mm must be above 0")
    return max(delta, 0 * delta) / (w / E + A / k)


@formula("T = F + m k g", cites=[FIRST_PRINCIPLES])
def thrust_on_pad(F: Newtons, m: Kilograms, k: Ratio, g: MetresPerSecondSquared) -> Newtons:
    """Thrust along the frame on the pad that locates the block: steam on a cover, and buffing.

    T = F + m k g

    ``F`` force of the steam [N]; ``m`` mass of the block with all that hangs on it [kg]; ``k`` greatest acceleration
    in buffing, in times gravity [-]; ``g`` gravity [m/s²]. Returns [N].

    Hand working: 326 kN, 2200 kg at three times gravity: 326 + 64.724 = 390.724 kN.

    >>> round(thrust_on_pad(F=326e3, m=2200.0, k=3.0, g=9.80665) / 1e3, 3)
    390.724
    """
    return F + m * k * g


@formula("σ_t = σ + T/A", cites=[FIRST_PRINCIPLES])
def bearing_with_thrust(sigma: Pascals, T: Newtons, A: SquareMetres) -> Pascals:
    """Pressure on the face of a wedged pad that takes the thrust as well.

    σ_t = σ + T/A

    ``sigma`` pressure of the wedged pad [Pa]; ``T`` thrust along the frame [N]; ``A`` one face [m²]. Returns [Pa].
    On the safe side: part of the thrust eases the other face. Raises OutOfRange unless A > 0.

    Hand working: 119 MPa, and 420 kN on 8400 mm², 50 MPa: 169 MPa.

    >>> round(bearing_with_thrust(sigma=119e6, T=420e3, A=8.4e-3) / 1e6, 6)
    169.0
    """
    require(A > 0, f"face {A * 1e6:.6g} mm² is not above 0")
    return sigma + T / A


@formula("F = 2 μ σ A", cites=[FIRST_PRINCIPLES])
def force_to_enter(mu: Ratio, sigma: Pascals, A: SquareMetres) -> Newtons:
    """Force that draws a pad with interference into its cut-out, against friction on both faces.

    F = 2 μ σ A

    ``mu`` friction [-]; ``sigma`` pressure on each face [Pa]; ``A`` one face [m²]. Returns [N].

    Hand working: 2 × 0.15 × 50 MPa × 30 000 mm² = 450 kN.

    >>> round(force_to_enter(mu=0.15, sigma=50e6, A=0.030))
    450000
    """
    return 2 * mu * sigma * A


@formula("z = (2 f_p + 2 f_s + q_p + q_s)/2", cites=[FIRST_PRINCIPLES])
def out_of_form(f_p: Metres, f_s: Metres, q_p: Metres, q_s: Metres) -> Metres:
    """What the form of a pad and of its cut-out, each with two faces, may take from their interference, or add to it.

    z = (2 f_p + 2 f_s + q_p + q_s)/2

    ``f_p``, ``f_s`` flatness of each face; ``q_p``, ``q_s`` squareness over the height in contact [m]. Returns [m].

    Hand working, ground faces flat to 0.01 mm: (0.02 + 0.02)/2 = 0.02 mm.

    >>> round(out_of_form(f_p=10e-6, f_s=10e-6, q_p=0.0, q_s=0.0) * 1e3, 6)
    0.02
    """
    return (2 * f_p + 2 * f_s + q_p + q_s) / 2
