"""The fit of a seat ring in its bore, and the load that pulls it out."""

from __future__ import annotations

import math

from speclint import FIRST_PRINCIPLES, formula, require
from speclint.equations import Metres, Newtons, Pascals, Ratio
from speclint.handbook.fits import SHRINK_FIT


@formula("p = δ/(D (((D² + d²)/(D² − d²) − ν_s)/E_s + (1 + ν_b)/E_b))", cites=SHRINK_FIT)
def pressure_in_solid_block(
    delta: Metres, d: Metres, D: Metres, E_s: Pascals, nu_s: Ratio, E_b: Pascals, nu_b: Ratio
) -> Pascals:
    """Contact pressure of a ring in a block so thick all round that no free edge eases it.

    p = δ/(D (((D² + d²)/(D² − d²) − ν_s)/E_s + (1 + ν_b)/E_b))

    ``delta`` diametral interference, not below 0, ``d`` bore of the ring, ``D`` joint [m]; ``E_s``, ``E_b`` moduli of
    elasticity of ring and block [Pa]; ``nu_s``, ``nu_b`` Poisson's ratios of ring and block. Returns [Pa]. It is the
    greatest that any wall behind the ring can give. Raises OutOfRange unless 0 < d < D.

    Hand working, steel throughout, 0.2 mm, 170/200 mm: (68900/11100 − 0.3 + 1.3)/200000 = 3.6036e-5 per MPa;
    0.2/200/3.6036e-5 = 27.750 MPa.

    >>> steel = {"E_s": 200e9, "nu_s": 0.3, "E_b": 200e9, "nu_b": 0.3}
    >>> round(pressure_in_solid_block(delta=0.2e-3, d=0.170, D=0.200, **steel) / 1e6, 2)
    27.75
    """
    require(0 < d < D, f"bore {d * 1e3:.6g} mm is not between 0 and the joint {D * 1e3:.6g} mm")
    inner = ((D**2 + d**2) / (D**2 - d**2) - nu_s) / E_s
    return delta / (D * (inner + (1 + nu_b) / E_b))


@formula("L = min(L_s, L_b)", cites=[FIRST_PRINCIPLES])
def length_in_contact(L_s: Metres, L_b: Metres) -> Metres:
    """Length over which a seat touches its bore.

    L = min(L_s, L_b)

    ``L_s`` length of the seat's joint, ``L_b`` depth of the bore [m]. Returns [m].

    >>> length_in_contact(L_s=0.028, L_b=0.008)
    0.008
    """
    return min(L_s, L_b)


@formula("F = π/4 (D² − d²) max(p_b − p_f, 0) + F_d", cites=[FIRST_PRINCIPLES])
def withdrawing_load(D: Metres, d: Metres, p_b: Pascals, p_f: Pascals, F_d: Newtons) -> Newtons:
    """Load that pulls the ring out of its bore.

    F = π/4 (D² − d²) max(p_b − p_f, 0) + F_d

    ``D`` joint, ``d`` bore of the ring [m]; ``p_b`` pressure behind the ring and ``p_f`` on the side to which
    it would come out [Pa], from the same datum; ``F_d`` pull of a sticking valve [N]. Returns [N].
    Pressure in the other direction presses the ring in and counts as zero. Raises OutOfRange unless 0 < d < D.

    Hand working: π/4 (200² − 170²) mm² × 0.24 MPa + 500 N = 8717.9 × 0.24 + 500 = 2592.3 N.

    >>> round(withdrawing_load(D=0.200, d=0.170, p_b=0.25e6, p_f=0.01e6, F_d=500.0), 1)
    2592.3
    """
    require(0 < d < D, f"bore {d * 1e3:.6g} mm is not between 0 and the joint {D * 1e3:.6g} mm")
    excess = max(p_b - p_f, 0 * p_b)
    return math.pi / 4 * (D**2 - d**2) * excess + F_d
