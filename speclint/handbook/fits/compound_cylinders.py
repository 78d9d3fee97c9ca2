"""A liner within a shell: pressed in, just touching, or loose with a hot gap that the pressure closes first.

One relation covers all three. The liner's outside expands under the pressure inside; expansion beyond
the gap causes a pressure between the two rings. A gap is written as a positive ``c``,
an interference as a negative one, both diametral. Plane rings with open ends, round and concentric;
no help from collars, ribs or ends is counted.
"""

from __future__ import annotations

from speclint.equations import FIRST_PRINCIPLES, Metres, Pascals, Ratio, formula, require
from speclint.handbook.cylinders import (
    BORESI,
    TIMOSHENKO,
    bore_hoop_stress,
    bore_hoop_stress_between_pressures,
    outside_growth,
)
from speclint.handbook.fits.press_fits import contact_pressure

COMPOUND = (BORESI.at("ch. 11, shrink-fit composite cylinders"), TIMOSHENKO.at("ch. VI, shrink-fit stresses"))


@formula("p_c = c E (D² − d²)/(2 d² D)", cites=[TIMOSHENKO, FIRST_PRINCIPLES])
def pressure_that_closes_gap(c: Metres, d: Metres, D: Metres, E: Pascals) -> Pascals:
    """Pressure inside a loose liner at which it first touches its shell.

    p_c = c E (D² − d²)/(2 d² D)

    ``c`` diametral gap [m]; ``d``, ``D`` bore and outside of the liner [m]; ``E`` its modulus [Pa].
    Returns [Pa]. Raises OutOfRange for a negative gap, or unless 0 < d < D.

    Hand working: 0.1 mm round a 500/550 mm liner of 100 GPa:
    1e-4 × 100e9 × 0.0525/(2 × 0.25 × 0.55) = 1.909 MPa.

    >>> round(pressure_that_closes_gap(c=0.1e-3, d=0.500, D=0.550, E=100e9) / 1e6, 3)
    1.909
    """
    require(c >= 0, f"the gap {c * 1e3:.6g} mm is negative: the parts already touch")
    require(0 < d < D, f"bore {d * 1e3:.6g} mm is not between 0 and the outside diameter {D * 1e3:.6g} mm")
    return c * E * (D**2 - d**2) / (2 * d**2 * D)


@formula(
    "q = max(0, 2 p d² D/(E (D² − d²)) − c)/(D (((D² + d²)/(D² − d²) − ν)/E + ((D_s² + D²)/(D_s² − "
    "D²) + ν_s)/E_s))",
    cites=COMPOUND,
)
def shell_pressure(
    p: Pascals,
    c: Metres,
    d: Metres,
    D: Metres,
    D_s: Metres,
    E: Pascals,
    nu: Ratio,
    E_s: Pascals,
    nu_s: Ratio,
) -> Pascals:
    """Contact pressure between liner and shell: zero until the gap is closed.

    q = max(0, (free growth of the liner − c)/(compliance of both rings per unit of pressure)), where
    free growth = 2 p d² D/(E (D² − d²)) and
    compliance = D (((D² + d²)/(D² − d²) − ν)/E + ((D_s² + D²)/(D_s² − D²) + ν_s)/E_s)

    ``p`` pressure inside [Pa]; ``c`` diametral gap [m], negative for an interference; ``d``, ``D`` bore and outside of
    the liner, ``D_s`` outside of the shell [m]; ``E``, ``E_s`` moduli of elasticity of liner and shell [Pa]; ``nu``,
    ``nu_s`` Poisson's ratios of liner and shell. Returns [Pa]. Raises OutOfRange unless 0 < d < D < D_s.

    Hand working, one metal throughout, touching: q is Lamé's radial pressure at D in one thick cylinder,
    10 MPa in 100/200/300 mm: 10 × (1/0.04 − 1/0.09)/(1/0.01 − 1/0.09) = 1.5625 MPa.

    >>> one_metal = {"E": 200e9, "nu": 0.3, "E_s": 200e9, "nu_s": 0.3}
    >>> round(shell_pressure(p=10e6, c=0.0, d=0.1, D=0.2, D_s=0.3, **one_metal) / 1e6, 4)
    1.5625
    """
    overlap = outside_growth(p, d, D, E) - c
    return contact_pressure(max(overlap, 0 * overlap), d, D, D_s, E, nu, E_s, nu_s)


@formula("σ = (p (D² + d²) − 2 q D²)/(D² − d²), q = q(p, c, d, D, D_s, E, ν, E_s, ν_s)", cites=COMPOUND)
def supported_bore_hoop_stress(
    p: Pascals,
    c: Metres,
    d: Metres,
    D: Metres,
    D_s: Metres,
    E: Pascals,
    nu: Ratio,
    E_s: Pascals,
    nu_s: Ratio,
) -> Pascals:
    """Hoop stress at the bore of a liner that its shell supports once the gap, if any, is closed.

    σ = (p (D² + d²) − 2 q D²)/(D² − d²), q the shell pressure

    Arguments, range and errors as for ``shell_pressure``. Returns [Pa].
    With ``c`` beyond the liner's free growth this is Lamé's stress of the liner alone.

    Hand working, as there: (10 × 0.05 − 2 × 1.5625 × 0.04)/0.03 = 12.5 MPa, Lamé's for 100/300 mm.

    >>> one_metal = {"E": 200e9, "nu": 0.3, "E_s": 200e9, "nu_s": 0.3}
    >>> round(supported_bore_hoop_stress(p=10e6, c=0.0, d=0.1, D=0.2, D_s=0.3, **one_metal) / 1e6, 3)
    12.5
    """
    q = shell_pressure(p, c, d, D, D_s, E, nu, E_s, nu_s)
    return bore_hoop_stress_between_pressures(p, q, d, D)


@formula("σ_s = q (D_s² + D²)/(D_s² − D²), q = q(p, c, d, D, D_s, E, ν, E_s, ν_s)", cites=COMPOUND)
def shell_bore_hoop_stress(
    p: Pascals,
    c: Metres,
    d: Metres,
    D: Metres,
    D_s: Metres,
    E: Pascals,
    nu: Ratio,
    E_s: Pascals,
    nu_s: Ratio,
) -> Pascals:
    """Hoop stress in the shell's own bore, from the contact pressure between liner and shell.

    σ_s = q (D_s² + D²)/(D_s² − D²), q the shell pressure

    Arguments, range and errors as for ``shell_pressure``. Returns [Pa].

    Hand working, as there: 1.5625 × 0.13/0.05 = 4.0625 MPa.

    >>> one_metal = {"E": 200e9, "nu": 0.3, "E_s": 200e9, "nu_s": 0.3}
    >>> round(shell_bore_hoop_stress(p=10e6, c=0.0, d=0.1, D=0.2, D_s=0.3, **one_metal) / 1e6, 4)
    4.0625
    """
    return bore_hoop_stress(shell_pressure(p, c, d, D, D_s, E, nu, E_s, nu_s), D, D_s)


@formula("σ = E c/D · 2 D²/((D² + d²) − ν (D² − d²))", cites=[FIRST_PRINCIPLES])
def gap_closing_stress(c: Metres, d: Metres, D: Metres, E: Pascals, nu: Ratio) -> Pascals:
    """Greatest bore stress that a gap adds to a supported liner: as if the shell were rigid.

    σ = E c/D · 2 D²/((D² + d²) − ν (D² − d²))

    ``c`` diametral gap [m]; ``d``, ``D`` bore and outside of the liner [m]; ``E`` modulus of elasticity of the liner
    [Pa]; ``nu`` Poisson's ratio of the liner. Returns [Pa]. The strain c/D is that of the liner's outside; at the bore
    the stress is higher by the last factor, which tends to 1 for a thin liner. Raises OutOfRange for a negative gap, or
    unless 0 < d < D.

    Hand working: 0.1 mm on 500/550 mm, 100 GPa, ν 0.25:
    18.1818 × 2 × 0.3025/(0.5525 − 0.013125) = 20.394 MPa.

    >>> round(gap_closing_stress(c=0.1e-3, d=0.500, D=0.550, E=100e9, nu=0.25) / 1e6, 3)
    20.394
    """
    require(c >= 0, f"the gap {c * 1e3:.6g} mm is negative: the parts already touch")
    require(0 < d < D, f"bore {d * 1e3:.6g} mm is not between 0 and the outside diameter {D * 1e3:.6g} mm")
    return E * c / D * 2 * D**2 / ((D**2 + d**2) - nu * (D**2 - d**2))
